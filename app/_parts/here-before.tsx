import type { AdjustmentKind } from "@/lib/fit";
import type { KindHistory } from "@/lib/records/see-adjustment-history";
import styles from "./here-before.module.css";
import { capital, hereBeforeWords } from "./here-before-words";

interface HereBeforeProps {
  history: readonly KindHistory[];
  /** All kinds where left out. */
  kinds?: readonly AdjustmentKind[];
}

/** What kinds of adjustment have done in the other episodes of this clinic, folded. Counts only. */
export function HereBefore({ history, kinds }: HereBeforeProps) {
  const { statements, withheld } = hereBeforeWords(history, kinds);
  if (statements.length === 0 && withheld === undefined) return null;
  return (
    <details className={styles.before}>
      <summary>What these kinds of adjustment have done here before</summary>
      {statements.length > 0 && (
        <ul>
          {statements.map(({ kind, outcomes, from }) => (
            <li key={kind}>
              <strong>{capital(kind)}:</strong> {outcomes} <small>{from}</small>
            </li>
          ))}
        </ul>
      )}
      {withheld !== undefined && <p className="soft">{withheld}</p>}
      <p className="soft">
        {statements.length > 0 &&
          "Each was judged on what it was made for. The range is the 95\u00a0% interval of the share: any share in it goes with these counts. "}
        Counted over the other episodes of this clinic. A count of one clinic is no proof of a cause: a prosthetist decides.
      </p>
    </details>
  );
}

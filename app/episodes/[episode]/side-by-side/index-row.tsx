import { formatNumber } from "@/app/_parts/numbers";
import { StateMark } from "@/app/_parts/state-mark";
import type { FitIndex } from "@/lib/fit";
import type { Comparison } from "./comparison";
import styles from "./side-by-side.module.css";
import { outcomeWords } from "./values";

/** The index of each, with its interval; it sums up and decides nothing. */
export function IndexRow({ comparison: { rows, columns, sockets } }: { comparison: Comparison }) {
  const row = rows.find(({ id }) => id === "index");
  return (
    <section aria-labelledby="index">
      <h2 id="index">The index</h2>
      <p>It sums up what was measured, and does not decide: the gates do, and a prosthetist.</p>
      <dl className={styles.indexes}>
        {sockets.map(({ socketId, name }, column) => {
          const against = row?.cells[column]?.against?.row;
          return (
            <div key={socketId}>
              <dt>{name}</dt>
              <dd>
                {indexWords(columns[column]?.findings.index)}
                {against && against.outcome !== "not measured" && (
                  <StateMark state={against.difference === 0 ? "no difference" : against.outcome} wrap>
                    {outcomeWords(against)}
                  </StateMark>
                )}
              </dd>
            </div>
          );
        })}
      </dl>
    </section>
  );
}

function indexWords(index: FitIndex | undefined): string {
  if (index?.value === undefined)
    return index && index.missing.length > 0 ? `not known: ${index.missing.join(", ")} not measured` : "not known";
  const { value, low90, high90 } = index;
  const interval =
    low90 === undefined || high90 === undefined ? "" : `, 90 % interval ${formatNumber(low90, 2)} to ${formatNumber(high90, 2)}`;
  return `${formatNumber(value, 2)}${interval}`;
}

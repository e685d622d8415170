import { Suspense } from "react";
import { dayAndTimeAt } from "@/app/_parts/dates";
import { StateMark } from "@/app/_parts/state-mark";
import type { Actor } from "@/lib/access/actor";
import { now } from "@/lib/records/clock";
import { verifyRecord } from "@/lib/records/see-record";
import styles from "./record.module.css";
import { type Watched, watched } from "./watched-check";

/** The findings, and until they are there how far it has come: the page is sent in pieces. */
export function ChainCheck({ actor, total, timeZone }: { actor: Actor; total: number; timeZone: string }) {
  const check = watched((progress) => verifyRecord(actor, { progress }));
  return (
    <section aria-labelledby="chain" className={styles.chain}>
      <h2 id="chain">Can this record be trusted?</h2>
      <div role="status">
        <Pending check={check} done={0} total={total} timeZone={timeZone} />
      </div>
    </section>
  );
}

interface PendingProps {
  check: Watched;
  done: number;
  total: number;
  timeZone: string;
}

const Pending = (props: PendingProps) => (
  <Suspense
    fallback={
      <p className={styles.progress}>
        <progress value={props.done} max={Math.max(props.total, 1)} aria-label="Entries checked" /> {props.done} of {props.total}{" "}
        entries checked …
      </p>
    }
  >
    <Next {...props} />
  </Suspense>
);

/** A tenth further, or the end. */
async function Next({ check, done, total, timeZone }: PendingProps) {
  const reached = await check.beyond(done + total / 10);
  return reached ? (
    <Pending check={check} {...reached} timeZone={timeZone} />
  ) : (
    <Findings check={await check.result} timeZone={timeZone} />
  );
}

function Findings({ check, timeZone }: { check: Awaited<Watched["result"]>; timeZone: string }) {
  const { holds, findings, head } = check;
  return (
    <>
      <p className={styles.verdict}>
        {holds ? "Nothing speaks against this record." : "This record does not hold: something was changed outside the program."}
      </p>
      <ul className={styles.findings}>
        {findings.map(({ state, words }) => (
          <li key={words}>
            <StateMark state={state === "not met" ? "forbids" : state} wrap>
              {words}
            </StateMark>
          </li>
        ))}
      </ul>
      <p className="soft">
        Checked {dayAndTimeAt(now(), timeZone)}.
        {head && (
          <>
            {" "}
            The last entry is {head.position}; its digest is <span className={styles.digest}>{head.digest}</span>
          </>
        )}
      </p>
    </>
  );
}

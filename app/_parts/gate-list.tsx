import type { ReactNode } from "react";
import { Link } from "@/app/_parts/link";
import type { Gate } from "@/lib/fit/assessment";
import type { ReadingState } from "@/lib/fit/reading";
import { toldNotSeen } from "@/lib/fit/words";
import { dayAt, longDay } from "./dates";
import styles from "./gate-list.module.css";
import { gateWords } from "./gate-words";
import { foundIn, limitIn } from "./reading";
import { type SourceKinds, SourceLink } from "./source-link";
import { StateMark } from "./state-mark";

export interface GateListProps {
  gates: readonly Gate[];
  kinds: SourceKinds;
  timeZone: string;
  /** What would settle a gate, where this person may do it. */
  action?: (gate: Gate) => { href: string; label: string } | undefined;
  /** Shows the met ones open, as at a signature. */
  unfolded?: boolean;
}

const worstFirst: readonly ReadingState[] = ["forbids", "not met", "unknown", "close", "met"];

/** Every gate behind a decision, worst first; what is met is folded under one line that names it. */
export function GateList({ unfolded = false, ...props }: GateListProps) {
  const open = worstFirst.flatMap((state) => (state === "met" ? [] : props.gates.filter((gate) => gate.state === state)));
  const met = props.gates.filter(({ state }) => state === "met");
  return (
    <div className={styles.list}>
      {open.length > 0 && <GateTable {...props} gates={open} caption="Checks that are not plainly met" />}
      {met.length > 0 && (
        <details className={styles.met} open={unfolded}>
          <summary>
            <StateMark state="met">{met.length} met</StateMark>
            <span className={styles.names}>{met.map(nameOf).join(", ")}</span>
          </summary>
          <GateTable {...props} gates={met} caption="Checks that are met" />
        </details>
      )}
      <p className={styles.error}>± is one standard error.</p>
    </div>
  );
}

/** What nobody here saw says so also where it is folded. */
const nameOf = ({ id, why }: Gate): string =>
  `${lowerFirst(gateWords[id])}${why.includes(toldNotSeen) ? " (told, not seen)" : ""}`;

function GateTable({ gates, caption, kinds, timeZone, action }: GateListProps & { caption: string }) {
  return (
    <table className={styles.table}>
      <caption className="heard">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">state</th>
          <th scope="col">check</th>
          <th scope="col">found</th>
          <th scope="col">limit</th>
          <th scope="col">where the limit comes from</th>
          <th scope="col">
            <span className="heard">what would settle it</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {gates.map((gate) => (
          <GateRow key={gate.id} gate={gate} kinds={kinds} timeZone={timeZone} settles={action?.(gate)} />
        ))}
      </tbody>
    </table>
  );
}

interface GateRowProps {
  gate: Gate;
  kinds: SourceKinds;
  timeZone: string;
  settles: { href: string; label: string } | undefined;
}

function GateRow({ gate, kinds, timeZone, settles }: GateRowProps) {
  const found = foundIn(gate);
  const limit = limitIn(gate);
  return (
    <tr id={`gate-${gate.id}`}>
      <td>
        <StateMark state={gate.state} />
      </td>
      <th scope="row" className={styles.check}>
        {gateWords[gate.id]}
        {gate.accepted && (
          <span className={styles.accepted}>
            accepted by {gate.accepted.by} on {longDay(dayAt(gate.accepted.at, timeZone))}: {gate.accepted.why}
          </span>
        )}
      </th>
      <td>
        {found && <span className={styles.found}>{found}</span>}
        <span className={styles.why}>{gate.why}</span>
      </td>
      <td>{limit && <Labelled label="limit">{limit}</Labelled>}</td>
      <td>
        <Labelled label="from">
          <SourceLink source={gate.source} kinds={kinds} />
        </Labelled>
      </td>
      <td className={styles.settle}>
        {settles && (
          <Link href={settles.href} className="not-on-paper">
            {settles.label}
            <span className="heard">: {gateWords[gate.id]}</span>
          </Link>
        )}
      </td>
    </tr>
  );
}

/** Says in a narrow window what the head of the column says in a wide one. */
function Labelled({ label, children }: { label: string; children: ReactNode }) {
  return (
    <>
      <span className={styles.narrow}>{label} </span>
      {children}
    </>
  );
}

const lowerFirst = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

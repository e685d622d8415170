import type { Reading } from "@/lib/fit/reading";
import { formatQuantity } from "./numbers";
import styles from "./reading.module.css";
import { type SourceKinds, SourceLink } from "./source-link";
import { StateMark } from "./state-mark";

interface ReadingProps {
  /** What was measured: "Displacement at 45 N". */
  name: string;
  reading: Reading;
  kinds: SourceKinds;
}

/** One result: its state, the value with one standard error, why it is judged so, the limit and where that comes from. */
export function ReadingLine({ name, reading, kinds }: ReadingProps) {
  return (
    <div className={styles.reading}>
      <p className={styles.head}>
        <span className={styles.name}>{name}</span>
        <StateMark state={reading.state}>{foundIn(reading)}</StateMark>
      </p>
      <p className={styles.why}>{reading.why}</p>
      <p className={styles.why}>
        {limitIn(reading) && `Limit: ${limitIn(reading)}, `}
        <SourceLink source={reading.source} kinds={kinds} />
      </p>
    </div>
  );
}

/** The value with its error; nothing where it was not measured. */
export const foundIn = ({ value, unit, standardError }: Reading): string | undefined =>
  value === undefined
    ? undefined
    : formatQuantity({
        value,
        unit: value === 1 ? unit?.replace(/^(day|check|mark|caution|adjustment|stop sign)s$/, "$1") : unit,
        standardError,
      });

export const limitIn = ({ limit, limitText, unit }: Reading): string | undefined =>
  limitText ?? (limit === undefined ? undefined : formatQuantity({ value: limit, unit }));

import type { Reading } from "@/lib/fit/reading";
import { formatNumber, formatQuantity } from "./numbers";
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
export function foundIn({ value, unit, standardError }: Reading): string | undefined {
  if (value === undefined) return undefined;
  if (unit === "p") return value < 0.001 ? "p below 0.001" : `p = ${formatNumber(value, 3)}`;
  if (unit === "grade") return `grade ${value}`;
  if (unit === "×") return `${formatNumber(value, 2)} of the device’s`;
  return formatQuantity({ value, unit: value === 1 ? unit?.replace(pluralUnit, "$1") : unit, standardError });
}

const pluralUnit = /^(day|check|mark|caution|adjustment|stop sign)s$/;

export const limitIn = ({ limit, limitText, unit }: Reading): string | undefined =>
  limitText ?? (limit === undefined ? undefined : formatQuantity({ value: limit, unit }));

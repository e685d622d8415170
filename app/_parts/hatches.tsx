import styles from "./limb-map.module.css";
import { gradeWords } from "./mark-words";

/** Hatches that grow denser with the grade, in ink, so that they are told apart without their tone and on paper. */
export function HatchPatterns({ id }: { id: string }) {
  const square = { patternUnits: "userSpaceOnUse", patternTransform: "rotate(45)" } as const;
  return (
    <>
      <pattern id={`${id}-grade1`} width="9" height="9" {...square}>
        <path d="M0 0V9" stroke="currentColor" strokeWidth="1" />
      </pattern>
      <pattern id={`${id}-grade2`} width="6" height="6" {...square}>
        <path d="M0 0V6" stroke="currentColor" strokeWidth="1.5" />
      </pattern>
      <pattern id={`${id}-grade3`} width="5" height="5" {...square}>
        <path d="M0 0V5M0 0H5" stroke="currentColor" strokeWidth="1.6" />
      </pattern>
    </>
  );
}

/** A grade 4 is filled; a grade 0 is an empty outline. */
export function fillOf(id: string, grade: number): string {
  if (grade <= 0) return "none";
  return grade >= 4 ? "currentColor" : `url(#${id}-grade${grade})`;
}

/** What the hatches on this map stand for. */
export function MapKey({ id, grades, trimLine }: { id: string; grades: readonly number[]; trimLine: boolean }) {
  const present = [...new Set(grades)].sort();
  if (present.length === 0 && !trimLine) return null;
  return (
    <ul className={styles.key}>
      {present.map((grade) => (
        <li key={grade}>
          <svg viewBox="0 0 30 18" aria-hidden="true">
            <ellipse
              cx="15"
              cy="9"
              rx="13.5"
              ry="7.5"
              fill={fillOf(id, grade)}
              className={`${styles.mark} ${styles[`grade${grade}`] ?? ""}`}
            />
          </svg>
          grade {grade}: {gradeWords[grade]}
        </li>
      ))}
      {trimLine && (
        <li>
          <svg viewBox="0 0 30 18" aria-hidden="true">
            <path d="M1 9H29" className={styles.trim} />
          </svg>
          trim line
        </li>
      )}
    </ul>
  );
}

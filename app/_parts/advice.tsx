import styles from "./advice.module.css";

/** What the tool's judgement is and is not: stands wherever it judges. Takes no props; the words are the same everywhere. */
export function Advice() {
  return (
    <aside aria-label="About this advice" className={styles.advice}>
      <p>
        Advice from recorded findings. A licensed prosthetist decides. Follow local rules and the makers’ instructions. Call a
        physician for broken skin, spreading redness, fever, loss of feeling, colour change or swelling.
      </p>
    </aside>
  );
}

import type { AdjustmentEffect } from "@/lib/fit/adjustment-effects";
import type { StepSideEffect } from "@/lib/fit/series";
import styles from "./effect-words.module.css";
import { StateMark } from "./state-mark";

/** What came of an adjustment in few words: the state, and before and after. */
export function EffectWords({ effect: { effect, inShort, why, togetherWith } }: { effect: AdjustmentEffect }) {
  return (
    <span className={styles.effect}>
      <StateMark state={effect} wrap />
      <small>{inShort ?? why}</small>
      {togetherWith.length > 0 && effect !== "not measured" && (
        <small>cannot be told apart from {togetherWith.length === 1 ? "another" : `${togetherWith.length} others`}</small>
      )}
    </span>
  );
}

/** What else came of the adjustments between two sockets: marks where some of them do not act, each place once. */
export function SideEffects({ of, wordsOf }: { of: readonly StepSideEffect[]; wordsOf: (adjustmentId: string) => string }) {
  if (of.length === 0) return null;
  return (
    <div className={styles.effect}>
      {of.map(({ place, gradeBefore, gradeAfter, actingThere }) => (
        <StateMark key={place} state="worse" wrap>
          {gradeBefore === 0 ? "new mark" : "harder mark"}, {place}: grade {gradeBefore} → {gradeAfter}
          {actingThere.length > 0 ? `, where ${actingThere.map(wordsOf).join(" and ")} acts` : ", where none of them acts"}
        </StateMark>
      ))}
    </div>
  );
}

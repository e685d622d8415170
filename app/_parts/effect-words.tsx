import type { AdjustmentEffect } from "@/lib/fit/adjustment-effects";
import styles from "./effect-words.module.css";
import { StateMark } from "./state-mark";

/** What came of an adjustment in few words: the state, before and after, and what came of it elsewhere. */
export function EffectWords({ effect: { effect, inShort, why, sideEffects, togetherWith } }: { effect: AdjustmentEffect }) {
  return (
    <span className={styles.effect}>
      <StateMark state={effect} wrap />
      <small>{inShort ?? why}</small>
      {togetherWith.length > 0 && effect !== "not measured" && (
        <small>cannot be told apart from {togetherWith.length === 1 ? "another" : `${togetherWith.length} others`}</small>
      )}
      {sideEffects.map(({ place, gradeBefore, gradeAfter }) => (
        <StateMark key={place} state="worse" wrap>
          elsewhere: {gradeBefore === 0 ? "new mark" : "harder mark"}, {place}, grade {gradeBefore} → {gradeAfter}
        </StateMark>
      ))}
    </span>
  );
}

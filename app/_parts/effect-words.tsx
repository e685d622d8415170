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

/** From this grade on a mark is more than clear: deep, firm or painful. */
const hardFrom = 3;

/** What else came of the adjustments between two sockets: marks where some of them do not act, each place once. */
export function SideEffects({ of, wordsOf }: { of: readonly StepSideEffect[]; wordsOf: (adjustmentId: string) => string }) {
  if (of.length === 0) return null;
  return (
    <div className={styles.effect}>
      {grouped(of, wordsOf).map(({ words, places, isHard }) => {
        const said = `${places.length === 1 ? "mark" : "marks"} elsewhere, ${inRow(places)}: ${words}`;
        return isHard ? (
          <StateMark key={words} state="worse" wrap>
            {said}
          </StateMark>
        ) : (
          <small key={words}>
            <span aria-hidden="true">+ </span>
            {said}
          </small>
        );
      })}
    </div>
  );
}

const inRow = (words: readonly string[]): string => [words.slice(0, -1).join(", "), words.at(-1)].filter(Boolean).join(" and ");

/** Places of which the same is to be said are said together. */
function grouped(of: readonly StepSideEffect[], wordsOf: (adjustmentId: string) => string) {
  const groups = new Map<string, { words: string; places: string[]; isHard: boolean }>();
  for (const { place, gradeBefore, gradeAfter, actingThere } of of) {
    const where = actingThere.length === 0 ? "" : `, where ${inRow(actingThere.map(wordsOf))} acts`;
    const words = `grade ${gradeBefore} → ${gradeAfter}${where}`;
    const group = groups.get(words) ?? { words, places: [], isHard: gradeAfter >= hardFrom };
    group.places.push(place);
    groups.set(words, group);
  }
  return [...groups.values()];
}

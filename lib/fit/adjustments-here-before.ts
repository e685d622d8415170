/** What kinds of adjustment have done before: outcomes of single adjustments, counted without anybody's name. */
import { z } from "zod";
import type { Effect } from "./adjustment-effects";
import type { LimbBetween } from "./limb-between-sockets";
import type { Series } from "./series";
import { type ShareInterval, wilson } from "./statistics/wilson";
import { adjustmentKinds } from "./words";

const effects = ["worked", "no detectable change", "worse", "not measured"] as const satisfies readonly Effect[];
const limbStates = ["changed", "no detectable change", "not known"] as const satisfies readonly LimbBetween["state"][];

/** What came of one adjustment. It is kept in the store: who changes its shape lets a migration mark every episode as due. */
export const AdjustmentOutcome = z.strictObject({
  adjustmentId: z.string(),
  kind: z.enum(adjustmentKinds),
  effect: z.enum(effects),
  /** Made together with others that could have acted on the same measure: it cannot be told apart from them. */
  together: z.boolean(),
  /** After it a mark was much harder at a place that it was not made for. */
  elsewhere: z.boolean(),
  /** Whether the limb was another one when the second socket was worn. */
  limb: z.enum(limbStates),
});
export type AdjustmentOutcome = z.infer<typeof AdjustmentOutcome>;

/**
 * The outcome of each adjustment of a series, in the order of making. What was dropped or carried into the definitive
 * socket led to no check socket and has none.
 *
 * @source plain
 */
export const outcomesOfAdjustments = ({ steps }: Pick<Series, "steps">): AdjustmentOutcome[] =>
  steps.flatMap(({ adjustments, effects: judged, limb }) =>
    adjustments.flatMap(({ id, kind }): AdjustmentOutcome[] => {
      const found = judged.find(({ adjustmentId }) => adjustmentId === id);
      if (!found) return [];
      const { effect, togetherWith, sideEffects } = found;
      const [together, elsewhere] = [togetherWith.length > 0, sideEffects.length > 0];
      return [{ adjustmentId: id, kind, effect, together, elsewhere, limb: limb.state }];
    }),
  );

/** So many of those that were judged, with the share and its 95 % interval. */
export interface CountedShare extends ShareInterval {
  count: number;
  share: number;
}

export interface KindRecord {
  withheld: null;
  /** *Not measured* is no outcome: it is never among them. */
  judged: number;
  worked: CountedShare;
  noDetectableChange: number;
  worse: CountedShare;
  /** Beside those that were judged. */
  notMeasured: number;
  /** Of all of them, judged or not: after it a mark was much harder at a place that it was not made for. */
  elsewhere: number;
  /** Of those that were judged: made together with others, and cannot be told apart. */
  together: number;
  /** Of those that were judged: the limb changed detectably meanwhile. */
  limbChanged: number;
  /** Of those that were judged: nobody knows whether the limb changed meanwhile. */
  limbNotKnown: number;
}

/** Too few: nothing is said but that. */
export interface WithheldRecord {
  withheld: string;
}

/** Common practice, no source: fewer say little, and point to persons. */
export const fewestJudged = 5;

/**
 * Counts outcomes of one kind of adjustment. Below five that were judged no count is given.
 *
 * @source wilson
 *
 * @example
 * recordOfKind([{ adjustmentId: "a1", kind: "relief", effect: "worked", together: false, elsewhere: false, limb: "not known" }])
 * // => { withheld: "fewer than five were judged" }
 */
export function recordOfKind(outcomes: readonly Omit<AdjustmentOutcome, "kind">[]): KindRecord | WithheldRecord {
  const judged = outcomes.filter(({ effect }) => effect !== "not measured");
  if (judged.length < fewestJudged) return { withheld: "fewer than five were judged" };
  const had = (effect: Effect) => judged.filter((outcome) => outcome.effect === effect).length;
  const shared = (count: number): CountedShare => ({
    count,
    share: count / judged.length,
    ...wilson(count, judged.length),
  });
  return {
    withheld: null,
    judged: judged.length,
    worked: shared(had("worked")),
    noDetectableChange: had("no detectable change"),
    worse: shared(had("worse")),
    notMeasured: outcomes.length - judged.length,
    elsewhere: outcomes.filter(({ elsewhere }) => elsewhere).length,
    together: judged.filter(({ together }) => together).length,
    limbChanged: judged.filter(({ limb }) => limb === "changed").length,
    limbNotKnown: judged.filter(({ limb }) => limb === "not known").length,
  };
}

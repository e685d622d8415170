/** A whole series: what was found with each socket, and what came of the adjustments that led from one to the next. */
import { type AdjustmentEffect, adjustmentEffects, type SideEffect } from "./adjustment-effects";
import type { Adjustment, Bundle } from "./bundle";
import { type LimbBetween, limbBetweenSockets } from "./limb-between-sockets";
import { defaultLimits, type Limits } from "./limits";
import { findingsOfSocket, type SocketFindings } from "./socket-findings";

/** From one socket to one that was made from it; not always the next in number. */
export interface SeriesStep {
  fromId: string;
  fromNumber: number;
  toId: string;
  toNumber: number;
  adjustments: readonly Adjustment[];
  /** In the order of the adjustments. */
  effects: AdjustmentEffect[];
  /** Marks that came, or grew much harder, at a place that some of them do not act on; each place once. */
  sideEffects: StepSideEffect[];
  /** Whether the limb was another one meanwhile. */
  limb: LimbBetween;
}

export interface StepSideEffect extends SideEffect {
  /** Ids of those of the adjustments that do act there. */
  actingThere: string[];
}

export interface Series {
  /** In the order of making. */
  findings: SocketFindings[];
  /** In the order of making of the sockets that they lead to. A socket that was made from none has no step. */
  steps: SeriesStep[];
}

/**
 * Findings and effects of all sockets of an episode.
 *
 * @throws FitInputError where the bundle does not hold together
 * @source plain
 */
export function seriesOf(
  bundle: Bundle,
  { limits = defaultLimits, asOf = bundle.asOf }: { limits?: Limits; asOf?: string } = {},
): Series {
  const sockets = bundle.sockets.toSorted((a, b) => a.number - b.number);
  const findings = sockets.map(({ id }) => findingsOfSocket(bundle, id, { limits, asOf }));
  const steps = sockets.flatMap((to, index): SeriesStep[] => {
    const from = sockets.findIndex(({ id }) => id === to.derivedFrom);
    const [before, after] = [findings[from], findings[index]];
    if (!before || !after) return [];
    const effects = adjustmentEffects(before, after, to.adjustments, limits);
    return [
      {
        fromId: before.socketId,
        fromNumber: before.number,
        toId: to.id,
        toNumber: to.number,
        adjustments: to.adjustments,
        effects,
        sideEffects: sideEffectsOf(effects),
        limb: limbBetweenSockets(bundle, before.socketId, to.id, { limits, asOf }),
      },
    ];
  });
  return { findings, steps };
}

function sideEffectsOf(effects: readonly AdjustmentEffect[]): StepSideEffect[] {
  const byPlace = new Map(effects.flatMap((effect) => effect.sideEffects).map((side) => [side.place, side]));
  return [...byPlace.values()].map((side) => ({
    ...side,
    actingThere: effects
      .filter(({ sideEffects }) => !sideEffects.some(({ place }) => place === side.place))
      .map(({ adjustmentId }) => adjustmentId),
  }));
}

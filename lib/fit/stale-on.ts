/** When does an assessment change although nothing is recorded? */

import type { Evidence } from "./evidence";
import { laterDate } from "./has-settled";
import { instantMs, instantOf } from "./instant";
import { limitValue } from "./limits";

const dayMs = 86_400_000;

/** The next instant after `asOf` until which what time decides holds: the trial and the limb grow old, a child grows up, a later date comes. */
export function staleOn(evidence: Evidence): string | null {
  const { bundle, trial, measurements, asOfMs, limits } = evidence;
  const { cause, birthOn, lossOn } = bundle.episode;
  const midnight = (date: string) => Date.parse(`${date}T00:00:00Z`);
  const candidates = [
    ...(trial?.endedMs === undefined ? [] : [trial.endedMs + limitValue(limits, "fresh-days") * dayMs]),
    // Until then the skin still tells, and the next step is to look at it.
    ...(trial?.endedMs === undefined ? [] : [trial.endedMs + limitValue(limits, "skin-tells-hours") * 3_600_000]),
    ...(trial ? [] : measurements.slice(-1).map(({ atMs }) => atMs + limitValue(limits, "limb-measured-days") * dayMs)),
    ...(cause === "congenital" && birthOn !== undefined
      ? [midnight(laterDate(birthOn, { months: 12 * limitValue(limits, "adult-years") }))]
      : []),
    ...(lossOn === undefined ? [] : [midnight(laterDate(lossOn, { months: limitValue(limits, "settled-months") })) + dayMs]),
    ...datesOf(evidence),
  ].filter((atMs) => atMs >= asOfMs);
  return candidates.length === 0 ? null : instantOf(Math.min(...candidates));
}

/** Whatever is dated after `asOf` begins to count fully on its date. */
function datesOf({ bundle, asOfMs }: Evidence): number[] {
  const instants = [
    ...bundle.limbMeasurements.map(({ at }) => at),
    ...bundle.fittings.map(({ at }) => at),
    ...bundle.wearTrials.flatMap(({ events, inspections }) => [...events, ...inspections].map(({ at }) => at)),
    ...bundle.acceptances.map(({ at }) => at),
    ...bundle.episode.cautions.flatMap(({ acknowledgedAt }) => acknowledgedAt ?? []),
  ];
  return instants.map((at) => instantMs(at, "at")).filter((atMs) => atMs > asOfMs);
}

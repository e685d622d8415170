/** When does an assessment change although nothing is recorded? */
import type { Bundle } from "./bundle";
import type { Evidence } from "./evidence";
import { midnightMs } from "./has-settled";
import { instantMs, instantOf } from "./instant";
import { limitValue } from "./limits";

const dayMs = 86_400_000;

/** The next instant after `asOf` until which what time decides holds: the trial and the limb grow old, a child grows up, a later date comes. */
export function staleOn(evidence: Evidence): string | null {
  const { bundle, trial, measurements, asOfMs, limits } = evidence;
  const { cause, birthOn, lossOn } = bundle.episode;
  const until: number[] = [];
  if (trial?.endedMs !== undefined) {
    until.push(trial.endedMs + limitValue(limits, "fresh-days") * dayMs);
    // Until then the skin still tells, and the next step is to look at it.
    until.push(trial.endedMs + limitValue(limits, "skin-tells-hours") * 3_600_000);
  }
  const measured = measurements.at(-1);
  if (!trial && measured) until.push(measured.atMs + limitValue(limits, "limb-measured-days") * dayMs);
  if (cause === "congenital" && birthOn !== undefined)
    until.push(midnightMs(birthOn, { monthsLater: 12 * limitValue(limits, "adult-years") }));
  if (lossOn !== undefined) until.push(midnightMs(lossOn, { monthsLater: limitValue(limits, "settled-months") }) + dayMs);
  forEachDate(bundle, (at) => {
    const atMs = instantMs(at, "at");
    // Whatever is dated after `asOf` begins to count fully on its date.
    if (atMs > asOfMs) until.push(atMs);
  });
  const soonestMs = until.reduce(
    (soonest, atMs) => (atMs >= asOfMs ? Math.min(soonest, atMs) : soonest),
    Number.POSITIVE_INFINITY,
  );
  return soonestMs === Number.POSITIVE_INFINITY ? null : instantOf(soonestMs);
}

function forEachDate({ limbMeasurements, fittings, wearTrials, acceptances, episode }: Bundle, take: (at: string) => void): void {
  for (const { at } of limbMeasurements) take(at);
  for (const { at } of fittings) take(at);
  for (const { events, inspections } of wearTrials) {
    for (const { at } of events) take(at);
    for (const { at } of inspections) take(at);
  }
  for (const { at } of acceptances) take(at);
  for (const { acknowledgedAt } of episode.cautions) if (acknowledgedAt !== undefined) take(acknowledgedAt);
}

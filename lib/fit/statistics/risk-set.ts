/** Who was still being watched when something happened: what the curve and the test of survival both count. */
import { FitInputError } from "../errors";

export interface TimedOutcome {
  /** Until it happened, or until it was last known not to have happened. */
  time: number;
  happened: boolean;
}

export interface RiskSet {
  /** The times at which something happened, each once, in order. */
  ends: readonly number[];
  /** Not yet happened and still watched just before this time. */
  atRisk: (time: number) => number;
  /** To how many it happened at this time. */
  happened: (time: number) => number;
}

/**
 * Counts who is at risk at any time. What is censored at a time is still at risk then.
 *
 * @param times in any order and any unit, 0 or more
 * @param path what the times are called in an error
 * @throws FitInputError where a time is negative or not finite
 *
 * @example
 * riskSetOf([{ time: 6, happened: true }, { time: 6, happened: false }, { time: 9, happened: true }], "times").atRisk(6)
 * // => 3
 */
export function riskSetOf(times: readonly TimedOutcome[], path: string): RiskSet {
  times.forEach(({ time }, index) => {
    if (!(time >= 0 && Number.isFinite(time))) throw new FitInputError(`${path}[${index}].time`, "expected a time of 0 or more");
  });
  const ordered = Float64Array.from(times, ({ time }) => time).sort();
  const counts = new Map<number, number>();
  for (const { time, happened } of times) if (happened) counts.set(time, (counts.get(time) ?? 0) + 1);
  return {
    ends: [...counts.keys()].sort((a, b) => a - b),
    atRisk: (time) => ordered.length - countBefore(ordered, time),
    happened: (time) => counts.get(time) ?? 0,
  };
}

/** By halving, so that a long caseload stays quick. */
function countBefore(ordered: Float64Array, time: number): number {
  let [low, high] = [0, ordered.length];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if ((ordered[middle] ?? time) < time) low = middle + 1;
    else high = middle;
  }
  return low;
}

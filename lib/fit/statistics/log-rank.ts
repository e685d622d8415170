/** Do two groups take differently long, or is the difference chance? */

import { checkTimes, type TimedOutcome } from "./kaplan-meier";
import { normalUpperTail } from "./normal-tail";

export interface LogRank {
  /** One degree of freedom. */
  chiSquare: number;
  pValue: number;
}

/**
 * Log-rank test of two groups: at each time at which something happened, what happened in the first group against what
 * would be expected if both were alike; χ² = (Σ(O − E))²/ΣV with the hypergeometric variance. Where nothing happened, or
 * a group is empty, nothing can differ: χ² is 0 and the chance 1.
 *
 * @throws FitInputError where a time is negative or not finite
 * @source log-rank
 *
 * @example
 * logRank([{ time: 3, happened: true }, { time: 8, happened: false }], [{ time: 1, happened: true }, { time: 2, happened: true }]).chiSquare
 * // => 2.88235
 */
export function logRank(a: readonly TimedOutcome[], b: readonly TimedOutcome[]): LogRank {
  checkTimes(a, "a");
  checkTimes(b, "b");
  const ends = new Set([...a, ...b].filter(({ happened }) => happened).map(({ time }) => time));
  let [difference, variance] = [0, 0];
  for (const end of ends) {
    const atRisk = (group: readonly TimedOutcome[]) => group.filter(({ time }) => time >= end).length;
    const ended = (group: readonly TimedOutcome[]) => group.filter(({ time, happened }) => happened && time === end).length;
    const [ofA, all, happened] = [atRisk(a), atRisk(a) + atRisk(b), ended(a) + ended(b)];
    difference += ended(a) - (happened * ofA) / all;
    if (all > 1) variance += (happened * (ofA / all) * (1 - ofA / all) * (all - happened)) / (all - 1);
  }
  if (variance === 0) return { chiSquare: 0, pValue: 1 };
  const chiSquare = difference ** 2 / variance;
  return { chiSquare, pValue: 2 * normalUpperTail(Math.sqrt(chiSquare)) };
}

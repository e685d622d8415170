/** Do two groups take differently long, or is the difference chance? */
import { normalUpperTail } from "./normal-tail";
import { riskSetOf, type TimedOutcome } from "./risk-set";

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
  const [first, second] = [riskSetOf(a, "a"), riskSetOf(b, "b")];
  let [difference, variance] = [0, 0];
  for (const end of new Set([...first.ends, ...second.ends])) {
    const ofFirst = first.atRisk(end);
    const all = ofFirst + second.atRisk(end);
    const happened = first.happened(end) + second.happened(end);
    difference += first.happened(end) - (happened * ofFirst) / all;
    // The last one at risk tells nothing: it could only have been this one.
    if (all > 1) variance += (happened * (ofFirst / all) * (1 - ofFirst / all) * (all - happened)) / (all - 1);
  }
  if (variance === 0) return { chiSquare: 0, pValue: 1 };
  const chiSquare = difference ** 2 / variance;
  return { chiSquare, pValue: 2 * normalUpperTail(Math.sqrt(chiSquare)) };
}

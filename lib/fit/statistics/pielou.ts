/** How evenly something is spread over a given number of places. */
import { FitInputError } from "../errors";

/**
 * Pielou's evenness J = −Σ pᵢ ln pᵢ / ln S, where pᵢ is a weight's share and S the number of weights,
 * those of zero included: 1 where all are the same, 0 where one place has everything.
 *
 * Weights that are all zero are the same, so their J is 1: what is not there is not uneven. A single place that has
 * everything has J = 0, also where it is the only one.
 *
 * @param weights zero or more each, one a place; at least one place
 * @returns 0…1
 * @throws FitInputError where there is no weight, or one is negative or not finite
 * @source pielou-1966
 *
 * @example
 * pielou([10, 20, 30, 40])
 * // => 0.92322
 */
export function pielou(weights: readonly number[]): number {
  if (weights.length === 0) throw new FitInputError("weights", "expected at least one weight");
  weights.forEach((weight, index) => {
    if (!Number.isFinite(weight) || weight < 0) throw new FitInputError(`weights[${index}]`, "expected a number of zero or more");
  });
  const heaviest = weights.reduce((most, weight) => Math.max(most, weight), 0);
  if (heaviest === 0) return 1;
  if (weights.length === 1) return 0;
  // Shares of the heaviest first, so that no sum overflows.
  const scaled = weights.map((weight) => weight / heaviest);
  const total = scaled.reduce((sum, weight) => sum + weight, 0);
  const entropy = scaled.reduce((sum, weight) => sum + shareTimesLog(weight / total), 0);
  return Math.min(1, Math.max(0, -entropy / Math.log(weights.length)));
}

/** p ln p, which goes to 0 with p. */
const shareTimesLog = (share: number): number => (share === 0 ? 0 : share * Math.log(share));

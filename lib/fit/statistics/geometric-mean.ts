/** The mean of ratios, in which nothing outweighs a zero. */
import { FitInputError } from "../errors";

/**
 * Geometric mean: the n-th root of the product of n values. Any zero gives zero.
 *
 * @param values zero or more each, in one unit; at least one
 * @returns in the unit of the values
 * @throws FitInputError where there is no value, or one is negative or not finite
 *
 * @example
 * geometricMean([0.9, 0.6, 0.8])
 * // => 0.755953
 */
export function geometricMean(values: readonly number[]): number {
  if (values.length === 0) throw new FitInputError("values", "expected at least one value");
  values.forEach((value, index) => {
    if (!Number.isFinite(value) || value < 0) throw new FitInputError(`values[${index}]`, "expected a number of zero or more");
  });
  if (values.includes(0)) return 0;
  // By logarithms, so that the product of many values neither overflows nor vanishes.
  return Math.exp(values.reduce((sum, value) => sum + Math.log(value), 0) / values.length);
}

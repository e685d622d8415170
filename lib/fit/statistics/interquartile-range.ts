/** The range of the middle half of some numbers. */
import { FitInputError } from "../errors";

/**
 * Interquartile range, with quartiles by straight lines between the ordered values: definition 7 of Hyndman & Fan, the
 * one that R and spreadsheets use.
 *
 * @throws FitInputError where there is no value, or one is not finite
 * @source hyndman-fan-1996
 *
 * @example
 * interquartileRangeOf([1, 2, 3, 4, 10])
 * // => 2
 */
export function interquartileRangeOf(values: readonly number[]): number {
  if (values.length === 0) throw new FitInputError("values", "expected at least one value");
  values.forEach((value, index) => {
    if (!Number.isFinite(value)) throw new FitInputError(`values[${index}]`, "expected a finite number");
  });
  const ordered = values.toSorted((a, b) => a - b);
  return quantileOf(ordered, 0.75) - quantileOf(ordered, 0.25);
}

function quantileOf(ordered: readonly number[], share: number): number {
  const place = (ordered.length - 1) * share;
  const below = ordered[Math.floor(place)] ?? 0;
  const above = ordered[Math.ceil(place)] ?? below;
  return below + (above - below) * (place - Math.floor(place));
}

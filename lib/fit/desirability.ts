/** How good one measure is, from 0 (as bad as not having it) to 1 (as good as one would want). */
import { FitInputError } from "./errors";

/** The measure at which desirability is 0 and that at which it is 1; either may be the larger. */
export interface DesirableRange {
  zeroAt: number;
  oneAt: number;
}

/**
 * One-sided desirability after Derringer and Suich: a straight line from 0 to 1 between the two ends, flat beyond.
 *
 * @param value in the unit of the range
 * @throws FitInputError where a number is not finite or both ends are the same
 * @source derringer-suich-1980
 *
 * @example
 * desirability(1, { zeroAt: 4, oneAt: 0 })
 * // => 0.75
 */
export function desirability(value: number, { zeroAt, oneAt }: DesirableRange): number {
  if (!Number.isFinite(value)) throw new FitInputError("value", "expected a finite number");
  if (!Number.isFinite(zeroAt) || !Number.isFinite(oneAt) || zeroAt === oneAt)
    throw new FitInputError("range", "expected two different finite ends");
  return Math.min(1, Math.max(0, (value - zeroAt) / (oneAt - zeroAt)));
}

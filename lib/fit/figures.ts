/** How numbers are written in a sentence. */

/**
 * A number with at most so many decimals, without zeros that say nothing, with a true minus sign.
 *
 * @example
 * figure(-1.9163)
 * // => "−1.92"
 */
export function figure(value: number, decimals = 2): string {
  if (Number.isSafeInteger(value) && value >= 0) return String(value);
  const scale = 10 ** decimals;
  const rounded = Math.round(value * scale) / scale;
  return String(rounded === 0 ? 0 : rounded).replace("-", "−");
}

/**
 * @example
 * counted(2, "adjustment")
 * // => "2 adjustments"
 */
export const counted = (count: number, thing: string): string => `${count} ${thing}${count === 1 ? "" : "s"}`;

/**
 * A key as it is read out.
 *
 * @example
 * inWords("reduced-feeling")
 * // => "reduced feeling"
 */
export const inWords = (key: string): string => key.replaceAll("-", " ");

/** Sums of binary fractions miss by less than this; a value that misses its limit by no more has not passed it. */
const rounding = 1e-9;
export const isAbove = (value: number, limit: number): boolean => value > limit + rounding * Math.max(1, Math.abs(limit));
export const isBelow = (value: number, limit: number): boolean => value < limit - rounding * Math.max(1, Math.abs(limit));

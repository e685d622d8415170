/** How exact this clinic's own tape is: from circumferences that were measured twice. */
import { FitInputError } from "./errors";
import { counted, figure } from "./figures";
import { defaultLimits, type Limits, limitValue } from "./limits";
import type { Reading } from "./reading";

/** Two readings in mm of one circumference on one day, by whoever measures here. */
export type RepeatedReading = readonly [number, number] | { readonly firstMm: number; readonly secondMm: number };

export interface TapeError extends Reading {
  /** What stands: the clinic's own error where there are pairs enough, else the setting. Fits the options of `limbVolume`. */
  circumferenceSdMm: number;
  pairs: number;
  /** From the pairs, however few; missing without any. */
  fromRepeatsMm?: number;
}

/** Two-sided 95 % of the normal distribution. */
const z95 = 1.96;

/**
 * The least difference of two circumferences of one level, measured on two days, that is more than the tape: 95 % of
 * differences of nothing are smaller. d = 1.96·√2·s.
 *
 * @param circumferenceSdMm standard error of one circumference in mm
 * @returns mm
 * @throws FitInputError where the error is below 0 or no number
 * @source bland-altman-1996
 *
 * @example
 * detectableDifferenceMm(1.5)
 * // => 4.157788
 */
export function detectableDifferenceMm(circumferenceSdMm: number): number {
  if (!(circumferenceSdMm >= 0 && circumferenceSdMm <= longestMm))
    throw new FitInputError("circumferenceSdMm", "expected a standard deviation in mm, 0 or more");
  return z95 * Math.SQRT2 * circumferenceSdMm;
}

/** Longer than any limb is round. */
const longestMm = 3000;

/**
 * Standard error of one circumference from repeated measurements: s = √(Σd²/2n), where d is the difference of a pair.
 * Until there are 10 pairs the clinic's setting stands.
 *
 * @param pairs in mm, the order within a pair does not matter
 * @throws FitInputError where a circumference is not above 0
 * @source bland-altman-1996
 *
 * @example
 * tapeErrorFromRepeats([[200, 201], [210, 208], [250, 250]]).fromRepeatsMm
 * // => 0.912871
 */
export function tapeErrorFromRepeats(pairs: readonly RepeatedReading[], limits: Limits = defaultLimits): TapeError {
  const squares = pairs.map((pair, index) => {
    const [first, second] = "firstMm" in pair ? [pair.firstMm, pair.secondMm] : pair;
    // Written so that NaN is refused.
    for (const [reading, at] of [
      [first, 0],
      [second, 1],
    ] as const)
      if (!(reading > 0 && reading <= longestMm))
        throw new FitInputError(`pairs[${index}][${at}]`, "expected a circumference in mm above 0");
    return (first - second) ** 2;
  });
  const least = limitValue(limits, "tape-pairs-least");
  const settingMm = limitValue(limits, "tape-error-mm");
  const counts = { pairs: pairs.length, unit: "mm", limit: least, limitText: `from at least ${figure(least)} pairs` };
  if (pairs.length === 0)
    return {
      ...counts,
      circumferenceSdMm: settingMm,
      state: "unknown",
      why: `Nothing was measured twice; the setting of ${figure(settingMm)} mm stands.`,
      source: "clinic-setting",
    };
  const fromRepeatsMm = Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / (2 * pairs.length));
  const own = `${counted(pairs.length, "pair")} of readings differ by a standard error of ${figure(fromRepeatsMm)} mm`;
  return pairs.length < least
    ? {
        ...counts,
        value: fromRepeatsMm,
        fromRepeatsMm,
        circumferenceSdMm: settingMm,
        state: "unknown",
        why: `${own}; until there are ${figure(least)}, the setting of ${figure(settingMm)} mm stands.`,
        source: "clinic-setting",
      }
    : {
        ...counts,
        value: fromRepeatsMm,
        fromRepeatsMm,
        circumferenceSdMm: fromRepeatsMm,
        // n pairs leave n degrees of freedom.
        standardError: fromRepeatsMm / Math.sqrt(2 * pairs.length),
        state: "met",
        why: `${own}.`,
        source: "bland-altman-1996",
      };
}

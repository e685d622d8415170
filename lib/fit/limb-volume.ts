/** The volume of a residual limb from circumferences, with what the tape leaves unsure. */
import type { Station } from "./bundle";
import { FitInputError } from "./errors";
import { figure } from "./figures";
import { defaultLimits, limitValue } from "./limits";
import type { Reading } from "./reading";
import { checkStations, type Span, spanOf } from "./stations";

export interface LimbVolumeOptions {
  /** Standard deviation of one circumference; a clinic's own from repeated measurements, else its setting. */
  circumferenceSdMm?: number;
  /** Height of the rounded end beyond the last ring, taken as a segment of a sphere. */
  capHeightMm?: number;
  /** At which station the rounded end sits: the first where stations run from the distal end. */
  capAt?: "first" | "last";
}

/** Measured, so its state is *met*: a volume has no limit. */
export interface LimbVolume extends Reading {
  volumeMl: number;
  standardErrorMl: number;
  /** The least difference of two such volumes that is more than error (95 %). */
  detectableChangeMl: number;
}

const mm3InMl = 1000;
/** Two-sided 95 % of the normal distribution. */
const z95 = 1.96;

/**
 * Volume of a residual limb between its first and last station, with its rounded end where that was measured.
 *
 * Stacked frusta: V = Σ h/(12π)·(C₁² + C₁C₂ + C₂²); the end πh(3a² + h²)/6 with a = C/2π. The standard error follows
 * from independent errors of the circumferences, to first order; the height of the end is taken as exact.
 *
 * @param stations circumferences in mm at increasing distances in mm; two or more
 * @returns millilitres
 * @throws FitInputError where stations do not increase, or a length is not positive
 * @source jarl-2003
 *
 * @example
 * limbVolume([{ distanceMm: 0, circumferenceMm: 200 }, { distanceMm: 100, circumferenceMm: 240 }], { circumferenceSdMm: 1.5 }).volumeMl
 * // => 386.216
 */
export function limbVolume(stations: readonly Station[], options: LimbVolumeOptions = {}): LimbVolume {
  const { circumferenceSdMm = limitValue(defaultLimits, "tape-error-mm"), capHeightMm, capAt = "first" } = options;
  checkStations(stations, "stations");
  const { fromMm, toMm } = spanOf(stations);
  const { volumeMm3, slopes } = frusta(stations, fromMm, toMm);
  const end = capHeightMm === undefined ? null : roundedEnd(stations, { capHeightMm, capAt });
  if (end) slopes[end.station] = (slopes[end.station] ?? 0) + end.slope;
  const standardErrorMl = errorOf(slopes, circumferenceSdMm);
  const volumeMl = (volumeMm3 + (end?.volumeMm3 ?? 0)) / mm3InMl;
  const detectableChangeMl = z95 * Math.SQRT2 * standardErrorMl;
  return {
    volumeMl,
    standardErrorMl,
    detectableChangeMl,
    value: volumeMl,
    unit: "mL",
    standardError: standardErrorMl,
    state: "met",
    why: `${figure(volumeMl, 0)} mL from ${figure(fromMm, 0)} to ${figure(toMm, 0)} mm${end ? " with the rounded end" : ""}, ± ${figure(standardErrorMl, 1)} mL; a change of less than ${figure(detectableChangeMl, 1)} mL cannot be told from error.`,
    source: "jarl-2003",
  };
}

/**
 * Volume between two distances that the stations cover. Between stations the radius is a straight line, so cutting a
 * frustum is exact. The rounded end is not part of it.
 *
 * @returns millilitres
 * @throws FitInputError where the distances are not within the stations, or do not increase
 * @source jarl-2003
 *
 * @example
 * volumeBetween([{ distanceMm: 0, circumferenceMm: 200 }, { distanceMm: 100, circumferenceMm: 240 }], 0, 50)
 * // => 175.601
 */
export const volumeBetween = (stations: readonly Station[], fromMm: number, toMm: number): number =>
  volumeOfSpan(stations, { fromMm, toMm, circumferenceSdMm: 0 }).volumeMl;

/** The same with its standard error. */
export function volumeOfSpan(
  stations: readonly Station[],
  { fromMm, toMm, circumferenceSdMm }: Span & { circumferenceSdMm: number },
): { volumeMl: number; standardErrorMl: number } {
  checkStations(stations, "stations");
  const span = spanOf(stations);
  if (!(fromMm >= span.fromMm && fromMm <= span.toMm))
    throw new FitInputError("fromMm", `expected a distance within the stations, ${span.fromMm} to ${span.toMm} mm`);
  if (!(toMm > fromMm && toMm <= span.toMm))
    throw new FitInputError("toMm", `expected more than ${fromMm} and at most ${span.toMm} mm`);
  return volumeOfPart(stations, { fromMm, toMm, circumferenceSdMm });
}

/** The same of stations and a span that were checked before. */
export function volumeOfPart(
  stations: readonly Station[],
  { fromMm, toMm, circumferenceSdMm }: Span & { circumferenceSdMm: number },
): { volumeMl: number; standardErrorMl: number } {
  const { volumeMm3, slopes } = frusta(stations, fromMm, toMm);
  return { volumeMl: volumeMm3 / mm3InMl, standardErrorMl: errorOf(slopes, circumferenceSdMm) };
}

/**
 * Volume between two distances within the stations, and ∂V/∂C of every station, in mm³ and mm². Each frustum is cut to
 * the part of it that lies between the two; there the radius is a straight line.
 */
function frusta(stations: readonly Station[], fromMm: number, toMm: number): { volumeMm3: number; slopes: number[] } {
  const slopes = stations.map(() => 0);
  let volumeMm3 = 0;
  for (let after = 1; after < stations.length; after++) {
    const [lower, upper] = [stations[after - 1], stations[after]];
    if (!lower || !upper) continue;
    const [lowMm, highMm] = [Math.max(lower.distanceMm, fromMm), Math.min(upper.distanceMm, toMm)];
    if (lowMm >= highMm) continue;
    const lengthMm = upper.distanceMm - lower.distanceMm;
    const [lowShare, highShare] = [(lowMm - lower.distanceMm) / lengthMm, (highMm - lower.distanceMm) / lengthMm];
    const c1 = lower.circumferenceMm * (1 - lowShare) + upper.circumferenceMm * lowShare;
    const c2 = lower.circumferenceMm * (1 - highShare) + upper.circumferenceMm * highShare;
    const factor = (highMm - lowMm) / (12 * Math.PI);
    volumeMm3 += factor * (c1 * c1 + c1 * c2 + c2 * c2);
    const [slope1, slope2] = [factor * (2 * c1 + c2), factor * (c1 + 2 * c2)];
    slopes[after - 1] = (slopes[after - 1] ?? 0) + slope1 * (1 - lowShare) + slope2 * (1 - highShare);
    slopes[after] = slope1 * lowShare + slope2 * highShare;
  }
  return { volumeMm3, slopes };
}

function roundedEnd(
  stations: readonly Station[],
  { capHeightMm, capAt }: { capHeightMm: number; capAt: "first" | "last" },
): { volumeMm3: number; slope: number; station: number } {
  if (!(capHeightMm > 0 && capHeightMm <= 1000)) throw new FitInputError("capHeightMm", "expected a height in mm above 0");
  const station = capAt === "first" ? 0 : stations.length - 1;
  const radiusMm = (stations[station]?.circumferenceMm ?? 0) / (2 * Math.PI);
  return {
    station,
    volumeMm3: (Math.PI * capHeightMm * (3 * radiusMm ** 2 + capHeightMm ** 2)) / 6,
    slope: (capHeightMm * radiusMm) / 2,
  };
}

function errorOf(slopes: readonly number[], circumferenceSdMm: number): number {
  if (!(circumferenceSdMm >= 0 && circumferenceSdMm <= 100))
    throw new FitInputError("circumferenceSdMm", "expected a standard deviation in mm, 0 or more");
  return (circumferenceSdMm * Math.sqrt(slopes.reduce((sum, slope) => sum + slope * slope, 0))) / mm3InMl;
}

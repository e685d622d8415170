/** Where a limb's volume is going, and when it will have got there. */
import { levenbergMarquardt } from "ml-levenberg-marquardt";
import { inverse, Matrix } from "ml-matrix";
import { chiSquaredDistributionTable } from "simple-statistics";
import type { Station } from "./bundle";
import { FitInputError } from "./errors";
import { figure } from "./figures";
import { instantMs, instantOf } from "./instant";
import { volumeOfSpan } from "./limb-volume";
import { defaultLimits, type Limits, limitValue } from "./limits";
import type { Reading } from "./reading";
import { checkStations, type Span, spanOf } from "./stations";

/** A measured limb, or its volume with its error. */
export type DatedVolume =
  | { at: string; stations: readonly Station[] }
  | { at: string; volumeMl: number; standardErrorMl?: number };

/**
 * *good*: the curve goes through the volumes as closely as the tape allows. *poor*: it does not. *beyond the data*: the
 * limb changes more slowly than it has been watched, so where it will end is a guess. *no change*: what changed is less
 * than can be told from error. *too few*: less than four dates.
 */
export type ForecastQuality = "good" | "poor" | "beyond the data" | "no change" | "too few";

export interface VolumeForecast extends Reading {
  quality: ForecastQuality;
  /** V∞, A and τ of V(t) = V∞ + A·e^(−t/τ), with t in days since the first date. */
  finalMl?: number;
  amplitudeMl?: number;
  timeConstantDays?: number;
  /** From when the curve stays within ±5 % of V∞: days since the first date, and that day in UTC. */
  settlesAfterDays?: number;
  settlesOn?: string;
  /** Standard deviation of what the curve misses. */
  residualMl?: number;
}

const dayMs = 86_400_000;
const fewestDates = 4;
const parameters = 3;
/** Starts of the search, as shares of the time watched: a limb may settle in a week or in years. */
const startShares = [0.03, 0.1, 0.3, 1, 3, 10];
/** A slower change than this many times the time watched is a straight line to the eye: τ is held there. */
const slowestShare = 50;
const quickestShare = 0.005;

/**
 * Fits V(t) = V∞ + A·e^(−t/τ) to the volumes of four or more dates by Levenberg–Marquardt, over the span that all of them
 * cover. What it says is a forecast, and gates nothing.
 *
 * @param measurements in any order; of several on one day the mean counts
 * @throws FitInputError where an instant, a station or a volume is wrong, or the measurements have no length in common
 * @source levenberg-marquardt
 *
 * @example
 * forecastVolume([
 *   { at: "2026-01-01T09:00:00Z", volumeMl: 600 },
 *   { at: "2026-01-11T09:00:00Z", volumeMl: 580 },
 *   { at: "2026-01-21T09:00:00Z", volumeMl: 570 },
 *   { at: "2026-01-31T09:00:00Z", volumeMl: 565 },
 * ]).finalMl
 * // => 560
 */
export function forecastVolume(measurements: readonly DatedVolume[], limits: Limits = defaultLimits): VolumeForecast {
  const days = volumesByDay(measurements, limits);
  const asked = { unit: "mL", source: "levenberg-marquardt" };
  const first = days[0];
  if (!first || days.length < fewestDates)
    return {
      ...asked,
      quality: "too few",
      state: "unknown",
      why: `${days.length} of the ${fewestDates} dates that a forecast needs.`,
    };
  const watchedDays = (days.at(-1)?.day ?? 0) - first.day;
  const points = days.map(({ day, volumeMl }) => ({ days: day - first.day, volumeMl }));
  const errorMl = Math.sqrt(days.reduce((sum, { standardErrorMl }) => sum + standardErrorMl ** 2, 0) / days.length);
  const curve = bestCurve(points, watchedDays);
  const { finalMl, amplitudeMl, timeConstantDays, squares } = curve;
  const residualMl = Math.sqrt(squares / (points.length - parameters));
  const margin = limitValue(limits, "settled-percent") / 100;
  const quality = qualityOf(curve, { points, watchedDays, errorMl });
  if (quality === "no change") return unchanged(points, { ...asked, watchedDays, errorMl });
  const settlesAfterDays = Math.max(0, timeConstantDays * Math.log(Math.abs(amplitudeMl) / (margin * finalMl)));
  const settles = finalMl > 0 && Number.isFinite(settlesAfterDays);
  const settlesOn = settles ? instantOf(first.day * dayMs + settlesAfterDays * dayMs).slice(0, 10) : undefined;
  const standardError = errorOfFinal(curve, { points, errorMl });
  return {
    ...asked,
    quality,
    state: quality === "good" ? "met" : "unknown",
    value: finalMl,
    ...(standardError === undefined ? {} : { standardError }),
    why: sentence(curve, { quality, settlesOn, residualMl, watchedDays }),
    finalMl,
    amplitudeMl,
    timeConstantDays,
    ...(settles && settlesOn !== undefined ? { settlesAfterDays, settlesOn } : {}),
    residualMl,
  };
}

function unchanged(
  points: readonly Point[],
  { unit, source, watchedDays, errorMl }: { unit: string; source: string; watchedDays: number; errorMl: number },
): VolumeForecast {
  const value = points.reduce((sum, { volumeMl }) => sum + volumeMl, 0) / points.length;
  return {
    unit,
    source,
    quality: "no change",
    state: "met",
    value,
    ...(errorMl > 0 ? { standardError: errorMl / Math.sqrt(points.length) } : {}),
    why: `In ${figure(watchedDays, 0)} days the volume changed by no more than the error of the tape.`,
    finalMl: value,
  };
}

interface DayVolume {
  /** Days since 1970, with the time of day. */
  day: number;
  volumeMl: number;
  standardErrorMl: number;
}

function volumesByDay(measurements: readonly DatedVolume[], limits: Limits): DayVolume[] {
  const circumferenceSdMm = limitValue(limits, "tape-error-mm");
  const span = spanOfAll(measurements);
  const byDay = new Map<number, DayVolume[]>();
  measurements.forEach((measured, index) => {
    const day = instantMs(measured.at, `measurements[${index}].at`) / dayMs;
    const of =
      "stations" in measured ? volumeOfSpan(measured.stations, { ...span, circumferenceSdMm }) : givenVolume(measured, index);
    const date = Math.floor(day);
    byDay.set(date, [...(byDay.get(date) ?? []), { day, ...of }]);
  });
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  return [...byDay.values()]
    .map((sameDay) => ({
      day: mean(sameDay.map(({ day }) => day)),
      volumeMl: mean(sameDay.map(({ volumeMl }) => volumeMl)),
      standardErrorMl: Math.hypot(...sameDay.map(({ standardErrorMl }) => standardErrorMl)) / sameDay.length,
    }))
    .sort((a, b) => a.day - b.day);
}

function spanOfAll(measurements: readonly DatedVolume[]): Span {
  const spans = measurements.flatMap((measured, index) => {
    if (!("stations" in measured)) return [];
    checkStations(measured.stations, `measurements[${index}].stations`);
    return [spanOf(measured.stations)];
  });
  const span = { fromMm: Math.max(...spans.map(({ fromMm }) => fromMm)), toMm: Math.min(...spans.map(({ toMm }) => toMm)) };
  if (spans.length > 0 && !(span.toMm > span.fromMm))
    throw new FitInputError("measurements", "expected measurements that all cover some of the same length");
  if (spans.length > 0 && spans.length < measurements.length)
    throw new FitInputError("measurements", "expected all with stations or all with volumes");
  return span;
}

function givenVolume(
  { volumeMl, standardErrorMl = 0 }: { volumeMl: number; standardErrorMl?: number },
  index: number,
): Omit<DayVolume, "day"> {
  if (!(volumeMl > 0 && volumeMl < 1e6))
    throw new FitInputError(`measurements[${index}].volumeMl`, "expected a volume in mL above 0");
  if (!(standardErrorMl >= 0 && standardErrorMl < 1e6))
    throw new FitInputError(`measurements[${index}].standardErrorMl`, "expected an error in mL, 0 or more");
  return { volumeMl, standardErrorMl };
}

interface Point {
  days: number;
  volumeMl: number;
}

interface Curve {
  finalMl: number;
  amplitudeMl: number;
  timeConstantDays: number;
  /** Sum of the squared misses. */
  squares: number;
}

/** The best of several starts, for one start may end in a valley of its own. Scaled, so that all three parameters are near 1. */
function bestCurve(points: readonly Point[], watchedDays: number): Curve {
  const volumes = points.map(({ volumeMl }) => volumeMl);
  const meanMl = volumes.reduce((sum, volumeMl) => sum + volumeMl, 0) / volumes.length;
  const spreadMl = Math.max(...volumes) - Math.min(...volumes);
  const scaleMl = spreadMl > 0 ? spreadMl : 1;
  const x = points.map(({ days }) => days / watchedDays);
  const y = volumes.map((volumeMl) => (volumeMl - meanMl) / scaleMl);
  const curves = startShares.map((share) => {
    const { parameterValues, parameterError } = levenbergMarquardt({ x, y }, decay, {
      initialValues: startAt({ x, y, share }),
      jacobianFunction: decaySlopes,
      minValues: [-1e4, -1e4, quickestShare],
      maxValues: [1e4, 1e4, slowestShare],
      maxIterations: 300,
      errorTolerance: 1e-18,
      improvementThreshold: 1e-9,
    });
    const [final = 0, amplitude = 0, constant = share] = parameterValues;
    return {
      finalMl: meanMl + scaleMl * final,
      amplitudeMl: scaleMl * amplitude,
      timeConstantDays: watchedDays * constant,
      squares: parameterError * scaleMl ** 2,
    };
  });
  return curves.reduce((best, curve) => (curve.squares < best.squares ? curve : best));
}

const decay =
  ([final = 0, amplitude = 0, constant = 1]: number[]) =>
  (x: number) =>
    final + amplitude * Math.exp(-x / constant);

const decaySlopes =
  ([, amplitude = 0, constant = 1]: number[]) =>
  (x: number) => {
    const left = Math.exp(-x / constant);
    return [1, left, (amplitude * left * x) / constant ** 2];
  };

/** With τ held, V∞ and A are a straight line in e^(−t/τ): the best of them is where the search begins. */
function startAt({ x, y, share }: { x: readonly number[]; y: readonly number[]; share: number }): number[] {
  const left = x.map((at) => Math.exp(-at / share));
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [meanLeft, meanY] = [mean(left), mean(y)];
  const spread = left.reduce((sum, value) => sum + (value - meanLeft) ** 2, 0);
  const together = left.reduce((sum, value, index) => sum + (value - meanLeft) * ((y[index] ?? 0) - meanY), 0);
  const amplitude = spread > 0 ? together / spread : 0;
  return [meanY - amplitude * meanLeft, amplitude, share];
}

interface Seen {
  points: readonly Point[];
  watchedDays: number;
  /** Standard error of one volume; 0 where it is not known. */
  errorMl: number;
}

function qualityOf(
  { amplitudeMl, timeConstantDays, finalMl, squares }: Curve,
  { points, watchedDays, errorMl }: Seen,
): ForecastQuality {
  const changedMl = Math.abs(amplitudeMl) * (1 - Math.exp(-watchedDays / timeConstantDays));
  // The least difference of two volumes that is more than error (95 %).
  if (changedMl <= Math.max(1.96 * Math.SQRT2 * errorMl, 1e-6)) return "no change";
  if (timeConstantDays > watchedDays || finalMl <= 0) return "beyond the data";
  const mostOfChance = chiSquare95(points.length - parameters);
  // Without an error to go by, a curve that leaves a tenth of the change unexplained is poor.
  const missed = errorMl > 0 ? squares / errorMl ** 2 > mostOfChance : squares > points.length * (0.1 * changedMl) ** 2;
  return missed ? "poor" : "good";
}

/** The 95 % point of χ², from the table of simple-statistics; between its rows the stricter one. */
function chiSquare95(freedom: number): number {
  const rows = Object.entries(chiSquaredDistributionTable).map(([of, row]) => ({ of: Number(of), point: row["0.05"] }));
  return rows.filter(({ of }) => of <= freedom).reduce((most, { point }) => Math.max(most, point), 0);
}

/** Of V∞, to first order: the error of one volume through (JᵀJ)⁻¹. */
function errorOfFinal(
  { amplitudeMl, timeConstantDays }: Curve,
  { points, errorMl }: Pick<Seen, "points" | "errorMl">,
): number | undefined {
  if (errorMl === 0) return undefined;
  const slopes = new Matrix(points.map(({ days }) => decaySlopes([0, amplitudeMl, timeConstantDays])(days)));
  try {
    const variance = inverse(slopes.transpose().mmul(slopes)).get(0, 0);
    const error = errorMl * Math.sqrt(variance);
    return Number.isFinite(error) ? error : undefined;
  } catch {
    // Singular: the dates cannot tell the parameters apart.
    return undefined;
  }
}

function sentence(
  { finalMl, timeConstantDays }: Curve,
  {
    quality,
    settlesOn,
    residualMl,
    watchedDays,
  }: { quality: ForecastQuality; settlesOn: string | undefined; residualMl: number; watchedDays: number },
): string {
  const course = `towards ${figure(finalMl, 0)} mL with a time constant of ${figure(timeConstantDays, 0)} days`;
  if (quality === "beyond the data")
    return `The volume still changes more slowly than the ${figure(watchedDays, 0)} days that it was watched: where it will end cannot be told yet.`;
  const when = settlesOn === undefined ? "" : `; within 5 % of it from ${settlesOn}`;
  return quality === "good"
    ? `The volume goes ${course}${when}.`
    : `A curve ${course} misses the volumes by ${figure(residualMl, 1)} mL, more than the tape explains: a poor forecast.`;
}

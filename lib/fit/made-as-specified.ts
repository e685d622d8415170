/** Was the socket made as it was specified? */

import type { Station } from "./bundle";
import { FitInputError } from "./errors";
import { counted, figure, isAbove } from "./figures";
import { defaultLimits, type Limits, limitValue } from "./limits";
import type { Reading, ReadingState } from "./reading";
import { checkStations, circumferenceAt, commonSpan } from "./stations";
import { interquartileRangeOf } from "./statistics/interquartile-range";

/** A point of the inside, scanned: its distance along the socket, its angle, its distance from the socket's axis. */
export interface ScannedRadius {
  distanceMm: number;
  angleDeg: number;
  radiusMm: number;
}

/** Inside dimensions by level, or points of a scan; a scan of the specification has the same points. */
export type InsideShape = readonly Station[] | readonly ScannedRadius[];

export interface MadeAsSpecified {
  /** Mean of made − specified radius. Above 0 the socket is too wide. */
  meanRadialError: Reading;
  /** Interquartile range of the same differences: how far the shape is off, whatever the size. */
  interquartileRange: Reading;
  /** The worse of the two. */
  state: ReadingState;
  why: string;
  /** Where a tape was used, what it cannot tell. */
  caution: string | null;
  differences: { distanceMm: number; angleDeg?: number; radialErrorMm: number }[];
}

export interface MadeOptions {
  limits?: Limits;
  /** Standard error of one circumference; radii from a scan are taken as exact. */
  circumferenceSdMm?: number;
}

const longestMm = 1000;
/** With fewer differences there are no quartiles to speak of. */
const fewestForQuartiles = 4;

/**
 * Mean radial error and its interquartile range. A mean beyond 0.25 mm was not acceptable in any of 33 sockets, and an
 * interquartile range above 0.40 mm needed modification.
 *
 * A tape cannot resolve this: an error of 1.5 mm of a circumference is 0.24 mm of radius. So taped circumferences are
 * *not met* only where the mean is surely beyond the limit, and otherwise *unknown*, never met.
 *
 * @param specified inside dimensions in mm by level, or radii in mm at points
 * @param made the same, as it came back
 * @throws FitInputError where a length is not above 0, the two are of different kinds, or have nothing in common
 * @source sanders-severance-2012
 *
 * @example
 * madeAsSpecified([{ distanceMm: 0, angleDeg: 0, radiusMm: 30 }], [{ distanceMm: 0, angleDeg: 0, radiusMm: 30.5 }]).meanRadialError.value
 * // => 0.5
 */
export function madeAsSpecified(specified: InsideShape, made: InsideShape, options: MadeOptions = {}): MadeAsSpecified {
  const { limits = defaultLimits, circumferenceSdMm = limitValue(limits, "tape-error-mm") } = options;
  if (!(circumferenceSdMm >= 0 && circumferenceSdMm <= 100))
    throw new FitInputError("circumferenceSdMm", "expected a standard deviation in mm, 0 or more");
  const taped = isTaped(made);
  if (taped !== isTaped(specified)) throw new FitInputError("made", "expected the same kind of dimensions as specified");
  const differences = taped
    ? tapedDifferences(specified as readonly Station[], made as readonly Station[]) // isTaped has told both apart
    : scannedDifferences(specified as readonly ScannedRadius[], made as readonly ScannedRadius[]); // likewise
  const errors = differences.map(({ radialErrorMm }) => radialErrorMm);
  const radiusErrorMm = taped ? circumferenceSdMm / (2 * Math.PI) : 0;
  const meanRadialError = judgeMean(errors, { limits, radiusErrorMm });
  const interquartileRange = judgeSpread(errors, { limits, radiusErrorMm });
  const state = worse(meanRadialError.state, interquartileRange.state);
  return {
    meanRadialError,
    interquartileRange,
    state,
    why: `${meanRadialError.why} ${interquartileRange.why}`,
    caution: taped
      ? `A tape with a standard error of ${figure(circumferenceSdMm)} mm leaves ±${figure(radiusErrorMm)} mm in each radius: too coarse to show that a socket was made as specified. A scan can.`
      : null,
    differences,
  };
}

const isTaped = (shape: InsideShape): boolean => shape.some((point) => "circumferenceMm" in point);

function tapedDifferences(specified: readonly Station[], made: readonly Station[]): MadeAsSpecified["differences"] {
  checkStations(specified, "specified");
  checkStations(made, "made");
  if (!commonSpan(specified, made)) throw new FitInputError("made", "expected levels that cover some of the specified length");
  return made.flatMap(({ distanceMm, circumferenceMm }) => {
    const asked = circumferenceAt(specified, distanceMm);
    return asked === undefined ? [] : [{ distanceMm, radialErrorMm: (circumferenceMm - asked) / (2 * Math.PI) }];
  });
}

function scannedDifferences(specified: readonly ScannedRadius[], made: readonly ScannedRadius[]): MadeAsSpecified["differences"] {
  const at = ({ distanceMm, angleDeg }: ScannedRadius) => `${distanceMm} ${((angleDeg % 360) + 360) % 360}`;
  checkRadii(specified, "specified");
  checkRadii(made, "made");
  const asked = new Map(specified.map((point) => [at(point), point.radiusMm]));
  const differences = made.flatMap((point) => {
    const radiusMm = asked.get(at(point));
    const { distanceMm, angleDeg } = point;
    return radiusMm === undefined ? [] : [{ distanceMm, angleDeg, radialErrorMm: point.radiusMm - radiusMm }];
  });
  if (differences.length === 0) throw new FitInputError("made", "expected radii at the points that are specified");
  return differences;
}

function checkRadii(points: readonly ScannedRadius[], path: string): void {
  points.forEach(({ distanceMm, angleDeg, radiusMm }, index) => {
    if (!Number.isFinite(distanceMm)) throw new FitInputError(`${path}[${index}].distanceMm`, "expected a distance in mm");
    if (!Number.isFinite(angleDeg)) throw new FitInputError(`${path}[${index}].angleDeg`, "expected an angle in degrees");
    if (!(radiusMm > 0 && radiusMm <= longestMm))
      throw new FitInputError(`${path}[${index}].radiusMm`, "expected a radius in mm above 0");
  });
}

interface Asked {
  limits: Limits;
  /** Of one radius; 0 where it is taken as exact. */
  radiusErrorMm: number;
}

function judgeMean(errors: readonly number[], { limits, radiusErrorMm }: Asked): Reading {
  const limit = limitValue(limits, "mean-radial-error-mm");
  const value = errors.reduce((sum, error) => sum + error, 0) / errors.length;
  const standardError = radiusErrorMm / Math.sqrt(errors.length);
  const sureMm = Math.abs(value) - limitValue(limits, "close-errors") * standardError;
  return {
    value,
    unit: "mm",
    standardError,
    limit,
    limitText: `at most ${figure(limit)} mm either way`,
    state: isAbove(sureMm, limit) ? "not met" : radiusErrorMm > 0 ? "unknown" : "met",
    why: `Mean radial error ${figure(value)} mm over ${counted(errors.length, "point")}; beyond ${figure(limit)} mm no socket was acceptable.`,
    source: "sanders-severance-2012",
  };
}

function judgeSpread(errors: readonly number[], { limits, radiusErrorMm }: Asked): Reading {
  const limit = limitValue(limits, "radial-error-iqr-mm");
  const asked = { unit: "mm", limit, limitText: `at most ${figure(limit)} mm`, source: "sanders-severance-2012" };
  if (errors.length < fewestForQuartiles)
    return { ...asked, state: "unknown", why: `${counted(errors.length, "point")}: too few for an interquartile range.` };
  const value = interquartileRangeOf(errors);
  const why = `Interquartile range of the radial errors ${figure(value)} mm; above ${figure(limit)} mm sockets needed modification.`;
  return radiusErrorMm > 0
    ? { ...asked, value, state: "unknown", why: `${why} A tape cannot tell this.` }
    : { ...asked, value, state: isAbove(value, limit) ? "not met" : "met", why };
}

function worse(one: ReadingState, other: ReadingState): ReadingState {
  const order: readonly ReadingState[] = ["met", "close", "unknown", "not met", "forbids"];
  return order.indexOf(one) > order.indexOf(other) ? one : other;
}

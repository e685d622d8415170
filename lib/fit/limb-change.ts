/** Has the residual limb changed between two measurements, or is the difference only the tape? */
import type { Station } from "./bundle";
import { FitInputError } from "./errors";
import { figure } from "./figures";
import { volumeOfPart } from "./limb-volume";
import { defaultLimits, limitValue } from "./limits";
import { checkStations, commonSpan, type Span } from "./stations";

/** *Settled*: surely within the margin. *Changing*: surely changed, and not surely within it. */
export type LimbChangeState = "settled" | "changing" | "cannot tell";

export interface LimbChange extends Span {
  percent: number;
  standardErrorPercent: number;
  /** The 90 % interval of the change. */
  low90: number;
  high90: number;
  state: LimbChangeState;
  earlierMl: number;
  laterMl: number;
  /** The least difference of the two volumes that is more than error (95 %), in mL. */
  detectableChangeMl: number;
  why: string;
  source: "jarl-2003";
}

export interface LimbChangeError {
  circumferenceSdMm: number;
  /** The margin within which a limb has settled. */
  settledPercent?: number;
}

/** One-sided 95 %, so that the interval of both sides is one of 90 %. */
const z90 = 1.645;
const z95 = 1.96;

/**
 * The change of volume over the span that both measurements cover, by two one-sided tests: *settled* where its 90 %
 * interval lies inside ±5 %, else *changing* where it excludes 0, else *cannot tell*.
 *
 * @param error of one circumference, in mm
 * @returns percent of the earlier volume
 * @throws FitInputError where a station is wrong, or the two have no length in common
 * @source jarl-2003
 * @source two-one-sided-tests
 *
 * @example
 * limbChange(
 *   [{ distanceMm: 0, circumferenceMm: 200 }, { distanceMm: 100, circumferenceMm: 240 }],
 *   [{ distanceMm: 0, circumferenceMm: 190 }, { distanceMm: 100, circumferenceMm: 228 }],
 *   { circumferenceSdMm: 1.5 },
 * ).percent
 * // => -9.75
 */
export function limbChange(
  earlier: readonly Station[] | { stations: readonly Station[] },
  later: readonly Station[] | { stations: readonly Station[] },
  error: LimbChangeError = { circumferenceSdMm: limitValue(defaultLimits, "tape-error-mm") },
): LimbChange {
  const [before, after] = [stationsOf(earlier, "earlier"), stationsOf(later, "later")];
  const span = commonSpan(before, after);
  if (!span) throw new FitInputError("later", "expected stations that cover some of the same length as the earlier ones");
  const { circumferenceSdMm, settledPercent = limitValue(defaultLimits, "settled-percent") } = error;
  if (!(settledPercent >= 0 && settledPercent <= 100)) throw new FitInputError("settledPercent", "expected 0 to 100 %");
  const { fromMm, toMm } = span;
  const first = volumeOfPart(before, { fromMm, toMm, circumferenceSdMm });
  const last = volumeOfPart(after, { fromMm, toMm, circumferenceSdMm });
  const standardErrorMl = Math.sqrt(first.standardErrorMl ** 2 + last.standardErrorMl ** 2);
  const percent = (100 * (last.volumeMl - first.volumeMl)) / first.volumeMl;
  const standardErrorPercent = (100 * standardErrorMl) / first.volumeMl;
  const interval = { low90: percent - z90 * standardErrorPercent, high90: percent + z90 * standardErrorPercent };
  return {
    percent,
    standardErrorPercent,
    low90: interval.low90,
    high90: interval.high90,
    state: stateOf(interval, settledPercent),
    fromMm,
    toMm,
    earlierMl: first.volumeMl,
    laterMl: last.volumeMl,
    detectableChangeMl: z95 * standardErrorMl,
    why: `From ${figure(first.volumeMl, 0)} to ${figure(last.volumeMl, 0)} mL between ${figure(span.fromMm, 0)} and ${figure(span.toMm, 0)} mm: ${figure(percent, 1)} % ± ${figure(standardErrorPercent, 1)} %.`,
    source: "jarl-2003",
  };
}

function stateOf({ low90, high90 }: { low90: number; high90: number }, settledPercent: number): LimbChangeState {
  if (low90 > -settledPercent && high90 < settledPercent) return "settled";
  return low90 > 0 || high90 < 0 ? "changing" : "cannot tell";
}

function stationsOf(measured: readonly Station[] | { stations: readonly Station[] }, path: string): readonly Station[] {
  const stations = "stations" in measured ? measured.stations : measured;
  checkStations(stations, path);
  return stations;
}

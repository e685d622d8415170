/** The course of comfort, pain and exertion over the minutes worn, and of what was felt where. */
import type { Correction, Felt, Scale, TrialCheckIn } from "./replay-wear-trial-check-ins";
import { mannKendall, type Trend } from "./statistics/mann-kendall";
import { theilSen } from "./statistics/theil-sen";
import type { Aspect, FeelingKind, Third } from "./words";

export interface ScaleCourse {
  scale: Scale;
  /** When it was said during the trial, in the order of time. */
  during: readonly TrialCheckIn[];
  /** How often it was said during the trial. */
  count: number;
  /** The lowest comfort, the highest pain, the highest exertion, wherever it was said. Null where nothing was. */
  worst: number | null;
  /** The last value; one from outside the trial takes its place only where it is worse. */
  last: number | null;
  /** Null with fewer than two values; found when first asked for. */
  trend: () => Trend | null;
}

/** The same as data, for whoever shows or stores it. */
export interface ScaleSeries extends Pick<ScaleCourse, "worst" | "last"> {
  /** What was said during the trial, in the order of time. */
  readonly points: { wornMinutes: number; value: number }[];
  /** Theil–Sen, in points per minute worn; null where there are not two moments. */
  readonly slopePerMinute: number | null;
  /** One-sided Mann–Kendall chance of so high a rise where there is none; null with fewer than two values. */
  readonly pRise: number | null;
  readonly pFall: number | null;
}

/**
 * @param during check-ins of the trial, in the order of time
 * @param outside what was said outside it, and counts only where it is bad
 */
export function scaleCourse(
  scale: Scale,
  during: readonly TrialCheckIn[],
  outside: readonly (TrialCheckIn | Correction)[],
): ScaleCourse {
  const worse = scale === "comfort" ? lower : higher;
  const worstOutside = outside.reduce((worst: number | null, said) => worse(worst, said[scale]), null);
  return {
    scale,
    during,
    count: during.length,
    worst: during.reduce((worst: number | null, said) => worse(worst, said[scale]), worstOutside),
    last: worse(worstOutside, during.at(-1)?.[scale]),
    trend: once(() => (during.length < 2 ? null : mannKendall(during.map((said) => said[scale])))),
  };
}

/** Points, slope and trend cost more than the whole replay where a trial is long, and few ask for them. */
export function seriesOf({ scale, during, worst, last, trend }: ScaleCourse): ScaleSeries {
  const points = once(() => during.map((said) => ({ wornMinutes: said.wornMinutes, value: said[scale] })));
  const slope = once(() => (new Set(during.map(({ wornMinutes }) => wornMinutes)).size < 2 ? null : slopeOf(points())));
  return {
    get points() {
      return points();
    },
    worst,
    last,
    get slopePerMinute() {
      return slope();
    },
    get pRise() {
      return trend()?.pUp ?? null;
    },
    get pFall() {
      return trend()?.pDown ?? null;
    },
  };
}

const lower = (a: number | null, b: number | undefined): number | null => (b === undefined ? a : a === null ? b : Math.min(a, b));
const higher = (a: number | null, b: number | undefined): number | null =>
  b === undefined ? a : a === null ? b : Math.max(a, b);

const slopeOf = (points: ScaleSeries["points"]): number =>
  theilSen(points.map(({ wornMinutes, value }) => ({ x: wornMinutes, y: value }))).slope;

/** Computes when first asked, and only then. */
export function once<T>(compute: () => T): () => T {
  let found: { value: T } | undefined;
  return () => {
    found ??= { value: compute() };
    return found.value;
  };
}

export interface FeltThere {
  kind: FeelingKind;
  aspect?: Aspect;
  third?: Third;
  /** At how many check-ins. */
  times: number;
  firstWornMinutes: number;
  lastWornMinutes: number;
}

/** What was felt, by kind and place, in the order in which it was first felt. */
export function feelingsByPlace(checkIns: readonly TrialCheckIn[]): FeltThere[] {
  const found = new Map<string, FeltThere>();
  for (const { feelings, wornMinutes } of checkIns) {
    if (feelings.length === 0) continue;
    for (const [place, { kind, aspect, third }] of byPlace(feelings)) {
      const before = found.get(place);
      found.set(place, {
        kind,
        ...(aspect === undefined ? {} : { aspect }),
        ...(third === undefined ? {} : { third }),
        times: (before?.times ?? 0) + 1,
        firstWornMinutes: before?.firstWornMinutes ?? wornMinutes,
        lastWornMinutes: wornMinutes,
      });
    }
  }
  return [...found.values()];
}

/** The same feeling said twice at one check-in is one feeling. */
const byPlace = (feelings: readonly Felt[]): Map<string, Felt> =>
  new Map(feelings.map((feeling) => [`${feeling.kind} ${feeling.aspect ?? ""} ${feeling.third ?? ""}`, feeling]));

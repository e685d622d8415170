/** Has the residual limb stopped changing? */
import type { EpisodeRecord, LimbMeasurement } from "./bundle";
import { figure } from "./figures";
import { instantsOf } from "./instant";
import { type LimbChange, type LimbChangeState, limbChange } from "./limb-change";
import { defaultLimits, type Limits, limitValue } from "./limits";
import type { SourceId } from "./sources";
import { commonSpan, spanOf } from "./stations";

export interface Settling {
  state: LimbChangeState;
  why: string;
  source: SourceId;
  /** The two measurements that were compared, and the change between them. */
  compared?: { earlierId: string; laterId: string; change: LimbChange };
  /** What makes the measurements less sure, in plain sentences. */
  warnings: string[];
}

const dayMs = 86_400_000;

/**
 * Compares the latest measurement with the latest one that is at least 14 days older, over what both cover.
 *
 * *Cannot tell* where there are no two such measurements, where they share less than half of the longer one, or where
 * the tape is not good enough to say.
 *
 * @param measurements in any order
 * @throws FitInputError where a station or an instant is wrong
 * @source jarl-2003
 *
 * @example
 * hasSettled([], defaultLimits).state
 * // => "cannot tell"
 */
export function hasSettled(measurements: readonly LimbMeasurement[], limits: Limits = defaultLimits): Settling {
  const instants = instantsOf(measurements, "measurements");
  const timed = measurements
    .map((measurement, index) => ({ measurement, atMs: instants[index] ?? Number.NaN }))
    .sort((a, b) => a.atMs - b.atMs);
  const apartDays = limitValue(limits, "settled-apart-days");
  const later = timed.at(-1);
  if (!later) return cannotTell("The limb has not been measured.");
  const earlier = timed.findLast(({ atMs }) => later.atMs - atMs >= apartDays * dayMs);
  if (!earlier) return cannotTell(`No measurement is at least ${apartDays} days older than the latest.`);
  const warnings = warningsOf(earlier, later, limits);
  if (sharedPart(earlier.measurement, later.measurement) < limitValue(limits, "common-span-share"))
    return cannotTell("The two measurements cover too little of the same length to be compared.", warnings);
  const change = limbChange(earlier.measurement, later.measurement, changeError(limits));
  return {
    state: change.state,
    why: sentence(change, (later.atMs - earlier.atMs) / dayMs, limitValue(limits, "settled-percent")),
    source: "jarl-2003",
    compared: { earlierId: earlier.measurement.id, laterId: later.measurement.id, change },
    warnings,
  };
}

export const changeError = (limits: Limits) => ({
  circumferenceSdMm: limitValue(limits, "tape-error-mm"),
  settledPercent: limitValue(limits, "settled-percent"),
});

/** What both cover, as a share of the longer of the two. */
export function sharedPart(one: Pick<LimbMeasurement, "stations">, other: Pick<LimbMeasurement, "stations">): number {
  const common = commonSpan(one.stations, other.stations);
  const longestMm = Math.max(...[one, other].map(({ stations }) => spanOf(stations).toMm - spanOf(stations).fromMm));
  return common && longestMm > 0 ? (common.toMm - common.fromMm) / longestMm : 0;
}

const cannotTell = (why: string, warnings: string[] = []): Settling => ({
  state: "cannot tell",
  why,
  source: "clinic-setting",
  warnings,
});

const endings: Record<LimbChangeState, (percent: number) => string> = {
  settled: (percent) => `inside ±${figure(percent)} %, so the limb has settled`,
  changing: (percent) => `not inside ±${figure(percent)} % and without 0, so the limb is changing`,
  "cannot tell": (percent) => `not inside ±${figure(percent)} %, and with 0 in it: it cannot be told`,
};

const sentence = ({ percent, low90, high90, state }: LimbChange, days: number, settledPercent: number): string =>
  `Volume changed by ${figure(percent, 1)} % in ${figure(days, 0)} days; 90 % interval ${figure(low90, 1)} to ${figure(high90, 1)} %, ${endings[state](settledPercent)}.`;

interface Timed {
  measurement: LimbMeasurement;
  atMs: number;
}

const hourMs = 3_600_000;

function warningsOf(earlier: Timed, later: Timed, limits: Limits): string[] {
  const least = limitValue(limits, "doffed-before-measuring-minutes");
  const hasty = [earlier, later].flatMap(({ measurement: { id, minutesSinceDoffing } }) =>
    minutesSinceDoffing !== undefined && minutesSinceDoffing < least
      ? [
          `Measurement ${id} was taken ${figure(minutesSinceDoffing)} min after doffing; a limb takes about ${least} min to settle.`,
        ]
      : [],
  );
  const intoTheDay = (later.atMs - earlier.atMs) % dayMs;
  const otherTime = Math.min(intoTheDay, dayMs - intoTheDay) > limitValue(limits, "same-time-hours") * hourMs;
  return otherTime ? [...hasty, "The two were taken at different times of day."] : hasty;
}

/** What speaks for a settled limb beside the measurements; it never takes their place. */
export function besideSettling(
  { cause, lossOn, birthOn }: Pick<EpisodeRecord, "cause" | "lossOn" | "birthOn">,
  { asOf, limits = defaultLimits }: { asOf: string; limits?: Limits },
): string[] {
  const adult = cause === "congenital" && birthOn !== undefined && isAdult(birthOn, { asOf, limits });
  const months = limitValue(limits, "settled-months");
  const long = lossOn !== undefined && midnightMs(asOf) > midnightMs(lossOn, { monthsLater: months });
  return [
    ...(adult ? ["A congenital limb difference in an adult."] : []),
    ...(long ? [`More than ${months} months since limb loss: most limbs have settled by then.`] : []),
  ];
}

export const isAdult = (birthOn: string, { asOf, limits }: { asOf: string; limits: Limits }): boolean =>
  midnightMs(birthOn) <= midnightMs(asOf) &&
  midnightMs(asOf) >= midnightMs(birthOn, { monthsLater: 12 * limitValue(limits, "adult-years") });

/** The beginning, in UTC, of the date so many months later; where that month lacks the day, so many days into the next. */
export const midnightMs = (date: string, { monthsLater = 0 } = {}): number =>
  Date.UTC(Number(date.slice(0, 4)), Number(date.slice(5, 7)) - 1 + monthsLater, Number(date.slice(8, 10)));

/** How a wearer builds up wearing time with a new socket. A starting point: the wearer's own prosthetist changes it. */
import { FitInputError } from "./errors";
import { defaultLimits, type Limits, limitValue } from "./limits";
import { type CautionKind, cautionKinds } from "./words";

export interface WearStep {
  /** 1 for the first. */
  step: number;
  /** The day it is planned for and the last one of it: dates, as 2026-12-01. */
  from: string;
  /** Missing for the last step, which goes on. */
  until?: string;
  /** Days since the beginning, the first day being 1. */
  day: number;
  days: number | null;
  /** Minutes of one session; null is all day. */
  minutes: number | null;
  sessions: number;
}

export interface WearSchedule {
  steps: WearStep[];
  /** A caution halves the start and doubles the days. */
  gentle: boolean;
  /** The first day on which the socket may be worn all day, if every step goes well. */
  allDayFrom: string;
  /** In plain words, to be read out. */
  rules: readonly string[];
  stopWhen: readonly string[];
  caution: string;
  source: "wear-schedule";
}

export interface WearScheduleRequest {
  /** First day of wearing, as 2026-12-01. */
  start: string;
  /** The wearer's cautions, as words or as they stand in an episode. */
  cautions?: readonly (CautionKind | { readonly kind: CautionKind })[];
  /** Minutes of the first session for who already wears so long without marks: the schedule begins at that step. */
  from?: number;
}

/** Minutes of a session after the first step; then all day. */
const laterMinutes = [45, 60, 90, 120, 150] as const;
/** From a first session of half as long no step may more than double, so the second is 30 and not 45. */
const gentleLaterMinutes = [30, 60, 90, 120, 150] as const;
const gentleCautions: readonly CautionKind[] = ["reduced-feeling", "fragile-skin", "poor-circulation"];

const rules = [
  "Look at the skin each time you take the socket off, and again 20 minutes later.",
  "Go on to the next step only if the redness is gone within 20 minutes and nothing hurts.",
  "If redness takes longer, or something hurts a little, stay at this step, or go back one.",
] as const;
const stopWhen = [
  "Skin that is broken, blistered, purple, or red for longer than it was the day before: take the socket off, do not put it on again, and call.",
  "Numbness, tingling, cold, a change of colour, swelling, spreading redness or fever: take it off and call a physician.",
] as const;
const caution =
  "Common practice, no source. The wearer's own prosthetist changes it; follow what they and the makers of the parts say.";

/**
 * Sessions a day and minutes each: 30 min three times on the first day, then 45, 60, 90, 120, 150, all day from the
 * seventh. Reduced feeling, fragile skin or poor circulation halve the start (15 min) and double the days: each step
 * lasts two, all day from the thirteenth.
 *
 * @param request real dates; a step is planned only, see `nextWearStep`
 * @throws FitInputError where the start is no date of the calendar, a caution is unknown, or `from` is not above 0
 * @source wear-schedule
 *
 * @example
 * wearSchedule({ start: "2026-02-25", cautions: [] }).steps.map(({ from, minutes }) => `${from} ${minutes ?? "all day"}`)
 * // => ["2026-02-25 30", "2026-02-26 45", "2026-02-27 60", "2026-02-28 90", "2026-03-01 120", "2026-03-02 150", "2026-03-03 all day"]
 */
export function wearSchedule({ start, cautions = [], from }: WearScheduleRequest, limits: Limits = defaultLimits): WearSchedule {
  checkDate(start);
  const kinds = cautions.map((given, index) => {
    const kind = typeof given === "string" ? given : given.kind;
    if (!cautionKinds.includes(kind)) throw new FitInputError(`cautions[${index}]`, `expected one of ${cautionKinds.join(", ")}`);
    return kind;
  });
  if (from !== undefined && !(from > 0 && from <= 24 * 60)) throw new FitInputError("from", "expected minutes above 0");
  const gentle = kinds.some((kind) => gentleCautions.includes(kind));
  const firstMinutes = limitValue(limits, "wear-first-minutes") / (gentle ? 2 : 1);
  const all = [firstMinutes, ...(gentle ? gentleLaterMinutes : laterMinutes)];
  const beginning = from === undefined ? 0 : beginsAt(all, from);
  const minutes: readonly (number | null)[] = [...all.slice(beginning), null];
  const daysEach = gentle ? 2 : 1;
  const steps = minutes.map((length, index): WearStep => {
    const day = 1 + index * daysEach;
    const isLast = length === null;
    return {
      step: index + 1,
      from: dateAfter(start, day - 1),
      ...(isLast ? {} : { until: dateAfter(start, day + daysEach - 2) }),
      day,
      days: isLast ? null : daysEach,
      minutes: length,
      sessions: isLast ? 1 : limitValue(limits, "wear-sessions"),
    };
  });
  return { steps, gentle, allDayFrom: steps.at(-1)?.from ?? start, rules, stopWhen, caution, source: "wear-schedule" };
}

/** The longest step that is no longer than what is worn already; the first where that is shorter than any. */
const beginsAt = (minutes: readonly number[], from: number): number =>
  Math.max(
    0,
    minutes.findLastIndex((length) => length <= from),
  );

export interface SkinAfterWearing {
  /** Minutes after taking it off until the redness was gone; null where it had not gone, or nobody looked. */
  rednessGoneMin: number | null;
  hurts: boolean;
  /** Broken, blistered or purple skin, numbness, cold, or another reason to stop. */
  stopSign: boolean;
}

/**
 * What comes after a step: the next one only if the redness was gone within 20 minutes and nothing hurt. Redness that
 * nobody saw go is not gone.
 *
 * @throws FitInputError where the minutes are negative or no number
 * @source wear-schedule
 *
 * @example
 * nextWearStep({ rednessGoneMin: 25, hurts: false, stopSign: false })
 * // => "stay or go back one"
 */
export function nextWearStep(
  { rednessGoneMin, hurts, stopSign }: SkinAfterWearing,
  limits: Limits = defaultLimits,
): "next step" | "stay or go back one" | "stop and call" {
  if (rednessGoneMin !== null && !(rednessGoneMin >= 0)) throw new FitInputError("rednessGoneMin", "expected minutes, or null");
  if (stopSign) return "stop and call";
  const faded = rednessGoneMin !== null && rednessGoneMin <= limitValue(limits, "fade-minutes");
  return faded && !hurts ? "next step" : "stay or go back one";
}

function checkDate(date: string): void {
  const ms = /^\d{4}-\d\d-\d\d$/.test(date) ? Date.parse(`${date}T00:00:00Z`) : Number.NaN;
  // 31 June is taken for 1 July by some readers of dates.
  if (Number.isNaN(ms) || new Date(ms).toISOString().slice(0, 10) !== date)
    throw new FitInputError("start", "expected a date, as 2026-12-01");
}

/** By the calendar: no clock is put forward or back in UTC. */
const dateAfter = (date: string, days: number): string =>
  new Date(Date.parse(`${date}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);

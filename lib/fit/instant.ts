/** Instants as milliseconds, so that times of any offset compare. */
import { FitInputError } from "./errors";

const withOffset = /^\d{4}-\d\d-\d\dT\d\d:\d\d(?::\d\d(?:\.\d+)?)?(?:Z|[+-]\d\d:\d\d)$/;

/**
 * Milliseconds since 1970 of an ISO 8601 instant with any offset.
 *
 * @param path of the field, for the error
 * @throws FitInputError where it is not an instant, or has no offset: its meaning would depend on the machine
 *
 * @example
 * instantMs("2026-10-06T00:00:00+14:00", "at") - instantMs("2026-10-05T10:00:00Z", "at")
 * // => 0
 */
export function instantMs(at: string, path: string): number {
  const ms = instantOrNaN(at);
  if (Number.isNaN(ms)) throw new FitInputError(path, "expected an instant with its offset, as 2026-10-05T10:00:00Z");
  return ms;
}

/** The same; NaN where it is not an instant, for whoever has many to read and wants to name a path only where one is wrong. */
export function instantOrNaN(at: string): number {
  const usual = usualMs(at);
  if (!Number.isNaN(usual)) return usual;
  return withOffset.test(at) && isDayOfMonth(at) ? Date.parse(at) : Number.NaN;
}

/** `Date.parse` takes 30 February as 2 March. */
const isDayOfMonth = (at: string): boolean => new Date(`${at.slice(0, 10)}T00:00:00Z`).getUTCDate() === Number(at.slice(8, 10));

/**
 * The instants of records, in their order. The path of a record is only put together where its instant is wrong.
 *
 * @throws FitInputError as `instantMs`
 */
export function instantsOf(records: readonly { at: string }[], path: string): number[] {
  return records.map(({ at }, index) => {
    const ms = instantOrNaN(at);
    return Number.isNaN(ms) ? instantMs(at, `${path}[${index}].at`) : ms;
  });
}

/**
 * The forms in which nearly every instant is written: to the second or to the millisecond, on a day that every month
 * has. Read here in half the time that `Date.parse` takes, because a long trial has a thousand of them. NaN for
 * whatever is written otherwise, right or wrong: that is left to `Date.parse`.
 */
function usualMs(at: string): number {
  // A caller without types may give anything.
  if (typeof at !== "string" || at[4] !== "-" || at[7] !== "-" || at[10] !== "T" || at[13] !== ":" || at[16] !== ":")
    return Number.NaN;
  const year = 100 * twoDigits(at, 0) + twoDigits(at, 2);
  const month = twoDigits(at, 5);
  const day = twoDigits(at, 8);
  const hour = twoDigits(at, 11);
  const minute = twoDigits(at, 14);
  const second = twoDigits(at, 17);
  if (!(isWithin(month, 1, 12) && isWithin(day, 1, 28) && isWithin(hour, 0, 23) && isWithin(minute, 0, 59))) return Number.NaN;
  if (!(isWithin(second, 0, 59) && isWithin(year, 100, 9999))) return Number.NaN;
  const wholeMs = Date.UTC(year, month - 1, day, hour, minute, second);
  if (at[19] !== ".") return wholeMs - offsetMs(at, 19);
  const hundredths = twoDigits(at, 20);
  const thousandth = twoDigits(at, 21) - 10 * (hundredths % 10);
  return isWithin(hundredths, 0, 99) && isWithin(thousandth, 0, 9)
    ? wholeMs + 10 * hundredths + thousandth - offsetMs(at, 23)
    : Number.NaN;
}

/** By how much local time is ahead of UTC, written from this place to the end; NaN where that is no offset. */
function offsetMs(at: string, from: number): number {
  const sign = at[from];
  if (sign === "Z" && at.length === from + 1) return 0;
  if ((sign !== "+" && sign !== "-") || at[from + 3] !== ":" || at.length !== from + 6) return Number.NaN;
  const hours = twoDigits(at, from + 1);
  const minutes = twoDigits(at, from + 4);
  if (!(isWithin(hours, 0, 23) && isWithin(minutes, 0, 59))) return Number.NaN;
  return (sign === "+" ? 60_000 : -60_000) * (60 * hours + minutes);
}

const zero = 48;
/** So far below 0 that no number made with it is within a range. Whole, because whole numbers are compared sooner than NaN. */
const noDigits = -1_000_000;

function twoDigits(text: string, place: number): number {
  const tens = text.charCodeAt(place) - zero;
  const ones = text.charCodeAt(place + 1) - zero;
  return isWithin(tens, 0, 9) && isWithin(ones, 0, 9) ? 10 * tens + ones : noDigits;
}

const isWithin = (number: number, least: number, most: number): boolean => number >= least && number <= most;

/** The same instant written in UTC. */
export const instantOf = (ms: number): string => new Date(ms).toISOString();

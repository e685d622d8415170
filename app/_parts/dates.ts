/**
 * Days and times for the eye, in British order. Days are calendar days of the clinic as `2026-10-05`; instants are shown
 * in the clinic's zone. The names stand here because browsers and servers abbreviate them differently.
 */

const months = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
] as const;
const weekdays = ["Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"] as const;

/** @example shortDay("2026-10-05") // => "5 Oct" */
export function shortDay(day: string): string {
  const { date, month } = partsOf(day);
  return `${date}\u00a0${month.slice(0, 3)}`;
}

/** @example longDay("2026-10-05") // => "5 October 2026" */
export function longDay(day: string): string {
  const { date, month, year } = partsOf(day);
  return `${date}\u00a0${month} ${year}`;
}

/** @example dayWords("2026-10-05") // => "Monday 5 October" */
export function dayWords(day: string): string {
  const { date, month, weekday } = partsOf(day);
  return `${weekday} ${date}\u00a0${month}`;
}

/** @example dueWords("2026-10-03", "2026-10-05") // => "2 days late" */
export function dueWords(dueOn: string, today: string): string {
  const days = daysBetween(today, dueOn);
  if (days === 0) return "today";
  const count = `${Math.abs(days)} ${Math.abs(days) === 1 ? "day" : "days"}`;
  return days < 0 ? `${count} late` : `in ${count}`;
}

/** Whole days from one calendar day to another; negative where the second is earlier. */
export const daysBetween = (from: string, to: string): number => Math.round((utcOf(to) - utcOf(from)) / 86_400_000);

/** The calendar day of an instant in a zone: "2026-10-05". */
export function dayAt(instant: string | Date, timeZone: string): string {
  const { year, month, day } = clockParts(instant, timeZone);
  return `${year}-${month}-${day}`;
}

/** @example timeAt("2026-10-05T13:12:00Z", "Europe/Lisbon") // => "14:12" */
export function timeAt(instant: string | Date, timeZone: string): string {
  const { hour, minute } = clockParts(instant, timeZone);
  return `${hour}:${minute}`;
}

/** @example dayAndTimeAt("2026-10-05T13:12:00Z", "Europe/Lisbon") // => "5 Oct 2026, 14:12" */
export function dayAndTimeAt(instant: string | Date, timeZone: string): string {
  const day = dayAt(instant, timeZone);
  return `${shortDay(day)} ${day.slice(0, 4)}, ${timeAt(instant, timeZone)}`;
}

const utcOf = (day: string): number => Date.UTC(Number(day.slice(0, 4)), Number(day.slice(5, 7)) - 1, Number(day.slice(8, 10)));

function partsOf(day: string) {
  const at = new Date(utcOf(day));
  return {
    year: at.getUTCFullYear(),
    date: at.getUTCDate(),
    month: months[at.getUTCMonth()] ?? day,
    weekday: weekdays[at.getUTCDay()] ?? day,
  };
}

function clockParts(instant: string | Date, timeZone: string): Record<"year" | "month" | "day" | "hour" | "minute", string> {
  const parts = { year: "", month: "", day: "", hour: "", minute: "" };
  for (const { type, value } of clockOf(timeZone).formatToParts(new Date(instant)))
    if (type in parts) Object.assign(parts, { [type]: value });
  return parts;
}

const clocks = new Map<string, Intl.DateTimeFormat>();

/** Making a formatter is slow; a page shows many times in one zone. */
function clockOf(timeZone: string): Intl.DateTimeFormat {
  const known = clocks.get(timeZone);
  if (known) return known;
  const made = new Intl.DateTimeFormat("en-GB", {
    timeZone,
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    minute: "2-digit",
    hourCycle: "h23",
  });
  clocks.set(timeZone, made);
  return made;
}

/** Calendar days in the clinic's zone. */
import { FitInputError } from "./errors";
import { instantOf } from "./instant";

const dayMs = 86_400_000;

/**
 * The day of an instant in a time zone, as 2026-10-05.
 *
 * @throws FitInputError with `clinic.timeZone` where there is no such zone
 *
 * @example
 * dayIn("Europe/Lisbon", Date.parse("2026-07-01T23:30:00Z"))
 * // => "2026-07-02"
 */
export function dayIn(timeZone: string, atMs: number): string {
  try {
    return formatOf(timeZone).format(atMs);
  } catch {
    throw new FitInputError("clinic.timeZone", `expected a time zone, as Europe/Lisbon; at ${instantOf(atMs)}`);
  }
}

/** Making one takes longer than all that is asked of it. */
const formats = new Map<string, Intl.DateTimeFormat>();

function formatOf(timeZone: string): Intl.DateTimeFormat {
  const format = formats.get(timeZone) ?? new Intl.DateTimeFormat("sv-SE", { timeZone, dateStyle: "short" });
  formats.set(timeZone, format);
  return format;
}

/**
 * Whole days from one instant's day to another's, in a time zone; less than 0 where the second comes first.
 *
 * @throws FitInputError as `dayIn`
 *
 * @example
 * daysBetween(Date.parse("2026-03-28T23:30:00Z"), Date.parse("2026-03-29T06:00:00Z"), "Europe/Lisbon")
 * // => 1
 */
export const daysBetween = (fromMs: number, toMs: number, timeZone: string): number =>
  (Date.parse(dayIn(timeZone, toMs)) - Date.parse(dayIn(timeZone, fromMs))) / dayMs;

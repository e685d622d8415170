/** Times are kept in UTC and written down in the clinic's zone. */
import { TZDate } from "@date-fns/tz";

const localTime = /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d)(?::(\d\d))?$/;

/** "2026-10-05T10:00" on the clinic's wall, as an instant in ISO 8601; anything else is left as it is for the schema to refuse. */
export function fromClinicTime(text: string, timeZone: string): string {
  const parts = localTime.exec(text);
  if (!parts) return text;
  const [year = 0, month = 1, day = 1, hour = 0, minute = 0, second = 0] = parts.slice(1).map((part) => Number(part ?? 0));
  const calendar = new Date(Date.UTC(year, month - 1, day));
  if (calendar.getUTCMonth() !== month - 1 || calendar.getUTCDate() !== day || hour > 23 || minute > 59) return text;
  return new Date(new TZDate(year, month - 1, day, hour, minute, second, timeZone).getTime()).toISOString();
}

/** An instant as the value of a datetime-local field in the clinic's zone. */
export function toClinicTime(at: Date | string, timeZone: string): string {
  const local = new TZDate(new Date(at).getTime(), timeZone);
  const two = (part: number) => String(part).padStart(2, "0");
  return `${local.getFullYear()}-${two(local.getMonth() + 1)}-${two(local.getDate())}T${two(local.getHours())}:${two(local.getMinutes())}`;
}

/** The calendar day of an instant in the clinic's zone, as 2026-10-05. */
export const clinicDay = (at: Date | string, timeZone: string): string => toClinicTime(at, timeZone).slice(0, 10);

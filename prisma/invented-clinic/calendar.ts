/** The days of the stories: counted back from the day of loading, in the clinic's zone, moved off weekends. */
import { TZDate } from "@date-fns/tz";
import { clinicDay, fromClinicTime } from "@/lib/records/clinic-time";
import { clinicTimeZone } from "./accounts";

/** So many days ago at this time on the clinic's wall; or, for what is going on right now, so many minutes ago. */
export type When = readonly [daysAgo: number, wallClock: string] | { minutesAgo: number };

export interface Calendar {
  instant: (when: When) => Date;
  /** The calendar day so many days ago; a day to come has a negative number. Never moved off a weekend. */
  day: (daysAgo: number) => string;
}

export const minutesAfter = (at: Date, minutes: number): Date => new Date(at.getTime() + Math.round(minutes * 60_000));

/** Noon of a day, as 2027-02-28, on the clinic's wall. */
export const noonOf = (day: string): Date => new Date(fromClinicTime(`${day}T12:00`, clinicTimeZone));

export function calendarOf(today: Date): Calendar {
  return {
    instant: (when) => {
      if ("minutesAgo" in when) return minutesAfter(today, -when.minutesAgo);
      const [daysAgo, wallClock] = when;
      return new Date(fromClinicTime(`${dayText(today, workdaysBack(today, daysAgo))}T${wallClock}`, clinicTimeZone));
    },
    day: (daysAgo) => dayText(today, daysAgo),
  };
}

/** A Saturday becomes the Friday before it, a Sunday the Monday after it, or the Friday where that Monday is not over. */
function workdaysBack(today: Date, daysAgo: number): number {
  const weekday = localDay(today, daysAgo).getDay();
  if (weekday === 6) return daysAgo + 1;
  if (weekday === 0) return daysAgo > 1 ? daysAgo - 1 : daysAgo + 2;
  return daysAgo;
}

/** Noon, so that a change of the clocks does not move the day. */
function localDay(today: Date, daysAgo: number): TZDate {
  const local = new TZDate(today.getTime(), clinicTimeZone);
  return new TZDate(local.getFullYear(), local.getMonth(), local.getDate() - daysAgo, 12, 0, 0, clinicTimeZone);
}

const dayText = (today: Date, daysAgo: number): string => clinicDay(new Date(localDay(today, daysAgo).getTime()), clinicTimeZone);

/** The days of the stories: counted back from the day of loading, in the clinic's zone, moved off weekends. */
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
  const todaysDay = clinicDay(today, clinicTimeZone);
  const day = (daysAgo: number) => dayBefore(todaysDay, daysAgo);
  return {
    instant: (when) => {
      if ("minutesAgo" in when) return minutesAfter(today, -when.minutesAgo);
      const [daysAgo, wallClock] = when;
      return new Date(fromClinicTime(`${day(workdaysBack(day, daysAgo))}T${wallClock}`, clinicTimeZone));
    },
    day,
  };
}

/** A Saturday becomes the Friday before it, a Sunday the Monday after it, or the Friday where that Monday is not over. */
function workdaysBack(day: Calendar["day"], daysAgo: number): number {
  const weekday = new Date(day(daysAgo)).getUTCDay();
  if (weekday === 6) return daysAgo + 1;
  if (weekday === 0) return daysAgo > 1 ? daysAgo - 1 : daysAgo + 2;
  return daysAgo;
}

/** Days of the calendar have no hours that a change of the clocks could move. */
const dayBefore = (day: string, days: number): string => new Date(Date.parse(day) - days * 86_400_000).toISOString().slice(0, 10);

/** The days of a wear schedule as a wearer ticks them off. */
import { dayWords, shortDay } from "@/app/_parts/dates";
import type { KeptStep } from "@/lib/records/see-after-release";

export interface WearingDay {
  /** "Monday 5 October", or "5 Oct to 9 Oct". */
  when: string;
  /** "30 minutes", "all day" */
  howLong: string;
  times: number;
  /** The last step goes on. */
  goesOn: boolean;
}

/** More rows than this do not fit on a page with what else it says: then a step is a row. */
const mostDays = 16;

const dayMs = 86_400_000;
const dayAfter = (day: string, days: number): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) + days * dayMs).toISOString().slice(0, 10);

/** @example wearingDays({ startOn: "2026-10-05", steps: [{ days: 1, minutes: null, sessions: 1 }] })[0].when // => "from Monday 5 October" */
export function wearingDays({ startOn, steps }: { startOn: string; steps: readonly KeptStep[] }): WearingDay[] {
  const begins = steps.map((_, index) => steps.slice(0, index).reduce((sum, { days }) => sum + days, 0));
  const isLast = (index: number) => index === steps.length - 1;
  const rows = steps.reduce((sum, { days }, index) => sum + (isLast(index) ? 1 : days), 0);
  return steps.flatMap(({ days, minutes, sessions }, index): WearingDay[] => {
    const from = dayAfter(startOn, begins[index] ?? 0);
    const row = { howLong: minutes === null ? "all day" : `${minutes} minutes`, times: sessions, goesOn: isLast(index) };
    if (isLast(index)) return [{ ...row, when: `from ${dayWords(from)}` }];
    if (days === 1 || rows <= mostDays)
      return Array.from({ length: days }, (_, day) => ({ ...row, when: dayWords(dayAfter(from, day)) }));
    return [{ ...row, when: `${shortDay(from)} to ${shortDay(dayAfter(from, days - 1))}` }];
  });
}

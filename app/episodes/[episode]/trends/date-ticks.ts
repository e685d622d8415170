/** Where dates are written along an axis: first days of months, or days where the axis is short. */
import { shortDay } from "@/app/_parts/dates";

const dayMs = 86_400_000;
const mostTicks = 8;

/** @param from days since 1970, as is `to` */
export function dateTicks([from, to]: readonly [number, number]): { at: number; label: string }[] {
  const months = monthsBetween(from, to);
  const every = [1, 2, 3, 6, 12, 24].find((step) => months.length / step <= mostTicks) ?? 60;
  if (months.length >= 3)
    return months.filter(({ number }) => number % every === 0).map(({ at }) => ({ at, label: monthWords(dayOf(at)) }));
  const days = Array.from({ length: Math.floor(to) - Math.ceil(from) + 1 }, (_, index) => Math.ceil(from) + index);
  const step = [1, 2, 7, 14].find((one) => days.length / one <= mostTicks) ?? 14;
  return days.filter((_, index) => index % step === 0).map((at) => ({ at, label: shortDay(dayOf(at)) }));
}

/** First days of months, each with a number that counts months without end. */
function monthsBetween(from: number, to: number): { at: number; number: number }[] {
  const monthOf = (at: number) => new Date(at * dayMs).getUTCFullYear() * 12 + new Date(at * dayMs).getUTCMonth();
  const [first, last] = [monthOf(from), monthOf(to)];
  return Array.from({ length: last - first + 1 }, (_, index) => first + index)
    .map((number) => ({ number, at: Date.UTC(Math.floor(number / 12), number % 12) / dayMs }))
    .filter(({ at }) => at >= from && at <= to);
}

const dayOf = (at: number): string => new Date(at * dayMs).toISOString().slice(0, 10);

/** "Oct 2026" */
const monthWords = (day: string): string => `${shortDay(day).split("\u00a0").at(-1)} ${day.slice(0, 4)}`;

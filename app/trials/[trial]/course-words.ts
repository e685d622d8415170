/** How comfort, pain and exertion went during a trial, in words. */
import { formatNumber } from "@/app/_parts/numbers";
import type { WearTrial } from "@/lib/fit";

type Series = WearTrial["series"]["pain"];

/** A change over the whole trial that is smaller than this nobody can tell from none: half a point of the scale. */
const leastChange = 0.5;

/**
 * @param trendP from which chance on a trend is not told as one
 * @example courseInWords("Pain", { points: [{ wornMinutes: 5, value: 2 }], … }, 0.05) // => "Pain was said once: 2."
 */
export function courseInWords(name: string, series: Series, trendP: number): string {
  const { points, slopePerMinute: slope, pRise, pFall, last, worst } = series;
  const [first, final] = [points[0], points.at(-1)];
  if (!first || !final) return `${name} was not said during the trial.`;
  if (slope === null) return `${name} was said once: ${formatNumber(final.value, 0)}.`;
  const change = slope * (final.wornMinutes - first.wornMinutes);
  const ends = `from ${formatNumber(first.value, 0)} to ${formatNumber(final.value, 0)}`;
  // What was said outside the trial counts where it is worse, and is no part of the line.
  const outside = last === final.value && points.some(({ value }) => value === worst) ? "" : ` ${outsideWords}`;
  const isFlat = points.every(({ value }) => value === first.value);
  if (Math.abs(change) < leastChange)
    return `${name} ${isFlat ? `stayed at ${formatNumber(final.value, 0)}` : `stayed about the same, ${ends}`}.${outside}`;
  const p = slope > 0 ? pRise : pFall;
  const chance = p !== null && p < trendP ? ` (p ${p < 0.001 ? "below 0.001" : formatNumber(p, 3)})` : "; it may be chance";
  return `${name} ${slope > 0 ? "rose" : "fell"} ${ends}, by about ${formatNumber(Math.abs(slope) * 10, 1)} every 10 minutes worn${chance}.${outside}`;
}

const outsideWords = "Something worse was said outside the trial.";

/** Circumferences at stated distances: what a limb or a socket is described by. */
import type { Station } from "./bundle";
import { FitInputError } from "./errors";

export interface Span {
  fromMm: number;
  toMm: number;
}

const longestMm = 3000;

/** @throws FitInputError where there are fewer than `least` stations, distances do not increase, or a length cannot be */
export function checkStations(stations: readonly Station[], path: string, least = 2): void {
  if (stations.length < least) throw new FitInputError(path, `expected at least ${least} stations`);
  stations.forEach(({ distanceMm, circumferenceMm }, index) => {
    const before = stations[index - 1];
    // Written so that NaN is refused.
    if (!(Math.abs(distanceMm) <= longestMm))
      throw new FitInputError(`${path}[${index}].distanceMm`, "expected a distance in mm");
    if (!(circumferenceMm > 0 && circumferenceMm <= longestMm))
      throw new FitInputError(`${path}[${index}].circumferenceMm`, "expected a circumference in mm above 0");
    if (before && distanceMm <= before.distanceMm)
      throw new FitInputError(`${path}[${index}].distanceMm`, "expected a greater distance than the station before");
  });
}

export const spanOf = (stations: readonly Station[]): Span => ({
  fromMm: stations[0]?.distanceMm ?? 0,
  toMm: stations.at(-1)?.distanceMm ?? 0,
});

/** What two measurements both cover; null where they have no length in common. */
export function commonSpan(one: readonly Station[], other: readonly Station[]): Span | null {
  const [a, b] = [spanOf(one), spanOf(other)];
  const common = { fromMm: Math.max(a.fromMm, b.fromMm), toMm: Math.min(a.toMm, b.toMm) };
  return common.toMm > common.fromMm ? common : null;
}

/** Shares of two neighbouring stations that make up the circumference at a distance between them. */
export interface Between {
  before: number;
  after: number;
  shareAfter: number;
}

/** Where a distance lies among the stations; null outside them. */
export function placeAmong(stations: readonly Station[], distanceMm: number): Between | null {
  const after = stations.findIndex((station) => station.distanceMm >= distanceMm);
  const [next, previous] = [stations[after], stations[after - 1]];
  if (!next || (!previous && next.distanceMm !== distanceMm)) return null;
  if (!previous) return { before: after, after, shareAfter: 0 };
  return { before: after - 1, after, shareAfter: (distanceMm - previous.distanceMm) / (next.distanceMm - previous.distanceMm) };
}

/** The circumference at a distance, by straight lines between stations; undefined outside them. */
export function circumferenceAt(stations: readonly Station[], distanceMm: number): number | undefined {
  const place = placeAmong(stations, distanceMm);
  const [before, after] = [stations[place?.before ?? -1], stations[place?.after ?? -1]];
  if (!place || !before || !after) return undefined;
  return before.circumferenceMm * (1 - place.shareAfter) + after.circumferenceMm * place.shareAfter;
}

/** From where an episode's stations are counted. */
interface CountedFrom {
  stationsFrom: string;
  limbLengthMm: number;
}

/**
 * The circumference at a distance from the distal end, from wherever the stations are counted; beyond the first and
 * last station what is there. Undefined without stations.
 *
 * @example
 * circumferenceFromEnd([{ distanceMm: 0, circumferenceMm: 240 }, { distanceMm: 100, circumferenceMm: 200 }], 130, { stationsFrom: "proximal landmark", limbLengthMm: 180 })
 * // => 220
 */
export function circumferenceFromEnd(
  stations: readonly Station[],
  distanceFromEndMm: number,
  { stationsFrom, limbLengthMm }: CountedFrom,
): number | undefined {
  const { fromMm, toMm } = spanOf(stations);
  const distanceMm = stationsFrom === "distal end" ? distanceFromEndMm : limbLengthMm - distanceFromEndMm;
  return circumferenceAt(stations, Math.min(toMm, Math.max(fromMm, distanceMm)));
}

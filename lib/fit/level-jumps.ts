/** A limb widens and narrows smoothly: where it seems not to, a level or a figure may have slipped. */
import type { Station } from "./bundle";
import { FitInputError } from "./errors";
import { checkStations, circumferenceAt } from "./stations";

/** A guard against slips of the pen, as the ranges of `input-ranges.ts`: it asks, and decides nothing about a fit. */
const jumpShare = 0.3;

export interface LevelJump {
  /** Of the level that differs from the one before it. */
  index: number;
  /** Above 0 where it is the larger. */
  percent: number;
  beforeMm: number;
}

/**
 * Levels whose circumference differs by more than 30 % from that of the level before. Where the limb had the same jump
 * between the same two levels last time, it is its shape and not a slip.
 *
 * @param lastTime stations of the measurement before, if there was one
 * @throws FitInputError where a station is wrong
 * @source common-practice
 *
 * @example
 * levelJumps([{ distanceMm: 0, circumferenceMm: 180 }, { distanceMm: 40, circumferenceMm: 284 }])
 * // => [{ index: 1, percent: 57.777778, beforeMm: 180 }]
 */
export function levelJumps(stations: readonly Station[], lastTime: readonly Station[] = []): LevelJump[] {
  checkStations(stations, "stations", 0);
  checkStations(lastTime, "lastTime", 0);
  return stations.flatMap((station, index) => {
    const before = stations[index - 1];
    if (!before) return [];
    const share = shareOf(before.circumferenceMm, station.circumferenceMm);
    const then = shareLastTime(before.distanceMm, station.distanceMm, lastTime);
    const isShape = Math.abs(then) > jumpShare && Math.sign(then) === Math.sign(share);
    return Math.abs(share) > jumpShare && !isShape ? [{ index, percent: 100 * share, beforeMm: before.circumferenceMm }] : [];
  });
}

/**
 * Names a jump and its values: what a person confirmed as they typed is not asked about again, and another value is.
 *
 * @example
 * jumpKey({ distanceMm: 40, circumferenceMm: 284 }, 180)
 * // => "jump from 180 to 284 at 40"
 */
export const jumpKey = ({ distanceMm, circumferenceMm }: Station, beforeMm: number): string =>
  `jump from ${beforeMm} to ${circumferenceMm} at ${distanceMm}`;

const shareOf = (beforeMm: number, afterMm: number): number => {
  const share = (afterMm - beforeMm) / beforeMm;
  if (!Number.isFinite(share)) throw new FitInputError("stations", "expected circumferences in mm above 0");
  return share;
};

function shareLastTime(fromMm: number, toMm: number, lastTime: readonly Station[]): number {
  const [before, after] = [circumferenceAt(lastTime, fromMm), circumferenceAt(lastTime, toMm)];
  return before === undefined || after === undefined ? 0 : shareOf(before, after);
}

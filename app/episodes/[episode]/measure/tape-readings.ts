/** What a tape tells as one types: each level against last time, second readings, jumps, and the volume of it all. */
import type { FormValues } from "@/app/_parts/form-state";
import type { Station } from "@/lib/fit/bundle";
import { jumpKey, levelJumps } from "@/lib/fit/level-jumps";
import { type LimbChange, limbChange } from "@/lib/fit/limb-change";
import { type LimbVolume, limbVolume } from "@/lib/fit/limb-volume";
import { circumferenceAt, commonSpan } from "@/lib/fit/stations";
import { detectableDifferenceMm } from "@/lib/fit/tape-error";

export interface TapeLimits {
  tapeErrorMm: number;
  settledPercent: number;
  doffedLeastMin: number;
  sameTimeHours: number;
}

export interface LevelReading {
  row: number;
  distanceMm?: number;
  circumferenceMm?: number;
  /** Against last time; null where that was not measured here. */
  change?: { lastMm: number; differenceMm: number; isBeyond: boolean } | null;
  /** Second reading less the first. */
  again?: { differenceMm: number; isBeyond: boolean };
  jump?: { percent: number; beforeMm: number; key: string };
}

/** Reads a number with or without its unit as mm; nothing where it is no number. */
export type ReadMm = (typed: string) => number | undefined;

/** What is still being typed ("1", "18" on the way to 184) is not yet a circumference. */
const [leastMm, mostMm] = [30, 1200];
const isRound = (mm: number | undefined): mm is number => mm !== undefined && mm >= leastMm && mm <= mostMm;

interface Asked {
  rows: readonly number[];
  read: ReadMm;
  tapeErrorMm: number;
  last?: readonly Station[] | undefined;
}

/** Every row of the form as a reading. A jump is looked for among levels in their order along the limb. */
export function readLevels(values: FormValues, { rows, read, tapeErrorMm, last = [] }: Asked): LevelReading[] {
  const most = detectableDifferenceMm(tapeErrorMm);
  const typed = (row: number, field: string): number | undefined => read(String(values[`stations.${row}.${field}`] ?? ""));
  const readings = rows.map((row): LevelReading => {
    const [distanceMm, now, again] = [typed(row, "distanceMm"), typed(row, "circumferenceMm"), typed(row, "againMm")];
    if (distanceMm === undefined) return { row, ...(isRound(now) ? { circumferenceMm: now } : {}) };
    if (!isRound(now)) return { row, distanceMm };
    return {
      row,
      distanceMm,
      circumferenceMm: now,
      ...(last.length > 0 ? { change: changeAt(distanceMm, now, { last, most }) } : {}),
      ...(isRound(again) ? { again: { differenceMm: again - now, isBeyond: Math.abs(again - now) > most } } : {}),
    };
  });
  const ordered = stationsOf(readings);
  const jumps = levelJumps(ordered, last);
  return readings.map((reading) => {
    const jump = jumps.find(({ index }) => ordered[index]?.row === reading.row);
    const station = jump && ordered[jump.index];
    return jump && station
      ? { ...reading, jump: { percent: jump.percent, beforeMm: jump.beforeMm, key: jumpKey(station, jump.beforeMm) } }
      : reading;
  });
}

function changeAt(distanceMm: number, nowMm: number, { last, most }: { last: readonly Station[]; most: number }) {
  const lastMm = circumferenceAt(last, distanceMm);
  if (lastMm === undefined) return null;
  const differenceMm = nowMm - lastMm;
  return { lastMm, differenceMm, isBeyond: Math.abs(differenceMm) > most };
}

/** Levels that are whole, in order; of two at one distance the first. */
export function stationsOf(readings: readonly LevelReading[]): (Station & { row: number })[] {
  return readings
    .flatMap(({ row, distanceMm, circumferenceMm }) =>
      distanceMm === undefined || circumferenceMm === undefined || Math.abs(distanceMm) > mostMm
        ? []
        : [{ row, distanceMm, circumferenceMm }],
    )
    .sort((a, b) => a.distanceMm - b.distanceMm)
    .filter(({ distanceMm }, index, all) => all[index - 1]?.distanceMm !== distanceMm);
}

/** Distances that do not go up from row to row: they are put in order when they are saved. */
export const isOutOfOrder = (readings: readonly LevelReading[]): boolean => {
  const distances = readings.flatMap(({ distanceMm }) => (distanceMm === undefined ? [] : [distanceMm]));
  return distances.some((mm, index) => mm < (distances[index - 1] ?? Number.NEGATIVE_INFINITY));
};

export interface Size {
  fromMm: number;
  toMm: number;
  /** With the rounded end beyond the last level. */
  hasEnd: boolean;
  volume: LimbVolume;
  /** Against last time; null where the two have no length in common. */
  change?: LimbChange | null;
}

interface SizeAsked {
  limits: TapeLimits;
  stationsFrom: "distal end" | "proximal landmark";
  capHeightMm?: number | undefined;
  last?: readonly Station[] | undefined;
}

/** The volume of the levels read so far; nothing before the second. */
export function sizeOf(readings: readonly LevelReading[], { limits, stationsFrom, capHeightMm, last }: SizeAsked): Size | null {
  const stations = stationsOf(readings);
  const [first, end] = [stations[0], stations.at(-1)];
  if (!first || !end || first === end) return null;
  const { tapeErrorMm: circumferenceSdMm, settledPercent } = limits;
  const hasEnd = capHeightMm !== undefined && capHeightMm > 0 && capHeightMm <= 200;
  const volume = limbVolume(stations, {
    circumferenceSdMm,
    capAt: stationsFrom === "distal end" ? "first" : "last",
    ...(hasEnd ? { capHeightMm } : {}),
  });
  const size = { fromMm: first.distanceMm, toMm: end.distanceMm, hasEnd, volume };
  if (!last || last.length < 2) return size;
  const isShared = commonSpan(last, stations) !== null;
  return { ...size, change: isShared ? limbChange(last, stations, { circumferenceSdMm, settledPercent }) : null };
}

const minutesOfDay = (local: string): number | undefined => {
  const [, hour, minute] = /T(\d\d):(\d\d)/.exec(local) ?? [];
  return hour === undefined ? undefined : Number(hour) * 60 + Number(minute);
};

/** How far two times of day lie apart, the shorter way round the clock, in hours; both as "2026-10-05T14:12" on the clinic's clock. */
export function hoursApart(one: string, other: string): number | undefined {
  const [a, b] = [minutesOfDay(one), minutesOfDay(other)];
  if (a === undefined || b === undefined) return undefined;
  const apart = Math.abs(a - b);
  return Math.min(apart, 24 * 60 - apart) / 60;
}

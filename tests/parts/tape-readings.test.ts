import { describe, expect, test } from "vitest";
import { hoursApart, isOutOfOrder, readLevels, sizeOf, stationsOf } from "@/app/episodes/[episode]/measure/tape-readings";
import { readQuantity } from "@/lib/fit";

const limits = { tapeErrorMm: 1.5, settledPercent: 5, doffedLeastMin: 30, sameTimeHours: 3 };

const read = (typed: string): number | undefined => {
  try {
    return readQuantity(typed, { quantity: "length", unit: "mm" }).value;
  } catch {
    return undefined;
  }
};

const typed = (...levels: [distance: string, circumference: string, again?: string][]) =>
  Object.fromEntries(
    levels.flatMap(([distance, circumference, again = ""], row) => [
      [`stations.${row}.distanceMm`, distance],
      [`stations.${row}.circumferenceMm`, circumference],
      [`stations.${row}.againMm`, again],
    ]),
  );

const at = (...circumferences: number[]) =>
  circumferences.map((circumferenceMm, index) => ({ distanceMm: index * 40, circumferenceMm }));

const levelsOf = (values: Record<string, string>, last = at(180, 190, 205)) =>
  readLevels(values, { rows: [0, 1, 2], read, tapeErrorMm: 1.5, last });

describe("a level against last time", () => {
  test("is beyond the tape from 1.96·√2·1.5 = 4.158 mm on (by hand), in either direction", () => {
    const levels = levelsOf(typed(["0", "184,1"], ["40", "194.2 mm"], ["80", "200,8"]));
    expect(levels.map(({ change }) => change?.isBeyond)).toEqual([false, true, true]);
    expect(levels.map(({ change }) => change?.differenceMm.toFixed(1))).toEqual(["4.1", "4.2", "-4.2"]);
  });

  test("is compared between last time's levels by a straight line, and beyond them not at all", () => {
    const [between, beyond] = levelsOf(typed(["20", "185"], ["200", "240"], ["", ""]));
    expect(between?.change?.lastMm).toBe(185);
    expect(beyond?.change).toBeNull();
  });

  test("what is still being typed, or is no number, is no reading", () => {
    const levels = levelsOf(typed(["0", "18"], ["40", "about 190"], ["80", ""]));
    expect(levels).toEqual([
      { row: 0, distanceMm: 0 },
      { row: 1, distanceMm: 40 },
      { row: 2, distanceMm: 80 },
    ]);
    expect(levelsOf(typed(["", "190"], ["40", "-190"], ["80", "9000"])).map(({ circumferenceMm }) => circumferenceMm)).toEqual([
      190,
      undefined,
      undefined,
    ]);
  });

  test("a second reading is held against the first, and the first counts", () => {
    const levels = levelsOf(typed(["0", "180", "182"], ["40", "190", "185"], ["80", "205"]));
    expect(levels.map(({ again }) => again?.isBeyond)).toEqual([false, true, undefined]);
    expect(stationsOf(levels).map(({ circumferenceMm }) => circumferenceMm)).toEqual([180, 190, 205]);
  });

  test("a jump of more than 30 % is asked about, with the key that the store asks by", () => {
    const levels = levelsOf(typed(["0", "180,5"], ["40", "290"], ["80", "291"]));
    expect(levels.map(({ jump }) => jump?.key)).toEqual([undefined, "jump from 180.5 to 290 at 40", undefined]);
  });
});

describe("the volume so far", () => {
  const sizeFrom = (values: Record<string, string>, capHeightMm?: number) =>
    sizeOf(readLevels(values, { rows: [0, 1, 2, 3, 4], read, tapeErrorMm: 1.5 }), {
      limits,
      stationsFrom: "distal end",
      capHeightMm,
      last: [0, 40, 80, 120, 160].map((distanceMm, index) => ({
        distanceMm,
        circumferenceMm: [180, 190, 205, 220, 240][index] ?? 0,
      })),
    });
  const all = typed(["0", "178"], ["40", "188"], ["80", "203"], ["120", "218"], ["160", "238"]);

  test("all circumferences −2 mm: 535.024 mL, −1.916 %, interval −3.482…−0.351 (design figures), whatever the order of the rows", () => {
    const backwards = typed(["160", "238"], ["120", "218"], ["80", "203"], ["40", "188"], ["0", "178"]);
    for (const values of [all, backwards]) {
      const size = sizeFrom(values);
      expect(size?.volume.volumeMl).toBeCloseTo(535.024, 3);
      expect(size?.change?.percent).toBeCloseTo(-1.916, 3);
      expect(size?.change?.low90).toBeCloseTo(-3.482, 3);
      expect(size?.change?.high90).toBeCloseTo(-0.351, 3);
    }
  });

  test("begins at the second level, and takes a rounded end in once its height can be one", () => {
    expect(sizeFrom(typed(["0", "178"], ["40", ""]))).toBeNull();
    expect(sizeFrom(typed(["0", "178"], ["0", "179"]))).toBeNull();
    expect(sizeFrom(all, 20)?.hasEnd).toBe(true);
    expect(sizeFrom(all, -3)?.hasEnd).toBe(false);
  });

  test("levels that last time did not cover give no change", () => {
    expect(sizeFrom(typed(["200", "250"], ["240", "260"]))?.change).toBeNull();
  });
});

test("two times of day are compared the shorter way round the clock", () => {
  expect(hoursApart("2026-10-05T08:30", "2026-09-01T09:00")).toBe(0.5);
  expect(hoursApart("2026-10-05T23:00", "2026-09-01T01:30")).toBe(2.5);
  expect(hoursApart("", "2026-09-01T01:30")).toBeUndefined();
});

test("levels that go back along the limb are out of order; free rows are not", () => {
  expect(isOutOfOrder(levelsOf(typed(["0", ""], ["", ""], ["80", ""])))).toBe(false);
  expect(isOutOfOrder(levelsOf(typed(["0", ""], ["80", ""], ["40", ""])))).toBe(true);
});

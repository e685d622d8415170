import { describe, expect, test } from "vitest";
import { type DesignRow, designOf, shapingOf } from "@/app/episodes/design";
import { levelsFollowing, levelsKeeping, shownOf } from "@/app/episodes/level-texts";
import { defaultLimits } from "@/lib/fit";

const at = (...circumferences: number[]) =>
  circumferences.map((circumferenceMm, index) => ({ distanceMm: index * 40, circumferenceMm }));
const previous = at(170, 184, 199, 215, 234);
const rows = (own: Partial<Record<number, number>> = {}): DesignRow[] =>
  previous.map(({ distanceMm }, row) => ({ row, distanceMm, own: own[row] ?? null }));
const asked = {
  base: previous,
  previous,
  limb: at(176, 188, 203, 219, 238),
  adjustments: [],
  where: { stationsFrom: "distal end", limbLengthMm: 170 },
  limits: defaultLimits,
} as const;

describe("a design", () => {
  test("follows the adjustments: −2 % of volume scales circumferences by √0.98 = 0.989949 (by hand)", () => {
    const { levels, stations, unexplained } = designOf({
      ...asked,
      rows: rows(),
      adjustments: [{ kind: "volume", amount: -2, unit: "percent" }],
    });
    expect(levels.map(({ proposedMm }) => proposedMm)).toEqual([168.3, 182.2, 197, 212.8, 231.6]);
    expect(stations.map(({ circumferenceMm }) => circumferenceMm)).toEqual([168.3, 182.2, 197, 212.8, 231.6]);
    expect(unexplained).toEqual([]);
  });

  test("a level that was typed stays, and is not explained from 2 mm on", () => {
    const { levels, unexplained } = designOf({ ...asked, rows: rows({ 1: 186, 2: 201.5 }) });
    expect(levels.map(({ circumferenceMm }) => circumferenceMm)).toEqual([170, 186, 201.5, 215, 234]);
    expect(unexplained).toEqual([{ distanceMm: 80, differenceMm: 2.5 }]);
    expect(levels[2]?.unexplainedMm).toBe(2.5);
  });

  test("compression is the limb's less the socket's, of the limb's: (188 − 184)/188 = 2.1277 % (by hand)", () => {
    expect(designOf({ ...asked, rows: rows() }).levels[1]?.compressionPercent).toBeCloseTo(2.1277, 4);
  });

  test("a level between those of the socket before gets a proposal, one beyond them none", () => {
    const [, added, beyond] = designOf({
      ...asked,
      rows: [...rows().slice(0, 1), { row: 7, distanceMm: 20, own: null }, { row: 8, distanceMm: 200, own: null }],
    }).levels;
    expect(added?.proposedMm).toBe(177);
    expect(beyond).toEqual({ row: 8, distanceMm: 200 });
  });

  test("a level that was left out is still held against what the adjustments say", () => {
    const without = rows({ 1: 190 }).filter(({ row }) => row !== 2);
    expect(designOf({ ...asked, rows: without }).unexplained.map(({ distanceMm }) => distanceMm)).toEqual([40, 80]);
  });

  test("nonsense is said, and throws nothing", () => {
    const twice = [...rows(), { row: 9, distanceMm: 40, own: 180 }];
    expect(designOf({ ...asked, rows: twice }).problem).toMatch(/40 mm is there twice/);
    const emptied = designOf({ ...asked, rows: rows(), adjustments: [{ kind: "volume", amount: -100, unit: "percent" }] });
    expect(emptied.problem).toMatch(/next to nothing/);
    expect(designOf({ ...asked, base: [], previous: [], limb: [], rows: rows() }).stations).toEqual([]);
  });
});

describe("adjustments as they are typed", () => {
  const row = (fields: Record<string, string>) =>
    Object.fromEntries(Object.entries(fields).map(([name, value]) => [`adjustments.0.${name}`, value]));

  test("a true minus sign and a comma are read; an amount that is not whole yet shapes nothing", () => {
    const values = row({ kind: "volume", amount: "−1,5", unit: "percent", aspect: "", third: "distal" });
    expect(shapingOf(values, [0])).toEqual([
      { kind: "volume", amount: -1.5, unit: "percent", aspect: undefined, third: "distal" },
    ]);
    for (const amount of ["", "-", "2 mm", "1e3", "Infinity", "201"])
      expect(shapingOf({ ...values, ...row({ amount }) }, [0])).toEqual([]);
    expect(shapingOf({ ...values, ...row({ kind: "magic" }) }, [0])).toEqual([]);
  });
});

describe("levels as text", () => {
  const show = (mm: number) => String(mm);

  test("another socket to derive from keeps what was typed at the same distance, and nothing else", () => {
    const before = [
      { row: 0, distance: "0", own: "171" },
      { row: 1, distance: "45", own: "180" },
    ];
    expect(levelsFollowing(at(165, 175), show, before)).toEqual([
      { row: 0, distance: "0", own: "171" },
      { row: 1, distance: "40", own: null },
    ]);
  });

  test("a planned socket keeps its own figures where they are not what is proposed", () => {
    const levels = levelsKeeping(at(170.04, 190), (distanceMm) => (distanceMm === 0 ? 170 : 184), show);
    expect(levels.map(({ own }) => own)).toEqual([null, "190"]);
    expect(shownOf(levels[0], 170, show)).toEqual({ distance: "0", circumference: "170", isOwn: false });
    expect(shownOf(levels[1], 184, show)).toEqual({ distance: "40", circumference: "190", isOwn: true });
  });
});

import { describe, expect, it } from "vitest";
import { dateTicks } from "@/app/episodes/[episode]/trends/date-ticks";
import { panelsOf, socketWords } from "@/app/episodes/[episode]/trends/panels";
import { defaultLimits, seriesOf, trendsOf } from "@/lib/fit";
import { readyBundle } from "../fit/ready-bundle";

const dayMs = 86_400_000;
const day = (date: string): number => Date.parse(`${date}T00:00:00Z`) / dayMs;
const labels = (from: string, to: string) => dateTicks([day(from), day(to)]).map(({ label }) => label.replace("\u00a0", " "));

describe("dates along an axis", () => {
  it.each([
    ["2026-10-05", "2026-10-09", ["5 Oct", "6 Oct", "7 Oct", "8 Oct", "9 Oct"]],
    ["2026-10-05", "2026-10-31", ["5 Oct", "12 Oct", "19 Oct", "26 Oct"]],
    ["2026-09-20", "2026-12-10", ["Oct 2026", "Nov 2026", "Dec 2026"]],
    ["2026-01-02", "2026-11-20", ["Mar 2026", "May 2026", "Jul 2026", "Sep 2026", "Nov 2026"]],
    ["2025-12-31", "2026-03-02", ["Jan 2026", "Feb 2026", "Mar 2026"]],
    ["2026-10-05", "2026-10-05", ["5 Oct"]],
  ])("from %s to %s", (from, to, expected) => {
    expect(labels(from, to)).toEqual(expected);
  });

  it("stand at the first of the month, and there are never too many to read", () => {
    for (const years of [1, 2, 5, 20]) {
      const ticks = dateTicks([day("2010-03-15"), day(`${2010 + years}-03-15`)]);
      expect(ticks.length).toBeGreaterThan(1);
      expect(ticks.length).toBeLessThanOrEqual(8);
      for (const { at } of ticks) expect(new Date(at * dayMs).getUTCDate()).toBe(1);
    }
  });
});

function panels(change: (bundle: ReturnType<typeof readyBundle>) => void = () => undefined) {
  const bundle = readyBundle();
  change(bundle);
  const trends = trendsOf(bundle, seriesOf(bundle));
  const { sockets, limb } = panelsOf({ trends, bundle, limits: defaultLimits, volume: { points: [], zone: undefined } });
  return [...sockets, limb];
}

describe("the panels", () => {
  it("share one axis of dates and the room for the vertical one, the limb beneath the sockets", () => {
    const all = panels();
    expect(all.map(({ name }) => name)).toEqual([
      "Comfort",
      "Hardest mark",
      "Displacement under load",
      "Readiness index",
      "The limb’s volume",
    ]);
    const [first] = all;
    for (const { chart } of all) {
      expect(chart.frame?.along).toEqual(first?.chart.frame?.along);
      expect(chart.ticks).toEqual(first?.chart.ticks);
      expect(chart.upWidth).toBe(first?.chart.upWidth);
    }
  });

  it("say which way is better, and that the index decides nothing", () => {
    const [comfort, mark, displacement, index] = panels().map(({ about }) => about);
    expect(comfort).toMatch(/higher is better/);
    expect(mark).toMatch(/lower is better/);
    expect(displacement).toMatch(/lower is better/);
    expect(index).toMatch(/higher is better. It compares sockets and decides nothing/);
  });

  it("break the line where nothing was measured, and say with which socket", () => {
    const [, , displacement] = panels((bundle) => {
      for (const fitting of bundle.fittings) if (fitting.socketId === "so1") fitting.pulls = [];
    });
    expect(displacement?.chart.points.map(({ name }) => name)).toEqual(["2"]);
    expect(displacement?.chart.gaps).toHaveLength(1);
    expect(displacement?.missing).toBe("Not measured with socket 1.");
  });

  it("number a socket once in the panel of comfort, at the higher of its two points", () => {
    const [comfort] = panels((bundle) => {
      for (const fitting of bundle.fittings) fitting.comfort = 10;
    });
    expect(comfort?.chart.points.every(({ name }) => name === undefined)).toBe(true);
    expect(comfort?.chart.beside?.points.map(({ name }) => name)).toEqual(["1", "2"]);
  });
});

it.each([
  [[3], "socket 3"],
  [[1, 2], "sockets 1 and 2"],
  [[1, 2, 5], "sockets 1, 2 and 5"],
])("%s is %s", (numbers, words) => {
  expect(socketWords(numbers)).toBe(words);
});

import fc from "fast-check";
import { errorFunction } from "simple-statistics";
import { describe, expect, it } from "vitest";
import { FitInputError } from "@/lib/fit/errors";
import { geometricMean } from "@/lib/fit/statistics/geometric-mean";
import { mannKendall } from "@/lib/fit/statistics/mann-kendall";
import { pielou } from "@/lib/fit/statistics/pielou";
import { theilSen } from "@/lib/fit/statistics/theil-sen";
import { seriesWith } from "./kendall-series";
import { runs } from "./runs";

const finite = fc.double({ min: -1000, max: 1000, noNaN: true });

describe("Theil–Sen line", () => {
  it("has slope 0.2 through 1, 2, 2, 4 at 5, 10, 15, 20 minutes", () => {
    // By hand: the six slopes are 0.1, 0.2, 0.2, 0.2, 0.2333, 0.4 … with median 0.2.
    const { slope, intercept } = theilSen([5, 10, 15, 20].map((x, index) => ({ x, y: [1, 2, 2, 4][index] ?? 0 })));
    expect(slope).toBeCloseTo(0.2, 12);
    expect(intercept).toBeCloseTo(2 - 0.2 * 12.5, 12);
  });

  it("is the median of the slopes of all pairs, found by sorting them", () => {
    const points = fc.array(fc.record({ x: fc.integer({ min: 0, max: 60 }), y: finite }), { minLength: 2, maxLength: 14 });
    fc.assert(
      fc.property(points, (some) => {
        fc.pre(new Set(some.map(({ x }) => x)).size > 1);
        const slopes = some
          .flatMap((a, i) => some.slice(i + 1).flatMap((b) => (a.x === b.x ? [] : [(b.y - a.y) / (b.x - a.x)])))
          .sort((a, b) => a - b);
        const low = slopes[Math.floor((slopes.length - 1) / 2)] ?? Number.NaN;
        const high = slopes[Math.ceil((slopes.length - 1) / 2)] ?? Number.NaN;
        expect(theilSen(some).slope).toBeCloseTo((low + high) / 2, 8);
      }),
      runs(),
    );
  });

  it("is not moved by one wild value", () => {
    const points = Array.from({ length: 11 }, (_, x) => ({ x, y: x === 10 ? 1000 : 2 * x }));
    expect(theilSen(points).slope).toBe(2);
  });

  it("stays quick and right for a very long series", () => {
    const points = Array.from({ length: 20_000 }, (_, x) => ({ x, y: 3 - 0.25 * x }));
    const { slope, intercept } = theilSen(points);
    expect(slope).toBeCloseTo(-0.25, 12);
    expect(intercept).toBeCloseTo(3, 8);
  });

  it("refuses points that have no slope", () => {
    expect(() => theilSen([])).toThrow(FitInputError);
    expect(() => theilSen([{ x: 1, y: 1 }])).toThrow(FitInputError);
    expect(() =>
      theilSen([
        { x: 1, y: 1 },
        { x: 1, y: 5 },
      ]),
    ).toThrow("points: expected two or more points with different x");
    expect(() =>
      theilSen([
        { x: 1, y: 1 },
        { x: 2, y: Number.NaN },
      ]),
    ).toThrow("points[1].y");
    expect(() =>
      theilSen([
        { x: 0, y: -1e308 },
        { x: 1, y: 1e308 },
      ]),
    ).toThrow(FitInputError);
  });
});

/** Every order of the values, one by one: slow and plain, to check the quick way. */
function* orders(values: readonly number[]): Generator<readonly number[]> {
  if (values.length < 2) yield values;
  for (const [index, first] of values.entries()) {
    if (values.length < 2) return;
    for (const rest of orders(values.toSpliced(index, 1))) yield [first, ...rest];
  }
}
const kendallS = (values: readonly number[]): number =>
  values.reduce(
    (sum, early, index) => sum + values.slice(index + 1).reduce((part, late) => part + Math.sign(late - early), 0),
    0,
  );

function chancesByCounting(values: readonly number[]): { s: number; pUp: number; pDown: number } {
  const s = kendallS(values);
  let [all, up, down] = [0, 0, 0];
  for (const order of orders(values)) {
    const other = kendallS(order);
    all += 1;
    if (other >= s) up += 1;
    if (other <= s) down += 1;
  }
  return { s, pUp: up / all, pDown: down / all };
}

// Its exact table without ties is in kendall-table.test.ts.
describe("Mann–Kendall test", () => {
  it("is exact over the orders of tied values, up to eight of them", () => {
    const ratings = fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 2, maxLength: 7 });
    fc.assert(
      fc.property(ratings, (values) => {
        const { s, pUp, pDown } = mannKendall(values);
        const counted = chancesByCounting(values);
        expect(s).toBe(counted.s);
        expect(pUp).toBeCloseTo(counted.pUp, 10);
        expect(pDown).toBeCloseTo(counted.pDown, 10);
      }),
      runs(),
    );
    const eight = [0, 1, 1, 2, 2, 2, 5, 3];
    expect(mannKendall(eight).pUp).toBeCloseTo(chancesByCounting(eight).pUp, 10);
  });

  it("approximates nine or more tied values with both corrections", () => {
    // By hand: n = 10, ties of 3, 2 and 2: variance (10·9·25 − 3·2·11 − 2·(2·1·9)) / 18 = 119.3333; S = 38, z = 37 / 10.924 = 3.38704;
    // upper tail by Python's math.erfc: 0.000353250.
    const values = [0, 0, 1, 0, 1, 2, 3, 3, 4, 5];
    const trend = mannKendall(values);
    expect(trend.s).toBe(38);
    expect(trend.pUp).toBeCloseTo(0.00035325, 6);
    expect(mannKendall(values.map((value) => -value)).pDown).toBeCloseTo(trend.pUp, 12);
  });

  it("differs from the approximation by less than 0.00002 where the exact table ends", () => {
    const { s, pUp } = mannKendall(seriesWith({ count: 300, s: 2810 + 40 }));
    const z = (s - 1) / Math.sqrt((300 * 299 * 605) / 18);
    expect(pUp).toBeLessThan(0.1);
    expect(Math.abs(pUp - (1 - errorFunction(z / Math.SQRT2)) / 2)).toBeLessThan(0.00002);
  });

  it("finds no trend where there cannot be one, and never answers NaN", () => {
    for (const values of [[], [3], [3, 3, 3], Array.from({ length: 40 }, () => 7)])
      expect(mannKendall(values)).toEqual({ s: 0, pUp: 1, pDown: 1 });
    expect(() => mannKendall([1, Number.NaN])).toThrow("values[1]");
  });

  it("has chances between 0 and 1 that mirror each other when the series is turned round", () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(fc.integer({ min: 0, max: 10 }), finite), { maxLength: 40 }), (values) => {
        const trend = mannKendall(values);
        const turned = mannKendall(values.toReversed());
        expect(trend.pUp).toBeGreaterThanOrEqual(0);
        expect(trend.pUp).toBeLessThanOrEqual(1);
        expect(turned.s).toBe(0 - trend.s);
        expect(turned.pDown).toBeCloseTo(trend.pUp, 9);
      }),
      runs(),
    );
  });
});

describe("Pielou's evenness", () => {
  it("is 0.92322 for 10, 20, 30, 40 (H = 1.27985 over ln 4)", () => {
    expect(pielou([10, 20, 30, 40])).toBeCloseTo(0.92322, 5);
    expect(pielou([10, 20, 30, 40]) * Math.log(4)).toBeCloseTo(1.27985, 5);
  });

  it.each([
    { weights: [2, 2, 2, 2], evenness: 1 },
    { weights: [3, 1, 1, 1], evenness: 0.89624 },
    { weights: [0, 0, 4, 0], evenness: 0 },
    { weights: [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 2, 3], evenness: 0.964184 },
  ])("of $weights is $evenness", ({ weights, evenness }) => {
    // −Σ pᵢ ln pᵢ / ln S by hand (Pielou, J Theor Biol 1966;13:131–144, from memory).
    expect(pielou(weights)).toBeCloseTo(evenness, 6 - Number(evenness === 0.89624));
  });

  it("calls nothing anywhere even, and one place alone uneven", () => {
    expect(pielou([0, 0, 0, 0])).toBe(1);
    expect(pielou([5])).toBe(0);
  });

  it("refuses no places, and weights that are negative or not finite", () => {
    expect(() => pielou([])).toThrow(FitInputError);
    expect(() => pielou([1, -1])).toThrow("weights[1]");
    expect(() => pielou([Number.POSITIVE_INFINITY, 1])).toThrow("weights[0]");
  });

  it("lies in 0…1, whatever the scale and the order of the weights", () => {
    const weights = fc.array(fc.double({ min: 0, max: 1e306, noNaN: true }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(weights, (some) => {
        const evenness = pielou(some);
        expect(evenness).toBeGreaterThanOrEqual(0);
        expect(evenness).toBeLessThanOrEqual(1);
        expect(pielou(some.toReversed())).toBeCloseTo(evenness, 9);
      }),
      runs(),
    );
  });
});

describe("geometric mean", () => {
  it("is the cube root of 0.9 · 0.6 · 0.8", () => {
    // By hand: 0.432 ^ (1/3).
    expect(geometricMean([0.9, 0.6, 0.8])).toBeCloseTo(0.755953, 6);
  });

  it("is zero with any zero, and survives products that would overflow", () => {
    expect(geometricMean([1, 0, 1])).toBe(0);
    expect(geometricMean([1e300, 1e300, 1e300])).toBeCloseTo(1e300, -290);
    expect(geometricMean([1e-300, 1e-300])).toBeGreaterThan(0);
  });

  it("refuses no value and negative ones", () => {
    expect(() => geometricMean([])).toThrow(FitInputError);
    expect(() => geometricMean([1, -0.1])).toThrow("values[1]");
  });
});

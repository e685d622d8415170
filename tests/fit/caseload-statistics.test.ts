import fc from "fast-check";
import { jStat } from "jstat";
import { describe, expect, it } from "vitest";
import { kaplanMeier, logRank, type SurvivalStep, type TimedOutcome, wilson } from "@/lib/fit";
import { normalUpperTail } from "@/lib/fit/statistics/normal-tail";
import { runs } from "./runs";

/** "6+" is censored at 6. */
const outcomes = (text: string): TimedOutcome[] =>
  text.split(" ").map((one) => ({ time: Number.parseFloat(one), happened: !one.endsWith("+") }));

// Freireich EJ et al., Blood 1963;21:699: weeks in remission, 6-mercaptopurine against placebo.
const mercaptopurine = outcomes("6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+");
const placebo = outcomes("1 1 2 2 3 4 4 5 5 8 8 8 8 11 11 12 12 15 17 22 23");

// Data sets of the R package survival 3.5.3: `aml` (Miller RG. Survival analysis. New York: Wiley; 1981) and the squamous
// cell group of `veteran` (Kalbfleisch JD, Prentice RL. The statistical analysis of failure time data; 1980). The figures
// beside them are those of its survfit(conf.type = "log-log") and survdiff, in R 4.2.2.
const maintained = outcomes("9 13 13+ 18 23 28+ 31 34 45+ 48 161+");
const nonmaintained = outcomes("5 5 8 8 12 16+ 23 27 30 33 43 45");
const standard = outcomes("72 411 228 126 118 10 82 110 314 100+ 42 8 144 25+ 11");
const testArm = outcomes("999 112 87+ 231+ 242 991 111 1 587 389 33 25 357 467 201 1 30 44 283 15");

type Row = readonly [
  time: number,
  atRisk: number,
  happened: number,
  survival: number,
  standardError: number | null,
  low95: number | null,
  high95: number | null,
];

function expectRows(steps: readonly SurvivalStep[], rows: readonly Row[], digits: number): void {
  expect(steps).toHaveLength(rows.length);
  rows.forEach(([time, atRisk, happened, survival, standardError, low95, high95], index) => {
    const step = steps[index];
    expect(step).toMatchObject({ time, atRisk, happened });
    expect(step?.survival).toBeCloseTo(survival, digits);
    for (const [found, expected] of [
      [step?.standardError, standardError],
      [step?.low95, low95],
      [step?.high95, high95],
    ] as const) {
      if (expected === null) expect(found).toBeNull();
      else expect(found).toBeCloseTo(expected, digits);
    }
  });
}

describe("Kaplan–Meier", () => {
  it("is that of Freireich et al., Blood 1963;21:699, in the 6-mercaptopurine arm", () => {
    const curve = kaplanMeier(mercaptopurine);
    const printed = [
      [6, 0.8571, 0.0764],
      [7, 0.8067, 0.0869],
      [10, 0.7529, 0.0963],
      [13, 0.6902, 0.1068],
      [16, 0.6275, 0.1141],
      [22, 0.5378, 0.1282],
      [23, 0.4482, 0.1346],
    ] as const;
    expect(curve.map(({ time }) => time)).toEqual(printed.map(([time]) => time));
    printed.forEach(([, survival, standardError], index) => {
      expect(curve[index]?.survival).toBeCloseTo(survival, 4);
      expect(curve[index]?.standardError).toBeCloseTo(standardError, 4);
    });
    expect(curve.median).toBe(23);
    expect(kaplanMeier(placebo).median).toBe(8);
  });

  it("is that of R's survfit on aml, with its bands and medians", () => {
    expectRows(
      kaplanMeier(maintained),
      [
        [9, 11, 1, 0.909090909091, 0.0866784172041, 0.5080802057699, 0.986673822668],
        [13, 10, 1, 0.818181818182, 0.1162912998303, 0.4474286146822, 0.951162228582],
        [18, 8, 1, 0.715909090909, 0.1396649705572, 0.3501903859079, 0.899023974191],
        [23, 7, 1, 0.613636363636, 0.1526323310273, 0.2657520400013, 0.83529924325],
        [31, 5, 1, 0.490909090909, 0.1641932672211, 0.1673309097769, 0.753399790371],
        [34, 4, 1, 0.368181818182, 0.1626688858271, 0.092829574937, 0.657040832398],
        [48, 2, 1, 0.184090909091, 0.1534927457863, 0.0117384801232, 0.525014842727],
      ],
      10,
    );
    expect(kaplanMeier(maintained)).toMatchObject({ median: 31, medianLow95: 13, medianHigh95: null });
    expectRows(
      kaplanMeier(nonmaintained),
      [
        [5, 12, 2, 0.8333333333333, 0.107582870728, 0.48171494219538, 0.955509365728],
        [8, 10, 2, 0.6666666666667, 0.136082763488, 0.3370189325414, 0.859711799084],
        [12, 8, 1, 0.5833333333333, 0.1423187606383, 0.2701389240855, 0.800940192333],
        [23, 6, 1, 0.4861111111111, 0.1481300625535, 0.19187661961873, 0.729671569779],
        [27, 5, 1, 0.3888888888889, 0.146986183948, 0.12627201219539, 0.649817408289],
        [30, 4, 1, 0.2916666666667, 0.138715169135, 0.07240160890777, 0.560886052671],
        [33, 3, 1, 0.1944444444444, 0.1218745053804, 0.03119864293121, 0.461429476238],
        [43, 2, 1, 0.0972222222222, 0.0918663649675, 0.00574630569586, 0.348903861111],
        // Where nothing is left R has NaN and NA: not defined.
        [45, 1, 1, 0, null, null, null],
      ],
      10,
    );
    expect(kaplanMeier(nonmaintained)).toMatchObject({ median: 23, medianLow95: 5, medianHigh95: 33 });
  });

  it("is that of R's survfit on veteran, squamous cell, with ties and an early end", () => {
    expect(kaplanMeier(standard)).toMatchObject({ median: 110, medianLow95: 11, medianHigh95: 144 });
    expect(kaplanMeier(testArm)).toMatchObject({ median: 201, medianLow95: 30, medianHigh95: 389 });
    expectRows(
      kaplanMeier(testArm).slice(0, 3),
      [
        [1, 20, 2, 0.9, 0.067082039325, 0.65603070726157, 0.974010174396],
        [15, 18, 1, 0.85, 0.0798435971134, 0.6037896992203, 0.948996109794],
        [25, 17, 1, 0.8, 0.0894427191, 0.55114556428073, 0.919817913588],
      ],
      10,
    );
  });

  it("has no median where half never comes, and its middle where the curve rests at a half (as R's quantile, by hand)", () => {
    expect(kaplanMeier(outcomes("3 9+ 9+ 9+"))).toMatchObject({ median: null });
    expect(kaplanMeier(outcomes("3 5 8 9"))).toMatchObject({ median: 6.5 });
    expect(kaplanMeier([])).toMatchObject({ length: 0, median: null });
    expect(kaplanMeier(outcomes("4+ 5+"))).toHaveLength(0);
  });

  it("refuses what is no time", () => {
    expect(() => kaplanMeier([{ time: -1, happened: true }])).toThrow("times[0].time");
    expect(() => logRank([], [{ time: Number.NaN, happened: true }])).toThrow("b[0].time");
  });

  const anyTimes = fc.array(fc.record({ time: fc.integer({ min: 0, max: 60 }), happened: fc.boolean() }), { maxLength: 40 });

  it("never rises, stays in 0…1 and within its bands, whatever the order", () => {
    fc.assert(
      fc.property(anyTimes, (times) => {
        const curve = kaplanMeier(times);
        let before = 1;
        for (const { survival, low95, high95 } of curve) {
          expect(survival).toBeLessThan(before);
          expect(survival).toBeGreaterThanOrEqual(0);
          if (low95 !== null && high95 !== null) {
            expect(low95).toBeLessThanOrEqual(survival);
            expect(high95).toBeGreaterThanOrEqual(survival);
          }
          before = survival;
        }
        expect(kaplanMeier(times.toReversed())).toEqual(curve);
        const doubled = kaplanMeier(times.map((one) => ({ ...one, time: 2 * one.time })));
        expect(doubled.map(({ survival }) => survival)).toEqual(curve.map(({ survival }) => survival));
        expect(doubled.median).toBe(curve.median === null ? null : 2 * curve.median);
      }),
      runs(1000),
    );
  });

  it("without censoring is the share that is left", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 1, maxLength: 30 }), (times) => {
        for (const { time, survival } of kaplanMeier(times.map((one) => ({ time: one, happened: true }))))
          expect(survival).toBeCloseTo(times.filter((one) => one > time).length / times.length, 10);
      }),
      runs(1000),
    );
  });

  it("two arms alike do not differ, and it does not matter which comes first", () => {
    fc.assert(
      fc.property(anyTimes, anyTimes, (one, other) => {
        expect(logRank(one, one).chiSquare).toBeCloseTo(0, 10);
        const there = logRank(one, other);
        const back = logRank(other, one);
        expect(there.chiSquare).toBeCloseTo(back.chiSquare, 8);
        expect(there.pValue).toBeGreaterThanOrEqual(0);
        expect(there.pValue).toBeLessThanOrEqual(1);
      }),
      runs(1000),
    );
  });
});

describe("log-rank", () => {
  it("is χ² = 16.793 for Freireich's arms, 3.39639 (p 0.06534) on aml, 2.45387 (p 0.11724) on veteran, as R's survdiff", () => {
    expect(logRank(mercaptopurine, placebo).chiSquare).toBeCloseTo(16.793, 3);
    expect(logRank(maintained, nonmaintained).chiSquare).toBeCloseTo(3.39638869898, 10);
    expect(logRank(maintained, nonmaintained).pValue).toBeCloseTo(0.0653393220405, 10);
    expect(logRank(standard, testArm).chiSquare).toBeCloseTo(2.45386842384, 10);
    expect(logRank(standard, testArm).pValue).toBeCloseTo(0.117235627588, 10);
  });

  it("has the tail of χ² that jStat has, and finds nothing where nothing happened", () => {
    for (const chiSquare of [0.01, 0.5, 1, 3.84, 6.63, 10.83])
      expect(2 * normalUpperTail(Math.sqrt(chiSquare))).toBeCloseTo(1 - jStat.chisquare.cdf(chiSquare, 1), 9);
    expect(logRank(outcomes("3+ 4+"), outcomes("5+"))).toEqual({ chiSquare: 0, pValue: 1 });
    expect(logRank([], outcomes("5"))).toEqual({ chiSquare: 0, pValue: 1 });
  });

  it("has the tail of the normal distribution that R's pnorm prints", () => {
    const printed = [
      [0, 0.5],
      [0.5, 3.08537538725987e-1],
      [1, 1.58655253931457e-1],
      [1.96, 2.49978951482204e-2],
      [2.5, 6.20966532577613e-3],
      [3, 1.34989803163009e-3],
      [5, 2.86651571879194e-7],
      [8, 6.22096057427178e-16],
    ] as const;
    for (const [z, tail] of printed) expect(normalUpperTail(z) / tail).toBeCloseTo(1, 11);
  });
});

describe("Wilson's interval", () => {
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])("of %i in %i is %f to %f (Newcombe, Stat Med 1998;17:857, table I)", (x, n, low, high) => {
    expect(wilson(x, n).low).toBeCloseTo(low, 4);
    expect(wilson(x, n).high).toBeCloseTo(high, 4);
  });

  it("is that of R's prop.test(correct = FALSE): 81 in 263", () => {
    expect(wilson(81, 263).low).toBeCloseTo(0.255288519878, 11);
    expect(wilson(81, 263).high).toBeCloseTo(0.366209576983, 11);
  });

  it("holds the shares that the score test does not reject (by solving |p̂ − p| = z·√(p(1 − p)/n))", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }).chain((n) => fc.tuple(fc.nat(n), fc.constant(n))),
        ([x, n]) => {
          const { low, high } = wilson(x, n);
          for (const p of [low, high])
            if (p > 0 && p < 1) expect(Math.abs(x / n - p) / Math.sqrt((p * (1 - p)) / n)).toBeCloseTo(1.959963984540054, 6);
          expect(low).toBeLessThanOrEqual(x / n);
          expect(high).toBeGreaterThanOrEqual(x / n);
          const turned = wilson(n - x, n);
          expect(turned.low).toBeCloseTo(1 - high, 12);
          const twice = wilson(2 * x, 2 * n);
          expect(twice.high - twice.low).toBeLessThan(high - low);
        },
      ),
      runs(1000),
    );
  });

  it("is exact at both ends, and everything where nothing was counted", () => {
    expect(wilson(0, 7).low).toBe(0);
    expect(wilson(7, 7).high).toBe(1);
    expect(wilson(0, 0)).toEqual({ low: 0, high: 1 });
  });

  it.each([
    [3, 2],
    [-1, 5],
    [1.5, 5],
    [1, 2.5],
    [1, Number.NaN],
  ])("refuses %s in %s", (x, n) => {
    expect(() => wilson(x, n)).toThrow("expected a whole number");
  });
});

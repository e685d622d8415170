import fc from "fast-check";
import { jStat } from "jstat";
import { describe, expect, it } from "vitest";
import { FitInputError, kaplanMeier, logRank } from "@/lib/fit";
import { normalUpperTail } from "@/lib/fit/statistics/normal-tail";
import { runs } from "./runs";
import {
  edges,
  maintained,
  mercaptopurine,
  nonmaintained,
  outcomes,
  ovarian1,
  ovarian2,
  type PrintedCurve,
  placebo,
  standard,
  testTreatment,
} from "./survival-tables";

const openSets = [mercaptopurine, placebo, maintained, nonmaintained, standard, testTreatment, ovarian1, ovarian2];

const expectAsPrinted = (found: number | null | undefined, printed: number | null | undefined): void => {
  if (typeof printed === "number") expect(found).toBeCloseTo(printed, 12);
  else expect(found).toBeNull();
};

const anyTimes = fc.array(fc.record({ time: fc.integer({ min: 0, max: 60 }), happened: fc.boolean() }), { maxLength: 40 });

describe("Kaplan–Meier", () => {
  it("is that of Freireich et al., Blood 1963;21:699, in the 6-mercaptopurine arm", () => {
    const curve = kaplanMeier(mercaptopurine.times);
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
  });

  it.each([...openSets, ...edges])(
    "is that of R's survfit for $of, each step with its error and bands, and the median",
    ({ times, steps, median }: PrintedCurve) => {
      const curve = kaplanMeier(times);
      expect(curve).toHaveLength(steps.length);
      steps.forEach(([time, atRisk, happened, survival, ...errors], index) => {
        const step = curve[index];
        expect(step).toMatchObject({ time, atRisk, happened });
        expectAsPrinted(step?.survival, survival);
        [step?.standardError, step?.low95, step?.high95].forEach((found, place) => {
          expectAsPrinted(found, errors[place]);
        });
      });
      expect([curve.median, curve.medianLow95, curve.medianHigh95]).toEqual(median);
    },
  );

  it("has no step and no median where nothing happened, and none of nobody", () => {
    for (const times of [[], outcomes("4+ 5+"), outcomes("0+")]) {
      const curve = kaplanMeier(times);
      expect(curve).toHaveLength(0);
      expect([curve.median, curve.medianLow95, curve.medianHigh95]).toEqual([null, null, null]);
    }
  });

  it("counts what is censored at the time of an event among those at risk, and what happens at time 0", () => {
    // By hand: of three at 6 one is censored, so 1 − 2/4; at 0 one of five.
    expect(kaplanMeier(outcomes("6 6+ 6 9+"))[0]).toMatchObject({ time: 6, atRisk: 4, happened: 2, survival: 0.5 });
    expect(kaplanMeier(outcomes("0 6 6+ 6 9+"))[0]).toMatchObject({ time: 0, atRisk: 5, happened: 1, survival: 0.8 });
  });

  it.each([-1, Number.NaN, Number.POSITIVE_INFINITY])("refuses %s as a time, and says which", (time) => {
    const times = [...outcomes("3 4+ 5"), { time, happened: false }];
    expect(() => kaplanMeier(times)).toThrow(FitInputError);
    expect(() => kaplanMeier(times)).toThrow("times[3].time: expected a time of 0 or more");
    expect(() => logRank(times, [])).toThrow("a[3].time");
    expect(() => logRank([], times)).toThrow("b[3].time");
  });

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
        const reversed = kaplanMeier(times.toReversed());
        expect([...reversed]).toEqual([...curve]);
        expect([reversed.median, reversed.medianLow95, reversed.medianHigh95]).toEqual([
          curve.median,
          curve.medianLow95,
          curve.medianHigh95,
        ]);
      }),
      runs(),
    );
  });

  it("has only its times doubled where every time is doubled", () => {
    const twice = (time: number | null) => time && 2 * time;
    fc.assert(
      fc.property(anyTimes, (times) => {
        const curve = kaplanMeier(times);
        const doubled = kaplanMeier(times.map((one) => ({ ...one, time: 2 * one.time })));
        expect([...doubled]).toEqual(Array.from(curve, (step) => ({ ...step, time: 2 * step.time })));
        expect(doubled.median).toBe(twice(curve.median));
        expect(doubled.medianLow95).toBe(twice(curve.medianLow95));
        expect(doubled.medianHigh95).toBe(twice(curve.medianHigh95));
      }),
      runs(),
    );
  });

  it("never answers NaN, and loses no event", () => {
    fc.assert(
      fc.property(anyTimes, (times) => {
        const curve = kaplanMeier(times);
        for (const step of curve)
          for (const value of Object.values(step)) expect(value === null || Number.isFinite(value)).toBe(true);
        expect(curve.reduce((sum, { happened }) => sum + happened, 0)).toBe(times.filter(({ happened }) => happened).length);
      }),
      runs(),
    );
  });

  it("stays right for a long caseload", () => {
    const curve = kaplanMeier(Array.from({ length: 20_000 }, (_, index) => ({ time: (index * 7919) % 20_000, happened: true })));
    expect(curve).toHaveLength(20_000);
    expect(curve[4999]?.survival).toBeCloseTo(0.75, 9);
    expect(curve.median).toBe(9999.5);
  });

  it("without censoring is the share that is left", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 1, maxLength: 30 }), (times) => {
        for (const { time, survival } of kaplanMeier(times.map((one) => ({ time: one, happened: true }))))
          expect(survival).toBeCloseTo(times.filter((one) => one > time).length / times.length, 10);
      }),
      runs(),
    );
  });
});

describe("log-rank", () => {
  it.each([
    // survdiff(Surv(time, status) ~ arm)$chisq and pchisq(chisq, 1, lower.tail = FALSE) of R 4.2.2, survival 3.5.3.
    { arms: [mercaptopurine, placebo], chiSquare: 16.7929409892165, pValue: 4.16880910933453e-5 },
    { arms: [maintained, nonmaintained], chiSquare: 3.3963886989776, pValue: 0.0653393220405051 },
    { arms: [standard, testTreatment], chiSquare: 2.45386842383595, pValue: 0.117235627587515 },
    { arms: [ovarian1, ovarian2], chiSquare: 1.06273986129141, pValue: 0.302591116989095 },
  ] as const)("is that of R's survdiff for $arms.0.of against $arms.1.of", ({ arms: [one, other], chiSquare, pValue }) => {
    const found = logRank(one.times, other.times);
    expect(found.chiSquare).toBeCloseTo(chiSquare, 10);
    expect(found.pValue / pValue).toBeCloseTo(1, 9);
  });

  it("is χ² = 16.793 for the arms of Freireich et al., Blood 1963;21:699", () => {
    expect(logRank(mercaptopurine.times, placebo.times).chiSquare).toBeCloseTo(16.793, 3);
  });

  it("counts the last two at risk too", () => {
    // By hand, and R's survdiff: at 1, O − E = 1 − 1/2 and V = 1/4; at 2 nothing is left to chance.
    const { chiSquare, pValue } = logRank(outcomes("1"), outcomes("2"));
    expect(chiSquare).toBeCloseTo(1, 12);
    expect(pValue).toBeCloseTo(0.317310507862914, 12);
  });

  it("finds nothing where nothing can differ: nothing happened, an arm is empty, or all are one and the same", () => {
    const nothing = { chiSquare: 0, pValue: 1 };
    expect(logRank(outcomes("3+ 4+"), outcomes("5+"))).toEqual(nothing);
    expect(logRank([], outcomes("5"))).toEqual(nothing);
    expect(logRank(outcomes("5 6 7+"), [])).toEqual(nothing);
    expect(logRank([], [])).toEqual(nothing);
    // Everything at once: of all at risk all went, as expected.
    expect(logRank(outcomes("5 5"), outcomes("5 5 5"))).toEqual(nothing);
    // The second arm was no longer watched when the first began to end.
    expect(logRank(outcomes("5 6"), outcomes("1+ 2+"))).toEqual(nothing);
  });

  it("does not depend on which arm comes first nor on the unit of time, and finds nothing between arms alike", () => {
    fc.assert(
      fc.property(anyTimes, anyTimes, (one, other) => {
        expect(logRank(one, one).chiSquare).toBeCloseTo(0, 10);
        expect(logRank(one, one).pValue).toBeCloseTo(1, 4);
        const there = logRank(one, other);
        const back = logRank(other, one);
        expect(there.chiSquare).toBeCloseTo(back.chiSquare, 8);
        expect(there.pValue).toBeCloseTo(back.pValue, 8);
        expect(there.chiSquare).toBeGreaterThanOrEqual(0);
        expect(there.pValue).toBeGreaterThanOrEqual(0);
        expect(there.pValue).toBeLessThanOrEqual(1);
        const inWeeks = (times: typeof one) => times.map(({ time, happened }) => ({ time: time / 8, happened }));
        expect(logRank(inWeeks(one), inWeeks(other))).toEqual(there);
      }),
      runs(),
    );
  });

  it("has the tail of χ² with one degree of freedom that R's pchisq prints, near and far", () => {
    const printed = [
      [1e-8, 0.9999202115440528],
      [1e-4, 0.9920212873707368],
      [0.01, 0.920344325445942],
      [0.5, 0.4795001221869535],
      [1, 0.3173105078629141],
      [3.84, 0.05004352124870522],
      [6.25, 0.01241933065155229],
      [6.63, 0.01002752644631795],
      [10.83, 0.000998686379180259],
      [16.793, 4.168679471886338e-5],
      [25, 5.733031437583879e-7],
      [50, 1.537459794428034e-12],
      [100, 1.523970604832105e-23],
      [700, 2.99022697512462e-154],
      [1400, 2.101014516264134e-306],
    ] as const;
    for (const [chiSquare, tail] of printed) expect((2 * normalUpperTail(Math.sqrt(chiSquare))) / tail).toBeCloseTo(1, 11);
  });

  it("has the tail of χ² that jStat has", () => {
    // jStat has the lower tail only, so that its digits end at about 1e-15.
    for (const chiSquare of [0.01, 0.5, 1, 3.84, 6.63, 10.83])
      expect(2 * normalUpperTail(Math.sqrt(chiSquare))).toBeCloseTo(1 - jStat.chisquare.cdf(chiSquare, 1), 9);
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

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { desirability } from "@/lib/fit/desirability";
import { FitInputError } from "@/lib/fit/errors";
import { fitIndex, type IndexComponent, indexComponents } from "@/lib/fit/fit-index";
import { kragten } from "@/lib/fit/kragten";
import { runs } from "./runs";

const component = (id: string, [value, standardError]: [number, number], [zeroAt, oneAt]: [number, number]): IndexComponent => ({
  id,
  name: id,
  unit: "",
  value,
  standardError,
  zeroAt,
  oneAt,
});

/** Five components of the methods' worked example. */
const worked = [
  component("comfort", [7, 1], [4, 9]),
  component("pain", [1, 1], [4, 0]),
  component("displacement", [6, 2], [25, 0]),
  component("fade", [9, 2], [20, 5]),
  component("motion", [6, 3], [20, 0]),
];

describe("desirability", () => {
  it("is a straight line from 0 to 1, flat beyond its ends", () => {
    // Derringer & Suich 1980 (from memory), one-sided with exponent 1; values by hand.
    expect([3, 4, 6.5, 9, 10].map((value) => desirability(value, { zeroAt: 4, oneAt: 9 }))).toEqual([0, 0, 0.5, 1, 1]);
    expect([-1, 0, 1, 4, 9].map((value) => desirability(value, { zeroAt: 4, oneAt: 0 }))).toEqual([1, 1, 0.75, 0, 0]);
  });

  it("refuses a range without extent and what is no number", () => {
    expect(() => desirability(1, { zeroAt: 2, oneAt: 2 })).toThrow("range");
    expect(() => desirability(Number.NaN, { zeroAt: 2, oneAt: 3 })).toThrow(FitInputError);
  });
});

describe("Kragten's propagation", () => {
  it("adds independent errors of a sum by root sum of squares", () => {
    // 3² + 4² = 5²; 1.645 · 5 = 8.225.
    const sum = kragten(
      [
        { value: 10, standardError: 3 },
        { value: 5, standardError: 4 },
      ],
      ([a = 0, b = 0]) => a + b,
    );
    expect(sum).toEqual({ value: 15, down: 5, up: 5, low90: 15 - 8.225, high90: 15 + 8.225 });
  });

  it("tells down from up where the function bends", () => {
    // x² at 3 ± 1: 4 below, 7 above.
    expect(kragten([{ value: 3, standardError: 1 }], ([x = 0]) => x * x)).toMatchObject({ value: 9, down: 5, up: 7 });
  });

  it("refuses a negative error and a function that has no value nearby", () => {
    expect(() => kragten([{ value: 1, standardError: -1 }], () => 1)).toThrow("inputs[0].standardError");
    expect(() => kragten([{ value: 1, standardError: 2 }], ([x = 0]) => Math.sqrt(x))).toThrow("f: expected a finite result");
  });
});

describe("index of a fit", () => {
  it("is 0.706131 with the interval 0.557452…0.823133 for the worked example", () => {
    // (0.6 · 0.75 · 0.76 · 0.73333 · 0.7)^(1/5); interval recomputed in Python after Kragten, Analyst 1994;119:2161–2165.
    const index = fitIndex(worked);
    expect(index.components.map((one) => one.desirability)).toEqual(
      [0.6, 0.75, 0.76, 11 / 15, 0.7].map((value) => expect.closeTo(value, 10)),
    );
    expect(index.value).toBeCloseTo(0.706131, 6);
    expect(index.low90).toBeCloseTo(0.557452, 6);
    expect(index.high90).toBeCloseTo(0.823133, 6);
    expect(index.missing).toEqual([]);
  });

  it("is zero with any desirability of zero, however good the rest", () => {
    const index = fitIndex(worked.map((one) => (one.id === "pain" ? { ...one, value: 4 } : one)));
    expect(index).toMatchObject({ value: 0, low90: 0 });
    expect(index.high90).toBeGreaterThan(0);
  });

  it("has no value where a component was not measured, and names it", () => {
    const { value: _value, ...unmeasured } = component("motion", [6, 3], [20, 0]);
    const index = fitIndex([...worked.slice(0, 4), unmeasured]);
    expect(index.missing).toEqual(["motion"]);
    expect(index.why).toBe("No index: not measured: motion.");
    expect(Object.keys(index)).not.toContain("value");
    expect(fitIndex([]).value).toBeUndefined();
  });

  it("is made of six components, each missing until it is measured", () => {
    expect(fitIndex(indexComponents({})).missing).toHaveLength(6);
    const best = {
      comfort: 9,
      pain: 0,
      displacement: { value: 0, standardError: 0, limitMm: 10 },
      fadeMin: 5,
      motionLostDeg: 0,
      evennessAround: 0.95,
    };
    expect(fitIndex(indexComponents(best)).value).toBeCloseTo(1, 12);
    expect(fitIndex(indexComponents({ ...best, displacement: undefined })).missing).toEqual(["displacement under load"]);
    for (const worst of [{ comfort: 4 }, { pain: 4 }, { fadeMin: 20 }, { motionLostDeg: 20 }, { evennessAround: 0.6 }])
      expect(fitIndex(indexComponents({ ...best, ...worst })).value).toBe(0);
    expect(fitIndex(indexComponents({ ...best, displacement: { value: 10, standardError: 1, limitMm: 10 } })).value).toBe(0);
  });

  const measures = fc.record({
    comfort: fc.double({ min: 0, max: 10, noNaN: true }),
    pain: fc.double({ min: 0, max: 10, noNaN: true }),
    displacement: fc.record({
      value: fc.double({ min: 0, max: 60, noNaN: true }),
      standardError: fc.double({ min: 0, max: 10, noNaN: true }),
      limitMm: fc.double({ min: 1, max: 25, noNaN: true }),
    }),
    fadeMin: fc.double({ min: 0, max: 60, noNaN: true }),
    motionLostDeg: fc.double({ min: -20, max: 90, noNaN: true }),
    evennessAround: fc.double({ min: 0, max: 1, noNaN: true }),
  });

  it("lies in 0…1 and inside its interval", () => {
    fc.assert(
      fc.property(measures, (some) => {
        const { value = Number.NaN, low90 = Number.NaN, high90 = Number.NaN } = fitIndex(indexComponents(some));
        expect(0 <= low90 && low90 <= value && value <= high90 && high90 <= 1).toBe(true);
      }),
      runs(),
    );
  });

  it("never rises with lower comfort, more pain, displacement, fading, loss of motion or unevenness", () => {
    fc.assert(
      fc.property(measures, fc.double({ min: 0, max: 3, noNaN: true }), (some, by) => {
        const before = fitIndex(indexComponents(some)).value ?? Number.NaN;
        const worse = [
          { comfort: some.comfort - by },
          { pain: some.pain + by },
          { displacement: { ...some.displacement, value: some.displacement.value + by } },
          { fadeMin: some.fadeMin + by },
          { motionLostDeg: some.motionLostDeg + by },
          { evennessAround: some.evennessAround - by },
        ];
        for (const change of worse)
          expect(fitIndex(indexComponents({ ...some, ...change })).value).toBeLessThanOrEqual(before + 1e-12);
      }),
      runs(),
    );
  });
});

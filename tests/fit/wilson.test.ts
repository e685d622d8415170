import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FitInputError, wilson } from "@/lib/fit";
import { runs } from "./runs";

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

  it.each([
    // prop.test(x, n, correct = FALSE)$conf.int of R 4.2.2.
    [81, 263, 0.255288519878274, 0.3662095769828],
    [15, 148, 0.0623863995307363, 0.160487241723308],
    [0, 20, 0, 0.161125158052819],
    [1, 29, 0.00611321429276266, 0.171755218793203],
    [29, 29, 0.883030201500259, 1],
    [0, 1, 0, 0.793450685622763],
    [1, 1, 0.206549314377238, 1],
    [3, 7, 0.15821985525147, 0.749541635472343],
    [19, 20, 0.763868806553258, 0.991118551199205],
    [999, 1000, 0.994357441402042, 0.999823453629374],
  ])("of %i in %i is that of R's prop.test(correct = FALSE)", (x, n, low, high) => {
    expect(wilson(x, n).low).toBeCloseTo(low, 12);
    expect(wilson(x, n).high).toBeCloseTo(high, 12);
  });

  it("holds the shares that the score test does not reject (by solving |p̂ − p| = z·√(p(1 − p)/n))", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }).chain((n) => fc.tuple(fc.nat(n), fc.constant(n))),
        ([x, n]) => {
          const { low, high } = wilson(x, n);
          for (const p of [low, high])
            if (p > 0 && p < 1) expect(Math.abs(x / n - p) / Math.sqrt((p * (1 - p)) / n)).toBeCloseTo(1.959963984540054, 6);
          expect(low).toBeGreaterThanOrEqual(0);
          expect(low).toBeLessThanOrEqual(x / n);
          expect(high).toBeGreaterThanOrEqual(x / n);
          expect(high).toBeLessThanOrEqual(1);
          const turned = wilson(n - x, n);
          expect(turned.low).toBeCloseTo(1 - high, 12);
          const twice = wilson(2 * x, 2 * n);
          expect(twice.high - twice.low).toBeLessThan(high - low);
        },
      ),
      runs(),
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
    expect(() => wilson(x, n)).toThrow(FitInputError);
    expect(() => wilson(x, n)).toThrow("expected a whole number");
  });
});

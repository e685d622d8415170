import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromUnit, inUnit, readQuantity, showQuantity, type Unit, unitsOf } from "@/lib/fit";
import { runs } from "./runs";

const length = { quantity: "length", unit: "mm" } as const;
const mass = { quantity: "mass", unit: "kg" } as const;
const force = { quantity: "force", unit: "N" } as const;

// Thompson A, Taylor BN. Guide for the Use of the International System of Units. NIST SP 811, 2008, appendix B.8, where the
// factors in bold are exact: inch 2.54 E−02 m, pound (avoirdupois) 4.535 923 7 E−01 kg, pound-force 4.448 221 615 260 5 N.
describe("units as in NIST SP 811, appendix B.8", () => {
  it.each([
    ["1 in", length, 25.4],
    ["1 lb", mass, 0.45359237],
    ["1 lbf", force, 4.4482216152605],
    // 36 ft are 10.9728 m: its example of rounding (from memory).
    ["432 in", length, 10972.8],
    ["0.1 in", length, 2.54],
    ["3 lb", mass, 1.36077711],
    ["50 lbf", force, 222.411080763025],
  ])("%s is read exactly", (text, as, value) => {
    expect(readQuantity(text, as).value).toBe(value);
  });

  it("the 222 N of the harness rule are 50 lbf, rounded by its source", () => {
    expect(readQuantity("50 lbf", force).value).toBeCloseTo(222, 0);
    expect(showQuantity(222, "lbf")).toBe("49.9 lbf");
  });
});

describe("reading what a person writes", () => {
  it.each([
    ["184,2 mm", length, 184.2, "mm"],
    ["  7.25in ", length, 184.15, "in"],
    ["7 1/4 in", length, 184.15, "in"],
    ["7-1/4 inches", length, 184.15, "in"],
    ['3/8"', length, 9.525, "in"],
    [".5 lb", mass, 0.226796185, "lb"],
    ["−2 mm", length, -2, "mm"],
    ["220", force, 220, "N"],
    ["220n", force, 220, "N"],
  ])("%s", (text, as, value, unit) => {
    expect(readQuantity(text, as)).toEqual({ value, unit });
  });

  it("takes the unit that is meant where none is written", () => {
    expect(readQuantity("7 1/4", { quantity: "length", unit: "in" })).toEqual({ value: 184.15, unit: "in" });
  });

  it.each([
    ["", length, "expected a number"],
    ["in", length, "expected a number"],
    ["seven in", length, "expected a number"],
    ["1.2.3 mm", length, "expected one number"],
    ["1,200.5 mm", length, "expected one number"],
    ["7 1/4 mm", length, "expected one number"],
    ["1/0 in", length, "not of 0"],
    ["5 kg", length, "expected mm or in"],
    ["5 in", mass, "expected kg or lb"],
    ["9".repeat(31), length, "expected a number"],
    ["1e5 mm", length, "expected"],
    [".", length, "expected"],
  ])("refuses %j", (text, as, why) => {
    expect(() => readQuantity(text, as)).toThrow(why);
  });
});

describe("what is read", () => {
  const unit = fc.constantFrom<Unit>(...unitsOf.length, ...unitsOf.mass, ...unitsOf.force);
  // What a person types: at most eight digits, of them four decimals.
  const typed = fc.tuple(fc.integer({ min: 0, max: 9999 }), fc.integer({ min: 0, max: 9999 }));

  it("is shown again as it was typed: only the eye's decimals are rounded", () => {
    fc.assert(
      fc.property(unit, typed, (of, [whole, part]) => {
        const written = Number(`${whole}.${String(part).padStart(4, "0")}`);
        const quantity = of === "mm" || of === "in" ? "length" : of === "kg" || of === "lb" ? "mass" : "force";
        const { value } = readQuantity(`${written} ${of}`, { quantity, unit: of });
        expect(showQuantity(value, of, 4)).toBe(`${written} ${of}`);
        expect(inUnit(value, of)).toBeCloseTo(written, 10);
        expect(fromUnit(written, of)).toBe(value);
      }),
      runs(),
    );
  });

  it("is never anything but a number", () => {
    expect(() => inUnit(Number.NaN, "in")).toThrow("value");
    expect(() => fromUnit(Number.POSITIVE_INFINITY, "lb")).toThrow("value");
    expect(fromUnit(1e-7, "in")).toBeCloseTo(2.54e-6, 12);
    expect(showQuantity(-0.001, "mm")).toBe("0 mm");
  });
});

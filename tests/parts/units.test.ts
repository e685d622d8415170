import { expect, test } from "vitest";
import { inUnits } from "@/app/_forms/in-units";

const inches = { length: "in", mass: "lb", force: "lbf" } as const;

test("a number without a unit is in the unit that the person chose, by what the name of the field says", () => {
  expect(
    inUnits({ "stations.0.circumferenceMm": "7 1/4", bodyMassKg: "165.5", "pulls.0.loadN": "50", comfort: "8" }, inches),
  ).toEqual({
    "stations.0.circumferenceMm": "7 1/4 in",
    bodyMassKg: "165.5 lb",
    "pulls.0.loadN": "50 lbf",
    comfort: "8",
  });
});

test("a unit that is written counts, and what is no number is left for its field to refuse", () => {
  const typed = { lengthMm: "40 mm", circumferenceMm: "seven", distanceMm: "", displacementMm: "3/8" };
  expect(inUnits(typed, inches)).toEqual({ ...typed, displacementMm: "3/8 in" });
});

test("who reads metric gets what was typed", () => {
  const typed = { lengthMm: "40", bodyMassKg: "70,5", loadN: "22 N" };
  expect(inUnits(typed, { length: "mm", mass: "kg", force: "N" })).toEqual(typed);
});

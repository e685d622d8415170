import { describe, expect, test } from "vitest";
import { FitInputError, limbChange, motion, suspension, suspensionRule } from "@/lib/fit";

const stations = [
  { distanceMm: 0, circumferenceMm: 200 },
  { distanceMm: 100, circumferenceMm: 240 },
];
const pulls = [{ loadN: 20, displacementMm: 1 }];

/** Nothing compares with NaN, so that a limit which is none would let everything pass. */
describe.each([Number.NaN, Number.POSITIVE_INFINITY, -1])("an option of %s is refused by name", (value) => {
  test.each([
    ["rule.hardestPullAtLeastN", () => suspension(pulls, { loadN: 20, limitMm: 10, hardestPullAtLeastN: value })],
    ["rule.errorOfFewPullsMm", () => suspension(pulls, { loadN: 20, limitMm: 10, errorOfFewPullsMm: value })],
    ["rule.closeErrors", () => suspension(pulls, { loadN: 20, limitMm: 10, closeErrors: value })],
    ["rule.limitMm", () => suspension(pulls, { loadN: 20, limitMm: value })],
    ["bodyMassKg", () => suspensionRule({ level: "transradial", suspension: "harness", bodyMassKg: value })],
    ["rule.angleErrorDeg", () => motion(130, 120, { judges: "lost", limitDeg: 10, angleErrorDeg: value })],
    ["rule.closeErrors", () => motion(130, 120, { judges: "lost", limitDeg: 10, closeErrors: value })],
    ["settledPercent", () => limbChange(stations, stations, { circumferenceSdMm: 1, settledPercent: value })],
  ])("%s", (path, compute) => {
    expect(compute).toThrow(FitInputError);
    expect(compute).toThrow(path);
  });
});

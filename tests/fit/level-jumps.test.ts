import { expect, test } from "vitest";
import { detectableDifferenceMm, FitInputError, jumpKey, levelJumps } from "@/lib/fit";

const at = (...circumferences: number[]) =>
  circumferences.map((circumferenceMm, index) => ({ distanceMm: index * 40, circumferenceMm }));

test("more than 30 % from one level to the next is a jump, in either direction; 30 % is none (by hand: 200·1.3 = 260)", () => {
  expect(levelJumps(at(200, 260))).toEqual([]);
  expect(levelJumps(at(200, 261)).map(({ index }) => index)).toEqual([1]);
  expect(levelJumps(at(180, 190, 91)).map(({ index, beforeMm }) => [index, beforeMm])).toEqual([[2, 190]]);
});

test("a figure that slipped jumps there and back", () => {
  expect(levelJumps(at(176, 188, 303, 219)).map(({ index }) => index)).toEqual([2]);
  expect(levelJumps(at(176, 188, 2030 / 5, 219)).map(({ index }) => index)).toEqual([2, 3]);
});

test("the shape that the limb had last time is no slip; the opposite jump is", () => {
  expect(levelJumps(at(120, 190), at(121, 188))).toEqual([]);
  expect(levelJumps(at(190, 120), at(121, 188))).toHaveLength(1);
  expect(levelJumps(at(120, 190), [{ distanceMm: 200, circumferenceMm: 240 }])).toHaveLength(1);
});

test("what cannot be is refused with its path", () => {
  expect(() => levelJumps(at(180, Number.NaN))).toThrow(FitInputError);
  expect(() => levelJumps(at(180, 190), at(0))).toThrow(/lastTime/);
});

test("the key of a jump changes with each of its values", () => {
  const keys = [jumpKey({ distanceMm: 40, circumferenceMm: 284 }, 180), jumpKey({ distanceMm: 40, circumferenceMm: 285 }, 180)];
  expect(new Set(keys).size).toBe(2);
});

test("two circumferences differ detectably from 1.96·√2·s: 4.158 mm at 1.5 mm (design figure, by hand)", () => {
  expect(detectableDifferenceMm(1.5)).toBeCloseTo(4.1578, 4);
  expect(detectableDifferenceMm(0)).toBe(0);
  for (const wrong of [-1, Number.NaN, Number.POSITIVE_INFINITY])
    expect(() => detectableDifferenceMm(wrong)).toThrow(FitInputError);
});

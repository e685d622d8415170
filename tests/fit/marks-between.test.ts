import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { marksBetween, type SkinMark } from "@/lib/fit";
import { mark } from "./marks";
import { runs } from "./runs";

const round = { circumferenceMm: 360 }; // a millimetre a degree
const disc = (changed: Partial<SkinMark> = {}) => mark({ widthMm: 20, heightMm: 20, ...changed });
const fates = (earlier: SkinMark[], later: SkinMark[]) =>
  marksBetween({ marks: earlier }, { marks: later }, round).map(({ fate, before, after }) => [fate, before?.id, after?.id]);

/**
 * The part of a disc of radius r that lies in an equal one whose centre is d away: the lens
 * 2r²·acos(d/2r) − (d/2)·√(4r² − d²), over πr². Weisstein, "Circle-Circle Intersection", MathWorld, eq. 16 (from memory).
 */
const lens = (apart: number, radius = 10): number =>
  (2 * radius ** 2 * Math.acos(apart / (2 * radius)) - (apart / 2) * Math.sqrt(4 * radius ** 2 - apart ** 2)) /
  (Math.PI * radius ** 2);

/** By halving: how far apart two such discs share 20 %. */
function apartAtFifth(): number {
  let [near, far] = [0, 20];
  for (let step = 0; step < 60; step++) {
    const middle = (near + far) / 2;
    if (lens(middle) > 0.2) near = middle;
    else far = middle;
  }
  return near;
}

describe("marks of two sockets", () => {
  it("are the same one up to where a fifth of it is shared", () => {
    const edge = apartAtFifth();
    const along = (apart: number) => fates([disc({ id: "a" })], [disc({ id: "b", distanceFromEndMm: 85 + apart })]);
    expect(along(edge - 0.05)).toEqual([["same", "a", "b"]]);
    expect(along(edge + 0.05)).toEqual([
      ["gone", "a", undefined],
      ["new", undefined, "b"],
    ]);
    const around = (apart: number) =>
      fates([disc({ id: "a", angleDeg: 355 })], [disc({ id: "b", angleDeg: (355 + apart) % 360 })]);
    expect(around(edge - 0.05)).toEqual([["same", "a", "b"]]);
    expect(around(edge + 0.05)).toHaveLength(2);
  });

  it("are judged by the smaller: a small one within a large one is the same place", () => {
    expect(fates([disc({ id: "a", widthMm: 4, heightMm: 4 })], [disc({ id: "b", widthMm: 60, heightMm: 40 })])).toEqual([
      ["same", "a", "b"],
    ]);
  });

  it("are fainter, harder, gone or new by their grades", () => {
    expect(fates([disc({ id: "a", firm: true })], [disc({ id: "b" })])).toEqual([["fainter", "a", "b"]]);
    expect(fates([disc({ id: "a", strength: "faint" })], [disc({ id: "b" })])).toEqual([["harder", "a", "b"]]);
    expect(fates([disc({ id: "a" })], [disc({ id: "b", strength: "none" })])).toEqual([["gone", "a", undefined]]);
    expect(fates([], [disc({ id: "b" })])).toEqual([["new", undefined, "b"]]);
    expect(fates([disc({ id: "a", strength: "none" })], [])).toEqual([]);
  });

  it("pair off by how much they share, none twice", () => {
    const later = [disc({ id: "near", angleDeg: 8 }), disc({ id: "nearer", angleDeg: 1 })];
    expect(fates([disc({ id: "a" })], later)).toEqual([
      ["same", "a", "nearer"],
      ["new", undefined, "near"],
    ]);
  });

  it("grade as late as they were looked at", () => {
    const [found] = marksBetween({ marks: [disc()], lookedAtMin: 1 }, { marks: [disc()], lookedAtMin: 30 }, round);
    expect(found).toMatchObject({ fate: "harder", gradeBefore: 2, gradeAfter: 3 });
  });

  it("must have a size and a place, and the limb a circumference", () => {
    for (const wrong of [
      { widthMm: 0 },
      { heightMm: Number.NaN },
      { angleDeg: Number.NaN },
      { distanceFromEndMm: Number.POSITIVE_INFINITY },
    ])
      expect(() => marksBetween({ marks: [] }, { marks: [disc(wrong)] }, round)).toThrow(/later\.marks\[0\]/);
    expect(() => marksBetween({ marks: [disc()] }, { marks: [disc()] }, { circumferenceMm: 0 })).toThrow("circumferenceMm");
  });

  const anyMark = fc.record({
    distanceFromEndMm: fc.double({ min: 0, max: 170, noNaN: true }),
    angleDeg: fc.double({ min: 0, max: 360, noNaN: true }),
    widthMm: fc.double({ min: 1, max: 60, noNaN: true }),
    heightMm: fc.double({ min: 1, max: 60, noNaN: true }),
  });
  const anyMarks = fc
    .array(anyMark, { maxLength: 6 })
    .map((all) => all.map((changed, index) => mark({ ...changed, id: `m${index}` })));

  it("each has one fate, and what is new one way is gone the other", () => {
    fc.assert(
      fc.property(anyMarks, anyMarks, (earlier, later) => {
        const there = marksBetween({ marks: earlier }, { marks: later });
        const back = marksBetween({ marks: later }, { marks: earlier });
        expect(there.flatMap(({ before }) => before ?? []).map(({ id }) => id)).toEqual(earlier.map(({ id }) => id));
        expect(new Set(there.flatMap(({ after }) => after ?? [])).size).toBe(later.length);
        const count = (found: typeof there, fate: string) => found.filter((one) => one.fate === fate).length;
        expect(count(there, "new")).toBe(count(back, "gone"));
      }),
      runs(),
    );
  });

  it("a mark held against itself is the same", () => {
    fc.assert(
      fc.property(anyMark, (changed) => {
        expect(fates([mark(changed)], [mark(changed)])).toEqual([["same", "m", "m"]]);
      }),
      runs(),
    );
  });
});

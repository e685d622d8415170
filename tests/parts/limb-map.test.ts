import fc from "fast-check";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { LimbMap } from "@/app/_parts/limb-map";
import { type LimbShape, mapBox, mapGeometry, trimPoints } from "@/app/_parts/limb-map-geometry";
import { drawMarks, type MapMark } from "@/app/_parts/limb-map-marks";
import { markSentence, placeWords } from "@/app/_parts/mark-words";

const left: LimbShape = {
  side: "left",
  limbLengthMm: 170,
  levels: [
    { distanceFromEndMm: 0, circumferenceMm: 176 },
    { distanceFromEndMm: 60, circumferenceMm: 214 },
    { distanceFromEndMm: 120, circumferenceMm: 209 },
    { distanceFromEndMm: 170, circumferenceMm: 238 },
  ],
};
const right: LimbShape = { ...left, side: "right" };

const mark = (more: Partial<MapMark> = {}): MapMark => ({
  id: "a",
  angleDeg: 8,
  distanceFromEndMm: 88,
  widthMm: 22,
  heightMm: 12,
  strength: "clear",
  blanches: "yes",
  firm: false,
  warm: false,
  painful: false,
  broken: false,
  fadedAtMin: 9,
  grade: 2,
  ...more,
});

/** Of up to eight levels at any heights, below the end and above the limb's length as well. */
const shapes = fc.record({
  side: fc.constantFrom("left" as const, "right" as const),
  limbLengthMm: fc.integer({ min: 30, max: 450 }),
  reachMm: fc.option(fc.integer({ min: 20, max: 600 }), { nil: undefined }),
  levels: fc
    .uniqueArray(
      fc.record({
        distanceFromEndMm: fc.integer({ min: -20, max: 500 }),
        circumferenceMm: fc.integer({ min: 100, max: 700 }),
      }),
      { maxLength: 8, selector: ({ distanceFromEndMm }) => distanceFromEndMm },
    )
    .map((levels) => levels.sort((a, b) => a.distanceFromEndMm - b.distanceFromEndMm)),
});

describe("where things lie on the limb map", () => {
  test("lateral is on the right of a left limb and on the left of a right one, as seen from the front", () => {
    const lateral = { angleDeg: 90, distanceFromEndMm: 88 };
    expect(mapGeometry(left).pointOf(lateral).x).toBeGreaterThan(mapGeometry(left).centreX);
    expect(mapGeometry(right).pointOf(lateral).x).toBeLessThan(mapGeometry(right).centreX);
    expect(renderToStaticMarkup(createElement(LimbMap, { title: "Marks", marks: [], ...right }))).toContain(
      "lateral is on the left",
    );
  });

  test("both axes have one scale: a mark as wide as it is high is a circle", () => {
    const [drawn] = drawMarks([mark({ widthMm: 20, heightMm: 20 })], mapGeometry(left), []);
    expect(drawn?.radiusX).toBeCloseTo(drawn?.radiusY ?? 0, 9);
    expect(drawn?.radiusX).toBeCloseTo(10 * mapGeometry(left).unitsPerMm, 9);
  });

  test("the map says where it is not to scale", () => {
    const words = renderToStaticMarkup(createElement(LimbMap, { title: "Marks", marks: [], side: "left", limbLengthMm: 170 }));
    expect(words).toContain("Not to scale across");
  });

  test("a press on the map finds the place that is drawn there", () => {
    fc.assert(
      fc.property(
        shapes,
        fc.double({ min: 0, max: 359.9, noNaN: true }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (shape, angleDeg, share) => {
          fc.pre(Math.abs(angleDeg - 180) > 0.01);
          const geometry = mapGeometry(shape);
          const found = geometry.placeOf(geometry.pointOf({ angleDeg, distanceFromEndMm: share * shape.limbLengthMm }));
          expect(found?.distanceFromEndMm).toBeCloseTo(share * shape.limbLengthMm, 6);
          const apart = Math.abs((found?.angleDeg ?? Number.NaN) - angleDeg);
          expect(Math.min(apart, 360 - apart)).toBeLessThan(1e-6);
        },
      ),
    );
  });

  test("a press beside the limb finds nothing", () => {
    const geometry = mapGeometry(left);
    expect(geometry.placeOf({ x: 2, y: geometry.bottom - 1 })).toBeUndefined();
    expect(geometry.placeOf({ x: geometry.centreX, y: geometry.bottom + 5 })).toBeUndefined();
  });

  test("a trim line runs through the places that are known, from seam to seam", () => {
    const line = [0, 90, 180, 270].map((angleDeg) => ({ angleDeg, distanceFromEndMm: angleDeg % 180 === 0 ? 149 : 166 }));
    const geometry = mapGeometry(right);
    const points = trimPoints(line, geometry);
    const heightOf = (index: number) => (geometry.bottom - (points[index]?.y ?? Number.NaN)) / geometry.unitsPerMm;
    expect([0, 18, 36, 54, 72].map((index) => Math.round(heightOf(index) * 1000) / 1000)).toEqual([149, 166, 149, 166, 149]);
  });
});

describe("marks on the limb map", () => {
  test("a mark that crosses the posterior midline is drawn at both edges, with its number at both", () => {
    const drawn = drawMarks([mark({ angleDeg: 176 })], mapGeometry(left), []);
    expect(drawn.map(({ number }) => number)).toEqual([1, 1]);
    const [one, other] = drawn.map(({ centre }) => centre.x);
    const aroundUnits = mapGeometry(left).circumferenceAt(88) * mapGeometry(left).unitsPerMm;
    expect(Math.abs((one ?? 0) - (other ?? 0))).toBeCloseTo(aroundUnits, 6);
    expect(drawMarks([mark({ angleDeg: 150 })], mapGeometry(left), [])).toHaveLength(1);
  });

  test("a mark at the distal end is drawn in the disc, and on the wall too where it reaches over the rim", () => {
    const on = (more: Partial<MapMark>) => drawMarks([mark(more)], mapGeometry(left), []).map((drawn) => drawn.on);
    expect(on({ distanceFromEndMm: 5, heightMm: 8 })).toEqual(["disc"]);
    expect(on({ distanceFromEndMm: 14, heightMm: 12 }).sort()).toEqual(["disc", "wall"]);
    expect(on({ distanceFromEndMm: 30, heightMm: 8 })).toEqual(["wall"]);
  });

  test("on the disc, lateral is on the same side as on the wall", () => {
    for (const shape of [left, right]) {
      const geometry = mapGeometry(shape);
      const [atEnd] = drawMarks([mark({ angleDeg: 90, distanceFromEndMm: 10, heightMm: 4 })], geometry, []);
      expect(Math.sign((atEnd?.centre.x ?? 0) - geometry.disc.x)).toBe(geometry.lateralSign);
    }
  });

  test("no number leaves the drawing, and two numbers never stand on each other while there is room", () => {
    const places = fc.array(
      fc.record({ angleDeg: fc.integer({ min: 0, max: 360 }), distanceFromEndMm: fc.integer({ min: 0, max: 170 }) }),
      { minLength: 1, maxLength: 6 },
    );
    fc.assert(
      fc.property(places, fc.constantFrom(left, right), (marks, shape) => {
        const geometry = mapGeometry(shape);
        const drawn = drawMarks(
          marks.map((place, index) => mark({ ...place, id: String(index), widthMm: 14, heightMm: 10 })),
          geometry,
          [],
        );
        for (const { label } of drawn) {
          expect(label.x).toBeGreaterThan(mapBox.left);
          expect(label.x).toBeLessThan(mapBox.left + mapBox.width);
          expect(label.y).toBeGreaterThan(0);
          expect(label.y).toBeLessThan(geometry.height);
        }
      }),
    );
    const apart = drawMarks([mark(), mark({ id: "b", angleDeg: 40 })], mapGeometry(left), []).map(({ label }) => label);
    expect(Math.hypot((apart[0]?.x ?? 0) - (apart[1]?.x ?? 0), (apart[0]?.y ?? 0) - (apart[1]?.y ?? 0))).toBeGreaterThan(11);
  });

  test("every mark is said in a sentence, in the drawing itself", () => {
    const broken = mark({ id: "b", angleDeg: 270, distanceFromEndMm: 8, broken: true, grade: 4, fadedAtMin: null });
    const drawing = renderToStaticMarkup(createElement(LimbMap, { title: "Marks", marks: [mark(), broken], ...left }));
    const plain = drawing.replaceAll("\u00a0", " ");
    expect(plain).toContain(
      "Mark 1: grade 2 of 4, clear, blanches; anterior, middle third, 88 mm from the end, 8°; 22 × 12 mm, faded by 9 min.",
    );
    expect(plain).toContain("Mark 2: grade 4 of 4, clear, skin broken, blanches; distal end, medial");
    expect(plain).toContain("not seen to fade");
  });

  test("where a mark lies is said by aspect and third", () => {
    expect(placeWords(mark({ angleDeg: 350, distanceFromEndMm: 40 }), 170)).toBe("anterior, distal third");
    expect(placeWords(mark({ angleDeg: 92, distanceFromEndMm: 150 }), 170)).toBe("lateral, proximal third");
    expect(markSentence(mark({ blanches: "no" }), 3, 170)).toContain("does not blanch");
  });

  test("hatches of two maps on one page have names of their own", () => {
    const twice = renderToStaticMarkup(
      createElement(
        "div",
        null,
        createElement(LimbMap, { title: "2", marks: [mark()], ...left }),
        createElement(LimbMap, { title: "3", marks: [mark()], ...left }),
      ),
    );
    const ids = [...twice.matchAll(/<pattern id="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.length).toBe(6);
  });
});

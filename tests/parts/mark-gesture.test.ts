import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fromAnterior, type LimbShape, mapGeometry } from "@/app/_parts/limb-map-geometry";
import { drawMarks } from "@/app/_parts/limb-map-marks";
import type { DrawnDraft } from "@/app/_parts/mark-draft";
import { drawnFrom, gestureAt, handleOf, movedTo, placeNear, resizedTo } from "@/app/_parts/mark-gesture";

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
const sides = fc.constantFrom(mapGeometry(left), mapGeometry({ ...left, side: "right" }));

const mark = (more: Partial<DrawnDraft> = {}): DrawnDraft => ({
  id: "0",
  row: 0,
  number: 1,
  distanceFromEndMm: 88,
  angleDeg: 8,
  widthMm: 22,
  heightMm: 12,
  grade: 2,
  sized: true,
  ...more,
});

const apartDeg = (a: number, b: number) => Math.abs(fromAnterior(a - b));

describe("a press on the limb map", () => {
  const press = (point: { x: number; y: number }, marks: DrawnDraft[], { chosen = null as number | null, reach = 8 } = {}) => {
    const geometry = mapGeometry(left);
    return gestureAt(point, { drawn: drawMarks(marks, geometry, []), chosen, geometry, reach });
  };

  test("on bare skin adds, beside the limb does nothing", () => {
    const { centreX, bottom, disc } = mapGeometry(left);
    expect(press({ x: centreX, y: bottom - 40 }, [])).toMatchObject({ what: "add", near: null });
    expect(press({ x: disc.x, y: disc.y }, [])).toMatchObject({ what: "add" });
    expect(press({ x: 2, y: bottom - 4 }, [])).toBeUndefined();
  });

  test("on a mark takes it; of two on each other the smaller, or the one that is chosen", () => {
    const at = mapGeometry(left).pointOf(mark());
    const small = mark({ id: "1", row: 1, number: 2, widthMm: 8, heightMm: 6 });
    expect(press(at, [mark()])).toMatchObject({ what: "move", row: 0 });
    expect(press(at, [mark(), small])).toMatchObject({ what: "move", row: 1 });
    expect(press(at, [mark(), small], { chosen: 0 })).toMatchObject({ what: "move", row: 0 });
  });

  test("a finger that misses a mark still means it unless it draws", () => {
    const at = mapGeometry(left).pointOf(mark({ distanceFromEndMm: 88 + 12 }));
    expect(press(at, [mark()], { reach: 26 })).toMatchObject({ what: "add", near: 0 });
    expect(press(at, [mark()], { reach: 6 })).toMatchObject({ what: "add", near: null });
  });

  test("the handle is only that of the chosen mark", () => {
    const geometry = mapGeometry(left);
    const [ellipse] = drawMarks([mark()], geometry, []);
    if (!ellipse) throw new Error("one mark is drawn");
    const handle = handleOf(ellipse, geometry);
    expect(press(handle, [mark()], { chosen: 0 })).toMatchObject({ what: "resize", row: 0 });
    expect(press(handle, [mark()])).not.toMatchObject({ what: "resize" });
  });

  test("a chosen mark of any size is moved by its middle, with a finger too", () => {
    const geometry = mapGeometry(left);
    for (const sizeMm of [1, 4, 10, 20, 40]) {
      const small = mark({ widthMm: sizeMm, heightMm: sizeMm });
      const [ellipse] = drawMarks([small], geometry, []);
      if (!ellipse) throw new Error("one mark is drawn");
      for (const reach of [8, 26]) {
        expect(press(ellipse.centre, [small], { chosen: 0, reach })).toMatchObject({ what: "move", row: 0 });
        expect(press(handleOf(ellipse, geometry), [small], { chosen: 0, reach })).toMatchObject({ what: "resize", row: 0 });
      }
    }
  });

  test("a finger beside the chosen mark takes it and draws no new one", () => {
    const geometry = mapGeometry(left);
    const { x, y } = geometry.pointOf(mark());
    expect(press({ x: x - 15, y: y - 10 }, [mark({ widthMm: 6, heightMm: 6 })], { chosen: 0, reach: 26 })).toMatchObject({
      what: "move",
      row: 0,
    });
  });
});

describe("moving and drawing on the limb map", () => {
  test("a point of wall or disc becomes the place that is drawn there", () => {
    fc.assert(
      fc.property(
        sides,
        fc.double({ min: 0, max: 359, noNaN: true }),
        fc.double({ min: 0.1, max: 169, noNaN: true }),
        (geometry, angleDeg, distanceFromEndMm) => {
          const place = { angleDeg, distanceFromEndMm };
          for (const { on, centre } of drawMarks([mark(place)], geometry, [])) {
            const found = placeNear(centre, geometry);
            expect(found.distanceFromEndMm, on).toBeCloseTo(distanceFromEndMm, 6);
            // Over the seam the second drawing lies beyond the edge, and is kept at it.
            if (on === "disc" || Math.abs(fromAnterior(angleDeg)) < 150)
              expect(apartDeg(found.angleDeg, angleDeg), on).toBeLessThan(1e-6);
          }
        },
      ),
    );
  });

  test("no hand can take a mark off the limb", () => {
    fc.assert(
      fc.property(
        sides,
        fc.double({ min: -900, max: 900, noNaN: true }),
        fc.double({ min: -900, max: 1500, noNaN: true }),
        (geometry, x, y) => {
          const { angleDeg, distanceFromEndMm } = placeNear({ x, y }, geometry);
          expect(distanceFromEndMm).toBeGreaterThanOrEqual(0);
          expect(distanceFromEndMm).toBeLessThanOrEqual(geometry.reachMm);
          expect(angleDeg).toBeGreaterThanOrEqual(0);
          expect(angleDeg).toBeLessThan(360);
        },
      ),
    );
  });

  test("a mark held by its drawing at the other edge of the seam comes in there", () => {
    const geometry = mapGeometry(left);
    const beyond = drawMarks([mark({ angleDeg: 176 })], geometry, []).find(({ turns }) => turns !== 0);
    if (!beyond) throw new Error("it is drawn at both edges");
    const grip = { x: beyond.centre.x + 6, y: beyond.centre.y };
    const gesture = gestureAt(grip, { drawn: [beyond], chosen: null, geometry, reach: 8 });
    if (gesture?.what !== "move") throw new Error("the press takes the mark");
    expect(movedTo(grip, gesture, geometry).angleDeg).toBeCloseTo(176, 6);
    const inwards = movedTo({ x: grip.x + 30, y: grip.y }, gesture, geometry);
    expect(inwards.angleDeg).toBeGreaterThan(180);
    expect(inwards.angleDeg).toBeLessThan(270);
  });

  test("a drag is the box of the mark: on both axes to scale", () => {
    const geometry = mapGeometry(left);
    const from = geometry.pointOf({ angleDeg: 0, distanceFromEndMm: 100 });
    const drawn = drawnFrom(from, { x: from.x + 20 * geometry.unitsPerMm, y: from.y + 12 * geometry.unitsPerMm }, geometry);
    expect(drawn.size.widthMm).toBeCloseTo(20, 6);
    expect(drawn.size.heightMm).toBeCloseTo(12, 6);
    expect(drawn.place.distanceFromEndMm).toBeCloseTo(94, 6);
    expect(drawn.place.angleDeg).toBeCloseTo((10 / geometry.circumferenceAt(94)) * 360, 6);
  });

  test("a drag that leaves the limb ends at its edge", () => {
    const geometry = mapGeometry(left);
    const from = geometry.pointOf({ angleDeg: 150, distanceFromEndMm: 100 });
    const { size } = drawnFrom(from, { x: from.x + 400, y: from.y + 10 }, geometry);
    expect(size.widthMm).toBeLessThan(geometry.circumferenceAt(100) / 6);
  });

  test("the handle left where it is changes nothing, on wall and disc", () => {
    fc.assert(
      fc.property(
        sides,
        fc.integer({ min: 0, max: 359 }),
        fc.integer({ min: 1, max: 160 }),
        (geometry, angleDeg, distanceFromEndMm) => {
          for (const ellipse of drawMarks([mark({ angleDeg, distanceFromEndMm })], geometry, [])) {
            const { sideX, sideY, ...at } = handleOf(ellipse, geometry);
            const gesture = {
              what: "resize",
              row: 0,
              from: at,
              centre: ellipse.centre,
              rotation: ellipse.rotation,
              sideX,
              sideY,
            } as const;
            expect(resizedTo(at, gesture, geometry)).toMatchObject({
              widthMm: expect.closeTo(22, 6),
              heightMm: expect.closeTo(12, 6),
            });
          }
        },
      ),
    );
  });
});

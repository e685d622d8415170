import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SkinMark } from "@/lib/fit/bundle";
import { discInRectangle } from "@/lib/fit/disc-in-rectangle";
import { FitInputError } from "@/lib/fit/errors";
import { evenness } from "@/lib/fit/skin-marks-evenness";
import { gradeMark } from "@/lib/fit/skin-marks-grade";
import { type MarkCell, mapMarks } from "@/lib/fit/skin-marks-map";
import { trackMarks } from "@/lib/fit/skin-marks-track";
import { aspects, strengths, thirds } from "@/lib/fit/words";
import { gone, look, mark } from "./marks";
import { runs } from "./runs";

const anyMark: fc.Arbitrary<SkinMark> = fc.record({
  id: fc.constantFrom("a", "b", "c"),
  distanceFromEndMm: fc.double({ min: 0, max: 320, noNaN: true }),
  angleDeg: fc.double({ min: 0, max: 360, noNaN: true }),
  widthMm: fc.double({ min: 1, max: 700, noNaN: true }),
  heightMm: fc.double({ min: 1, max: 300, noNaN: true }),
  strength: fc.constantFrom(...strengths),
  blanches: fc.constantFrom("yes", "no", "not tested"),
  firm: fc.boolean(),
  warm: fc.boolean(),
  painful: fc.boolean(),
  broken: fc.boolean(),
  fadedAtMin: fc.option(fc.integer({ min: 0, max: 60 })),
});
const someLook = fc.option(fc.integer({ min: 0, max: 60 }), { nil: undefined });

describe("grade of a mark (a scale of this tool, not validated)", () => {
  it.each<[Partial<SkinMark>, number]>([
    [{ strength: "none" }, 0],
    [{ strength: "none", fadedAtMin: 8 }, 0],
    [{ strength: "faint" }, 1],
    [{ strength: "clear" }, 2],
    [{ strength: "deep" }, 3],
    [{ strength: "purple" }, 4],
    [{ strength: "faint", firm: true }, 2],
    [{ strength: "clear", painful: true }, 3],
    [{ strength: "clear", painful: true, firm: true }, 3],
    [{ strength: "deep", firm: true }, 3],
    [{ strength: "none", firm: true }, 1],
    [{ strength: "faint", warm: true }, 1],
    [{ strength: "faint", blanches: "not tested" }, 1],
    [{ strength: "faint", blanches: "no" }, 3],
    [{ strength: "faint", fadedAtMin: 20 }, 1],
    [{ strength: "faint", fadedAtMin: 21 }, 3],
    [{ strength: "none", broken: true }, 4],
    [{ strength: "faint", broken: true, blanches: "no" }, 4],
  ])("of %j is %i", (changed, grade) => {
    expect(gradeMark(mark(changed), undefined)).toBe(grade);
  });

  it("is at least 3 where the mark is still there at a look at 20 minutes or later", () => {
    expect(gradeMark(mark({ strength: "faint" }), 19)).toBe(1);
    expect(gradeMark(mark({ strength: "faint" }), 20)).toBe(3);
    expect(gradeMark(mark({ strength: "faint", fadedAtMin: 8 }), 25)).toBe(3);
    expect(gradeMark(gone({ fadedAtMin: 8 }), 25)).toBe(0);
  });

  it("is 4 for broken or purple skin, whatever else is good", () => {
    fc.assert(
      fc.property(anyMark, fc.boolean(), someLook, (some, breaks, lookedAtMin) => {
        expect(gradeMark({ ...some, ...(breaks ? { broken: true } : { strength: "purple" }) }, lookedAtMin)).toBe(4);
      }),
      runs(),
    );
  });

  it("is never lower for a worse mark", () => {
    const worsening = fc.constantFrom<(some: SkinMark) => SkinMark>(
      (some) => ({ ...some, firm: true }),
      (some) => ({ ...some, painful: true }),
      (some) => ({ ...some, warm: true }),
      (some) => ({ ...some, broken: true }),
      (some) => ({ ...some, blanches: "no" }),
      (some) => ({ ...some, strength: strengths[strengths.indexOf(some.strength) + 1] ?? some.strength }),
      (some) => ({ ...some, fadedAtMin: some.fadedAtMin === null ? null : some.fadedAtMin + 15 }),
    );
    fc.assert(
      fc.property(anyMark, worsening, someLook, (some, worsen, lookedAtMin) => {
        expect(gradeMark(worsen(some), lookedAtMin)).toBeGreaterThanOrEqual(gradeMark(some, lookedAtMin));
      }),
      runs(),
    );
  });

  it("is refused for what is no mark", () => {
    expect(() => gradeMark(mark({ fadedAtMin: Number.NaN }), 1)).toThrow("fadedAtMin");
    expect(() => gradeMark(mark(), -1)).toThrow(FitInputError);
  });
});

describe("part of a disc in a rectangle", () => {
  const side = fc.double({ min: -1.5, max: 1.5, noNaN: true });

  it("is what counting points finds", () => {
    fc.assert(
      fc.property(side, side, side, side, (a, b, c, d) => {
        const rectangle = { left: Math.min(a, b), right: Math.max(a, b), bottom: Math.min(c, d), top: Math.max(c, d) };
        const steps = 400;
        let [within, all] = [0, 0];
        for (let i = 0; i < steps; i++)
          for (let j = 0; j < steps; j++) {
            const [x, y] = [(2 * i + 1) / steps - 1, (2 * j + 1) / steps - 1];
            if (x * x + y * y > 1) continue;
            all += 1;
            if (x > rectangle.left && x <= rectangle.right && y > rectangle.bottom && y <= rectangle.top) within += 1;
          }
        expect(Math.abs(discInRectangle(rectangle) - within / all)).toBeLessThan(0.01);
      }),
      runs(),
    );
  });

  it("is half below the middle, and all of it within endless sides", () => {
    const endless = { left: Number.NEGATIVE_INFINITY, right: Number.POSITIVE_INFINITY, bottom: Number.NEGATIVE_INFINITY };
    expect(discInRectangle({ ...endless, top: 0 })).toBeCloseTo(0.5, 12);
    expect(discInRectangle({ ...endless, top: Number.POSITIVE_INFINITY })).toBe(1);
    // A cap from the chord at r/2: (π/3 − √3/4)/π of the disc.
    expect(discInRectangle({ ...endless, top: -0.5 })).toBeCloseTo(1 / 3 - Math.sqrt(3) / (4 * Math.PI), 12);
  });
});

const marked = (cells: readonly MarkCell[]) =>
  Object.fromEntries(cells.filter(({ grade }) => grade > 0).map(({ name, grade }) => [name, grade]));

describe("map of marks", () => {
  it("has twelve wall cells and the distal end", () => {
    const cells = mapMarks([], 170);
    expect(cells).toHaveLength(13);
    expect(new Set(cells.map(({ name }) => name)).size).toBe(13);
    expect(cells.every(({ grade, markIds }) => grade === 0 && markIds.length === 0)).toBe(true);
  });

  it.each<[Partial<SkinMark>, string[]]>([
    [{ angleDeg: 0 }, ["anterior middle"]],
    [{ angleDeg: 90 }, ["lateral middle"]],
    [{ angleDeg: 180 }, ["posterior middle"]],
    [{ angleDeg: 270 }, ["medial middle"]],
    [{ angleDeg: 360 }, ["anterior middle"]],
    [{ angleDeg: 45 }, ["anterior middle", "lateral middle"]],
    [{ angleDeg: 315 }, ["anterior middle", "medial middle"]],
    [{ angleDeg: 358, widthMm: 30 }, ["anterior middle"]],
    [{ distanceFromEndMm: 160 }, ["anterior proximal"]],
    [{ distanceFromEndMm: 40 }, ["anterior distal"]],
    [{ distanceFromEndMm: 5 }, ["distal end"]],
    [{ distanceFromEndMm: 0 }, ["distal end"]],
    [{ distanceFromEndMm: 17 }, ["anterior distal", "distal end"]],
    [{ distanceFromEndMm: 200 }, ["anterior proximal"]],
    [{ distanceFromEndMm: 170 / 3 }, ["anterior distal", "anterior middle"]],
  ])("of a mark at %j on a limb of 170 mm fills %j", (place, names) => {
    expect(Object.keys(marked(mapMarks([mark(place)], 170))).sort()).toEqual(names.toSorted());
  });

  it("takes the last tenth as the distal end, but no more than 20 mm", () => {
    expect(Object.keys(marked(mapMarks([mark({ distanceFromEndMm: 30 })], 400)))).toEqual(["anterior distal"]);
    expect(Object.keys(marked(mapMarks([mark({ distanceFromEndMm: 12 })], 400)))).toEqual(["distal end"]);
  });

  it("counts a mark where 20 % of it lies, and not where less does", () => {
    // A chord at 0.4918 of the radius cuts off 20 % of a disc: by solving acos(t) − t√(1 − t²) = 0.2 π.
    const beyond = (share: number) => 170 / 3 + 7 * share;
    expect(Object.keys(marked(mapMarks([mark({ distanceFromEndMm: beyond(0.49) })], 170)))).toHaveLength(2);
    expect(Object.keys(marked(mapMarks([mark({ distanceFromEndMm: beyond(0.495) })], 170)))).toEqual(["anterior middle"]);
  });

  it("turns a width into degrees by the limb's own circumference", () => {
    const wide = mark({ widthMm: 70, angleDeg: 20 });
    expect(Object.keys(marked(mapMarks([wide], 170, { circumferenceMm: 180 })))).toHaveLength(2);
    expect(Object.keys(marked(mapMarks([wide], 170, { circumferenceMm: () => 400 })))).toEqual(["anterior middle"]);
  });

  it("loses no mark that is so large that no cell has 20 % of it", () => {
    const round = mark({ widthMm: 250, heightMm: 60, distanceFromEndMm: 170 / 3, strength: "deep" });
    const cells = marked(mapMarks([round], 170));
    expect(Object.keys(cells).length).toBeGreaterThanOrEqual(8);
    expect(Object.values(cells).every((grade) => grade === 3)).toBe(true);
  });

  it("gives a cell the highest grade in it, and names the marks", () => {
    const cells = mapMarks(
      [mark({ id: "a", strength: "faint" }), mark({ id: "b", strength: "deep" }), mark({ id: "c", strength: "none" })],
      170,
    );
    expect(cells.find(({ name }) => name === "anterior middle")).toMatchObject({ grade: 3, markIds: ["a", "b"] });
  });

  it("puts every mark that has a grade somewhere, and no mark of a grade anywhere else", () => {
    fc.assert(
      fc.property(
        fc.array(anyMark, { maxLength: 4 }),
        someLook,
        fc.double({ min: 100, max: 600, noNaN: true }),
        (marks, lookedAtMin, circumferenceMm) => {
          const cells = mapMarks(marks, 240, { circumferenceMm, ...(lookedAtMin === undefined ? {} : { lookedAtMin }) });
          expect(Math.max(...cells.map(({ grade }) => grade))).toBe(
            Math.max(0, ...marks.map((some) => gradeMark(some, lookedAtMin))),
          );
          for (const some of marks)
            expect(cells.some(({ markIds }) => markIds.includes(some.id))).toBe(
              marks.some(({ id, ...rest }) => id === some.id && gradeMark({ id, ...rest }, lookedAtMin) > 0),
            );
        },
      ),
      runs(),
    );
  });

  it("is refused for a limb or a mark without size", () => {
    expect(() => mapMarks([], 0)).toThrow("limbLengthMm");
    expect(() => mapMarks([mark(), mark({ widthMm: 0 })], 170)).toThrow("marks[1].widthMm");
    expect(() => mapMarks([mark({ angleDeg: Number.NaN })], 170)).toThrow("marks[0].angleDeg");
    expect(() => mapMarks([mark()], 170, { circumferenceMm: 0 })).toThrow("circumferenceMm");
  });
});

const cellsWith = (grades: Partial<Record<string, number>>): MarkCell[] =>
  mapMarks([], 170).map((cell) => ({ ...cell, grade: (grades[cell.name] ?? 0) as MarkCell["grade"] }));

describe("evenness of marks", () => {
  it.each([
    { grades: [2, 2, 2, 2], around: 1 },
    { grades: [3, 1, 1, 1], around: 0.89624 },
    { grades: [0, 4, 0, 0], around: 0 },
  ])("around the aspects is $around for $grades", ({ grades, around }) => {
    // −Σ pᵢ ln pᵢ / ln 4 by hand.
    const cells = cellsWith(Object.fromEntries(aspects.map((aspect, index) => [`${aspect} middle`, grades[index]])));
    expect(evenness(cells).around).toBeCloseTo(around, 5);
    expect(evenness(cells).along).toBe(0);
  });

  it("adds the thirds of an aspect, and the aspects of a third", () => {
    const cells = cellsWith({
      "anterior proximal": 1,
      "anterior middle": 2,
      "lateral distal": 3,
      "posterior middle": 1,
      "posterior distal": 2,
      "medial proximal": 3,
    });
    expect(evenness(cells).around).toBeCloseTo(1, 12);
    // Proximal 4, middle 3, distal 5.
    expect(evenness(cells).along).toBeCloseTo(
      -[4, 3, 5].reduce((sum, weight) => sum + (weight / 12) * Math.log(weight / 12), 0) / Math.log(3),
      12,
    );
  });

  it("has a peak 2.4 times the mean for ten 1s, a 2 and a 3", () => {
    const names = aspects.flatMap((aspect) => thirds.map((third) => `${aspect} ${third}`));
    const cells = cellsWith(Object.fromEntries(names.map((name, index) => [name, index < 10 ? 1 : index - 8])));
    expect(evenness(cells).peakToMean).toBeCloseTo(2.4, 12);
    expect(evenness(cells).standsOut.map(({ grade }) => grade)).toEqual([3]);
  });

  it("lets a cell stand out two grades above the median of three or more marked wall cells, else above none", () => {
    const out = (grades: Record<string, number>) => evenness(cellsWith(grades)).standsOut.map(({ name }) => name);
    expect(out({ "anterior middle": 2 })).toEqual(["anterior middle"]);
    expect(out({ "anterior middle": 1, "lateral middle": 1 })).toEqual([]);
    expect(out({ "anterior middle": 2, "lateral middle": 2, "posterior middle": 2 })).toEqual([]);
    expect(out({ "anterior middle": 1, "lateral middle": 1, "posterior middle": 3 })).toEqual(["posterior middle"]);
    expect(out({ "anterior middle": 1, "lateral middle": 1, "posterior middle": 1, "distal end": 3 })).toEqual(["distal end"]);
    expect(out({ "distal end": 2 })).toEqual(["distal end"]);
  });

  it("of no marks is even, with no peak", () => {
    expect(evenness(cellsWith({}))).toEqual({ around: 1, along: 1, peakToMean: null, standsOut: [] });
  });

  it("refuses a grade off the scale", () => {
    expect(() => evenness([{ grade: Number.NaN as MarkCell["grade"] }])).toThrow("cells[0].grade");
  });
});

describe("a mark from look to look", () => {
  const track = (...looks: ReturnType<typeof look>[]) => trackMarks(looks)[0];

  it("fades at the time given", () => {
    expect(track(look(1, mark({ fadedAtMin: 8 })), look(8, gone({ fadedAtMin: 8 })))).toMatchObject({
      fade: { lowMin: 8, highMin: 8 },
      state: "in time",
    });
  });

  it("fades between the last look that shows it and the first at which it is gone", () => {
    expect(track(look(1, mark()), look(5, mark()), look(12, gone()), look(20, gone()))).toMatchObject({
      firstSeenMin: 1,
      lastSeenMin: 5,
      fade: { lowMin: 5, highMin: 12 },
      state: "in time",
    });
  });

  it("is unknown, not gone, when a later look does not mention it", () => {
    expect(track(look(1, mark()), look(12), look(25))).toMatchObject({
      fade: { lowMin: 1, highMin: null },
      state: "unknown",
      unmentionedAtMin: [12, 25],
    });
  });

  it("is unknown when it went somewhere between 15 and 30 minutes", () => {
    expect(track(look(15, mark()), look(30, gone()))).toMatchObject({ fade: { lowMin: 15, highMin: 30 }, state: "unknown" });
  });

  it.each([
    { looks: [look(1, mark({ fadedAtMin: 22 }))], what: "faded after 20 minutes" },
    { looks: [look(1, mark()), look(21, mark())], what: "still there after 20 minutes" },
    { looks: [look(1, mark()), look(20, mark()), look(25, gone())], what: "there at 20 minutes, so that it faded later" },
    { looks: [look(1, mark()), look(30, gone({ firm: true }))], what: "no longer red at 30 minutes, but firm" },
    { looks: [look(1, mark()), look(5, gone()), look(25, mark())], what: "gone, then back" },
    { looks: [look(1, mark({ fadedAtMin: 8 })), look(25, mark())], what: "said to have faded, but seen later" },
  ])("is late when $what", ({ looks }) => {
    expect(trackMarks(looks)[0]?.state).toBe("late");
    expect(trackMarks(looks.toReversed())).toEqual(trackMarks(looks));
  });

  it("takes a time of fading away where a later look shows the mark, also before 20 minutes", () => {
    expect(track(look(1, mark({ fadedAtMin: 5 })), look(10, mark()))).toMatchObject({
      fade: { lowMin: 10, highMin: null },
      state: "unknown",
    });
    expect(track(look(1, mark({ fadedAtMin: 5 })), look(10, mark()), look(14, gone()))).toMatchObject({
      fade: { lowMin: 10, highMin: 14 },
      state: "in time",
    });
  });

  it("takes away a time of fading at the very minute at which a look shows the mark", () => {
    expect(track(look(8, mark({ fadedAtMin: 8 })))).toMatchObject({ fade: { lowMin: 8, highMin: null }, state: "unknown" });
    expect(track(look(0, mark({ fadedAtMin: 0 })))?.state).toBe("unknown");
  });

  it("takes the later of two times of fading", () => {
    expect(track(look(1, mark({ fadedAtMin: 5 })), look(12, gone({ fadedAtMin: 11 })))?.fade).toEqual({
      lowMin: 11,
      highMin: 11,
    });
  });

  it("says that a mark appeared only at a later look", () => {
    const tracked = trackMarks([
      look(1, mark({ id: "a" })),
      look(10, mark({ id: "a" }), mark({ id: "b" })),
      look(15, gone({ id: "a" }), gone({ id: "b" })),
    ]);
    expect(tracked.map(({ id, appearedLater, firstSeenMin }) => ({ id, appearedLater, firstSeenMin }))).toEqual([
      { id: "a", appearedLater: false, firstSeenMin: 1 },
      { id: "b", appearedLater: true, firstSeenMin: 10 },
    ]);
  });

  it("keeps the worst grade of all looks", () => {
    expect(track(look(1, mark({ strength: "faint", blanches: "no" })), look(10, gone()))?.worstGrade).toBe(3);
    expect(track(look(1, mark({ strength: "faint" })), look(20, mark({ strength: "faint" })))?.worstGrade).toBe(3);
  });

  it("that was never there has faded by the look that says so", () => {
    expect(track(look(0, gone()))).toMatchObject({
      firstSeenMin: null,
      fade: { lowMin: 0, highMin: 0 },
      state: "in time",
      worstGrade: 0,
    });
    expect(trackMarks([])).toEqual([]);
  });

  it("is refused where a look has no time", () => {
    expect(() => trackMarks([look(1), { ...look(2), minutesAfterDoffing: Number.NaN }])).toThrow(
      "inspections[1].minutesAfterDoffing",
    );
  });
});

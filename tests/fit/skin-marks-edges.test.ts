/** Grades, places, evenness and fading of marks at their edges. */
import { describe, expect, it } from "vitest";
import type { SkinMark } from "@/lib/fit/bundle";
import { FitInputError } from "@/lib/fit/errors";
import { evenness } from "@/lib/fit/skin-marks-evenness";
import { gradeMark, isThere } from "@/lib/fit/skin-marks-grade";
import { type MapOptions, mapMarks } from "@/lib/fit/skin-marks-map";
import { trackMarks } from "@/lib/fit/skin-marks-track";
import { aspects, thirds } from "@/lib/fit/words";
import { gone, look, mark } from "./marks";

/** What is thrown: the path, and what was expected in words. */
const refusal = (run: () => unknown): string => {
  try {
    run();
  } catch (error) {
    if (error instanceof FitInputError) return error.message;
    throw error;
  }
  return "nothing was refused";
};

// An ordinal scale of this tool, not validated.
describe("grade of a mark", () => {
  it.each<[string, Partial<SkinMark>, number | undefined, RegExp]>([
    [
      "a strength that is no word of the scale",
      { strength: "bright" as SkinMark["strength"] },
      undefined,
      /^strength: .*none, faint, clear, deep, purple/,
    ], // as a caller without types may give it
    ["a negative time of fading", { fadedAtMin: -1 }, undefined, /^fadedAtMin: .*minutes after doffing/],
    ["a look at a negative time", {}, -0.5, /^lookedAtMin: .*minutes after doffing/],
    ["a look at no time", {}, Number.NaN, /^lookedAtMin: /],
  ])("is refused for %s", (_, changed, lookedAtMin, message) => {
    expect(refusal(() => gradeMark(mark(changed), lookedAtMin))).toMatch(message);
  });

  it("is given at the very minute of doffing, and for a mark that faded then", () => {
    expect(gradeMark(mark(), 0)).toBe(2);
    expect(gradeMark(mark({ fadedAtMin: 0 }), undefined)).toBe(2);
  });

  it.each<Partial<SkinMark>>([{ firm: true }, { warm: true }, { painful: true }, { blanches: "no" }])(
    "is 3 at 20 minutes for what cannot be seen but is %j: on dark skin redness may not show (NPIAP 2016)",
    (felt) => expect(gradeMark(gone(felt), 20)).toBe(3),
  );

  it.each<[Partial<SkinMark>, boolean]>([
    [{ strength: "none" }, false],
    [{ strength: "faint" }, true],
    [{ strength: "none", firm: true }, true],
    [{ strength: "none", warm: true }, true],
    [{ strength: "none", painful: true }, true],
    [{ strength: "none", broken: true }, true],
    [{ strength: "none", blanches: "no" }, true],
    [{ strength: "none", blanches: "not tested" }, false],
  ])("something is there of %j: %s", (changed, there) => expect(isThere(mark(changed))).toBe(there));
});

describe("map of marks", () => {
  const namesOf = (changed: Partial<SkinMark>, options?: MapOptions, limbLengthMm = 170) =>
    mapMarks([mark(changed)], limbLengthMm, options)
      .filter(({ grade }) => grade > 0)
      .map(({ name }) => name);

  it("names each aspect's thirds and then the distal end, which has neither", () => {
    const cells = mapMarks([], 170);
    expect(cells.map(({ name }) => name)).toEqual([
      ...aspects.flatMap((aspect) => thirds.map((third) => `${aspect} ${third}`)),
      "distal end",
    ]);
    expect(cells.map(({ aspect, third }) => [aspect, third].join(" "))).toEqual([
      ...aspects.flatMap((aspect) => thirds.map((third) => `${aspect} ${third}`)),
      " ",
    ]);
  });

  it.each<[string, () => unknown, RegExp]>([
    ["a limb without an end", () => mapMarks([], Number.POSITIVE_INFINITY), /^limbLengthMm: .*length above 0 mm/],
    ["a limb of negative length", () => mapMarks([], -170), /^limbLengthMm/],
    ["a mark without height", () => mapMarks([mark({ heightMm: 0 })], 170), /^marks\[0\]\.heightMm: .*length above 0 mm/],
    ["a mark of endless width", () => mapMarks([mark({ widthMm: Number.POSITIVE_INFINITY })], 170), /^marks\[0\]\.widthMm/],
    [
      "a mark at no distance",
      () => mapMarks([mark(), mark({ distanceFromEndMm: Number.NaN })], 170),
      /^marks\[1\]\.distanceFromEndMm: .*number/,
    ],
    [
      "a limb that is endlessly round",
      () => mapMarks([mark()], 170, { circumferenceMm: () => Number.POSITIVE_INFINITY }),
      /^circumferenceMm: .*length above 0 mm/,
    ],
    ["a limb that is not round", () => mapMarks([mark()], 170, { circumferenceMm: -1 }), /^circumferenceMm/],
  ])("refuses %s", (_, run, message) => expect(refusal(run)).toMatch(message));

  it("goes round the limb as often as the angle and the width say", () => {
    expect(namesOf({ angleDeg: 90 - 720 })).toEqual(["lateral middle"]);
    expect(namesOf({ angleDeg: 180 + 1080 })).toEqual(["posterior middle"]);
    expect(namesOf({ angleDeg: -90 })).toEqual(["medial middle"]);
    // Four times round the limb: a quarter of it in every aspect.
    const round = ["anterior middle", "lateral middle", "posterior middle", "medial middle"];
    expect(namesOf({ widthMm: 1000, heightMm: 10 }, { circumferenceMm: 250 })).toEqual(round);
    expect(namesOf({ widthMm: 1000, heightMm: 10, angleDeg: 123 }, { circumferenceMm: 250 })).toEqual(round);
  });

  it("takes the limb to be 250 mm round where nobody says (from memory: between a forearm and a lower leg)", () => {
    for (const [widthMm, angleDeg] of [
      [40, 33],
      [40, 28],
      [80, 20],
      [80, 12],
    ] as const)
      expect(namesOf({ widthMm, angleDeg })).toEqual(namesOf({ widthMm, angleDeg }, { circumferenceMm: 250 }));
    expect(namesOf({ widthMm: 40, angleDeg: 33 })).not.toEqual(namesOf({ widthMm: 40, angleDeg: 33 }, { circumferenceMm: 400 }));
  });

  it("asks for the circumference where the mark is", () => {
    const asked: number[] = [];
    namesOf({ distanceFromEndMm: 42 }, { circumferenceMm: (mm) => asked.push(mm) * 250 });
    expect(asked).toEqual([42]);
  });

  it("cuts the limb at a tenth, at one third and at two, and leaves nothing beyond its ends", () => {
    const thirdsOf = (distanceFromEndMm: number) => namesOf({ distanceFromEndMm, heightMm: 2 }, {}, 150);
    expect(thirdsOf(13)).toEqual(["distal end"]);
    expect(thirdsOf(17)).toEqual(["anterior distal"]);
    expect(thirdsOf(48)).toEqual(["anterior distal"]);
    expect(thirdsOf(52)).toEqual(["anterior middle"]);
    expect(thirdsOf(98)).toEqual(["anterior middle"]);
    expect(thirdsOf(102)).toEqual(["anterior proximal"]);
    expect(thirdsOf(170)).toEqual(["anterior proximal"]);
    expect(thirdsOf(-10)).toEqual(["distal end"]);
  });

  it("grades by the minute of the look, and gives a cell the highest grade whichever mark comes first", () => {
    const faint = mark({ id: "a", strength: "faint" });
    const anterior = (marks: SkinMark[], options?: MapOptions) =>
      mapMarks(marks, 170, options).find(({ name }) => name === "anterior middle");
    expect(anterior([faint], { lookedAtMin: 20 })?.grade).toBe(3);
    expect(anterior([mark({ id: "b", strength: "deep" }), faint])).toMatchObject({ grade: 3, markIds: ["b", "a"] });
  });
});

// Pielou's J = −Σ pᵢ ln pᵢ / ln S; a cell stands out from two grades above the median of three or more marked wall cells.
describe("evenness of marks", () => {
  const wall = (...grades: readonly (0 | 1 | 2 | 3 | 4)[]) =>
    mapMarks([], 170).map((cell, index) => ({ ...cell, grade: grades[index] ?? (0 as const) }));

  it.each([-1, 5, Number.NaN])("refuses the grade %d", (grade) => {
    expect(refusal(() => evenness([{ grade: 1 }, { grade: grade as 0 }]))).toMatch(/^cells\[1\]\.grade: .*0…4/); // as a caller without types may give it
  });

  it("takes 0 and 4 for grades", () => {
    expect(evenness(wall(4, 0)).peakToMean).toBe(1);
  });

  it("leaves the distal end out of what is usual, though not out of what stands out", () => {
    const end = [...wall(1, 1), { name: "distal end", grade: 3 as const, markIds: [] }].filter(
      (cell, index) => index < 12 || cell.grade > 0,
    );
    // Two on the wall are too few for anything to be usual, so 0 is: from 2 on a cell stands out.
    expect(evenness(end).standsOut.map(({ name }) => name)).toEqual(["distal end"]);
    expect(evenness(wall(2, 1)).standsOut.map(({ name }) => name)).toEqual(["anterior proximal"]);
    expect(evenness(wall(2, 1, 1)).standsOut).toEqual([]);
    expect(evenness(wall(3, 1, 1)).standsOut).toHaveLength(1);
  });

  it("counts a cell that names only its aspect or only its third to that alone, and to nothing usual", () => {
    const { around, along, standsOut } = evenness([
      { aspect: "anterior", grade: 2 },
      { third: "middle", grade: 2 },
      { aspect: "lateral", third: "middle", grade: 2 },
    ]);
    expect(around).toBeCloseTo(Math.LN2 / Math.log(4), 12);
    expect(along).toBe(0);
    expect(standsOut).toHaveLength(3);
  });

  it("asks three cells of the wall for what is usual, each with its aspect and its third", () => {
    const cells = [
      { aspect: "anterior", third: "middle", grade: 2 },
      { aspect: "lateral", third: "middle", grade: 2 },
      { aspect: "posterior", grade: 2 },
      { third: "distal", grade: 2 },
    ] as const;
    expect(evenness(cells).standsOut).toHaveLength(4);
    expect(evenness([...cells, { aspect: "medial", third: "middle", grade: 2 }]).standsOut).toEqual([]);
  });

  it("holds the peak against the mean of the marked cells only", () => {
    expect(evenness(wall(3, 1, 0, 0)).peakToMean).toBeCloseTo(1.5, 12);
  });
});

// Fading within 20 minutes: clinic leaflets, common practice, no source.
describe("a mark from look to look", () => {
  const track = (...looks: ReturnType<typeof look>[]) => trackMarks(looks)[0];

  it.each([-1, Number.POSITIVE_INFINITY, Number.NaN])("is refused for a look at %d minutes", (minutes) => {
    expect(refusal(() => trackMarks([look(0), { ...look(2), minutesAfterDoffing: minutes }]))).toMatch(
      /^inspections\[1\]\.minutesAfterDoffing: .*minutes after doffing/,
    );
  });

  it("is in time where it was gone at 20 minutes, unknown just after", () => {
    expect(track(look(1, mark()), look(20, gone()))?.state).toBe("in time");
    expect(track(look(1, mark()), look(20.5, gone()))?.state).toBe("unknown");
    expect(track(look(1, mark({ fadedAtMin: 20 })))?.state).toBe("in time");
    expect(track(look(1, mark({ fadedAtMin: 20.5 })))?.state).toBe("late");
  });

  it("is still there late from the twentieth minute on", () => {
    const at = (minutes: number) => track(look(1, mark()), look(minutes, mark()));
    expect(at(19.9)).toMatchObject({ stillThereLate: false, lastSeenMin: 19.9, state: "unknown" });
    expect(at(20)).toMatchObject({ stillThereLate: true, lastSeenMin: 20, state: "late" });
    expect(track(look(25, gone()))).toMatchObject({ stillThereLate: false, lastSeenMin: null, firstSeenMin: null });
  });

  it("is followed in the order of time, whatever the order in which the looks were written down", () => {
    const looks = [look(12, gone()), look(1, mark({ strength: "deep" })), look(5, mark({ strength: "faint" }))];
    expect(track(...looks)).toMatchObject({ firstSeenMin: 1, lastSeenMin: 5, fade: { lowMin: 5, highMin: 12 }, worstGrade: 3 });
    expect(track(...looks)?.looks.map(({ minutesAfterDoffing }) => minutesAfterDoffing)).toEqual([1, 5, 12]);
  });

  it("of two looks at one minute is followed by their ids, so that nothing depends on the order in the file", () => {
    const pair = [
      { ...look(3, mark({ strength: "faint" })), id: "b" },
      { ...look(3, mark({ strength: "deep" })), id: "a" },
    ];
    const strengthsOf = (looks: typeof pair) => trackMarks(looks)[0]?.looks.map(({ mark: { strength } }) => strength);
    expect(strengthsOf(pair)).toEqual(["deep", "faint"]);
    expect(strengthsOf(pair.toReversed())).toEqual(["deep", "faint"]);
  });

  it("gives the first look after the last that shows it at which it was gone, not one from before", () => {
    expect(track(look(2, gone()), look(4, mark()), look(9, gone()), look(15, gone()))?.fade).toEqual({ lowMin: 4, highMin: 9 });
    expect(track(look(2, gone()), look(4, mark()))?.fade).toEqual({ lowMin: 4, highMin: null });
  });

  it("is not gone by a look at the very minute at which another one shows it", () => {
    const both = [
      { ...look(3, mark()), id: "a" },
      { ...look(3, gone()), id: "b" },
    ];
    expect(trackMarks(both)[0]).toMatchObject({ fade: { lowMin: 3, highMin: null }, state: "unknown" });
  });

  it("takes a time of fading where nobody saw the mark", () => {
    for (const minutes of [4, 0])
      expect(track(look(6, gone({ fadedAtMin: minutes })))?.fade).toEqual({ lowMin: minutes, highMin: minutes });
  });

  it("names the looks after the last that mentions it", () => {
    expect(track(look(1, mark()), look(5), look(9, gone()), look(9), look(14), look(20))?.unmentionedAtMin).toEqual([14, 20]);
  });

  it("appeared later only where a look came before the first that mentions it", () => {
    expect(track(look(4, mark()), look(9, mark()))?.appearedLater).toBe(false);
    expect(track(look(4), look(9, mark()))?.appearedLater).toBe(true);
  });

  it("grades each look by its own minute", () => {
    expect(track(look(1, mark({ strength: "faint" })), look(25, gone()))?.worstGrade).toBe(1);
    expect(track(look(1, gone()), look(25, mark({ strength: "faint" })))?.worstGrade).toBe(3);
  });
});

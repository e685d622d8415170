import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { mapGeometry } from "@/app/_parts/limb-map-geometry";
import { complaintsOf, missingOf, saidOf } from "@/app/_parts/mark-check";
import { type DraftValues, draftsFrom, gradeSoFar, numbersOfDrafts, typedLength, typedNumber } from "@/app/_parts/mark-draft";
import { draftSentence } from "@/app/_parts/mark-draft-words";
import { isSaidGone, type MarksAction, marksAfter, marksFrom, nextNumber } from "@/app/_parts/mark-editor-state";
import { actionOfKey } from "@/app/_parts/mark-keys";

const doing = (actions: readonly MarksAction[], begun = marksFrom([], "mm")) => actions.reduce(marksAfter, begun);
const valuesAfter = (actions: readonly MarksAction[], begun?: ReturnType<typeof marksFrom>) =>
  doing(actions, begun).drafts[0]?.values;
const place = { distanceFromEndMm: 88, angleDeg: 8 };
const key = (name: string, more: { shiftKey?: boolean; altKey?: boolean; ctrlKey?: boolean } = {}) => ({
  key: name,
  shiftKey: false,
  altKey: false,
  ctrlKey: false,
  metaKey: false,
  ...more,
});

describe("marks as they are written down", () => {
  test("at a later look a mark keeps its number, and a new one takes the next that nobody had", () => {
    const known = new Map([
      ["a", 1],
      ["b", 2],
      ["c", 3],
    ]);
    const begun = marksFrom(
      draftsFrom("marks", {}, [
        { markId: "c", angleDeg: "8" },
        { markId: "a", angleDeg: "90" },
      ]),
      "mm",
      known,
    );
    expect(numbersOfDrafts(begun.drafts, known)).toEqual([3, 1]);
    expect(nextNumber(begun)).toBe(4);
    const after = doing(
      [
        { does: "add", place },
        { does: "add", place },
        { does: "remove", row: 2 },
      ],
      begun,
    );
    expect(after.said).toBe("Mark 4 removed.");
    expect(numbersOfDrafts(after.drafts, known)).toEqual([3, 1, 4]);
    expect(doing([{ does: "undo" }], after).said).toBe("Mark 4 is back.");
  });

  test("a press gives a place and nothing else: size, strength and blanching stay to be answered", () => {
    const values = valuesAfter([{ does: "add", place }]);
    expect(values).toEqual({ distanceFromEndMm: "88", angleDeg: "8" });
    expect(missingOf(values ?? {})).toEqual(["width", "height", "strength", "blanching"]);
    expect(gradeSoFar(values ?? {}, 1)).toBeNull();
  });

  test("what is typed stays as it was typed", () => {
    expect(valuesAfter([{ does: "add" }, { does: "type", row: 0, field: "widthMm", value: "8,5" }])).toEqual({ widthMm: "8,5" });
  });

  test("the mark that is added is open, and only it", () => {
    const state = doing([
      { does: "add", place },
      { does: "add", place },
    ]);
    expect(state.chosen).toBe(1);
    expect(doing([{ does: "choose", row: null }], state).chosen).toBeNull();
  });

  test("a mark that is taken away comes back to its place, whole", () => {
    const three = doing([
      { does: "add", place },
      { does: "add" },
      { does: "add" },
      { does: "type", row: 1, field: "strength", value: "deep" },
    ]);
    const without = doing([{ does: "remove", row: 1 }], three);
    expect(without.drafts.map(({ row }) => row)).toEqual([0, 2]);
    expect(doing([{ does: "undo" }], without).drafts).toEqual(three.drafts);
  });

  test("no row's number is used twice, so that an error of the last try finds no other mark", () => {
    const state = doing([{ does: "add" }, { does: "add" }, { does: "remove", row: 1 }, { does: "add" }]);
    expect(state.drafts.map(({ row }) => row)).toEqual([0, 2]);
  });

  test("a mark that did not change stays the same object, so that its row is not drawn again", () => {
    const two = doing([
      { does: "add", place },
      { does: "add", place },
    ]);
    const moved = doing([{ does: "move", row: 1, place: { distanceFromEndMm: 20, angleDeg: 90 } }], two);
    expect(moved.drafts[0]).toBe(two.drafts[0]);
    expect(moved.drafts[1]?.values).toMatchObject({ distanceFromEndMm: "20", angleDeg: "90" });
  });

  test("what comes later from the form is taken as long as nobody touched the marks", () => {
    const kept = [{ row: 4, values: { angleDeg: "90" } }];
    expect(doing([{ does: "restore", drafts: kept }]).drafts).toEqual(kept);
    expect(doing([{ does: "restore", drafts: kept }]).next).toBe(5);
    expect(
      doing([
        { does: "add", place },
        { does: "restore", drafts: kept },
      ]).drafts,
    ).toHaveLength(1);
  });

  test("gone is said of all signs at once, and is no grade", () => {
    const before = { ...place, strength: "deep", blanches: "no", firm: "yes", widthMm: "9", heightMm: "9" };
    const begun = marksFrom([{ row: 0, values: { ...before, distanceFromEndMm: "88", angleDeg: "8", markId: "m1" } }], "mm");
    const values = valuesAfter([{ does: "say gone", row: 0 }], begun) ?? {};
    expect(isSaidGone(values)).toBe(true);
    expect(gradeSoFar(values, 25)).toBe(0);
    expect(missingOf(values)).toEqual([]);
    expect(values.markId).toBe("m1");
  });
});

describe("keys on the chosen mark", () => {
  const leftLimb = { lateralSign: 1, reachMm: 170 } as const;
  const pressed = (
    name: string,
    more = {},
    limb: { lateralSign: 1 | -1; reachMm: number } = leftLimb,
    begun: DraftValues = {},
  ) => {
    const action = actionOfKey(key(name, more), 0, limb);
    const values = { distanceFromEndMm: "88", angleDeg: "8", ...begun };
    return action && valuesAfter([action], marksFrom([{ row: 0, values }], "mm"));
  };

  test("arrows move 1 mm or 2°, five times as far with Shift, and right is right on either side", () => {
    expect(pressed("ArrowUp")).toMatchObject({ distanceFromEndMm: "89" });
    expect(pressed("ArrowDown", { shiftKey: true })).toMatchObject({ distanceFromEndMm: "83" });
    expect(pressed("ArrowRight")).toMatchObject({ angleDeg: "10" });
    expect(pressed("ArrowRight", {}, { lateralSign: -1, reachMm: 170 })).toMatchObject({ angleDeg: "6" });
    expect(pressed("ArrowLeft", { shiftKey: true })).toMatchObject({ angleDeg: "358" });
  });

  test("they do not move it off the limb", () => {
    expect(pressed("ArrowUp", { shiftKey: true }, leftLimb, { distanceFromEndMm: "168" })).toMatchObject({
      distanceFromEndMm: "170",
    });
    expect(pressed("ArrowDown", { shiftKey: true }, leftLimb, { distanceFromEndMm: "3" })).toMatchObject({
      distanceFromEndMm: "0",
    });
  });

  test("plus and minus change the size, Alt with arrows one side of it", () => {
    const sized = { widthMm: "20", heightMm: "12" };
    expect(pressed("+", {}, leftLimb, sized)).toMatchObject({ widthMm: "21", heightMm: "13" });
    expect(pressed("-", {}, leftLimb, { widthMm: "1", heightMm: "12" })).toMatchObject({ widthMm: "1", heightMm: "11" });
    expect(pressed("ArrowRight", { altKey: true, shiftKey: true }, leftLimb, sized)).toMatchObject({
      widthMm: "25",
      heightMm: "12",
    });
    expect(pressed("ArrowDown", { altKey: true }, leftLimb, sized)).toMatchObject({ widthMm: "20", heightMm: "11" });
  });

  test("what belongs to the browser or to typing is left alone", () => {
    expect(pressed("ArrowLeft", { ctrlKey: true })).toBeUndefined();
    expect(pressed("a")).toBeUndefined();
  });

  test("a mark without a place is not moved", () => {
    expect(pressed("ArrowUp", {}, leftLimb, { distanceFromEndMm: "" })).toMatchObject({ distanceFromEndMm: "" });
  });
});

describe("between fields and marks", () => {
  const name = "look.marks";

  test("what was typed at the last try, or kept as a draft, goes before what the page gives; blank rows are left out", () => {
    const typed = {
      at: "x",
      "look.marks.3.angleDeg": "90",
      "look.marks.3.markId": "m",
      "look.marks.5.angleDeg": " ",
      "look.marks.5.markId": "n",
    };
    expect(draftsFrom(name, typed, [{ angleDeg: "1" }])).toEqual([{ row: 3, values: { angleDeg: "90", markId: "m" } }]);
    expect(draftsFrom(name, {}, [{ angleDeg: "1" }])).toEqual([{ row: 0, values: { angleDeg: "1" } }]);
    expect(draftsFrom(name, { at: "x" }, [{ angleDeg: "1" }])).toEqual([]);
  });

  test("numbers are read as people write them", () => {
    expect([typedNumber(" 8,5 "), typedNumber("90°"), typedNumber("12 min"), typedNumber(""), typedNumber("about 9")]).toEqual([
      8.5,
      90,
      12,
      undefined,
      Number.NaN,
    ]);
    // NIST SP 811: 1 inch is 25.4 mm exactly.
    expect([typedLength("3 1/2", "in"), typedLength("88 mm", "in"), typedLength("3.5 in", "mm")]).toEqual([88.9, 88, 88.9]);
  });

  test("what the hand makes is written in inches for whom lengths are inches, and read back within a hundredth", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 450 }), (distanceFromEndMm) => {
        const state = doing([{ does: "add", place: { distanceFromEndMm, angleDeg: 0 } }], marksFrom([], "in"));
        const read = typedLength(state.drafts[0]?.values.distanceFromEndMm, "in") ?? Number.NaN;
        expect(Math.abs(read - distanceFromEndMm)).toBeLessThanOrEqual(0.127 + 1e-9);
      }),
    );
  });

  test("a mark beyond the limb is said while it is typed, by the same limit as when it is saved", () => {
    const limb = mapGeometry({ side: "left", limbLengthMm: 170 });
    expect(complaintsOf({ distanceFromEndMm: "195" }, limb, "mm")).toEqual({});
    expect(complaintsOf({ distanceFromEndMm: "196" }, limb, "mm").distanceFromEndMm).toContain("would lie off it");
    expect(complaintsOf({ distanceFromEndMm: "-1", angleDeg: "400", widthMm: "x", fadedAtMin: "-2" }, limb, "mm")).toMatchObject({
      distanceFromEndMm: expect.any(String),
      angleDeg: expect.any(String),
      widthMm: expect.any(String),
      fadedAtMin: expect.any(String),
    });
    expect(complaintsOf({}, limb, "mm")).toEqual({});
  });

  test("the server's word stands at its field until another value is typed there", () => {
    const form = {
      values: { "look.marks.2.widthMm": "900" },
      errors: { "look.marks.2.widthMm": "too wide", "look.marks.2.strength": "Choose." },
    };
    const said = (values: DraftValues) => [...saidOf({ row: 2, values }, { name, form, complaints: {} })];
    expect(said({ widthMm: "900" })).toEqual([
      ["widthMm", "too wide"],
      ["strength", "Choose."],
    ]);
    expect(said({ widthMm: "90", strength: "deep" })).toEqual([]);
  });

  test("a mark half written is said with what is missing, and its grade as far as it goes", () => {
    const sentence = (values: DraftValues) =>
      draftSentence(values, { number: 5, unit: "mm", limbLengthMm: 170, lookedAtMin: undefined }).replaceAll("\u00a0", " ");
    expect(sentence({ distanceFromEndMm: "150", angleDeg: "40" })).toBe(
      "Mark 5: anterior, proximal third, 150 mm from the end, 40°; how large?; to be answered: width, height, strength, blanching.",
    );
    expect(
      sentence({ distanceFromEndMm: "150", angleDeg: "40", widthMm: "20", heightMm: "8", strength: "clear", firm: "yes" }),
    ).toBe(
      "Mark 5: anterior, proximal third, 150 mm from the end, 40°; 20 × 8 mm; clear; firm; grade 3 of 4 so far; to be answered: blanching.",
    );
  });
});

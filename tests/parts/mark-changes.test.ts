import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { whatChanged } from "@/app/_parts/mark-changes";
import { fadedWords, SkinOverTime } from "@/app/_parts/skin-over-time";
import { type Inspection, type SkinMark, trackMarks } from "@/lib/fit";

const mark = (id: string, more: Partial<SkinMark> = {}): SkinMark => ({
  id,
  angleDeg: 90,
  distanceFromEndMm: 88,
  widthMm: 22,
  heightMm: 12,
  strength: "clear",
  blanches: "yes",
  firm: false,
  warm: false,
  painful: false,
  broken: false,
  fadedAtMin: null,
  ...more,
});
const look = (minutesAfterDoffing: number, marks: SkinMark[]): Inspection => ({
  id: `look ${minutesAfterDoffing}`,
  at: `2026-10-05T10:${String(minutesAfterDoffing).padStart(2, "0")}:00Z`,
  minutesAfterDoffing,
  marks,
});
const kinds = (before: SkinMark[], after: SkinMark[]) =>
  whatChanged(look(1, before), look(10, after)).map(({ id, kind }) => `${id} ${kind}`);

describe("what became of a mark from one look to the next", () => {
  test("gone, fainter, the same, harder, new", () => {
    const before = [mark("a"), mark("b"), mark("c"), mark("d", { strength: "faint" })];
    const after = [
      mark("a", { strength: "none" }),
      mark("b", { strength: "faint" }),
      mark("c"),
      mark("d", { firm: true }),
      mark("e"),
    ];
    expect(kinds(before, after)).toEqual(["a gone", "b fainter", "c same", "d harder", "e new"]);
  });

  test("a mark that the later look does not mention is not gone: nobody said so", () => {
    expect(kinds([mark("a")], [])).toEqual(["a not mentioned"]);
  });

  test("no redness is not gone where there is still something to feel: redness may not show on dark skin", () => {
    expect(kinds([mark("a")], [mark("a", { strength: "none", firm: true })])).toEqual(["a fainter"]);
  });

  test("a mark that comes back is new, one that stays away is no change", () => {
    expect(kinds([mark("a", { strength: "none" })], [mark("a")])).toEqual(["a new"]);
    expect(kinds([mark("a", { strength: "none" })], [mark("a", { strength: "none" })])).toEqual([]);
  });

  test("being there late makes a mark late, not harder", () => {
    expect(whatChanged(look(1, [mark("a")]), look(25, [mark("a", { strength: "faint", fadedAtMin: 30 })]))).toMatchObject([
      { kind: "fainter" },
    ]);
  });

  test("within a grade the strength decides, then the signs", () => {
    expect(kinds([mark("a", { strength: "deep" })], [mark("a", { blanches: "no" })])).toEqual(["a fainter"]);
    expect(kinds([mark("a", { strength: "deep" })], [mark("a", { strength: "deep", painful: true })])).toEqual(["a harder"]);
  });
});

describe("looks in a row", () => {
  const looks = [
    look(20, [mark("a", { strength: "none" }), mark("b", { strength: "faint" })]),
    look(10, [mark("a", { strength: "faint" }), mark("b")]),
  ];

  test("each mark keeps its number, and says when it faded as far as that is known", () => {
    const words = renderToStaticMarkup(
      createElement(SkinOverTime, { inspections: looks, limb: { side: "left", limbLengthMm: 170 }, timeZone: "UTC" }),
    ).replaceAll("\u00a0", " ");
    expect(words.indexOf("10 minutes after doffing")).toBeLessThan(words.indexOf("20 minutes after doffing"));
    expect(words).toContain("faded between 10 and 20 min");
    expect(words).toContain("still there at 20 min: late; not seen to fade");
    expect(words).toContain("Mark 1: gone.");
    expect(words).toMatch(/gone: (?:<!-- -->)?1</);
    expect(words).toMatch(/fainter: (?:<!-- -->)?2</);
  });

  test("a mark that went at some time around twenty minutes is not called in time", () => {
    const [tracked] = trackMarks([look(10, [mark("a")]), look(30, [mark("a", { strength: "none" })])]);
    if (!tracked) throw new Error("one mark is tracked");
    expect(fadedWords(tracked).replaceAll("\u00a0", " ")).toBe("faded between 10 and 30 min: before or after 20 is not known");
  });
});

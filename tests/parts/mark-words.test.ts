import { describe, expect, test } from "vitest";
import { numbersOfMarks } from "@/app/_parts/mark-numbers";
import { fadeWords, findingWords, markSentence } from "@/app/_parts/mark-words";
import { freePulls } from "@/app/_parts/pulls-field";
import { gradeMark, type SkinMark } from "@/lib/fit";
import { mark as plainMark } from "../fit/marks";

const mark = (found: Partial<SkinMark>) => {
  const one = plainMark(found);
  return { ...one, grade: gradeMark(one, 1) };
};

describe("a mark in words", () => {
  test("one that was answered Gone reads gone, and not as a mark that never faded", () => {
    const gone = mark({ strength: "none", blanches: "not tested" });
    expect([findingWords(gone), fadeWords(gone)]).toEqual(["gone", ""]);
    expect(markSentence(gone, 2, 200)).toMatch(/grade 0 of 4, gone; .*18 × 14\u00a0mm\.$/);
    expect(fadeWords(mark({ strength: "none", blanches: "not tested", fadedAtMin: 12 }))).toBe("faded by 12\u00a0min");
  });

  test.each([{ painful: true }, { firm: true }, { warm: true }, { broken: true }, { blanches: "no" as const }])(
    "no redness with %o is not gone",
    (sign) => {
      const there = mark({ strength: "none", blanches: "not tested", ...sign });
      expect(findingWords(there)).toMatch(/^no redness, /);
      expect(fadeWords(there)).toBe("not seen to fade");
    },
  );
});

describe("the numbers of marks", () => {
  const look = (recordedAt: string, ...ids: string[]) => ({
    recordedAt: new Date(recordedAt),
    marks: ids.map((markId) => ({ markId })),
  });

  test("follow the mark through later looks and corrections, in whatever order they are read", () => {
    const first = look("2026-10-05T09:30:00Z", "a", "b", "c", "d");
    const later = look("2026-10-05T09:50:00Z", "b", "d");
    const corrected = look("2026-10-06T08:00:00Z", "new", "a", "b", "d");
    const numbers = Object.fromEntries(numbersOfMarks([corrected, later, first]));
    expect(numbers).toEqual({ a: 1, b: 2, c: 3, d: 4, new: 5 });
  });
});

describe("free rows for pulls", () => {
  const three = Object.fromEntries(
    [0, 1, 2].flatMap((row) => [
      [`pulls.${row}.loadN`, "20"],
      [`pulls.${row}.displacementMm`, "2"],
    ]),
  );
  test.each([
    ["nothing yet", {}, 0, 3],
    ["three recorded", three, 0, 0],
    ["one of three rows filled", { "pulls.0.loadN": "20", "pulls.1.loadN": "", "pulls.2.loadN": " " }, 0, 2],
    ["four given by the page", {}, 4, 0],
  ])("%s", (_, values, given, free) => expect(freePulls(values, given)).toBe(free));
});

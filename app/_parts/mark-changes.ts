/** What became of each mark from one look at the skin to the next. */
import type { Inspection, SkinMark } from "@/lib/fit/bundle";
import { gradeMark, isThere } from "@/lib/fit/skin-marks-grade";
import { strengths } from "@/lib/fit/words";

export const changeKinds = ["gone", "fainter", "same", "harder", "new", "not mentioned"] as const;
export type ChangeKind = (typeof changeKinds)[number];

/** Each kind of change has a shape of its own beside its word. */
export const changeShapes: Record<ChangeKind, string> = {
  gone: "×",
  fainter: "↓",
  same: "=",
  harder: "↑",
  new: "+",
  "not mentioned": "?",
};
export const changeWords: Record<ChangeKind, string> = {
  gone: "gone",
  fainter: "fainter",
  same: "the same",
  harder: "stronger",
  new: "new",
  "not mentioned": "not looked at",
};

export interface MarkChange {
  id: string;
  kind: ChangeKind;
  before?: SkinMark;
  after?: SkinMark;
}

/**
 * Compares two looks mark by mark, by id. A mark that the later look does not mention is *not mentioned*: unknown, not
 * gone. One that was gone already and is not there now has not changed and is left out.
 *
 * Fainter and harder go by what is seen and felt: that a mark is still there late makes it worse for the trial, but it
 * has not become harder by that.
 *
 * @param before an earlier look of the same doffing
 * @param after a later one
 */
export function whatChanged(before: Pick<Inspection, "marks">, after: Pick<Inspection, "marks">): MarkChange[] {
  const later = new Map(after.marks.map((mark) => [mark.id, mark]));
  const earlier = new Map(before.marks.map((mark) => [mark.id, mark]));
  const known = before.marks.flatMap((mark): MarkChange[] => {
    const now = later.get(mark.id);
    if (!now) return isThere(mark) ? [{ id: mark.id, kind: "not mentioned", before: mark }] : [];
    const kind = kindOf(mark, now);
    return kind === null ? [] : [{ id: mark.id, kind, before: mark, after: now }];
  });
  const fresh = after.marks.flatMap((mark): MarkChange[] =>
    earlier.has(mark.id) || !isThere(mark) ? [] : [{ id: mark.id, kind: "new", after: mark }],
  );
  return [...known, ...fresh];
}

function kindOf(before: SkinMark, after: SkinMark): ChangeKind | null {
  if (!isThere(before)) return isThere(after) ? "new" : null;
  if (!isThere(after)) return "gone";
  const difference = comparedByEye(before, after);
  return difference === 0 ? "same" : difference < 0 ? "fainter" : "harder";
}

/** Below 0 where the later one is fainter: by grade, then by strength, then by how many signs there are. */
function comparedByEye(before: SkinMark, after: SkinMark): number {
  const [a, b] = [before, after].map((mark) => [
    // By eye: how long it stayed is told beside it.
    gradeMark({ ...mark, fadedAtMin: null }, undefined),
    strengths.indexOf(mark.strength),
    [mark.firm, mark.warm, mark.painful, mark.broken, mark.blanches === "no"].filter(Boolean).length,
  ]) as [number[], number[]]; // two marks give two lists
  return b.map((value, index) => value - (a[index] ?? 0)).find((difference) => difference !== 0) ?? 0;
}

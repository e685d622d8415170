/** Which mark of one socket is which of another: the marks of two sockets have names of their own, and only their places tell. */
import type { SkinMark } from "./bundle";
import { FitInputError } from "./errors";
import { gradeMark, type MarkGrade } from "./skin-marks-grade";
import { usualCircumferenceMm } from "./skin-marks-map";

export type MarkFate = "gone" | "fainter" | "same" | "harder" | "new";

export interface MarkBetween {
  fate: MarkFate;
  /** With the earlier socket; missing where it is new. */
  before?: SkinMark;
  /** With the later one; missing where it is gone. */
  after?: SkinMark;
  /** 0 where there is none. */
  gradeBefore: MarkGrade;
  gradeAfter: MarkGrade;
}

/** The marks of one look, and when that was. */
export interface LookedAt {
  marks: readonly SkinMark[];
  /** Minutes after doffing. */
  lookedAtMin?: number;
}

export interface BetweenOptions {
  /** Circumference where the marks are, in mm, or how it follows from the distance from the distal end. */
  circumferenceMm?: number | ((distanceFromEndMm: number) => number);
}

/** Two marks are at one place from this part of the smaller one on: as much as a mark needs to count in a cell. */
const samePlaceFrom = 0.2;
/** An ellipse is cut into so many strips along the limb. */
const strips = 200;

/**
 * What became of each mark from one socket to another. Two marks are the same one where they overlap by 20 % or more of
 * the smaller, on the unrolled limb; of several, those that overlap the most are taken together first, and none twice.
 * Fainter and harder go by the grade.
 *
 * @param earlier marks of the first look with one socket
 * @param later of the first look with the other, on the same occasion
 * @returns in the order of the earlier marks, then the new ones
 * @throws FitInputError where a mark has no size or place
 * @source mark-grade
 *
 * @example
 * marksBetween(
 *   { marks: [{ id: "m", distanceFromEndMm: 60, angleDeg: 90, widthMm: 20, heightMm: 10, strength: "clear", blanches: "yes", firm: true, warm: false, painful: false, broken: false, fadedAtMin: 8 }] },
 *   { marks: [{ id: "n", distanceFromEndMm: 64, angleDeg: 90, widthMm: 20, heightMm: 10, strength: "clear", blanches: "yes", firm: false, warm: false, painful: false, broken: false, fadedAtMin: 8 }] },
 * ).map(({ fate }) => fate)
 * // => ["fainter"]
 */
export function marksBetween(earlier: LookedAt, later: LookedAt, { circumferenceMm }: BetweenOptions = {}): MarkBetween[] {
  const [before, after] = [seenIn(earlier, "earlier"), seenIn(later, "later")];
  const pairs = before
    .flatMap((one) => after.map((other) => ({ one, other, share: sharedPart(one.mark, other.mark, circumferenceMm) })))
    .filter(({ share }) => share >= samePlaceFrom)
    .sort((a, b) => b.share - a.share);
  const found = new Map<Seen, Seen>();
  const taken = new Set<Seen>();
  for (const { one, other } of pairs) {
    if (found.has(one) || taken.has(other)) continue;
    found.set(one, other);
    taken.add(other);
  }
  return [
    ...before.map((one) => fateOf(one, found.get(one))),
    ...after.filter((other) => !taken.has(other)).map((other) => fateOf(undefined, other)),
  ];
}

interface Seen {
  mark: SkinMark;
  grade: MarkGrade;
}

const seenIn = ({ marks, lookedAtMin }: LookedAt, path: string): Seen[] =>
  marks
    .map((mark, index) => {
      for (const name of ["distanceFromEndMm", "angleDeg"] as const)
        if (!Number.isFinite(mark[name])) throw new FitInputError(`${path}.marks[${index}].${name}`, "expected a number");
      for (const name of ["widthMm", "heightMm"] as const)
        if (!(mark[name] > 0 && Number.isFinite(mark[name])))
          throw new FitInputError(`${path}.marks[${index}].${name}`, "expected a length above 0 mm");
      return { mark, grade: gradeMark(mark, lookedAtMin) };
    })
    .filter(({ grade }) => grade > 0);

function fateOf(one: Seen | undefined, other: Seen | undefined): MarkBetween {
  const [gradeBefore, gradeAfter] = [one?.grade ?? 0, other?.grade ?? 0];
  const fate = !one
    ? "new"
    : !other
      ? "gone"
      : gradeAfter < gradeBefore
        ? "fainter"
        : gradeAfter > gradeBefore
          ? "harder"
          : "same";
  return {
    fate,
    ...(one ? { before: one.mark } : {}),
    ...(other ? { after: other.mark } : {}),
    gradeBefore,
    gradeAfter,
  };
}

/** What part of the smaller of two marks lies in the other, 0…1: strip by strip along the limb, exact across it. */
function sharedPart(one: SkinMark, other: SkinMark, circumference: BetweenOptions["circumferenceMm"]): number {
  const [small, large] = one.widthMm * one.heightMm <= other.widthMm * other.heightMm ? [one, other] : [other, one];
  const middleMm = (one.distanceFromEndMm + other.distanceFromEndMm) / 2;
  const roundMm = typeof circumference === "function" ? circumference(middleMm) : (circumference ?? usualCircumferenceMm);
  if (!(roundMm > 0 && Number.isFinite(roundMm))) throw new FitInputError("circumferenceMm", "expected a length above 0 mm");
  const apartDeg = (((large.angleDeg - small.angleDeg) % 360) + 540) % 360;
  const apart = { around: ((apartDeg - 180) / 360) * roundMm, along: large.distanceFromEndMm - small.distanceFromEndMm };
  let [whole, shared] = [0, 0];
  for (let strip = 0; strip < strips; strip++) {
    const up = small.heightMm * ((strip + 0.5) / strips - 0.5);
    const half = halfChord(small, up);
    const otherHalf = halfChord(large, up - apart.along);
    whole += 2 * half;
    shared += Math.max(0, Math.min(half, apart.around + otherHalf) - Math.max(-half, apart.around - otherHalf));
  }
  return shared / whole;
}

/** Half the width of a mark at a height above its middle; below its edge less than nothing, so that nothing is shared. */
function halfChord({ widthMm, heightMm }: SkinMark, up: number): number {
  const share = 1 - ((2 * up) / heightMm) ** 2;
  return share <= 0 ? Number.NEGATIVE_INFINITY : (widthMm / 2) * Math.sqrt(share);
}

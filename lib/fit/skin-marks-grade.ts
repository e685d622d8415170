/** How strong a mark on the skin is, from 0 (nothing) to 4. An ordinal scale of this tool, not validated. */
import type { SkinMark } from "./bundle";
import { FitInputError } from "./errors";
import { defaultLimits, limitValue } from "./limits";
import { type Strength, strengths } from "./words";

export type MarkGrade = 0 | 1 | 2 | 3 | 4;

/** Marks that fade within this time are let pass: clinics' leaflets, common practice. */
export const fadingMin = limitValue(defaultLimits, "fade-minutes");

const gradeOfStrength: Record<Strength, MarkGrade> = { none: 0, faint: 1, clear: 2, deep: 3, purple: 4 };

/**
 * Grade of a mark: faint 1, clear 2, deep 3; firm or painful adds 1 up to 3; not blanching, or not faded at 20 minutes,
 * makes it at least 3; purple or broken skin makes it 4. Nothing to see and nothing to feel is 0.
 *
 * *Strength* is against the wearer's own skin. On dark skin redness may not show, so a mark of strength *none* that is
 * firm or painful has a grade. Blanching that was not tested adds nothing: it is not known.
 *
 * @param lookedAtMin minutes after doffing of the look at which it was seen; a mark that is still there at 20 minutes or
 *   later is one that has not faded. Undefined only where no look has been made yet
 * @throws FitInputError where the strength is not one of the words, or a time is negative or no number
 * @source mark-grade
 *
 * @example
 * gradeMark({ id: "m", distanceFromEndMm: 85, angleDeg: 0, widthMm: 18, heightMm: 14, strength: "clear", blanches: "no", firm: false, warm: false, painful: false, broken: false, fadedAtMin: 8 }, 1)
 * // => 3
 */
export function gradeMark(mark: SkinMark, lookedAtMin: number | undefined): MarkGrade {
  if (!strengths.includes(mark.strength)) throw new FitInputError("strength", `expected one of ${strengths.join(", ")}`);
  const { fadedAtMin } = mark;
  if (fadedAtMin !== null && !(fadedAtMin >= 0)) throw new FitInputError("fadedAtMin", "expected minutes after doffing, or null");
  if (lookedAtMin !== undefined && !(lookedAtMin >= 0)) throw new FitInputError("lookedAtMin", "expected minutes after doffing");
  if (mark.broken || mark.strength === "purple") return 4;
  const lasts =
    (fadedAtMin !== null && fadedAtMin > fadingMin) || (lookedAtMin !== undefined && lookedAtMin >= fadingMin && isThere(mark));
  if (mark.blanches === "no" || lasts) return 3;
  const seen = gradeOfStrength[mark.strength];
  return mark.firm || mark.painful ? addOne(seen) : seen;
}

const addOne = (grade: MarkGrade): MarkGrade => (grade === 0 ? 1 : grade === 1 ? 2 : 3);

/** There is something to see or to feel: on dark skin redness may not show. */
export const isThere = ({ strength, firm, warm, painful, broken, blanches }: SkinMark): boolean =>
  strength !== "none" || firm || warm || painful || broken || blanches === "no";

/** The marks of one fitting or trial as findings: each once, told apart by number, place and size. */
import { findingWords, placeWords, positionWords, sizeWords } from "@/app/_parts/mark-words";
import {
  type Finding,
  findingsOfMark,
  forbiddingFindings,
  gradeMark,
  type Inspection,
  isThere,
  type Level,
  type Limits,
  limitValue,
  type SkinMark,
} from "@/lib/fit";

/** A mark that did not blanch, seen so early that a later look may still show that it does. */
export interface EarlyMark {
  seenAtMin: number;
  /** A look after this tells nothing of how it was by then. */
  untilMin: number;
}

export interface MarkFound {
  markId: string;
  words: string;
  findings: Finding[];
  grade: number;
  /** Only where nothing else about it forbids. */
  early?: EarlyMark;
}

interface Limb {
  level: Level;
  limbLengthMm: number;
}

/**
 * Every mark once, as the look saw it that grades it highest. Of the other looks only what forbids and what faded late:
 * that a clear mark was faint on its way to nothing asks for nothing.
 */
export function foundMarks(
  looks: readonly Inspection[],
  numbers: ReadonlyMap<string, number>,
  { level, limbLengthMm }: Limb,
  limits: Limits,
): MarkFound[] {
  const untilMin = limitValue(limits, "fade-minutes");
  const mayLookAgain = !looks.some(({ minutesAfterDoffing }) => minutesAfterDoffing >= untilMin);
  const ids = new Set(looks.flatMap(({ marks }) => marks.map(({ id }) => id)));
  return [...ids].flatMap((markId) => {
    const seen = timesSeen(markId, looks).map(({ mark, minutes }, _, all) => {
      const settled = settledBy({ mark, minutes }, all, untilMin);
      // Seen to blanch or to be gone by then, it is judged like one that faded in time.
      const judged = settled ? { ...mark, fadedAtMin: mark.fadedAtMin ?? settled.minutes } : mark;
      const findings = findingsOfMark(judged, { level, limbLengthMm, lookedAtMin: minutes }, limits);
      return { mark, minutes, settled, grade: gradeMark(mark, minutes), findings };
    });
    const [hardest, ...others] = seen.toSorted((a, b) => b.grade - a.grade);
    if (!hardest) return [];
    const findings = [...hardest.findings, ...others.flatMap((other) => other.findings.filter(staysSaid))];
    if (findings.length === 0) return [];
    const { mark, grade, settled } = hardest;
    const later = settled ? `; ${settled.is} ${settled.minutes} min after doffing` : "";
    const forbidding = seen.filter((each) => each.findings.some(forbids));
    const isEarly =
      mayLookAgain &&
      forbidding.length > 0 &&
      forbidding.every((each) => each.findings.filter(forbids).every(({ kind }) => kind === "non-blanching")) &&
      seen.every((each) => (each.mark.fadedAtMin ?? 0) <= untilMin);
    return [
      {
        markId,
        words: `Mark ${numbers.get(markId) ?? "?"}, grade ${grade}, ${placeWords(mark, limbLengthMm)}, ${positionWords(mark)}, ${sizeWords(mark)}: ${findingWords({ ...mark, grade })}${later}`,
        findings,
        grade,
        ...(isEarly ? { early: { seenAtMin: Math.max(...forbidding.map(({ minutes }) => minutes)), untilMin } } : {}),
      },
    ];
  });
}

/** What one look shows stays said, whatever another shows. */
export const staysSaid = ({ kind }: Finding): boolean => kind === "late-fading" || forbiddingFindings.includes(kind);

const forbids = ({ kind }: Finding): boolean => forbiddingFindings.includes(kind);

interface SeenMark {
  mark: SkinMark;
  minutes: number;
}

const timesSeen = (id: string, looks: readonly Inspection[]): SeenMark[] =>
  looks
    .flatMap(({ marks, minutesAfterDoffing }) =>
      marks.filter((mark) => mark.id === id).map((mark) => ({ mark, minutes: minutesAfterDoffing })),
    )
    .toSorted((a, b) => a.minutes - b.minutes);

/**
 * Redness that stays red under a finger counts as not blanching until a later look shows otherwise: the last look at it up
 * to the time that marks are given, where it blanches or is gone. Blanching that was not tested shows nothing, nor does
 * a look after that time; and if any later look finds it unblanching again, nothing is settled.
 */
function settledBy(
  { mark, minutes }: SeenMark,
  all: readonly SeenMark[],
  untilMin: number,
): { minutes: number; is: "gone" | "blanches" } | null {
  if (mark.blanches !== "no" || minutes >= untilMin || (mark.fadedAtMin ?? 0) > untilMin) return null;
  const later = all.filter((other) => other.minutes > minutes);
  if (later.some((other) => other.mark.blanches === "no")) return null;
  const last = later.filter((other) => other.minutes <= untilMin).at(-1);
  if (!last) return null;
  if (!isThere(last.mark)) return { minutes: last.minutes, is: "gone" };
  return last.mark.blanches === "yes" ? { minutes: last.minutes, is: "blanches" } : null;
}

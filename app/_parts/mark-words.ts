import type { SkinMark } from "@/lib/fit/bundle";
import { isThere } from "@/lib/fit/skin-marks-grade";
import type { Aspect, Strength } from "@/lib/fit/words";
import { distalEndMm, fromAnterior, type LimbPlace } from "./limb-map-geometry";
import { formatNumber } from "./numbers";

type Mark = SkinMark & { grade: number };

/** What a grade stands for, for the key of the map. */
export const gradeWords: readonly string[] = [
  "none",
  "faint",
  "clear",
  "deep, firm, painful, not blanching or slow to fade",
  "purple or broken",
];

export const strengthWords: Record<Strength, string> = {
  none: "no redness",
  faint: "faint",
  clear: "clear",
  deep: "deep",
  purple: "purple",
};

/** The aspect in which the middle of a mark lies. */
export function aspectOf(angleDeg: number): Aspect {
  const turn = fromAnterior(angleDeg);
  if (Math.abs(turn) <= 45) return "anterior";
  if (Math.abs(turn) >= 135) return "posterior";
  return turn > 0 ? "lateral" : "medial";
}

/** "lateral, middle third", or "distal end, lateral". */
export function placeWords({ angleDeg, distanceFromEndMm }: LimbPlace, limbLengthMm: number): string {
  const aspect = aspectOf(angleDeg);
  if (distanceFromEndMm <= distalEndMm(limbLengthMm)) return `distal end, ${aspect}`;
  const share = distanceFromEndMm / limbLengthMm;
  return `${aspect}, ${share < 1 / 3 ? "distal" : share < 2 / 3 ? "middle" : "proximal"} third`;
}

/** "88 mm from the end, 8°" */
export const positionWords = ({ angleDeg, distanceFromEndMm }: LimbPlace): string =>
  `${formatNumber(distanceFromEndMm, 0)}\u00a0mm from the end, ${formatNumber(angleDeg, 0)}°`;

/** "22 × 12 mm": across by along. */
export const sizeWords = ({ widthMm, heightMm }: Pick<SkinMark, "widthMm" | "heightMm">): string =>
  `${formatNumber(widthMm, 0)} × ${formatNumber(heightMm, 0)}\u00a0mm`;

/** "clear, firm, blanches"; "gone" where nothing is seen or felt any more. */
export function findingWords(mark: Mark): string {
  if (!isThere(mark)) return "gone";
  const { strength, firm, warm, painful, broken, blanches } = mark;
  const blanching = { yes: "blanches", no: "does not blanch", "not tested": "blanching not tested" }[blanches];
  return [strengthWords[strength], firm && "firm", warm && "warm", painful && "painful", broken && "skin broken", blanching]
    .filter(Boolean)
    .join(", ");
}

/** Empty where a mark was just seen gone and nobody noted the minute. */
export function fadeWords(mark: Mark): string {
  if (mark.fadedAtMin !== null) return `faded by ${formatNumber(mark.fadedAtMin, 0)}\u00a0min`;
  return isThere(mark) ? "not seen to fade" : "";
}

/** One sentence a mark, for those who hear the map. */
export const markSentence = (mark: Mark, number: number | string, limbLengthMm: number): string =>
  `Mark ${number}: grade ${mark.grade} of 4, ${findingWords(mark)}; ${placeWords(mark, limbLengthMm)}, ${positionWords(mark)}; ${[sizeWords(mark), fadeWords(mark)].filter(Boolean).join(", ")}.`;

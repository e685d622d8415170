import { checkWords } from "@/app/_parts/check-words";
import { aspectOf } from "@/app/_parts/mark-words";
import { feelingWords } from "@/app/_parts/skin-words";
import type { Level, SocketFindings } from "@/lib/fit";

/** A finding as a choice of what an adjustment answers. */
export interface FindingChoice {
  value: string;
  label: string;
}

/** What was found with a socket, as choices for what an adjustment answers; two of them are there without any finding. */
export function choicesOfFindings(found: SocketFindings | undefined, level: Level): FindingChoice[] {
  const { checks = {}, marksSeen = [], felt = [], motion = [] } = found ?? {};
  return [
    ...Object.entries(checks)
      .filter(([, answer]) => answer === "concern" || answer === "not met")
      .map(([key, answer]) => ({ value: `check:${key}`, label: `${checkWords(key, level)}: ${answer}` })),
    ...marksSeen
      .filter(({ grade }) => grade > 0)
      .map(({ mark, grade }) => ({
        value: `mark:${mark.id}`,
        label: `mark grade ${grade}, ${aspectOf(mark.angleDeg)}, ${Math.round(mark.distanceFromEndMm)} mm from the end`,
      })),
    ...felt.map((kind) => ({ value: `feeling:${kind}`, label: `felt: ${feelingWords[kind]}` })),
    ...motion.map(({ joint }) => ({ value: `motion:${joint}`, label: `motion: ${joint.replaceAll("-", " ")}` })),
    { value: "displacement", label: "displacement under load" },
    { value: "pain", label: "pain" },
  ];
}

import { checkWords } from "@/app/_parts/check-words";
import { aspectOf } from "@/app/_parts/mark-words";
import { feelingWords } from "@/app/_parts/skin-words";
import type { Bundle } from "@/lib/fit";
import { gradeMark } from "@/lib/fit";

/** A finding as a choice of what an adjustment answers. */
export interface FindingChoice {
  value: string;
  label: string;
}

/** What was found with a socket, as choices for what an adjustment answers. */
export function findingsOf(bundle: Bundle, socketId: string | undefined): FindingChoice[] {
  const fittings = bundle.fittings.filter((fitting) => fitting.socketId === socketId);
  const trials = bundle.wearTrials.filter((trial) => trial.socketId === socketId);
  const fitting = fittings.at(-1);
  const checks = Object.entries(fitting?.checks ?? {})
    .filter(([, answer]) => answer === "concern" || answer === "not met")
    .map(([key, answer]) => ({ value: `check:${key}`, label: `${checkWords(key, bundle.episode.level)}: ${answer}` }));
  const marks = [...fittings, ...trials]
    .flatMap(({ inspections }) => inspections)
    .flatMap((look) => look.marks)
    .toSorted((a, b) => gradeMark(b) - gradeMark(a))
    .filter((mark, index, all) => gradeMark(mark) > 0 && all.findIndex(({ id }) => id === mark.id) === index)
    .map((mark) => ({
      value: `mark:${mark.id}`,
      label: `mark grade ${gradeMark(mark)}, ${aspectOf(mark.angleDeg)}, ${Math.round(mark.distanceFromEndMm)} mm from the end`,
    }));
  const feelings = [
    ...new Set(
      trials
        .flatMap(({ events }) => events)
        .flatMap((event) => (event.kind === "check-in" ? event.feelings.map(({ kind }) => kind) : [])),
    ),
  ].map((kind) => ({
    value: `feeling:${kind}`,
    label: `felt: ${feelingWords[kind]}`,
  }));
  const motion = (fitting?.motion ?? []).map(({ joint }) => ({
    value: `motion:${joint}`,
    label: `motion: ${joint.replaceAll("-", " ")}`,
  }));
  return [
    ...checks,
    ...marks,
    ...feelings,
    { value: "displacement", label: "displacement under load" },
    ...motion,
    { value: "pain", label: "pain" },
  ];
}

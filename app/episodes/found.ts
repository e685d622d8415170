/** What was found with a socket, each finding with what practitioners consider for it. */
import { findingWords, placeWords } from "@/app/_parts/mark-words";
import { formatNumber } from "@/app/_parts/numbers";
import { feelingWords, stopSignWords } from "@/app/_parts/skin-words";
import {
  type Adjustment,
  type AdjustmentKind,
  type Bundle,
  type CheckKey,
  type Consideration,
  considerEach,
  type Finding,
  findingOfCheck,
  findingOfDisplacement,
  findingOfFeeling,
  findingOfMotion,
  findingOfPain,
  findingOfStopSign,
  findingsOfMark,
  forbiddingFindings,
  gradeMark,
  type Inspection,
  type Limits,
  limitValue,
  motion,
  motionRule,
  replayWearTrial,
  type SkinMark,
  suspension,
  suspensionRule,
  trialLimitsOf,
} from "@/lib/fit";

/** A considered adjustment, ready to be taken up: its amount and its reason are left to whoever decides. */
export interface Offer {
  id: string;
  kind: AdjustmentKind;
  what: string;
  unit?: Adjustment["unit"];
  aspect?: Adjustment["aspect"];
  third?: Adjustment["third"];
  answers?: string;
}

export interface Found {
  id: string;
  /** "Mark grade 3, lateral, proximal third: clear, firm" */
  words: string;
  /** The physician is asked first; nothing is offered. */
  forbids: boolean;
  considered: { id: string; heading: string; offers: Offer[]; weigh: string[]; cautions: string[]; stopWhen: string }[];
}

/**
 * Of the latest fitting and the latest trial; what forbids also of earlier ones, for a later look does not undo it.
 * What forbids comes first.
 */
export function foundWith(bundle: Bundle, socketId: string, limits: Limits): Found[] {
  const asked = { bundle, limits, level: bundle.episode.level };
  const fittings = inTime(
    bundle.fittings.filter((fitting) => fitting.socketId === socketId),
    ({ at }) => at,
  );
  const trials = inTime(
    bundle.wearTrials.filter((trial) => trial.socketId === socketId),
    ({ events }) => events[0]?.at ?? "",
  );
  const now = [...ofFitting(fittings.at(-1), asked), ...ofTrial(trials.at(-1), asked)];
  const before = [
    ...fittings.slice(0, -1).flatMap((fitting) => ofFitting(fitting, asked)),
    ...trials.slice(0, -1).flatMap((trial) => ofTrial(trial, asked)),
  ].filter(isForbidding);
  const found = joined([...now, ...before]).map(withConsidered);
  return [...found.filter(({ forbids }) => forbids), ...found.filter(({ forbids }) => !forbids)];
}

/** The offers that an address names (`?consider=…`), as the first values of rows of adjustments. */
export const offersNamed = (found: readonly Found[], ids: readonly string[]): Offer[] =>
  found.flatMap(({ considered }) => considered.flatMap(({ offers }) => offers)).filter(({ id }) => ids.includes(id));

/** A finding of the records before it is looked up. */
interface Raw {
  id: string;
  words: string;
  answers?: string;
  findings: Finding[];
  /** Of two that are one thing the heavier is told: the grade of a mark, a rating. */
  weight?: number;
}

interface Asked {
  bundle: Bundle;
  limits: Limits;
  level: Bundle["episode"]["level"];
}

const inTime = <Record>(records: readonly Record[], at: (record: Record) => string): Record[] =>
  records.toSorted((a, b) => Date.parse(at(a) || "0") - Date.parse(at(b) || "0"));

const isForbidding = ({ findings }: Raw): boolean => findings.some(({ kind }) => forbiddingFindings.includes(kind));

function ofFitting(fitting: Bundle["fittings"][number] | undefined, { bundle, limits, level }: Asked): Raw[] {
  if (!fitting) return [];
  const checks = Object.entries(fitting.checks).filter(([, answer]) => answer === "concern" || answer === "not met");
  const pull = suspension(fitting.pulls, suspensionRule(bundle.episode, limits));
  return [
    ...checks.map(([key, answer]) => ({
      id: `check:${key}`,
      words: `Check ${key.replaceAll("-", " ")}: ${answer}`,
      answers: `check:${key}`,
      findings: [findingOfCheck(key as CheckKey, level)], // the schema of a fitting has no other keys
    })),
    ...marksOf(fitting.inspections, { bundle, limits, level }),
    ...painOf(fitting.pain, { bundle, limits, level }),
    ...(pull.state === "not met" || pull.state === "close"
      ? [
          {
            id: "displacement",
            words: `Displacement: ${pull.why}`,
            answers: "displacement",
            findings: [findingOfDisplacement(level)],
          },
        ]
      : []),
    ...fitting.motion.flatMap(({ joint, withoutDeg, withDeg }) => {
      const { state, why } = motion(withoutDeg, withDeg, motionRule(joint, bundle.episode, limits));
      const id = `motion:${joint}`;
      return state === "not met" || state === "close"
        ? [{ id, words: `Motion, ${joint.replaceAll("-", " ")}: ${why}`, answers: id, findings: [findingOfMotion(joint, level)] }]
        : [];
    }),
    ...comfortOf(fitting.comfort, { bundle, limits, level }),
  ];
}

function ofTrial(trial: Bundle["wearTrials"][number] | undefined, asked: Asked): Raw[] {
  if (!trial) return [];
  const { bundle, limits, level } = asked;
  const { stopSigns, feelings, series } = replayWearTrial(trial.plan, trial.events, bundle.asOf, trialLimitsOf(limits));
  return [
    ...stopSigns.map(({ sign }) => ({
      id: `stop:${sign}`,
      words: `The trial was stopped: ${stopSignWords[sign]}`,
      findings: [findingOfStopSign(sign, level)],
    })),
    ...marksOf(trial.inspections, asked),
    ...painOf(series.pain.worst ?? undefined, asked),
    ...feelings.map(({ kind, aspect, third, times }) => ({
      id: ["feeling", kind, aspect, third].filter(Boolean).join(":"),
      words: `Felt at ${times} check-in${times === 1 ? "" : "s"}: ${[feelingWords[kind], aspect, third && `${third} third`].filter(Boolean).join(", ")}`,
      answers: `feeling:${kind}`,
      findings: [findingOfFeeling({ kind, aspect, third }, level)],
    })),
    ...comfortOf(series.comfort.last ?? undefined, asked),
  ];
}

/**
 * Every mark once, as the look saw it that grades it highest. Of the other looks only what forbids and what faded late:
 * that a clear mark was faint on its way to nothing asks for nothing.
 */
function marksOf(looks: readonly Inspection[], { bundle, limits, level }: Asked): Raw[] {
  const { limbLengthMm } = bundle.episode;
  const seen = new Map<string, { mark: SkinMark; grade: number; findings: Finding[] }[]>();
  for (const { marks, minutesAfterDoffing } of looks)
    for (const mark of marks) {
      const findings = findingsOfMark(mark, { level, limbLengthMm, lookedAtMin: minutesAfterDoffing }, limits);
      const once = { mark, grade: gradeMark(mark, minutesAfterDoffing), findings };
      seen.set(mark.id, [...(seen.get(mark.id) ?? []), once]);
    }
  return [...seen].flatMap(([id, times]) => {
    const [hardest, ...others] = times.toSorted((a, b) => b.grade - a.grade);
    if (!hardest) return [];
    const { mark, grade } = hardest;
    const findings = [...hardest.findings, ...others.flatMap((other) => other.findings.filter(staysSaid))];
    const words = `Mark grade ${grade}, ${placeWords(mark, limbLengthMm)}: ${findingWords({ ...mark, grade })}`;
    return findings.length === 0 ? [] : [{ id: `mark:${id}`, words, answers: `mark:${id}`, findings, weight: grade }];
  });
}

/** What one look shows stays said, whatever another shows. */
const staysSaid = ({ kind }: Finding): boolean => kind === "late-fading" || forbiddingFindings.includes(kind);

function painOf(pain: number | undefined, { level, limits }: Asked): Raw[] {
  const finding = pain === undefined ? null : findingOfPain(pain, level, limits);
  if (pain === undefined || !finding) return [];
  return [{ id: "pain", words: `Pain ${formatNumber(pain, 0)} of 10`, answers: "pain", findings: [finding], weight: pain }];
}

function comfortOf(comfort: number | undefined, { level, limits }: Asked): Raw[] {
  if (comfort === undefined || comfort >= limitValue(limits, "comfort-last-least")) return [];
  const findings: Finding[] = [{ kind: "low-comfort", level }];
  return [{ id: "comfort", words: `Comfort ${formatNumber(comfort, 0)} of 10`, findings, weight: 10 - comfort }];
}

/** What a fitting and a trial both found stands once, as the heavier of the two; what forbids in either stays said. */
function joined(found: readonly Raw[]): Raw[] {
  const once = new Map<string, Raw>();
  for (const raw of found) {
    const before = once.get(raw.id);
    const [told, other] = before && (before.weight ?? 0) > (raw.weight ?? 0) ? [before, raw] : [raw, before];
    once.set(raw.id, { ...told, findings: [...told.findings, ...(other?.findings.filter(staysSaid) ?? [])] });
  }
  return [...once.values()];
}

function withConsidered({ id, words, answers, findings }: Raw): Found {
  const forbids = findings.some(({ kind }) => forbiddingFindings.includes(kind));
  const place = findings.find(({ aspect, third, place }) => aspect ?? third ?? place);
  const rows = considerEach(forbids ? findings.filter(({ kind }) => forbiddingFindings.includes(kind)) : findings);
  return {
    id,
    words,
    forbids,
    considered: rows.map((row) => ({
      id: row.id,
      heading: row.finding,
      offers: forbids ? [] : offersOf(row, { id, place, answers }),
      weigh: [...row.weigh],
      cautions: [...row.cautions],
      stopWhen: row.stopWhen,
    })),
  };
}

const usualUnit: Partial<Record<AdjustmentKind, Adjustment["unit"]>> = {
  relief: "mm",
  "build-up": "mm",
  trim: "mm",
  flare: "mm",
  length: "mm",
  volume: "percent",
  alignment: "deg",
};

/** These are made where the finding is; a build-up or a volume is often made elsewhere, so its place is left to be chosen. */
const madeThere: readonly AdjustmentKind[] = ["relief", "trim", "flare"];

function offersOf(
  { id: rowId, adjustments }: Consideration,
  { id, place, answers }: { id: string; place: Finding | undefined; answers: string | undefined },
): Offer[] {
  return adjustments.map(({ kind, what }, index) => {
    const there = madeThere.includes(kind) ? place : undefined;
    const third = there?.place === "distal end" ? "distal" : there?.third;
    const unit = usualUnit[kind];
    return {
      id: `${id}~${rowId}~${index}`,
      kind,
      what,
      ...(unit ? { unit } : {}),
      ...(there?.aspect ? { aspect: there.aspect } : {}),
      ...(third ? { third } : {}),
      ...(answers ? { answers } : {}),
    };
  });
}

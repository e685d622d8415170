/** What was found with a socket, each finding with its record and with what practitioners consider for it. */
import { checkWords } from "@/app/_parts/check-words";
import { dayAndTimeAt } from "@/app/_parts/dates";
import { formatNumber } from "@/app/_parts/numbers";
import { feelingWords, stopSignWords } from "@/app/_parts/skin-words";
import {
  type Bundle,
  type CheckKey,
  type Finding,
  findingOfCheck,
  findingOfDisplacement,
  findingOfFeeling,
  findingOfMotion,
  findingOfPain,
  findingOfStopSign,
  type Inspection,
  type Limits,
  limitValue,
  motion,
  motionRule,
  replayWearTrial,
  suspension,
  suspensionRule,
  trialLimitsOf,
} from "@/lib/fit";
import { type EarlyMark, foundMarks, staysSaid } from "./found-marks";
import { type Considered, consideredFor, isForbidding, type Offer } from "./found-offers";
import { type NumbersOf, numbersInOrder } from "./mark-numbers-of-episode";

/** The fitting or the trial in which something was found. */
export interface FoundIn {
  /** "Fitting of 5 Oct 2026, 10:30, before the latest wear trial" */
  record: string;
  href: string;
  /** As it was found there: a mark's number and grade, a rating. */
  words: string;
}

export interface Found {
  id: string;
  /** "Mark 2, grade 3, lateral, proximal third, 120 mm from the end, 90°, 18 × 14 mm: clear, firm" */
  words: string;
  /** The physician is asked first; nothing is offered. */
  forbids: boolean;
  /** It forbids until a later look, at this address, shows otherwise. */
  early?: EarlyMark & { href: string };
  /** The record that the words are from; then others in which the same was found. */
  from: FoundIn[];
  considered: Considered[];
}

/**
 * Of the latest fitting and the latest trial; what forbids also of earlier ones, for a later fitting does not undo it.
 * What forbids comes first.
 */
export function foundWith(bundle: Bundle, socketId: string, limits: Limits, numbersOf: NumbersOf = numbersInOrder): Found[] {
  const asked = { bundle, limits, level: bundle.episode.level, numbersOf };
  const fittings = inTime(
    bundle.fittings.filter((fitting) => fitting.socketId === socketId),
    ({ at }) => at,
  );
  const trials = inTime(
    bundle.wearTrials.filter((trial) => trial.socketId === socketId),
    begunAt,
  );
  const [fitting, trial] = [fittings.at(-1), trials.at(-1)];
  const latest: Latest = {
    fittingMs: fitting ? Date.parse(fitting.at) : Number.NEGATIVE_INFINITY,
    trialMs: trial && begunAt(trial) ? Date.parse(begunAt(trial)) : Number.NEGATIVE_INFINITY,
  };
  const inFitting = (one: Bundle["fittings"][number]) =>
    ofFitting(one, asked).map((raw) => withRecord(raw, { kind: "fitting", id: one.id, at: one.at }, { bundle, latest }));
  const inTrial = (one: Bundle["wearTrials"][number]) =>
    ofTrial(one, asked).map((raw) => withRecord(raw, { kind: "wear trial", id: one.id, at: begunAt(one) }, { bundle, latest }));
  const now = [...(fitting ? inFitting(fitting) : []), ...(trial ? inTrial(trial) : [])];
  const before = [...fittings.slice(0, -1).flatMap(inFitting), ...trials.slice(0, -1).flatMap(inTrial)].filter(isForbidding);
  const found = joined([...now, ...before]).map(toFound);
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
  early?: EarlyMark;
}

/** A finding with the records that it is from. */
interface Recorded extends Raw {
  from: FoundIn[];
  atMs: number;
  lookAgain?: EarlyMark & { href: string };
}

interface Asked {
  bundle: Bundle;
  limits: Limits;
  level: Bundle["episode"]["level"];
  numbersOf: NumbersOf;
}

/** When the latest fitting and the latest trial of the socket were; long ago where there was none. */
interface Latest {
  fittingMs: number;
  trialMs: number;
}

const inTime = <Record>(records: readonly Record[], at: (record: Record) => string): Record[] =>
  records.toSorted((a, b) => Date.parse(at(a) || "0") - Date.parse(at(b) || "0"));

const begunAt = ({ events }: Bundle["wearTrials"][number]): string => events[0]?.at ?? "";

/** Whoever reads a finding sees from when it is, and that something newer is on record. */
function withRecord(
  raw: Raw,
  { kind, id, at }: { kind: "fitting" | "wear trial"; id: string; at: string },
  { bundle, latest }: { bundle: Bundle; latest: Latest },
): Recorded {
  const atMs = at ? Date.parse(at) : Number.NEGATIVE_INFINITY;
  const newer = [...(latest.fittingMs > atMs ? ["fitting"] : []), ...(latest.trialMs > atMs ? ["wear trial"] : [])];
  const when = at ? ` of ${dayAndTimeAt(at, bundle.clinic.timeZone)}` : " that has not begun";
  const record = `${kind === "fitting" ? "Fitting" : "Wear trial"}${when}${newer.length > 0 ? `, before the latest ${newer.join(" and the latest ")}` : ""}`;
  const href = `/${kind === "fitting" ? "fittings" : "trials"}/${id}`;
  // After a newer fitting or trial nobody can look again at what this one left.
  const lookAgain = raw.early && newer.length === 0 ? { lookAgain: { ...raw.early, href: `${href}/look` } } : {};
  return { ...raw, atMs, from: [{ record, href, words: raw.words }], ...lookAgain };
}

function ofFitting(fitting: Bundle["fittings"][number], { bundle, limits, level, numbersOf }: Asked): Raw[] {
  const checks = Object.entries(fitting.checks).filter(([, answer]) => answer === "concern" || answer === "not met");
  const pull = suspension(fitting.pulls, suspensionRule(bundle.episode, limits));
  return [
    ...checks.map(([key, answer]) => ({
      id: `check:${key}`,
      words: `${checkWords(key, level)}: ${answer}`,
      answers: `check:${key}`,
      findings: [findingOfCheck(key as CheckKey, level)], // the schema of a fitting has no other keys
    })),
    ...marksOf(fitting, { bundle, limits, level, numbersOf }),
    ...painOf(fitting.pain, { limits, level }),
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
    ...comfortOf(fitting.comfort, { limits, level }),
  ];
}

function ofTrial(trial: Bundle["wearTrials"][number], asked: Asked): Raw[] {
  const { bundle, limits, level } = asked;
  const { stopSigns, feelings, series } = replayWearTrial(trial.plan, trial.events, bundle.asOf, trialLimitsOf(limits));
  return [
    ...stopSigns.map(({ sign }) => ({
      id: `stop:${sign}`,
      words: `The trial was stopped: ${stopSignWords[sign]}`,
      findings: [findingOfStopSign(sign, level)],
    })),
    ...marksOf(trial, asked),
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

function marksOf(record: { id: string; inspections: readonly Inspection[] }, { bundle, limits, level, numbersOf }: Asked): Raw[] {
  const { limbLengthMm } = bundle.episode;
  return foundMarks(record.inspections, numbersOf(record), { level, limbLengthMm }, limits).map(
    ({ markId, grade, ...found }) => ({
      id: `mark:${markId}`,
      answers: `mark:${markId}`,
      weight: grade,
      ...found,
    }),
  );
}

type Judged = Pick<Asked, "limits" | "level">;

function painOf(pain: number | undefined, { level, limits }: Judged): Raw[] {
  const finding = pain === undefined ? null : findingOfPain(pain, level, limits);
  if (pain === undefined || !finding) return [];
  return [{ id: "pain", words: `Pain ${formatNumber(pain, 0)} of 10`, answers: "pain", findings: [finding], weight: pain }];
}

function comfortOf(comfort: number | undefined, { level, limits }: Judged): Raw[] {
  if (comfort === undefined || comfort >= limitValue(limits, "comfort-last-least")) return [];
  const findings: Finding[] = [{ kind: "low-comfort", level }];
  return [{ id: "comfort", words: `Comfort ${formatNumber(comfort, 0)} of 10`, findings, weight: 10 - comfort }];
}

/** What several records found stands once, as the heaviest of them, or the newest of equals; what forbids in any stays said. */
function joined(found: readonly Recorded[]): Recorded[] {
  const once = new Map<string, Recorded>();
  for (const raw of found) {
    const before = once.get(raw.id);
    if (!before) {
      once.set(raw.id, raw);
      continue;
    }
    const heavier = (before.weight ?? 0) - (raw.weight ?? 0) || before.atMs - raw.atMs;
    const [told, other] = heavier > 0 ? [before, raw] : [raw, before];
    const { lookAgain: _, ...rest } = told;
    // A later look settles it only where it settles all that forbids.
    const forbidding = [told, other].filter(isForbidding);
    const lookAgain = forbidding.every((each) => each.lookAgain) ? forbidding[0]?.lookAgain : undefined;
    once.set(raw.id, {
      ...rest,
      findings: [...told.findings, ...other.findings.filter(staysSaid)],
      from: [...told.from, ...other.from],
      ...(lookAgain ? { lookAgain } : {}),
    });
  }
  return [...once.values()];
}

const toFound = (found: Recorded): Found => ({
  id: found.id,
  words: found.words,
  forbids: isForbidding(found),
  from: found.from,
  considered: consideredFor(found),
  ...(found.lookAgain ? { early: found.lookAgain } : {}),
});

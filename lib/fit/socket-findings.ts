/** What was found with one check socket, gathered so that it can be held against another. */
import type { FitIndex } from "./assessment";
import type { Bundle, Inspection, SkinMark } from "./bundle";
import { type Evidence, gatherEvidence } from "./evidence";
import { cellsAt, longestFadeMin } from "./gates-skin";
import { indexOf } from "./index-inputs";
import { defaultLimits, type Limits, limitValue } from "./limits";
import type { FeltThere } from "./replay-wear-trial-series";
import { evenness } from "./skin-marks-evenness";
import { gradeMark, type MarkGrade } from "./skin-marks-grade";
import type { MarkCell } from "./skin-marks-map";
import { trackMarks } from "./skin-marks-track";
import { suspension, suspensionRule } from "./suspension";
import type { CheckAnswer, CheckKey, FeelingKind } from "./words";

export interface Measured {
  value: number;
  standardError?: number;
}

/** The skin after one doffing. */
export interface SkinFindings {
  /** Minutes after doffing of the first look. */
  lookedAtMin?: number;
  /** Of the first look. */
  cells: readonly MarkCell[];
  marks: readonly SkinMark[];
  /** 0…4. */
  hardestGrade: number;
  evennessAround: number;
  /** Between these minutes the last mark faded; `highMin` is null where nobody saw it go. */
  longestFade: { lowMin: number; highMin: number | null };
}

/** A mark as the look saw it that grades it highest. */
export interface MarkSeen {
  mark: SkinMark;
  grade: MarkGrade;
}

/** Every field that is missing was not measured. */
export interface SocketFindings {
  socketId: string;
  number: number;
  /** As said at the latest fitting, 0–10. */
  fitting?: { comfort?: number; pain?: number; skin?: SkinFindings };
  /** Of the latest trial that ended or was stopped: the last comfort, the highest pain, 0–10. */
  trial?: { comfort?: number; pain?: number; stopSigns: number; feelings: readonly FeltThere[]; skin?: SkinFindings };
  /** Stop signs of its other trials: a later trial does not undo them. Missing where there were none. */
  stoppedBefore?: readonly string[];
  /** Each mark of every look after this socket was worn, at whatever fitting or trial; the hardest first. Missing where nobody looked. */
  marksSeen?: readonly MarkSeen[];
  /** What was felt in any of its trials, each kind once. Missing where nothing was. */
  felt?: readonly FeelingKind[];
  /** At the load of the rule. */
  displacement?: Measured & { atN: number };
  motion?: readonly { joint: string; lostDeg: number; standardError?: number }[];
  checks?: Partial<Record<CheckKey, CheckAnswer>>;
  index?: FitIndex;
}

/**
 * What a socket's latest fitting and its latest wear trial found.
 *
 * @throws FitInputError where there is no socket of that id
 * @source plain
 */
export function findingsOfSocket(
  bundle: Bundle,
  socketId: string,
  { limits = defaultLimits, asOf = bundle.asOf }: { limits?: Limits; asOf?: string } = {},
): SocketFindings {
  const evidence = gatherEvidence(bundle, { limits, asOf, socketId });
  const { fitting, trial, socket } = evidence;
  const fittingSkin = fitting && skinOf(fitting.inspections, evidence);
  const trialSkin = trial && skinOf(trial.looks, evidence);
  const displacement = displacementOf(evidence);
  // A loss is the difference of two angles.
  const motionError = limitValue(limits, "goniometer-error-deg") * Math.SQRT2;
  return {
    socketId,
    number: socket?.number ?? 0,
    ...(fitting
      ? {
          fitting: {
            ...given("comfort", fitting.comfort),
            ...given("pain", fitting.pain),
            ...given("skin", fittingSkin),
          },
          motion: fitting.motion.map(({ joint, withoutDeg, withDeg }) => ({
            joint,
            lostDeg: withoutDeg - withDeg,
            standardError: motionError,
          })),
          checks: fitting.checks,
        }
      : {}),
    ...(trial
      ? {
          trial: {
            ...given("comfort", trial.replay.series.comfort.last ?? undefined),
            ...given("pain", trial.replay.series.pain.worst ?? undefined),
            stopSigns: trial.replay.stopSigns.length,
            feelings: trial.replay.feelings,
            ...given("skin", trialSkin),
          },
        }
      : {}),
    ...given("stoppedBefore", evidence.stoppedBefore.length === 0 ? undefined : evidence.stoppedBefore),
    ...given("marksSeen", marksSeenIn(evidence.looksOfSocket)),
    ...given("felt", feltIn(evidence)),
    ...given("displacement", displacement),
    index: indexOf(evidence),
  };
}

/** A field that is there only where there is something in it. */
const given = <Name extends string, Value>(name: Name, value: Value | undefined): { [Key in Name]?: Value } =>
  // A computed name is no literal type to the compiler.
  value === undefined ? {} : ({ [name]: value } as { [Key in Name]: Value });

/** A later fitting or trial does not undo what an earlier one showed. */
function marksSeenIn(looks: readonly Inspection[]): MarkSeen[] | undefined {
  if (looks.length === 0) return undefined;
  const hardest = new Map<string, MarkSeen>();
  for (const { marks, minutesAfterDoffing } of looks)
    for (const mark of marks) {
      const grade = gradeMark(mark, minutesAfterDoffing);
      const before = hardest.get(mark.id);
      if (!before || grade > before.grade) hardest.set(mark.id, { mark, grade });
    }
  return [...hardest.values()].sort((a, b) => b.grade - a.grade);
}

function feltIn({ trialsOfSocket }: Evidence): FeelingKind[] | undefined {
  const kinds = new Set(trialsOfSocket.flatMap(({ replay }) => replay.feelings.map(({ kind }) => kind)));
  return kinds.size === 0 ? undefined : [...kinds];
}

function skinOf(inspections: readonly Inspection[], evidence: Evidence): SkinFindings | undefined {
  const looks = inspections.toSorted((a, b) => a.minutesAfterDoffing - b.minutesAfterDoffing);
  const first = looks[0];
  if (!first) return undefined;
  const cells = cellsAt(first, evidence);
  const tracked = trackMarks(looks);
  return {
    lookedAtMin: first.minutesAfterDoffing,
    cells,
    marks: first.marks,
    hardestGrade: Math.max(0, ...cells.map(({ grade }) => grade)),
    evennessAround: evenness(cells).around,
    longestFade: { lowMin: Math.max(0, ...tracked.map(({ fade }) => fade.lowMin)), highMin: longestFadeMin(tracked) },
  };
}

/**
 * A displacement is read to the millimetre, so that readings which happen to lie on a line are no surer than this: a
 * resolution d has a standard uncertainty of d/√12. JCGM 100:2008 (GUM), F.2.2.1, from memory.
 */
const readingErrorMm = 1 / Math.sqrt(12);

function displacementOf({ bundle, fitting, limits }: Evidence): SocketFindings["displacement"] {
  if (!fitting) return undefined;
  const rule = suspensionRule(bundle.episode, limits);
  const { value, standardError } = suspension(fitting.pulls, rule);
  if (value === undefined || standardError === undefined) return undefined;
  return { value, standardError: Math.max(standardError, readingErrorMm), atN: rule.loadN };
}

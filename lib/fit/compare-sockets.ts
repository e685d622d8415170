/** Two sockets side by side, measure by measure. No winner is declared: a prosthetist weighs what differs. */
import {
  beyondError,
  type Compared,
  type ComparisonRow,
  compare,
  measures,
  type Outcome,
  outcomeOf,
  rated,
  z95,
} from "./compare-measures";
import { figure, inWords } from "./figures";
import { defaultLimits, type Limits, limitValue } from "./limits";
import type { Measured, SkinFindings, SocketFindings } from "./socket-findings";
import { type CheckAnswer, type CheckKey, checkAnswers } from "./words";

/** One-sided 95 %, of which the index makes its interval. */
const z90 = 1.645;

/**
 * Per measure the difference with its error, and whether the second socket is better or worse than the first by more
 * than that error. Looks at the skin, comfort and pain are compared only with those of the same occasion: a fitting
 * with a fitting, a trial with a trial.
 *
 * Comfort: a change of less than 2 is within measuring error. Pain: 2 points or 30 % of the pain before matter. A
 * displacement, a loss of motion or a time of fading has to differ by 1.96·√(s₁² + s₂²). A mark's grade, a check and a
 * stop sign are taken at face value.
 *
 * @param a the earlier socket, of `findingsOfSocket`
 * @param b the later one
 * @returns a row a measure that either socket may have, in a fixed order; the index last, which decides nothing
 * @throws FitInputError where a value is not finite
 * @source hafner-2022
 * @source farrar-2001
 *
 * @example
 * compareSockets(
 *   { socketId: "s1", number: 1, trial: { comfort: 6, pain: 4, stopSigns: 0, feelings: [] } },
 *   { socketId: "s2", number: 2, trial: { comfort: 7, pain: 2, stopSigns: 0, feelings: [] } },
 * ).filter(({ id }) => id.endsWith("-trial")).map(({ outcome }) => outcome)
 * // => ["within measuring error", "better"]
 */
export function compareSockets(a: SocketFindings, b: SocketFindings, limits: Limits = defaultLimits): ComparisonRow[] {
  const row = (kind: Omit<Compared, "limits">) => compare({ ...kind, limits });
  const both = <T>(of: (found: SocketFindings) => T) => ({ a: of(a), b: of(b) });
  const joints = [...new Set([a, b].flatMap(({ motion = [] }) => motion.map(({ joint }) => joint)))];
  const skin = sameOccasion(a, b);
  return [
    row({
      ...measures.comfort,
      id: "comfort-fitting",
      measure: "comfort at the fitting",
      ...both(({ fitting }) => rated(fitting?.comfort)),
    }),
    row({
      ...measures.comfort,
      id: "comfort-trial",
      measure: "last comfort of the trial",
      ...both(({ trial }) => rated(trial?.comfort)),
    }),
    row({ ...measures.pain, id: "pain-fitting", measure: "pain at the fitting", ...both(({ fitting }) => rated(fitting?.pain)) }),
    row({ ...measures.pain, id: "pain-trial", measure: "highest pain of the trial", ...both(({ trial }) => rated(trial?.pain)) }),
    displacementRow(a, b, limits),
    ...joints.map((joint) =>
      row({
        ...measures.motion,
        id: `motion:${joint}`,
        measure: `loss of ${inWords(joint)}`,
        ...both((found) => lossOf(found, joint)),
      }),
    ),
    row({ ...measures.mark, a: rated(skin.a?.hardestGrade), b: rated(skin.b?.hardestGrade) }),
    fadeRow(skin, limits),
    row({ ...measures.evenness, a: rated(skin.a?.evennessAround), b: rated(skin.b?.evennessAround) }),
    ...checksOfEither(a, b).map((key) => checkRow(key, a.checks?.[key], b.checks?.[key])),
    row({ ...measures.stopSigns, ...both(({ trial }) => rated(trial?.stopSigns)) }),
    row({ ...measures.index, ...both(indexMeasured) }),
  ];
}

const lossOf = ({ motion = [] }: SocketFindings, joint: string): Measured | undefined => {
  const found = motion.find((measured) => measured.joint === joint);
  return found && { value: found.lostDeg, ...(found.standardError === undefined ? {} : { standardError: found.standardError }) };
};

function displacementRow(a: SocketFindings, b: SocketFindings, limits: Limits): ComparisonRow {
  const direction = {
    id: "displacement",
    measure: "displacement under load",
    unit: "mm",
    betterIs: "lower",
    source: "suspension-setting",
  } as const;
  const [first, second] = [a.displacement, b.displacement];
  if (first && second && Math.abs(first.atN - second.atN) > 1e-6 * first.atN)
    return {
      ...direction,
      a: first,
      b: second,
      outcome: "not measured",
      why: `Judged at different loads, ${figure(first.atN, 0)} and ${figure(second.atN, 0)} N.`,
    };
  return compare({ ...direction, a: first, b: second, countsFrom: beyondError, limits });
}

/** The skin after a trial of each, or else after a fitting of each. */
export function sameOccasion(a: SocketFindings, b: SocketFindings): { a?: SkinFindings; b?: SkinFindings } {
  if (a.trial?.skin && b.trial?.skin) return { a: a.trial.skin, b: b.trial.skin };
  if (a.fitting?.skin && b.fitting?.skin) return { a: a.fitting.skin, b: b.fitting.skin };
  return {};
}

/** A mark that nobody saw go leaves its time open: it still tells where it was there long after the other's had gone. */
function fadeRow({ a, b }: { a?: SkinFindings; b?: SkinFindings }, limits: Limits): ComparisonRow {
  const standardError = limitValue(limits, "fade-error-minutes");
  const direction = {
    id: "longest-fade",
    measure: "longest fading of a mark",
    unit: "min",
    betterIs: "lower",
    source: "fading-20-min",
  } as const;
  const upper = (skin: SkinFindings | undefined): Measured | undefined => {
    const end = skin?.longestFade.highMin;
    return end === undefined || end === null ? undefined : { value: end, standardError };
  };
  const row = compare({ ...direction, a: upper(a), b: upper(b), countsFrom: beyondError, limits });
  if (!a || !b || row.outcome !== "not measured") return row;
  const detectable = z95 * Math.SQRT2 * standardError;
  const stillThere = (one: SkinFindings, other: SkinFindings) =>
    one.longestFade.highMin === null &&
    other.longestFade.highMin !== null &&
    one.longestFade.lowMin > other.longestFade.highMin + detectable;
  const open = (outcome: Outcome, long: SkinFindings, short: SkinFindings): ComparisonRow => ({
    ...row,
    detectable,
    outcome,
    why: `Still there at ${figure(long.longestFade.lowMin)} min with the ${outcome === "worse" ? "second" : "first"} socket, gone by ${figure(short.longestFade.highMin ?? 0)} min with the other.`,
  });
  if (stillThere(b, a)) return open("worse", b, a);
  if (stillThere(a, b)) return open("better", a, b);
  return { ...row, why: "Nobody saw when the last mark faded." };
}

const checksOfEither = (a: SocketFindings, b: SocketFindings): CheckKey[] => [
  // Object.keys forgets that these are keys of the checks.
  ...new Set([a, b].flatMap(({ checks = {} }) => Object.keys(checks) as CheckKey[])),
];

/** From the worst to the best. */
const answerRank: Readonly<Record<Exclude<CheckAnswer, "not done">, number>> = { "not met": 0, concern: 1, met: 2 };

/** Null where it was not done. */
export const rankOfAnswer = (answer: CheckAnswer | undefined): number | null =>
  answer === undefined || answer === "not done" || !checkAnswers.includes(answer) ? null : answerRank[answer];

function checkRow(key: CheckKey, before: CheckAnswer | undefined, after: CheckAnswer | undefined): ComparisonRow {
  const [first, second] = [rankOfAnswer(before), rankOfAnswer(after)];
  const direction = {
    id: `check:${key}`,
    measure: `check of ${inWords(key)}`,
    unit: "of 2",
    betterIs: "higher",
    source: "common-practice",
    ...(first === null ? {} : { a: { value: first } }),
    ...(second === null ? {} : { b: { value: second } }),
  } as const;
  const why = `${before ?? "not done"} → ${after ?? "not done"}.`;
  if (first === null || second === null) return { ...direction, outcome: "not measured", why };
  const difference = second - first;
  return { ...direction, difference, outcome: outcomeOf(difference, { detectable: 1, betterIs: "higher" }), why };
}

function indexMeasured({ index }: SocketFindings): Measured | undefined {
  if (index?.value === undefined) return undefined;
  const { value, low90 = value, high90 = value } = index;
  return { value, standardError: (high90 - low90) / (2 * z90) };
}

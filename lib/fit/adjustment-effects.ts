/** Did an adjustment do what it was meant to? */
import { type AnsweredMeasure, actsOnCell, answeredMeasure, couldHaveChanged } from "./adjustment-reach";
import type { Adjustment } from "./bundle";
import type { ComparisonRow } from "./compare-measures";
import { compareSockets, rankOfAnswer, sameOccasion } from "./compare-sockets";
import { FitInputError } from "./errors";
import { counted, figure, inWords } from "./figures";
import { defaultLimits, type Limits, limitValue } from "./limits";
import type { MarkCell } from "./skin-marks-map";
import type { SkinFindings, SocketFindings } from "./socket-findings";
import type { SourceId } from "./sources";
import type { CheckKey } from "./words";

export type Effect = "worked" | "no detectable change" | "worse" | "not measured";

/** A place that the adjustment does not act on, and where a mark is now much harder than before. */
export interface SideEffect {
  place: string;
  gradeBefore: number;
  gradeAfter: number;
}

export interface AdjustmentEffect {
  adjustmentId: string;
  /** What it was judged on, in words: "the mark m2", "displacement under load". */
  judgedOn: string;
  effect: Effect;
  /** One plain sentence with the numbers in it. */
  why: string;
  /** Before and after in a few words, where both were measured: "14 → 6 mm", "grade 3 → 1". */
  inShort?: string;
  sideEffects: SideEffect[];
  /** Others made between the same two sockets that could have acted on the same measure: they cannot be told apart. */
  togetherWith: string[];
  source: SourceId;
}

/**
 * Judges each adjustment that led from one socket to the next on what it answered: a mark's grade in its cells, pain,
 * what was felt at its place, displacement, motion, or a check such as donning. A change counts from where
 * `compareSockets` says so.
 *
 * @param before findings with the socket that it was made to, of `findingsOfSocket`
 * @param after findings with the socket that it led to
 * @throws FitInputError where both are of the same socket
 * @source plain
 *
 * @example
 * adjustmentEffects(
 *   { socketId: "s1", number: 1, displacement: { value: 14, standardError: 1, atN: 45 } },
 *   { socketId: "s2", number: 2, displacement: { value: 6, standardError: 1, atN: 45 } },
 *   [{ id: "a1", kind: "volume", amount: -2, unit: "percent", reason: "It slipped", answers: "displacement" }],
 * )[0].effect
 * // => "worked"
 */
export function adjustmentEffects(
  before: SocketFindings,
  after: SocketFindings,
  adjustments: readonly Adjustment[],
  limits: Limits = defaultLimits,
): AdjustmentEffect[] {
  if (before.socketId === after.socketId) throw new FitInputError("after", "expected another socket than before");
  const rows = compareSockets(before, after, limits);
  const skin = sameOccasion(before, after);
  return adjustments.map((adjustment): AdjustmentEffect => {
    const measure = answeredMeasure(adjustment);
    const cells = cellsOf(adjustment, measure, skin.a);
    const sideEffects = elsewhere(skin, { acts: ({ name }) => cells.has(name), limits });
    if (!measure)
      return {
        adjustmentId: adjustment.id,
        judgedOn: "nothing",
        effect: "not measured",
        why: "It does not say what it answers.",
        sideEffects,
        togetherWith: [],
        source: "plain",
      };
    const place = placeOf(adjustment, cells, skin.a);
    const togetherWith = adjustments
      .filter((other) => other !== adjustment && couldHaveChanged(other, { measure, place }))
      .map(({ id }) => id);
    const { effect, why, inShort, source } = judge(measure, { before, after, rows, skin, cells, adjustment, limits });
    const apart =
      togetherWith.length > 0 && effect !== "not measured"
        ? ` Made together with ${counted(togetherWith.length, "other")}, cannot be told apart.`
        : "";
    return {
      adjustmentId: adjustment.id,
      judgedOn: inWordsOf(measure),
      effect,
      why: `${why}${apart}`,
      ...(inShort === undefined ? {} : { inShort }),
      sideEffects,
      togetherWith,
      source,
    };
  });
}

function inWordsOf(measure: AnsweredMeasure): string {
  switch (measure.of) {
    case "mark":
      return `the mark ${measure.markId}`;
    case "marks":
      return "the marks at its place";
    case "feeling":
      return inWords(measure.kind);
    case "check":
      return `the check of ${inWords(measure.key)}`;
    case "motion":
      return inWords(measure.joint);
    case "displacement":
      return "displacement under load";
    case "pain":
      return "pain";
  }
}

/** Names of the cells that it acts on: those of the mark that it answers, and those of its own place. */
function cellsOf(adjustment: Adjustment, measure: AnsweredMeasure | null, skin: SkinFindings | undefined): ReadonlySet<string> {
  const hasPlace = adjustment.aspect !== undefined || adjustment.third !== undefined;
  const own = (cell: MarkCell) => hasPlace && actsOnCell(adjustment, cell);
  const answered = (cell: MarkCell) => measure?.of === "mark" && cell.markIds.includes(measure.markId);
  return new Set(skin?.cells.filter((cell) => own(cell) || answered(cell)).map(({ name }) => name));
}

/** Its own place, or else that of the mark that it answers, where that is one place. */
function placeOf(
  { aspect, third }: Adjustment,
  cells: ReadonlySet<string>,
  skin: SkinFindings | undefined,
): Pick<Adjustment, "aspect" | "third"> {
  if (aspect !== undefined || third !== undefined)
    return { ...(aspect === undefined ? {} : { aspect }), ...(third === undefined ? {} : { third }) };
  const [only, ...more] = (skin?.cells ?? []).filter(({ name }) => cells.has(name));
  if (!only?.aspect || !only.third || more.length > 0) return {};
  return { aspect: only.aspect, third: only.third };
}

function elsewhere(
  { a, b }: { a?: SkinFindings; b?: SkinFindings },
  { acts, limits }: { acts: (cell: MarkCell) => boolean; limits: Limits },
): SideEffect[] {
  if (!a || !b) return [];
  const counts = limitValue(limits, "new-mark-grades");
  return b.cells.flatMap((cell) => {
    const gradeBefore = a.cells.find(({ name }) => name === cell.name)?.grade ?? 0;
    const isNew = !acts(cell) && cell.grade - gradeBefore >= counts;
    return isNew ? [{ place: cell.name, gradeBefore, gradeAfter: cell.grade }] : [];
  });
}

interface Found {
  before: SocketFindings;
  after: SocketFindings;
  rows: readonly ComparisonRow[];
  skin: { a?: SkinFindings; b?: SkinFindings };
  cells: ReadonlySet<string>;
  adjustment: Adjustment;
  limits: Limits;
}
type Judged = Pick<AdjustmentEffect, "effect" | "why" | "inShort" | "source">;

function judge(measure: AnsweredMeasure, found: Found): Judged {
  switch (measure.of) {
    case "mark":
    case "marks":
      return onMarks(found);
    case "pain":
      return onPain(found);
    case "feeling":
      return onFeeling(measure.kind, found);
    case "check":
      return onCheck(measure.key, found);
    case "motion":
      return ofRow(found.rows.find(({ id }) => id === `motion:${measure.joint}`));
    case "displacement":
      return ofRow(found.rows.find(({ id }) => id === "displacement"));
  }
}

const notMeasured = (why: string, source: SourceId = "plain"): Judged => ({ effect: "not measured", why, source });

const effects = {
  better: "worked",
  worse: "worse",
  "within measuring error": "no detectable change",
  "not measured": "not measured",
} as const satisfies Record<ComparisonRow["outcome"], Effect>;

function ofRow(row: ComparisonRow | undefined): Judged {
  if (!row) return notMeasured("Not measured with either socket.");
  const judged = { effect: effects[row.outcome], why: row.why, source: row.source };
  return row.outcome === "not measured" || !row.a || !row.b
    ? judged
    : { ...judged, inShort: `${figure(row.a.value, 1)} → ${figure(row.b.value, 1)} ${row.unit}` };
}

function onMarks({ skin: { a, b }, cells, limits }: Found): Judged {
  if (!a || !b) return notMeasured("The skin was not looked at on the same occasion with both sockets.", "mark-grade");
  if (cells.size === 0) return notMeasured("The mark that it answers is not among those of the socket before.", "mark-grade");
  const hardest = (skin: SkinFindings) => Math.max(...skin.cells.map(({ name, grade }) => (cells.has(name) ? grade : 0)));
  const [first, second] = [hardest(a), hardest(b)];
  const counts = limitValue(limits, "grade-change");
  return {
    effect: first - second >= counts ? "worked" : second - first >= counts ? "worse" : "no detectable change",
    why: `Hardest mark there: grade ${figure(first)} before, ${figure(second)} after.`,
    inShort: `grade ${figure(first)} → ${figure(second)}`,
    source: "mark-grade",
  };
}

/** A painful mark at its place tells more than a rating of the whole limb. */
function onPain(found: Found): Judged {
  const { skin, cells, rows } = found;
  const painful = (of: SkinFindings) => {
    const here = new Set(of.cells.filter(({ name }) => cells.has(name)).flatMap(({ markIds }) => markIds));
    return of.marks.filter((mark) => mark.painful && here.has(mark.id)).length;
  };
  if (skin.a && skin.b && cells.size > 0) {
    const [first, second] = [painful(skin.a), painful(skin.b)];
    if (first + second > 0)
      return {
        effect: second < first ? "worked" : second > first ? "worse" : "no detectable change",
        why: `Painful marks there: ${figure(first)} before, ${figure(second)} after.`,
        inShort: `painful marks ${figure(first)} → ${figure(second)}`,
        source: "plain",
      };
  }
  const trial = rows.find(({ id }) => id === "pain-trial");
  return ofRow(trial?.outcome === "not measured" ? rows.find(({ id }) => id === "pain-fitting") : trial);
}

function onFeeling(kind: string, { before, after, adjustment }: Found): Judged {
  if (!before.trial || !after.trial)
    return notMeasured("What was felt is asked in a wear trial, and there was none of both sockets.");
  const times = ({ trial }: SocketFindings) =>
    (trial?.feelings ?? [])
      .filter((felt) => felt.kind === kind && meets(adjustment.aspect, felt.aspect) && meets(adjustment.third, felt.third))
      .reduce((sum, felt) => sum + felt.times, 0);
  const [first, second] = [times(before), times(after)];
  return {
    effect: first > 0 && second === 0 ? "worked" : first === 0 && second > 0 ? "worse" : "no detectable change",
    why: `${inWords(kind)} felt at ${counted(first, "check-in")} before, ${figure(second)} after.`,
    inShort: `felt at ${figure(first)} → ${figure(second)} check-ins`,
    source: "plain",
  };
}

const meets = (named: string | undefined, felt: string | undefined): boolean =>
  named === undefined || felt === undefined || named === felt;

function onCheck(key: string, { before, after, rows }: Found): Judged {
  const row = rows.find(({ id }) => id === `check:${key}`);
  if (!row) return notMeasured("That check was not done with either socket.", "common-practice");
  const answers = [before, after].map(({ checks }) => rankOfAnswer(checks?.[key as CheckKey])); // A row of that key is there, so it is one.
  if (answers.includes(null)) return notMeasured(row.why, "common-practice");
  return { ...ofRow(row), inShort: row.why.replace(/\.$/, "") };
}

/** One measure of two sockets: the difference, its error, and from where on it counts. */
import { FitInputError } from "./errors";
import { figure, isBelow } from "./figures";
import { type Limits, limitValue } from "./limits";
import type { Measured } from "./socket-findings";
import type { SourceId } from "./sources";

export type Outcome = "better" | "worse" | "within measuring error" | "not measured";

export interface ComparisonRow {
  /** As `comfort-trial`, `motion:elbow-flexion`, `check:donning`. */
  id: string;
  measure: string;
  unit: string;
  betterIs: "higher" | "lower";
  /** Of the first and of the second socket; missing where it was not measured. */
  a?: Measured;
  b?: Measured;
  /** Second less first. */
  difference?: number;
  standardError?: number;
  /** The least difference that is more than error. */
  detectable?: number;
  /** Of the second socket against the first. */
  outcome: Outcome;
  why: string;
  source: SourceId;
}

/** Two-sided 95 % of the normal distribution. */
export const z95 = 1.96;
type Direction = Pick<ComparisonRow, "id" | "measure" | "unit" | "betterIs" | "source">;
/** From what difference on it counts: beyond its own error, or by a limit that the field has for it. */
type CountsFrom = (found: { a: Measured; b: Measured; limits: Limits }) => number;
export interface Compared extends Direction {
  a: Measured | undefined;
  b: Measured | undefined;
  countsFrom: CountsFrom;
  limits: Limits;
  /** Said after the figures. */
  remark?: string;
}

export const beyondError: CountsFrom = ({ a, b }) => z95 * Math.hypot(a.standardError ?? 0, b.standardError ?? 0);

export const measures = {
  comfort: {
    unit: "of 10",
    betterIs: "higher",
    source: "hafner-2022",
    countsFrom: ({ limits }) => limitValue(limits, "comfort-change"),
  },
  pain: {
    unit: "of 10",
    betterIs: "lower",
    source: "farrar-2001",
    countsFrom: ({ a, limits }) => {
      const points = limitValue(limits, "pain-change");
      const share = (limitValue(limits, "pain-change-percent") / 100) * a.value;
      return share > 0 ? Math.min(points, share) : points;
    },
  },
  motion: { unit: "°", betterIs: "lower", source: "goniometer-error", countsFrom: beyondError },
  mark: {
    id: "hardest-mark",
    measure: "hardest mark at the first look",
    unit: "grade",
    betterIs: "lower",
    source: "mark-grade",
    countsFrom: ({ limits }) => limitValue(limits, "grade-change"),
  },
  evenness: {
    id: "evenness-around",
    measure: "evenness of marks around",
    unit: "of 1",
    betterIs: "higher",
    source: "pielou-1966",
    countsFrom: ({ limits }) => limitValue(limits, "evenness-change"),
    remark: "Without a mark it is 1.",
  },
  stopSigns: {
    id: "stop-signs",
    measure: "stop signs in the trial",
    unit: "stop signs",
    betterIs: "lower",
    source: "stop-signs",
    countsFrom: () => 1,
  },
  index: {
    id: "index",
    measure: "index",
    unit: "of 1",
    betterIs: "higher",
    source: "derringer-suich-1980",
    countsFrom: beyondError,
    remark: "The index decides nothing.",
  },
} as const satisfies Record<string, Partial<Compared>>;

export const rated = (value: number | undefined): Measured | undefined => (value === undefined ? undefined : { value });

export function compare({ a, b, countsFrom, limits, remark, ...direction }: Compared): ComparisonRow {
  const found = { ...direction, ...(a ? { a } : {}), ...(b ? { b } : {}) };
  for (const [name, measured] of Object.entries({ a, b }))
    if (measured && !(Number.isFinite(measured.value) && (measured.standardError ?? 0) >= 0))
      throw new FitInputError(`${name}.${direction.id}`, "expected a finite number");
  if (!a || !b) return { ...found, outcome: "not measured", why: missing(a, b) };
  const difference = b.value - a.value;
  const detectable = countsFrom({ a, b, limits });
  const known = a.standardError !== undefined || b.standardError !== undefined;
  const outcome = outcomeOf(difference, { detectable, betterIs: direction.betterIs });
  const sign = difference > 0 ? "+" : "";
  const why = `${figure(a.value)} → ${figure(b.value)}: ${sign}${figure(difference)} ${direction.unit}; ${outcome === "within measuring error" ? "less than" : "at least"} the ${figure(detectable)} that count.`;
  return {
    ...found,
    difference,
    ...(known ? { standardError: Math.hypot(a.standardError ?? 0, b.standardError ?? 0) } : {}),
    detectable,
    outcome,
    why: remark === undefined ? why : `${why} ${remark}`,
  };
}

export function outcomeOf(
  difference: number,
  { detectable, betterIs }: { detectable: number; betterIs: "higher" | "lower" },
): Exclude<Outcome, "not measured"> {
  if (difference === 0 || isBelow(Math.abs(difference), detectable)) return "within measuring error";
  return difference > 0 === (betterIs === "higher") ? "better" : "worse";
}

const missing = (a: unknown, b: unknown): string =>
  a === undefined && b === undefined
    ? "Not measured with either socket."
    : `Not measured with the ${a === undefined ? "first" : "second"} socket.`;

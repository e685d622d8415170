/** Two to four check sockets beside each other, measure by measure. */
import type { Bundle } from "./bundle";
import type { ComparisonRow } from "./compare-measures";
import { compareSockets } from "./compare-sockets";
import { FitInputError } from "./errors";
import { defaultLimits, type Limits } from "./limits";
import { findingsOfSocket, type Measured, type SocketFindings } from "./socket-findings";
import type { CheckAnswer } from "./words";

export const fewestSockets = 2;
export const mostSockets = 4;

/** Which socket each is held against: the one before it among those chosen, or the first of them. */
export type Against = "before" | "first";

export interface ChosenSocket {
  bundle: Bundle;
  socketId: string;
}

export interface ComparedCell {
  /** Missing where it was not measured. */
  measured?: Measured;
  /** Of a check. */
  answer?: CheckAnswer;
  /** Missing for the first column, and for one that has none of its own episode to be held against. */
  against?: { column: number; row: ComparisonRow };
}

export type Standing = "differs" | "alike" | "not compared";

export interface ComparedRow extends Pick<ComparisonRow, "id" | "measure" | "unit" | "betterIs" | "source"> {
  /** A cell a column. */
  cells: ComparedCell[];
  /** *Differs* where some column is better or worse than the one that it is held against. */
  standing: Standing;
}

export interface ComparedColumn {
  episodeId: string;
  findings: SocketFindings;
}

export interface SocketsCompared {
  /** Episode by episode as they were given, each in the order of making. */
  columns: ComparedColumn[];
  /** Rows that differ first, then those that are alike, then those of which nothing could be compared; the index last of each. */
  rows: ComparedRow[];
}

/**
 * Compares two to four sockets pair by pair, as `compareSockets` does. What the skin showed has a row for each occasion,
 * so that a look after a fitting is never held against one after a trial. Sockets of different episodes are shown and
 * not compared: another limb, or another time.
 *
 * @throws FitInputError where there are fewer than two or more than four, or one twice
 * @source plain
 */
export function compareSeveral(
  chosen: readonly ChosenSocket[],
  { against = "before", limits = defaultLimits, asOf }: { against?: Against; limits?: Limits; asOf?: string } = {},
): SocketsCompared {
  if (chosen.length < fewestSockets || chosen.length > mostSockets)
    throw new FitInputError("chosen", `expected ${fewestSockets} to ${mostSockets} sockets`);
  if (new Set(chosen.map(({ socketId }) => socketId)).size < chosen.length)
    throw new FitInputError("chosen", "expected each socket once");
  const columns = inOrder(
    chosen.map(({ bundle, socketId }) => ({
      episodeId: bundle.episode.id,
      findings: findingsOfSocket(bundle, socketId, { limits, asOf: asOf ?? bundle.asOf }),
    })),
  );
  const beside = columns.map(({ episodeId }, column) => {
    const own = columns.slice(0, column).flatMap((other, at) => (other.episodeId === episodeId ? [at] : []));
    return against === "first" ? own[0] : own.at(-1);
  });
  const alone = columns.map(({ findings }) => rowsBetween(findings, findings, limits));
  const pairs = columns.map(({ findings }, column) => {
    const other = columns[beside[column] ?? -1];
    return other ? rowsBetween(other.findings, findings, limits) : [];
  });
  const named = new Map([...alone, ...pairs].flat().map((row) => [row.id, row]));
  const rows = [...named.values()].map(({ id, measure, unit, betterIs, source }): ComparedRow => {
    const cells = columns.map(({ findings }, column): ComparedCell => {
      const measured = alone[column]?.find((row) => row.id === id)?.a;
      const answer = answerOf(findings, id);
      const row = pairs[column]?.find((pair) => pair.id === id);
      const held = beside[column];
      return {
        ...(measured ? { measured } : {}),
        ...(answer ? { answer } : {}),
        ...(row && held !== undefined ? { against: { column: held, row } } : {}),
      };
    });
    return { id, measure, unit, betterIs, source, cells, standing: standingOf(cells) };
  });
  return { columns, rows: rows.sort((a, b) => rankOf(a) - rankOf(b)) };
}

/** Episodes as they come, the sockets of each by number. */
function inOrder(columns: readonly ComparedColumn[]): ComparedColumn[] {
  const episodes = [...new Set(columns.map(({ episodeId }) => episodeId))];
  return columns.toSorted(
    (a, b) => episodes.indexOf(a.episodeId) - episodes.indexOf(b.episodeId) || a.findings.number - b.findings.number,
  );
}

export const occasions = [
  { key: "fitting", words: "at the fitting" },
  { key: "trial", words: "after the trial" },
] as const;
export type Occasion = (typeof occasions)[number]["key"];

const ofSkin: Readonly<Record<string, string>> = {
  "hardest-mark": "hardest mark",
  "longest-fade": "longest fading of a mark",
  "evenness-around": "evenness of marks around",
};

/** The rows of a pair, those of the skin once for each occasion. */
function rowsBetween(a: SocketFindings, b: SocketFindings, limits: Limits): ComparisonRow[] {
  const skin = occasions.flatMap(({ key, words }) => {
    const missing = [...new Set([a, b].filter((found) => !found[key]?.skin).map(({ number }) => `socket ${number}`))].join(
      " and ",
    );
    const why = missing === "" ? {} : { why: `The skin was not looked at ${words} with ${missing}.` };
    return compareSockets(skinOnlyOf(a, key), skinOnlyOf(b, key), limits).flatMap((row): ComparisonRow[] => {
      const measure = ofSkin[row.id];
      return measure ? [{ ...row, id: `${row.id}-${key}`, measure: `${measure} ${words}`, ...why }] : [];
    });
  });
  return [...compareSockets(a, b, limits).filter(({ id }) => !(id in ofSkin)), ...skin];
}

/** What the skin showed on one occasion, and nothing else. */
function skinOnlyOf({ socketId, number, fitting, trial }: SocketFindings, occasion: Occasion): SocketFindings {
  const skin = occasion === "fitting" ? fitting?.skin : trial?.skin;
  if (!skin) return { socketId, number };
  return {
    socketId,
    number,
    ...(occasion === "fitting" ? { fitting: { skin } } : { trial: { stopSigns: 0, feelings: [], skin } }),
  };
}

function answerOf({ checks = {} }: SocketFindings, rowId: string): CheckAnswer | undefined {
  const key = rowId.split(":");
  return Object.entries(checks).find(([name]) => key[0] === "check" && name === key[1])?.[1];
}

function standingOf(cells: readonly ComparedCell[]): Standing {
  const outcomes = cells.flatMap(({ against }) => (against ? [against.row.outcome] : []));
  if (outcomes.some((outcome) => outcome === "better" || outcome === "worse")) return "differs";
  return outcomes.includes("within measuring error") ? "alike" : "not compared";
}

const standings: readonly Standing[] = ["differs", "alike", "not compared"];
/** What forbids first, then what a wearer feels, then what the skin shows, then what was measured; the index decides nothing. */
const measuresInOrder = [
  "stop-signs",
  "pain-trial",
  "comfort-trial",
  "pain-fitting",
  "comfort-fitting",
  "hardest-mark-trial",
  "longest-fade-trial",
  "evenness-around-trial",
  "hardest-mark-fitting",
  "longest-fade-fitting",
  "evenness-around-fitting",
  "displacement",
  "motion",
  "check",
  "index",
];
const rankOf = ({ id, standing }: ComparedRow): number =>
  standings.indexOf(standing) * measuresInOrder.length + measuresInOrder.indexOf(id.split(":")[0] ?? "");

/** After which occasion the skin of the most columns was looked at; after a trial, where as many were. */
export function skinOccasion(columns: readonly ComparedColumn[]): Occasion {
  const looked = (occasion: Occasion) => columns.filter(({ findings }) => findings[occasion]?.skin).length;
  return looked("fitting") > looked("trial") ? "fitting" : "trial";
}

/** A comparison as lines of a table for a spreadsheet: one line a finding, an adjustment, a place or a level of a socket. */
import { adjustmentWords } from "@/app/_parts/adjustment-words";
import type { ComparisonRow, MarkFate } from "@/lib/fit";
import { effectOf } from "../../series";
import type { Comparison } from "../comparison";

export const csvColumns = [
  "about",
  "what",
  "unit",
  "socket",
  "value",
  "standard error",
  "compared with",
  "difference",
  "error of difference",
  "counts from",
  "outcome",
  "why",
] as const;
export type CsvLine = Partial<Record<(typeof csvColumns)[number], string | number>>;

export function csvLines(comparison: Comparison): CsvLine[] {
  return [...adjustmentLines(comparison), ...measureLines(comparison), ...placeLines(comparison), ...levelLines(comparison)];
}

function adjustmentLines({ steps, series }: Comparison): CsvLine[] {
  const shown = new Map(
    steps.flatMap(({ between }) => [...between.otherSteps, ...between.steps]).map((step) => [step.toId, step]),
  );
  return [
    ...steps.map(({ from, to, limb }) => ({
      about: "limb",
      what: "change of the limb's volume",
      unit: "percent",
      socket: to.name,
      "compared with": from.name,
      difference: limb.percent,
      "error of difference": limb.standardErrorPercent,
      outcome: limb.state,
      why: limb.why,
    })),
    ...[...shown.values()].flatMap(({ adjustments, fromNumber, toNumber }) =>
      adjustments.map((adjustment) => {
        const effect = effectOf(series, adjustment.id);
        return {
          about: "adjustment",
          what: adjustmentWords(adjustment),
          socket: `Socket ${toNumber}`,
          "compared with": `Socket ${fromNumber}`,
          outcome: effect?.effect ?? "not tried yet",
          why: [`For: ${adjustment.reason}.`, effect?.why].filter(Boolean).join(" "),
        };
      }),
    ),
    ...[...shown.values()].flatMap(({ sideEffects, fromNumber, toNumber }) =>
      sideEffects.map(({ place, gradeBefore, gradeAfter }) => ({
        about: "mark elsewhere",
        what: place,
        unit: "grade",
        socket: `Socket ${toNumber}`,
        value: gradeAfter,
        "compared with": `Socket ${fromNumber}`,
        difference: gradeAfter - gradeBefore,
        outcome: "worse",
      })),
    ),
  ].map(known);
}

const measureLines = ({ rows, sockets }: Comparison): CsvLine[] =>
  rows.flatMap(({ id, measure, unit, cells }) =>
    cells.map(({ measured, answer, against }, column) =>
      known({
        about: id === "index" ? "index, which decides nothing" : "measure",
        what: measure,
        unit: id.startsWith("check:") ? "" : unit,
        socket: sockets[column]?.name,
        value: answer ?? measured?.value ?? "not measured",
        "standard error": measured?.standardError,
        ...(against ? outcomeOf(against.row, sockets[against.column]?.name) : {}),
      }),
    ),
  );

const outcomeOf = ({ difference, standardError, detectable, outcome, why }: ComparisonRow, comparedWith: string | undefined) => ({
  "compared with": comparedWith,
  difference,
  "error of difference": standardError,
  "counts from": detectable,
  outcome,
  why,
});

const fates: Record<MarkFate, string> = { gone: "gone", fainter: "fainter", same: "the same", harder: "harder", new: "new" };

const placeLines = ({ places, sockets, occasion }: Comparison): CsvLine[] => {
  const own = sockets.filter((socket) => socket.own);
  return places.flatMap(({ name, sockets: cells }) =>
    cells.map((cell, column) =>
      known({
        about: `skin after the ${occasion}`,
        what: `place ${name}`,
        unit: "grade",
        socket: own[column]?.name,
        value: cell?.grade ?? "not looked at",
        outcome: cell?.fate && fates[cell.fate],
      }),
    ),
  );
};

const levelLines = ({ dimensions: { levels, columns } }: Comparison): CsvLine[] =>
  levels.flatMap(({ distanceMm, sockets }) =>
    sockets.flatMap(({ circumferenceMm, interpolated, compressionPercent, standardErrorPercent }, column) => {
      const socket = `Socket ${columns[column]?.number}`;
      const inside = known({
        about: "inside circumference",
        what: `at ${distanceMm} mm`,
        unit: "mm",
        socket,
        value: circumferenceMm ?? "no level there",
        why: interpolated ? "Lies between two of its levels." : undefined,
      });
      if (compressionPercent === undefined) return [inside];
      const compression = {
        about: "compression of the limb",
        what: `at ${distanceMm} mm`,
        unit: "percent",
        socket,
        value: compressionPercent,
        "standard error": standardErrorPercent,
      };
      return [inside, known(compression)];
    }),
  );

/** A cell of which nothing is known stays empty. */
const known = (line: Record<string, string | number | undefined>): CsvLine =>
  Object.fromEntries(Object.entries(line).filter(([, value]) => value !== undefined));

/** The next socket as it is being designed: what the adjustments make of the one before, level by level. */
import type { FormValues } from "@/app/_parts/form-state";
import type { Station } from "@/lib/fit/bundle";
import { FitInputError } from "@/lib/fit/errors";
import { type ExplainedLevel, explainDimensions, type Shaping, type WhereThirdsLie } from "@/lib/fit/explain-dimensions";
import { fitByLevel } from "@/lib/fit/fit-by-level";
import { type Limits, limitValue } from "@/lib/fit/limits";
import { circumferenceAt } from "@/lib/fit/stations";
import { adjustmentKinds, adjustmentUnits, aspects, thirds } from "@/lib/fit/words";

/** Reads "−2", "1,5" as the store does; what is no number yet shapes nothing. */
const amountOf = (typed: string): number | undefined => {
  const text = typed.trim().replace("−", "-").replace(",", ".");
  return /^[-+]?\d+(?:\.\d+)?$/.test(text) ? Number(text) : undefined;
};

const wordOf = <Word extends string>(words: readonly Word[], typed: unknown): Word | undefined =>
  words.find((word) => word === typed);

/** The adjustments that are whole enough to shape something. */
export function shapingOf(values: FormValues, rows: readonly number[]): Shaping[] {
  return rows.flatMap((row): Shaping[] => {
    const field = (name: string): unknown => values[`adjustments.${row}.${name}`];
    const kind = wordOf(adjustmentKinds, field("kind"));
    const amount = amountOf(String(field("amount") ?? ""));
    if (kind === undefined || amount === undefined || Math.abs(amount) > 200) return [];
    const unit = wordOf(adjustmentUnits, field("unit"));
    const aspect = wordOf(aspects, field("aspect"));
    // A relief is on one aspect, and its kind says the direction: anything else is refused when it is saved.
    if ((kind === "relief" || kind === "build-up") && unit === "mm" && (aspect === undefined || amount < 0)) return [];
    return [{ kind, amount, unit, aspect, third: wordOf(thirds, field("third")) }];
  });
}

export interface DesignRow {
  row: number;
  distanceMm: number | undefined;
  /** What was typed; null as long as the proposal is followed, undefined where it is no number. */
  own: number | undefined | null;
}

export interface DesignLevel {
  row: number;
  distanceMm?: number;
  limbMm?: number;
  previousMm?: number;
  /** To 0.1 mm; missing where the socket before has no level there. */
  proposedMm?: number;
  /** What the socket is to have here: typed, else proposed. */
  circumferenceMm?: number;
  compressionPercent?: number;
  /** Actual less expected, where it is more than the adjustments explain. */
  unexplainedMm?: number;
}

export interface Design {
  levels: DesignLevel[];
  /** Along the limb, for drawing and comparing. */
  stations: Station[];
  /** Every level of either socket that the adjustments do not explain. */
  unexplained: { distanceMm: number; differenceMm: number }[];
  /** Why nothing can be proposed or compared. */
  problem?: string;
}

interface Asked {
  rows: readonly DesignRow[];
  /** What the adjustments change: the socket before or, for a first one, the limb. */
  base: readonly Station[];
  /** The socket before; empty for a first one, whose dimensions nothing has to explain. */
  previous: readonly Station[];
  limb: readonly Station[];
  adjustments: readonly Shaping[];
  where: WhereThirdsLie;
  limits: Limits;
}

const toTenth = (mm: number): number => Math.round(mm * 10) / 10;
const leastMm = 30;

export function designOf({ rows, base, previous, limb, adjustments, where, limits }: Asked): Design {
  const placed = rows
    .flatMap((entry) => (entry.distanceMm === undefined ? [] : [{ ...entry, distanceMm: entry.distanceMm }]))
    .filter(({ distanceMm }) => Math.abs(distanceMm) <= 1000)
    .sort((a, b) => a.distanceMm - b.distanceMm);
  const twice = placed.find(({ distanceMm }, index) => placed[index - 1]?.distanceMm === distanceMm);
  if (twice) return { ...bare(rows), problem: `The level at ${twice.distanceMm} mm is there twice.` };
  try {
    const expected = explain(
      base,
      placed.map(({ distanceMm }) => distanceMm),
      { adjustments, where, limits },
    );
    const actual = placed.flatMap(({ row, distanceMm, own }): (Station & { row: number })[] => {
      const proposed = expected.get(distanceMm);
      const circumferenceMm = own === null ? (proposed === undefined ? undefined : toTenth(proposed)) : own;
      return circumferenceMm !== undefined && circumferenceMm >= leastMm && circumferenceMm <= 1200
        ? [{ row, distanceMm, circumferenceMm }]
        : [];
    });
    const stations = actual.map(({ distanceMm, circumferenceMm }) => ({ distanceMm, circumferenceMm }));
    const explained =
      previous.length > 0 && stations.length > 0 ? explainDimensions(previous, stations, adjustments, { ...where, limits }) : [];
    const pressed = compressionOf(limb, stations, limits);
    const emptied = [...expected.values()].some((mm) => mm < leastMm);
    return {
      levels: rows.map((entry) => levelOf(entry, { expected, stations, explained, pressed, limb, previous })),
      stations,
      unexplained: explained
        .filter((level) => level.unexplained)
        .map(({ distanceMm, differenceMm }) => ({ distanceMm, differenceMm })),
      ...(emptied ? { problem: "The adjustments leave next to nothing of the socket: look at their amounts." } : {}),
    };
  } catch (error) {
    if (error instanceof FitInputError) return { ...bare(rows), problem: `Nothing can be worked out: ${error.expected}.` };
    throw error;
  }
}

const bare = (rows: readonly DesignRow[]): Design => ({
  levels: rows.map(({ row, distanceMm, own }) => ({
    row,
    ...(distanceMm === undefined ? {} : { distanceMm }),
    ...(typeof own === "number" ? { circumferenceMm: own } : {}),
  })),
  stations: [],
  unexplained: [],
});

interface Explaining {
  adjustments: readonly Shaping[];
  where: WhereThirdsLie;
  limits: Limits;
}

/** What the adjustments make of the base at each distance that it covers. */
function explain(base: readonly Station[], distances: readonly number[], { adjustments, where, limits }: Explaining) {
  const unchanged = distances.flatMap((distanceMm) => {
    const circumferenceMm = circumferenceAt(base, distanceMm);
    return circumferenceMm === undefined ? [] : [{ distanceMm, circumferenceMm }];
  });
  if (unchanged.length === 0) return new Map<number, number>();
  const levels = explainDimensions(base, unchanged, adjustments, { ...where, limits });
  return new Map(levels.map(({ distanceMm, expectedMm }) => [distanceMm, expectedMm]));
}

function compressionOf(limb: readonly Station[], stations: readonly Station[], limits: Limits): Map<number, number> {
  const [first, last] = [limb[0], limb.at(-1)];
  const [start, end] = [stations[0], stations.at(-1)];
  if (!first || !last || !start || !end || limb.length < 2 || stations.length < 2) return new Map();
  if (start.distanceMm >= last.distanceMm || end.distanceMm <= first.distanceMm) return new Map();
  const { levels } = fitByLevel(limb, stations, { circumferenceSdMm: limitValue(limits, "tape-error-mm") });
  return new Map(levels.map(({ distanceMm, compressionPercent }) => [distanceMm, compressionPercent]));
}

interface Known {
  expected: ReadonlyMap<number, number>;
  stations: readonly Station[];
  explained: readonly ExplainedLevel[];
  pressed: ReadonlyMap<number, number>;
  limb: readonly Station[];
  previous: readonly Station[];
}

function levelOf({ row, distanceMm }: DesignRow, { expected, stations, explained, pressed, limb, previous }: Known): DesignLevel {
  if (distanceMm === undefined) return { row };
  const level = explained.find((entry) => entry.distanceMm === distanceMm);
  const proposedMm = expected.get(distanceMm);
  return {
    row,
    distanceMm,
    ...given("limbMm", circumferenceAt(limb, distanceMm)),
    ...given("previousMm", circumferenceAt(previous, distanceMm)),
    ...given("proposedMm", proposedMm === undefined ? undefined : toTenth(proposedMm)),
    ...given("circumferenceMm", stations.find((station) => station.distanceMm === distanceMm)?.circumferenceMm),
    ...given("compressionPercent", pressed.get(distanceMm)),
    ...given("unexplainedMm", level?.unexplained ? level.differenceMm : undefined),
  };
}

/** A field that is there only where there is something in it. */
const given = <Name extends string>(name: Name, value: number | undefined): { [Key in Name]?: number } =>
  // A computed name is no literal type to the compiler.
  value === undefined ? {} : ({ [name]: value } as { [Key in Name]: number });

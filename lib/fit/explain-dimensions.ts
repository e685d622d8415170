/** Do a socket's dimensions follow from the one before and from the adjustments between them? */
import type { Adjustment, EpisodeRecord, Station } from "./bundle";
import { FitInputError } from "./errors";
import { isAbove } from "./figures";
import { defaultLimits, type Limits, limitValue } from "./limits";
import { checkStations, circumferenceAt, spanOf } from "./stations";
import { type Third, thirds } from "./words";

/** What of an adjustment changes a circumference. */
export type Shaping = Pick<Adjustment, "kind"> & {
  [Key in "aspect" | "third" | "amount" | "unit"]?: Adjustment[Key] | undefined;
};

type Dimensions = readonly Station[] | { stations: readonly Station[] };

export interface WhereThirdsLie {
  /** From where the distances run. */
  stationsFrom?: EpisodeRecord["stationsFrom"];
  /** Without it, the thirds are those of the length that the stations cover. */
  limbLengthMm?: number;
}

export interface ExplainedLevel {
  distanceMm: number;
  expectedMm: number;
  actualMm: number;
  differenceMm: number;
  /** Differs by more than the limit: somebody changed what no adjustment says. */
  unexplained: boolean;
}

/**
 * At every level that both sockets cover: the circumference that the adjustments make of the earlier socket, the one
 * that the later socket has, and the difference.
 *
 * @param adjustments that lead from the earlier to the later socket; amounts in their own unit
 * @throws FitInputError where a station is wrong, or an amount not finite
 * @source raised-cosine
 *
 * @example
 * explainDimensions([{ distanceMm: 0, circumferenceMm: 200 }], [{ distanceMm: 0, circumferenceMm: 201 }], [{ kind: "volume", amount: 2, unit: "percent" }])
 * // => [{ distanceMm: 0, expectedMm: 201.99, actualMm: 201, differenceMm: -0.99, unexplained: false }]
 */
export function explainDimensions(
  previous: Dimensions,
  next: Dimensions,
  adjustments: readonly Shaping[],
  { limits = defaultLimits, ...where }: WhereThirdsLie & { limits?: Limits } = {},
): ExplainedLevel[] {
  const [before, after] = [stationsOf(previous, "previous"), stationsOf(next, "next")];
  const limitMm = limitValue(limits, "unexplained-mm");
  checkAmounts(adjustments);
  const thirdAt = thirdsOf(before, where);
  return levelsOf(before, after).flatMap((distanceMm) => {
    const unchangedMm = circumferenceAt(before, distanceMm);
    const actualMm = circumferenceAt(after, distanceMm);
    if (unchangedMm === undefined || actualMm === undefined) return [];
    const expectedMm = reshape({ distanceMm, circumferenceMm: unchangedMm }, adjustments, thirdAt);
    const differenceMm = actualMm - expectedMm;
    return [{ distanceMm, expectedMm, actualMm, differenceMm, unexplained: isAbove(Math.abs(differenceMm), limitMm) }];
  });
}

/**
 * Starting values for the next socket: what the adjustments make of the dimensions of this one.
 *
 * A volume change of v % scales circumferences by √(1 + v/100). A relief or build-up of depth a on one aspect is a raised
 * cosine over a quarter turn: ΔC = ±a·π/4, to first order, at the levels of its third, or at all where none is named.
 * What moves an edge, a length or a strap changes no circumference.
 *
 * @param adjustments volume in percent; relief and build-up in mm, of which the kind and not the sign says the direction
 * @throws FitInputError where a station is wrong, an amount not finite, or nothing would be left
 * @source raised-cosine
 *
 * @example
 * proposeDimensions([{ distanceMm: 0, circumferenceMm: 200 }], [{ kind: "relief", aspect: "anterior", amount: 3, unit: "mm" }])
 * // => [{ distanceMm: 0, circumferenceMm: 202.3562 }]
 */
export function proposeDimensions(previous: Dimensions, adjustments: readonly Shaping[], where: WhereThirdsLie = {}): Station[] {
  const stations = stationsOf(previous, "previous");
  checkAmounts(adjustments);
  const thirdAt = thirdsOf(stations, where);
  return stations.map((station, index) => {
    const circumferenceMm = reshape(station, adjustments, thirdAt);
    if (!(circumferenceMm > 0)) throw new FitInputError("adjustments", `they leave nothing of the socket at station ${index}`);
    return { distanceMm: station.distanceMm, circumferenceMm };
  });
}

function checkAmounts(adjustments: readonly Shaping[]): void {
  adjustments.forEach(({ amount }, index) => {
    if (amount !== undefined && !(Math.abs(amount) <= 500))
      throw new FitInputError(`adjustments[${index}].amount`, "expected −500 to 500");
  });
}

type ThirdAt = (distanceMm: number) => Third;

function reshape({ distanceMm, circumferenceMm }: Station, adjustments: readonly Shaping[], thirdAt: ThirdAt): number {
  const here = adjustments.filter(({ third }) => third === undefined || third === thirdAt(distanceMm));
  const scaled = here.reduce(
    (mm, { kind, amount = 0, unit }) =>
      kind === "volume" && unit === "percent" ? mm * Math.sqrt(Math.max(0, 1 + amount / 100)) : mm,
    circumferenceMm,
  );
  return here.reduce((mm, adjustment) => mm + localChangeMm(adjustment), scaled);
}

function localChangeMm({ kind, amount = 0, unit }: Shaping): number {
  if (unit !== "mm" || (kind !== "relief" && kind !== "build-up")) return 0;
  const changeMm = (Math.abs(amount) * Math.PI) / 4;
  return kind === "relief" ? changeMm : -changeMm;
}

function thirdsOf(stations: readonly Station[], { stationsFrom = "distal end", limbLengthMm }: WhereThirdsLie): ThirdAt {
  const { fromMm, toMm } = spanOf(stations);
  const [startMm, lengthMm] = limbLengthMm === undefined ? [fromMm, toMm - fromMm] : [0, limbLengthMm];
  const fromOrigin: readonly Third[] = stationsFrom === "distal end" ? thirds.toReversed() : thirds;
  return (distanceMm) => {
    const part = lengthMm > 0 ? Math.floor((3 * (distanceMm - startMm)) / lengthMm) : 0;
    return fromOrigin[Math.min(2, Math.max(0, part))] ?? "middle";
  };
}

function levelsOf(before: readonly Station[], after: readonly Station[]): number[] {
  const [first, last] = [spanOf(before), spanOf(after)];
  const [fromMm, toMm] = [Math.max(first.fromMm, last.fromMm), Math.min(first.toMm, last.toMm)];
  const levels = [...before, ...after].map(({ distanceMm }) => distanceMm);
  return [...new Set(levels.filter((distanceMm) => distanceMm >= fromMm && distanceMm <= toMm))].sort((a, b) => a - b);
}

function stationsOf(dimensions: Dimensions, path: string): readonly Station[] {
  const stations = "stations" in dimensions ? dimensions.stations : dimensions;
  checkStations(stations, path, 0);
  return stations;
}

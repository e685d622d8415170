/** Inside dimensions of several check sockets by level, beside each other and over the limb. */
import type { Bundle, CheckSocket, LimbMeasurement } from "./bundle";
import { FitInputError } from "./errors";
import { counted } from "./figures";
import { fitByLevel } from "./fit-by-level";
import { lastWornMs, limbAtSocket } from "./limb-between-sockets";
import { defaultLimits, type Limits, limitValue } from "./limits";
import { circumferenceAt, commonSpan } from "./stations";

export interface SocketAtLevel {
  /** Missing where the socket has no length there. */
  circumferenceMm?: number;
  /** On a straight line between two of its levels, rather than specified. */
  interpolated: boolean;
  /** Of the limb when that socket was worn; above 0 where the socket is the tighter. */
  compressionPercent?: number;
  standardErrorPercent?: number;
}

export interface LevelBeside {
  distanceMm: number;
  /** A socket a column. */
  sockets: SocketAtLevel[];
}

export interface DimensionsBeside {
  columns: {
    socketId: string;
    number: number;
    /** The measurement that belongs to it: see `limbAtSocket`. */
    limb?: LimbMeasurement;
  }[];
  /** Every level that one of them is specified at, by distance. */
  levels: LevelBeside[];
  /** What cannot be said, and why. */
  notes: string[];
}

/**
 * The sockets' inside circumferences at every level that one of them has, by straight lines between levels, and how much
 * tighter each is than the limb was by the measurement that belongs to it.
 *
 * @param socketIds of one episode
 * @throws FitInputError where there is no socket of an id
 * @source plain
 */
export function dimensionsBeside(
  bundle: Bundle,
  socketIds: readonly string[],
  { limits = defaultLimits, asOf = bundle.asOf }: { limits?: Limits; asOf?: string } = {},
): DimensionsBeside {
  const sockets = socketIds.map((socketId): CheckSocket => {
    const found = bundle.sockets.find(({ id }) => id === socketId);
    if (!found) throw new FitInputError("socketIds", `no socket has the id ${socketId}`);
    return found;
  });
  const limbs = sockets.map(({ id }) => limbAtSocket(bundle, id, { limits, asOf }));
  const circumferenceSdMm = limitValue(limits, "tape-error-mm");
  const fits = sockets.map(({ stations }, column) => {
    const limb = limbs[column];
    if (!limb || stations.length < 2 || limb.stations.length < 2 || !commonSpan(limb.stations, stations)) return [];
    return fitByLevel(limb.stations, stations, { circumferenceSdMm }).levels;
  });
  const distances = [...new Set(sockets.flatMap(({ stations }) => stations.map(({ distanceMm }) => distanceMm)))];
  const levels = distances
    .sort((a, b) => a - b)
    .map(
      (distanceMm): LevelBeside => ({
        distanceMm,
        sockets: sockets.map(({ stations }, column): SocketAtLevel => {
          const circumferenceMm = circumferenceAt(stations, distanceMm);
          const fit = fits[column]?.find((level) => level.distanceMm === distanceMm);
          return {
            ...(circumferenceMm === undefined ? {} : { circumferenceMm }),
            interpolated: circumferenceMm !== undefined && !stations.some((station) => station.distanceMm === distanceMm),
            ...(fit ? { compressionPercent: fit.compressionPercent, standardErrorPercent: fit.standardErrorPercent } : {}),
          };
        }),
      }),
    );
  return {
    columns: sockets.map(({ id, number }, column) => {
      const limb = limbs[column];
      return { socketId: id, number, ...(limb ? { limb } : {}) };
    }),
    levels,
    notes: notesOn({ bundle, sockets, limbs, levels, fits, days: limitValue(limits, "limb-measured-days"), asOf }),
  };
}

interface Noted {
  bundle: Bundle;
  sockets: readonly CheckSocket[];
  limbs: readonly (LimbMeasurement | undefined)[];
  levels: readonly LevelBeside[];
  fits: readonly (readonly unknown[])[];
  days: number;
  asOf: string;
}

function notesOn({ bundle, sockets, limbs, levels, fits, days, asOf }: Noted): string[] {
  const described = sockets.filter(({ stations }) => stations.length > 0);
  const otherLevels = described.some(({ stations }) => stations.length !== levels.length);
  return [
    ...sockets
      .filter(({ stations }) => stations.length === 0)
      .map(({ number }) => `No inside dimensions of socket ${number} are recorded.`),
    ...(described.length > 1 && otherLevels
      ? ["They are not specified at the same levels: what lies between two levels of a socket is taken on a straight line."]
      : []),
    ...sockets.flatMap(({ id, number, stations }, column): string[] => {
      if (stations.length === 0) return [];
      if (!limbs[column])
        return [
          lastWornMs(bundle, id, { asOf }) === undefined
            ? `Socket ${number} names no measurement that it was made from and was never worn: its compression of the limb is not known.`
            : `The limb was not measured within ${counted(days, "day")} of socket ${number} being worn: its compression of the limb is not known.`,
        ];
      return fits[column]?.length === 0 ? [`The limb was measured at no length that socket ${number} covers.`] : [];
    }),
  ];
}

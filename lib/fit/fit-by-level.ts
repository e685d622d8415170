/** The socket against the limb, level by level. Shown and never gated: what is right differs by design. */
import type { Station } from "./bundle";
import { FitInputError } from "./errors";
import { figure } from "./figures";
import { volumeBetween } from "./limb-volume";
import { defaultLimits, limitValue } from "./limits";
import { checkStations, circumferenceAt, commonSpan, type Span } from "./stations";

export interface LevelFit {
  distanceMm: number;
  limbMm: number;
  socketMm: number;
  /** Above 0 where the socket is the tighter. */
  compressionPercent: number;
  /** From the tape's error of the limb's circumference; the socket's is taken as specified. */
  standardErrorPercent: number;
}

export interface FitByLevel extends Span {
  levels: LevelFit[];
  /** Volume of the socket over that of the limb, between the first and the last level that both have. */
  volumeRatio: number;
  why: string;
  source: "plain";
}

/**
 * Compression at each level that both cover, % = 100·(C_limb − C_socket)/C_limb, by straight lines between stations, and
 * the ratio of the volumes over the common span.
 *
 * @param limbStations in mm
 * @param socketStations the socket's inside dimensions, from the same landmark
 * @throws FitInputError where a station is wrong, or the two have no length in common
 * @source plain
 *
 * @example
 * fitByLevel([{ distanceMm: 0, circumferenceMm: 200 }, { distanceMm: 100, circumferenceMm: 240 }], [{ distanceMm: 0, circumferenceMm: 194 }, { distanceMm: 100, circumferenceMm: 234 }]).levels[0].compressionPercent
 * // => 3
 */
export function fitByLevel(
  limbStations: readonly Station[],
  socketStations: readonly Station[],
  { circumferenceSdMm = limitValue(defaultLimits, "tape-error-mm") }: { circumferenceSdMm?: number } = {},
): FitByLevel {
  checkStations(limbStations, "limbStations");
  checkStations(socketStations, "socketStations");
  if (!(circumferenceSdMm >= 0 && circumferenceSdMm <= 100))
    throw new FitInputError("circumferenceSdMm", "expected a standard deviation in mm, 0 or more");
  const span = commonSpan(limbStations, socketStations);
  if (!span) throw new FitInputError("socketStations", "expected levels that cover some of the length of the limb's");
  const { fromMm, toMm } = span;
  const distances = [...limbStations, ...socketStations].map(({ distanceMm }) => distanceMm);
  const common = [...new Set(distances.filter((at) => at >= fromMm && at <= toMm))].sort((a, b) => a - b);
  const levels = common.flatMap((distanceMm): LevelFit[] => {
    const limbMm = circumferenceAt(limbStations, distanceMm);
    const socketMm = circumferenceAt(socketStations, distanceMm);
    if (limbMm === undefined || socketMm === undefined) return [];
    return [
      {
        distanceMm,
        limbMm,
        socketMm,
        compressionPercent: (100 * (limbMm - socketMm)) / limbMm,
        standardErrorPercent: (100 * circumferenceSdMm * socketMm) / limbMm ** 2,
      },
    ];
  });
  const volumeRatio = volumeBetween(socketStations, fromMm, toMm) / volumeBetween(limbStations, fromMm, toMm);
  const tightest = levels.reduce((most, level) => (level.compressionPercent > most.compressionPercent ? level : most));
  const why = `The socket holds ${figure(100 * volumeRatio, 1)} % of the limb's volume from ${figure(fromMm, 0)} to ${figure(toMm, 0)} mm, tightest at ${figure(tightest.distanceMm, 0)} mm with ${figure(tightest.compressionPercent, 1)} %. What is right differs by design.`;
  return { ...span, levels, volumeRatio, why, source: "plain" };
}

/** The clinic's own tape error, from every level that was measured twice at once. */
import { type Limits, limitById, Station, type TapeError, tapeErrorFromRepeats } from "@/lib/fit";
import { Prisma } from "@/lib/generated/prisma/client";
import type { Transaction } from "./database";

export interface OwnTapeError extends TapeError {
  /** What takes the place of the setting: rounded to 0.01 mm and held within its range. Null as long as the setting stands. */
  inForceMm: number | null;
}

/**
 * By tape only, and from episodes that were not struck out. Rounded, so that a rule set has a short name and one more
 * pair does not always make a new one.
 *
 * @param limits with the clinic's own settings laid over them
 */
export async function ownTapeError(db: Transaction, limits: Limits): Promise<OwnTapeError> {
  const measured = await db.limbMeasurement.findMany({
    where: { method: "tape", secondReadings: { not: Prisma.DbNull }, episode: { struckOutAt: null } },
    select: { stations: true, secondReadings: true },
  });
  const found = tapeErrorFromRepeats(measured.flatMap(pairsOf), limits);
  const setting = limitById(limits, "tape-error-mm");
  const inForceMm =
    found.state === "met" && setting
      ? Math.min(setting.high, Math.max(setting.low, Math.round(found.circumferenceSdMm * 100) / 100))
      : null;
  return { ...found, inForceMm };
}

function pairsOf({ stations, secondReadings }: { stations: unknown; secondReadings: unknown }): [number, number][] {
  const first = Station.array().parse(stations);
  return Station.array()
    .parse(secondReadings ?? [])
    .flatMap((again): [number, number][] => {
      const level = first.find(({ distanceMm }) => distanceMm === again.distanceMm);
      return level ? [[level.circumferenceMm, again.circumferenceMm]] : [];
    });
}

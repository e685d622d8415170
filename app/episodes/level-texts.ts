/** The levels of a design as text in fields: typed, or following what the adjustments propose. */
import type { FormValues } from "@/app/_parts/form-state";
import type { Station } from "@/lib/fit/bundle";

export interface LevelText {
  row: number;
  distance: string;
  /** What was typed; null as long as the level follows the proposal. */
  own: string | null;
}

/** A length in mm as it stands in a field, in the unit of the person. */
export type ShowMm = (mm: number) => string;

/** Levels of a socket, each following its proposal; what was typed at the same distance stays. */
export const levelsFollowing = (stations: readonly Station[], show: ShowMm, before: readonly LevelText[] = []): LevelText[] =>
  stations.map(({ distanceMm }, row) => {
    const distance = show(distanceMm);
    return { row, distance, own: before.find((level) => level.distance === distance)?.own ?? null };
  });

/** Levels with their own figures, where those are not what is proposed (to 0.05 mm). */
export const levelsKeeping = (
  stations: readonly Station[],
  proposedAt: (distanceMm: number) => number | undefined,
  show: ShowMm,
): LevelText[] =>
  stations.map(({ distanceMm, circumferenceMm }, row) => {
    const proposedMm = proposedAt(distanceMm);
    const follows = proposedMm !== undefined && Math.abs(proposedMm - circumferenceMm) <= 0.0501;
    return { row, distance: show(distanceMm), own: follows ? null : show(Math.round(circumferenceMm * 10) / 10) };
  });

/** Levels as they were sent and came back with an error: all of them typed. */
export function levelsSent(values: FormValues, rows: readonly number[]): LevelText[] {
  return rows.map((row) => ({
    row,
    distance: String(values[`stations.${row}.distanceMm`] ?? ""),
    own: String(values[`stations.${row}.circumferenceMm`] ?? ""),
  }));
}

/** What stands in the fields of a level. */
export function shownOf(level: LevelText | undefined, proposedMm: number | undefined, show: ShowMm) {
  if (!level) return { distance: "", circumference: "", isOwn: false };
  return {
    distance: level.distance,
    circumference: level.own ?? (proposedMm === undefined ? "" : show(proposedMm)),
    isOwn: level.own !== null,
  };
}

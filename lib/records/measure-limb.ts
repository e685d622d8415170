import { z } from "zod";
import type { Level } from "@/lib/fit";
import { command } from "./command";
import { episodeForChange, refuseFuture } from "./episode-for-change";
import { amount, choice, id, instant, maybeAmount, maybeText, newRecordId, rows, yes } from "./input";
import { InputRefused } from "./refusals";
import { refuseDisorder } from "./stations";
import { unusual } from "./unusual";

export const StationInput = z.strictObject({
  distanceMm: amount({ min: -200, max: 1000, unit: "mm", what: "A distance" }),
  circumferenceMm: amount({ min: 30, max: 1200, unit: "mm", what: "A circumference" }),
});

const LimbInput = z.strictObject({
  id: newRecordId,
  episodeId: id("The episode"),
  at: instant("When the limb was measured"),
  method: choice("how it was measured", ["tape", "scan"]),
  linerOn: yes,
  minutesSinceDoffing: maybeAmount({ min: 0, max: 10_000, unit: "min", what: "The time since doffing" }),
  stations: rows(StationInput).refine((stations) => stations.length >= 2, "Two levels or more are needed for a volume."),
  capHeightMm: maybeAmount({ min: 1, max: 200, unit: "mm", what: "The height of the rounded end" }),
  limbLengthMm: maybeAmount({ min: 20, max: 1000, unit: "mm", what: "A residual-limb length" }),
  note: maybeText("The note", 1000),
});

/** A level may lie beyond the limb's end, on the joint or above it, but not this far. */
function refuseFarOff(stations: readonly { distanceMm: number }[], limbLengthMm: number): void {
  for (const [index, { distanceMm }] of stations.entries())
    if (Math.abs(distanceMm) > 2 * limbLengthMm + 100)
      throw new InputRefused({
        [`stations.${index}.distanceMm`]: `This residual limb is ${limbLengthMm} mm long: the level would lie far off it.`,
      });
}

/** Records circumferences of the residual limb at stated distances; the volume is computed from them, never typed. */
export const measureLimb = command({
  permission: "measure a limb",
  input: LimbInput,
  run: async (store, { id, ...fields }) => {
    if (id && (await store.db.limbMeasurement.findUnique({ where: { id } })))
      return { episodeId: fields.episodeId, measurementId: id };
    const episode = await episodeForChange(store, fields.episodeId);
    refuseFuture(store, "at", fields.at);
    refuseDisorder(fields.stations);
    refuseFarOff(fields.stations, episode.limbLengthMm);
    store.ask(
      unusual(episode.level as Level, [
        // the column holds only ISO 8549 levels, as open-episode checks
        ...fields.stations.flatMap(({ distanceMm, circumferenceMm }, index) => [
          { path: `stations.${index}.distanceMm`, quantity: "stationDistanceMm" as const, value: distanceMm },
          { path: `stations.${index}.circumferenceMm`, quantity: "circumferenceMm" as const, value: circumferenceMm },
        ]),
        { path: "minutesSinceDoffing", quantity: "minutesSinceDoffing", value: fields.minutesSinceDoffing },
        { path: "capHeightMm", quantity: "capHeightMm", value: fields.capHeightMm },
        { path: "limbLengthMm", quantity: "limbLengthMm", value: fields.limbLengthMm },
      ]),
    );
    const measurementId = id ?? store.newId();
    await store.db.limbMeasurement.create({
      data: {
        id: measurementId,
        episodeId: episode.id,
        at: fields.at,
        method: fields.method,
        linerOn: fields.linerOn,
        minutesSinceDoffing: fields.minutesSinceDoffing ?? null,
        stations: fields.stations,
        capHeightMm: fields.capHeightMm ?? null,
        limbLengthMm: fields.limbLengthMm ?? null,
        note: fields.note ?? null,
        byId: store.actor.id,
        byName: store.actor.name,
        recordedAt: store.now,
      },
    });
    await store.note({
      action: "measured a limb",
      kind: "limb measurement",
      id: measurementId,
      wearerId: episode.wearerId,
      episodeId: episode.id,
      after: fields,
    });
    return { episodeId: episode.id, measurementId };
  },
});

import { z } from "zod";
import { type Level, limitValue, Station } from "@/lib/fit";
import { Prisma } from "@/lib/generated/prisma/client";
import { command, isSavedAlready, type Store } from "./command";
import { episodeForChange, refuseFuture } from "./episode-for-change";
import { amount, choice, id, instant, maybeAmount, maybeText, newRecordId, rows, yes } from "./input";
import { inOrder, type OrderedLevel, questionsAbout, refuseImpossible } from "./limb-levels";
import { limitsAndTape } from "./limits-in-force";
import { unusual } from "./unusual";

export const StationInput = z.strictObject({
  distanceMm: amount({ min: -200, max: 1000, unit: "mm", what: "A distance" }),
  circumferenceMm: amount({ min: 30, max: 1200, unit: "mm", what: "A circumference" }),
});

const LimbStation = StationInput.extend({
  /** The level measured once more at once. The first reading counts; the second tells how exact the tape is. */
  againMm: maybeAmount({ min: 30, max: 1200, unit: "mm", what: "A circumference" }),
});

const LimbInput = z.strictObject({
  id: newRecordId,
  episodeId: id("The episode"),
  at: instant("When the limb was measured"),
  method: choice("how it was measured", ["tape", "scan"]),
  linerOn: yes,
  minutesSinceDoffing: maybeAmount({ min: 0, max: 10_000, unit: "min", what: "The time since doffing" }),
  stations: rows(LimbStation).refine((stations) => stations.length >= 2, "Two levels or more are needed for a volume."),
  capHeightMm: maybeAmount({ min: 1, max: 200, unit: "mm", what: "The height of the rounded end" }),
  limbLengthMm: maybeAmount({ min: 20, max: 1000, unit: "mm", what: "A residual-limb length" }),
  note: maybeText("The note", 1000),
});

/** Records circumferences of the residual limb at stated distances; the volume is computed from them, never typed. */
export const measureLimb = command({
  permission: "measure a limb",
  input: LimbInput,
  run: async (store, { id, stations: typed, ...fields }) => {
    const levels = inOrder(typed);
    const stations = levels.map(({ distanceMm, circumferenceMm }) => ({ distanceMm, circumferenceMm }));
    const secondReadings = secondReadingsOf(levels);
    const measured = { ...fields, stations, ...(secondReadings.length > 0 ? { secondReadings } : {}) };
    if (id && (await isSavedAlready(store, { kind: "limb measurement", id, fields: measured })))
      return { episodeId: fields.episodeId, measurementId: id };
    const episode = await episodeForChange(store, fields.episodeId);
    const level = episode.level as Level; // the column holds only ISO 8549 levels, as open-episode checks
    refuseFuture(store, "at", fields.at);
    refuseImpossible(levels, { level, limbLengthMm: episode.limbLengthMm });
    const before = await limitsAndTape(store.db);
    store.ask([
      ...questionsAbout(levels, {
        level,
        lastTime: await stationsLastTime(store, episode.id, fields.at),
        tapeErrorMm: limitValue(before.limits, "tape-error-mm"),
      }),
      ...unusual(level, [
        { path: "minutesSinceDoffing", quantity: "minutesSinceDoffing", value: fields.minutesSinceDoffing },
        { path: "capHeightMm", quantity: "capHeightMm", value: fields.capHeightMm },
        { path: "limbLengthMm", quantity: "limbLengthMm", value: fields.limbLengthMm },
      ]),
    ]);
    const measurementId = id ?? store.newId();
    await store.db.limbMeasurement.create({
      data: {
        id: measurementId,
        episodeId: episode.id,
        at: fields.at,
        method: fields.method,
        linerOn: fields.linerOn,
        minutesSinceDoffing: fields.minutesSinceDoffing ?? null,
        stations,
        secondReadings: secondReadings.length > 0 ? secondReadings : Prisma.DbNull,
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
      after: measured,
    });
    if (secondReadings.length > 0) await noteOwnTapeError(store, before.limits);
    return { episodeId: episode.id, measurementId };
  },
});

const secondReadingsOf = (levels: readonly OrderedLevel[]): Station[] =>
  levels.flatMap(({ distanceMm, againMm }) => (againMm === undefined ? [] : [{ distanceMm, circumferenceMm: againMm }]));

async function stationsLastTime(store: Store, episodeId: string, at: Date): Promise<Station[]> {
  const last = await store.db.limbMeasurement.findFirst({
    where: { episodeId, at: { lt: at } },
    orderBy: { at: "desc" },
    select: { stations: true },
  });
  return Station.array().parse(last?.stations ?? []);
}

/**
 * Where these readings change the clinic's own tape error, every open episode is judged by another limit: the trail says
 * so, a signature that is being written has to be read anew, and the lists judge again when next looked at.
 */
async function noteOwnTapeError(store: Store, before: Awaited<ReturnType<typeof limitsAndTape>>["limits"]): Promise<void> {
  const after = await limitsAndTape(store.db);
  const [beforeMm, afterMm] = [before, after.limits].map((limits) => limitValue(limits, "tape-error-mm"));
  if (beforeMm === afterMm) return;
  await store.note({
    action: "the clinic's own tape error changed",
    kind: "limit",
    id: "tape-error-mm",
    before: { value: beforeMm },
    after: { value: afterMm, pairs: after.tape.pairs, why: after.tape.why },
  });
  await store.db.episode.updateMany({
    where: { struckOutAt: null, closedAt: null, deliveredAt: null },
    data: { staleOn: store.now, evidenceVersion: { increment: 1 } },
  });
}

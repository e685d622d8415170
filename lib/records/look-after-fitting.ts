import { z } from "zod";
import { looseMinutes } from "@/lib/fit/evidence";
import { command, isSavedAlready, type Store } from "./command";
import { episodeForChange, refuseFuture, refuseUnderSignature } from "./episode-for-change";
import { id, newRecordId } from "./input";
import { findSocket } from "./move-socket";
import { InputRefused, NotFound } from "./refusals";
import { lookFields, refuseOffLimb, refuseSilence, unusualLook, writeLook } from "./skin-look";
import type { Question } from "./unusual";

/** Adds another look at the skin after a fitting, until the marks have faded. */
export const lookAfterFitting = command({
  permission: "look at the skin",
  input: z.strictObject({ id: newRecordId, fittingId: id("The fitting"), ...lookFields }),
  run: async (store, { id, fittingId, ...look }) => {
    const fitting = await store.db.fitting.findUnique({ where: { id: fittingId } });
    if (!fitting) throw new NotFound("fitting");
    const socket = await findSocket(store, fitting.socketId);
    const done = { fittingId, episodeId: socket.episodeId };
    if (await isSavedAlready(store, { kind: "skin inspection", id, fields: look })) return done;
    const episode = await episodeForChange(store, socket.episodeId);
    refuseUnderSignature(episode, socket.id);
    refuseFuture(store, "at", look.at);
    if (look.at.getTime() < fitting.at.getTime())
      throw new InputRefused({ at: "This look lies before the fitting. Look at the date and the clock." });
    refuseSilence(look);
    await refuseOffLimb(store, episode, look.marks);
    store.ask([...unusualLook(episode.level, look), ...(await otherTime(store, fitting, look))]);
    const inspectionId = await writeLook(store, { fittingId }, look, id);
    await store.note({
      action: `looked at the skin after a fitting of socket ${socket.number}`,
      kind: "skin inspection",
      id: inspectionId,
      wearerId: episode.wearerId,
      episodeId: socket.episodeId,
      after: look,
    });
    return done;
  },
});

/**
 * Two looks after one doffing are as far apart by the clock as by their minutes after doffing. The first look of a
 * fitting may bear the time at which the fitting began: then only what is too short by the clock is asked about.
 */
async function otherTime(
  store: Store,
  fitting: { id: string; at: Date },
  { at, minutesAfterDoffing }: { at: Date; minutesAfterDoffing: number },
): Promise<Question[]> {
  const first = await store.db.skinInspection.findFirst({
    where: { fittingId: fitting.id },
    orderBy: { minutesAfterDoffing: "asc" },
  });
  if (!first) return [];
  const byClock = Math.round((at.getTime() - first.at.getTime()) / 60_000);
  const bySaying = minutesAfterDoffing - first.minutesAfterDoffing;
  const isRough = first.at.getTime() === fitting.at.getTime();
  if (bySaying - byClock <= looseMinutes && (isRough || byClock - bySaying <= looseMinutes)) return [];
  return [
    {
      path: "minutesAfterDoffing",
      why: `The first look was ${first.minutesAfterDoffing} minutes after doffing, and by the clock this one is ${byClock} minutes later: that makes ${first.minutesAfterDoffing + byClock}.`,
      key: `look ${minutesAfterDoffing} min at ${at.toISOString()}`,
    },
  ];
}

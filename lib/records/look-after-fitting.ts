import { z } from "zod";
import { command } from "./command";
import { episodeForChange, refuseFuture, refuseUnderSignature } from "./episode-for-change";
import { id, newRecordId } from "./input";
import { findSocket } from "./move-socket";
import { InputRefused, NotFound } from "./refusals";
import { lookFields, refuseOffLimb, refuseSilence, unusualLook, writeLook } from "./skin-look";

/** Adds another look at the skin after a fitting, until the marks have faded. */
export const lookAfterFitting = command({
  permission: "look at the skin",
  input: z.strictObject({ id: newRecordId, fittingId: id("The fitting"), ...lookFields }),
  run: async (store, { id, fittingId, ...look }) => {
    const fitting = await store.db.fitting.findUnique({ where: { id: fittingId } });
    if (!fitting) throw new NotFound("fitting");
    const socket = await findSocket(store, fitting.socketId);
    const done = { fittingId, episodeId: socket.episodeId };
    if (id && (await store.db.skinInspection.findUnique({ where: { id } }))) return done;
    const episode = await episodeForChange(store, socket.episodeId);
    refuseUnderSignature(episode, socket.id);
    refuseFuture(store, "at", look.at);
    if (look.at.getTime() < fitting.at.getTime())
      throw new InputRefused({ at: "This look lies before the fitting. Look at the date and the clock." });
    refuseSilence(look);
    refuseOffLimb(look.marks, episode.limbLengthMm);
    store.ask(unusualLook(episode.level, look));
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

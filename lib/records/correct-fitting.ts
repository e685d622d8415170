import { z } from "zod";
import type { Prisma } from "@/lib/generated/prisma/client";
import { command, isSavedAlready } from "./command";
import { episodeForChange, refuseUnderSignature } from "./episode-for-change";
import { id, newRecordId, text } from "./input";
import { findSocket } from "./move-socket";
import { fittingFields, writeFitting } from "./record-fitting";
import { Locked, NotFound } from "./refusals";

/**
 * Puts a saved fitting right by an addendum: the fitting as it should have been, with a reason. The new one counts from
 * now on; the old one stays and can be read. Later looks at the skin stay with it.
 */
export const correctFitting = command({
  permission: "record a fitting",
  input: z.strictObject({
    id: newRecordId,
    correctsId: id("The fitting"),
    why: text("The reason for the correction", 1000),
    ...fittingFields,
  }),
  run: async (store, { id, correctsId, why, ...fields }) => {
    const corrected = await store.db.fitting.findUnique({ where: { id: correctsId }, include: { correctedBy: true } });
    if (!corrected) throw new NotFound("fitting");
    const socket = await findSocket(store, corrected.socketId);
    const done = { fittingId: id ?? correctsId, socketId: socket.id, episodeId: socket.episodeId };
    if (await isSavedAlready(store, { kind: "fitting", id, fields: { why, ...fields } })) return done;
    const episode = await episodeForChange(store, socket.episodeId);
    refuseUnderSignature(episode, socket.id);
    if (corrected.correctedBy)
      throw new Locked(
        `${corrected.correctedBy.byName} has put this fitting right already. Open the newest version, and correct that one if it is still wrong.`,
      );
    const fittingId = id ?? store.newId();
    await writeFitting(store, { fittingId, socket, episode, correction: { correctsId, why } }, fields);
    await store.note({
      action: `corrected a fitting of socket ${socket.number}`,
      kind: "fitting",
      id: fittingId,
      wearerId: episode.wearerId,
      episodeId: socket.episodeId,
      before: versionOf(corrected),
      after: { why, ...fields },
    });
    return { ...done, fittingId };
  },
});

const versionOf = ({ correctedBy: _, byId: __, byName, recordedAt, ...fitting }: CorrectedFitting) => ({
  ...fitting,
  byName,
  recordedAt,
});
type CorrectedFitting = Prisma.FittingGetPayload<{ include: { correctedBy: true } }>;

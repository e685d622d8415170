import { z } from "zod";
import type { Prisma } from "@/lib/generated/prisma/client";
import { command, isSavedAlready, type Store } from "./command";
import { episodeForChange, refuseUnderSignature } from "./episode-for-change";
import { id, newRecordId, text } from "./input";
import { findSocket } from "./move-socket";
import { type FittingFields, fittingFields, writeFitting } from "./record-fitting";
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
    const look = await withItsTime(store, corrected, fields.look);
    await writeFitting(store, { fittingId, socket, episode, correction: { correctsId, why } }, { ...fields, look });
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

/** The form asks neither when the first look was nor for its note: both stay as they were. */
async function withItsTime(
  store: Store,
  corrected: CorrectedFitting,
  look: FittingFields["look"],
): Promise<FittingFields["look"]> {
  const before = await store.db.skinInspection.findFirst({
    where: { fittingId: corrected.id, recordedAt: corrected.recordedAt },
    orderBy: { minutesAfterDoffing: "asc" },
    select: { at: true, note: true },
  });
  if (!look || !before) return look;
  const hasOwnTime = before.at.getTime() !== corrected.at.getTime();
  return { ...look, at: look.at ?? (hasOwnTime ? before.at : undefined), note: look.note ?? before.note ?? undefined };
}

const versionOf = ({ correctedBy: _, byId: __, byName, recordedAt, ...fitting }: CorrectedFitting) => ({
  ...fitting,
  byName,
  recordedAt,
});
type CorrectedFitting = Prisma.FittingGetPayload<{ include: { correctedBy: true } }>;

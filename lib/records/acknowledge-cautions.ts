import { z } from "zod";
import { command } from "./command";
import { episodeForChange } from "./episode-for-change";
import { id } from "./input";

/** A prosthetist has read every caution of this wearer and takes them into account in this episode. */
export const acknowledgeCautions = command({
  permission: "acknowledge cautions",
  input: z.strictObject({ episodeId: id("The episode") }),
  run: async (store, { episodeId }) => {
    const episode = await episodeForChange(store, episodeId);
    const open = await store.db.caution.findMany({
      where: { wearerId: episode.wearerId, endedAt: null, readings: { none: { episodeId } } },
      select: { id: true, kind: true, note: true },
    });
    if (open.length === 0) return { episodeId };
    await store.db.cautionAcknowledgement.createMany({
      data: open.map((caution) => ({
        id: store.newId(),
        cautionId: caution.id,
        episodeId,
        byId: store.actor.id,
        byName: store.actor.name,
        at: store.now,
      })),
    });
    await store.note({
      action: "read the cautions",
      kind: "episode",
      id: episodeId,
      wearerId: episode.wearerId,
      episodeId,
      after: { read: open },
    });
    return { episodeId };
  },
});

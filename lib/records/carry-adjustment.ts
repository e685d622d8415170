import { z } from "zod";
import type { Level } from "@/lib/fit";
import { command } from "./command";
import { episodeForChange, refuseUnderSignature } from "./episode-for-change";
import { id, text } from "./input";
import { findSocket } from "./move-socket";
import { InputRefused, NotFound } from "./refusals";
import { AdjustmentInput, adjustmentColumns, amountEntered, refuseUnclear } from "./specify-socket";
import { unusual } from "./unusual";

/** A small adjustment that is made in the definitive socket instead of in another check socket. */
export const carryAdjustment = command({
  permission: "carry an adjustment",
  input: z.strictObject({ socketId: id("The socket"), ...AdjustmentInput.shape }),
  run: async (store, { socketId, ...adjustment }) => {
    const socket = await findSocket(store, socketId);
    const episode = await episodeForChange(store, socket.episodeId);
    refuseUnderSignature(episode, socketId);
    refuseUnclear(adjustment);
    const latest = await store.db.checkSocket.findFirst({
      where: { episodeId: socket.episodeId },
      orderBy: { number: "desc" },
      select: { id: true, number: true },
    });
    if (latest?.id !== socketId)
      throw new InputRefused({
        kind: `Socket ${latest?.number ?? "?"} is the latest of this series: adjustments are carried from that one.`,
      });
    store.ask(unusual(episode.level as Level, amountEntered(adjustment))); // the column holds only ISO 8549 levels, as open-episode checks
    const columns = adjustmentColumns(store, adjustment);
    const position = await store.db.adjustment.count({ where: { carriedFromId: socketId } });
    await store.db.adjustment.create({ data: { ...columns, episodeId: socket.episodeId, carriedFromId: socketId, position } });
    await store.note({
      action: "carried an adjustment into the definitive socket",
      kind: "adjustment",
      id: columns.id,
      wearerId: episode.wearerId,
      episodeId: socket.episodeId,
      after: adjustment,
    });
    return { episodeId: socket.episodeId };
  },
});

/** Takes a carried adjustment back, with the reason; the row stays. */
export const dropCarriedAdjustment = command({
  permission: "carry an adjustment",
  input: z.strictObject({ adjustmentId: id("The adjustment"), why: text("Why it is taken back", 400) }),
  run: async (store, { adjustmentId, why }) => {
    const adjustment = await store.db.adjustment.findUnique({ where: { id: adjustmentId } });
    if (!adjustment?.carriedFromId || adjustment.droppedAt) throw new NotFound("carried adjustment");
    const episode = await episodeForChange(store, adjustment.episodeId);
    refuseUnderSignature(episode, adjustment.carriedFromId);
    await store.db.adjustment.update({
      where: { id: adjustmentId },
      data: { droppedAt: store.now, droppedById: store.actor.id, droppedWhy: why },
    });
    await store.note({
      action: "took back a carried adjustment",
      kind: "adjustment",
      id: adjustmentId,
      wearerId: episode.wearerId,
      episodeId: adjustment.episodeId,
      before: adjustment,
      after: { why },
    });
    return { episodeId: adjustment.episodeId };
  },
});

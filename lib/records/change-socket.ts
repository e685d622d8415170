import { z } from "zod";
import { command } from "./command";
import { episodeForChange } from "./episode-for-change";
import { id, version } from "./input";
import { ChangedMeanwhile, Locked, NotFound } from "./refusals";
import { ownColumns, refuseUnfit, socketFields, unusualSocket, withDimensions, writeAdjustments } from "./specify-socket";

/** Changes what a socket is to be, as long as nobody has begun to make it. */
export const changeSocket = command({
  permission: "specify a socket",
  input: z.strictObject({ socketId: id("The socket"), version, ...socketFields }),
  run: async (store, { socketId, version, ...asked }) => {
    const socket = await store.db.checkSocket.findUnique({
      where: { id: socketId },
      include: { adjustments: { where: { droppedAt: null }, orderBy: { position: "asc" } } },
    });
    if (!socket) throw new NotFound("socket");
    const episode = await episodeForChange(store, socket.episodeId);
    if (socket.state !== "planned")
      throw new Locked(
        `Socket ${socket.number} is ${socket.state}: what it was made from stands. Specify the next socket instead.`,
      );
    if (socket.version !== version)
      throw new ChangedMeanwhile(`Socket ${socket.number}`, { ...socket, adjustments: socket.adjustments }, socket.version);
    const fields = await withDimensions(store, episode, asked);
    await refuseUnfit(store, socket.episodeId, fields, socketId);
    store.ask(unusualSocket(episode.level, fields));
    const { adjustments, ...own } = fields;
    await store.db.checkSocket.update({ where: { id: socketId }, data: { ...ownColumns(own), version: { increment: 1 } } });
    await store.db.adjustment.updateMany({
      where: { socketId, droppedAt: null },
      data: { droppedAt: store.now, droppedById: store.actor.id, droppedWhy: "the socket was specified anew before it was made" },
    });
    await writeAdjustments(store, { episodeId: socket.episodeId, socketId, adjustments });
    await store.note({
      action: `changed what socket ${socket.number} is to be`,
      kind: "check socket",
      id: socketId,
      wearerId: episode.wearerId,
      episodeId: socket.episodeId,
      before: socket,
      after: fields,
    });
    return { socketId, episodeId: socket.episodeId };
  },
});

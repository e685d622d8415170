import { now } from "./clock";
import type { Database } from "./database";
import { query } from "./query";
import { NotFound } from "./refusals";
import { episodeAsOf, type SeenEpisode } from "./see-episode";

export interface SideBySideAsked {
  episodeId: string;
  socketIds: readonly string[];
}

export interface SeenSideBySide extends SeenEpisode {
  /** Sockets that were asked for and are there, each with its episode: this one's, or another of the same wearer. */
  chosen: { socketId: string; seen: SeenEpisode }[];
  /** Every socket of the wearer that may be chosen, this episode's first. */
  offered: { socketId: string; number: number; episodeId: string; side: string; level: string }[];
  /** Sockets that were asked for and are left out: of another wearer, or not known. */
  leftOut: { socketId: string; why: string }[];
}

async function read(db: Database, { episodeId, socketIds }: SideBySideAsked): Promise<SeenSideBySide> {
  const asOf = now();
  const seen = await episodeAsOf(db, episodeId, asOf);
  const ids = [...new Set(socketIds)];
  const elsewhere = ids.filter((id) => !seen.episode.sockets.some((socket) => socket.id === id));
  const rows = await db.checkSocket.findMany({
    where: { id: { in: elsewhere } },
    select: { id: true, episodeId: true, episode: { select: { wearerId: true, struckOutAt: true } } },
  });
  const others = new Map<string, SeenEpisode>();
  for (const { episodeId: other, episode } of rows)
    if (episode.wearerId === seen.episode.wearerId && !episode.struckOutAt && !others.has(other))
      others.set(other, await episodeAsOf(db, other, asOf));
  const chosen: SeenSideBySide["chosen"] = [];
  const leftOut: SeenSideBySide["leftOut"] = [];
  for (const socketId of ids) {
    const row = rows.find(({ id }) => id === socketId);
    const found = elsewhere.includes(socketId) ? others.get(row?.episodeId ?? "") : seen;
    if (found) chosen.push({ socketId, seen: found });
    else
      leftOut.push({
        socketId,
        why: row && !row.episode.struckOutAt ? "It is another wearer’s." : "There is none of that address.",
      });
  }
  // The episode's own sockets come first.
  chosen.sort((a, b) => Number(a.seen !== seen) - Number(b.seen !== seen));
  return { ...seen, chosen, offered: await socketsOf(db, seen), leftOut };
}

async function socketsOf(db: Database, { episode }: SeenEpisode): Promise<SeenSideBySide["offered"]> {
  const rows = await db.checkSocket.findMany({
    where: { episode: { wearerId: episode.wearerId, struckOutAt: null } },
    select: { id: true, number: true, episodeId: true, episode: { select: { side: true, level: true } } },
    orderBy: [{ episodeId: "asc" }, { number: "asc" }],
  });
  return rows
    .map(({ id, number, episodeId, episode: { side, level } }) => ({ socketId: id, number, episodeId, side, level }))
    .sort((a, b) => Number(a.episodeId !== episode.id) - Number(b.episodeId !== episode.id));
}

/** Sockets of an episode to be held against each other, and those of the wearer's other episodes that were asked for too. */
export const seeSideBySide = query({
  permission: "see wearers",
  read,
  seen: ({ episode }) => ({ action: "saw sockets side by side", kind: "episode", id: episode.id, wearerId: episode.wearerId }),
});

/** The same, for a file. */
export const exportSideBySide = query({
  permission: "see wearers",
  read: async (db, asked: SideBySideAsked) => {
    const found = await read(db, asked);
    if (found.leftOut.length > 0) throw new NotFound("socket");
    return found;
  },
  seen: ({ episode }) => ({ action: "exported a comparison", kind: "episode", id: episode.id, wearerId: episode.wearerId }),
});

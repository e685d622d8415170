import { query } from "./query";
import { refreshStale } from "./rebuild";
import { NotFound } from "./refusals";

const most = 200;

/** Wearers whose name or clinic number holds the words; everyone where there are none. */
export const findWearers = query({
  permission: "see wearers",
  read: async (db, { find }: { find: string }) => {
    await refreshStale();
    const words = find.trim();
    const wearers = await db.wearer.findMany({
      where: words === "" ? {} : { OR: [{ name: { contains: words } }, { clinicNumber: { contains: words } }] },
      orderBy: { name: "asc" },
      take: most,
      select: {
        id: true,
        name: true,
        clinicNumber: true,
        birthOn: true,
        episodes: {
          where: { struckOutAt: null },
          orderBy: { openedAt: "desc" },
          select: { id: true, side: true, level: true, stage: true, decision: true, lastSeenAt: true },
        },
      },
    });
    return { wearers, find: words };
  },
  seen: ({ wearers, find }) => ({
    action: find === "" ? `saw the list of wearers: ${wearers.length}` : `looked for a wearer: ${wearers.length} found`,
    kind: "wearers",
    id: "list",
  }),
});

/** One person with cautions and episodes. */
export const seeWearer = query({
  permission: "see wearers",
  read: async (db, wearerId: string) => {
    await refreshStale();
    const wearer = await db.wearer.findUnique({
      where: { id: wearerId },
      include: {
        cautions: { orderBy: { addedAt: "asc" } },
        episodes: {
          where: { struckOutAt: null },
          orderBy: { openedAt: "desc" },
          select: {
            id: true,
            side: true,
            level: true,
            stage: true,
            nextStep: true,
            nextWhy: true,
            dueOn: true,
            decision: true,
            decisionSentence: true,
            socketCount: true,
            openedAt: true,
            lastSeenAt: true,
          },
        },
      },
    });
    if (!wearer) throw new NotFound("wearer");
    return wearer;
  },
  seen: ({ id }) => ({ action: "saw a wearer", kind: "wearer", id, wearerId: id }),
});

import { type ChainCheck, checkChain } from "@/lib/trail/chain";
import { query } from "./query";

const pageLength = 100;

/** Who did what, when: the newest first, narrowed by words, a person or a record. */
export const seeRecord = query({
  permission: "see the record",
  read: async (db, { find, page, reads }: { find: string; page: number; reads: boolean }) => {
    const words = find.trim();
    const where = {
      ...(words === ""
        ? {}
        : {
            OR: [
              { action: { contains: words } },
              { actorName: { contains: words } },
              { recordId: words },
              { wearerId: words },
              { episodeId: words },
            ],
          }),
      ...(reads ? {} : { NOT: [{ action: { startsWith: "saw " } }, { action: { startsWith: "looked for " } }] }),
    };
    const [entries, count] = await Promise.all([
      db.trailEntry.findMany({ where, orderBy: { position: "desc" }, skip: (page - 1) * pageLength, take: pageLength }),
      db.trailEntry.count({ where }),
    ]);
    return { entries, count, pages: Math.max(1, Math.ceil(count / pageLength)) };
  },
});

/** Walks the whole chain and says where it first breaks. */
export const verifyRecord = query({
  permission: "see the record",
  read: async (db, _asked: null): Promise<ChainCheck> => {
    const entries = await db.trailEntry.findMany({ orderBy: { position: "asc" } });
    return checkChain(entries.map((entry) => ({ ...entry, at: entry.at.toISOString() })));
  },
});

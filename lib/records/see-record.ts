import { linkName } from "@/lib/access/wearer-pass";
import type { Database } from "./database";
import { query } from "./query";
import { type Condition, conditionOf, inValues, type RecordSearch, readSearch } from "./record-search";
import { InputRefused } from "./refusals";

export { verifyRecord } from "./verify-record";

const pageLength = 50;

/** Who did what, when: the newest first, narrowed by what was looked for. */
export const seeRecord = query({
  permission: "see the record",
  read: async (db, raw: Readonly<Record<string, unknown>>) => {
    const { search, wrong } = readSearch(raw);
    if (Object.keys(wrong).length > 0) throw new InputRefused(wrong);
    const condition = await conditionOf(db, search);
    const { where } = condition;
    const { page } = search;
    const [entries, count, looked] = await Promise.all([
      db.trailEntry.findMany({ where, orderBy: { position: "desc" }, skip: (page - 1) * pageLength, take: pageLength }),
      db.trailEntry.count({ where }),
      namesSought(db, search, condition),
    ]);
    return {
      entries,
      count,
      pages: Math.max(1, Math.ceil(count / pageLength)),
      looked,
      search,
      wearerIds: condition.wearerIds,
    };
  },
  seen: ({ looked, count, wearerIds }) =>
    looked
      ? {
          action: `looked for ${looked} in the record: ${count} found`,
          kind: "record",
          id: "search",
          wearerId: wearerIds?.length === 1 ? wearerIds[0] : undefined,
        }
      : null,
});

/** Who looks for a wearer, or for words that stand in what was written, reads of people by name. */
async function namesSought(db: Database, { find }: RecordSearch, { where, wearerIds }: Condition): Promise<string | null> {
  if (wearerIds) return "a wearer";
  if (find === undefined) return null;
  const found = await db.trailEntry.findFirst({ where: { AND: [where, { OR: inValues(find) }] }, select: { position: true } });
  return found ? "words" : null;
}

/** What can be chosen: people with an account, the wearers' links, and the kinds of records that there are. */
export const seeRecordChoices = query({
  permission: "see the record",
  read: async (db, _asked: null) => {
    const [accounts, kinds, total] = await Promise.all([
      db.user.findMany({ orderBy: { name: "asc" }, select: { name: true } }),
      db.trailEntry.groupBy({ by: ["recordKind"], orderBy: { recordKind: "asc" } }),
      db.trailEntry.count(),
    ]);
    return {
      people: [...new Set(accounts.map(({ name }) => name)), linkName],
      kinds: kinds.map(({ recordKind }) => recordKind),
      total,
    };
  },
});

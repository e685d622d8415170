/** What was looked for in the record, for a file: the oldest first, page by page. */
import { type ChainedEntry, canonicalJson, entryJson } from "@/lib/trail/chain";
import type { Database } from "./database";
import { query } from "./query";
import { conditionOf, readSearch } from "./record-search";
import { InputRefused } from "./refusals";

const pageLength = 1000;

export interface ExportedEntry extends ChainedEntry {
  digest: string;
}

export const exportRecord = query({
  permission: "see the record",
  read: async (db, raw: Readonly<Record<string, unknown>>) => {
    const { search, wrong } = readSearch(raw);
    if (Object.keys(wrong).length > 0) throw new InputRefused(wrong);
    const { where, wearerIds } = await conditionOf(db, search);
    const { _count: count, _max } = await db.trailEntry.aggregate({ where, _count: true, _max: { position: true } });
    return { count, wearerIds, pages: pagesOf(db, where, _max.position ?? 0) };
  },
  seen: ({ count, wearerIds }) => ({
    action: `exported the record: ${count} ${count === 1 ? "entry" : "entries"}`,
    kind: "record",
    id: "export",
    wearerId: wearerIds?.length === 1 ? wearerIds[0] : undefined,
  }),
});

/** Up to the last entry that there was when it was asked for: the file does not hold its own export. */
async function* pagesOf(
  db: Database,
  where: Awaited<ReturnType<typeof conditionOf>>["where"],
  last: number,
): AsyncGenerator<ExportedEntry[]> {
  for (let after = 0; after < last; ) {
    const rows = await db.trailEntry.findMany({
      where: { AND: [where, { position: { gt: after, lte: last } }] },
      orderBy: { position: "asc" },
      take: pageLength,
    });
    const end = rows.at(-1);
    if (!end) return;
    yield rows.map((row) => ({ ...row, at: row.at.toISOString() }));
    after = end.position;
  }
}

/**
 * One line: the digest, and the entry exactly as it is hashed. The entry's text begins at byte 86 and ends before the
 * last brace, so that any SHA-256 tool gives the digest.
 */
export const jsonLine = ({ digest, ...entry }: ExportedEntry): string =>
  `{"digest":${canonicalJson(digest)},"entry":${entryJson(entry)}}\n`;

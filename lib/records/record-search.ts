/** What is looked for in the record: read from an address or a script, and as a condition of the store. */
import { z } from "zod";
import type { Prisma } from "@/lib/generated/prisma/client";
import { fromClinicTime } from "./clinic-time";
import type { Database } from "./database";
import { maybeDay, maybeText, yes } from "./input";
import { InputRefused } from "./refusals";

const mostWearers = 50;

const Search = z.object({
  /** Words of an action, of a name, or of what was written. */
  find: maybeText("The words", 200),
  /** A person's name, or a part of it. */
  who: maybeText("The person", 200),
  /** A wearer's name, clinic number or id. */
  wearer: maybeText("The wearer", 200),
  /** A kind of record, or the id of one. */
  record: maybeText("The record", 200),
  /** Days of the clinic's calendar, both counted in. */
  from: maybeDay("The first day"),
  to: maybeDay("The last day"),
  /** Whether readings are shown too. */
  reads: yes,
  page: z.preprocess((value) => Math.max(1, Number.parseInt(String(value), 10) || 1), z.number()),
});
export type RecordSearch = z.output<typeof Search>;

/** Fields that are wrong have what to do about them; the others hold all the same. */
export function readSearch(raw: Readonly<Record<string, unknown>>): { search: RecordSearch; wrong: Record<string, string> } {
  const wrong: Record<string, string> = {};
  const read = Search.safeParse(raw);
  for (const { path, message } of read.error?.issues ?? []) wrong[String(path[0])] ??= message;
  const rest = Object.fromEntries(Object.entries(raw).filter(([name]) => !(name in wrong)));
  const search = read.data ?? Search.parse(rest);
  if (search.from && search.to && search.to < search.from) wrong.to = "The last day lies before the first.";
  return { search, wrong };
}

export interface Condition {
  where: Prisma.TrailEntryWhereInput;
  /** The wearers that were meant; null where none was asked for. */
  wearerIds: string[] | null;
}

/** How the trail says that somebody only read. */
const readings: Prisma.TrailEntryWhereInput[] = [{ action: { startsWith: "saw " } }, { action: { startsWith: "looked for " } }];

/** @throws InputRefused where too many wearers are meant to look for each */
export async function conditionOf(db: Database, search: RecordSearch): Promise<Condition> {
  const { find, who, wearer, record, from, to, reads } = search;
  const wearers = wearer === undefined ? null : await wearersMeant(db, wearer);
  const { timeZone = "UTC" } = (await db.clinic.findUnique({ where: { id: 1 }, select: { timeZone: true } })) ?? {};
  const all: Prisma.TrailEntryWhereInput[] = [];
  if (find !== undefined) all.push({ OR: [...inAction(find), ...inValues(find)] });
  if (who !== undefined) all.push({ OR: [{ actorName: { contains: who } }, { actorId: who }] });
  if (wearers) all.push(ofWearers(wearers));
  if (record !== undefined)
    all.push({ OR: [{ recordKind: record }, { recordId: { startsWith: record } }, { episodeId: { startsWith: record } }] });
  if (from !== undefined) all.push({ at: { gte: beginOf(from, timeZone) } });
  if (to !== undefined) all.push({ at: { lt: beginOf(dayAfter(to), timeZone) } });
  if (!reads) all.push({ NOT: readings });
  return { where: { AND: all }, wearerIds: wearers?.map(({ id }) => id) ?? null };
}

const inAction = (words: string): Prisma.TrailEntryWhereInput[] => [
  { action: { contains: words } },
  { actorName: { contains: words } },
  { recordId: words },
  { wearerId: words },
  { episodeId: words },
];

/** Where words stand in what was written, they may be a person's name. */
export const inValues = (words: string): Prisma.TrailEntryWhereInput[] => [
  { before: { contains: words } },
  { after: { contains: words } },
];

async function wearersMeant(db: Database, words: string) {
  const wearers = await db.wearer.findMany({
    where: { OR: [{ id: words }, { clinicNumber: words }, { name: { contains: words } }] },
    select: { id: true, episodes: { select: { id: true } } },
    take: mostWearers + 1,
  });
  if (wearers.length > mostWearers)
    throw new InputRefused({ wearer: `More than ${mostWearers} wearers fit this. Give more of the name, or a clinic number.` });
  return wearers;
}

function ofWearers(wearers: Awaited<ReturnType<typeof wearersMeant>>): Prisma.TrailEntryWhereInput {
  const wearerIds = wearers.map(({ id }) => id);
  const episodeIds = wearers.flatMap(({ episodes }) => episodes.map(({ id }) => id));
  return {
    OR: [{ wearerId: { in: wearerIds } }, { episodeId: { in: episodeIds } }, { recordId: { in: [...wearerIds, ...episodeIds] } }],
  };
}

const beginOf = (day: string, timeZone: string): Date => new Date(fromClinicTime(`${day}T00:00`, timeZone));

function dayAfter(day: string): string {
  const next = new Date(`${day}T00:00:00Z`);
  next.setUTCDate(next.getUTCDate() + 1);
  return next.toISOString().slice(0, 10);
}

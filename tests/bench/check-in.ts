/**
 * One check-in, from the command to the moment it may be acknowledged (durable on disk), against the same rows written by
 * better-sqlite3 alone: one prepared transaction, the same journal and the same syncing, in a copy of the same file.
 */
import { randomUUID } from "node:crypto";
import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import Database from "better-sqlite3";
import type { Actor } from "@/lib/access/actor";
import { closeDatabase, database } from "@/lib/records/database";
import { settleDue } from "@/lib/records/derived-due";
import { receiveTrialEvents } from "@/lib/records/receive-trial-events";
import { recordWearTrial } from "@/lib/records/record-wear-trial";
import { ensureClient } from "../../lib/setup/build.mjs";
import { closeJournal, makeInventedClinic } from "../../lib/setup/clinic-files.mjs";

const bar = { median: 2, p95: 3 };
const pairs = 600;
const firstRuns = 100;
/** So often what is due is settled between two pairs, untimed: as it is on a server, some moments after a check-in. */
const settledEvery = 20;

type Ways = "recordWearTrial" | "receiveTrialEvents";

export async function checkInWithinBar(): Promise<boolean[]> {
  await ensureClient();
  const folder = mkdtempSync(path.join(tmpdir(), "fitting-ledger-bench-"));
  try {
    const made = path.join(folder, "made.db");
    await makeInventedClinic(made, { secret: "a secret of the bench only" });
    await closeJournal(made);
    const within: boolean[] = [];
    for (const way of ["recordWearTrial", "receiveTrialEvents"] as const) within.push(...(await timed(way, made, folder)));
    return within;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function timed(way: Ways, made: string, folder: string): Promise<boolean[]> {
  const [own, base] = [path.join(folder, `${way}.db`), path.join(folder, `${way}-baseline.db`)];
  for (const file of [own, base]) copyFileSync(made, file);
  process.env.DATABASE_URL = `file:${own}`;
  const db = await database();
  const { id: trialId } = await db.wearTrial.findFirstOrThrow({ where: { state: "planned" }, select: { id: true } });
  const { id, name } = await db.user.findFirstOrThrow({ where: { role: "assistant" }, select: { id: true, name: true } });
  const actor: Actor = { id, name, role: "assistant" };
  const command = (): Promise<unknown> => {
    const events = [checkIn()];
    return way === "recordWearTrial"
      ? recordWearTrial(actor, { trialId, events })
      : receiveTrialEvents(actor, { trialId, sentAt: new Date().toISOString(), events });
  };
  await command();
  await settleDue();
  const baseline = rawWriter(base, await db.trailEntry.findFirstOrThrow({ orderBy: { position: "desc" } }), trialId);

  const times: { own: number; base: number }[] = [];
  for (let pair = 0; pair < firstRuns + pairs; pair++) {
    // Which goes first changes, so that neither always pays for what the other left to the disk.
    const ownFirst = pair % 2 === 0;
    const first = ownFirst ? await msOf(command) : await msOf(baseline.write);
    const second = ownFirst ? await msOf(baseline.write) : await msOf(command);
    if (pair >= firstRuns) times.push(ownFirst ? { own: first, base: second } : { own: second, base: first });
    if (pair % settledEvery === 0) await settleDue();
  }
  baseline.close();
  await closeDatabase();
  const at = (share: number) => ({
    own: percentile(
      times.map((one) => one.own),
      share,
    ),
    base: percentile(
      times.map((one) => one.base),
      share,
    ),
  });
  return [within(`${way}, one check-in: median`, at(0.5), bar.median), within(`${way}: 95 %`, at(0.95), bar.p95)];
}

const checkIn = () => ({
  ...{ id: randomUUID(), kind: "check-in", at: new Date().toISOString(), comfort: 8, pain: 1, exertion: 3, feelings: [] },
  reportedBy: "wearer",
});

interface LastEntry {
  position: number;
  wearerId: string | null;
  episodeId: string | null;
  after: string | null;
  actorId: string;
  actorName: string;
  action: string;
  digest: string;
}

/** Writes what the command writes: the event, the entry of the trail, and the mark on the episode. */
function rawWriter(file: string, last: LastEntry, trialId: string) {
  const connection = new Database(file);
  connection.pragma("journal_mode = WAL");
  connection.pragma("synchronous = FULL");
  connection.pragma("foreign_keys = ON");
  const event = connection.prepare(
    `INSERT INTO TrialEvent (id, trialId, at, kind, comfort, pain, exertion, feelings, reportedBy, recordedById, receivedAt)
     VALUES (?, ?, ?, 'check-in', 8, 1, 3, '[]', 'wearer', ?, ?)`,
  );
  const entry = connection.prepare(
    `INSERT INTO TrailEntry (position, at, actorId, actorName, actorRole, action, recordKind, recordId, wearerId, episodeId,
       after, previousDigest, digest) VALUES (?, ?, ?, ?, 'assistant', ?, 'wear trial', ?, ?, ?, ?, ?, ?)`,
  );
  const episode = connection.prepare("UPDATE Episode SET evidenceVersion = evidenceVersion + 1, derivedDue = ? WHERE id = ?");
  let { position } = last;
  const write = connection.transaction(() => {
    const now = new Date().toISOString().replace("Z", "+00:00");
    position += 1;
    event.run(randomUUID(), trialId, now, last.actorId, now);
    entry.run(
      ...[position, now, last.actorId, last.actorName, last.action, trialId, last.wearerId, last.episodeId],
      ...[last.after, last.digest, last.digest],
    );
    episode.run(now, last.episodeId);
  });
  return { write: () => void write(), close: () => void connection.close() };
}

async function msOf(work: () => unknown): Promise<number> {
  const begun = performance.now();
  await work();
  return performance.now() - begun;
}

const percentile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.ceil(share * values.length) - 1] ?? Number.NaN;

function within(what: string, { own, base }: { own: number; base: number }, most: number): boolean {
  const holds = own <= most * base;
  console.log(
    `${what} ${own.toFixed(2)} ms of ${pairs}, better-sqlite3 alone ${base.toFixed(2)} ms = ${(own / base).toFixed(2)} × (bar ${most} ×): ${holds ? "within" : "misses"}`,
  );
  return holds;
}

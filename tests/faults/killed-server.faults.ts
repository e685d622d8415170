/**
 * Three devices record a wear trial while the server is killed again and again, at random moments, and started again.
 * What it has answered for is in the database, once; what it has not is still on the device.
 *
 * A short run is part of `npm test`; `npm run faults` does a long one.
 */
import { copyFileSync, existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import Database from "better-sqlite3";
import { expect, test } from "vitest";
import { replayWearTrial } from "@/lib/fit";
import { closeDatabase, database } from "@/lib/records/database";
import { rebuildDerived } from "@/lib/records/rebuild";
import { seeEpisodeOfTrial } from "@/lib/records/see-episode";
import { verifyRecord } from "@/lib/records/see-record";
import { ensureBuilt, ensureClient } from "../../lib/setup/build.mjs";
import { freePort } from "../../lib/setup/server.mjs";
import { type ClinicServer, serveDatabase } from "../screens/clinic-server";
import { type Device, newDevice } from "./device";
import { trialToRecord } from "./trial-to-record";

const kills = Number(process.env.FAULT_KILLS ?? 4);
const checkIns = Number(process.env.FAULT_CHECK_INS ?? 120);
const seed = Number(process.env.FAULT_SEED ?? Date.now() % 1_000_000);
/** So long at most the server lives on after its first answer, or now and then after it is up. */
const longestLifeMs = 300;

test(`${kills} kills, ${checkIns} check-ins: nothing lost, nothing twice`, { timeout: 60_000 + kills * 30_000 }, async () => {
  await ensureClient();
  await ensureBuilt();
  const begun = performance.now();
  const draw = numbersFrom(seed);
  const port = await freePort();
  const address = `http://localhost:${port}`;
  const { clinic, file, episodeId, trialId, cookie } = await trialToRecord(address);
  const devices = [0, 1, 2].map(() => newDevice(draw));
  const over = new AbortController();
  const working = devices.map((device) => device.work({ address, cookie, trialId }, over.signal));
  let recorded = 0;
  const record = (until: number) => {
    for (; recorded < until; recorded++) devices[recorded % devices.length]?.record(1);
  };

  let server: ClinicServer | undefined;
  const atKills = { waiting: 0, kept: 0, writtenUnanswered: 0 };
  try {
    for (let kill = 0; kill < kills; kill++) {
      server = await serveDatabase(file, { port });
      record(Math.round((checkIns * (kill + 1)) / (kills + 1)));
      if (draw() < 0.8) await firstAnswer(devices);
      await pause(draw() * longestLifeMs);
      atKills.waiting += devices.some(({ waits }) => waits) ? 1 : 0;
      await server.kill();
      // Whatever was answered for until now has to be there, as the dead server left it.
      const answered = devices.flatMap((device) => [...device.answered.keys()]);
      const there = idsLeftBehind(file, trialId);
      expect(answered.filter((id) => !there.has(id))).toEqual([]);
      for (const { kept } of devices) {
        atKills.kept += kept.size;
        atKills.writtenUnanswered += [...kept.keys()].filter((id) => there.has(id)).length;
      }
      expect(all(devices).length).toBe(recorded);
    }
    server = await serveDatabase(file, { port });
    record(checkIns);
    const giveUpAt = performance.now() + 60_000;
    while (devices.some(({ kept }) => kept.size > 0) && performance.now() < giveUpAt) await pause(20);
  } finally {
    over.abort();
    await Promise.all(working);
    await server?.stop();
  }
  const seconds = (performance.now() - begun) / 1000;

  expect(devices.flatMap(({ amiss }) => amiss)).toEqual([]);
  const answered = devices.flatMap((device) => [...device.answered]);
  expect(new Set(answered.map(([, became]) => became))).not.toContain("set aside");
  process.env.DATABASE_URL = `file:${file}`;
  const db = await database();
  const rows = (await db.trialEvent.findMany({ where: { trialId, kind: "check-in" }, select: { id: true } })).map(({ id }) => id);
  const inTrail = (await db.trailEntry.findMany({ where: { recordId: trialId, action: { startsWith: "received" } } })).flatMap(
    ({ after }) => (JSON.parse(after ?? "[]") as { id: string }[]).map(({ id }) => id), // what receiveTrialEvents writes
  );
  const lost = answered.filter(([id]) => !rows.includes(id)).length;
  const doubled = rows.length - new Set(rows).size + inTrail.length - new Set(inTrail).size;
  console.info(
    [
      `${kills} kills with SIGKILL, ${checkIns} check-ins from ${devices.length} devices in ${sum(devices.map(({ sends }) => sends))} batches (seed ${seed})`,
      `acknowledged ${answered.length}, doubled ${doubled}, lost ${lost}`,
      `${atKills.waiting} kills came while a device waited for an answer; unanswered at a kill, and kept on the device, ${atKills.kept} over all kills, of which ${atKills.writtenUnanswered} were written already`,
      `${seconds.toFixed(0)} s`,
    ].join("\n"),
  );
  expect({ acknowledged: answered.length, doubled, lost }).toEqual({ acknowledged: checkIns, doubled: 0, lost: 0 });
  expect(rows.toSorted()).toEqual(answered.map(([id]) => id).toSorted());
  expect(inTrail.toSorted()).toEqual(rows.toSorted());
  expect(await db.setAsideEvent.count()).toBe(0);

  expect(await verifyRecord(clinic.administrator, null)).toMatchObject({ holds: true });
  const kept = async () => ({
    episode: await db.episode.findUniqueOrThrow({ where: { id: episodeId } }),
    trial: await db.wearTrial.findUniqueOrThrow({ where: { id: trialId } }),
  });
  const before = await kept();
  await rebuildDerived();
  expect(await kept()).toEqual(before);
  const trial = (await seeEpisodeOfTrial(clinic.assistant, trialId)).bundle.wearTrials.find(({ id }) => id === trialId);
  if (!trial) throw new Error("the trial is in its episode");
  expect(replayWearTrial(trial.plan, trial.events).checkIns).toHaveLength(checkIns);
  await closeDatabase();
});

const all = (devices: readonly Device[]): string[] =>
  devices.flatMap(({ kept, answered }) => [...new Set([...kept.keys(), ...answered.keys()])]);

async function firstAnswer(devices: readonly Device[]): Promise<void> {
  const answers = () => sum(devices.map((device) => device.answers));
  const before = answers();
  const giveUpAt = performance.now() + 20_000;
  while (answers() === before && performance.now() < giveUpAt) await pause(5);
}

/** Read from a copy: opening the file itself would put in order what the next server has to find as it is. */
function idsLeftBehind(file: string, trialId: string): Set<string> {
  const folder = mkdtempSync(path.join(tmpdir(), "fitting-ledger-left-"));
  try {
    const copy = path.join(folder, "left.db");
    for (const part of ["", "-wal"]) if (existsSync(file + part)) copyFileSync(file + part, copy + part);
    const left = new Database(copy);
    const ids = left.prepare("SELECT id FROM TrialEvent WHERE trialId = ?").pluck().all(trialId);
    left.close();
    return new Set(ids.map(String));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0);

/** The same numbers for the same seed; when the server dies in a batch is chance all the same. */
function numbersFrom(first: number): () => number {
  let last = first;
  return () => {
    last = (last * 1_103_515_245 + 12_345) % 2_147_483_648;
    return last / 2_147_483_648;
  };
}

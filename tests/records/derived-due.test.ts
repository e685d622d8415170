/** A check-in is answered first; what follows from it is due, and settled before anybody reads. */
import { randomUUID } from "node:crypto";
import { copyFileSync, existsSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { closeDatabase, database } from "@/lib/records/database";
import { moveSocket } from "@/lib/records/move-socket";
import { planWearTrial } from "@/lib/records/plan-wear-trial";
import { receiveTrialEvents } from "@/lib/records/receive-trial-events";
import { recordWearTrial } from "@/lib/records/record-wear-trial";
import { Locked } from "@/lib/records/refusals";
import { seeEpisode } from "@/lib/records/see-episode";
import { verifyRecord } from "@/lib/records/see-record";
import { seeToday } from "@/lib/records/see-today";
import { sign } from "@/lib/records/sign";
import { calmTrial, minutesAfter, openTestClinic, readyEpisode, signingOf, today } from "./clinic";

const begin = minutesAfter(today.toISOString(), -30);
const checkIn = (minutes: number, pain = 0) => ({
  ...{ id: randomUUID(), kind: "check-in", at: minutesAfter(begin, minutes), comfort: 8, pain, exertion: 2 },
  reportedBy: "wearer",
});

async function runningTrial() {
  const clinic = await openTestClinic();
  const { episodeId, trialId, socketId } = await readyEpisode(clinic, { until: "planned" });
  await recordWearTrial(clinic.assistant, { trialId, events: [{ kind: "begun", at: begin }] });
  const db = await database();
  const episode = () => db.episode.findUniqueOrThrow({ where: { id: episodeId } });
  const send = (events: object[]) => receiveTrialEvents(clinic.assistant, { trialId, sentAt: today, events });
  return { clinic, db, episode, episodeId, trialId, socketId, send };
}

describe("a check-in", () => {
  test("marks its episode as due with its evidence, and a query settles that first", async () => {
    const { clinic, db, episode, trialId, send } = await runningTrial();
    const before = await episode();
    expect(before.derivedDue).toBeNull();
    await send([checkIn(5, 8)]);
    expect(await episode()).toMatchObject({
      ...{ evidenceVersion: before.evidenceVersion + 1, derivedDue: today },
      decision: before.decision,
    });
    const { episodes } = await seeToday(clinic.prosthetist, null);
    expect(episodes).toMatchObject([{ decision: "must not be released" }]);
    expect(await episode()).toMatchObject({ derivedDue: null, evidenceVersion: before.evidenceVersion + 1 });
    expect(await db.wearTrial.findUniqueOrThrow({ where: { id: trialId } })).toMatchObject({ verdict: "not passed" });
  });

  test("is settled by itself, a moment later", async () => {
    const { episode, send } = await runningTrial();
    await send([checkIn(5, 8)]);
    await send([checkIn(10)]);
    await expect.poll(async () => (await episode()).derivedDue).toBeNull();
    expect((await episode()).decision).toBe("must not be released");
  });

  test("is not overlooked by a command that reads what follows from it", async () => {
    const { clinic, socketId, send } = await runningTrial();
    await send([checkIn(5, 8)]);
    const plan = { socketId, minutes: 20, intervalMin: 5, loadKg: 0.68, loadDistanceMm: 220, activities: "writing" };
    await expect(planWearTrial(clinic.assistant, plan)).rejects.toThrow(/try a socket again that was forbidden/);
  });

  test("is settled after a crash that came between", async () => {
    const { clinic, episodeId, send } = await runningTrial();
    await send([checkIn(5, 8)]);
    const left = `${clinic.file}.left`;
    for (const part of ["", "-wal"]) if (existsSync(clinic.file + part)) copyFileSync(clinic.file + part, left + part);
    await closeDatabase();
    process.env.DATABASE_URL = `file:${left}`;
    const db = await database();
    expect(await db.episode.findUniqueOrThrow({ where: { id: episodeId } })).toMatchObject({ derivedDue: today });
    expect((await seeToday(clinic.prosthetist, null)).episodes).toMatchObject([{ decision: "must not be released" }]);
  });

  test("lies in the file as Prisma would have written it", async () => {
    const { clinic, db, trialId } = await runningTrial();
    const feelings = [{ kind: "pressure", aspect: "lateral", third: "distal" }];
    const sent = { ...checkIn(5, 2), feelings, note: "at the rim" };
    const sentAt = new Date(today.getTime() - 3_600_000);
    await receiveTrialEvents(clinic.assistant, { trialId, sentAt, events: [{ ...sent, at: minutesAfter(sent.at, -60) }] });
    const { id: _id, kind, comfort, pain, exertion, reportedBy, note } = sent;
    const row = await db.trialEvent.findUniqueOrThrow({ where: { id: sent.id } });
    expect(row).toEqual({
      ...{ id: sent.id, trialId, kind, comfort, pain, exertion, feelings, reportedBy, note, sign: null, corrects: null },
      ...{ at: new Date(sent.at), deviceAt: new Date(minutesAfter(sent.at, -60)), receivedAt: today },
      recordedById: clinic.assistant.id,
    });
    // Written by Prisma and read as it lies there, the times have the same form.
    await db.trialEvent.create({ data: { ...row, feelings, id: "by Prisma" } });
    const raw = await db.$queryRaw<
      { at: string; feelings: string }[]
    >`SELECT at || deviceAt || receivedAt AS at, CAST(feelings AS TEXT) AS feelings FROM TrialEvent WHERE id IN (${sent.id}, 'by Prisma')`;
    expect(raw).toHaveLength(2);
    expect(raw[0]).toEqual(raw[1]);
  });
});

test("where a trial ends, what follows is there with the answer", async () => {
  const { episode, db, trialId, send } = await runningTrial();
  await send([checkIn(5), { id: randomUUID(), kind: "stop-sign", sign: "numbness", at: minutesAfter(begin, 6) }]);
  expect(await episode()).toMatchObject({ derivedDue: null, decision: "must not be released" });
  expect(await db.wearTrial.findUniqueOrThrow({ where: { id: trialId } })).toMatchObject({
    state: "stopped",
    verdict: "stopped",
  });
});

test("what is refused leaves nothing, and the next one finds the store free", async () => {
  const { clinic, db, episode, trialId, send } = await runningTrial();
  const [count, { evidenceVersion }] = [await db.trialEvent.count(), await episode()];
  const ahead = { ...checkIn(5), at: minutesAfter(today.toISOString(), 60) };
  await expect(recordWearTrial(clinic.assistant, { trialId, events: [checkIn(5), ahead] })).rejects.toThrow();
  // And where the disk or the database fails between the event and its entry in the trail.
  await db.$executeRaw`CREATE TRIGGER fails BEFORE INSERT ON TrailEntry BEGIN SELECT RAISE(ABORT, 'no room'); END`;
  await expect(send([checkIn(5)])).rejects.toThrow("no room");
  await db.$executeRaw`DROP TRIGGER fails`;
  expect(await db.trialEvent.count()).toBe(count);
  expect((await episode()).evidenceVersion).toBe(evidenceVersion);
  expect((await send([checkIn(5)])).received).toMatchObject([{ became: "stored" }]);
});

test("a locked trial refuses what a form records", async () => {
  const clinic = await openTestClinic();
  const { episodeId, trialId } = await readyEpisode(clinic);
  await sign(clinic.prosthetist, await signingOf(episodeId, "wear trial accepted"));
  await expect(recordWearTrial(clinic.assistant, { trialId, events: calmTrial(begin) })).rejects.toThrow(Locked);
});

test("an episode that cannot be judged stays due and holds up no other", async () => {
  const { clinic, db, episode, episodeId, send } = await runningTrial();
  await send([checkIn(5)]);
  await db.episode.update({ where: { id: episodeId }, data: { level: "no such level" } });
  await expect(seeToday(clinic.prosthetist, null)).resolves.toMatchObject({ episodes: [{ id: episodeId }] });
  expect((await episode()).derivedDue).toEqual(today);
});

test("quick and ordinary commands take turns: none is lost, and the chain holds", async () => {
  const { clinic, db, trialId, socketId, send } = await runningTrial();
  const { version } = await db.checkSocket.findUniqueOrThrow({ where: { id: socketId } });
  const checkIns = Array.from({ length: 20 }, (_, index) => checkIn(index));
  await Promise.all([
    ...checkIns.slice(0, 10).map((one) => send([one])),
    moveSocket(clinic.assistant, { socketId, version, state: "sent", at: today }),
    ...checkIns.slice(10).map((one) => recordWearTrial(clinic.assistant, { trialId, events: [one] })),
    seeToday(clinic.prosthetist, null),
  ]);
  expect(await db.trialEvent.count({ where: { trialId, kind: "check-in" } })).toBe(20);
  expect(await verifyRecord(clinic.administrator, null)).toMatchObject({ holds: true });
  const { bundle } = await seeEpisode(
    clinic.assistant,
    (await db.wearTrial.findUniqueOrThrow({ where: { id: trialId } })).episodeId,
  );
  expect(bundle.wearTrials[0]?.events).toHaveLength(21);
});

import { randomUUID } from "node:crypto";
import { describe, expect, test } from "vitest";
import { database } from "@/lib/records/database";
import { planWearTrial } from "@/lib/records/plan-wear-trial";
import { receiveTrialEvents } from "@/lib/records/receive-trial-events";
import { InputRefused, NotAllowed, NotFound } from "@/lib/records/refusals";
import { sign } from "@/lib/records/sign";
import { calmTrial, minutesAfter, openTestClinic, password, readyEpisode, today, trialBegin } from "./clinic";

const begin = "2026-10-08T08:00:00Z";
const kept = (from = begin) => calmTrial(from).map((event) => ({ ...event, id: randomUUID() }));

/** A trial that was planned and has not begun. */
async function plannedTrial() {
  const clinic = await openTestClinic();
  const { episodeId, trialId, socketId } = await readyEpisode(clinic, { until: "planned" });
  const db = await database();
  const times = async () =>
    (await db.trialEvent.findMany({ where: { trialId }, orderBy: { at: "asc" } })).map(({ at }) => at.toISOString());
  const send = (events: object[], sentAt: Date | string = today) =>
    receiveTrialEvents(clinic.assistant, { trialId, sentAt, events }).then(({ received }) => received);
  return { clinic, db, episodeId, trialId, socketId, send, times };
}

const became = (received: readonly { became: string }[]) => received.map((one) => one.became);

describe("what a device kept of a trial", () => {
  test("is stored once, however often, in whatever order and in whatever pieces it comes", async () => {
    const { db, trialId, send } = await plannedTrial();
    const events = kept();
    expect(new Set(became(await send(events.slice(3).toReversed())))).toEqual(new Set(["stored"]));
    expect(became(await send([...events, ...events])).filter((one) => one === "stored")).toHaveLength(3);
    expect(new Set(became(await send(events)))).toEqual(new Set(["known"]));
    expect(await db.trialEvent.count({ where: { trialId } })).toBe(events.length);
    expect(await db.wearTrial.findUniqueOrThrow({ where: { id: trialId } })).toMatchObject({ state: "ended" });
  });

  test("one that is wrong is set aside as it came, and holds up no other", async () => {
    const { db, trialId, send } = await plannedTrial();
    const [first, second, ...rest] = kept();
    const wrong = { ...second, pain: 11, colour: "blue" };
    const received = await send([first, wrong, ...rest].flatMap((event) => event ?? []));
    expect(became(received)).toEqual(["stored", "set aside", ...rest.map(() => "stored")]);
    expect(received[1]?.why).toMatch(/Pain is between 0 and 10/);
    expect(await db.setAsideEvent.findMany()).toMatchObject([{ id: second?.id, trialId, event: { pain: 11, colour: "blue" } }]);
    // Sent again it is told the same, and kept once.
    expect(await send([wrong])).toEqual([received[1]]);
    expect(await db.setAsideEvent.count()).toBe(1);
  });

  test.each([
    ["ahead", 3 * 3600],
    ["behind", -2 * 3600],
  ])("a clock that is hours %s is put right by what it said when it sent", async (_word, offS) => {
    const { db, send, times } = await plannedTrial();
    const shifted = (at: string | Date) => new Date(new Date(at).getTime() + offS * 1000);
    const events = kept().map((event) => ({ ...event, at: shifted(event.at).toISOString() }));
    expect(new Set(became(await send(events, shifted(today))))).toEqual(new Set(["stored"]));
    expect((await times())[0]).toBe(new Date(begin).toISOString());
    expect((await db.trialEvent.findFirstOrThrow({ where: { kind: "begun" } })).deviceAt).toEqual(shifted(begin));
  });

  test("a clock that is off by less than a minute is let be", async () => {
    const { db, send, times } = await plannedTrial();
    await send(kept(), new Date(today.getTime() + 50_000));
    expect((await times())[0]).toBe(new Date(begin).toISOString());
    expect(await db.trialEvent.count({ where: { NOT: { deviceAt: null } } })).toBe(0);
  });

  test("from the future, from before the socket, or about a check-in that nobody knows: set aside", async () => {
    const { send } = await plannedTrial();
    const [, checkIn] = kept();
    const at = (when: string) => ({ ...checkIn, id: randomUUID(), at: when });
    const correction = { id: randomUUID(), kind: "corrected", at: begin, corrects: randomUUID(), note: "slip", pain: 2 };
    const received = await send([at(minutesAfter(today.toISOString(), 30)), at("2026-01-01T10:00:00Z"), correction]);
    expect(received.map(({ why }) => why)).toEqual([
      expect.stringMatching(/has not come yet/),
      expect.stringMatching(/was specified only after this/),
      expect.stringMatching(/Choose a check-in of this trial/),
    ]);
  });

  test("a stop sign is stored whatever its clock says, and stops the trial", async () => {
    const { db, trialId, send } = await plannedTrial();
    const sign = { id: randomUUID(), kind: "stop-sign", sign: "numbness", at: minutesAfter(today.toISOString(), 60) };
    expect(became(await send([...kept(), sign]))).not.toContain("set aside");
    expect(await db.wearTrial.findUniqueOrThrow({ where: { id: trialId } })).toMatchObject({ verdict: "stopped" });
  });

  test("what comes after the signature is kept beside the trial and changes nothing of it", async () => {
    const clinic = await openTestClinic();
    const { episodeId, trialId } = await readyEpisode(clinic);
    const db = await database();
    const { evidenceVersion } = await db.episode.findUniqueOrThrow({ where: { id: episodeId } });
    await sign(clinic.prosthetist, { episodeId, evidenceVersion, meaning: "wear trial accepted", password });
    const before = await db.trialEvent.count({ where: { trialId } });
    const late = {
      id: randomUUID(),
      kind: "check-in",
      at: minutesAfter(trialBegin, 18),
      comfort: 2,
      pain: 7,
      exertion: 3,
      reportedBy: "wearer",
    };
    const { received } = await receiveTrialEvents(clinic.assistant, { trialId, sentAt: today, events: [late] });
    expect(received).toEqual([{ id: late.id, became: "set aside", why: expect.stringMatching(/signed for this socket/) }]);
    expect(await db.trialEvent.count({ where: { trialId } })).toBe(before);
    expect(await db.trailEntry.findFirstOrThrow({ orderBy: { position: "desc" } })).toMatchObject({
      action: "set aside what a wear trial could not take",
      recordId: trialId,
      after: expect.stringContaining(late.id),
    });
  });

  test("an event of another trial stays there", async () => {
    const { clinic, db, trialId, socketId, send } = await plannedTrial();
    const [begun] = kept();
    await send([begun ?? {}]);
    const plan = { socketId, minutes: 20, intervalMin: 5, loadKg: 0.68, loadDistanceMm: 220, activities: "writing" };
    const other = await planWearTrial(clinic.assistant, plan);
    const { received } = await receiveTrialEvents(clinic.assistant, {
      ...{ trialId: other.trialId, sentAt: today },
      events: [begun],
    });
    expect(received).toMatchObject([{ became: "set aside", why: "Another wear trial has an event of this id." }]);
    expect(await db.trialEvent.count({ where: { trialId } })).toBe(1);
    expect(await db.trialEvent.count({ where: { trialId: other.trialId } })).toBe(0);
  });

  test("a batch without ids, of nobody's trial, or from who may not, is refused whole and stays on the device", async () => {
    const { clinic, db, trialId } = await plannedTrial();
    const [begun] = kept();
    const { id: _, ...nameless } = begun ?? {};
    const send = (trial: string, events: unknown[], actor = clinic.assistant) =>
      receiveTrialEvents(actor, { trialId: trial, sentAt: today, events });
    await expect(send(trialId, [nameless])).rejects.toThrow(InputRefused);
    await expect(send(trialId, [])).rejects.toThrow(InputRefused);
    await expect(send("no such trial", [begun])).rejects.toThrow(NotFound);
    await expect(send(trialId, [begun], clinic.technician)).rejects.toThrow(NotAllowed);
    expect(await db.trialEvent.count({ where: { trialId } })).toBe(0);
  });
});

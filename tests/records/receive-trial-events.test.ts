import { randomUUID } from "node:crypto";
import { describe, expect, test } from "vitest";
import { database } from "@/lib/records/database";
import { planWearTrial } from "@/lib/records/plan-wear-trial";
import { rebuildDerived } from "@/lib/records/rebuild";
import { receiveTrialEvents } from "@/lib/records/receive-trial-events";
import { lookAtSkin } from "@/lib/records/record-wear-trial";
import { InputRefused, NotAllowed, NotFound } from "@/lib/records/refusals";
import { seeEpisode } from "@/lib/records/see-episode";
import { graveOf } from "@/lib/records/set-aside";
import { sign } from "@/lib/records/sign";
import { calmTrial, evenMarks, minutesAfter, openTestClinic, readyEpisode, signingOf, today, trialBegin } from "./clinic";

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

const checkIn = (said: { at: string; pain: number }) => ({
  ...{ id: randomUUID(), kind: "check-in", comfort: 8, exertion: 3, reportedBy: "wearer" },
  ...said,
});

const planOf = (socketId: string) => ({
  ...{ socketId, minutes: 20, intervalMin: 5, loadKg: 0.68, loadDistanceMm: 220, activities: "writing" },
});

const became = (received: readonly { became: string }[]) => received.map((one) => one.became);

test.each([
  [{ kind: "stop-sign" }, "stop sign"],
  [{ kind: "STOP SIGN!" }, "stop sign"],
  [{ kind: "check-in", pain: 7 }, "pain"],
  [{ kind: "check-in", pain: "12" }, "pain"],
  [{ kind: 4, pain: "8,5" }, "pain"],
  [{ kind: "check-in", pain: 6.9 }, null],
  [{ kind: "check-in", pain: "much" }, null],
  [{ kind: "look at the skin", marks: [{ broken: false }, { broken: true }] }, "hurt skin"],
  [{ kind: "look at the skin", marks: [{ strength: "purple" }] }, "hurt skin"],
  [{ kind: "look at the skin", marks: "none" }, null],
  ["nothing", null],
])("%j as it came is grave: %s", (event, grave) => {
  expect(graveOf(event, 7)).toBe(grave);
});

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

  test.each([
    ["an hour ahead", minutesAfter(today.toISOString(), 60)],
    ["from before the socket was specified", "2026-01-01T10:00:00Z"],
    ["from the beginning of the calendar", "0001-01-01T00:00:00Z"],
    ["from its end", "9999-12-31T23:59:59Z"],
  ])("high pain %s is stored and judged, and proves nothing good", async (_when, at) => {
    const { db, clinic, episodeId, trialId, send } = await plannedTrial();
    expect(became(await send([...kept(), checkIn({ at, pain: 8 })]))).not.toContain("set aside");
    expect(await db.wearTrial.findUniqueOrThrow({ where: { id: trialId } })).toMatchObject({ verdict: "not passed" });
    const { assessment, bundle } = await seeEpisode(clinic.assistant, episodeId);
    expect(assessment.gates.find(({ id }) => id === "pain")).toMatchObject({ state: "forbids", value: 8 });
    expect(bundle.wearTrials[0]?.events.filter(({ misdated }) => misdated)).toMatchObject([{ pain: 8 }]);
    const { lastSeenAt, decision } = await db.episode.findUniqueOrThrow({ where: { id: episodeId } });
    expect(lastSeenAt?.getTime()).toBeLessThanOrEqual(today.getTime());
    expect(decision).toBe("must not be released");
  });

  test("a whole trial that is dated ahead proves nothing, neither now nor when that time has come", async () => {
    const { db, clinic, trialId, episodeId, send } = await plannedTrial();
    await send(kept(minutesAfter(today.toISOString(), 60)));
    const state = async () => (await db.wearTrial.findUniqueOrThrow({ where: { id: trialId } })).state;
    expect(await state()).toBe("planned");
    clinic.setNow("2026-10-09T09:00:00Z");
    expect((await seeEpisode(clinic.assistant, episodeId)).assessment.subject).not.toHaveProperty("trialId");
    await rebuildDerived(new Date("2026-10-09T09:00:00Z"));
    expect(await state()).toBe("planned");
  });

  test("a look at the skin is not held up by a doffing that was dated ahead", async () => {
    const { clinic, trialId, send } = await plannedTrial();
    await send(
      kept().map((event) => (event.kind === "doffed" ? { ...event, at: minutesAfter(today.toISOString(), 90) } : event)),
    );
    const look = { trialId, at: minutesAfter(begin, 22), minutesAfterDoffing: 1, marks: evenMarks("clear") };
    await expect(lookAtSkin(clinic.assistant, look)).resolves.toMatchObject({ trialId });
  });

  test("a correction that comes before its check-in is taken, and one of another trial's check-in is set aside", async () => {
    const { clinic, db, trialId, socketId, send } = await plannedTrial();
    const [begun, first, ...rest] = kept();
    const correction = {
      id: randomUUID(),
      kind: "corrected",
      at: minutesAfter(begin, 6),
      corrects: first?.id,
      note: "slip",
      pain: 2,
    };
    expect(became(await send([correction]))).toEqual(["stored"]);
    await send([begun, first, ...rest].flatMap((event) => event ?? []));
    expect(await db.wearTrial.findUniqueOrThrow({ where: { id: trialId } })).toMatchObject({ state: "ended", verdict: "passed" });
    const other = await planWearTrial(clinic.assistant, planOf(socketId));
    const { received } = await receiveTrialEvents(clinic.assistant, {
      ...{ trialId: other.trialId, sentAt: today },
      events: [{ ...correction, id: randomUUID() }],
    });
    expect(received).toMatchObject([{ became: "set aside", why: "Choose a check-in of this trial." }]);
  });

  test("a stop sign is stored whatever its clock says, and stops the trial", async () => {
    const { db, trialId, send } = await plannedTrial();
    const sign = { id: randomUUID(), kind: "stop-sign", sign: "numbness", at: minutesAfter(today.toISOString(), 60) };
    expect(became(await send([...kept(), sign]))).not.toContain("set aside");
    expect(await db.wearTrial.findUniqueOrThrow({ where: { id: trialId } })).toMatchObject({ verdict: "stopped" });
  });

  test.each([
    [
      "of an unknown kind",
      { kind: "stop-sign", sign: "lightning", at: minutesAfter(begin, 7) },
      "wearer-asks",
      minutesAfter(begin, 7),
    ],
    ["without a time", { kind: "stop-sign", sign: "numbness" }, "numbness", today.toISOString()],
    ["with a time that is none", { kind: "Stop sign", at: "soon", sign: 3 }, "wearer-asks", today.toISOString()],
    [
      "with fields of its own",
      { kind: "stop_sign", sign: "cold", at: minutesAfter(begin, 7), colour: "x".repeat(5000) },
      "cold",
      minutesAfter(begin, 7),
    ],
  ])("a stop sign %s stops the trial, and is kept as it came", async (_what, came, sign, at) => {
    const { db, clinic, episodeId, trialId, send } = await plannedTrial();
    const sent = { id: randomUUID(), ...came };
    const [received] = (await send([...kept(), sent])).slice(-1);
    expect(received).toMatchObject({ became: "stored", why: expect.stringMatching(/counts as a stop sign/) });
    expect(await db.trialEvent.findUniqueOrThrow({ where: { id: sent.id } })).toMatchObject({
      ...{ kind: "stop-sign", sign, at: new Date(at) },
      note: expect.stringContaining(JSON.stringify(came.sign ?? "It came as {")),
    });
    expect(await db.setAsideEvent.findMany()).toMatchObject([{ id: sent.id, trialId, event: came }]);
    expect(await db.wearTrial.findUniqueOrThrow({ where: { id: trialId } })).toMatchObject({ verdict: "stopped" });
    expect((await seeEpisode(clinic.assistant, episodeId)).setAside).toMatchObject([{ judged: true, grave: "stop sign" }]);
    // Sent again it is known, and kept once.
    expect(became(await send([sent]))).toEqual(["known"]);
    expect(await db.setAsideEvent.count()).toBe(1);
  });

  test("what was set aside for one trial is no reason to lose it for another", async () => {
    const { clinic, db, socketId, send } = await plannedTrial();
    const unreadable = { id: randomUUID(), kind: "check-in", at: begin, pain: 9 };
    expect(became(await send([unreadable]))).toEqual(["set aside"]);
    const other = await planWearTrial(clinic.assistant, planOf(socketId));
    const toOther = (event: object) =>
      receiveTrialEvents(clinic.assistant, { trialId: other.trialId, sentAt: today, events: [event] });
    expect((await toOther(unreadable)).received).toMatchObject([{ became: "set aside" }]);
    expect(await db.setAsideEvent.count({ where: { trialId: other.trialId } })).toBe(1);
  });

  test("what comes after the signature is kept beside the trial and changes nothing of it", async () => {
    const clinic = await openTestClinic();
    const { episodeId, trialId } = await readyEpisode(clinic);
    const db = await database();
    await sign(clinic.prosthetist, await signingOf(episodeId, "wear trial accepted"));
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
    const stop = { id: randomUUID(), kind: "stop-sign", sign: "lightning", at: minutesAfter(trialBegin, 18) };
    await receiveTrialEvents(clinic.assistant, { trialId, sentAt: today, events: [stop] });
    expect((await seeEpisode(clinic.assistant, episodeId)).setAside).toMatchObject([
      ...[late, stop]
        .toSorted((a, b) => (a.id < b.id ? -1 : 1))
        .map(({ id, kind }) => ({ id, judged: false, afterSignature: true, grave: kind === "stop-sign" ? "stop sign" : "pain" })),
    ]);
    expect(await db.wearTrial.findUniqueOrThrow({ where: { id: trialId } })).toMatchObject({ verdict: "passed" });
  });

  test("an event of another trial stays there", async () => {
    const { clinic, db, trialId, socketId, send } = await plannedTrial();
    const [begun] = kept();
    await send([begun ?? {}]);
    const other = await planWearTrial(clinic.assistant, planOf(socketId));
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

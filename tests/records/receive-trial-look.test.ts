import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { database } from "@/lib/records/database";
import { receiveTrialEvents } from "@/lib/records/receive-trial-events";
import { receiveTrialLook } from "@/lib/records/receive-trial-look";
import { InputRefused, NotAllowed, NotFound } from "@/lib/records/refusals";
import { seeEpisode } from "@/lib/records/see-episode";
import { sign } from "@/lib/records/sign";
import { calmTrial, evenMarks, minutesAfter, openTestClinic, readyEpisode, signingOf, today, trialBegin } from "./clinic";

async function wornTrial() {
  const clinic = await openTestClinic();
  const found = await readyEpisode(clinic, { until: "worn" });
  const db = await database();
  const send = (look: object, sentAt: Date | string = today) =>
    receiveTrialLook(clinic.assistant, { trialId: found.trialId, sentAt, look }).then(({ received }) => received[0]);
  const looks = () =>
    db.skinInspection.findMany({ where: { trialId: found.trialId }, include: { marks: true }, orderBy: { at: "asc" } });
  return { clinic, db, ...found, send, looks };
}

/** The calm trial is doffed at its 21st minute. */
const lookAt = (minute: number, more: object = {}) => ({
  ...{
    id: randomUUID(),
    at: minutesAfter(trialBegin, 21 + minute),
    minutesAfterDoffing: minute,
    marks: evenMarks("clear"),
    noMarks: false,
  },
  ...more,
});

test("a look that comes again and again is stored once", async () => {
  const { send, looks } = await wornTrial();
  const look = lookAt(1);
  expect(await send(look)).toEqual({ id: look.id, became: "stored" });
  expect(await send(look)).toEqual({ id: look.id, became: "known" });
  expect(await looks()).toMatchObject([{ id: look.id, minutesAfterDoffing: 1 }]);
});

test("a clock that is hours off is put right by what the device said when it sent", async () => {
  const { send, looks } = await wornTrial();
  const offMs = 3 * 3600_000;
  const look = lookAt(2);
  const fast = (at: string | Date) => new Date(new Date(at).getTime() + offMs).toISOString();
  expect(await send({ ...look, at: fast(look.at) }, fast(today))).toMatchObject({ became: "stored" });
  expect((await looks()).map(({ at }) => at.toISOString())).toEqual([new Date(look.at).toISOString()]);
});

test("the times on record say how long after doffing it was; what the device said stands in the note", async () => {
  const { send, looks } = await wornTrial();
  await send(lookAt(9, { minutesAfterDoffing: 1, note: "in the kitchen" }));
  expect(await looks()).toMatchObject([
    { minutesAfterDoffing: 9, note: "in the kitchen The device said 1 minutes after doffing." },
  ]);
});

test("a look is taken before the events of its trial are there", async () => {
  const clinic = await openTestClinic();
  const { trialId } = await readyEpisode(clinic, { until: "planned" });
  const { received } = await receiveTrialLook(clinic.assistant, { trialId, sentAt: today, look: lookAt(1) });
  expect(received).toMatchObject([{ became: "stored" }]);
  const events = calmTrial().map((event) => ({ ...event, id: randomUUID() }));
  await receiveTrialEvents(clinic.assistant, { trialId, sentAt: today, events });
  expect(await (await database()).wearTrial.findUniqueOrThrow({ where: { id: trialId } })).toMatchObject({ state: "ended" });
});

test("what cannot be taken is kept as it came with the reason; hurt skin stands beside the decision", async () => {
  const { clinic, db, episodeId, send, looks } = await wornTrial();
  const off = lookAt(1, { marks: [{ ...evenMarks("clear")[0], distanceFromEndMm: 900, broken: true }] });
  expect(await send(off)).toMatchObject({ became: "set aside", why: expect.stringContaining("off it") });
  const silent = lookAt(1, { marks: [] });
  expect(await send(silent)).toMatchObject({ became: "set aside", why: expect.stringContaining("no") });
  expect(await send(silent)).toMatchObject({ became: "set aside" });
  const later = lookAt(1, { at: new Date(today.getTime() + 3600_000).toISOString() });
  expect(await send(later)).toMatchObject({ became: "set aside", why: expect.stringContaining("has not come yet") });
  expect(await looks()).toEqual([]);
  expect(await db.setAsideEvent.count()).toBe(3);
  const { setAside } = await seeEpisode(clinic.assistant, episodeId);
  expect(setAside.find(({ id }) => id === off.id)).toMatchObject({ grave: "hurt skin", judged: false, afterSignature: false });
});

test("under a signature a look is set aside and changes nothing", async () => {
  const clinic = await openTestClinic();
  const { episodeId, trialId } = await readyEpisode(clinic);
  const db = await database();
  await sign(clinic.prosthetist, await signingOf(episodeId, "wear trial accepted"));
  const before = await db.skinInspection.count({ where: { trialId } });
  const { received } = await receiveTrialLook(clinic.assistant, { trialId, sentAt: today, look: lookAt(20) });
  expect(received).toMatchObject([{ became: "set aside", why: expect.stringMatching(/signed for this socket/) }]);
  expect(await db.skinInspection.count({ where: { trialId } })).toBe(before);
});

test("what cannot be told apart, or comes from who may not, is refused whole and stays on the device", async () => {
  const { clinic, trialId, send } = await wornTrial();
  await expect(send({ ...lookAt(1), id: "one" })).rejects.toThrow(InputRefused);
  const look = lookAt(1);
  await expect(receiveTrialLook(clinic.technician, { trialId, sentAt: today, look })).rejects.toThrow(NotAllowed);
  await expect(receiveTrialLook(clinic.assistant, { trialId: randomUUID(), sentAt: today, look })).rejects.toThrow(NotFound);
});

import { expect, test } from "vitest";
import { database } from "@/lib/records/database";
import { deliverSocket } from "@/lib/records/deliver-socket";
import { measureLimb } from "@/lib/records/measure-limb";
import { rebuildDerived } from "@/lib/records/rebuild";
import { recordWearTrial } from "@/lib/records/record-wear-trial";
import { Locked, NotReady } from "@/lib/records/refusals";
import { seeEpisode } from "@/lib/records/see-episode";
import { verifyRecord } from "@/lib/records/see-record";
import { seeRelease } from "@/lib/records/see-release";
import { sign } from "@/lib/records/sign";
import { specifySocket } from "@/lib/records/specify-socket";
import { withdrawSignature } from "@/lib/records/withdraw-signature";
import { sha256 } from "@/lib/trail/chain";
import {
  calmTrial,
  minutesAfter,
  openTestClinic,
  password,
  readyEpisode,
  signingOf,
  stations,
  today,
  trialBegin,
} from "./clinic";

const release = "release for definitive fabrication";

test("the whole job: a ready episode is accepted, released, delivered, and every step is in an unbroken trail", async () => {
  const clinic = await openTestClinic();
  const { episodeId } = await readyEpisode(clinic);
  const before = await seeEpisode(clinic.prosthetist, episodeId);
  expect(before.assessment.gates.filter(({ state }) => state !== "met")).toEqual([]);
  expect(before.episode).toMatchObject({ decision: "ready", stage: "awaiting sign-off", nextStep: "sign" });

  await sign(clinic.prosthetist, await signingOf(episodeId, "wear trial accepted"));
  expect((await seeEpisode(clinic.prosthetist, episodeId)).episode).toMatchObject({
    nextStep: "release",
    stage: "awaiting sign-off",
  });

  const { signOffId } = await sign(clinic.prosthetist, await signingOf(episodeId, release));
  expect((await seeEpisode(clinic.prosthetist, episodeId)).episode).toMatchObject({ nextStep: "deliver", stage: "released" });

  const { signOff, evidence } = await seeRelease(clinic.technician, signOffId);
  expect(sha256(signOff.evidence)).toBe(signOff.digest);
  expect(evidence.assessment.decision).toBe("ready");
  expect(evidence.previousDigest).toBe(signOff.previousDigest);
  expect(signOff.previousDigest).not.toMatch(/^0+$/);

  await deliverSocket(clinic.assistant, { episodeId, at: today, confirmed: ["not measured"] });
  expect((await seeEpisode(clinic.prosthetist, episodeId)).episode).toMatchObject({ nextStep: null, stage: "delivered" });
  expect(await verifyRecord(clinic.prosthetist, null)).toMatchObject({ holds: true });
});

test("what a release covers is locked for every command, and free again once the release is withdrawn", async () => {
  const clinic = await openTestClinic();
  const { episodeId, trialId } = await readyEpisode(clinic);
  const { signOffId } = await sign(clinic.prosthetist, await signingOf(episodeId, release));
  const measurement = { episodeId, at: "2026-10-07T09:00:00Z", method: "tape", stations: stations([170, 180, 190]) };
  await expect(measureLimb(clinic.assistant, measurement)).rejects.toThrow(Locked);
  await expect(specifySocket(clinic.prosthetist, { episodeId })).rejects.toThrow(Locked);
  await expect(recordWearTrial(clinic.assistant, { trialId, events: calmTrial() })).rejects.toThrow(Locked);
  await expect(sign(clinic.prosthetist, await signingOf(episodeId, release))).rejects.toThrow(Locked);

  await withdrawSignature(clinic.colleague, { signOffId, why: "the definitive was laminated over the wrong model", password });
  expect((await seeEpisode(clinic.prosthetist, episodeId)).episode).toMatchObject({
    stage: "awaiting sign-off",
    nextStep: "sign",
  });
  await measureLimb(clinic.assistant, measurement);
  const { signOff } = await seeRelease(clinic.technician, signOffId);
  expect(signOff.withdrawal).toMatchObject({
    byName: "Another Prosthetist",
    why: "the definitive was laminated over the wrong model",
  });
});

test("a trial with a stop sign cannot be signed, whatever is accepted with it", async () => {
  const clinic = await openTestClinic();
  const { episodeId, trialId } = await readyEpisode(clinic);
  await recordWearTrial(clinic.assistant, {
    trialId,
    events: [{ kind: "stop-sign", sign: "numbness", at: minutesAfter(trialBegin, 12) }],
  });
  expect((await seeEpisode(clinic.prosthetist, episodeId)).episode.decision).toBe("must not be released");
  for (const meaning of ["wear trial accepted", release]) {
    await expect(sign(clinic.prosthetist, await signingOf(episodeId, meaning))).rejects.toThrow(NotReady);
    const bent = { ...(await signingOf(episodeId, meaning)), acceptances: [{ gate: "no-stop-sign", why: "it went away" }] };
    await expect(sign(clinic.prosthetist, bent)).rejects.toThrow("One field needs another look");
  }
  expect(await (await database()).signOff.count()).toBe(0);
});

test("a gate that may be accepted is accepted with a reason as part of the signature", async () => {
  const clinic = await openTestClinic();
  const { episodeId, trialId } = await readyEpisode(clinic, { until: "fitted" });
  expect(trialId).toBe("");
  const { planWearTrial } = await import("@/lib/records/plan-wear-trial");
  const { lookAtSkin } = await import("@/lib/records/record-wear-trial");
  const { evenMarks } = await import("./clinic");
  const { socketId } = (await seeEpisode(clinic.prosthetist, episodeId)).assessment.subject ?? { socketId: "" };
  const light = await planWearTrial(clinic.assistant, {
    socketId,
    minutes: 20,
    loadKg: 0.4,
    loadDistanceMm: 220,
    intervalMin: 5,
    activities: ["writing"],
  });
  await recordWearTrial(clinic.assistant, { trialId: light.trialId, events: calmTrial() });
  await lookAtSkin(clinic.assistant, {
    trialId: light.trialId,
    at: minutesAfter(trialBegin, 22),
    minutesAfterDoffing: 1,
    marks: evenMarks("clear"),
  });
  await lookAtSkin(clinic.assistant, {
    trialId: light.trialId,
    at: minutesAfter(trialBegin, 29),
    minutesAfterDoffing: 8,
    marks: evenMarks("none"),
  });

  await expect(sign(clinic.prosthetist, await signingOf(episodeId, release))).rejects.toThrow(NotReady);
  const { signOffId } = await sign(clinic.prosthetist, {
    ...(await signingOf(episodeId, release)),
    acceptances: [{ gate: "trial-load", why: "The wearer's hand is lighter than planned; a heavier one follows after a month." }],
  });
  const { evidence } = await seeRelease(clinic.prosthetist, signOffId);
  expect(evidence.assessment.decision).toBe("ready with conditions");
  expect(evidence.bundle.acceptances).toMatchObject([{ gate: "trial-load", by: "A Prosthetist" }]);
});

test("a wrong password signs nothing, is on the trail, and five of them end the tries", async () => {
  const clinic = await openTestClinic();
  const { episodeId } = await readyEpisode(clinic);
  const wrong = { ...(await signingOf(episodeId, release)), password: "not the password" };
  for (let attempt = 0; attempt < 5; attempt += 1)
    await expect(sign(clinic.prosthetist, wrong)).rejects.toMatchObject({
      fields: { password: expect.stringContaining("not your password") },
    });
  await expect(sign(clinic.prosthetist, await signingOf(episodeId, release))).rejects.toMatchObject({
    fields: { password: expect.stringContaining("Too many") },
  });
  const db = await database();
  expect(await db.signOff.count()).toBe(0);
  expect(await db.trailEntry.count({ where: { action: "gave a wrong password when signing" } })).toBe(5);
});

test("evidence that changed after the page was opened is not signed", async () => {
  const clinic = await openTestClinic();
  const { episodeId } = await readyEpisode(clinic);
  const opened = await signingOf(episodeId, release);
  await measureLimb(clinic.assistant, {
    episodeId,
    at: "2026-10-07T09:00:00Z",
    method: "tape",
    stations: stations([175, 187, 202, 218, 237]),
  });
  await expect(sign(clinic.prosthetist, opened)).rejects.toMatchObject({ name: "ChangedMeanwhile" });
});

test("the derived state that is kept is the one that a rebuild makes", async () => {
  const clinic = await openTestClinic();
  const { episodeId } = await readyEpisode(clinic);
  await sign(clinic.prosthetist, await signingOf(episodeId, release));
  const db = await database();
  const kept = await db.episode.findMany();
  const trials = await db.wearTrial.findMany();
  await db.episode.updateMany({
    data: {
      stage: "assessment",
      nextStep: null,
      decision: null,
      dueOn: null,
      decisionSentence: null,
      socketCount: 0,
      staleOn: null,
      lastSeenAt: null,
    },
  });
  await db.wearTrial.updateMany({ data: { state: "planned", verdict: null } });
  expect(await rebuildDerived()).toBe(1);
  expect(await db.episode.findMany()).toEqual(kept);
  expect(await db.wearTrial.findMany()).toEqual(trials);
});

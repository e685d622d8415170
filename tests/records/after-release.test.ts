import { expect, test } from "vitest";
import { checkMadeSocket } from "@/lib/records/check-made-socket";
import { database } from "@/lib/records/database";
import { deliverSocket } from "@/lib/records/deliver-socket";
import { planWearing } from "@/lib/records/plan-wearing";
import { AskedAbout, ChangedMeanwhile, InputRefused, Locked, NotAllowed } from "@/lib/records/refusals";
import { definitiveStations } from "@/lib/records/released";
import { verifyRecord } from "@/lib/records/see-record";
import { sign } from "@/lib/records/sign";
import { withdrawSignature } from "@/lib/records/withdraw-signature";
import { openTestClinic, password, readyEpisode, signingOf, type TestClinic, today } from "./clinic";

async function released(clinic: TestClinic) {
  const { episodeId } = await readyEpisode(clinic);
  const db = await database();
  const { signOffId } = await sign(clinic.prosthetist, await signingOf(episodeId, "release for definitive fabrication"));
  const { evidence } = await db.signOff.findUniqueOrThrow({ where: { id: signOffId } });
  return { db, episodeId, signOffId, specified: definitiveStations(evidence) };
}

const shifted = (stations: readonly { distanceMm: number; circumferenceMm: number }[], byMm: number) =>
  stations.map(({ distanceMm, circumferenceMm }) => ({ distanceMm, circumferenceMm: circumferenceMm + byMm }));

test("a definitive socket that came back is measured against its sheet: by scan it can be met, by tape it never is", async () => {
  const clinic = await openTestClinic();
  const { db, signOffId, specified } = await released(clinic);
  const measured = (method: string, byMm: number) =>
    checkMadeSocket(clinic.technician, { signOffId, at: today, method, stations: shifted(specified, byMm) });
  // 0.5 mm of a circumference is 0.08 mm of radius; 4 mm is 0.64 mm, beyond 0.25 mm even with the tape's error.
  for (const [method, byMm] of [
    ["scan", 0.5],
    ["tape", 0.5],
    ["tape", 4],
    ["scan", 4],
  ] as const)
    await measured(method, byMm);
  const states = await db.madeCheck.findMany({ orderBy: { recordedAt: "asc" }, select: { state: true } });
  expect(states.map(({ state }) => state)).toEqual(["met", "unknown", "not met", "not met"]);
  expect(await verifyRecord(clinic.prosthetist, null)).toMatchObject({ holds: true });
});

test("what cannot be measured against the sheet is refused at its field", async () => {
  const clinic = await openTestClinic();
  const { db, episodeId, signOffId, specified } = await released(clinic);
  const check = (changed: object) =>
    checkMadeSocket(clinic.assistant, { signOffId, at: today, method: "tape", stations: specified, ...changed });
  await expect(check({ stations: specified.slice(0, 1) })).rejects.toThrow(InputRefused);
  await expect(check({ stations: [...specified, { distanceMm: 400, circumferenceMm: 240 }] })).rejects.toMatchObject({
    fields: { "stations.5.distanceMm": "The sheet gives dimensions from 0 to 160 mm: measure within them." },
  });
  await expect(check({ stations: [...specified].reverse() })).rejects.toThrow(InputRefused);
  await expect(check({ at: "2026-10-08T07:00:00Z" })).rejects.toMatchObject({
    fields: { at: "This is before the release was signed." },
  });
  await expect(check({ signOffId: "none" })).rejects.toThrow(InputRefused);
  expect(await db.madeCheck.count()).toBe(0);

  const id = "00000000-0000-4000-8000-000000000001";
  await check({ id });
  await check({ id });
  expect(await db.madeCheck.count()).toBe(1);
  await deliverSocket(clinic.assistant, { episodeId, at: today });
  await expect(check({})).rejects.toThrow(Locked);
});

test("a socket that nobody measured, or that is off, is delivered only by who has seen that it is so", async () => {
  const clinic = await openTestClinic();
  const { db, episodeId, signOffId, specified } = await released(clinic);
  const deliver = (confirmed: readonly string[] = []) => deliverSocket(clinic.assistant, { episodeId, at: today, confirmed });
  await expect(deliver()).rejects.toMatchObject({
    fields: { at: expect.stringContaining("not measured against its release sheet") },
    asked: ["not measured"],
  });
  const { madeCheckId } = await checkMadeSocket(clinic.assistant, {
    signOffId,
    at: today,
    method: "scan",
    stations: shifted(specified, 4),
  });
  await expect(deliver(["not measured"])).rejects.toThrow(AskedAbout);
  await deliver([`off ${madeCheckId}`]);
  const entry = await db.trailEntry.findFirstOrThrow({ where: { action: "delivered the definitive socket" } });
  expect(JSON.parse(entry.after ?? "")).toMatchObject({ madeCheck: "not met" });
});

const steps = [
  { days: 1, minutes: 15, sessions: 3 },
  { days: 2, minutes: 30, sessions: 3 },
  { days: 1, sessions: 1 },
];

test("a wear schedule has versions, and the second to save is told of the first", async () => {
  const clinic = await openTestClinic();
  const { db, signOffId } = await released(clinic);
  const plan = { signOffId, startOn: "2026-10-09", steps, call: "the clinic" };
  await planWearing(clinic.prosthetist, { ...plan, version: 0 });
  await expect(planWearing(clinic.colleague, { ...plan, version: 0 })).rejects.toThrow(ChangedMeanwhile);
  await planWearing(clinic.colleague, { ...plan, version: 1, startOn: "2026-10-10", words: "Wear the thin sock." });
  const plans = await db.wearPlan.findMany({ orderBy: { position: "asc" } });
  expect(plans.map(({ startOn, byName, steps: kept }) => [startOn, byName, kept])).toEqual([
    ["2026-10-09", "A Prosthetist", [steps[0], steps[1], { ...steps[2], minutes: null }]],
    ["2026-10-10", "Another Prosthetist", [steps[0], steps[1], { ...steps[2], minutes: null }]],
  ]);
});

test("faster than usual with this wearer's cautions is asked about once", async () => {
  const clinic = await openTestClinic();
  const { signOffId } = await released(clinic);
  const fast = [
    { days: 1, minutes: 30, sessions: 3 },
    { days: 1, minutes: 90, sessions: 3 },
  ];
  const plan = { signOffId, version: 0, startOn: "2026-10-09", steps: fast, call: "the clinic" };
  // Reduced feeling halves the first session to 15 minutes.
  await expect(planWearing(clinic.prosthetist, plan)).rejects.toMatchObject({
    fields: {
      "steps.0.minutes": expect.stringContaining("more than the 15 minutes that are usual"),
      "steps.1.minutes": expect.stringContaining("more than twice the step before (30 min)"),
    },
  });
  await planWearing(clinic.prosthetist, { ...plan, confirmed: ["start=30", "1=90"] });
});

test("only a prosthetist plans wearing, from the day of the release, and not under a withdrawn one", async () => {
  const clinic = await openTestClinic();
  const { signOffId } = await released(clinic);
  const plan = { signOffId, version: 0, startOn: "2026-10-09", steps, call: "the clinic" };
  await expect(planWearing(clinic.assistant, plan)).rejects.toThrow(NotAllowed);
  await expect(planWearing(clinic.prosthetist, { ...plan, startOn: "2026-10-07" })).rejects.toMatchObject({
    fields: { startOn: "The socket was released on 2026-10-08: wearing begins that day or later." },
  });
  await expect(planWearing(clinic.prosthetist, { ...plan, steps: [] })).rejects.toThrow(InputRefused);
  await expect(planWearing(clinic.prosthetist, { ...plan, call: " " })).rejects.toThrow(InputRefused);
  await withdrawSignature(clinic.prosthetist, { signOffId, why: "wrong model", password });
  await expect(planWearing(clinic.prosthetist, plan)).rejects.toThrow(Locked);
});

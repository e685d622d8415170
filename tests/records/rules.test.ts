import { expect, test } from "vitest";
import { addAccount, changeAccount } from "@/lib/records/accounts";
import { addWearer } from "@/lib/records/add-wearer";
import { changeSocket } from "@/lib/records/change-socket";
import { changeWearer } from "@/lib/records/change-wearer";
import { clientAndConnection, database } from "@/lib/records/database";
import { measureLimb } from "@/lib/records/measure-limb";
import { moveSocket } from "@/lib/records/move-socket";
import { changeEpisode, openEpisode, setCourse, strikeOutEpisode } from "@/lib/records/open-episode";
import { planWearTrial } from "@/lib/records/plan-wear-trial";
import { recordFitting } from "@/lib/records/record-fitting";
import { lookAtSkin, recordWearTrial } from "@/lib/records/record-wear-trial";
import { ChangedMeanwhile, InputRefused, NotAllowed, NotFound } from "@/lib/records/refusals";
import { seeEpisode } from "@/lib/records/see-episode";
import { seeRecord, verifyRecord } from "@/lib/records/see-record";
import { seeToday } from "@/lib/records/see-today";
import { findWearers, seeWearer } from "@/lib/records/see-wearers";
import { seeSocketOrder, seeWorkshop } from "@/lib/records/see-workshop";
import { sign } from "@/lib/records/sign";
import { specifySocket } from "@/lib/records/specify-socket";
import { calmTrial, episodeOf, openTestClinic, password, readyEpisode, signingOf, stations, today } from "./clinic";
import { dropLocks } from "./without-locks";

const wearer = { clinicNumber: "T-2", name: "Wearer Two" };

test("commits reach the disk before they are reported, foreign keys hold, and the journal is a write-ahead log", async () => {
  await openTestClinic();
  const db = await database();
  expect(await db.$queryRawUnsafe("PRAGMA synchronous")).toEqual([{ synchronous: 2n }]);
  expect(await db.$queryRawUnsafe("PRAGMA foreign_keys")).toEqual([{ foreign_keys: 1n }]);
  expect(await db.$queryRawUnsafe("PRAGMA journal_mode")).toEqual([{ journal_mode: "wal" }]);
});

test("the roles hold in commands and in queries, whatever a page shows", async () => {
  const clinic = await openTestClinic();
  const { episodeId, socketId, wearerId } = await readyEpisode(clinic);
  const { technician, administrator, assistant } = clinic;
  await expect(addWearer(technician, wearer)).rejects.toThrow(NotAllowed);
  await expect(seeWearer(technician, wearerId)).rejects.toThrow(NotAllowed);
  await expect(seeEpisode(technician, episodeId)).rejects.toThrow(NotAllowed);
  await expect(findWearers(administrator, { find: "" })).rejects.toThrow(NotAllowed);
  await expect(specifySocket(assistant, { episodeId })).rejects.toThrow(NotAllowed);
  await expect(sign(assistant, { episodeId, password })).rejects.toThrow(NotAllowed);
  await expect(sign(administrator, { episodeId, password })).rejects.toThrow(NotAllowed);
  await expect(addAccount(clinic.prosthetist, {})).rejects.toThrow(NotAllowed);
  const { version } = await (await database()).checkSocket.findUniqueOrThrow({ where: { id: socketId } });
  await expect(moveSocket(technician, { socketId, version, state: "retired", at: today })).rejects.toThrow(NotAllowed);
});

test("the bench gets an order without the wearer's name, words or notes", async () => {
  const clinic = await openTestClinic();
  const { socketId } = await readyEpisode(clinic, { until: "fitted" });
  const text = JSON.stringify([await seeSocketOrder(clinic.technician, socketId), await seeWorkshop(clinic.technician, null)]);
  expect(text).toContain("T-1");
  expect(text).not.toContain("Wearer One");
});

test("two people save the same wearer: the second is told, and shown what the first wrote", async () => {
  const clinic = await openTestClinic();
  const { wearerId } = await addWearer(clinic.assistant, wearer);
  await changeWearer(clinic.assistant, { wearerId, version: 1, ...wearer, occupation: "boat builder" });
  const late = changeWearer(clinic.prosthetist, { wearerId, version: 1, ...wearer, occupation: "sail maker" });
  await expect(late).rejects.toThrow(ChangedMeanwhile);
  await expect(late).rejects.toMatchObject({ theirs: { occupation: "boat builder" }, version: 2 });
  await changeWearer(clinic.prosthetist, { wearerId, version: 2, ...wearer, occupation: "sail maker" });
  expect((await seeWearer(clinic.prosthetist, wearerId)).occupation).toBe("sail maker");
});

test("an episode that two people change is not overwritten silently", async () => {
  const clinic = await openTestClinic();
  const { wearerId } = await addWearer(clinic.assistant, wearer);
  const fields = episodeOf(clinic, wearerId);
  const { episodeId } = await openEpisode(clinic.prosthetist, fields);
  const { wearerId: _, ...changed } = fields;
  await changeEpisode(clinic.prosthetist, { ...changed, episodeId, version: 1, goals: "to row again" });
  await expect(changeEpisode(clinic.assistant, { ...changed, episodeId, version: 1, goals: "to swim" })).rejects.toMatchObject({
    theirs: { goals: "to row again" },
  });
});

test("bad input is refused at its field, in words, and nothing of it is kept", async () => {
  const clinic = await openTestClinic();
  const { wearerId } = await addWearer(clinic.assistant, wearer);
  const fields = episodeOf(clinic, wearerId);
  const { episodeId } = await openEpisode(clinic.prosthetist, fields);
  const db = await database();
  const entries = await db.trailEntry.count();

  const refused = async (promise: Promise<unknown>, field: string, words: RegExp) => {
    const error = await promise.then(
      () => undefined,
      (reason: unknown) => reason,
    );
    expect(error).toBeInstanceOf(InputRefused);
    expect((error as InputRefused).fields[field]).toMatch(words); // the class was just checked
  };
  const measured = { episodeId, at: "2026-10-01T09:00:00Z", method: "tape", stations: stations([180, 190]) };
  await refused(
    measureLimb(clinic.assistant, { ...measured, at: "2026-02-30T09:00:00Z" }),
    "at",
    /no date and time of the calendar/,
  );
  await refused(measureLimb(clinic.assistant, { ...measured, at: "2026-11-30T09:00:00Z" }), "at", /has not come yet/);
  await refused(
    measureLimb(clinic.assistant, {
      ...measured,
      stations: [
        { distanceMm: "a lot", circumferenceMm: 180 },
        { distanceMm: 40, circumferenceMm: 190 },
      ],
    }),
    "stations.0.distanceMm",
    /Give a number in mm/,
  );
  await refused(
    measureLimb(clinic.assistant, {
      ...measured,
      stations: [
        { distanceMm: 0, circumferenceMm: 9000 },
        { distanceMm: 40, circumferenceMm: 190 },
      ],
    }),
    "stations.0.circumferenceMm",
    /between 30 and 1200 mm/,
  );
  await refused(
    measureLimb(clinic.assistant, { ...measured, stations: [...stations([180, 190]), ...stations([181])] }),
    "stations.2.distanceMm",
    /there twice/,
  );
  await refused(measureLimb(clinic.assistant, { ...measured, stations: stations([180]) }), "stations", /Two levels or more/);
  await refused(measureLimb(clinic.assistant, { ...measured, colour: "red" }), "colour", /not known here/);
  await refused(openEpisode(clinic.assistant, { ...fields, level: "elbow" }), "level", /Choose one of/);
  await refused(
    openEpisode(clinic.assistant, { ...fields, prosthetistId: clinic.technician.id }),
    "prosthetistId",
    /prosthetist of this clinic/,
  );
  await refused(openEpisode(clinic.assistant, { ...fields, deviceCentreOfMassMm: "" }), "deviceCentreOfMassMm", /Give both/);
  await refused(addWearer(clinic.assistant, wearer), "clinicNumber", /has this number already/);
  await expect(seeEpisode(clinic.prosthetist, "no such id")).rejects.toThrow(NotFound);
  await expect(openEpisode(clinic.assistant, { ...fields, wearerId: "no such id" })).rejects.toThrow(NotFound);

  expect(await db.trailEntry.count()).toBe(entries);
  expect(await db.limbMeasurement.count()).toBe(0);
});

test("numbers are read as people write them", async () => {
  const clinic = await openTestClinic();
  const { wearerId } = await addWearer(clinic.assistant, { ...wearer, bodyMassKg: " 74,5 " });
  expect((await seeWearer(clinic.assistant, wearerId)).bodyMassKg).toBe(74.5);
});

test("a form or an event that is sent twice is stored once", async () => {
  const clinic = await openTestClinic();
  const { trialId, episodeId } = await readyEpisode(clinic, { until: "worn" });
  const db = await database();
  const event = { id: "0b6f3a5e-6f0e-4c43-9a3b-6f0a5d1c2e77", kind: "paused", at: "2026-10-05T10:07:00Z" };
  const before = await db.trialEvent.count();
  expect(await recordWearTrial(clinic.assistant, { trialId, events: [event] })).toMatchObject({ stored: 1 });
  expect(await recordWearTrial(clinic.assistant, { trialId, events: [event, event] })).toMatchObject({ stored: 0 });
  expect(await db.trialEvent.count()).toBe(before + 1);

  const measurement = {
    id: "3f1c2c1e-98f2-4a53-8f6b-0a54f6c4b111",
    episodeId,
    at: "2026-10-06T09:00:00Z",
    method: "tape",
    stations: stations([175, 187, 202]),
  };
  await measureLimb(clinic.assistant, measurement);
  await measureLimb(clinic.assistant, measurement);
  expect(await db.limbMeasurement.count({ where: { id: measurement.id } })).toBe(1);
});

test("a command that fails half-way leaves nothing behind", async () => {
  const clinic = await openTestClinic();
  const { socketId, episodeId } = await readyEpisode(clinic, { until: "fitted" });
  const db = await database();
  const before = [await db.fitting.count(), await db.skinInspection.count(), await db.trailEntry.count()];
  const offLimb = { distanceFromEndMm: 400, angleDeg: 0, widthMm: 10, heightMm: 10, strength: "clear", blanches: "yes" };
  const fitting = {
    socketId,
    at: "2026-10-06T09:00:00Z",
    place: "clinic",
    checks: {},
    look: { minutesAfterDoffing: 1, marks: [offLimb] },
  };
  await expect(recordFitting(clinic.assistant, fitting)).rejects.toMatchObject({
    fields: { "look.marks.0.distanceFromEndMm": expect.stringContaining("would lie off it") },
  });
  expect([await db.fitting.count(), await db.skinInspection.count(), await db.trailEntry.count()]).toEqual(before);
  expect(episodeId).not.toBe("");
});

test("stages that people set: on hold, closed, taken up again, struck out", async () => {
  const clinic = await openTestClinic();
  const { wearerId } = await addWearer(clinic.assistant, wearer);
  const { episodeId } = await openEpisode(clinic.prosthetist, episodeOf(clinic, wearerId));
  const stage = async () => (await seeEpisode(clinic.prosthetist, episodeId)).episode.stage;
  expect(await stage()).toBe("assessment");
  await expect(setCourse(clinic.prosthetist, { episodeId, course: "on hold" })).rejects.toMatchObject({
    fields: { why: expect.any(String) },
  });
  await setCourse(clinic.prosthetist, { episodeId, course: "on hold", why: "an operation first" });
  expect(await stage()).toBe("on hold");
  await setCourse(clinic.prosthetist, { episodeId, course: "closed", why: "moved away" });
  expect(await stage()).toBe("closed");
  await expect(
    measureLimb(clinic.assistant, { episodeId, at: "2026-10-01T09:00:00Z", method: "tape", stations: stations([180, 190]) }),
  ).rejects.toThrow("closed");
  await setCourse(clinic.prosthetist, { episodeId, course: "in fitting" });
  await strikeOutEpisode(clinic.prosthetist, { episodeId, why: "opened for the wrong person" });
  await expect(seeEpisode(clinic.prosthetist, episodeId)).rejects.toThrow(NotFound);
  expect((await seeWearer(clinic.prosthetist, wearerId)).episodes).toEqual([]);
});

test("reading a named record is on the trail, and a trail that was altered in the file does not hold", async () => {
  const clinic = await openTestClinic();
  const { wearerId } = await addWearer(clinic.assistant, wearer);
  await seeWearer(clinic.prosthetist, wearerId);
  const { entries } = await seeRecord(clinic.administrator, { find: "saw a wearer", page: 1, reads: true });
  expect(entries).toMatchObject([{ actorName: "A Prosthetist", wearerId }]);
  expect(await verifyRecord(clinic.administrator, null)).toMatchObject({ holds: true, entries: 2 });
  const db = await database();
  dropLocks((await clientAndConnection()).connection);
  await db.trailEntry.update({ where: { position: 1 }, data: { actorName: "Somebody Else" } });
  expect(await verifyRecord(clinic.administrator, null)).toMatchObject({ holds: false, position: 1 });
});

test("an administrator cannot take away their own rights; a deactivated account keeps its name on what it did", async () => {
  const clinic = await openTestClinic();
  const own = { userId: clinic.administrator.id, version: 1, name: "An Administrator", role: "administrator" };
  await expect(changeAccount(clinic.administrator, own)).rejects.toMatchObject({ fields: { role: expect.any(String) } });
  await changeAccount(clinic.administrator, {
    userId: clinic.colleague.id,
    version: 1,
    name: "Another Prosthetist",
    role: "prosthetist",
  });
  expect((await (await database()).user.findUniqueOrThrow({ where: { id: clinic.colleague.id } })).banned).toBe(true);
});

test("events of a trial are only ever added", async () => {
  const clinic = await openTestClinic();
  const { trialId } = await readyEpisode(clinic, { until: "worn" });
  const db = await database();
  const before = await db.trialEvent.findMany({ where: { trialId }, orderBy: { at: "asc" } });
  await recordWearTrial(clinic.assistant, {
    trialId,
    events: [{ kind: "corrected", corrects: before[1]?.id, at: "2026-10-05T10:30:00Z", pain: 2, note: "typed 0 for 2" }],
  });
  expect(await db.trialEvent.findMany({ where: { id: { in: before.map(({ id }) => id) } }, orderBy: { at: "asc" } })).toEqual(
    before,
  );
  expect(calmTrial()).toHaveLength(before.length);
});

test("a fitting in which nobody looked at the skin has no look, whatever the form sends for it", async () => {
  const clinic = await openTestClinic();
  const { socketId } = await readyEpisode(clinic, { until: "fitted" });
  const db = await database();
  const fitting = { socketId, at: "2026-10-06T09:00:00Z", place: "clinic", checks: { donning: "met", seating: "" }, comfort: "" };
  await recordFitting(clinic.assistant, {
    ...fitting,
    look: { minutesAfterDoffing: "", marks: [{ distanceFromEndMm: "", strength: "" }] },
  });
  await recordFitting(clinic.assistant, fitting);
  expect(await db.skinInspection.count()).toBe(0);
  const unsaid = {
    minutesAfterDoffing: "",
    marks: [{ distanceFromEndMm: 80, angleDeg: 0, widthMm: 10, heightMm: 10, strength: "clear", blanches: "yes" }],
  };
  await expect(recordFitting(clinic.assistant, { ...fitting, look: unsaid })).rejects.toMatchObject({
    fields: { "look.minutesAfterDoffing": expect.stringContaining("How many minutes") },
  });
});

test("a socket that was forbidden is worn again only when a prosthetist says why, and the stop sign stays in sight", async () => {
  const clinic = await openTestClinic();
  const { episodeId, socketId, trialId } = await readyEpisode(clinic);
  await recordWearTrial(clinic.assistant, {
    trialId,
    events: [{ kind: "stop-sign", sign: "broken-skin", at: "2026-10-05T10:12:00Z" }],
  });
  const again = { socketId, minutes: 20, loadKg: 0.68, loadDistanceMm: 220, intervalMin: 5, activities: ["coiling rope"] };
  await expect(planWearTrial(clinic.assistant, again)).rejects.toThrow(NotAllowed);
  await expect(planWearTrial(clinic.prosthetist, again)).rejects.toMatchObject({ fields: { againWhy: expect.any(String) } });
  const second = await planWearTrial(clinic.prosthetist, { ...again, againWhy: "brim lowered 6 mm, skin healed on 6 October" });
  await recordWearTrial(clinic.assistant, { trialId: second.trialId, events: calmTrial("2026-10-07T10:00:00Z") });
  const { assessment } = await seeEpisode(clinic.prosthetist, episodeId);
  expect(assessment.gates.find(({ id }) => id === "no-stop-sign")?.why).toContain(
    "An earlier trial of this socket was stopped: broken skin",
  );

  await setCourse(clinic.prosthetist, { episodeId, course: "on hold", why: "an infection." });
  await expect(planWearTrial(clinic.prosthetist, again)).rejects.toThrow("on hold: an infection.");
});

test("that the skin shows no mark has to be said", async () => {
  const clinic = await openTestClinic();
  const { trialId } = await readyEpisode(clinic, { until: "worn" });
  const look = { trialId, at: "2026-10-05T10:22:00Z", minutesAfterDoffing: 1, marks: [] };
  await expect(lookAtSkin(clinic.assistant, look)).rejects.toMatchObject({ fields: { noMarks: expect.any(String) } });
  await expect(lookAtSkin(clinic.assistant, { ...look, noMarks: "yes", minutesAfterDoffing: 15 })).rejects.toMatchObject({
    fields: { minutesAfterDoffing: expect.stringContaining("1 minutes after doffing") },
  });
  await lookAtSkin(clinic.assistant, { ...look, noMarks: "yes" });
});

test("a decision that time alone has changed is made anew before anyone sees it in a list", async () => {
  const clinic = await openTestClinic();
  const { wearerId } = await readyEpisode(clinic);
  const shown = async () => (await seeWearer(clinic.assistant, wearerId)).episodes[0]?.decision;
  expect(await shown()).toBe("ready");
  clinic.setNow("2026-11-03T09:00:00Z");
  expect(await shown()).toBe("not ready");
  expect((await seeToday(clinic.assistant, null)).episodes[0]).toMatchObject({ decision: "not ready", nextStep: "begin trial" });
});

test("nothing is signed in an episode that is on hold or closed", async () => {
  const clinic = await openTestClinic();
  const { episodeId } = await readyEpisode(clinic);
  for (const course of ["on hold", "closed"]) {
    await setCourse(clinic.prosthetist, { episodeId, course, why: "an operation first" });
    await expect(sign(clinic.prosthetist, await signingOf(episodeId, "release for definitive fabrication"))).rejects.toThrow(
      course,
    );
  }
});

test("what a socket is to be may be changed until it is being made, and the second of two who change it is told", async () => {
  const clinic = await openTestClinic();
  const { wearerId } = await addWearer(clinic.assistant, wearer);
  const { episodeId } = await openEpisode(clinic.prosthetist, episodeOf(clinic, wearerId));
  const { socketId } = await specifySocket(clinic.prosthetist, { episodeId, stations: stations([180, 190]) });
  const changed = {
    socketId,
    version: 1,
    stations: stations([178, 188]),
    adjustments: [{ kind: "flare", reason: "the brim rubbed" }],
  };
  await changeSocket(clinic.prosthetist, changed);
  expect(await seeSocketOrder(clinic.technician, socketId)).toMatchObject({
    stations: stations([178, 188]),
    adjustments: [{ kind: "flare" }],
  });
  await expect(changeSocket(clinic.colleague, changed)).rejects.toThrow(ChangedMeanwhile);
  await moveSocket(clinic.technician, { socketId, version: 2, state: "being made", at: today });
  await expect(changeSocket(clinic.prosthetist, { ...changed, version: 3 })).rejects.toThrow("what it was made from stands");
});

import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { correctFitting } from "@/lib/records/correct-fitting";
import { database } from "@/lib/records/database";
import { lookAfterFitting } from "@/lib/records/look-after-fitting";
import { recordFitting } from "@/lib/records/record-fitting";
import { InputRefused, Locked, NotAllowed } from "@/lib/records/refusals";
import { seeEpisode } from "@/lib/records/see-episode";
import { seeFitting } from "@/lib/records/see-fitting";
import { verifyRecord } from "@/lib/records/see-record";
import { sign } from "@/lib/records/sign";
import { evenMarks, openTestClinic, readyEpisode, signingOf, upperChecks } from "./clinic";

const at = "2026-10-05T09:30:00Z";
const pulls = [22, 34, 45].map((loadN, index) => ({ loadN, displacementMm: [1.6, 2.1, 2.7][index] }));
const motion = [{ joint: "elbow-flexion", withoutDeg: 138, withDeg: 131 }];
const fitting = { at, place: "clinic", checks: upperChecks, pulls, motion, comfort: 8, pain: 0 };

async function fitted() {
  const clinic = await openTestClinic();
  const { episodeId, socketId } = await readyEpisode(clinic);
  const { fittingId } = await recordFitting(clinic.assistant, {
    socketId,
    ...fitting,
    comfort: 3,
    look: { minutesAfterDoffing: 1, marks: evenMarks("clear") },
  });
  const bundle = async () => (await seeEpisode(clinic.prosthetist, episodeId)).bundle;
  return { clinic, episodeId, socketId, fittingId, bundle };
}

test("a saved fitting is put right by an addendum: the new one counts, both can be read", async () => {
  const { clinic, episodeId, fittingId, bundle } = await fitted();
  const why = "Comfort was noted for the other socket";
  const corrected = await correctFitting(clinic.prosthetist, { correctsId: fittingId, why, ...fitting });

  const counts = (await bundle()).fittings.filter(({ id }) => id === fittingId || id === corrected.fittingId);
  expect(counts).toMatchObject([{ id: corrected.fittingId, comfort: 8 }]);
  const { fitting: newest, shown, versions } = await seeFitting(clinic.assistant, fittingId);
  expect([newest.id, shown.id]).toEqual([corrected.fittingId, fittingId]);
  expect(versions.map(({ comfort, why: reason }) => [comfort, reason])).toEqual([
    [8, why],
    [3, null],
  ]);
  const db = await database();
  const entry = await db.trailEntry.findFirstOrThrow({ where: { action: { startsWith: "corrected a fitting" } } });
  expect(entry).toMatchObject({ episodeId, actorName: "A Prosthetist" });
  expect(`${entry.before}`).toContain('"comfort":3');
  expect(await verifyRecord(clinic.prosthetist, null)).toMatchObject({ holds: true });
});

test("a look that was added later stays with a fitting that is put right; the first look is the correction's own", async () => {
  const { clinic, fittingId, bundle } = await fitted();
  clinic.setNow("2026-10-08T09:05:00Z");
  await lookAfterFitting(clinic.assistant, {
    fittingId,
    at: "2026-10-05T10:00:00Z",
    minutesAfterDoffing: 20,
    marks: evenMarks("none"),
  });
  const { fittingId: id } = await correctFitting(clinic.assistant, {
    correctsId: fittingId,
    why: "The first look was 3 minutes after doffing",
    ...fitting,
    look: { minutesAfterDoffing: 3, marks: evenMarks("clear") },
  });
  const looks = (await bundle()).fittings.find((one) => one.id === id)?.inspections ?? [];
  expect(looks.map(({ minutesAfterDoffing }) => minutesAfterDoffing)).toEqual([3, 20]);
});

test("the older version shows its looks and marks as they were, also a mark that the correction took out", async () => {
  const { clinic, fittingId } = await fitted();
  clinic.setNow("2026-10-08T09:05:00Z");
  await lookAfterFitting(clinic.assistant, {
    fittingId,
    at: "2026-10-05T09:50:00Z",
    minutesAfterDoffing: 20,
    marks: evenMarks("none"),
  });
  const [first, , ...others] = evenMarks("clear");
  const { fittingId: id } = await correctFitting(clinic.assistant, {
    correctsId: fittingId,
    why: "One mark was an old scar",
    ...fitting,
    look: { minutesAfterDoffing: 1, marks: [first, ...others] },
  });
  const read = async (shown: string) =>
    (await seeFitting(clinic.assistant, shown)).looks.map((look) => [look.minutesAfterDoffing, ...look.marks.map((m) => m.id)]);
  expect(await read(fittingId)).toEqual([
    [1, "m1", "m2", "m3", "m4"],
    [20, "m1", "m2", "m3", "m4"],
  ]);
  expect(await read(id)).toEqual([
    [1, "m1", "m3", "m4"],
    [20, "m1", "m2", "m3", "m4"],
  ]);
  const { versions } = await seeFitting(clinic.assistant, id);
  expect(versions.map(({ firstLook }) => firstLook?.marks.length)).toEqual([3, 4]);
});

test("a correction needs a reason, a role, and evidence that no signature covers; it is made once", async () => {
  const { clinic, episodeId, fittingId, bundle } = await fitted();
  await expect(correctFitting(clinic.assistant, { correctsId: fittingId, why: " ", ...fitting })).rejects.toThrow(InputRefused);
  await expect(correctFitting(clinic.technician, { correctsId: fittingId, why: "x", ...fitting })).rejects.toThrow(NotAllowed);
  await expect(
    correctFitting(clinic.assistant, {
      correctsId: fittingId,
      why: "x",
      ...fitting,
      pulls: [{ loadN: "-4", displacementMm: 1 }],
    }),
  ).rejects.toMatchObject({ fields: { "pulls.0.loadN": expect.any(String) } });

  const id = randomUUID();
  const again = { id, correctsId: fittingId, why: "Comfort", ...fitting };
  await correctFitting(clinic.assistant, again);
  await correctFitting(clinic.assistant, again);
  expect((await bundle()).fittings.filter((one) => one.id === id)).toHaveLength(1);
  await expect(correctFitting(clinic.prosthetist, { correctsId: fittingId, why: "other", ...fitting })).rejects.toThrow(Locked);

  await sign(clinic.prosthetist, await signingOf(episodeId, "wear trial accepted"));
  await expect(correctFitting(clinic.assistant, { correctsId: id, why: "late", ...fitting })).rejects.toThrow(Locked);
  await expect(lookAfterFitting(clinic.assistant, { fittingId, at, minutesAfterDoffing: 20, noMarks: true })).rejects.toThrow(
    Locked,
  );
});

test("what was told over video and not seen says so in the evidence", async () => {
  const { clinic, socketId, bundle } = await fitted();
  const { fittingId } = await recordFitting(clinic.assistant, {
    socketId,
    ...fitting,
    at: "2026-10-06T09:30:00Z",
    place: "video",
    measuredBy: "the wearer's daughter",
    reported: ["pulls", "skin"],
  });
  const told = (await bundle()).fittings.find(({ id }) => id === fittingId);
  expect(told).toMatchObject({ place: "video", reported: ["pulls", "skin"] });
  await expect(recordFitting(clinic.assistant, { socketId, ...fitting, reported: ["hearsay"] })).rejects.toThrow(InputRefused);
});

test("the first look keeps its own time and note, for which the form does not ask", async () => {
  const clinic = await openTestClinic();
  const { socketId } = await readyEpisode(clinic);
  const lookedAt = "2026-10-05T10:40:00Z";
  const { fittingId } = await recordFitting(clinic.assistant, {
    socketId,
    ...fitting,
    look: { at: lookedAt, minutesAfterDoffing: 2, note: "In the light of the window", marks: evenMarks("clear") },
  });
  const { fittingId: id } = await correctFitting(clinic.assistant, {
    correctsId: fittingId,
    why: "It was three minutes",
    ...fitting,
    look: { minutesAfterDoffing: 3, marks: evenMarks("clear") },
  });
  const db = await database();
  const look = await db.skinInspection.findFirstOrThrow({ where: { fittingId: id } });
  expect([look.at.toISOString(), look.minutesAfterDoffing, look.note]).toEqual([
    "2026-10-05T10:40:00.000Z",
    3,
    "In the light of the window",
  ]);
});

/** What kinds of adjustment have done in the clinic: counted from kept columns, and only from enough of them. */
import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import type { AdjustmentOutcome, Effect } from "@/lib/fit";
import { database } from "@/lib/records/database";
import { moveSocket } from "@/lib/records/move-socket";
import { strikeOutEpisode } from "@/lib/records/open-episode";
import { rebuildDerived } from "@/lib/records/rebuild";
import { recordFitting } from "@/lib/records/record-fitting";
import { NotAllowed } from "@/lib/records/refusals";
import { type KindHistory, seeAdjustmentHistory } from "@/lib/records/see-adjustment-history";
import { openTestClinic, readyEpisode, type TestClinic, today, upperChecks } from "./clinic";

const ofKind = (history: readonly KindHistory[], kind: string) => history.find((one) => one.kind === kind);

const outcomes = (...of: readonly (readonly [number, Effect])[]): AdjustmentOutcome[] =>
  of.flatMap(([count, effect]) =>
    Array.from({ length: count }, () => ({
      ...{
        adjustmentId: randomUUID(),
        kind: "relief" as const,
        effect,
        together: false,
        elsewhere: false,
        limb: "not known" as const,
      },
    })),
  );

/** An episode that holds only what was kept of its adjustments. */
async function keptEpisode(clinic: TestClinic, wearerId: string, kept: AdjustmentOutcome[]): Promise<string> {
  const id = randomUUID();
  const place = { side: "right", level: "transradial", cause: "trauma", landmark: "distal end", stationsFrom: "distal end" };
  const people = { prosthetistId: clinic.prosthetist.id, openedById: clinic.prosthetist.id };
  await (await database()).episode.create({
    data: {
      ...{ id, wearerId, ...place, ...people, limbLengthMm: 170, suspension: "pin", openedAt: new Date("2026-09-01T08:00:00Z") },
      adjustmentOutcomes: kept,
    },
  });
  return id;
}

/** Reliefs: 6 worked, 1 without change, 1 worse, 2 not measured, over two episodes. */
async function clinicWithReliefs() {
  const clinic = await openTestClinic();
  const { wearerId, episodeId } = await readyEpisode(clinic, { until: "fitted" });
  const one = await keptEpisode(clinic, wearerId, outcomes([4, "worked"], [1, "worse"], [1, "not measured"]));
  const other = await keptEpisode(clinic, wearerId, outcomes([2, "worked"], [1, "no detectable change"], [1, "not measured"]));
  return { clinic, episodeId, one, other };
}

test("the columns of an episode follow a fitting", async () => {
  const clinic = await openTestClinic();
  const { episodeId, firstSocketId } = await readyEpisode(clinic, { until: "fitted" });
  const db = await database();
  const kept = async () => (await db.episode.findUniqueOrThrow({ where: { id: episodeId } })).adjustmentOutcomes;
  expect(await kept()).toMatchObject([{ kind: "volume", effect: "not measured", together: false, limb: "no detectable change" }]);
  for (const state of ["being made", "at hand"]) {
    const { version } = await db.checkSocket.findUniqueOrThrow({ where: { id: firstSocketId } });
    await moveSocket(clinic.technician, { socketId: firstSocketId, version, state, at: today });
  }
  await recordFitting(clinic.prosthetist, {
    socketId: firstSocketId,
    at: "2026-09-10T09:30:00Z",
    place: "clinic",
    checks: upperChecks,
    pulls: [22, 34, 45].map((loadN, index) => ({ loadN, displacementMm: [6.8, 10.1, 13.7][index] })),
    motion: [{ joint: "elbow-flexion", withoutDeg: 138, withDeg: 131 }],
    comfort: 6,
    pain: 0,
  });
  const after = await kept();
  expect(after).toMatchObject([{ kind: "volume", effect: "worked" }]);
  await db.episode.update({ where: { id: episodeId }, data: { adjustmentOutcomes: [] } });
  await rebuildDerived();
  expect(await kept()).toEqual(after);
});

test("counts what was judged, beside what was not measured, and says from how many episodes", async () => {
  const { clinic } = await clinicWithReliefs();
  const history = await seeAdjustmentHistory(clinic.prosthetist, {});
  expect(ofKind(history, "relief")).toMatchObject({
    ...{ withheld: null, judged: 8, noDetectableChange: 1, notMeasured: 2, limbNotKnown: 8, episodes: 2 },
    worked: { count: 6, share: 0.75, low: expect.closeTo(0.4093, 4), high: expect.closeTo(0.9285, 4) },
    worse: { count: 1 },
  });
  // One of volume was made, and it is not judged.
  expect(ofKind(history, "volume")).toEqual({ kind: "volume", withheld: "fewer than five were judged" });
});

test("leaves out the episode that is looked at, and then shows no count of too few", async () => {
  const { clinic, one, other } = await clinicWithReliefs();
  const without = (exceptEpisodeId: string) => seeAdjustmentHistory(clinic.assistant, { exceptEpisodeId });
  expect(ofKind(await without(other), "relief")).toMatchObject({ judged: 5, notMeasured: 1, episodes: 1 });
  expect(ofKind(await without(one), "relief")).toEqual({ kind: "relief", withheld: "fewer than five were judged" });
});

test("leaves out what was struck out", async () => {
  const { clinic, one } = await clinicWithReliefs();
  // Refreshed with its records, of which it has none, it keeps nothing; so what was kept is put back.
  await strikeOutEpisode(clinic.prosthetist, { episodeId: one, why: "Opened twice" });
  const db = await database();
  await db.episode.update({ where: { id: one }, data: { adjustmentOutcomes: outcomes([9, "worked"]) } });
  expect(ofKind(await seeAdjustmentHistory(clinic.prosthetist, {}), "relief")).toEqual({
    ...{ kind: "relief", withheld: "fewer than five were judged" },
  });
});

test("tells nothing but counts, and is for those who may see wearers", async () => {
  const { clinic, episodeId, one } = await clinicWithReliefs();
  const told = JSON.stringify(await seeAdjustmentHistory(clinic.prosthetist, {}));
  for (const word of ["Wearer One", "T-1", episodeId, one, "adjustmentId"]) expect(told).not.toContain(word);
  await expect(seeAdjustmentHistory(clinic.technician, {})).rejects.toThrow(NotAllowed);
  await expect(seeAdjustmentHistory(clinic.administrator, {})).rejects.toThrow(NotAllowed);
});

test("an episode whose outcomes were never worked out adds nothing to any side", async () => {
  const { clinic } = await clinicWithReliefs();
  const db = await database();
  await db.$executeRaw`UPDATE Episode SET adjustmentOutcomes = NULL WHERE json_array_length(CAST(adjustmentOutcomes AS TEXT)) < 5`;
  expect(ofKind(await seeAdjustmentHistory(clinic.prosthetist, {}), "relief")).toMatchObject({ judged: 5, episodes: 1 });
});

test("after an upgrade with more episodes than are judged at once, all of them are worked out before anybody reads", async () => {
  const clinic = await openTestClinic();
  const { wearerId, episodeId } = await readyEpisode(clinic, { until: "fitted" });
  for (let made = 0; made < 120; made += 1) await keptEpisode(clinic, wearerId, []);
  const db = await database();
  const before = await db.episode.findUniqueOrThrow({ where: { id: episodeId } });
  // As the migration leaves them.
  await db.$executeRaw`UPDATE Episode SET adjustmentOutcomes = NULL, derivedDue = COALESCE(derivedAt, openedAt)`;
  await seeAdjustmentHistory(clinic.prosthetist, {});
  expect(await db.episode.count({ where: { derivedDue: { not: null } } })).toBe(0);
  expect(await db.episode.findUniqueOrThrow({ where: { id: episodeId } })).toEqual(before);
  expect(await db.$queryRaw`SELECT COUNT(*) AS n FROM Episode WHERE adjustmentOutcomes IS NULL`).toEqual([{ n: 0n }]);
});

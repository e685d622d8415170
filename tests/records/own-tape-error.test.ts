import { expect, test } from "vitest";
import { limitValue } from "@/lib/fit";
import { changeLimit } from "@/lib/records/change-limit";
import { clientAndConnection, database } from "@/lib/records/database";
import { limitsAndTape } from "@/lib/records/limits-in-force";
import { measureLimb } from "@/lib/records/measure-limb";
import { strikeOutEpisode } from "@/lib/records/open-episode";
import { AskedAbout, InputRefused } from "@/lib/records/refusals";
import { seeRules } from "@/lib/records/see-accounts";
import { exportBundle, seeEpisode } from "@/lib/records/see-episode";
import { openTestClinic, readyEpisode, stations } from "./clinic";
import { dropLocks } from "./without-locks";

const limb = [176, 188, 203, 219, 238];
const twice = (differencesMm: readonly number[]) =>
  stations(limb).map((station, index) => {
    const differenceMm = differencesMm[index];
    return differenceMm === undefined ? station : { ...station, againMm: station.circumferenceMm + differenceMm };
  });

/** Two measurements of five levels, each level read twice: ten pairs. */
async function tenPairs(differencesMm: readonly number[], how: { method?: string; confirmed?: string[] } = {}) {
  const clinic = await openTestClinic();
  const { episodeId } = await readyEpisode(clinic);
  const measured = { episodeId, method: "tape", ...how };
  for (const at of ["2026-10-06T09:00:00Z", "2026-10-07T09:00:00Z"])
    await measureLimb(clinic.assistant, { ...measured, at, stations: twice(differencesMm) });
  return { clinic, episodeId };
}

test("the first reading counts as the circumference, and the second is kept beside it", async () => {
  const { episodeId, clinic } = await tenPairs([2, -2]);
  const row = await (await database()).limbMeasurement.findFirstOrThrow({ orderBy: { at: "desc" } });
  expect(row.stations).toEqual(stations(limb));
  expect(row.secondReadings).toEqual([
    { distanceMm: 0, circumferenceMm: 178 },
    { distanceMm: 40, circumferenceMm: 186 },
  ]);
  const { bundle } = await seeEpisode(clinic.prosthetist, episodeId);
  expect(bundle.limbMeasurements.at(-1)?.stations).toEqual(stations(limb));
});

test("nine pairs leave the setting, the tenth puts the clinic's own error in its place: s = √(Σd²/2n), Bland & Altman, BMJ 1996;312:1654", async () => {
  const clinic = await openTestClinic();
  const { episodeId } = await readyEpisode(clinic);
  const measured = { episodeId, method: "tape" };
  await measureLimb(clinic.assistant, { ...measured, at: "2026-10-06T09:00:00Z", stations: twice([2, 2, 2, 2, 2]) });
  await measureLimb(clinic.assistant, { ...measured, at: "2026-10-06T15:00:00Z", stations: twice([2, 2, 2, 2]) });
  const nine = await limitsAndTape(await database());
  expect([nine.tape.pairs, nine.tape.inForceMm, nine.limits.version]).toEqual([9, null, "fit-rules/1"]);

  await measureLimb(clinic.assistant, { ...measured, at: "2026-10-07T09:00:00Z", stations: twice([2]) });
  // By hand: ten differences of 2 mm, √(10·4/20) = 1.41421, to 0.01 mm.
  const { limits, tape } = await seeRules(clinic.technician, null);
  expect(tape.pairs).toBe(10);
  expect(tape.value).toBeCloseTo(Math.SQRT2, 12);
  expect(limits.version).toBe("fit-rules/1; tape-error-mm 1.41");
  const seen = await seeEpisode(clinic.prosthetist, episodeId);
  expect(seen.assessment.rulesVersion).toBe("fit-rules/1; tape-error-mm 1.41");
  expect((await exportBundle(clinic.prosthetist, episodeId)).bundle.ownLimits).toEqual({ "tape-error-mm": 1.41 });
});

test("it is held within the range of the setting", async () => {
  // By hand: ten differences of 0.2 mm, √(10·0.04/20) = 0.14142, below the least that may be set.
  await tenPairs([0.2, -0.2, 0.2, -0.2, 0.2]);
  const { limits } = await limitsAndTape(await database());
  expect(limitValue(limits, "tape-error-mm")).toBe(0.5);
});

test("a scan tells nothing of the tape, and neither does an episode that was struck out", async () => {
  const { clinic, episodeId } = await tenPairs([2, 2, 2, 2, 2], { method: "scan" });
  expect((await limitsAndTape(await database())).tape.pairs).toBe(0);
  const db = await database();
  dropLocks((await clientAndConnection()).connection);
  await db.limbMeasurement.updateMany({ data: { method: "tape" } });
  expect((await limitsAndTape(db)).tape.pairs).toBe(10);
  await strikeOutEpisode(clinic.prosthetist, { episodeId, why: "another wearer's limb" });
  expect((await limitsAndTape(db)).tape.pairs).toBe(0);
});

test("whoever has the evidence open is told when the tape error changes, and the trail names both values", async () => {
  const clinic = await openTestClinic();
  const { episodeId } = await readyEpisode(clinic);
  const db = await database();
  const other = await db.episode.findUniqueOrThrow({ where: { id: episodeId } });
  const measured = { episodeId, method: "tape", stations: twice([3, 3, 3, 3, 3]) };
  await measureLimb(clinic.assistant, { ...measured, at: "2026-10-06T09:00:00Z" });
  await measureLimb(clinic.assistant, { ...measured, at: "2026-10-07T09:00:00Z" });
  const { evidenceVersion } = await db.episode.findUniqueOrThrow({ where: { id: episodeId } });
  expect(evidenceVersion).toBeGreaterThan(other.evidenceVersion + 2);
  const entry = await db.trailEntry.findFirstOrThrow({ where: { action: "the clinic's own tape error changed" } });
  // By hand: √(10·9/20) = 2.12132.
  expect([entry.before, entry.after]).toEqual(['{"value":1.5}', expect.stringContaining('"value":2.12')]);
});

test("a setting that an administrator changes waits behind the clinic's own error", async () => {
  const { clinic } = await tenPairs([2, 2, 2, 2, 2]);
  await changeLimit(clinic.administrator, { name: "tape-error-mm", value: "3", why: "a new tape" });
  expect((await limitsAndTape(await database())).limits.version).toBe("fit-rules/1; tape-error-mm 1.41");
  await changeLimit(clinic.administrator, { name: "tape-pairs-least", value: "50", why: "ten are too few for us" });
  expect(limitValue((await limitsAndTape(await database())).limits, "tape-error-mm")).toBe(3);
});

test("two readings further apart than the tape's error, and a jump between neighbours, are asked about once", async () => {
  const clinic = await openTestClinic();
  const { episodeId } = await readyEpisode(clinic);
  const input = {
    episodeId,
    at: "2026-10-07T09:00:00Z",
    method: "tape",
    stations: [
      { distanceMm: 0, circumferenceMm: "180,5 mm", againMm: "188,5" },
      { distanceMm: 40, circumferenceMm: 290 },
    ],
  };
  const asked = await measureLimb(clinic.assistant, input).catch((error: unknown) => error);
  expect(asked).toBeInstanceOf(AskedAbout);
  expect(asked).toMatchObject({
    fields: {
      "stations.0.againMm": expect.stringContaining("further apart than the tape’s error. Is it so?"),
      "stations.1.circumferenceMm": expect.stringContaining("290 mm is 61 % more than at the level before, 180.5 mm"),
    },
  });
  const { asked: confirmed } = asked as AskedAbout; // shown to be one above
  await expect(measureLimb(clinic.assistant, { ...input, confirmed })).resolves.toMatchObject({ episodeId });
});

test("levels are put in order, and an error keeps to the row where it was typed", async () => {
  const clinic = await openTestClinic();
  const { episodeId } = await readyEpisode(clinic);
  const measured = { episodeId, at: "2026-10-07T09:00:00Z", method: "tape" };
  const { measurementId } = await measureLimb(clinic.assistant, {
    ...measured,
    stations: stations([176, 188, 203]).toReversed(),
  });
  const row = await (await database()).limbMeasurement.findUniqueOrThrow({ where: { id: measurementId } });
  expect(row.stations).toEqual(stations([176, 188, 203]));

  const backwards = [...stations([176, 188]), { distanceMm: 80, circumferenceMm: 700 }].toReversed();
  const refused = await measureLimb(clinic.assistant, { ...measured, stations: backwards }).catch((error: unknown) => error);
  expect(refused).toBeInstanceOf(InputRefused);
  // 700 mm is no forearm: out of the range of the level, though another limb may be so round.
  expect(refused).toMatchObject({ fields: { "stations.0.circumferenceMm": expect.stringContaining("60 to 600 mm round") } });
});

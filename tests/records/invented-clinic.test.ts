/** The invented clinic is what the screens, the pictures and the browser tests stand on: nothing in it may drift. */
import { afterAll, beforeAll, expect, test } from "vitest";
import {
  assessReadiness,
  blanchings,
  type Decision,
  defaultLimits,
  levels,
  limbVolume,
  nextSteps,
  outcomesOfAdjustments,
  seriesOf,
  strengths,
} from "@/lib/fit";
import { setClock } from "@/lib/records/clock";
import { database } from "@/lib/records/database";
import { rebuildDerived } from "@/lib/records/rebuild";
import { seeAdjustmentHistory } from "@/lib/records/see-adjustment-history";
import { type SeenEpisode, seeEpisode } from "@/lib/records/see-episode";
import { verifyRecord } from "@/lib/records/see-record";
import { stages } from "@/lib/records/stage";
import { happenings } from "@/prisma/invented-clinic";
import { demoAccounts, demoPassword } from "@/prisma/invented-clinic/accounts";
import { calendarOf } from "@/prisma/invented-clinic/calendar";
import { forbidden, outcomes } from "./invented-clinic-outcomes";
import { expectAsOnPaper, loadInvented } from "./invented-store";

const today = new Date("2026-10-08T09:00:00Z");
/** Hundreds of commands. */
const patienceMs = 240_000;

let clinic: Awaited<ReturnType<typeof loadInvented>>;
let seen: Map<string, SeenEpisode[]>;
let stopClock: () => void;

beforeAll(async () => {
  clinic = await loadInvented({ today });
  stopClock = setClock({ now: () => today });
  seen = new Map();
  const db = await database();
  for (const { id } of await db.episode.findMany({ where: { struckOutAt: null }, orderBy: { openedAt: "asc" } })) {
    const found = await seeEpisode(clinic.cast.lead, id);
    const { clinicNumber } = found.episode.wearer;
    seen.set(clinicNumber, [...(seen.get(clinicNumber) ?? []), found]);
  }
}, patienceMs);

afterAll(async () => {
  stopClock();
  await clinic.remove();
});

const everyone = (): SeenEpisode[] => [...seen.values()].flat();
const latestOf = (number: string): SeenEpisode => {
  const found = seen.get(number)?.at(-1);
  if (!found) throw new Error(`no wearer ${number}`);
  return found;
};
const openGates = ({ assessment }: SeenEpisode) =>
  Object.fromEntries(
    assessment.gates.filter(({ state }) => state !== "met" && state !== "close").map(({ id, state }) => [id, state]),
  );

test("a clinic that says it is invented, with at least 26 wearers and an account for each role", async () => {
  expect(await (await database()).clinic.findFirstOrThrow()).toMatchObject({
    name: "Tidewater Limb Clinic",
    timeZone: "Europe/Lisbon",
    invented: true,
  });
  expect(seen.size).toBeGreaterThanOrEqual(26);
  expect(new Set(demoAccounts.map(({ role }) => role))).toEqual(
    new Set(["prosthetist", "assistant", "technician", "administrator"]),
  );
  expect(demoAccounts.every(({ email }) => email.endsWith("@tidewater.example"))).toBe(true);
  expect(demoPassword.length).toBeGreaterThanOrEqual(12);
});

test("every level, stage, next step and decision occurs", () => {
  expect(new Set(everyone().map(({ bundle }) => bundle.episode.level))).toEqual(new Set(levels));
  expect(new Set(everyone().map(({ episode }) => episode.stage))).toEqual(new Set(stages));
  expect(new Set(everyone().map(({ episode }) => episode.nextStep))).toEqual(new Set([...nextSteps, null]));
  const decisions: Decision[] = ["must not be released", "not ready", "not enough evidence", "ready with conditions", "ready"];
  expect(new Set(everyone().map(({ episode }) => episode.decision))).toEqual(new Set(decisions));
});

test.each(outcomes)("%s", (_who, number, stage, next, decision, open) => {
  const found = latestOf(number);
  expect(found.episode).toMatchObject({ stage, nextStep: next, decision });
  expect(openGates(found)).toEqual(open);
});

test.each(forbidden)("$who: must not be released", ({ number, why }) => {
  const found = latestOf(number);
  expect(found.episode).toMatchObject({ decision: "must not be released", nextStep: "alter or remake" });
  const forbids = found.assessment.gates.filter(({ state }) => state === "forbids");
  expect(forbids.map(({ id }) => id).sort()).toEqual(Object.keys(why).sort());
  for (const gate of forbids) expect(gate.why).toMatch(why[gate.id] ?? /^$/);
});

test("a check that is not met, and a socket that slips, stop a socket before any trial", () => {
  expect(openGates(latestOf("TW-0158"))).toMatchObject({ "checks-done": "not met", "no-stop-sign": "unknown" });
  expect(openGates(latestOf("TW-0159"))).toMatchObject({ suspension: "not met", "no-stop-sign": "unknown" });
});

test("a release was withdrawn, an episode struck out, a wearer has two limbs to fit", async () => {
  const db = await database();
  expect(latestOf("TW-0135").bundle.signOffs).toMatchObject([{ withdrawnAt: expect.any(String) }]);
  const struckOut = await db.episode.findMany({ where: { struckOutAt: { not: null } }, include: { wearer: true } });
  expect(struckOut.map(({ wearer }) => wearer.clinicNumber)).toEqual(["TW-0158"]);
  expect(seen.get("TW-0061")?.map(({ episode }) => [episode.side, episode.stage])).toEqual([
    ["right", "delivered"],
    ["left", "wear trial"],
  ]);
});

test("one socket is late on the bench, one was sent weeks ago and did not come back", () => {
  const [onBench, away] = ["TW-0147", "TW-0133"].map(latestOf);
  const day = today.toISOString().slice(0, 10);
  expect(onBench?.episode.sockets.at(-1)).toMatchObject({ state: "planned" });
  expect(onBench?.episode.sockets.at(-1)?.neededOn?.localeCompare(day)).toBe(-1);
  expect(away?.episode.sockets.at(-1)).toMatchObject({ state: "sent" });
  expect(away?.episode.dueOn?.localeCompare(day)).toBe(-1);
});

test("the gardener's limb shrinks by more than a tenth and then settles", () => {
  const { assessment, bundle } = latestOf("TW-0038");
  const volumes = bundle.limbMeasurements.map(({ stations }) => limbVolume(stations, { circumferenceSdMm: 1.5 }).volumeMl);
  expect(volumes.at(-1)).toBeLessThan(0.9 * (volumes[0] ?? 0));
  expect(volumes.every((volume, index) => volume <= (volumes[index - 1] ?? volume))).toBe(true);
  expect(assessment.gates.find(({ id }) => id === "limb-settled")).toMatchObject({ state: "met" });
});

test.each(["TW-0112", "TW-0038"])(
  "every socket of the series of %s follows from the one before it and its adjustments",
  (number) => {
    const { bundle } = latestOf(number);
    expect(bundle.sockets.length).toBeGreaterThanOrEqual(5);
    for (const { id } of bundle.sockets) {
      const described = assessReadiness(bundle, defaultLimits, bundle.asOf, { socketId: id }).gates.find(
        (gate) => gate.id === "socket-described",
      );
      expect(described).toMatchObject({ state: "met" });
    }
  },
);

test("marks of every strength, on every aspect and at the distal end, looked at from doffing until they were gone", () => {
  const looks = everyone().flatMap(({ bundle }) =>
    bundle.wearTrials.map((trial) => ({ trial, limbLengthMm: bundle.episode.limbLengthMm })),
  );
  const marks = looks.flatMap(({ trial, limbLengthMm }) =>
    trial.inspections.flatMap(({ marks: seenMarks }) => seenMarks.map((mark) => ({ ...mark, limbLengthMm }))),
  );
  expect(new Set(marks.map(({ strength }) => strength))).toEqual(new Set(strengths));
  expect(new Set(marks.map(({ blanches }) => blanches))).toEqual(new Set(blanchings));
  expect(new Set(marks.map(({ angleDeg }) => Math.round(angleDeg / 90) % 4)).size).toBe(4);
  expect(marks.some(({ distanceFromEndMm, limbLengthMm }) => distanceFromEndMm < limbLengthMm / 10)).toBe(true);
  const minutes = new Set(looks.flatMap(({ trial }) => trial.inspections.map(({ minutesAfterDoffing }) => minutesAfterDoffing)));
  expect([1, 5, 10, 20].every((minute) => minutes.has(minute))).toBe(true);
});

test("what came of the adjustments is kept as the series says it, and enough of some kinds to be counted", async () => {
  for (const { episode, bundle, limits } of everyone())
    expect(episode.adjustmentOutcomes, episode.wearer.clinicNumber).toEqual(outcomesOfAdjustments(seriesOf(bundle, { limits })));
  const shown = (await seeAdjustmentHistory(clinic.cast.lead, {})).flatMap((one) =>
    one.withheld === null ? [[one.kind, one.worked.count, one.noDetectableChange, one.worse.count, one.notMeasured]] : [],
  );
  expect(shown).toEqual([
    ["relief", 5, 1, 0, 0],
    ["trim", 5, 1, 0, 0],
    ["volume", 6, 0, 0, 3],
  ]);
});

test("the trail holds, and its times follow the story", async () => {
  expect(await verifyRecord(clinic.cast.administrator, null)).toMatchObject({ holds: true });
  const entries = await (await database()).trailEntry.findMany({ orderBy: { position: "asc" }, select: { at: true } });
  const times = entries.map(({ at }) => at.getTime());
  expect(times).toEqual(times.toSorted((a, b) => a - b));
  expect(today.getTime() - (times[0] ?? 0)).toBeGreaterThan(360 * 86_400_000);
});

test("what a rebuild derives from the records is what was kept", async () => {
  const db = await database();
  const kept = await db.episode.findMany();
  const trials = await db.wearTrial.findMany();
  await db.episode.updateMany({
    data: {
      stage: "assessment",
      nextStep: null,
      decision: null,
      dueOn: null,
      subjectSocketId: null,
      socketCount: 0,
      staleOn: null,
      adjustmentOutcomes: [],
    },
  });
  await db.wearTrial.updateMany({ data: { state: "planned", verdict: null } });
  expect(await rebuildDerived()).toBe(kept.length);
  expect(await db.episode.findMany()).toEqual(kept);
  expect(await db.wearTrial.findMany()).toEqual(trials);
});

test.each([0, 1, 2, 3, 4, 5, 6])(
  "loaded %i days later, on another weekday, nothing comes before what it follows from or after its day",
  (later) => {
    const day = new Date(today.getTime() + later * 86_400_000);
    const steps = happenings(calendarOf(day));
    expect(steps.length).toBeGreaterThan(400);
    expect(steps.filter(({ at }) => at > day)).toEqual([]);
    const weekdays = new Set(steps.filter(({ what }) => !/surveyor|welder/.test(what)).map(({ at }) => at.getUTCDay()));
    expect(weekdays).toEqual(new Set([1, 2, 3, 4, 5]));
  },
);

test("what the store holds is what the stories say on paper", () => expectAsOnPaper(today));

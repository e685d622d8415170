/** A wearer whose evidence is ready, written through the commands, and the figures that tests type. */
import type { Actor } from "@/lib/access/actor";
import type { Role } from "@/lib/access/roles";
import { acknowledgeCautions } from "@/lib/records/acknowledge-cautions";
import { addWearer } from "@/lib/records/add-wearer";
import { database } from "@/lib/records/database";
import { measureLimb } from "@/lib/records/measure-limb";
import { moveSocket } from "@/lib/records/move-socket";
import { openEpisode } from "@/lib/records/open-episode";
import { planWearTrial } from "@/lib/records/plan-wear-trial";
import { recordFitting } from "@/lib/records/record-fitting";
import { lookAtSkin, recordWearTrial } from "@/lib/records/record-wear-trial";
import { specifySocket } from "@/lib/records/specify-socket";

/** The instant that the tests of the store take for now. */
export const today = new Date("2026-10-08T09:00:00Z");

const actor = (role: Role, name: string) => ({ id: name, name, role }) satisfies Actor;

/** Who works at the test clinic. */
export const staff = {
  prosthetist: actor("prosthetist", "A Prosthetist"),
  colleague: actor("prosthetist", "Another Prosthetist"),
  assistant: actor("assistant", "An Assistant"),
  technician: actor("technician", "A Technician"),
  administrator: actor("administrator", "An Administrator"),
};

const limb = [176, 188, 203, 219, 238];
export const stations = (circumferences: readonly number[]) =>
  circumferences.map((circumferenceMm, index) => ({ distanceMm: index * 40, circumferenceMm }));

export const upperChecks = {
  donning: "met",
  seating: "met",
  "total-contact": "met",
  suspension: "met",
  rotation: "met",
  "trim-lines": "met",
  "bony-relief": "met",
  circulation: "met",
  feeling: "met",
  "comfort-at-rest": "met",
  "comfort-under-load": "met",
};

export const episodeOf = (clinic: { prosthetist: Actor }, wearerId: string) => ({
  wearerId,
  side: "left",
  level: "transradial",
  cause: "trauma",
  lossOn: "2023-02-11",
  landmark: "distal end",
  stationsFrom: "distal end",
  limbLengthMm: 170,
  suspension: "self-suspending",
  deviceMassKg: 0.68,
  deviceCentreOfMassMm: 220,
  prosthetistId: clinic.prosthetist.id,
});

export const minutesAfter = (at: string, minutes: number): string =>
  new Date(new Date(at).getTime() + minutes * 60_000).toISOString();

export const trialBegin = "2026-10-05T10:00:00Z";

/** The events of a plain trial of 20 minutes in which nothing went wrong. */
export const calmTrial = (begin = trialBegin, rated: { comfort?: number; pain?: number } = {}) => [
  { kind: "begun", at: begin },
  ...[5, 10, 15, 20].map((minute) => ({
    kind: "check-in",
    at: minutesAfter(begin, minute),
    comfort: rated.comfort ?? 8,
    pain: rated.pain ?? 0,
    exertion: 3,
    feelings: [],
    reportedBy: "wearer",
  })),
  { kind: "ended", at: minutesAfter(begin, 20.5) },
  { kind: "doffed", at: minutesAfter(begin, 21) },
];

const mark = (markId: string, angleDeg: number) => ({
  markId,
  angleDeg,
  distanceFromEndMm: 85,
  widthMm: 18,
  heightMm: 14,
  blanches: "yes",
});

export const evenMarks = (strength: "clear" | "none") =>
  ["m1", "m2", "m3", "m4"].map((markId, index) => ({
    ...mark(markId, index * 90),
    strength,
    ...(strength === "none" ? { fadedAtMin: 8 } : {}),
  }));

export const milestones = ["fitted", "planned", "worn", "looked"] as const;
/** How far the evidence has come: the trial planned, worn, and the skin looked at until its marks had faded. */
export type Milestone = (typeof milestones)[number];

export interface ReadyEpisode {
  wearerId: string;
  episodeId: string;
  socketId: string;
  firstSocketId: string;
  /** Empty until the trial is planned. */
  trialId: string;
}

/** Two sockets; the second fits, its trial passed, its marks faded: ready to be signed. Gives each milestone as it comes. */
export async function* recordReadyEpisode({
  prosthetist,
  assistant,
  technician,
}: Record<"prosthetist" | "assistant" | "technician", Actor>): AsyncGenerator<{ milestone: Milestone; ready: ReadyEpisode }> {
  const { wearerId } = await addWearer(assistant, {
    clinicNumber: "T-1",
    name: "Wearer One",
    birthOn: "1984-06-30",
    bodyMassKg: "74",
    cautions: [{ kind: "reduced-feeling" }],
  });
  const { episodeId } = await openEpisode(prosthetist, episodeOf({ prosthetist }, wearerId));
  await acknowledgeCautions(prosthetist, { episodeId });
  const first = await measureLimb(assistant, {
    episodeId,
    at: "2026-08-31T09:00:00Z",
    method: "tape",
    minutesSinceDoffing: 40,
    stations: stations(limb),
  });
  const second = await measureLimb(assistant, {
    episodeId,
    at: "2026-09-28T09:00:00Z",
    method: "tape",
    minutesSinceDoffing: 40,
    stations: stations(limb.map((c) => c - 0.5)),
  });
  const one = await specifySocket(prosthetist, {
    episodeId,
    at: "2026-09-01T09:00:00Z",
    limbMeasurementId: first.measurementId,
    stations: stations(limb.map((c) => c - 4)),
    material: "clear copolyester",
  });
  const two = await specifySocket(prosthetist, {
    episodeId,
    at: "2026-09-29T09:00:00Z",
    derivedFromId: one.socketId,
    limbMeasurementId: second.measurementId,
    stations: stations([170.3, 182.2, 197.0, 212.8, 231.6]),
    material: "clear copolyester",
    adjustments: [
      {
        kind: "volume",
        amount: "-2",
        unit: "percent",
        reason: "The limb moved in the socket when lifted",
        answers: "displacement",
      },
    ],
  });
  const db = await database();
  for (const state of ["being made", "sent", "at hand"] as const) {
    const { version } = await db.checkSocket.findUniqueOrThrow({ where: { id: two.socketId } });
    await moveSocket(state === "at hand" ? assistant : technician, { socketId: two.socketId, version, state, at: today });
  }
  await recordFitting(prosthetist, {
    socketId: two.socketId,
    at: "2026-10-05T09:30:00Z",
    place: "clinic",
    checks: upperChecks,
    pulls: [22, 34, 45].map((loadN, index) => ({ loadN, displacementMm: [1.6, 2.1, 2.7][index] })),
    motion: [{ joint: "elbow-flexion", withoutDeg: 138, withDeg: 131 }],
    comfort: 8,
    pain: 0,
  });
  const found = { wearerId, episodeId, socketId: two.socketId, firstSocketId: one.socketId };
  yield { milestone: "fitted", ready: { ...found, trialId: "" } };
  const { trialId } = await planWearTrial(assistant, {
    socketId: two.socketId,
    minutes: 20,
    loadKg: 0.68,
    loadDistanceMm: 220,
    intervalMin: 5,
    activities: "coiling rope, lifting a bucket",
  });
  const ready = { ...found, trialId };
  yield { milestone: "planned", ready };
  await recordWearTrial(assistant, { trialId, events: calmTrial() });
  yield { milestone: "worn", ready };
  await lookAtSkin(assistant, { trialId, at: minutesAfter(trialBegin, 22), minutesAfterDoffing: 1, marks: evenMarks("clear") });
  await lookAtSkin(assistant, { trialId, at: minutesAfter(trialBegin, 29), minutesAfterDoffing: 8, marks: evenMarks("none") });
  yield { milestone: "looked", ready };
}

/**
 * One episode as one JSON document: what `assessReadiness` reads, what a sign-off freezes, what export writes.
 * Unknown fields are refused. Lengths are in mm, masses in kg, loads in N, angles in degrees.
 */
import { z } from "zod";
import * as words from "./words";

const id = z.string().min(1).max(120);
const text = z.string().min(1).max(4000);
const instant = z.iso.datetime({ offset: true });
const date = z.iso.date();
const lengthMm = z.number().nonnegative().max(3000);
const rating = z.number().min(0).max(10);

const sameOnlyOnce =
  <T>(key: (item: T) => string | number) =>
  (items: readonly T[]) =>
    new Set(items.map(key)).size === items.length;

export const Station = z.strictObject({
  distanceMm: z.number().min(-500).max(3000),
  circumferenceMm: z.number().positive().max(3000),
});
export type Station = z.infer<typeof Station>;

const increasing = (stations: readonly Station[]) =>
  stations.every(
    (station, index) => index === 0 || station.distanceMm > (stations[index - 1]?.distanceMm ?? Number.NEGATIVE_INFINITY),
  );
const Stations = z.array(Station).max(200).refine(increasing, "distances must increase from one station to the next");

export const Adjustment = z.strictObject({
  id,
  aspect: z.enum(words.aspects).optional(),
  third: z.enum(words.thirds).optional(),
  kind: z.enum(words.adjustmentKinds),
  amount: z.number().min(-500).max(500).optional(),
  unit: z.enum(words.adjustmentUnits).optional(),
  reason: z.string().max(4000),
  /** `check:KEY`, `mark:ID`, `feeling:KIND`, `pain`, `displacement` or `motion:JOINT`. */
  answers: z
    .string()
    .regex(
      /^(?:check:.+|mark:.+|feeling:.+|pain|displacement|motion:.+)$/,
      "expected check:KEY, mark:ID, feeling:KIND, pain, displacement or motion:JOINT",
    )
    .optional(),
});
export type Adjustment = z.infer<typeof Adjustment>;

export const SkinMark = z.strictObject({
  id,
  distanceFromEndMm: lengthMm,
  /** 0 anterior, 90 lateral, 180 posterior, 270 medial, on either side. */
  angleDeg: z.number().min(0).max(360),
  widthMm: z.number().positive().max(1000),
  heightMm: z.number().positive().max(1000),
  strength: z.enum(words.strengths),
  blanches: z.enum(words.blanchings),
  firm: z.boolean(),
  warm: z.boolean(),
  painful: z.boolean(),
  broken: z.boolean(),
  fadedAtMin: z.number().nonnegative().max(100_000).nullable(),
});
export type SkinMark = z.infer<typeof SkinMark>;

export const Inspection = z.strictObject({
  id,
  at: instant,
  minutesAfterDoffing: z.number().nonnegative().max(100_000),
  marks: z
    .array(SkinMark)
    .max(200)
    .refine(
      sameOnlyOnce((mark: { id: string }) => mark.id),
      "the same mark twice in one look",
    ),
});
export type Inspection = z.infer<typeof Inspection>;

export const Feeling = z.strictObject({
  kind: z.enum(words.feelingKinds),
  aspect: z.enum(words.aspects).optional(),
  third: z.enum(words.thirds).optional(),
});

const eventBase = {
  id,
  at: instant,
  note: z.string().max(4000).optional(),
  reportedBy: z.enum(words.reporters).optional(),
  /** Dated when it cannot have been: after it came, or before its socket was specified. It counts only where it is bad. */
  misdated: z.literal(true).optional(),
};

export const TrialEvent = z.discriminatedUnion("kind", [
  z.strictObject({ ...eventBase, kind: z.literal("begun") }),
  z.strictObject({
    ...eventBase,
    kind: z.literal("check-in"),
    comfort: rating,
    pain: rating,
    exertion: rating,
    feelings: z.array(Feeling).max(50),
  }),
  z.strictObject({ ...eventBase, kind: z.literal("paused") }),
  z.strictObject({ ...eventBase, kind: z.literal("resumed") }),
  z.strictObject({ ...eventBase, kind: z.literal("stop-sign"), sign: z.enum(words.stopSigns) }),
  z.strictObject({ ...eventBase, kind: z.literal("ended") }),
  z.strictObject({ ...eventBase, kind: z.literal("doffed") }),
  /** Puts right what an earlier check-in says; both stay. A stop sign cannot be corrected away. */
  z.strictObject({
    ...eventBase,
    kind: z.literal("corrected"),
    corrects: id,
    comfort: rating.optional(),
    pain: rating.optional(),
    exertion: rating.optional(),
    feelings: z.array(Feeling).max(50).optional(),
  }),
]);
export type TrialEvent = z.infer<typeof TrialEvent>;

export const TrialPlan = z.strictObject({
  minutes: z
    .number()
    .positive()
    .max(24 * 60),
  loadKg: z.number().nonnegative().max(100).optional(),
  loadDistanceMm: lengthMm.optional(),
  intervalMin: z.number().positive().max(240),
  activities: z.array(z.string().min(1).max(200)).max(50),
});
export type TrialPlan = z.infer<typeof TrialPlan>;

export const WearTrialRecord = z.strictObject({
  id,
  socketId: id,
  plan: TrialPlan,
  events: z.array(TrialEvent).max(20_000),
  inspections: z.array(Inspection).max(200),
  /** Written down after it was done, with its true times. */
  enteredAfterwards: z.boolean().optional(),
});
export type WearTrialRecord = z.infer<typeof WearTrialRecord>;

export const Pull = z.strictObject({ loadN: z.number().nonnegative().max(2000), displacementMm: z.number().min(0).max(500) });
export type Pull = z.infer<typeof Pull>;

export const JointMotion = z.strictObject({
  joint: z.string().regex(/^[a-z]+(?:-[a-z]+)*$/, "a joint is named by its movement, as elbow-flexion"),
  withoutDeg: z.number().min(-180).max(360),
  withDeg: z.number().min(-180).max(360),
});
export type JointMotion = z.infer<typeof JointMotion>;

const allChecks = [...new Set([...words.upperLimbChecks, ...words.lowerLimbChecks])] as [words.CheckKey, ...words.CheckKey[]];

export const FittingRecord = z.strictObject({
  id,
  socketId: id,
  at: instant,
  place: z.enum(words.places),
  checks: z.partialRecord(z.enum(allChecks), z.enum(words.checkAnswers)),
  pulls: z.array(Pull).max(100),
  motion: z
    .array(JointMotion)
    .max(50)
    .refine(
      sameOnlyOnce((motion: { joint: string }) => motion.joint),
      "the same joint twice",
    ),
  comfort: rating.optional(),
  pain: rating.optional(),
  inspections: z.array(Inspection).max(200),
  /** What was told and not seen: at a fitting over video, say. */
  reported: z.array(z.enum(words.reportedParts)).max(words.reportedParts.length).optional(),
});
export type FittingRecord = z.infer<typeof FittingRecord>;

export const LimbMeasurement = z.strictObject({
  id,
  at: instant,
  method: z.enum(["tape", "scan"]),
  minutesSinceDoffing: z.number().nonnegative().max(100_000).optional(),
  stations: Stations.min(2),
  capHeightMm: z.number().positive().max(1000).optional(),
});
export type LimbMeasurement = z.infer<typeof LimbMeasurement>;

export const CheckSocket = z.strictObject({
  id,
  number: z.number().int().positive(),
  derivedFrom: id.optional(),
  stations: Stations,
  limbMeasurementId: id.optional(),
  adjustments: z.array(Adjustment).max(100),
  state: z.enum(words.socketStates).optional(),
  /** When it entered that state. */
  stateSince: instant.optional(),
  material: z.string().max(400).optional(),
});
export type CheckSocket = z.infer<typeof CheckSocket>;

export const Caution = z.strictObject({
  kind: z.enum(words.cautionKinds),
  note: text.optional(),
  acknowledgedBy: text.optional(),
  acknowledgedAt: instant.optional(),
});
export type Caution = z.infer<typeof Caution>;

export const EpisodeRecord = z.strictObject({
  id,
  side: z.enum(words.sides),
  level: z.enum(words.levels),
  cause: z.enum(words.causes),
  lossOn: date.optional(),
  birthOn: date.optional(),
  landmark: text,
  stationsFrom: z.enum(["distal end", "proximal landmark"]),
  limbLengthMm: z.number().positive().max(1500),
  bodyMassKg: z.number().positive().max(400).optional(),
  suspension: z.enum(words.suspensions),
  cautions: z.array(Caution).max(50),
  device: z.strictObject({ massKg: z.number().positive().max(50), centreOfMassMm: z.number().positive().max(1500) }).optional(),
});
export type EpisodeRecord = z.infer<typeof EpisodeRecord>;

export const Acceptance = z.strictObject({ gate: z.enum(words.gateIds), by: text, at: instant, why: text });
export type Acceptance = z.infer<typeof Acceptance>;

export const SignOffRecord = z.strictObject({
  id,
  socketId: id,
  meaning: z.enum(["wear trial accepted", "release for definitive fabrication"]),
  by: text,
  at: instant,
  withdrawnAt: instant.optional(),
});

export const bundleFormat = "fitting-bundle/1";

export const Bundle = z.strictObject({
  format: z.literal(bundleFormat),
  asOf: instant,
  clinic: z.strictObject({ timeZone: text }),
  episode: EpisodeRecord,
  limbMeasurements: z.array(LimbMeasurement).max(2000),
  sockets: z.array(CheckSocket).max(200),
  fittings: z.array(FittingRecord).max(2000),
  wearTrials: z.array(WearTrialRecord).max(500),
  carried: z.array(Adjustment).max(50),
  acceptances: z.array(Acceptance).max(200),
  /** What was signed before `asOf`, so that the next step is known without the store. */
  signOffs: z.array(SignOffRecord).max(200).optional(),
  deliveredAt: instant.optional(),
  /** The clinic's own values for limits that it may set, by id: whoever judges the file uses them too. */
  ownLimits: z.record(z.string(), z.number()).optional(),
});
export type Bundle = z.infer<typeof Bundle>;

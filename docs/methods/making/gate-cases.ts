/** One change at a time to an episode of which the socket is ready: what each gate then says is its page. */
import type { Bundle, GateId, TrialEvent } from "../../../lib/fit";

export interface GateCase {
  gate: GateId;
  /** What was changed, in words. */
  change: string;
  to: (bundle: Bundle) => void;
}

type CheckIn = Extract<TrialEvent, { kind: "check-in" }>;

const trialOf = (bundle: Bundle) => the(bundle.wearTrials[0]);
const fittingOf = (bundle: Bundle) => the(bundle.fittings.at(-1));
const socketOf = (bundle: Bundle) => the(bundle.sockets.at(-1));
const firstMarkOf = (bundle: Bundle) => the(trialOf(bundle).inspections[0]?.marks[0]);
const checkInsOf = (bundle: Bundle) => trialOf(bundle).events.filter((event): event is CheckIn => event.kind === "check-in");

function the<T>(part: T | undefined): T {
  if (part === undefined) throw new Error("The ready episode lacks a part that a case changes.");
  return part;
}

const rate = (scale: "comfort" | "pain", ratings: readonly number[]) => (bundle: Bundle) =>
  checkInsOf(bundle).forEach((checkIn, index) => {
    checkIn[scale] = ratings[index] ?? checkIn[scale];
  });
const change =
  <T>(part: (bundle: Bundle) => T, values: Partial<T>) =>
  (bundle: Bundle) => {
    Object.assign(part(bundle) as object, values); // every part here is an object
  };
const withoutTrials = (bundle: Bundle) => {
  bundle.wearTrials = [];
};
const widerBy = (mm: number) => (bundle: Bundle) => {
  const newest = the(bundle.limbMeasurements.at(-1));
  newest.stations = newest.stations.map((station) => ({ ...station, circumferenceMm: station.circumferenceMm + mm }));
};

export const gateCases: readonly GateCase[] = [
  {
    gate: "limb-measured",
    change: "Last measured 40 days before the trial",
    to: (bundle) => {
      bundle.limbMeasurements = bundle.limbMeasurements.map((measurement) => ({ ...measurement, at: "2026-08-26T10:00:00Z" }));
    },
  },
  { gate: "limb-settled", change: "Every circumference 10 mm more at the second measurement", to: widerBy(10) },
  {
    gate: "limb-settled",
    change: "Measured once only",
    to: (bundle) => {
      bundle.limbMeasurements = bundle.limbMeasurements.slice(1);
      bundle.sockets = bundle.sockets.map((socket) => ({ ...socket, limbMeasurementId: "lm2" }));
    },
  },
  {
    gate: "limb-settled",
    change: "10 mm more, in an adult with a congenital difference",
    to: (bundle) => {
      widerBy(10)(bundle);
      bundle.episode.cause = "congenital";
    },
  },
  { gate: "socket-described", change: "The socket's adjustment is not recorded", to: change(socketOf, { adjustments: [] }) },
  {
    gate: "socket-described",
    change: "5 mm more at one level of the socket",
    to: (bundle) => {
      const station = the(socketOf(bundle).stations[2]);
      station.circumferenceMm += 5;
    },
  },
  {
    gate: "checks-done",
    change: "One check *not met*",
    to: (bundle) => Object.assign(fittingOf(bundle).checks, { circulation: "not met" }),
  },
  {
    gate: "checks-done",
    change: "One check not made",
    to: (bundle) => Object.assign(fittingOf(bundle).checks, { feeling: "not done" }),
  },
  {
    gate: "suspension",
    change: "Four times the displacement at each pull",
    to: (bundle) => {
      fittingOf(bundle).pulls.forEach((pull) => {
        pull.displacementMm *= 4;
      });
    },
  },
  { gate: "suspension", change: "The pulls were told, and not seen", to: change(fittingOf, { reported: ["pulls"] }) },
  { gate: "suspension", change: "Not pulled on", to: change(fittingOf, { pulls: [] }) },
  {
    gate: "motion",
    change: "The elbow bends to 100° in the socket",
    to: change(fittingOf, { motion: [{ joint: "elbow-flexion", withoutDeg: 138, withDeg: 100 }] }),
  },
  {
    gate: "motion",
    change: "To 107°",
    to: change(fittingOf, { motion: [{ joint: "elbow-flexion", withoutDeg: 138, withDeg: 107 }] }),
  },
  { gate: "motion", change: "Not measured", to: change(fittingOf, { motion: [] }) },
  {
    gate: "trial-load",
    change: "The load held at 300 mm",
    to: (bundle) => Object.assign(trialOf(bundle).plan, { loadDistanceMm: 300 }),
  },
  {
    gate: "trial-load",
    change: "The device is not described",
    to: (bundle) => {
      delete bundle.episode.device;
    },
  },
  {
    gate: "worn-long-enough",
    change: "Ended after 15 min",
    to: (bundle) => {
      const trial = trialOf(bundle);
      trial.events = trial.events.filter(({ id }) => ["e0", "e5", "e10"].includes(id));
      trial.events.push({ id: "x", at: "2026-10-05T10:15:00Z", kind: "ended" });
    },
  },
  {
    gate: "checked-often-enough",
    change: "One check-in missed",
    to: (bundle) => {
      const trial = trialOf(bundle);
      trial.events = trial.events.filter(({ id }) => id !== "e10");
    },
  },
  { gate: "comfort", change: "Comfort 8, 8, 7, 6", to: rate("comfort", [8, 8, 7, 6]) },
  { gate: "comfort", change: "Comfort 8, 4, 8, 8", to: rate("comfort", [8, 4, 8, 8]) },
  { gate: "pain", change: "A pain of 4", to: rate("pain", [0, 4, 1, 0]) },
  { gate: "pain", change: "A pain of 7", to: rate("pain", [0, 7, 1, 0]) },
  { gate: "trend", change: "Pain 0, 1, 2, 3", to: rate("pain", [0, 1, 2, 3]) },
  {
    gate: "trend",
    change: "Asked twice only, every 10 min as planned: pain 0 and 3",
    to: (bundle) => {
      const trial = trialOf(bundle);
      trial.plan.intervalMin = 10;
      trial.events = trial.events.filter(({ id }) => id !== "e5" && id !== "e15");
      rate("pain", [0, 3])(bundle);
    },
  },
  { gate: "trend", change: "No trial yet", to: withoutTrials },
  {
    gate: "no-stop-sign",
    change: "Numbness that stays, at 12 min",
    to: (bundle) => trialOf(bundle).events.push({ id: "s", at: "2026-10-05T10:12:00Z", kind: "stop-sign", sign: "numbness" }),
  },
  {
    gate: "no-stop-sign",
    change: "Tingling felt at two check-ins running, and nobody stopped",
    to: (bundle) => {
      for (const checkIn of checkInsOf(bundle).slice(0, 2)) checkIn.feelings = [{ kind: "tingling" }];
    },
  },
  {
    gate: "skin-inspected",
    change: "The last look 1 min after doffing, with the marks still there",
    to: (bundle) => {
      const trial = trialOf(bundle);
      trial.inspections = trial.inspections.slice(0, 1);
    },
  },
  { gate: "skin-inspected", change: "Nobody looked", to: change(trialOf, { inspections: [] }) },
  { gate: "skin-intact", change: "A mark is broken", to: change(firstMarkOf, { broken: true }) },
  { gate: "skin-intact", change: "A mark is purple", to: change(firstMarkOf, { strength: "purple" }) },
  {
    gate: "skin-intact",
    change: "A mark at 25 min that does not blanch",
    to: (bundle) =>
      trialOf(bundle).inspections.push({
        id: "in3",
        at: "2026-10-05T10:46:00Z",
        minutesAfterDoffing: 25,
        marks: [{ ...firstMarkOf(bundle), blanches: "no", fadedAtMin: null }],
      }),
  },
  { gate: "skin-intact", change: "Nobody looked", to: change(trialOf, { inspections: [] }) },
  {
    gate: "marks-fade",
    change: "The marks faded after 25 min",
    to: (bundle) => {
      for (const { marks } of trialOf(bundle).inspections) for (const mark of marks) mark.fadedAtMin = 25;
    },
  },
  {
    gate: "marks-fade",
    change: "Nobody saw a mark go",
    to: (bundle) => {
      const trial = trialOf(bundle);
      trial.inspections = trial.inspections.slice(0, 1);
      for (const mark of trial.inspections.flatMap(({ marks }) => marks)) mark.fadedAtMin = null;
    },
  },
  {
    gate: "marks-even",
    change: "One mark deep, and nothing else",
    to: (bundle) => {
      for (const look of trialOf(bundle).inspections) look.marks = look.marks.slice(0, 1);
      firstMarkOf(bundle).strength = "deep";
    },
  },
  {
    gate: "open-adjustments",
    change: "A relief of 5 mm is carried",
    to: (bundle) =>
      bundle.carried.push({ id: "c1", kind: "relief", aspect: "anterior", amount: 5, unit: "mm", reason: "A clear mark" }),
  },
  {
    gate: "open-adjustments",
    change: "2 mm are carried where a mark is deep",
    to: (bundle) => {
      firstMarkOf(bundle).strength = "deep";
      bundle.carried.push({
        id: "c1",
        kind: "relief",
        aspect: "anterior",
        third: "middle",
        amount: 2,
        unit: "mm",
        reason: "A deep mark",
      });
    },
  },
  {
    gate: "cautions-reviewed",
    change: "Nobody has read the caution",
    to: (bundle) => {
      bundle.episode.cautions = bundle.episode.cautions.map(({ kind }) => ({ kind }));
    },
  },
  {
    gate: "fresh",
    change: "Judged 30 days after the trial",
    to: (bundle) => Object.assign(bundle, { asOf: "2026-11-04T12:00:00Z" }),
  },
  {
    gate: "fresh",
    change: "Measured since, with 6 mm more at each level",
    to: (bundle) => {
      const last = the(bundle.limbMeasurements.at(-1));
      bundle.limbMeasurements.push({
        ...last,
        id: "lm3",
        at: "2026-10-07T09:00:00Z",
        stations: last.stations.map((station) => ({ ...station, circumferenceMm: station.circumferenceMm + 6 })),
      });
    },
  },
];

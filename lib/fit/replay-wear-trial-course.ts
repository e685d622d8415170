/** How a wear trial went: what its verdict, and the gates of a release, are drawn from. */
import type { TrialEvent, TrialPlan } from "./bundle";
import { FitInputError } from "./errors";
import { instantMs, instantOf } from "./instant";
import { correctCheckIns, type Scale, type TrialCheckIn } from "./replay-wear-trial-check-ins";
import { type PlacedStopSign, runClock, type TrialClock } from "./replay-wear-trial-clock";
import { orderEvents, type TrialProblem } from "./replay-wear-trial-order";
import { type FeltThere, feelingsByPlace, type ScaleCourse, scaleCourse } from "./replay-wear-trial-series";
import type { StopSign } from "./words";

export interface TrialStopSign {
  id: string;
  at: string;
  sign: StopSign;
  wornMinutes: number;
  note?: string;
}

/** Plain fields only: an object with getters of its own is slow to make and to read, and an assessment reads each once. */
export interface TrialCourse extends Pick<TrialClock, "state" | "beganMs" | "endedMs" | "doffedMs" | "waitingSinceMs"> {
  plan: TrialPlan;
  wornMinutes: number;
  /** Null before the trial has begun. */
  largestGapMinutes: number | null;
  checkIns: TrialCheckIn[];
  series: Record<Scale, ScaleCourse>;
  feelings: FeltThere[];
  stopSigns: TrialStopSign[];
  problems: TrialProblem[];
  /** An id carries contents that contradict each other. */
  contradicted: boolean;
}

/** Goes through the events of a trial as `replayWearTrial` describes. */
export function trialCourse(plan: TrialPlan, events: readonly TrialEvent[], asOf?: string): TrialCourse {
  checkPlan(plan);
  const asOfMs = asOf === undefined ? null : instantMs(asOf, "asOf");
  const ordered = orderEvents(events);
  const timed =
    asOfMs === null ? ordered.timed : ordered.timed.map((event) => (event.atMs > asOfMs ? { ...event, trusted: false } : event));
  const clock = runClock(timed, asOfMs);
  const { checkIns, stray, problems: corrections } = correctCheckIns(clock.checkIns, timed);
  const problems = [
    ...ordered.problems,
    ...clock.problems,
    ...corrections,
    ...misdated(ordered.timed),
    ...afterwards(ordered.timed, asOfMs),
  ];
  const during = checkIns.filter((checkIn) => checkIn.during);
  const outside = [...checkIns.filter((checkIn) => !checkIn.during), ...stray];
  const { state, beganMs, endedMs, doffedMs, waitingSinceMs } = clock;
  return {
    plan,
    state,
    beganMs,
    endedMs,
    doffedMs,
    waitingSinceMs,
    wornMinutes: clock.wornMs / 60_000,
    largestGapMinutes: clock.largestGapMs === null ? null : clock.largestGapMs / 60_000,
    checkIns,
    series: {
      comfort: scaleCourse("comfort", during, outside),
      pain: scaleCourse("pain", during, outside),
      exertion: scaleCourse("exertion", during, outside),
    },
    feelings: feelingsByPlace(checkIns),
    stopSigns: clock.stopSigns.map(stopSignOf),
    problems,
    contradicted: ordered.contradicted,
  };
}

function checkPlan(plan: TrialPlan): void {
  for (const field of ["minutes", "intervalMin"] as const)
    if (!(plan[field] > 0 && Number.isFinite(plan[field])))
      throw new FitInputError(`plan.${field}`, "expected more than 0 minutes");
}

const stopSignOf = ({ event, wornMs }: PlacedStopSign): TrialStopSign => ({
  id: event.id,
  at: event.at,
  sign: event.sign,
  wornMinutes: wornMs / 60_000,
  ...(event.note === undefined ? {} : { note: event.note }),
});

function misdated(timed: readonly { event: TrialEvent }[]): TrialProblem[] {
  const wrong = timed.filter(({ event }) => event.misdated === true);
  const [first] = wrong;
  if (!first) return [];
  const count = wrong.length === 1 ? "1 event is" : `${wrong.length} events are`;
  return [
    {
      eventId: first.event.id,
      why: `${count} dated when it cannot have been (after it came, or before the socket was specified); what it says counts only where it is bad.`,
    },
  ];
}

function afterwards(timed: readonly { event: TrialEvent; atMs: number }[], asOfMs: number | null): TrialProblem[] {
  const later = asOfMs === null ? [] : timed.filter(({ event, atMs }) => atMs > asOfMs && event.misdated !== true);
  const [first] = later;
  if (!first || asOfMs === null) return [];
  const count = later.length === 1 ? "1 event is" : `${later.length} events are`;
  return [
    { eventId: first.event.id, why: `${count} dated after ${instantOf(asOfMs)}; what they say counts only where it is bad.` },
  ];
}

/** From the events of a wear trial, as they were recorded, to where it stands and what it shows. */
import type { TrialEvent, TrialPlan } from "./bundle";
import { FitInputError } from "./errors";
import { instantMs, instantOf } from "./instant";
import { correctCheckIns, type TrialCheckIn } from "./replay-wear-trial-check-ins";
import { type PlacedStopSign, runClock, type TrialState } from "./replay-wear-trial-clock";
import { orderEvents, type TrialProblem } from "./replay-wear-trial-order";
import { reasonsOf, type TrialCourse } from "./replay-wear-trial-reasons";
import { type FeltThere, feelingsByPlace, once, type ScaleSeries, seriesOf } from "./replay-wear-trial-series";
import { type TrialLimits, type TrialReason, trialLimits, type Verdict, verdictOf } from "./replay-wear-trial-verdict";
import type { StopSign } from "./words";

export interface TrialStopSign {
  id: string;
  at: string;
  sign: StopSign;
  wornMinutes: number;
  note?: string;
}

/** Minutes are of the time that the socket was worn, without pauses. Instants are in UTC, but for those of events: as recorded. */
export interface WearTrial {
  state: TrialState;
  verdict: Verdict;
  /** One reading for each thing that counts; the worst `allows` is the verdict. */
  reasons: TrialReason[];
  plannedMinutes: number;
  wornMinutes: number;
  minutesToGo: number;
  beganAt: string | null;
  /** When wearing ended: by the end, a stop sign or doffing, whichever came first. */
  endedAt: string | null;
  doffedAt: string | null;
  /** Null where no check-in is awaited. */
  nextCheckInDueAt: string | null;
  /** Null before the trial has begun. */
  largestGapMinutes: number | null;
  checkIns: TrialCheckIn[];
  series: { comfort: ScaleSeries; pain: ScaleSeries; exertion: ScaleSeries };
  feelings: FeltThere[];
  stopSigns: TrialStopSign[];
  problems: TrialProblem[];
}

/**
 * Replays a wear trial from its events, in whatever order they arrived: they are sorted by time, then by id, and a
 * repeated id counts once. What cannot have been so is a problem, never a throw, and nothing bad is ever left out:
 *
 * - A stop sign anywhere makes the verdict *stopped*: before the beginning, after the end, after `asOf`.
 * - A check-in outside the trial, or after `asOf`, counts for the worst values and not for the course.
 * - Where one id carries different contents, the one that leaves the fewest minutes keeps the time, the worst ratings
 *   of all count, and the trial is *incomplete* at best.
 * - A correction puts a check-in right; both are shown, and where it now sounds better that is a finding. It cannot
 *   take back a stop sign.
 * - Doffing ends a trial that nobody ended. A gap runs from begin, resume or check-in to the next check-in, pause or
 *   end, and in a running trial until `asOf`.
 *
 * Whether the load was right is not judged here: a lower limb has none to give. Exertion alone never fails a trial.
 * Takes n log n steps for n events; slopes, trends, reasons and verdict are computed when first asked for.
 *
 * @param asOf until when a running trial has run; events after it add no minute, check-in or end. Without it, the last event
 * @throws FitInputError where a time is no instant with an offset, a rating is off its scale, or the plan has no minutes
 * @source wear-trial
 *
 * @example
 * replayWearTrial({ minutes: 20, intervalMin: 5, activities: [] }, [
 *   { id: "a", at: "2026-10-05T10:00:00Z", kind: "begun" },
 *   { id: "b", at: "2026-10-05T12:04:00+02:00", kind: "stop-sign", sign: "numbness" },
 * ]).verdict
 * // => "stopped"
 */
export const replayWearTrial = (
  plan: TrialPlan,
  events: readonly TrialEvent[],
  asOf?: string,
  limits: TrialLimits = trialLimits,
): WearTrial => replayWithCourse(plan, events, asOf, limits).trial;

/** The same, with what its reasons are drawn from, for whoever needs one of them and not all. */
export function replayWithCourse(
  plan: TrialPlan,
  events: readonly TrialEvent[],
  asOf: string | undefined,
  limits: TrialLimits,
): { trial: WearTrial; course: TrialCourse } {
  checkPlan(plan);
  const asOfMs = asOf === undefined ? null : instantMs(asOf, "asOf");
  const ordered = orderEvents(events);
  const timed =
    asOfMs === null ? ordered.timed : ordered.timed.map((event) => (event.atMs > asOfMs ? { ...event, trusted: false } : event));
  const clock = runClock(timed, asOfMs);
  const { checkIns, stray, problems: corrections } = correctCheckIns(clock.checkIns, timed);
  const problems = [...ordered.problems, ...clock.problems, ...corrections, ...afterwards(ordered.timed, asOfMs)];
  const during = checkIns.filter((checkIn) => checkIn.during);
  const outside = [...checkIns.filter((checkIn) => !checkIn.during), ...stray];
  const series = {
    comfort: seriesOf("comfort", during, outside),
    pain: seriesOf("pain", during, outside),
    exertion: seriesOf("exertion", during, outside),
  };
  const wornMinutes = clock.wornMs / 60_000;
  const largestGapMinutes = clock.largestGapMs === null ? null : clock.largestGapMs / 60_000;
  const feelings = feelingsByPlace(checkIns);
  const { state, stopSigns } = clock;
  const course: TrialCourse = {
    plan,
    state,
    wornMinutes,
    largestGapMinutes,
    checkIns,
    comfort: series.comfort,
    pain: series.pain,
    feelings,
    stopSigns,
    problems,
    contradicted: ordered.contradicted,
  };
  const reasons = once(() => reasonsOf(course, limits));
  const trial: WearTrial = {
    state,
    get verdict() {
      return verdictOf(reasons());
    },
    get reasons() {
      return reasons();
    },
    plannedMinutes: plan.minutes,
    wornMinutes,
    minutesToGo: Math.max(0, plan.minutes - wornMinutes),
    beganAt: instantOrNull(clock.beganMs),
    endedAt: instantOrNull(clock.endedMs),
    doffedAt: instantOrNull(clock.doffedMs),
    nextCheckInDueAt:
      state === "running" && clock.waitingSinceMs !== null ? instantOf(clock.waitingSinceMs + plan.intervalMin * 60_000) : null,
    largestGapMinutes,
    checkIns,
    series,
    feelings,
    stopSigns: stopSigns.map(stopSignOf),
    problems,
  };
  return { trial, course };
}

function checkPlan(plan: TrialPlan): void {
  for (const field of ["minutes", "intervalMin"] as const)
    if (!(plan[field] > 0 && Number.isFinite(plan[field])))
      throw new FitInputError(`plan.${field}`, "expected more than 0 minutes");
}

const instantOrNull = (ms: number | null): string | null => (ms === null ? null : instantOf(ms));

const stopSignOf = ({ event, wornMs }: PlacedStopSign): TrialStopSign => ({
  id: event.id,
  at: event.at,
  sign: event.sign,
  wornMinutes: wornMs / 60_000,
  ...(event.note === undefined ? {} : { note: event.note }),
});

function afterwards(timed: readonly { event: TrialEvent; atMs: number }[], asOfMs: number | null): TrialProblem[] {
  const later = asOfMs === null ? [] : timed.filter(({ atMs }) => atMs > asOfMs);
  const [first] = later;
  if (!first || asOfMs === null) return [];
  const count = later.length === 1 ? "1 event is" : `${later.length} events are`;
  return [
    { eventId: first.event.id, why: `${count} dated after ${instantOf(asOfMs)}; what they say counts only where it is bad.` },
  ];
}

/** From the events of a wear trial, as they were recorded, to where it stands and what it shows. */
import type { TrialEvent, TrialPlan } from "./bundle";
import { instantOf } from "./instant";
import type { TrialCheckIn } from "./replay-wear-trial-check-ins";
import type { TrialState } from "./replay-wear-trial-clock";
import { type TrialStopSign, trialCourse } from "./replay-wear-trial-course";
import type { TrialProblem } from "./replay-wear-trial-order";
import { reasonsOf } from "./replay-wear-trial-reasons";
import { type FeltThere, once, type ScaleSeries, seriesOf } from "./replay-wear-trial-series";
import { type TrialLimits, type TrialReason, trialLimits, type Verdict, verdictOf } from "./replay-wear-trial-verdict";

export type { TrialStopSign } from "./replay-wear-trial-course";

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
 * - What is marked `misdated` adds no minute, closes no gap and begins or ends nothing; what it says counts where it is bad.
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
export function replayWearTrial(
  plan: TrialPlan,
  events: readonly TrialEvent[],
  asOf?: string,
  limits: TrialLimits = trialLimits,
): WearTrial {
  const course = trialCourse(plan, events, asOf);
  const { state, wornMinutes, largestGapMinutes, waitingSinceMs, checkIns, series, feelings, stopSigns, problems } = course;
  const reasons = once(() => reasonsOf(course, limits));
  return {
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
    beganAt: instantOrNull(course.beganMs),
    endedAt: instantOrNull(course.endedMs),
    doffedAt: instantOrNull(course.doffedMs),
    nextCheckInDueAt:
      state === "running" && waitingSinceMs !== null ? instantOf(waitingSinceMs + plan.intervalMin * 60_000) : null,
    largestGapMinutes,
    checkIns,
    series: { comfort: seriesOf(series.comfort), pain: seriesOf(series.pain), exertion: seriesOf(series.exertion) },
    feelings,
    stopSigns,
    problems,
  };
}

const instantOrNull = (ms: number | null): string | null => (ms === null ? null : instantOf(ms));

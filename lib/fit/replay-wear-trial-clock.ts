/** The clock of a wear trial: what state it is in, how long the socket was worn, how long nobody asked. */
import type { TrialEvent } from "./bundle";
import { asSaid, type TrialCheckIn } from "./replay-wear-trial-check-ins";
import type { TimedEvent, TrialProblem } from "./replay-wear-trial-order";

export type TrialState = "planned" | "running" | "paused" | "ended" | "stopped";

type Said<Kind extends TrialEvent["kind"]> = Extract<TrialEvent, { kind: Kind }>;

/** A stop sign at a time of the trial. */
export interface PlacedStopSign {
  event: Said<"stop-sign">;
  wornMs: number;
}

export interface TrialClock {
  state: TrialState;
  beganMs: number | null;
  /** When wearing ended: by the end, a stop sign or doffing, whichever came first. */
  endedMs: number | null;
  doffedMs: number | null;
  wornMs: number;
  /** From where the present gap runs; null where no check-in is awaited. */
  waitingSinceMs: number | null;
  /** Null before the trial has begun. */
  largestGapMs: number | null;
  checkIns: TrialCheckIn[];
  stopSigns: PlacedStopSign[];
  problems: TrialProblem[];
}

/**
 * Goes through the events in the order of time. Untrusted ones move no hand of the clock.
 *
 * Where two events of one instant are in an order that cannot be (a check-in sorted just before the beginning or just
 * after the end), the instant decides and not the id: times entered afterwards are often whole minutes.
 */
export function runClock(timed: readonly TimedEvent[], asOfMs: number | null): TrialClock {
  const clock: TrialClock = {
    state: "planned",
    beganMs: null,
    endedMs: null,
    doffedMs: null,
    wornMs: 0,
    waitingSinceMs: null,
    largestGapMs: null,
    checkIns: [],
    stopSigns: [],
    problems: [],
  };
  const beginsMs = timed.find(({ event, trusted }) => trusted && event.kind === "begun")?.atMs ?? null;
  let lastMs = timed[0]?.atMs ?? 0;
  for (const { event, atMs, trusted } of timed) {
    if (trusted) {
      addWorn(clock, atMs - lastMs);
      lastMs = atMs;
    }
    if (event.kind === "check-in") checkIn(clock, { event, atMs, trusted, beginsMs });
    else if (event.kind === "stop-sign") stopSign(clock, { event, atMs, trusted });
    else if (trusted && event.kind !== "corrected") turn(clock, event, atMs);
  }
  if (asOfMs !== null && asOfMs > lastMs) {
    addWorn(clock, asOfMs - lastMs);
    lastMs = asOfMs;
  }
  if (clock.waitingSinceMs !== null) noteGap(clock, lastMs);
  return clock;
}

function addWorn(clock: TrialClock, ms: number): void {
  if (clock.state === "running") clock.wornMs += ms;
}

/** A wait that reaches until now is a gap already; it goes on, so nothing is closed here. */
function noteGap(clock: TrialClock, atMs: number): void {
  if (clock.waitingSinceMs !== null) clock.largestGapMs = Math.max(clock.largestGapMs ?? 0, atMs - clock.waitingSinceMs);
}

/** Ends the present gap, and begins the next one where a check-in is awaited again. */
function setWaiting(
  clock: TrialClock,
  { state, sinceMs, atMs }: { state: TrialState; sinceMs: number | null; atMs: number },
): void {
  noteGap(clock, atMs);
  clock.waitingSinceMs = sinceMs;
  clock.state = state;
}

const isWorn = ({ state }: TrialClock): boolean => state === "running" || state === "paused";

function problem(clock: TrialClock, event: TrialEvent, why: string): void {
  clock.problems.push({ eventId: event.id, why });
}

function checkIn(
  clock: TrialClock,
  { event, atMs, trusted, beginsMs }: { event: Said<"check-in">; atMs: number; trusted: boolean; beginsMs: number | null },
): void {
  const atAnEdge = (clock.state === "planned" && atMs === beginsMs) || (!isWorn(clock) && atMs === clock.endedMs);
  const during = trusted && (isWorn(clock) || atAnEdge);
  clock.checkIns.push(asSaid(event, clock.wornMs / 60_000, during));
  if (trusted && clock.state === "running") setWaiting(clock, { state: "running", sinceMs: atMs, atMs });
  if (during || !trusted) return;
  const when = clock.state === "planned" ? "before the trial had begun" : "after the trial was over";
  problem(clock, event, `The check-in ${event.id} was made ${when}; it counts where it is bad.`);
}

function stopSign(
  clock: TrialClock,
  { event, atMs, trusted }: { event: Said<"stop-sign">; atMs: number; trusted: boolean },
): void {
  const during = trusted && isWorn(clock);
  clock.stopSigns.push({ event, wornMs: clock.wornMs });
  if (trusted && clock.state === "planned")
    problem(clock, event, `The stop sign ${event.id} came before the trial had begun; it counts.`);
  if (trusted && clock.state === "ended" && atMs !== clock.endedMs)
    problem(clock, event, `The stop sign ${event.id} came after the trial had ended; it counts.`);
  if (during) finish(clock, atMs);
  clock.state = "stopped";
}

function finish(clock: TrialClock, atMs: number): void {
  clock.endedMs = atMs;
  setWaiting(clock, { state: "ended", sinceMs: null, atMs });
}

function turn(clock: TrialClock, event: Exclude<TrialEvent, Said<"check-in" | "stop-sign" | "corrected">>, atMs: number): void {
  switch (event.kind) {
    case "begun":
      begin(clock, event, atMs);
      break;
    case "paused":
      if (clock.state !== "running") ignored(clock, event, `The trial was paused while it was ${clock.state}`);
      else setWaiting(clock, { state: "paused", sinceMs: null, atMs });
      break;
    case "resumed":
      if (clock.state !== "paused") ignored(clock, event, `The trial was resumed while it was ${clock.state}, not paused`);
      else setWaiting(clock, { state: "running", sinceMs: atMs, atMs });
      break;
    case "ended":
      end(clock, event, atMs);
      break;
    case "doffed":
      doff(clock, event, atMs);
  }
}

function ignored(clock: TrialClock, event: TrialEvent, why: string): void {
  problem(clock, event, `${why} (event ${event.id}); the clock takes no notice of it.`);
}

function begin(clock: TrialClock, event: Said<"begun">, atMs: number): void {
  if (clock.state !== "planned") {
    ignored(clock, event, isWorn(clock) ? "The trial was begun twice" : "The trial was begun after it was over");
    return;
  }
  clock.beganMs = atMs;
  clock.largestGapMs = 0;
  setWaiting(clock, { state: "running", sinceMs: atMs, atMs });
}

function end(clock: TrialClock, event: Said<"ended">, atMs: number): void {
  if (clock.state === "planned") problem(clock, event, `The trial was ended without having begun (event ${event.id}).`);
  if (clock.state === "planned" || isWorn(clock)) {
    finish(clock, atMs);
    return;
  }
  // After a stop sign, or at the instant of doffing, saying that the trial is over contradicts nothing.
  const saysNothingNew = (clock.state === "stopped" && clock.doffedMs === null) || clock.doffedMs === atMs;
  if (!saysNothingNew) ignored(clock, event, "The trial was ended after it was over");
}

function doff(clock: TrialClock, event: Said<"doffed">, atMs: number): void {
  if (clock.doffedMs !== null) {
    ignored(clock, event, "The socket was doffed twice");
    return;
  }
  clock.doffedMs = atMs;
  if (clock.state === "planned")
    problem(clock, event, `The socket was doffed without the trial having begun (event ${event.id}).`);
  if (clock.state === "planned" || isWorn(clock)) finish(clock, atMs);
}

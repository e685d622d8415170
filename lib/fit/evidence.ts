/**
 * What the gates look at, chosen once from a bundle: the socket, the trial and the fitting that judge it.
 *
 * What is dated after `asOf` proves nothing good. What it shows that is bad still counts: a wrong date must not hide
 * broken skin.
 */
import {
  Bundle,
  type CheckSocket,
  type FittingRecord,
  type Inspection,
  type LimbMeasurement,
  type WearTrialRecord,
} from "./bundle";
import { conformsTo } from "./conforms";
import { FitInputError } from "./errors";
import { instantMs, instantsOf } from "./instant";
import type { Limits } from "./limits";
import { type TrialCourse, trialCourse } from "./replay-wear-trial-course";

export interface TrialEvidence {
  record: WearTrialRecord;
  replay: TrialCourse;
  beganMs: number;
  /** When wearing ended; for a trial that is still worn, nothing. */
  endedMs?: number;
  /** Looks at the skin since the trial began and up to `asOf`, the soonest after doffing first. */
  looks: Inspection[];
}

export interface Evidence {
  bundle: Bundle;
  limits: Limits;
  asOf: string;
  asOfMs: number;
  /** Up to `asOf`, the earliest first. */
  measurements: { measurement: LimbMeasurement; atMs: number }[];
  socket?: CheckSocket;
  /** The socket's latest trial that ended or was stopped. */
  trial?: TrialEvidence;
  /** Stop signs of earlier trials of this socket, which a later trial has followed. */
  stoppedBefore: string[];
  /** Begun after that trial and still worn. */
  unfinished: TrialEvidence[];
  /** Every trial of the socket, the latest and worse last. */
  trialsOfSocket: TrialEvidence[];
  /** Every trial of the socket that has not ended, begun or not: what was said in it counts where it is bad. */
  open: TrialEvidence[];
  /** The socket's latest fitting. */
  fitting?: FittingRecord & { atMs: number };
  /** Every look at the skin after this socket was worn, at a fitting or a trial, whenever it is dated. */
  looksOfSocket: Inspection[];
}

/** What several gates ask for is found once for an assessment, when it is first asked for. */
export function foundOnce<Found>(find: (evidence: Evidence) => Found): (evidence: Evidence) => Found {
  const found = new WeakMap<Evidence, { found: Found }>();
  return (evidence) => {
    const before = found.get(evidence);
    if (before) return before.found;
    const now = { found: find(evidence) };
    found.set(evidence, now);
    return now.found;
  };
}

export interface Asked {
  limits: Limits;
  asOf: string;
  /** The socket to judge; the one with the highest number where none is named. */
  socketId?: string;
}

const isInstant = conformsTo(Bundle.shape.asOf);

export function gatherEvidence(bundle: Bundle, { limits, asOf, socketId }: Asked): Evidence {
  if (!isInstant(asOf)) throw new FitInputError("asOf", "expected an instant with its offset, as 2026-10-08T09:00:00Z");
  const asOfMs = instantMs(asOf, "asOf");
  const socket = subjectOf(bundle, socketId);
  const fittings = withInstants(bundle.fittings, "fittings").filter(({ record }) => record.socketId === socket?.id);
  const trials = bundle.wearTrials
    .filter((trial) => trial.socketId === socket?.id)
    .map((record) => trialEvidence(record, { asOf, asOfMs }))
    .sort(laterAndWorseLast);
  const trial = trials.filter(({ replay }) => isOver(replay)).at(-1);
  const fitting = upTo(asOfMs, fittings).at(-1);
  const evidence: Evidence = {
    bundle,
    limits,
    asOf,
    asOfMs,
    measurements: upTo(asOfMs, withInstants(bundle.limbMeasurements, "limbMeasurements")).map(({ record, atMs }) => ({
      measurement: record,
      atMs,
    })),
    stoppedBefore: stopSignsOf(trials.filter(({ record }) => record.id !== trial?.record.id)),
    trialsOfSocket: trials,
    open: trials.filter(({ replay }) => !isOver(replay)),
    unfinished: trials.filter(({ replay, beganMs }) => isWorn(replay) && beganMs >= (trial?.beganMs ?? 0)),
    looksOfSocket: looksOf([...fittings, ...trials]),
  };
  if (socket) evidence.socket = socket;
  if (trial) evidence.trial = trial;
  if (fitting) evidence.fitting = { atMs: fitting.atMs, ...fitting.record };
  return evidence;
}

function stopSignsOf(trials: readonly TrialEvidence[]): string[] {
  const found: string[] = [];
  for (const { replay } of trials) for (const { sign } of replay.stopSigns) found.push(sign);
  return found;
}

function looksOf(records: readonly { record: { inspections: Inspection[] } }[]): Inspection[] {
  const found: Inspection[] = [];
  for (const { record } of records) found.push(...record.inspections);
  return found;
}

interface Dated<Kind> {
  record: Kind;
  atMs: number;
}

function withInstants<Kind extends { at: string }>(records: readonly Kind[], path: string): Dated<Kind>[] {
  const instants = instantsOf(records, path);
  return records.map((record, index) => ({ record, atMs: instants[index] ?? Number.NaN }));
}

/** The earliest first. */
const upTo = <Kind extends { id: string }>(asOfMs: number, records: readonly Dated<Kind>[]): Dated<Kind>[] =>
  records
    .filter(({ atMs }) => atMs <= asOfMs)
    // Of one instant by their ids, so that the order in a file decides nothing.
    .sort((a, b) => a.atMs - b.atMs || (a.record.id < b.record.id ? -1 : 1));

function subjectOf({ sockets }: Bundle, socketId: string | undefined): CheckSocket | undefined {
  if (socketId === undefined) return sockets.reduce<CheckSocket | undefined>(higherNumber, undefined);
  const socket = sockets.find(({ id }) => id === socketId);
  if (!socket) throw new FitInputError("socketId", `no socket has the id ${socketId}`);
  return socket;
}

const higherNumber = (a: CheckSocket | undefined, b: CheckSocket): CheckSocket => (a && a.number > b.number ? a : b);

const isOver = ({ state }: TrialCourse): boolean => state === "ended" || state === "stopped";
const isWorn = ({ state }: TrialCourse): boolean => state === "running" || state === "paused";

function trialEvidence(record: WearTrialRecord, { asOf, asOfMs }: { asOf: string; asOfMs: number }): TrialEvidence {
  const replay = trialCourse(record.plan, record.events, asOf);
  const beganMs = replay.beganMs ?? firstMs(record, asOfMs);
  const offMs = replay.doffedMs ?? replay.endedMs;
  const dated = withInstants(record.inspections, "inspections").map(({ record: look, atMs }) => ({
    record: offMs === null ? look : agreedLook(look, (atMs - offMs) / 60_000),
    atMs,
  }));
  // A look while the socket was worn is none after doffing; what it shows that forbids still counts (`looksOfSocket`).
  const sinceMs = Math.max(beganMs, takenOffMs(replay) - looseMinutes * 60_000);
  const looks = dated.filter(({ atMs }) => atMs >= sinceMs && atMs <= asOfMs).map((look) => look.record);
  const evidence: TrialEvidence = {
    record: { ...record, inspections: dated.map((look) => look.record) },
    replay,
    beganMs,
    looks: looks.sort((a, b) => a.minutesAfterDoffing - b.minutesAfterDoffing),
  };
  if (replay.endedMs !== null) evidence.endedMs = replay.endedMs;
  return evidence;
}

/** Of a trial that nobody began. Where no time of it can have been so, it is taken for the latest: no wrong clock puts a stop sign behind another trial. */
function firstMs({ events }: WearTrialRecord, asOfMs: number): number {
  const believable = events.filter(({ misdated }) => misdated !== true);
  return events.length > 0 && believable.length === 0 ? asOfMs : Math.min(...instantsOf(believable, "events"));
}

/**
 * When the socket was off, for what was seen after that. Doffing within the loose minutes of the end counts as at the
 * end, so that a record which lacks it counts no more looks than one that has it.
 */
function takenOffMs({ endedMs, doffedMs }: TrialCourse): number {
  const [ended, doffed] = [endedMs ?? doffedMs, doffedMs ?? endedMs];
  if (ended === null || doffed === null) return Number.NEGATIVE_INFINITY;
  return doffed - ended > looseMinutes * 60_000 ? doffed : ended;
}

/** What two ways of saying when a look was may differ by: for the time that it takes, and for clocks that differ. */
export const looseMinutes = 6;

/** Where the times on record say that a look was later than its minutes claim, the later holds: nothing fades by a slip of the pen. */
const agreedLook = (look: Inspection, byTimes: number): Inspection =>
  byTimes > look.minutesAfterDoffing + looseMinutes ? { ...look, minutesAfterDoffing: byTimes } : look;

/** By their beginning; of two that began at once, a stopped one is the later. */
const laterAndWorseLast = (a: TrialEvidence, b: TrialEvidence): number =>
  a.beganMs === b.beganMs ? Number(a.replay.state === "stopped") - Number(b.replay.state === "stopped") : a.beganMs - b.beganMs;

/** What a gate finds. */
export interface Finding {
  state: "met" | "close" | "unknown" | "not met" | "forbids";
  why: string;
  source: string;
  value?: number;
  unit?: string;
  standardError?: number;
  limit?: number;
  limitText?: string;
  /** When the latest of what it rests on was found: nobody could have accepted it before. */
  foundMs?: number;
}

export type GateJudge = (evidence: Evidence) => Finding;

export const withoutTrial = ({ socket }: Evidence): Finding => ({
  state: "unknown",
  why: socket ? `No wear trial of socket ${socket.number} has ended.` : "There is no check socket yet.",
  source: "plain",
});

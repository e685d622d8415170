/** Gates about the socket itself: what it is, and what its latest fitting found. */
import type { Bundle, CheckSocket, JointMotion } from "./bundle";
import { type Evidence, type Finding, foundOnce, type GateJudge } from "./evidence";
import { explainDimensions } from "./explain-dimensions";
import { counted, figure, inWords } from "./figures";
import { limitValue } from "./limits";
import { type MotionReading, motion as motionOf, motionRule } from "./motion";
import { suspension as suspensionOf, suspensionRule } from "./suspension";
import { type CheckKey, checksOf, type ReportedPart, toldNotSeen } from "./words";

const noSocket: Finding = { state: "unknown", why: "There is no check socket yet.", source: "plain" };
const noFitting = ({ socket }: Evidence): Finding =>
  socket ? { state: "unknown", why: `Socket ${socket.number} has not been fitted.`, source: "plain" } : noSocket;

/** A single ring does not describe a socket. */
const fewestLevels = 2;

export const socketDescribed: GateJudge = ({ bundle, socket, trial, limits }) => {
  if (!socket) return noSocket;
  const limit = limitValue(limits, "unexplained-mm");
  const asked = {
    unit: "mm",
    limit,
    limitText: `at most ${figure(limit)} mm that no adjustment explains`,
    source: "clinic-setting",
    // An acceptance from before this socket was tried was of another one.
    ...(trial && Number.isFinite(trial.beganMs) ? { foundMs: trial.beganMs } : {}),
  };
  if (socket.stations.length < fewestLevels) {
    const why = `Socket ${socket.number} has no dimensions: fewer than ${fewestLevels} levels are recorded.`;
    return { state: "not met", why, ...asked };
  }
  const unreasoned = socket.adjustments.filter(({ reason }) => reason.trim() === "").length;
  if (unreasoned > 0) {
    const why = `${counted(unreasoned, "adjustment")} of socket ${socket.number} without a reason.`;
    return { state: "not met", why, ...asked };
  }
  const origin = originOf(socket, bundle.sockets);
  if (!origin)
    return { state: "met", why: `Socket ${socket.number} is described, and was not derived from another one.`, ...asked };
  return Object.assign(explained(origin, socket, { bundle, limits }), asked);
};

/** Without a word on what it was derived from, adjustments can only lead from the socket before. */
function originOf(socket: CheckSocket, sockets: readonly CheckSocket[]): CheckSocket | undefined {
  if (socket.derivedFrom !== undefined) return sockets.find(({ id }) => id === socket.derivedFrom);
  if (socket.adjustments.length === 0 && socket.limbMeasurementId !== undefined) return undefined;
  return sockets.toSorted((a, b) => a.number - b.number).findLast(({ number }) => number < socket.number);
}

function explained(
  origin: CheckSocket,
  socket: CheckSocket,
  { bundle, limits }: Pick<Evidence, "bundle" | "limits">,
): Pick<Finding, "state" | "why" | "value"> {
  const { stationsFrom, limbLengthMm } = bundle.episode;
  const levels = explainDimensions(origin, socket, socket.adjustments, { limits, stationsFrom, limbLengthMm });
  const between = `From socket ${origin.number} to ${socket.number}`;
  if (levels.length === 0)
    return { state: "not met", why: `${between} no level is recorded in both, so nothing explains the dimensions.` };
  const value = Math.max(...levels.map(({ differenceMm }) => Math.abs(differenceMm)));
  const unexplained = levels.filter((level) => level.unexplained);
  if (unexplained.length > 0) {
    const named = unexplained
      .map(({ distanceMm, differenceMm }) => `${figure(differenceMm, 1)} mm at ${figure(distanceMm, 0)} mm`)
      .join(", ");
    return { state: "not met", value, why: `${between} the circumference changed by more than the adjustments say: ${named}.` };
  }
  return {
    state: "met",
    value,
    why: `${between} the adjustments explain ${levelsShared(levels.length, socket)} within ${figure(value, 1)} mm.`,
  };
}

/** A level that only one of the two has can be neither explained nor held against anything. */
const levelsShared = (shared: number, { stations }: CheckSocket): string =>
  shared >= stations.length ? "every level" : `the ${counted(shared, "level")} that both have, of ${stations.length},`;

/** Every check of the level done and met; a concern is met where a carried adjustment answers it. */
export const checksDone: GateJudge = (evidence) => told("checks", evidence, checksOfFitting(evidence));

function checksOfFitting(evidence: Evidence): Finding {
  const { bundle, fitting, socket } = evidence;
  if (!fitting || !socket) return noFitting(evidence);
  const checks = checksOf(bundle.episode.level);
  const failed: CheckKey[] = [];
  const concerns: CheckKey[] = [];
  const missing: CheckKey[] = [];
  const carried: CheckKey[] = [];
  for (const key of checks) {
    const answer = fitting.checks[key] ?? "not done";
    if (answer === "not met") failed.push(key);
    if (answer === "not done") missing.push(key);
    if (answer === "concern") (isAnswered(key, bundle) ? carried : concerns).push(key);
  }
  const value = checks.length - failed.length - concerns.length - missing.length;
  const asked = { value, unit: "checks", limit: checks.length, limitText: `all ${checks.length}`, source: "common-practice" };
  const parts = [
    ...named(failed, "Not met"),
    ...named(concerns, "Concern that nothing carried answers"),
    ...named(missing, "Not done"),
    ...named(carried, "Answered by a carried adjustment"),
  ];
  const state = failed.length + concerns.length > 0 ? "not met" : missing.length > 0 ? "unknown" : "met";
  return {
    state,
    why: parts.length === 0 ? `All ${checks.length} checks of the fitting are met.` : `${parts.join(". ")}.`,
    ...asked,
  };
}

const isAnswered = (key: CheckKey, { carried }: Bundle): boolean => carried.some(({ answers }) => answers === `check:${key}`);

const named = (keys: readonly CheckKey[], what: string): string[] =>
  keys.length === 0 ? [] : [`${what}: ${keys.map(inWords).join(", ")}`];

/** What somebody told and nobody who writes it down has seen is judged alike, and says so. */
const told = (part: ReportedPart, { fitting }: Evidence, finding: Finding): Finding =>
  fitting?.reported?.includes(part) ? { ...finding, why: `${finding.why} ${toldNotSeen}` } : finding;

/** What the pulls of the latest fitting show. */
export const pulled = foundOnce(({ bundle, fitting, limits }) =>
  fitting ? suspensionOf(fitting.pulls, suspensionRule(bundle.episode, limits)) : null,
);

export const suspension: GateJudge = (evidence) => {
  const reading = pulled(evidence);
  return reading ? told("pulls", evidence, reading) : noFitting(evidence);
};

/** Joints that a socket of the level crosses or touches, so that a fitting is not complete without them. */
const jointsOfLevel: Partial<Record<Bundle["episode"]["level"], string>> = {
  transradial: "elbow-flexion",
  transtibial: "knee-flexion",
};

export const motion: GateJudge = (evidence) => {
  const { bundle, fitting, limits } = evidence;
  if (!fitting) return noFitting(evidence);
  const joints = fitting.motion.map((measured) => ({ joint: measured.joint, reading: judge(measured, evidence) }));
  const worst = joints.toSorted((a, b) => rank(b.reading) - rank(a.reading)).at(0);
  const missing = jointsOfLevel[bundle.episode.level];
  const isMissing = missing !== undefined && joints.every(({ joint }) => joint !== missing);
  if (!worst || (isMissing && worst.reading.state !== "not met")) {
    const { limitDeg, source } = motionRule(missing ?? "", bundle.episode, limits);
    return {
      state: "unknown",
      unit: "°",
      limit: limitDeg,
      why: `${missing ? inWords(missing) : "The joint above the socket"} was not measured with and without the socket.`,
      source: source ?? "clinic-setting",
    };
  }
  return told("motion", evidence, {
    ...worst.reading,
    why: joints.map(({ joint, reading: { why } }) => `${inWords(joint)}: ${why}`).join(" "),
  });
};

const judge = ({ joint, withoutDeg, withDeg }: JointMotion, { bundle, limits }: Evidence): MotionReading =>
  motionOf(withoutDeg, withDeg, motionRule(joint, bundle.episode, limits));

/** Worse states first; of the same state the one with the greatest loss. */
const rank = ({ state, lostDeg }: MotionReading): number => (state === "not met" ? 2000 : state === "close" ? 1000 : 0) + lostDeg;

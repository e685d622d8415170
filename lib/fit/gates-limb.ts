/** Gates about the residual limb: measured, settled, and still the limb that the socket was made for. */

import { type Evidence, type Finding, type GateJudge, withoutTrial } from "./evidence";
import { counted, figure, isAbove } from "./figures";
import { besideSettling, changeError, hasSettled, isAdult, sharedPart } from "./has-settled";
import { limbChange } from "./limb-change";
import { limitValue } from "./limits";
import { circumferenceFromEnd } from "./stations";

const dayMs = 86_400_000;

/** Within so many days before the trial began; without a trial, before now. */
export const limbMeasured: GateJudge = ({ measurements, trial, asOfMs, limits }) => {
  const limit = limitValue(limits, "limb-measured-days");
  const asked = { unit: "days", limit, limitText: `at most ${counted(limit, "day")} before the trial`, source: "clinic-setting" };
  const beforeMs = trial?.beganMs ?? asOfMs;
  const event = trial ? "before the wear trial" : "ago";
  const last = measurements.findLast(({ atMs }) => atMs <= beforeMs);
  if (!last)
    return {
      state: "unknown",
      why: trial ? "The limb was not measured before the wear trial." : "The limb has not been measured.",
      ...asked,
    };
  const value = (beforeMs - last.atMs) / dayMs;
  const why = `Last measured ${counted(Number(figure(value, 0)), "day")} ${event}.`;
  return { value, state: isAbove(value, limit) ? "unknown" : "met", why, ...asked };
};

export const limbSettled: GateJudge = (evidence) => {
  const { bundle, measurements, asOf, limits } = evidence;
  const { cause, birthOn } = bundle.episode;
  const settling = hasSettled(
    measurements.map(({ measurement }) => measurement),
    limits,
  );
  const change = settling.compared?.change;
  const measured = change
    ? {
        value: change.percent,
        unit: "%",
        standardError: change.standardErrorPercent,
        limit: limitValue(limits, "settled-percent"),
        limitText: `90 % interval inside ±${figure(limitValue(limits, "settled-percent"))} %`,
      }
    : {};
  const beside = besideSettling(bundle.episode, { asOf, limits });
  const common = { source: settling.source, why: [settling.why, ...beside, ...settling.warnings].join(" "), ...measured };
  if (settling.state === "settled") return { state: "met", ...common };
  if (cause === "congenital" && birthOn !== undefined && isAdult(birthOn, { asOf, limits }))
    return { state: "met", ...common, source: "common-practice" };
  const foundMs = measurements.at(-1)?.atMs;
  return {
    state: settling.state === "changing" ? "not met" : "unknown",
    ...(foundMs === undefined ? {} : { foundMs }),
    ...common,
  };
};

/** The trial is recent, and the limb has not detectably changed since the measurement that the socket was made from. */
export const fresh: GateJudge = (evidence) => {
  const { trial, asOfMs, limits } = evidence;
  if (trial?.endedMs === undefined) return withoutTrial(evidence);
  const limit = limitValue(limits, "fresh-days");
  const value = (asOfMs - trial.endedMs) / dayMs;
  const asked = { value, unit: "days", limit, limitText: `at most ${counted(limit, "day")} ago`, source: "clinic-setting" };
  const ago = `The trial ended ${counted(Number(figure(value, 0)), "day")} ago`;
  if (isAbove(value, limit)) return { state: "not met", why: `${ago}.`, ...asked };
  const since = limbSince(evidence);
  return { state: since.state, why: `${ago}. ${since.why}`, ...asked };
};

/** Has the limb changed since the measurement that the socket was made from? */
export function limbSince({
  socket,
  trial,
  measurements,
  limits,
}: Evidence): Pick<Finding, "why"> & { state: "met" | "unknown" | "not met" } {
  const newest = measurements.at(-1);
  const beganMs = trial?.beganMs ?? 0;
  // A socket cannot have been made from a limb as it was after its trial.
  const named = measurements.find(({ measurement, atMs }) => measurement.id === socket?.limbMeasurementId && atMs <= beganMs);
  // Where nobody says what the socket was made from, the trial has shown that it fits the limb as it was then.
  const origin = named ?? measurements.findLast(({ atMs }) => atMs <= beganMs);
  if (!newest || (named && newest.atMs <= named.atMs))
    return { state: "met", why: "The limb was not measured since the measurement that the socket was made from." };
  if (!origin) return { state: "unknown", why: "The limb was measured since, but not before the trial." };
  if (newest === origin) return { state: "met", why: "The limb was not measured since the trial." };
  if (sharedPart(origin.measurement, newest.measurement) < limitValue(limits, "common-span-share"))
    return { state: "unknown", why: "The newest measurement covers too little of the same length to be compared." };
  const { laterMl, earlierMl, detectableChangeMl, percent } = limbChange(
    origin.measurement,
    newest.measurement,
    changeError(limits),
  );
  const differs = Math.abs(laterMl - earlierMl) > detectableChangeMl;
  const change = `Since the measurement that the socket was made from, the limb's volume differs by ${figure(laterMl - earlierMl, 0)} mL (${figure(percent, 1)} %)`;
  return differs
    ? { state: "not met", why: `${change}: more than the ${figure(detectableChangeMl, 0)} mL that the tape can miss.` }
    : { state: "met", why: `${change}: within the ${figure(detectableChangeMl, 0)} mL that the tape can miss.` };
}

/** The limb's circumference at a distance from its distal end, from the newest measurement. */
export function limbCircumference({ bundle, measurements }: Evidence): ((distanceFromEndMm: number) => number) | undefined {
  const stations = measurements.at(-1)?.measurement.stations;
  const first = stations?.[0];
  if (!stations || !first) return undefined;
  return (distanceFromEndMm) => circumferenceFromEnd(stations, distanceFromEndMm, bundle.episode) ?? first.circumferenceMm;
}

/** Did the residual limb change between one check socket and another? A limb that shrank is no bad adjustment. */
import type { Bundle, LimbMeasurement } from "./bundle";
import { daysBetween } from "./day";
import { FitInputError } from "./errors";
import { counted, figure } from "./figures";
import { changeError, sharedPart } from "./has-settled";
import { instantMs } from "./instant";
import { limbChange } from "./limb-change";
import { defaultLimits, type Limits, limitValue } from "./limits";
import type { SourceId } from "./sources";

export interface LimbBetween {
  /** *Changed*: by more than the tape can miss. */
  state: "changed" | "no detectable change" | "not known";
  /** Later less earlier, of the earlier volume. */
  percent?: number;
  standardErrorPercent?: number;
  /** Of the two measurements that were compared. */
  earlierId?: string;
  laterId?: string;
  /** One plain sentence with the numbers in it. */
  why: string;
  source: SourceId;
}

interface Asked {
  limits?: Limits;
  asOf?: string;
}

/** When a socket was last worn, at a fitting or in a wear trial that was begun; undefined where it never was. */
export function lastWornMs(bundle: Bundle, socketId: string, { asOf = bundle.asOf }: Asked = {}): number | undefined {
  const latest = instantMs(asOf, "asOf");
  const fitted = bundle.fittings.filter((fitting) => fitting.socketId === socketId).map(({ at }) => at);
  const begun = bundle.wearTrials
    .filter((trial) => trial.socketId === socketId)
    .flatMap(({ events }) => events.filter(({ kind, misdated }) => kind === "begun" && misdated !== true))
    .map(({ at }) => at);
  const times = [...fitted, ...begun].map((at) => instantMs(at, "at")).filter((atMs) => atMs <= latest);
  return times.length === 0 ? undefined : Math.max(...times);
}

/**
 * The measurement that belongs to a socket: the one that it was made from. Where the socket names none, the one nearest
 * to the day on which it was last worn, in whole days of the clinic's zone and the earlier of two as near, within the
 * days for which a measurement counts (`limb-measured-days`); undefined where there is none.
 *
 * @throws FitInputError where an instant is wrong, or the clinic's zone is none
 */
export function limbAtSocket(
  bundle: Bundle,
  socketId: string,
  { limits = defaultLimits, asOf = bundle.asOf }: Asked = {},
): LimbMeasurement | undefined {
  const latest = instantMs(asOf, "asOf");
  const measured = bundle.limbMeasurements
    .map((measurement) => ({ measurement, atMs: instantMs(measurement.at, "limbMeasurements.at") }))
    .filter(({ atMs }) => atMs <= latest);
  const madeFrom = bundle.sockets.find(({ id }) => id === socketId)?.limbMeasurementId;
  const named = measured.find(({ measurement }) => measurement.id === madeFrom);
  if (named) return named.measurement;
  const wornMs = lastWornMs(bundle, socketId, { asOf });
  if (wornMs === undefined) return undefined;
  const { timeZone } = bundle.clinic;
  const most = limitValue(limits, "limb-measured-days");
  return measured
    .map(({ measurement, atMs }) => ({ measurement, atMs, days: Math.abs(daysBetween(atMs, wornMs, timeZone)) }))
    .filter(({ days }) => days <= most)
    .sort((a, b) => a.days - b.days || a.atMs - b.atMs)
    .at(0)?.measurement;
}

/**
 * The change of the limb's volume from one socket to another, each with the measurement that belongs to it
 * (`limbAtSocket`), and whether it is more than the tape can miss (1.96 standard errors of the difference). Without a
 * measurement of each of the two, or with the same one for both, it is *not known*.
 *
 * @param earlierId the socket that was worn first
 * @throws FitInputError where there is no socket of an id
 * @source jarl-2003
 */
export function limbBetweenSockets(
  bundle: Bundle,
  earlierId: string,
  laterId: string,
  { limits = defaultLimits, asOf = bundle.asOf }: Asked = {},
): LimbBetween {
  const [first, second] = [earlierId, laterId].map((id) => socketOf(bundle, id)) as [number, number]; // two ids give two numbers
  const [earlier, later] = [earlierId, laterId].map((id) => limbAtSocket(bundle, id, { limits, asOf }));
  const days = counted(limitValue(limits, "limb-measured-days"), "day");
  if (!earlier || !later) {
    const missing = [...(earlier ? [] : [first]), ...(later ? [] : [second])].map((number) => `socket ${number}`).join(" and ");
    return notKnown(`The limb was not measured within ${days} of ${missing} being worn.`);
  }
  if (earlier.id === later.id) return notKnown("The limb was not measured between the two, so nobody knows if it changed.");
  if (sharedPart(earlier, later) < limitValue(limits, "common-span-share"))
    return notKnown("The limb was measured at levels that have too little length in common to be compared.");
  const change = limbChange(earlier, later, changeError(limits));
  const differs = Math.abs(change.laterMl - change.earlierMl) > change.detectableChangeMl;
  const by = `${figure(change.percent, 1)} % ± ${figure(change.standardErrorPercent, 1)} % of its volume`;
  return {
    state: differs ? "changed" : "no detectable change",
    percent: change.percent,
    standardErrorPercent: change.standardErrorPercent,
    earlierId: earlier.id,
    laterId: later.id,
    why: differs
      ? `The limb changed detectably between sockets ${first} and ${second}: ${by}.`
      : `The limb did not change detectably between sockets ${first} and ${second}: ${by}.`,
    source: "jarl-2003",
  };
}

const notKnown = (why: string): LimbBetween => ({ state: "not known", why, source: "plain" });

function socketOf({ sockets }: Bundle, socketId: string): number {
  const socket = sockets.find(({ id }) => id === socketId);
  if (!socket) throw new FitInputError("socketId", `no socket has the id ${socketId}`);
  return socket.number;
}

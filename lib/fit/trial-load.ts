/** Does the load of a wear trial pull on the limb as the finished device will? */
import type { EpisodeRecord, TrialPlan } from "./bundle";
import { FitInputError } from "./errors";
import { figure, isAbove, isBelow } from "./figures";
import { defaultLimits, type Limits, limitValue } from "./limits";
import type { Reading } from "./reading";
import { isUpperLimb, type Level } from "./words";

/** Standard gravity in m/s², exact by definition (CGPM 1901). */
export const gravity = 9.80665;

export interface TrialLoadReading extends Reading {
  /** False for a lower limb: the body is the load. */
  applies: boolean;
  /** Moments about the joint at a level forearm, in N·m. */
  trialMomentNm?: number;
  deviceMomentNm?: number;
  /** The mass at the plan's distance that would match the device. */
  matchingMassKg?: number;
  /** The distance at which the plan's mass would match the device. */
  matchingDistanceMm?: number;
}

export interface TrialLoadOptions {
  level?: Level;
  limits?: Limits;
}

/**
 * The moment m·g·L of the trial load about the joint, against that of the planned device; met within 0.90 to 1.10.
 * A trial without a load shows nothing of the device's pull: not met. A device that is not described: unknown.
 *
 * @param plan mass in kg, and its distance from the joint in mm
 * @param device mass in kg, and the distance of its centre of mass from the joint in mm
 * @throws FitInputError where a mass or a distance is negative or not finite, or one of the device's is 0
 * @source moment-about-joint
 *
 * @example
 * trialLoad({ loadKg: 0.68, loadDistanceMm: 300 }, { massKg: 0.68, centreOfMassMm: 220 }).value
 * // => 1.36364
 */
export function trialLoad(
  plan: Pick<TrialPlan, "loadKg" | "loadDistanceMm">,
  device: EpisodeRecord["device"],
  { level, limits = defaultLimits }: TrialLoadOptions = {},
): TrialLoadReading {
  if (level !== undefined && !isUpperLimb(level))
    return { applies: false, state: "met", why: "Does not apply: on a lower limb the body is the load.", source: "plain" };
  const [low, high] = [limitValue(limits, "load-ratio-low"), limitValue(limits, "load-ratio-high")];
  const asked = {
    applies: true,
    unit: "×",
    limitText: `${figure(low)} to ${figure(high)} of the device's moment`,
    source: "clinic-setting",
  };
  const { loadKg, loadDistanceMm } = plan;
  checkNonNegative(loadKg, "plan.loadKg");
  checkNonNegative(loadDistanceMm, "plan.loadDistanceMm");
  if (!loadKg || !loadDistanceMm)
    return {
      state: "not met",
      why: "No load was given, or not where it sat, so the trial does not show the device's pull.",
      ...asked,
    };
  if (!device) return { state: "unknown", why: "The mass of the planned device, or where it sits, is not known.", ...asked };
  checkPositive(device.massKg, "device.massKg");
  checkPositive(device.centreOfMassMm, "device.centreOfMassMm");

  const trialMomentNm = (loadKg * gravity * loadDistanceMm) / 1000;
  const deviceMomentNm = (device.massKg * gravity * device.centreOfMassMm) / 1000;
  const ratio = trialMomentNm / deviceMomentNm;
  const met = !isBelow(ratio, low) && !isAbove(ratio, high);
  const matchingMassKg = deviceMomentNm / ((gravity * loadDistanceMm) / 1000);
  const moments = `${figure(loadKg)} kg at ${figure(loadDistanceMm, 0)} mm pulls with ${figure(trialMomentNm)} N·m, the device with ${figure(deviceMomentNm)} N·m: ${figure(ratio)} of it`;
  return {
    value: ratio,
    limit: ratio > 1 ? high : low,
    state: met ? "met" : "not met",
    why: met ? `${moments}.` : `${moments}; ${figure(matchingMassKg)} kg there would match.`,
    trialMomentNm,
    deviceMomentNm,
    matchingMassKg,
    matchingDistanceMm: (1000 * deviceMomentNm) / (loadKg * gravity),
    ...asked,
  };
}

function checkNonNegative(value: number | undefined, path: string): void {
  if (value !== undefined && !(value >= 0 && value < 1e6)) throw new FitInputError(path, "expected 0 or more");
}

function checkPositive(value: number, path: string): void {
  if (!(value >= 1e-6 && value < 1e6)) throw new FitInputError(path, "expected more than 0");
}

/** How much active motion of a joint the socket takes. */
import type { EpisodeRecord } from "./bundle";
import { FitInputError } from "./errors";
import { figure, isAbove, isBelow } from "./figures";
import { defaultLimits, type Limits, limitValue } from "./limits";
import type { Reading } from "./reading";
import type { SourceId } from "./sources";

export interface MotionRule {
  /** *Lost*: at most so much less with the socket than without. *Kept*: at least so much with the socket, whatever it is without. */
  judges: "lost" | "kept";
  limitDeg: number;
  source?: SourceId;
  /** Standard error of one angle. */
  angleErrorDeg?: number;
  closeErrors?: number;
}

export interface MotionReading extends Reading {
  lostDeg: number;
}

/** The rule for a joint, named by its movement, as `elbow-flexion`. */
export function motionRule(
  joint: string,
  { level, suspension }: Pick<EpisodeRecord, "level" | "suspension">,
  limits: Limits = defaultLimits,
): MotionRule {
  const errors = { angleErrorDeg: limitValue(limits, "goniometer-error-deg"), closeErrors: limitValue(limits, "close-errors") };
  if (joint !== "elbow-flexion")
    return { judges: "lost", limitDeg: limitValue(limits, "joint-loss-deg"), source: "clinic-setting", ...errors };
  return level === "transradial" && suspension === "self-suspending"
    ? { judges: "kept", limitDeg: limitValue(limits, "elbow-kept-deg"), source: "body-powered-standards", ...errors }
    : { judges: "lost", limitDeg: limitValue(limits, "elbow-loss-deg"), source: "body-powered-standards", ...errors };
}

/**
 * Active motion with the socket against without. A loss is the difference of two angles, so its error is √2 times that
 * of one.
 *
 * @param withoutDeg end of the motion without the socket, in degrees
 * @param withDeg the same with the socket on
 * @throws FitInputError where an angle is not between −180 and 360
 * @source body-powered-standards
 *
 * @example
 * motion(138, 131, { judges: "lost", limitDeg: 10 }).lostDeg
 * // => 7
 */
export function motion(withoutDeg: number, withDeg: number, rule: MotionRule): MotionReading {
  checkAngle(withoutDeg, "withoutDeg");
  checkAngle(withDeg, "withDeg");
  checkAngle(rule.limitDeg, "rule.limitDeg");
  const {
    judges,
    limitDeg,
    source = "clinic-setting",
    angleErrorDeg = limitValue(defaultLimits, "goniometer-error-deg"),
    closeErrors = limitValue(defaultLimits, "close-errors"),
  } = rule;
  checkNonNegative(angleErrorDeg, "rule.angleErrorDeg");
  checkNonNegative(closeErrors, "rule.closeErrors");
  const lostDeg = withoutDeg - withDeg;
  const kept = judges === "kept";
  const value = kept ? withDeg : lostDeg;
  const standardError = kept ? angleErrorDeg : angleErrorDeg * Math.SQRT2;
  const fails = (deg: number) => (kept ? isBelow(deg, limitDeg) : isAbove(deg, limitDeg));
  const worst = kept ? value - closeErrors * standardError : value + closeErrors * standardError;
  const limitText = kept ? `at least ${figure(limitDeg)}° kept` : `at most ${figure(limitDeg)}° lost`;
  return {
    value,
    unit: "°",
    standardError,
    limit: limitDeg,
    limitText,
    state: fails(value) ? "not met" : fails(worst) ? "close" : "met",
    why: `${figure(withDeg)}° with the socket, ${figure(withoutDeg)}° without: ${figure(lostDeg)}° lost; ${limitText}.`,
    source,
    lostDeg,
  };
}

function checkAngle(deg: number, path: string): void {
  if (!(deg >= -180 && deg <= 360)) throw new FitInputError(path, "expected an angle from −180 to 360°");
}

function checkNonNegative(value: number, path: string): void {
  if (!(value >= 0 && value <= 360)) throw new FitInputError(path, "expected a number of 0 or more");
}

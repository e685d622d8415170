/** How far the socket moves on the limb when it is pulled. */
import type { EpisodeRecord, Pull } from "./bundle";
import { FitInputError } from "./errors";
import { counted, figure, isAbove } from "./figures";
import { defaultLimits, type Limits, limitValue } from "./limits";
import type { Reading } from "./reading";
import type { SourceId } from "./sources";
import { gravity } from "./trial-load";
import { isUpperLimb } from "./words";

export interface SuspensionRule {
  /** The load at which the displacement is judged. */
  loadN: number;
  limitMm: number;
  source?: SourceId;
  /** A line through pulls that are all gentler than this tells nothing of the rule's load. */
  hardestPullAtLeastN?: number;
  /** Standard error where fewer than three pulls leave none to compute. */
  errorOfFewPullsMm?: number;
  closeErrors?: number;
}

export interface SuspensionReading extends Reading {
  /** Displacement at no load, and its growth with the load: the least-squares line, where two loads were pulled. */
  slackMm?: number;
  complianceMmPerN?: number;
}

/**
 * The first rule that fits: upper limb on a harness, vacuum, other upper limb, other lower limb.
 *
 * @throws FitInputError where the body's mass is given and not above 0
 */
export function suspensionRule(
  { level, suspension: kind, bodyMassKg }: Pick<EpisodeRecord, "level" | "suspension" | "bodyMassKg">,
  limits: Limits = defaultLimits,
): SuspensionRule {
  if (bodyMassKg !== undefined && !(bodyMassKg > 0 && bodyMassKg < 1e6))
    throw new FitInputError("bodyMassKg", "expected a mass in kg above 0");
  const value = (id: Parameters<typeof limitValue>[1]) => limitValue(limits, id);
  const rule = (loadN: number, limitMm: number, source: SourceId): SuspensionRule => ({
    loadN,
    limitMm,
    source,
    hardestPullAtLeastN: loadN * value("pull-share"),
    errorOfFewPullsMm: value("displacement-error-mm"),
    closeErrors: value("close-errors"),
  });
  if (isUpperLimb(level) && kind === "harness") {
    const bodyShareN = bodyMassKg === undefined ? Number.POSITIVE_INFINITY : bodyMassKg * gravity * value("harness-body-share");
    return rule(Math.min(value("harness-load-n"), bodyShareN), value("harness-displacement-mm"), "body-powered-standards");
  }
  if (kind === "vacuum") return rule(value("vacuum-load-n"), value("vacuum-displacement-mm"), "vacuum-pistoning");
  return isUpperLimb(level)
    ? rule(value("upper-load-n"), value("upper-displacement-mm"), "suspension-setting")
    : rule(value("lower-load-n"), value("lower-displacement-mm"), "suspension-setting");
}

/**
 * Displacement at the rule's load, from the least-squares line through all pulls. A single load tells only of itself.
 *
 * A slip at a gentle pull tilts the line, so that it promises less at the rule's load. Therefore every displacement
 * that was measured at or below that load has to be within the limit too.
 *
 * @param pulls loads in N, displacements in mm
 * @throws FitInputError where a load or displacement is negative or not finite
 * @source suspension-setting
 *
 * @example
 * suspension(
 *   [{ loadN: 22, displacementMm: 1.5 }, { loadN: 45, displacementMm: 2.5 }, { loadN: 90, displacementMm: 4.5 }],
 *   { loadN: 222, limitMm: 25 },
 * ).value
 * // => 10.3263
 */
export function suspension(pulls: readonly Pull[], rule: SuspensionRule): SuspensionReading {
  const { loadN, limitMm, source = "suspension-setting", closeErrors = 1.645 } = rule;
  checkPulls(pulls, rule);
  const asked = { unit: "mm", limit: limitMm, limitText: `at most ${figure(limitMm)} mm at ${figure(loadN, 0)} N`, source };
  const unknown = (why: string): SuspensionReading => ({ state: "unknown", why, ...asked });
  if (pulls.length === 0) return unknown("The socket was not pulled on.");
  const hardestN = Math.max(...pulls.map((pull) => pull.loadN));
  if (hardestN < (rule.hardestPullAtLeastN ?? 0))
    return unknown(`The hardest pull was ${figure(hardestN, 0)} N: too gentle to tell what happens at ${figure(loadN, 0)} N.`);
  const line = lineThrough(pulls, rule);
  if (!line && !pulls.some((pull) => sameLoad(pull.loadN, loadN)))
    return unknown(`All pulls were of ${figure(hardestN, 0)} N, which tells nothing of ${figure(loadN, 0)} N.`);

  const measuredMm = Math.max(
    0,
    ...pulls.filter((pull) => pull.loadN < loadN || sameLoad(pull.loadN, loadN)).map((pull) => pull.displacementMm),
  );
  const value = line ? Math.max(0, line.displacementMm) : measuredMm;
  const standardError = line?.standardErrorMm ?? rule.errorOfFewPullsMm ?? limitValue(defaultLimits, "displacement-error-mm");
  const worse = Math.max(value, measuredMm);
  const how = hardestN < loadN && !sameLoad(hardestN, loadN) ? `, from a line through pulls up to ${figure(hardestN, 0)} N` : "";
  const slipped = isAbove(measuredMm, Math.max(value, limitMm))
    ? ` It was seen to move ${figure(measuredMm, 1)} mm at no more than that load.`
    : "";
  return {
    value,
    standardError,
    state: isAbove(worse, limitMm) ? "not met" : isAbove(worse + closeErrors * standardError, limitMm) ? "close" : "met",
    why: `${figure(value, 1)} mm at ${figure(loadN, 0)} N from ${counted(pulls.length, "pull")}${how}; at most ${figure(limitMm)} mm is let pass.${slipped}`,
    ...asked,
    ...(line ? { slackMm: line.slackMm, complianceMmPerN: line.complianceMmPerN } : {}),
  };
}

function checkPulls(pulls: readonly Pull[], rule: SuspensionRule): void {
  if (!(rule.loadN > 0 && rule.loadN < 1e6)) throw new FitInputError("rule.loadN", "expected a load in N above 0");
  for (const name of ["limitMm", "hardestPullAtLeastN", "errorOfFewPullsMm", "closeErrors"] as const) {
    const value = rule[name] ?? 0;
    if (!(value >= 0 && value < 1e6)) throw new FitInputError(`rule.${name}`, "expected a number of 0 or more");
  }
  pulls.forEach(({ loadN, displacementMm }, index) => {
    if (!(loadN >= 0 && loadN < 1e6)) throw new FitInputError(`pulls[${index}].loadN`, "expected a load in N, 0 or more");
    if (!(displacementMm >= 0 && displacementMm < 1e6))
      throw new FitInputError(`pulls[${index}].displacementMm`, "expected a displacement in mm, 0 or more");
  });
}

const sameLoad = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-6 * Math.max(a, b);

interface PullLine {
  slackMm: number;
  complianceMmPerN: number;
  /** At the rule's load. */
  displacementMm: number;
  /** Of the fitted value; missing with fewer than three pulls. */
  standardErrorMm?: number;
}

function lineThrough(pulls: readonly Pull[], { loadN: atN }: SuspensionRule): PullLine | null {
  const count = pulls.length;
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / count;
  const meanN = mean(pulls.map(({ loadN }) => loadN));
  const meanMm = mean(pulls.map(({ displacementMm }) => displacementMm));
  const spread = pulls.reduce((sum, { loadN }) => sum + (loadN - meanN) ** 2, 0);
  if (pulls.every(({ loadN }) => sameLoad(loadN, meanN)) || spread === 0) return null;
  const complianceMmPerN =
    pulls.reduce((sum, { loadN, displacementMm }) => sum + (loadN - meanN) * (displacementMm - meanMm), 0) / spread;
  const slackMm = meanMm - complianceMmPerN * meanN;
  const missed = pulls.reduce(
    (sum, { loadN, displacementMm }) => sum + (displacementMm - slackMm - complianceMmPerN * loadN) ** 2,
    0,
  );
  return {
    slackMm,
    complianceMmPerN,
    displacementMm: slackMm + complianceMmPerN * atN,
    ...(count < 3 ? {} : { standardErrorMm: Math.sqrt((missed / (count - 2)) * (1 / count + (atN - meanN) ** 2 / spread)) }),
  };
}

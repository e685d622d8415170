/** How long things take, where some have not happened yet. */
import { riskSetOf, type TimedOutcome } from "./risk-set";

export type { TimedOutcome };

/** One time at which something happened. */
export interface SurvivalStep {
  time: number;
  /** Not yet happened and still watched just before this time. */
  atRisk: number;
  happened: number;
  /** The share of which it has not happened by now. */
  survival: number;
  /** Greenwood's standard error of the survival; null once nothing is left, for there it is not defined. */
  standardError: number | null;
  /** 95 %, from the log-log transform, so that they stay within 0…1; null where they are not defined. */
  low95: number | null;
  high95: number | null;
}

export interface SurvivalCurve extends ReadonlyArray<SurvivalStep> {
  /**
   * When it has happened to half: the first time at which the survival is a half or less. Where the curve rests at exactly
   * a half, the middle of that rest; its beginning where nothing happens after it. Null where it never gets there.
   */
  readonly median: number | null;
  /** Where the lower band crosses a half, by the same rule; null where it never does. */
  readonly medianLow95: number | null;
  /** Where the upper band does. */
  readonly medianHigh95: number | null;
}

const z95 = 1.959963984540054;

/**
 * Product-limit curve after Kaplan and Meier: S(t) = Π (1 − dᵢ/nᵢ). What was not seen to happen is censored, not
 * dropped: it counts among those at risk until its time, that time included. Standard errors after Greenwood,
 * S·√Σ dᵢ/(nᵢ(nᵢ − dᵢ)); bands S^exp(±1.96·se(log(−log S))).
 *
 * Once nothing is left (S = 0) Greenwood's sum divides by zero. R's survfit prints NaN for the error there and NA for the
 * bands; here all three are null: how sure the end is, is not known. The median and its limits are those of the table that
 * R prints.
 *
 * @param times in any order and any unit, 0 or more
 * @returns a step a time at which something happened, in order, with the median
 * @throws FitInputError where a time is negative or not finite
 * @source kaplan-meier
 *
 * @example
 * kaplanMeier([{ time: 6, happened: true }, { time: 6, happened: false }, { time: 9, happened: true }, { time: 12, happened: false }])[0].survival
 * // => 0.75
 */
export function kaplanMeier(times: readonly TimedOutcome[]): SurvivalCurve {
  const { ends, ...riskSet } = riskSetOf(times, "times");
  let survival = 1;
  let greenwood = 0;
  const steps = ends.map((time): SurvivalStep => {
    const [atRisk, happened] = [riskSet.atRisk(time), riskSet.happened(time)];
    survival *= 1 - happened / atRisk;
    greenwood += happened / (atRisk * (atRisk - happened));
    return { time, atRisk, happened, survival, ...errorsOf(survival, greenwood) };
  });
  return Object.assign(steps, {
    median: halfOf(steps, ({ survival: share }) => share),
    medianLow95: halfOf(steps, ({ low95 }) => low95),
    medianHigh95: halfOf(steps, ({ high95 }) => high95),
  });
}

function errorsOf(survival: number, greenwood: number): Pick<SurvivalStep, "standardError" | "low95" | "high95"> {
  if (survival <= 0) return { standardError: null, low95: null, high95: null };
  const spread = (z95 * Math.sqrt(greenwood)) / Math.abs(Math.log(survival));
  return {
    standardError: survival * Math.sqrt(greenwood),
    low95: survival ** Math.exp(spread),
    high95: survival ** Math.exp(-spread),
  };
}

/** Sums of fractions miss a half by less than this. */
const rounding = 1e-9;

function halfOf(steps: readonly SurvivalStep[], shareOf: (step: SurvivalStep) => number | null): number | null {
  const at = steps.findIndex((step) => (shareOf(step) ?? 0) <= 0.5 + rounding);
  const [step, next] = [steps[at], steps[at + 1]];
  // A band that is not defined at the end of the curve tells nothing.
  const share = step && shareOf(step);
  if (!step || share === null || share === undefined) return null;
  return Math.abs(share - 0.5) <= rounding && next ? (step.time + next.time) / 2 : step.time;
}

/** The verdict of a wear trial: what its worst reason leaves open. */
import { defaultLimits, type Limits, limitValue } from "./limits";
import type { Reading } from "./reading";

/** From the best to the worst. */
export const verdicts = ["passed", "passed with findings", "incomplete", "not passed", "stopped"] as const;
export type Verdict = (typeof verdicts)[number];

export interface TrialReason extends Reading {
  about:
    | "stop-signs"
    | "pain"
    | "comfort"
    | "pain-trend"
    | "comfort-trend"
    | "feelings"
    | "worn"
    | "gaps"
    | "interval"
    | "record";
  /** The best verdict that this leaves open. */
  allows: Verdict;
}

/** The figures that a trial is held against. Clinic settings and common practice: see the sources. */
export interface TrialLimits {
  minutes: number;
  intervalMin: number;
  /** A gap may be this many intervals long. */
  gapFactor: number;
  comfortLast: number;
  comfortNever: number;
  painMost: number;
  painForbids: number;
  trendP: number;
}

export const trialLimitsOf = (limits: Limits): TrialLimits => ({
  minutes: limitValue(limits, "worn-minutes-least"),
  intervalMin: limitValue(limits, "check-in-minutes"),
  gapFactor: limitValue(limits, "gap-factor"),
  comfortLast: limitValue(limits, "comfort-last-least"),
  comfortNever: limitValue(limits, "comfort-never-below"),
  painMost: limitValue(limits, "pain-most"),
  painForbids: limitValue(limits, "pain-forbids"),
  trendP: limitValue(limits, "trend-p"),
});

export const trialLimits: TrialLimits = trialLimitsOf(defaultLimits);

/** The worst reason decides. A stop sign outweighs everything. */
export const verdictOf = (reasons: readonly TrialReason[]): Verdict =>
  verdicts[Math.max(0, ...reasons.map(({ allows }) => verdicts.indexOf(allows)))] ?? "incomplete";

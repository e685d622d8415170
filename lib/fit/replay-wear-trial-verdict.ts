/** The verdict of a wear trial: what its worst reason leaves open. */
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

export const trialLimits: TrialLimits = {
  minutes: 20,
  intervalMin: 5,
  gapFactor: 1.5,
  comfortLast: 7,
  comfortNever: 5,
  painMost: 3,
  painForbids: 7,
  trendP: 0.05,
};

/** The worst reason decides. A stop sign outweighs everything. */
export const verdictOf = (reasons: readonly TrialReason[]): Verdict =>
  verdicts[Math.max(0, ...reasons.map(({ allows }) => verdicts.indexOf(allows)))] ?? "incomplete";

import type { Reading } from "./reading";
import type { GateId } from "./words";

export const decisions = ["must not be released", "not ready", "not enough evidence", "ready with conditions", "ready"] as const;
export type Decision = (typeof decisions)[number];

export interface Gate extends Reading {
  id: GateId;
  /** Who accepted it, when and why; present only where the acceptance counts. */
  accepted?: { by: string; at: string; why: string };
}

/** How good the fit is, from 0 to 1. It compares sockets and decides nothing. */
export interface FitIndex {
  value?: number;
  low90?: number;
  high90?: number;
  /** Components that were not measured; with any of them the index has no value. */
  missing: string[];
  components: { id: string; name: string; value?: number; unit: string; standardError: number; desirability?: number }[];
  why: string;
  source: string;
}

/** An action that could change the decision. */
export interface NextAction {
  gate: GateId;
  /** What to do, in a few words: "Look at the skin again". */
  action: string;
  /** Why it would tell: "no look after 12 min". */
  why: string;
}

export interface Assessment {
  decision: Decision;
  /** The decision with its reasons, as it stands at the head of a page; names the gates that are close. */
  sentence: string;
  /** The socket that was judged, with the trial and the fitting that judge it; missing where there is no socket yet. */
  subject?: { socketId: string; number: number; trialId?: string; fittingId?: string };
  /** All gates, in the order of `gateIds`. */
  gates: Gate[];
  index: FitIndex;
  next: NextAction[];
  /** The instant at which this decision may change although nothing was recorded; null where time does not matter. */
  staleOn: string | null;
  asOf: string;
  rulesVersion: string;
}

export const nextSteps = [
  "measure",
  "plan a socket",
  "make",
  "send",
  "fit",
  "alter or remake",
  "begin trial",
  "finish trial",
  "inspect",
  "sign",
  "release",
  "deliver",
] as const;
export type Step = (typeof nextSteps)[number];

/** What happens next in an episode, who does it, and by when. */
export interface NextStep {
  /** Null once the socket is delivered: nothing is left to do. */
  step: Step | null;
  who: "prosthetist" | "assistant" | "technician" | null;
  dueOn: string | null;
  why: string;
}

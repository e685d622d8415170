/** A bundle whose socket is ready, to be changed by one finding at a time. */
import {
  type Acceptance,
  assessReadiness,
  type Bundle,
  type FittingRecord,
  type Gate,
  type GateId,
  parseBundle,
  type WearTrialRecord,
} from "@/lib/fit";
import ready from "./ready-transradial.json";

export const readyBundle = (): Bundle => parseBundle(structuredClone(ready));

/** The ready bundle after a change. */
export function changed(change: (bundle: Bundle) => void): Bundle {
  const bundle = readyBundle();
  change(bundle);
  return bundle;
}

function must<T>(found: T | undefined): T {
  if (found === undefined) throw new Error("the ready bundle lacks what the test asks for");
  return found;
}

export const trialOf = (bundle: Bundle): WearTrialRecord => must(bundle.wearTrials[0]);
export const fittingOf = (bundle: Bundle): FittingRecord => must(bundle.fittings[1]);
export const socketOf = (bundle: Bundle): Bundle["sockets"][number] => must(bundle.sockets[1]);
export const lookOf = (bundle: Bundle, index: number) => must(trialOf(bundle).inspections[index]);
export const markOf = (bundle: Bundle, look: number, mark = 0) => must(lookOf(bundle, look).marks[mark]);

export function checkInsOf(bundle: Bundle) {
  return trialOf(bundle).events.filter((event) => event.kind === "check-in");
}

export const gateOf = (bundle: Bundle, id: GateId, asOf?: string): Gate =>
  must(assessReadiness(bundle, undefined, asOf).gates.find((gate) => gate.id === id));
export const stateOf = (bundle: Bundle, id: GateId, asOf?: string) => gateOf(bundle, id, asOf).state;
export const decisionOf = (bundle: Bundle, asOf?: string) => assessReadiness(bundle, undefined, asOf).decision;

export const acceptance = (gate: GateId, at = "2026-10-08T08:00:00Z"): Acceptance => ({
  gate,
  by: "A. Prosthetist",
  at,
  why: "Seen and judged on the limb",
});

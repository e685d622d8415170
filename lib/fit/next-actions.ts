/** The fewest actions that could change a decision, the most telling first. */
import type { Decision, Gate, NextAction } from "./assessment";
import type { Evidence } from "./evidence";
import { limbSince } from "./gates-limb";
import { limitValue } from "./limits";
import { acceptableGates, type GateId } from "./words";

/** What has to be done anew. Whoever makes another socket fits and tries it anyway; whoever runs another trial looks at the skin anyway. */
export type ActionScope = "socket" | "fitting" | "trial" | "skin" | "other";

export interface GateAction {
  action: string;
  scope: ActionScope;
}

const anotherSocket: GateAction = { action: "Make another check socket", scope: "socket" };
const anotherTrial: GateAction = { action: "Run another wear trial", scope: "trial" };
const measure: GateAction = { action: "Measure the limb", scope: "other" };

/** Is it soon enough after the trial for a look at the skin to tell of it? */
export const skinStillTells = ({ trial, asOfMs, limits }: Evidence): boolean =>
  trial?.endedMs !== undefined && asOfMs - trial.endedMs <= limitValue(limits, "skin-tells-hours") * 3_600_000;

/** What would settle a gate that is open. */
export function actionFor({ id, state }: Pick<Gate, "id" | "state">, evidence: Evidence): GateAction {
  if (!evidence.socket && aboutSocket.includes(id)) return { action: "Plan a check socket", scope: "socket" };
  if (!evidence.trial && aboutTrial.includes(id) && state === "unknown")
    return evidence.unfinished.length > 0
      ? { action: "Finish the wear trial", scope: "trial" }
      : { action: "Run a wear trial", scope: "trial" };
  const failed = state !== "unknown";
  switch (id) {
    case "limb-measured":
      return evidence.trial && evidence.measurements.length > 0
        ? { action: "Measure the limb, then run another wear trial", scope: "trial" }
        : measure;
    case "limb-settled":
      return { action: "Measure the limb again", scope: "other" };
    case "socket-described":
      return { action: "Complete the description of the socket", scope: "other" };
    case "checks-done":
      return failed ? anotherSocket : { action: "Make the checks that were not made", scope: "fitting" };
    case "suspension":
      return failed ? anotherSocket : { action: "Pull on the socket and measure its displacement", scope: "fitting" };
    case "motion":
      return failed ? anotherSocket : { action: "Measure motion with and without the socket", scope: "fitting" };
    case "trial-load":
      return evidence.bundle.episode.device
        ? { action: "Run another wear trial with a load that matches the device", scope: "trial" }
        : { action: "Record the mass of the planned device, and where it sits", scope: "other" };
    case "worn-long-enough":
    case "checked-often-enough":
      return anotherTrial;
    case "no-stop-sign":
      return failed
        ? {
            action: "Call the physician where the limb is numb, cold, discoloured or hurt, and make another check socket",
            scope: "socket",
          }
        : anotherTrial;
    case "comfort":
    case "pain":
    case "trend":
      return failed ? anotherSocket : anotherTrial;
    case "skin-intact":
      return failed ? { action: "Call the physician, and make another check socket", scope: "socket" } : lookAgain(evidence);
    case "skin-inspected":
    case "marks-fade":
    case "marks-even":
      return failed ? anotherSocket : lookAgain(evidence);
    case "open-adjustments":
      return anotherSocket;
    case "cautions-reviewed":
      return { action: "Have a prosthetist read the cautions", scope: "other" };
    case "fresh":
      return state === "unknown"
        ? { action: "Measure the limb again", scope: "other" }
        : limbSince(evidence).state === "not met"
          ? anotherSocket
          : anotherTrial;
  }
}

const aboutSocket: readonly GateId[] = ["socket-described", "checks-done", "suspension", "motion"];
const aboutTrial: readonly GateId[] = [
  "trial-load",
  "worn-long-enough",
  "checked-often-enough",
  "comfort",
  "pain",
  "trend",
  "no-stop-sign",
  "skin-inspected",
  "skin-intact",
  "marks-fade",
  "marks-even",
  "fresh",
];

const lookAgain = (evidence: Evidence): GateAction =>
  skinStillTells(evidence)
    ? { action: "Inspect the skin again", scope: "skin" }
    : { action: "Run another wear trial, and look at the skin until the marks have faded", scope: "trial" };

export function nextActions(decision: Decision, gates: readonly Gate[], evidence: Evidence): NextAction[] {
  const deciding = decisiveStates[decision];
  if (deciding === null) return [];
  const open = gates.filter(({ state, accepted }) => deciding === state && accepted === undefined);
  const found = open.map((gate) => ({ gate, ...actionFor(gate, evidence) }));
  const scopes = new Set(found.map(({ scope }) => scope));
  const needed = found.filter(({ scope }) => !isDoneAnyway(scope, scopes));
  const actions = [...new Set(needed.map(({ action }) => action))].map((action) => needed.filter((one) => one.action === action));
  return actions
    .sort((a, b) => b.length - a.length)
    .flatMap((same) => {
      const [first] = same;
      return first
        ? [
            {
              gate: first.gate.id,
              action: first.action,
              why: same
                .map(({ gate }) => reasonOf(gate))
                .filter(onlyOnce)
                .join(" "),
            },
          ]
        : [];
    });
}

const decisiveStates: Readonly<Record<Decision, Gate["state"] | null>> = {
  "must not be released": "forbids",
  "not ready": "not met",
  "not enough evidence": "unknown",
  "ready with conditions": null,
  ready: null,
};

const isDoneAnyway = (scope: ActionScope, scopes: ReadonlySet<ActionScope>): boolean =>
  (scope !== "socket" && scope !== "other" && scopes.has("socket")) || (scope === "skin" && scopes.has("trial"));

const reasonOf = ({ id, state, why }: Gate): string =>
  state === "not met" && (acceptableGates as readonly GateId[]).includes(id)
    ? `${why} A prosthetist may accept it with a reason.`
    : why;

const onlyOnce = <T>(item: T, index: number, all: readonly T[]): boolean => all.indexOf(item) === index;

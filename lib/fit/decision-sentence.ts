/** The decision as a sentence, as it stands at the head of a page. */
import type { Decision, Gate } from "./assessment";
import type { GateId } from "./words";

/** What a gate is called in the middle of a sentence. */
export const gateNames: Readonly<Record<GateId, string>> = {
  "limb-measured": "limb measured",
  "limb-settled": "limb settled",
  "socket-described": "socket described",
  "checks-done": "checks of the fitting",
  suspension: "suspension",
  motion: "motion",
  "trial-load": "load of the trial",
  "worn-long-enough": "time worn",
  "checked-often-enough": "check-ins often enough",
  comfort: "comfort",
  pain: "pain",
  trend: "trend of comfort and pain",
  "no-stop-sign": "stop signs",
  "skin-inspected": "skin looked at",
  "skin-intact": "skin intact",
  "marks-fade": "marks fade",
  "marks-even": "marks even",
  "open-adjustments": "adjustments carried",
  "cautions-reviewed": "cautions read",
  fresh: "evidence fresh",
};

/** What forbids a release, by the gate that found it. */
const forbiddenBy: Partial<Record<GateId, string>> = {
  "no-stop-sign": "a stop sign",
  "skin-intact": "injury of the skin",
  pain: "strong pain",
};

const numbers = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];
const inWords = (count: number): string => numbers[count] ?? String(count);
const those = (count: number, thing: string, verb: readonly [one: string, many: string]): string[] =>
  count === 0 ? [] : [`${inWords(count)} ${thing}${count === 1 ? "" : "s"} ${count === 1 ? verb[0] : verb[1]}`];

export function decisionSentence(decision: Decision, gates: readonly Gate[], carriedCount: number): string {
  const open = gates.filter(({ accepted }) => accepted === undefined);
  const count = (state: Gate["state"]) => open.filter((gate) => gate.state === state).length;
  const forbidding = gates.filter(({ state }) => state === "forbids").map(({ id }) => forbiddenBy[id] ?? gateNames[id]);
  const unsettled = [
    ...those(count("not met"), "check", ["is not met", "are not met"]),
    ...those(count("unknown"), "check", ["is unknown", "are unknown"]),
  ];
  const conditions = [
    ...those(gates.length - open.length, "check", ["was accepted with a reason", "were accepted with a reason"]),
    ...those(carriedCount, "adjustment", ["is carried into the definitive socket", "are carried into the definitive socket"]),
  ];
  const reasons: Record<Decision, string> = {
    "must not be released": `Must not be released: forbidden by ${forbidding.join(", ")}.`,
    "not ready": `Not ready: ${unsettled.join(" and ")}.`,
    "not enough evidence": `Not enough evidence: ${unsettled.join(" and ")}.`,
    "ready with conditions": `Ready with conditions: ${conditions.join(" and ")}.`,
    ready: "Ready: every check is met.",
  };
  const close = gates.filter(({ state }) => state === "close").map(({ id }) => gateNames[id]);
  return close.length === 0 ? reasons[decision] : `${reasons[decision]} Close to the limit: ${close.join(", ")}.`;
}

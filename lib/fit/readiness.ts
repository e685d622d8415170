/** Is the fit ready to be released? Gates decide; the index never does. */
import type { Assessment, Decision, Gate } from "./assessment";
import { type Acceptance, Bundle } from "./bundle";
import { checkReferences } from "./bundle-references";
import { conformsTo } from "./conforms";
import { decisionSentence } from "./decision-sentence";
import { type Evidence, type Finding, type GateJudge, gatherEvidence } from "./evidence";
import { fresh, limbMeasured, limbSettled } from "./gates-limb";
import { cautionsReviewed, openAdjustments } from "./gates-release";
import { marksEven, marksFade, skinInspected, skinIntact } from "./gates-skin";
import { checksDone, motion, socketDescribed, suspension } from "./gates-socket";
import { checkedOftenEnough, comfort, noStopSign, pain, trend, trialLoad, wornLongEnough } from "./gates-trial";
import { indexOf } from "./index-inputs";
import { instantsOf } from "./instant";
import { defaultLimits, type Limits } from "./limits";
import { nextActions } from "./next-actions";
import { parseBundle } from "./parse-bundle";
import { staleOn } from "./stale-on";
import { acceptableGates, type GateId, gateIds } from "./words";

const judges: Readonly<Record<GateId, GateJudge>> = {
  "limb-measured": limbMeasured,
  "limb-settled": limbSettled,
  "socket-described": socketDescribed,
  "checks-done": checksDone,
  suspension,
  motion,
  "trial-load": trialLoad,
  "worn-long-enough": wornLongEnough,
  "checked-often-enough": checkedOftenEnough,
  comfort,
  pain,
  trend,
  "no-stop-sign": noStopSign,
  "skin-inspected": skinInspected,
  "skin-intact": skinIntact,
  "marks-fade": marksFade,
  "marks-even": marksEven,
  "open-adjustments": openAdjustments,
  "cautions-reviewed": cautionsReviewed,
  fresh,
};

/**
 * Judges a socket by every gate, in the order of `gateIds`.
 *
 * The socket is the one with the highest number unless one is named; its trial is the latest that ended or was stopped,
 * its fitting the latest. A gate about the trial is unknown without one; a gate that does not apply is met.
 *
 * What is dated after `asOf` proves nothing good and still counts where it is bad. An acceptance counts for five gates
 * only (`acceptableGates`), only where they are not met or unknown, and only if it was made by `asOf` and after what it
 * accepts was found.
 *
 * Any gate that forbids → *must not be released*; else any not met → *not ready*; else any unknown → *not enough
 * evidence*; else anything accepted or carried → *ready with conditions*; else *ready*.
 *
 * @param bundle of one episode
 * @param limits this clinic's, from `limitsWith`
 * @param asOf the instant at which it is judged; that of the bundle where none is given
 * @throws FitInputError with the path of what cannot be judged
 *
 * @example
 * assessReadiness({
 *   format: "fitting-bundle/1",
 *   asOf: "2026-10-08T09:00:00Z",
 *   clinic: { timeZone: "Europe/Lisbon" },
 *   episode: { id: "e", side: "left", level: "transradial", cause: "trauma", landmark: "distal end", stationsFrom: "distal end", limbLengthMm: 170, suspension: "harness", cautions: [] },
 *   limbMeasurements: [], sockets: [], fittings: [], wearTrials: [], carried: [], acceptances: [],
 * }).decision
 * // => "not enough evidence"
 */
export function assessReadiness(
  bundle: Bundle,
  limits: Limits = defaultLimits,
  asOf?: string,
  { socketId }: { socketId?: string } = {},
): Assessment {
  const checked = checkedBundle(bundle);
  return judge(checked, { limits, asOf: asOf ?? checked.asOf, socketId });
}

const isBundle = conformsTo(Bundle);

/** Where it does not plainly conform, whoever reads it in full says what is wrong. */
function checkedBundle(bundle: unknown): Bundle {
  if (!isBundle(bundle)) return parseBundle(bundle);
  checkReferences(bundle);
  return bundle;
}

function judge(
  bundle: Bundle,
  { limits, asOf, socketId }: { limits: Limits; asOf: string; socketId: string | undefined },
): Assessment {
  const evidence = gatherEvidence(bundle, { limits, asOf, ...(socketId === undefined ? {} : { socketId }) });
  const gates = gateIds.map((id) => gateOf(id, judges[id](evidence), evidence));
  const decision = decide(gates, evidence.bundle.carried.length);
  const { socket, trial, fitting } = evidence;
  return {
    decision,
    sentence: decisionSentence(decision, gates, evidence.bundle.carried.length),
    ...(socket
      ? {
          subject: {
            socketId: socket.id,
            number: socket.number,
            ...(trial ? { trialId: trial.record.id } : {}),
            ...(fitting ? { fittingId: fitting.id } : {}),
          },
        }
      : {}),
    gates,
    index: indexOf(evidence),
    next: nextActions(decision, gates, evidence),
    staleOn: staleOn(evidence),
    asOf,
    rulesVersion: limits.version,
  };
}

function gateOf(id: GateId, finding: Finding, evidence: Evidence): Gate {
  const { state, why, source, value, unit, standardError, limit, limitText } = finding;
  const gate = { id, state } as Gate; // the rest follows, in the order in which it is read
  if (value !== undefined) gate.value = value;
  if (unit !== undefined) gate.unit = unit;
  if (standardError !== undefined) gate.standardError = standardError;
  if (limit !== undefined) gate.limit = limit;
  if (limitText !== undefined) gate.limitText = limitText;
  gate.why = why;
  gate.source = source;
  const accepted = state === "not met" || state === "unknown" ? acceptanceOf(id, finding, evidence) : undefined;
  if (accepted) gate.accepted = { by: accepted.by, at: accepted.at, why: accepted.why };
  return gate;
}

/** The latest that counts. Nobody can have accepted what was found only afterwards. */
function acceptanceOf(id: GateId, { foundMs }: Finding, { bundle, asOfMs }: Evidence): Acceptance | undefined {
  if (!(acceptableGates as readonly GateId[]).includes(id)) return undefined; // includes takes only what may be in it
  const instants = instantsOf(bundle.acceptances, "acceptances");
  return bundle.acceptances
    .map((acceptance, index) => ({ acceptance, atMs: instants[index] ?? Number.NaN }))
    .filter(
      ({ acceptance: { gate, by, why }, atMs }) =>
        gate === id && by.trim() !== "" && why.trim() !== "" && atMs <= asOfMs && atMs >= (foundMs ?? atMs),
    )
    .sort((a, b) => a.atMs - b.atMs)
    .at(-1)?.acceptance;
}

function decide(gates: readonly Gate[], carriedCount: number): Decision {
  const open = gates.filter(({ accepted }) => accepted === undefined);
  if (gates.some(({ state }) => state === "forbids")) return "must not be released";
  if (open.some(({ state }) => state === "not met")) return "not ready";
  if (open.some(({ state }) => state === "unknown")) return "not enough evidence";
  return carriedCount > 0 || open.length < gates.length ? "ready with conditions" : "ready";
}

/** What happens next in an episode, who does it, and by when: the caseload is grouped by it. */
import type { Assessment, Gate, NextStep, Step } from "./assessment";
import type { Bundle, CheckSocket } from "./bundle";
import { dayIn } from "./day";
import { type Evidence, gatherEvidence, type TrialEvidence } from "./evidence";
import { instantMs } from "./instant";
import { defaultLimits, type LimitId, type Limits, limitValue } from "./limits";
import { actionFor, skinStillTells } from "./next-actions";
import { parseBundle } from "./parse-bundle";
import { assessReadiness } from "./readiness";
import { acceptableGates, type GateId } from "./words";

const dayMs = 86_400_000;

const doneBy: Readonly<Record<Step, NonNullable<NextStep["who"]>>> = {
  measure: "assistant",
  "plan a socket": "prosthetist",
  make: "technician",
  send: "technician",
  fit: "prosthetist",
  "alter or remake": "prosthetist",
  "begin trial": "prosthetist",
  "finish trial": "assistant",
  inspect: "assistant",
  sign: "prosthetist",
  release: "prosthetist",
  deliver: "prosthetist",
};

/** A step with the instant from which its days run; without one it is due now. */
interface Due {
  step: Step;
  why: string;
  fromMs?: number;
  days?: LimitId;
}

/**
 * The next step of an episode as of `bundle.asOf`. The first of these that holds:
 *
 * 1. delivered: nothing is left to do;
 * 2. released and not withdrawn → *deliver*;
 * 3. no limb measurement → *measure*; no socket, or the latest retired → *plan a socket*, or *measure* again first where
 *    the last measurement is too old to plan by;
 * 4. the latest socket is planned → *make*; being made → *send*; on its way or at hand since its last fitting, or never
 *    fitted → *fit*;
 * 5. its trial is being worn → *finish trial*; nobody has looked at the skin for long enough and it still tells →
 *    *inspect*;
 * 6. anything forbids → *alter or remake*;
 * 7. ready, with or without conditions: *wear trial accepted* signed since that trial → *release*; else *sign*, which may
 *    be a release straight away;
 * 8. else what the open gates ask for, the most telling first: *alter or remake* where the socket falls short, *fit*
 *    where the fitting lacks something, *measure*, *begin trial*; and *sign* where nothing is left but what a
 *    prosthetist has to read.
 *
 * Days until it is due are clinic settings (`make-days` and its like) and run from the record that led to the step.
 *
 * @param assessment of the same bundle, if at hand
 * @throws FitInputError with the path of what cannot be judged, or `clinic.timeZone` where there is no such zone
 *
 * @example
 * nextStep({
 *   format: "fitting-bundle/1",
 *   asOf: "2026-10-08T09:00:00Z",
 *   clinic: { timeZone: "Europe/Lisbon" },
 *   episode: { id: "e", side: "left", level: "transradial", cause: "trauma", landmark: "distal end", stationsFrom: "distal end", limbLengthMm: 170, suspension: "harness", cautions: [] },
 *   limbMeasurements: [], sockets: [], fittings: [], wearTrials: [], carried: [], acceptances: [],
 * }).step
 * // => "measure"
 */
export function nextStep(bundle: Bundle, assessment?: Assessment, limits: Limits = defaultLimits): NextStep {
  const evidence = gatherEvidence(parseBundle(bundle), { limits, asOf: bundle.asOf });
  const due = dueOf(evidence, () => assessment ?? assessReadiness(bundle, limits));
  if (!due) return { step: null, who: null, dueOn: null, why: "The definitive socket was delivered." };
  const dueMs =
    due.fromMs === undefined ? evidence.asOfMs : due.fromMs + (due.days === undefined ? 0 : limitValue(limits, due.days) * dayMs);
  return { step: due.step, who: doneBy[due.step], dueOn: dayIn(bundle.clinic.timeZone, dueMs), why: due.why };
}

function dueOf(evidence: Evidence, assess: () => Assessment): Due | null {
  const { bundle, socket, trial, asOfMs } = evidence;
  if (bundle.deliveredAt !== undefined && instantMs(bundle.deliveredAt, "deliveredAt") <= asOfMs) return null;
  return (
    afterRelease(evidence) ??
    beforeFitting(evidence) ??
    duringTrial(evidence) ??
    (trial && socket
      ? afterTrial(evidence, socket, trial, assess())
      : openGates(evidence, assess().gates, evidence.fitting?.atMs))
  );
}

/** Signatures that stand at `asOf`, the latest last. */
function standing({ bundle, asOfMs }: Evidence, meaning: "wear trial accepted" | "release for definitive fabrication") {
  return (bundle.signOffs ?? [])
    .map((signOff, index) => ({
      ...signOff,
      atMs: instantMs(signOff.at, `signOffs[${index}].at`),
      withdrawnMs:
        signOff.withdrawnAt === undefined
          ? Number.POSITIVE_INFINITY
          : instantMs(signOff.withdrawnAt, `signOffs[${index}].withdrawnAt`),
    }))
    .filter((signOff) => signOff.meaning === meaning && signOff.atMs <= asOfMs && signOff.withdrawnMs > asOfMs)
    .sort((a, b) => a.atMs - b.atMs);
}

function afterRelease(evidence: Evidence): Due | null {
  const release = standing(evidence, "release for definitive fabrication").at(-1);
  return release ? { step: "deliver", why: `Released by ${release.by}.`, fromMs: release.atMs, days: "deliver-days" } : null;
}

function beforeFitting(evidence: Evidence): Due | null {
  const { socket, measurements, asOfMs, limits, fitting } = evidence;
  const measured = measurements.at(-1);
  if (!measured && !socket) return { step: "measure", why: "The limb has not been measured." };
  if (!socket || socket.state === "retired") {
    const tooOldMs = (measured?.atMs ?? 0) + limitValue(limits, "limb-measured-days") * dayMs;
    if (tooOldMs < asOfMs)
      return { step: "measure", why: "The last measurement of the limb is too old to plan a socket by.", fromMs: tooOldMs };
    const since = socket ? stateSinceMs(socket) : measured?.atMs;
    return {
      step: "plan a socket",
      why: socket ? `Socket ${socket.number} is retired.` : "The limb is measured; there is no check socket yet.",
      days: "plan-days",
      ...from(since),
    };
  }
  const { number, state } = socket;
  const since = from(stateSinceMs(socket));
  if (state === "planned") return { step: "make", why: `Socket ${number} is planned.`, days: "make-days", ...since };
  if (state === "being made") return { step: "send", why: `Socket ${number} is being made.`, days: "make-days", ...since };
  const fittedSince = fitting !== undefined && fitting.atMs >= (stateSinceMs(socket) ?? 0);
  if (state === "sent" && !fittedSince)
    return { step: "fit", why: `Socket ${number} is on its way.`, days: "arrive-days", ...since };
  if (state === "at hand" && !fittedSince)
    return { step: "fit", why: `Socket ${number} is at hand.`, days: "fit-days", ...since };
  if (!fitting && !evidence.trial && evidence.unfinished.length === 0)
    return { step: "fit", why: `Socket ${number} has not been fitted.`, days: "fit-days", ...since };
  return null;
}

const stateSinceMs = ({ stateSince }: CheckSocket): number | undefined =>
  stateSince === undefined ? undefined : instantMs(stateSince, "stateSince");
const from = (atMs: number | undefined) => (atMs === undefined ? {} : { fromMs: atMs });

function duringTrial({ unfinished, socket }: Evidence): Due | null {
  const worn = unfinished.at(-1);
  if (!worn || !socket) return null;
  return {
    step: "finish trial",
    why: `A wear trial of socket ${socket.number} is ${worn.replay.state}.`,
    fromMs: worn.beganMs,
    days: "finish-trial-days",
  };
}

function afterTrial(
  evidence: Evidence,
  socket: CheckSocket,
  trial: TrialEvidence,
  { decision, gates, sentence }: Assessment,
): Due {
  const endedMs = trial.endedMs ?? trial.beganMs;
  const unlooked = gates.find(({ id, state }) => id === "skin-inspected" && state === "unknown");
  if (unlooked && skinStillTells(evidence)) return { step: "inspect", why: unlooked.why, fromMs: endedMs };
  if (decision === "must not be released") return { step: "alter or remake", why: sentence, fromMs: endedMs, days: "alter-days" };
  if (decision !== "ready" && decision !== "ready with conditions") return openGates(evidence, gates, endedMs);
  const accepted = standing(evidence, "wear trial accepted").findLast(
    ({ socketId, atMs }) => socketId === socket.id && atMs >= endedMs,
  );
  return accepted
    ? {
        step: "release",
        why: `${accepted.by} accepted the wear trial of socket ${socket.number}.`,
        fromMs: accepted.atMs,
        days: "release-days",
      }
    : { step: "sign", why: sentence, fromMs: endedMs, days: "sign-days" };
}

/**
 * What the open gates ask for. Of what may be accepted with a reason, nothing is asked as long as anything else is open;
 * then it is what would settle it. Accepting it is the prosthetist's way out, not the next step.
 */
function openGates(evidence: Evidence, gates: readonly Gate[], sinceMs: number | undefined): Due {
  const open = gates.filter(({ state, accepted }) => state !== "met" && state !== "close" && accepted === undefined);
  const pressing = open.filter(({ id }) => !(acceptableGates as readonly GateId[]).includes(id));
  const asked = (pressing.length > 0 ? pressing : open).map((gate) => ({ gate, step: stepFor(gate, evidence) }));
  const first = order.flatMap((step) => asked.filter((one) => one.step === step)).at(0);
  if (first)
    return {
      step: first.step,
      why: first.gate.why,
      ...from(sinceMs),
      days: daysOf[first.step],
    };
  return { step: "sign", why: open.map(({ why }) => why).join(" "), ...from(sinceMs), days: "sign-days" };
}

type OpenStep = "alter or remake" | "fit" | "measure" | "begin trial" | "sign";
const order: readonly OpenStep[] = ["alter or remake", "fit", "measure", "begin trial", "sign"];
const daysOf = {
  "alter or remake": "alter-days",
  fit: "fit-days",
  measure: "measure-days",
  "begin trial": "begin-trial-days",
  sign: "sign-days",
} as const;

function stepFor(gate: Gate, evidence: Evidence): OpenStep {
  const { scope } = actionFor(gate, evidence);
  if (scope === "socket") return "alter or remake";
  if (scope === "fitting") return "fit";
  if (scope === "trial" || scope === "skin") return "begin trial";
  if (gate.id === "cautions-reviewed") return "sign";
  if (gate.id === "socket-described") return "alter or remake";
  // The device's mass is written down before the trial that is to match it.
  return gate.id === "trial-load" ? "begin trial" : "measure";
}

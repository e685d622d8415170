/** What would settle a gate or take the next step, as addresses of this program. */
import type { Assessment, GateId, Step } from "@/lib/fit";

export interface Way {
  href: string;
  label: string;
}

interface Place {
  episodeId: string;
  subject: Assessment["subject"];
  decision: Assessment["decision"];
}

const measure = (episodeId: string): Way => ({ href: `/episodes/${episodeId}/measure`, label: "Measure the limb" });
const nextSocket = (episodeId: string): Way => ({ href: `/episodes/${episodeId}/next-socket`, label: "Specify the next socket" });
const fitting = (socketId: string): Way => ({ href: `/sockets/${socketId}/fitting`, label: "Record a fitting" });
const planTrial = (socketId: string): Way => ({ href: `/sockets/${socketId}/wear-trial`, label: "Plan a wear trial" });
const look = (trialId: string): Way => ({ href: `/trials/${trialId}/look`, label: "Record a look" });
const signOff = (episodeId: string): Way => ({ href: `/episodes/${episodeId}/sign-off`, label: "Accept with a reason" });

export function wayToSettle(gate: GateId, state: string, { episodeId, subject, decision }: Place): Way | undefined {
  if (gate === "cautions-reviewed") return { href: "#cautions", label: "Read the cautions" };
  if (!subject) return gate === "limb-measured" || gate === "limb-settled" ? measure(episodeId) : nextSocket(episodeId);
  const trial = subject.trialId;
  switch (gate) {
    case "limb-measured":
    case "limb-settled":
      return measure(episodeId);
    case "socket-described":
      return { href: `/sockets/${subject.socketId}`, label: "See the socket" };
    case "checks-done":
    case "suspension":
    case "motion":
      return fitting(subject.socketId);
    case "trial-load":
    case "checked-often-enough":
    case "marks-even":
      // Where something forbids, accepting the rest would only mislead.
      return trial && state === "not met"
        ? decision === "must not be released"
          ? undefined
          : signOff(episodeId)
        : trial
          ? look(trial)
          : planTrial(subject.socketId);
    case "comfort":
    case "pain":
    case "trend":
      // A socket that hurts is changed, not tried again.
      return state === "unknown" ? planTrial(subject.socketId) : nextSocket(episodeId);
    case "worn-long-enough":
    case "fresh":
      return state === "met" ? undefined : planTrial(subject.socketId);
    case "no-stop-sign":
      return state === "unknown" ? planTrial(subject.socketId) : nextSocket(episodeId);
    case "skin-inspected":
    case "marks-fade":
      return trial ? look(trial) : planTrial(subject.socketId);
    case "skin-intact":
      return trial && state === "unknown"
        ? look(trial)
        : state === "unknown"
          ? planTrial(subject.socketId)
          : nextSocket(episodeId);
    case "open-adjustments":
      return { href: "#carried", label: "See what is carried" };
  }
}

export function wayOfStep(
  step: Step | null,
  { episodeId, subject, releaseId }: Place & { releaseId: string | undefined },
): Way | undefined {
  const socketId = subject?.socketId;
  switch (step) {
    case "measure":
      return measure(episodeId);
    case "plan a socket":
    case "alter or remake":
      return nextSocket(episodeId);
    case "make":
    case "send":
      return socketId ? { href: `/sockets/${socketId}`, label: "See the order" } : undefined;
    case "fit":
      return socketId ? fitting(socketId) : undefined;
    case "begin trial":
    case "finish trial":
      return subject?.trialId
        ? { href: `/trials/${subject.trialId}`, label: "Open the trial" }
        : socketId
          ? planTrial(socketId)
          : undefined;
    case "inspect":
      return subject?.trialId ? look(subject.trialId) : undefined;
    case "sign":
    case "release":
      return { href: `/episodes/${episodeId}/sign-off`, label: "Go to sign-off" };
    case "deliver":
      return releaseId ? { href: `/releases/${releaseId}`, label: "See the release sheet" } : undefined;
    case null:
      return undefined;
  }
}

/** What a wearer's own link may say of a trial, and in whose name. */
import type { Actor } from "@/lib/access/actor";
import { InputRefused, Locked } from "./refusals";

const withdrawn = "The link was withdrawn.";

/**
 * An event as it is told by whoever sends it: by the link it is the wearer's word where it says nothing, or a carer's. A
 * stop sign is taken whatever else is wrong with it.
 *
 * @throws InputRefused for any other event under a withdrawn link, or in a clinician's name
 */
export function saidByLink<Event extends object>(actor: Actor, event: Event): Event {
  if (actor.role !== "wearer") return event;
  const { kind, reportedBy } = { kind: undefined, reportedBy: undefined, ...event };
  const isStop = kind === "stop-sign";
  if (!isStop && actor.linkState === "withdrawn") throw new InputRefused({ link: withdrawn });
  if (!isStop && reportedBy === "clinician")
    throw new InputRefused({ reportedBy: "By the wearer's own link nobody speaks as a clinician." });
  return !reportedBy || (isStop && reportedBy !== "carer") ? { ...event, reportedBy: "wearer" } : event;
}

/** For what is not kept aside: it stays on the device. */
export function refuseWithdrawn({ linkState }: Actor): void {
  if (linkState === "withdrawn") throw new Locked(withdrawn);
}

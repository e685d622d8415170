/** Changes of the ready bundle's trial, one finding at a time. */
import type { Bundle, TrialEvent } from "@/lib/fit";
import { changed, checkInsOf, trialOf } from "./ready-bundle";

type Plan = Bundle["wearTrials"][number]["plan"];

export const planned = (plan: Partial<Plan>) => changed((bundle) => void Object.assign(trialOf(bundle).plan, plan));
export const rated = (scale: "comfort" | "pain", ...values: readonly number[]) =>
  changed((bundle) => {
    for (const [index, event] of checkInsOf(bundle).entries()) event[scale] = values[index] ?? event[scale];
  });
export const withEvents = (...events: readonly TrialEvent[]) => changed((bundle) => void trialOf(bundle).events.push(...events));
export const without = (...kinds: readonly TrialEvent["kind"][]) =>
  changed((bundle) => {
    trialOf(bundle).events = trialOf(bundle).events.filter(({ kind }) => !kinds.includes(kind));
  });
export const putRight = (said: { comfort?: number; pain?: number }, right: { comfort?: number; pain?: number }) => {
  const bundle = withEvents({ id: "k", at: "2026-10-05T11:00:00Z", kind: "corrected", corrects: "e10", ...right });
  Object.assign(checkInsOf(bundle)[1] ?? {}, said);
  return bundle;
};
/** A trial begun since and still worn, with what was said in it. */
export const since = (
  said: { comfort?: number; pain?: number; feelings?: { kind: "numbness" | "heat" }[] },
  change: (bundle: Bundle) => void = () => {},
) =>
  changed((bundle) => {
    const checkIn = (id: string, at: string): TrialEvent => ({
      id,
      at,
      kind: "check-in",
      comfort: 8,
      pain: 0,
      exertion: 1,
      feelings: [],
      ...said,
    });
    bundle.wearTrials.push({
      ...structuredClone(trialOf(bundle)),
      id: "wt2",
      inspections: [],
      events: [
        { id: "a", at: "2026-10-08T08:00:00Z", kind: "begun" },
        checkIn("b", "2026-10-08T08:05:00Z"),
        checkIn("c", "2026-10-08T08:10:00Z"),
      ],
    });
    change(bundle);
  });

/** Builds the events of a wear trial, minutes after ten o'clock. */
import type { TrialEvent, TrialPlan } from "@/lib/fit/bundle";

export const plan: TrialPlan = { minutes: 20, loadKg: 0.68, loadDistanceMm: 220, intervalMin: 5, activities: ["coiling rope"] };

export const minute = (minutes: number): string => new Date(Date.UTC(2026, 9, 5, 10) + minutes * 60_000).toISOString();

type Said = Partial<Pick<Extract<TrialEvent, { kind: "check-in" }>, "comfort" | "pain" | "exertion" | "feelings">>;

export const begun = (minutes = 0, id = "begun"): TrialEvent => ({ id, at: minute(minutes), kind: "begun" });
export const ended = (minutes: number, id = "ended"): TrialEvent => ({ id, at: minute(minutes), kind: "ended" });
export const doffed = (minutes: number, id = "doffed"): TrialEvent => ({ id, at: minute(minutes), kind: "doffed" });
export const paused = (minutes: number): TrialEvent => ({ id: `pause${minutes}`, at: minute(minutes), kind: "paused" });
export const resumed = (minutes: number): TrialEvent => ({ id: `resume${minutes}`, at: minute(minutes), kind: "resumed" });
export const stopSign = (minutes: number, sign: "numbness" | "cold" | "wearer-asks" = "numbness"): TrialEvent => ({
  id: `stop${minutes}`,
  at: minute(minutes),
  kind: "stop-sign",
  sign,
});
export const checkIn = (minutes: number, said: Said = {}): Extract<TrialEvent, { kind: "check-in" }> => ({
  id: `check${minutes}`,
  at: minute(minutes),
  kind: "check-in",
  comfort: 8,
  pain: 0,
  exertion: 2,
  feelings: [],
  reportedBy: "wearer",
  ...said,
});
export const corrected = (minutes: number, corrects: string, said: Said): TrialEvent => ({
  id: `put-right${minutes}`,
  at: minute(minutes),
  kind: "corrected",
  corrects,
  ...said,
});

/** Twenty minutes, four check-ins, nothing amiss. */
export const goodTrial: readonly TrialEvent[] = [
  begun(),
  checkIn(5),
  checkIn(10, { pain: 1 }),
  checkIn(15),
  checkIn(20, { exertion: 3 }),
  ended(20.5),
  doffed(21),
];

/** The good trial with some check-ins said otherwise. */
export const goodTrialBut = (...changed: readonly TrialEvent[]): TrialEvent[] => {
  const ids = new Set(changed.map(({ id }) => id));
  return [...goodTrial.filter(({ id }) => !ids.has(id)), ...changed];
};

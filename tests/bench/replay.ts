/** Replaying a long trial, against putting its events in order of time. */
import { replayWearTrial, type TrialEvent } from "@/lib/fit";
import { withinBar } from "./ratio";

const minute = (minutes: number) => new Date(Date.UTC(2026, 9, 5, 6) + minutes * 60_000).toISOString();
const plan = { minutes: 990, loadKg: 0.68, loadDistanceMm: 220, intervalMin: 5, activities: ["a long day"] };

/** A thousand events of every kind but a stop sign, in an order that is the same in every run. */
const events: readonly TrialEvent[] = shuffled([
  { id: "begun", at: minute(0), kind: "begun" },
  ...Array.from({ length: 980 }, (_, index): TrialEvent => checkIn(index)),
  { id: "paused", at: minute(300.2), kind: "paused" },
  { id: "resumed", at: minute(310.2), kind: "resumed" },
  ...Array.from(
    { length: 10 },
    (_, index): TrialEvent => ({
      id: `put-right${index}`,
      at: minute(700 + index),
      kind: "corrected",
      corrects: `check${index}`,
      pain: 1,
    }),
  ),
  ...Array.from({ length: 5 }, (_, index): TrialEvent => checkIn(50 * index)),
  { id: "ended", at: minute(995), kind: "ended" },
  { id: "doffed", at: minute(996), kind: "doffed" },
]);

function checkIn(index: number): TrialEvent {
  return {
    id: `check${index}`,
    at: minute(index + 1),
    kind: "check-in",
    comfort: 8 - (index % 3),
    pain: index % 3,
    exertion: 2,
    feelings: index % 50 === 0 ? [{ kind: "pressure", aspect: "anterior" }] : [],
  };
}

function shuffled<T>(list: readonly T[]): T[] {
  let seed = 20_261_005;
  const drawn = () => {
    seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648;
    return seed;
  };
  return list
    .map((one) => ({ one, order: drawn() }))
    .sort((a, b) => a.order - b.order)
    .map(({ one }) => one);
}

/** Read anew for each time, as events come out of a store: nothing in them was looked at before. */
const text = JSON.stringify(events);
const prepare = (): TrialEvent[] => JSON.parse(text);

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** By time, then by id; each time is read once. */
const sorted = (list: readonly TrialEvent[]) =>
  list.map((event) => ({ event, atMs: Date.parse(event.at) })).sort((a, b) => a.atMs - b.atMs || byText(a.event.id, b.event.id));

export const replayWithinBar = () =>
  withinBar({
    name: `replayWearTrial of ${events.length} events, against sorting them by time and id`,
    subject: { prepare, run: (list) => replayWearTrial(plan, list) },
    baseline: { prepare, run: sorted },
    bar: 3,
    firstRuns: 1000,
  });

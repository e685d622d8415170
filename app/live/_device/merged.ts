/** What the server has and what this device has, as one trial. */
import type { Inspection, TrialEvent } from "@/lib/fit/bundle";
import type { SentLook } from "./live-trial";
import type { Shown } from "./trial-on-device";

/** What the server has and what this device has, each once. What was set aside still leads the person through the trial here. */
export function eventsOf({ trial, items }: Pick<Shown, "trial" | "items">, correctedMs = 0): TrialEvent[] {
  const events = new Map((trial?.events ?? []).map((event) => [event.id, event]));
  for (const item of items)
    if (item.what === "event" && !events.has(item.id)) events.set(item.id, onClock(item.event, correctedMs - item.correctedMs));
  return [...events.values()];
}

/** What the server was not told yet is shown as it will put it right. */
const onClock = <Timed extends { at: string }>(timed: Timed, byMs: number): Timed =>
  byMs === 0 ? timed : { ...timed, at: new Date(Date.parse(timed.at) + byMs).toISOString() };

/** The looks at the skin, those of this device as they were entered, in their order. */
export function looksOf({ trial, items }: Pick<Shown, "trial" | "items">, correctedMs = 0): Inspection[] {
  const looks = new Map((trial?.looks ?? []).map((look) => [look.id, look]));
  for (const item of items)
    if (item.what === "look" && !looks.has(item.id))
      looks.set(item.id, asInspection(onClock(item.look, correctedMs - item.correctedMs)));
  return [...looks.values()].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
}

const asInspection = ({ id, at, minutesAfterDoffing, marks }: SentLook): Inspection => ({
  id,
  at,
  minutesAfterDoffing,
  marks: marks.map(({ markId, ...mark }, index) => ({
    fadedAtMin: null,
    ...mark,
    id: markId ?? `${id}-${index}`,
  })) as Inspection["marks"], // as the server will read them
});

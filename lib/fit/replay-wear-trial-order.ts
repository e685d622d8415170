/** The events of a wear trial in the order of time, each id once, however they arrived. */
import type { TrialEvent } from "./bundle";
import { FitInputError } from "./errors";
import { instantMs } from "./instant";

export interface TimedEvent {
  event: TrialEvent;
  atMs: number;
  /** An event that cannot be trusted counts only where it makes things worse: it adds no minute and closes no gap. */
  trusted: boolean;
}

/** Something in the record that cannot have been so, in one plain sentence. */
export interface TrialProblem {
  /** The event that it is about; missing where it is about several. */
  eventId?: string;
  why: string;
}

export interface OrderedEvents {
  timed: TimedEvent[];
  problems: TrialProblem[];
  /** An id carries contents that contradict each other, so the record proves nothing good. */
  contradicted: boolean;
}

export function orderEvents(events: readonly TrialEvent[]): OrderedEvents {
  const once = new Map<string, TimedEvent>();
  const repeated = new Map<string, TimedEvent[]>();
  events.forEach((event, index) => {
    const timed = { event, atMs: checkedInstant(event, index), trusted: true };
    const earlier = once.get(event.id);
    if (!earlier) once.set(event.id, timed);
    else repeated.set(event.id, [...(repeated.get(event.id) ?? [earlier]), timed]);
  });
  const problems: TrialProblem[] = [];
  const beside: TimedEvent[] = [];
  for (const [id, versions] of repeated) {
    const contents = distinctContents(versions);
    const [counted, ...alsoBad] = contents.length === 1 ? contents : gravest(contents);
    if (counted) once.set(id, counted);
    beside.push(...alsoBad);
    if (contents.length > 1)
      problems.push({
        eventId: id,
        why: `The event ${id} was sent with ${contents.length} different contents; the worst counts.`,
      });
  }
  problems.sort((a, b) => byText(a.eventId ?? "", b.eventId ?? ""));
  const timed = [...once.values(), ...beside].sort(inTime);
  return { timed, problems, contradicted: problems.length > 0 };
}

/** By time, then by id; versions of one event, which share both, by what they say. */
const inTime = (a: TimedEvent, b: TimedEvent): number =>
  a.atMs - b.atMs || byText(a.event.id, b.event.id) || byText(written(a.event), written(b.event));

/** By code units, so that the order is the same on every machine. */
const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

const kinds: ReadonlySet<string> = new Set<TrialEvent["kind"]>([
  "begun",
  "check-in",
  "paused",
  "resumed",
  "stop-sign",
  "ended",
  "doffed",
  "corrected",
]);

function checkedInstant(event: TrialEvent, index: number): number {
  if (!kinds.has(event.kind)) throw new FitInputError(`events[${index}].kind`, `expected one of ${[...kinds].join(", ")}`);
  if (event.kind === "check-in" || event.kind === "corrected") {
    for (const scale of ["comfort", "pain", "exertion"] as const) {
      const rating = event[scale];
      if (rating === undefined && event.kind === "corrected") continue;
      // Also false where the rating is not a number.
      if (!(typeof rating === "number" && rating >= 0 && rating <= 10))
        throw new FitInputError(`events[${index}].${scale}`, "expected a rating of 0…10");
    }
  }
  return instantMs(event.at, `events[${index}].at`);
}

/** One event a content, in an order that does not depend on which came first. A note or a reporter is no contradiction. */
function distinctContents(versions: readonly TimedEvent[]): TimedEvent[] {
  const byContent = new Map<string, TimedEvent>();
  for (const version of versions.toSorted((a, b) => byText(written(a.event), written(b.event)))) {
    const { at: _at, note: _note, reportedBy: _reportedBy, ...said } = version.event;
    const content = `${version.atMs} ${written(said)}`;
    if (!byContent.has(content)) byContent.set(content, version);
  }
  return [...byContent.values()];
}

/** Text that is the same for the same content, in whatever order its fields stand. */
function written(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(written).join()}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value) ?? "";
  const fields = Object.entries(value).filter(([, field]) => field !== undefined);
  return `{${fields
    .sort(([a], [b]) => byText(a, b))
    .map(([name, field]) => `${name}:${written(field)}`)
    .join()}}`;
}

/** What ends wearing comes before what goes on with it. */
const graveFirst: readonly TrialEvent["kind"][] = [
  "stop-sign",
  "doffed",
  "ended",
  "paused",
  "check-in",
  "resumed",
  "begun",
  "corrected",
];

/**
 * From contradicting versions of one event: the one that leaves the fewest minutes keeps the time, and whatever else
 * is bad counts beside it, so that no order of arrival and no repeat can hide it.
 */
function gravest(versions: readonly TimedEvent[]): TimedEvent[] {
  const stopSigns = versions.filter(({ event }) => event.kind === "stop-sign");
  const corrections = versions.filter(({ event }) => event.kind === "corrected");
  const checkIns = worstCheckIn(versions);
  const [keepsTime] = versions.toSorted(
    (a, b) =>
      graveFirst.indexOf(a.event.kind) - graveFirst.indexOf(b.event.kind) ||
      leastWorn(a, b) ||
      byText(written(a.event), written(b.event)),
  );
  if (!keepsTime || keepsTime.event.kind === "corrected") return corrections.map(untrusted);
  const first = keepsTime.event.kind === "check-in" ? (checkIns[0] ?? keepsTime) : keepsTime;
  return [first, ...[...stopSigns, ...checkIns, ...corrections].filter((version) => version !== first).map(untrusted)];
}

const untrusted = (timed: TimedEvent): TimedEvent => ({ ...timed, trusted: false });

const leastWorn = (a: TimedEvent, b: TimedEvent): number =>
  a.event.kind === "begun" || a.event.kind === "resumed" ? b.atMs - a.atMs : a.atMs - b.atMs;

function worstCheckIn(versions: readonly TimedEvent[]): TimedEvent[] {
  const checkIns = versions.flatMap((timed) => (timed.event.kind === "check-in" ? [{ timed, event: timed.event }] : []));
  const [earliest] = checkIns.toSorted((a, b) => a.timed.atMs - b.timed.atMs);
  if (!earliest) return [];
  const events = checkIns.map(({ event }) => event);
  const worst = {
    ...earliest.event,
    comfort: Math.min(...events.map(({ comfort }) => comfort)),
    pain: Math.max(...events.map(({ pain }) => pain)),
    exertion: Math.max(...events.map(({ exertion }) => exertion)),
    feelings: [...new Map(events.flatMap(({ feelings }) => feelings).map((feeling) => [written(feeling), feeling])).values()],
  };
  return [{ ...earliest.timed, event: worst }];
}

/** The events of a wear trial in the order of time, each id once, however they arrived. */
import type { TrialEvent } from "./bundle";
import { FitInputError } from "./errors";
import { instantMs, instantOrNaN } from "./instant";

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
  const repeated = repeatedIds(events);
  const counted: TimedEvent[] = [];
  const versionsOf = new Map<string, TimedEvent[]>();
  for (const [index, event] of events.entries()) {
    const timed = { event, atMs: checkedInstant(event, index), trusted: event.misdated !== true };
    if (!repeated.has(event.id)) counted.push(timed);
    else versionsOf.set(event.id, [...(versionsOf.get(event.id) ?? []), timed]);
  }
  const problems: TrialProblem[] = [];
  for (const [id, versions] of versionsOf) {
    const contents = distinctContents(versions);
    counted.push(...(contents.length === 1 ? contents : gravest(contents)));
    if (contents.length > 1)
      problems.push({
        eventId: id,
        why: `The event ${id} was sent with ${contents.length} different contents; the worst counts.`,
      });
  }
  problems.sort((a, b) => byText(a.eventId ?? "", b.eventId ?? ""));
  return { timed: inOrder(counted), problems, contradicted: problems.length > 0 };
}

function repeatedIds(events: readonly TrialEvent[]): Set<string> {
  const seen = new Set<string>();
  const repeated = new Set<string>();
  for (const { id } of events) {
    const before = seen.size;
    if (seen.add(id).size === before) repeated.add(id);
  }
  return repeated;
}

/** What is in the order of time already, but for what happened at one instant, is soon put into the full order. */
const inOrder = (timed: readonly TimedEvent[]): TimedEvent[] => byTimeAlone(timed).sort(inTime);

/**
 * Plain numbers are sorted several times sooner than records are, so the time of an event and its place in the list
 * are put into one number: the time since the first in whole steps, the place as the part of a step.
 */
function byTimeAlone(timed: readonly TimedEvent[]): TimedEvent[] {
  let firstMs = Number.POSITIVE_INFINITY;
  let lastMs = Number.NEGATIVE_INFINITY;
  let alreadyInOrder = true;
  for (const { atMs } of timed) {
    if (atMs < lastMs) alreadyInOrder = false;
    if (atMs < firstMs) firstMs = atMs;
    if (atMs > lastMs) lastMs = atMs;
  }
  // A power of two, so that dividing by it rounds nothing.
  const step = 2 ** Math.ceil(Math.log2(timed.length + 1));
  if (alreadyInOrder || (lastMs - firstMs + 1) * step > Number.MAX_SAFE_INTEGER) return [...timed];
  const keys = new Float64Array(timed.length);
  for (const [place, { atMs }] of timed.entries()) keys[place] = (atMs - firstMs) * step + place;
  const ordered: TimedEvent[] = [];
  for (const key of keys.sort()) {
    const next = timed[key - Math.floor(key / step) * step];
    if (next) ordered.push(next);
  }
  return ordered;
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
    const wrong = wrongRating(event);
    if (wrong !== null) throw new FitInputError(`events[${index}].${wrong}`, "expected a rating of 0…10");
  }
  const atMs = instantOrNaN(event.at);
  return Number.isNaN(atMs) ? instantMs(event.at, `events[${index}].at`) : atMs;
}

/** What a correction leaves out stays as it was said. */
function wrongRating({ kind, comfort, pain, exertion }: Extract<TrialEvent, { kind: "check-in" | "corrected" }>): string | null {
  const mayLack = kind === "corrected";
  if (!isRating(comfort, mayLack)) return "comfort";
  if (!isRating(pain, mayLack)) return "pain";
  return isRating(exertion, mayLack) ? null : "exertion";
}

/** Also false where the rating is not a number. */
const isRating = (rating: number | undefined, mayLack: boolean): boolean =>
  rating === undefined ? mayLack : typeof rating === "number" && rating >= 0 && rating <= 10;

/** One event a content, in an order that does not depend on which came first. A note or a reporter is no contradiction. */
function distinctContents(versions: readonly TimedEvent[]): TimedEvent[] {
  const [first] = versions;
  const asFirst = JSON.stringify(first?.event);
  // Most of what arrives twice was only sent twice.
  if (first && versions.every(({ event }) => JSON.stringify(event) === asFirst)) return [first];
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

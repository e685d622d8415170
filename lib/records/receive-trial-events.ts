import { z } from "zod";
import { reporters, stopSigns } from "@/lib/fit";
import { parseInput, type QuickStore, quickCommand } from "./command";
import { id, instant } from "./input";
import { InputRefused } from "./refusals";
import { saidByLink } from "./said-by-link";
import { isStopSign } from "./set-aside";
import { sqlTime } from "./sql";
import { EventInput, eventColumns, isOnlyCheckIns, refuseWithoutReason, storeEvents } from "./trial-events";
import { eventOfId, trialOnRecord } from "./trial-on-record";

/** A device's clock that is off by more than this is put right by what it said when it sent. */
export const mostClockErrorMs = 60_000;

const SentEvent = z.looseObject({ id: z.uuid({ error: "Every event has an id of its own." }) });
type SentEvent = z.output<typeof SentEvent>;

/**
 * What became of one event. "known": it came before. "set aside": it is kept and shown, and judged nowhere. A stop sign
 * that could not be read is "stored" all the same, with what could not be read of it as `why`.
 */
export interface Received {
  id: string;
  became: "stored" | "known" | "set aside";
  why?: string;
}

/**
 * Takes what a device kept while it had no network, any number of times, in any order and in any pieces. Every event
 * that comes is kept once: in the trial, whatever its time, or set aside with the reason where it cannot be read or the
 * trial cannot take it any more. None is dropped, and one that is wrong does not hold up the others.
 *
 * `sentAt` is the device's clock at the moment of sending: where it differs from ours by more than a minute, the times of
 * its events are moved by the difference, and what the device said is kept beside them.
 */
export const receiveTrialEvents = quickCommand({
  permission: "record a wear trial",
  input: z.strictObject({
    trialId: id("The wear trial"),
    sentAt: instant("When this was sent"),
    events: z.array(SentEvent).min(1, "Nothing to record.").max(500, "At most 500 events at once."),
  }),
  ofTrial: ({ trialId }) => trialId,
  run: async (store, { trialId, sentAt, events }) => {
    const trial = trialOnRecord(store, trialId);
    const { known, elsewhere } = knownAlready(store, trialId, events);
    const locked = trial.locked?.tell ?? null;
    const clockOffMs = store.now.getTime() - sentAt.getTime();
    const moveMs = Math.abs(clockOffMs) > mostClockErrorMs ? clockOffMs : 0;
    const correctsNothing = whatCannotBeCorrected(store, trialId, events);

    const stored: Taken[] = [];
    const setAside: { event: SentEvent; why: string }[] = [];
    const received: Received[] = [];
    for (const sent of events) {
      const before = known.get(sent.id);
      if (before) {
        received.push({ id: sent.id, ...before });
        continue;
      }
      const why = locked ?? (elsewhere.has(sent.id) ? "Another wear trial has an event of this id." : null);
      const now = why === null ? judge(store, { sent, moveMs, correctsNothing }) : { became: "set aside" as const, why };
      known.set(sent.id, now.became === "stored" ? { became: "known" } : now);
      received.push({ id: sent.id, became: now.became, ...(now.why === undefined ? {} : { why: now.why }) });
      if (now.became === "stored") stored.push(now);
      if (now.why !== undefined) setAside.push({ event: sent, why: now.why });
    }

    storeEvents(
      store,
      stored.map(({ event, deviceAt }) => eventColumns(store, trialId, event, deviceAt)),
    );
    for (const { event, why } of setAside) keepSetAside(store, trialId, { event, why });
    const about = { kind: "wear trial", id: trialId, wearerId: trial.wearerId };
    if (stored.length > 0)
      await store.note({
        ...about,
        action: `received of a wear trial: ${[...new Set(stored.map(({ event }) => event.kind))].join(", ")}`,
        episodeId: trial.episodeId,
        after: stored.map(({ event, deviceAt }) => ({ ...event, ...(deviceAt ? { deviceAt } : {}) })),
      });
    if (setAside.length > 0)
      await store.note({ ...about, action: "set aside what a wear trial could not take", after: setAside });
    if (isOnlyCheckIns(stored.map(({ event }) => event))) store.answerFirst();
    return { trialId, received };
  },
});

interface Taken {
  became: "stored";
  event: EventInput & { id: string };
  deviceAt: Date | null;
  /** What could not be read of it; it is kept as it came as well. */
  why?: string;
}
type Refused = { became: "set aside"; why: string };
type Before = { became: "known" } | Refused;

function keepSetAside({ sql, actor, now }: QuickStore, trialId: string, { event, why }: { event: SentEvent; why: string }): void {
  sql.run(
    "INSERT INTO SetAsideEvent (id, trialId, event, why, recordedById, receivedAt) VALUES (?, ?, ?, ?, ?, ?)",
    ...[event.id, trialId, JSON.stringify(event), why, actor.id, sqlTime(now)],
  );
}

const AsideRow = z.object({ why: z.string() });

/** What came before, under the same id; and the ids that events of other trials have. */
function knownAlready(store: QuickStore, trialId: string, events: readonly SentEvent[]) {
  const known = new Map<string, Before>();
  const elsewhere = new Set<string>();
  for (const event of events) {
    const owner = eventOfId(store, event.id)?.trialId ?? null;
    const aside = store.sql.get("SELECT why FROM SetAsideEvent WHERE trialId = ? AND id = ?", trialId, event.id);
    if (owner === trialId) known.set(event.id, { became: "known" });
    else if (aside !== undefined) known.set(event.id, { became: "set aside", why: AsideRow.parse(aside).why });
    else if (owner !== null) elsewhere.add(event.id);
  }
  return { known, elsewhere };
}

/**
 * What corrections of these events name and what is surely no check-in of this trial. A check-in that nobody knows may
 * be on its way: its correction came first.
 */
function whatCannotBeCorrected(store: QuickStore, trialId: string, events: readonly SentEvent[]): Set<unknown> {
  const named = new Set(events.flatMap(({ corrects }) => (typeof corrects === "string" ? [corrects] : [])));
  return new Set(
    [...named].filter((id) => {
      const event = eventOfId(store, id);
      return event !== null && (event.trialId !== trialId || event.kind !== "check-in");
    }),
  );
}

interface Judging {
  sent: SentEvent;
  moveMs: number;
  correctsNothing: ReadonlySet<unknown>;
}

function judge(store: QuickStore, { sent, moveMs, correctsNothing }: Judging): Taken | Refused {
  try {
    const said = parseInput(EventInput, saidByLink(store.actor, sent));
    const at = moved(said.at, moveMs);
    refuseWithoutReason(said, "");
    if (said.kind === "corrected" && correctsNothing.has(said.corrects))
      throw new InputRefused({ corrects: "Choose a check-in of this trial." });
    return { became: "stored", event: { ...said, id: sent.id, at }, deviceAt: moveMs === 0 ? null : said.at };
  } catch (error) {
    if (!(error instanceof InputRefused)) throw error;
    const why = Object.values(error.fields).join(" ");
    return isStopSign(sent.kind) ? stopSignFrom(store, { sent, moveMs, why }) : { became: "set aside", why };
  }
}

/** Whatever cannot be read of it, a stop sign stops the trial: what can be read is kept, the rest takes the safe place. */
function stopSignFrom(store: QuickStore, { sent, moveMs, why }: { sent: SentEvent; moveMs: number; why: string }): Taken {
  const at = readInstant(sent.at, moveMs);
  const sign = stopSigns.find((one) => one === sent.sign) ?? "wearer-asks";
  const reportedBy = reporters.find((one) => one === sent.reportedBy);
  const { id: _id, kind: _kind, ...came } = sent;
  return {
    became: "stored",
    event: {
      ...{ id: sent.id, kind: "stop-sign", sign, at: at?.at ?? store.now, reportedBy },
      note: `Could not be read in full, and counts as a stop sign. It came as ${JSON.stringify(came)}`.slice(0, 1000),
    },
    deviceAt: at && moveMs !== 0 ? at.said : null,
    why: `It counts as a stop sign of the trial, although it could not be read in full: ${why}`,
  };
}

function readInstant(value: unknown, moveMs: number): { said: Date; at: Date } | null {
  const read = instant("When this happened").safeParse(value);
  if (!read.success) return null;
  try {
    return { said: read.data, at: moved(read.data, moveMs) };
  } catch (error) {
    if (error instanceof InputRefused) return null;
    throw error;
  }
}

/** @throws InputRefused where that is beyond the years that a time is written with */
function moved(at: Date, moveMs: number): Date {
  const to = new Date(at.getTime() + moveMs);
  const year = to.getUTCFullYear();
  if (!(year >= 1 && year <= 9999)) throw new InputRefused({ at: "When this happened is beyond the calendar." });
  return to;
}

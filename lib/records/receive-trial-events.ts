import { z } from "zod";
import type { Prisma } from "@/lib/generated/prisma/client";
import { command, parseInput, type Store } from "./command";
import { episodeForChange, refuseUnderSignature } from "./episode-for-change";
import { id, instant } from "./input";
import { InputRefused, Locked, NotFound } from "./refusals";
import { saidByLink } from "./said-by-link";
import { EventInput, eventColumns, refuseUnknownCorrection, refuseUnsound } from "./trial-events";

/** A device's clock that is off by more than this is put right by what it said when it sent. */
export const mostClockErrorMs = 60_000;

const SentEvent = z.looseObject({ id: z.uuid({ error: "Every event has an id of its own." }) });
type SentEvent = z.output<typeof SentEvent>;

/** What became of one event. "known": it came before. "set aside": it is kept and shown, and judged nowhere. */
export interface Received {
  id: string;
  became: "stored" | "known" | "set aside";
  why?: string;
}

/**
 * Takes what a device kept while it had no network, any number of times and in any order. Every event that comes is
 * stored once: in the trial, or set aside with the reason where the trial cannot take it any more. None is dropped, and
 * one that is wrong does not hold up the others.
 *
 * `sentAt` is the device's clock at the moment of sending: where it differs from ours by more than a minute, the times of
 * its events are moved by the difference, and what the device said is kept beside them.
 */
export const receiveTrialEvents = command({
  permission: "record a wear trial",
  input: z.strictObject({
    trialId: id("The wear trial"),
    sentAt: instant("When this was sent"),
    events: z.array(SentEvent).min(1, "Nothing to record.").max(500, "At most 500 events at once."),
  }),
  ofTrial: ({ trialId }) => trialId,
  run: async (store, { trialId, sentAt, events }) => {
    const trial = await store.db.wearTrial.findUnique({
      where: { id: trialId },
      include: { socket: true, episode: { select: { wearerId: true } } },
    });
    if (!trial) throw new NotFound("wear trial");
    const known = await knownAlready(store, trialId, events);
    const locked = await whyLocked(store, trial);
    const clockOffMs = store.now.getTime() - sentAt.getTime();
    const moveMs = Math.abs(clockOffMs) > mostClockErrorMs ? clockOffMs : 0;

    const stored: Taken[] = [];
    const setAside: { event: SentEvent; why: string }[] = [];
    const received: Received[] = [];
    for (const sent of events) {
      const before = known.get(sent.id);
      const now = before ?? (locked === null ? await judge(store, trial, { sent, moveMs, stored }) : refusedFor(locked));
      received.push({ id: sent.id, ...("event" in now ? { became: "stored" as const } : now) });
      if (before) continue;
      known.set(sent.id, "event" in now ? { became: "known" } : now);
      if ("event" in now) stored.push(now);
      else if (now.became === "set aside") setAside.push({ event: sent, why: now.why });
    }

    await store.db.trialEvent.createMany({
      data: stored.map(({ event, deviceAt }) => eventColumns(store, trialId, event, deviceAt)),
    });
    await store.db.setAsideEvent.createMany({
      data: setAside.map(({ event, why }) => ({
        ...{ id: event.id, trialId, why, recordedById: store.actor.id, receivedAt: store.now },
        event: JSON.parse(JSON.stringify(event)) as Prisma.InputJsonObject, // it came as JSON
      })),
    });
    const about = { kind: "wear trial", id: trialId, wearerId: trial.episode.wearerId };
    if (stored.length > 0)
      await store.note({
        ...about,
        action: `received of a wear trial: ${[...new Set(stored.map(({ event }) => event.kind))].join(", ")}`,
        episodeId: trial.episodeId,
        after: stored.map(({ event, deviceAt }) => ({ ...event, ...(deviceAt ? { deviceAt } : {}) })),
      });
    if (setAside.length > 0)
      await store.note({ ...about, action: "set aside what a wear trial could not take", after: setAside });
    return { trialId, received };
  },
});

interface Taken {
  event: EventInput & { id: string };
  deviceAt: Date | null;
}
type Refused = { became: "set aside"; why: string };
type Before = { became: "known" } | Refused;

const refusedFor = (why: string): Refused => ({ became: "set aside", why });

/** What came before, under the same id. */
async function knownAlready(store: Store, trialId: string, events: readonly SentEvent[]): Promise<Map<string, Before>> {
  const where = { id: { in: events.map((event) => event.id) } };
  const [inTrials, aside] = await Promise.all([
    store.db.trialEvent.findMany({ where, select: { id: true, trialId: true } }),
    store.db.setAsideEvent.findMany({ where, select: { id: true, why: true } }),
  ]);
  return new Map<string, Before>([
    ...inTrials.flatMap((event) => (event.trialId === trialId ? [[event.id, { became: "known" }] as const] : [])),
    ...aside.map(({ id: event, why }) => [event, refusedFor(why)] as const),
  ]);
}

type TrialOfEvents = Prisma.WearTrialGetPayload<{ include: { socket: true } }>;

async function whyLocked(store: Store, trial: TrialOfEvents): Promise<string | null> {
  try {
    refuseUnderSignature(await episodeForChange(store, trial.episodeId), trial.socketId);
    return null;
  } catch (error) {
    if (error instanceof Locked || error instanceof NotFound) return error.tell;
    throw error;
  }
}

async function judge(
  store: Store,
  trial: TrialOfEvents,
  { sent, moveMs, stored }: { sent: SentEvent; moveMs: number; stored: readonly Taken[] },
): Promise<Taken | Refused> {
  try {
    const said = parseInput(EventInput, saidByLink(store.actor, sent));
    const event = { ...said, id: sent.id, at: new Date(said.at.getTime() + moveMs) };
    if (await store.db.trialEvent.findUnique({ where: { id: sent.id }, select: { id: true } }))
      return refusedFor("Another wear trial has an event of this id.");
    // A stop sign counts whenever it is said to have been: no wrong clock takes it out of the judgement.
    if (event.kind !== "stop-sign") refuseUnsound(store, trial.socket, event, "");
    if (event.kind === "corrected") await refuseUnknownCorrection(store, trial.id, [...stored.map((one) => one.event), event]);
    return { event, deviceAt: moveMs === 0 ? null : said.at };
  } catch (error) {
    if (error instanceof InputRefused) return refusedFor(Object.values(error.fields).join(" "));
    throw error;
  }
}

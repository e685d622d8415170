import { z } from "zod";
import { looseMinutes } from "@/lib/fit/evidence";
import { isMisdated } from "./believable-times";
import { command, isSavedAlready, type QuickStore, quickCommand, type Store } from "./command";
import { episodeForChange, refuseFuture, refuseUnderSignature } from "./episode-for-change";
import { id, newRecordId } from "./input";
import { InputRefused, NotFound } from "./refusals";
import { refuseWithdrawn, saidByLink } from "./said-by-link";
import { type LookFields, lookFields, refuseOffLimb, refuseSilence, unusualLook, writeLook } from "./skin-look";
import { EventInput, eventColumns, isOnlyCheckIns, refuseUnknownCorrection, refuseUnsound, storeEvents } from "./trial-events";
import { eventOfId, trialOnRecord } from "./trial-on-record";

/** Adds to what happened in a wear trial. Events are only ever added; one that came before is stored once. */
export const recordWearTrial = quickCommand({
  permission: "record a wear trial",
  input: z.strictObject({ trialId: id("The wear trial"), events: z.array(EventInput).min(1, "Nothing to record.").max(2000) }),
  ofTrial: ({ trialId }) => trialId,
  run: async (store, { trialId, events }) => {
    const trial = trialOnRecord(store, trialId);
    if (trial.locked) throw trial.locked;
    const fresh = notYetStored(
      store,
      events.map((event) => saidByLink(store.actor, event)),
    );
    refuseUnknownCorrection(store, trialId, fresh);
    for (const [index, event] of fresh.entries())
      refuseUnsound(store, trial.socket, event, events.length === 1 ? "" : `events.${index}.`);
    if (fresh.length === 0) return { trialId, episodeId: trial.episodeId, stored: 0 };
    const written = fresh.map((event) => ({ ...event, id: event.id ?? store.newId() }));
    storeEvents(
      store,
      written.map((event) => eventColumns(store, trialId, event)),
    );
    await store.note({
      action: `recorded a wear trial: ${[...new Set(written.map(({ kind }) => kind))].join(", ")}`,
      kind: "wear trial",
      id: trialId,
      wearerId: trial.wearerId,
      episodeId: trial.episodeId,
      after: written,
    });
    if (isOnlyCheckIns(written)) store.answerFirst();
    return { trialId, episodeId: trial.episodeId, stored: written.length };
  },
});

/** Adds a look at the skin after a trial: at doffing, and again until the marks have faded. */
export const lookAtSkin = command({
  permission: "look at the skin",
  input: z.strictObject({ id: newRecordId, trialId: id("The wear trial"), ...lookFields }),
  ofTrial: ({ trialId }) => trialId,
  run: async (store, input) => {
    refuseWithdrawn(store.actor);
    const { trial } = await trialForChange(store, input.trialId);
    if (trial.state === "planned") throw new InputRefused({ at: "This trial has not begun. Record what happened in it first." });
    return addLook(store, input);
  },
});

export type LookInput = LookFields & { id?: string | undefined; trialId: string };

/** @throws InputRefused where the look cannot have been so */
export async function addLook(store: Store, { id, trialId, ...look }: LookInput) {
  const { trial, episode } = await trialForChange(store, trialId);
  if (await isSavedAlready(store, { kind: "skin inspection", id, fields: look })) return { trialId, episodeId: trial.episodeId };
  refuseFuture(store, "at", look.at);
  refuseSilence(look);
  await refuseOffLimb(store, episode, look.marks);
  await refuseOtherTime(store, trial, look);
  store.ask(unusualLook(episode.level, look));
  const inspectionId = await writeLook(store, { trialId }, look, id);
  await store.note({
    action: "looked at the skin after a wear trial",
    kind: "skin inspection",
    id: inspectionId,
    wearerId: episode.wearerId,
    episodeId: trial.episodeId,
    after: look,
  });
  return { trialId, episodeId: trial.episodeId };
}

/** The two ways of saying when a look was must agree: a mark that was seen late would else count as fading early. */
async function refuseOtherTime(
  store: Store,
  trial: { id: string; socket: { specifiedAt: Date } },
  { at, minutesAfterDoffing }: { at: Date; minutesAfterDoffing: number },
): Promise<void> {
  const off = await socketOff(store, trial);
  if (!off) return;
  const minutes = (at.getTime() - off.at.getTime()) / 60_000;
  if (Math.abs(minutes - minutesAfterDoffing) > looseMinutes)
    throw new InputRefused({
      minutesAfterDoffing: `By the times on record this look was ${Math.round(minutes)} minutes after ${off.kind === "doffed" ? "doffing" : "the end of the trial"}. Put the time or the minutes right.`,
    });
}

/** What says when the socket came off, as far as it is on record with a time that can have been so. */
export async function socketOff(store: Store, trial: { id: string; socket: { specifiedAt: Date } }) {
  const said = await store.db.trialEvent.findMany({
    where: { trialId: trial.id, kind: { in: ["doffed", "ended", "stop-sign"] } },
    orderBy: [{ kind: "asc" }, { at: "asc" }],
  });
  return said.find((event) => !isMisdated(event, trial.socket));
}

/** An event with an id that is stored already, or that comes twice in one batch, counts once. */
function notYetStored(store: QuickStore, events: EventInput[]): EventInput[] {
  const known = new Set<string>();
  return events.filter(({ id }) => {
    if (id === undefined) return true;
    const isNew = !known.has(id) && eventOfId(store, id) === null;
    known.add(id);
    return isNew;
  });
}

async function trialForChange(store: Store, trialId: string) {
  const trial = await store.db.wearTrial.findUnique({ where: { id: trialId }, include: { socket: true } });
  if (!trial) throw new NotFound("wear trial");
  const episode = await episodeForChange(store, trial.episodeId);
  refuseUnderSignature(episode, trial.socketId);
  return { trial, episode };
}

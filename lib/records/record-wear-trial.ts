import { z } from "zod";
import { aspects, feelingKinds, reporters, stopSigns, thirds } from "@/lib/fit";
import { looseMinutes } from "@/lib/fit/evidence";
import { command, isSavedAlready, type Store } from "./command";
import { episodeForChange, refuseBeforeSocket, refuseFuture, refuseUnderSignature } from "./episode-for-change";
import { choice, id, instant, maybeChoice, maybeRating, maybeText, newRecordId, rating, rows } from "./input";
import { InputRefused, NotFound } from "./refusals";
import { lookFields, refuseOffLimb, refuseSilence, unusualLook, writeLook } from "./skin-look";

const FeelingInput = z.strictObject({
  kind: choice("what was felt", feelingKinds),
  aspect: maybeChoice(aspects),
  third: maybeChoice(thirds),
});

const base = {
  /** From the device that records it: the same event sent twice is stored once. */
  id: newRecordId,
  at: instant("When this happened"),
  note: maybeText("The note", 1000),
  reportedBy: maybeChoice(reporters),
};

export const EventInput = z.discriminatedUnion(
  "kind",
  [
    z.strictObject({ ...base, kind: z.literal("begun") }),
    z.strictObject({
      ...base,
      kind: z.literal("check-in"),
      reportedBy: choice("who said so", reporters),
      comfort: rating("Comfort"),
      pain: rating("Pain"),
      exertion: rating("Exertion"),
      feelings: rows(FeelingInput, 20),
    }),
    z.strictObject({ ...base, kind: z.literal("paused") }),
    z.strictObject({ ...base, kind: z.literal("resumed") }),
    z.strictObject({ ...base, kind: z.literal("stop-sign"), sign: choice("the stop sign", stopSigns) }),
    z.strictObject({ ...base, kind: z.literal("ended") }),
    z.strictObject({ ...base, kind: z.literal("doffed") }),
    z.strictObject({
      ...base,
      kind: z.literal("corrected"),
      corrects: id("The check-in that is put right"),
      note: maybeText("The reason", 1000),
      comfort: maybeRating("Comfort"),
      pain: maybeRating("Pain"),
      exertion: maybeRating("Exertion"),
      feelings: rows(FeelingInput, 20).optional(),
    }),
  ],
  { error: "Choose what happened." },
);
export type EventInput = z.output<typeof EventInput>;

/** Adds to what happened in a wear trial. Events are only ever added; one that came before is stored once. */
export const recordWearTrial = command({
  permission: "record a wear trial",
  input: z.strictObject({ trialId: id("The wear trial"), events: z.array(EventInput).min(1, "Nothing to record.").max(2000) }),
  run: async (store, { trialId, events }) => {
    const { trial, episode } = await trialForChange(store, trialId);
    const fresh = await notYetStored(store, events);
    await refuseUnknownCorrection(store, trialId, fresh);
    for (const [index, event] of fresh.entries())
      refuseUnsound(store, trial.socket, event, events.length === 1 ? "" : `events.${index}.`);
    if (fresh.length === 0) return { trialId, episodeId: trial.episodeId, stored: 0 };
    const written = fresh.map((event) => ({ ...event, id: event.id ?? store.newId() }));
    await store.db.trialEvent.createMany({ data: written.map((event) => eventColumns(store, trialId, event)) });
    await store.note({
      action: `recorded a wear trial: ${[...new Set(written.map(({ kind }) => kind))].join(", ")}`,
      kind: "wear trial",
      id: trialId,
      wearerId: episode.wearerId,
      episodeId: trial.episodeId,
      after: written,
    });
    return { trialId, episodeId: trial.episodeId, stored: written.length };
  },
});

/** Adds a look at the skin after a trial: at doffing, and again until the marks have faded. */
export const lookAtSkin = command({
  permission: "look at the skin",
  input: z.strictObject({ id: newRecordId, trialId: id("The wear trial"), ...lookFields }),
  run: async (store, { id, trialId, ...look }) => {
    const { trial, episode } = await trialForChange(store, trialId);
    if (await isSavedAlready(store, { kind: "skin inspection", id, fields: look }))
      return { trialId, episodeId: trial.episodeId };
    refuseFuture(store, "at", look.at);
    refuseSilence(look);
    await refuseOffLimb(store, episode, look.marks);
    await refuseOtherTime(store, trialId, look);
    if (trial.state === "planned") throw new InputRefused({ at: "This trial has not begun. Record what happened in it first." });
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
  },
});

/** The two ways of saying when a look was must agree: a mark that was seen late would else count as fading early. */
async function refuseOtherTime(
  store: Store,
  trialId: string,
  { at, minutesAfterDoffing }: { at: Date; minutesAfterDoffing: number },
): Promise<void> {
  const off = await store.db.trialEvent.findFirst({
    where: { trialId, kind: { in: ["doffed", "ended", "stop-sign"] } },
    orderBy: [{ kind: "asc" }, { at: "asc" }],
  });
  if (!off) return;
  const minutes = (at.getTime() - off.at.getTime()) / 60_000;
  if (Math.abs(minutes - minutesAfterDoffing) > looseMinutes)
    throw new InputRefused({
      minutesAfterDoffing: `By the times on record this look was ${Math.round(minutes)} minutes after ${off.kind === "doffed" ? "doffing" : "the end of the trial"}. Put the time or the minutes right.`,
    });
}

async function refuseUnknownCorrection(store: Store, trialId: string, events: EventInput[]): Promise<void> {
  for (const event of events) {
    if (event.kind !== "corrected" || events.some(({ id }) => id === event.corrects)) continue;
    const corrected = await store.db.trialEvent.findUnique({
      where: { id: event.corrects },
      select: { trialId: true, kind: true },
    });
    if (corrected?.trialId !== trialId || corrected.kind !== "check-in")
      throw new InputRefused({ corrects: "Choose a check-in of this trial." });
  }
}

/** An event with an id that is stored already, or that comes twice in one batch, counts once. */
async function notYetStored(store: Store, events: EventInput[]): Promise<EventInput[]> {
  const ids = events.flatMap(({ id }) => id ?? []);
  const known = new Set(
    (await store.db.trialEvent.findMany({ where: { id: { in: ids } }, select: { id: true } })).map(({ id }) => id),
  );
  return events.filter(({ id }) => {
    if (id === undefined) return true;
    const isNew = !known.has(id);
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

function refuseUnsound(store: Store, socket: { number: number; specifiedAt: Date }, event: EventInput, prefix: string): void {
  refuseFuture(store, `${prefix}at`, event.at);
  refuseBeforeSocket(socket, `${prefix}at`, event.at);
  if (event.kind === "corrected" && !event.note)
    throw new InputRefused({ [`${prefix}note`]: "Say why the check-in is put right." });
}

function eventColumns(store: Store, trialId: string, event: EventInput & { id: string }) {
  const rated = event.kind === "check-in" || event.kind === "corrected" ? event : undefined;
  return {
    id: event.id,
    trialId,
    at: event.at,
    kind: event.kind,
    comfort: rated?.comfort ?? null,
    pain: rated?.pain ?? null,
    exertion: rated?.exertion ?? null,
    ...(rated?.feelings ? { feelings: rated.feelings } : {}),
    sign: event.kind === "stop-sign" ? event.sign : null,
    corrects: event.kind === "corrected" ? event.corrects : null,
    note: event.note ?? null,
    reportedBy: event.reportedBy ?? null,
    recordedById: store.actor.id,
    receivedAt: store.now,
  };
}

/** What can happen in a wear trial, as a person or a device tells it, and when it can be believed. */
import { z } from "zod";
import { aspects, feelingKinds, reporters, stopSigns, thirds } from "@/lib/fit";
import type { CommonStore, QuickStore } from "./command";
import { refuseBeforeSocket, refuseFuture } from "./episode-for-change";
import { choice, id, instant, maybeChoice, maybeRating, maybeText, newRecordId, rating, rows } from "./input";
import { InputRefused } from "./refusals";
import { sqlTime } from "./sql";
import { eventOfId } from "./trial-on-record";

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

export function refuseUnknownCorrection(store: QuickStore, trialId: string, events: EventInput[]): void {
  for (const event of events) {
    if (event.kind !== "corrected" || events.some(({ id }) => id === event.corrects)) continue;
    const corrected = eventOfId(store, event.corrects);
    if (corrected?.trialId !== trialId || corrected.kind !== "check-in")
      throw new InputRefused({ corrects: "Choose a check-in of this trial." });
  }
}

export function refuseUnsound(
  store: CommonStore,
  socket: { number: number; specifiedAt: Date },
  event: EventInput,
  prefix: string,
): void {
  refuseFuture(store, `${prefix}at`, event.at);
  refuseBeforeSocket(socket, `${prefix}at`, event.at);
  refuseWithoutReason(event, prefix);
}

export function refuseWithoutReason(event: EventInput, prefix: string): void {
  if (event.kind === "corrected" && !event.note)
    throw new InputRefused({ [`${prefix}note`]: "Say why the check-in is put right." });
}

/** A device sends many of these, and waits for the answer to each. */
export const isOnlyCheckIns = (events: readonly EventInput[]): boolean => events.every(({ kind }) => kind === "check-in");

export function eventColumns(
  store: CommonStore,
  trialId: string,
  event: EventInput & { id: string },
  deviceAt: Date | null = null,
) {
  const rated = event.kind === "check-in" || event.kind === "corrected" ? event : undefined;
  return {
    id: event.id,
    trialId,
    at: event.at,
    deviceAt,
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

const insertEvent = `INSERT INTO TrialEvent (id, trialId, at, deviceAt, kind, comfort, pain, exertion, feelings, sign, corrects, note,
  reportedBy, recordedById, receivedAt) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`;

export function storeEvents({ sql }: QuickStore, events: readonly ReturnType<typeof eventColumns>[]): void {
  for (const event of events)
    sql.run(
      insertEvent,
      ...[event.id, event.trialId, sqlTime(event.at), event.deviceAt && sqlTime(event.deviceAt), event.kind],
      ...[event.comfort, event.pain, event.exertion],
      event.feelings === undefined ? null : JSON.stringify(event.feelings),
      ...[event.sign, event.corrects, event.note, event.reportedBy, event.recordedById, sqlTime(event.receivedAt)],
    );
}

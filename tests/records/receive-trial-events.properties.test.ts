/** However what two devices kept arrives (in whatever order, pieces and repeats), it makes the same trial, and is kept once. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { replayWearTrial, type TrialEvent } from "@/lib/fit";
import { aspects, feelingKinds, stopSigns, thirds } from "@/lib/fit/words";
import { database } from "@/lib/records/database";
import { planWearTrial } from "@/lib/records/plan-wear-trial";
import { receiveTrialEvents } from "@/lib/records/receive-trial-events";
import { seeEpisodeOfTrial } from "@/lib/records/see-episode";
import { runs } from "../fit/runs";
import { minutesAfter, openTestClinic, readyEpisode, today } from "./clinic";

const begin = minutesAfter(today.toISOString(), -40);
const plan = { minutes: 20, intervalMin: 5, loadKg: 0.68, loadDistanceMm: 220, activities: "writing" };

/** Most in the trial; some before the socket was specified, some not come yet. */
const minutes = fc.oneof(
  { weight: 12, arbitrary: fc.integer({ min: -3, max: 35 }) },
  { weight: 1, arbitrary: fc.constantFrom(-60 * 24 * 30, 60, 60 * 24 * 400) },
);
const rating = fc.integer({ min: 0, max: 10 });
const feeling = fc.record(
  { kind: fc.constantFrom(...feelingKinds), aspect: fc.constantFrom(...aspects), third: fc.constantFrom(...thirds) },
  { requiredKeys: ["kind"] },
);
const ratings = { comfort: rating, pain: rating, exertion: rating, feelings: fc.array(feeling, { maxLength: 2 }) };
const timed = { id: fc.uuid(), minutes };
const readable = fc.oneof(
  { weight: 3, arbitrary: fc.record({ ...timed, kind: fc.constantFrom("begun", "paused", "resumed", "ended", "doffed") }) },
  { weight: 5, arbitrary: fc.record({ ...timed, kind: fc.constant("check-in"), ...ratings, reportedBy: fc.constant("wearer") }) },
  { weight: 1, arbitrary: fc.record({ ...timed, kind: fc.constant("stop-sign"), sign: fc.constantFrom(...stopSigns) }) },
);
const correction = fc.record(
  { ...timed, kind: fc.constant("corrected"), corrects: fc.nat(), note: fc.constant("a slip"), ...ratings },
  { requiredKeys: ["id", "minutes", "kind", "corrects", "note"] },
);
const unreadable = fc.record({ ...timed, kind: fc.constant("check-in"), pain: fc.constantFrom(8, 12, "much") });

const device = fc.record({
  events: fc.array(readable, { minLength: 1, maxLength: 8 }),
  corrections: fc.array(correction, { maxLength: 2 }),
  unreadable: fc.array(unreadable, { maxLength: 1 }),
  clockOffMinutes: fc.constantFrom(0, -190, 75),
});
/** Which device sends what share of its events next, in which order. */
const sending = fc.record({ device: fc.constantFrom(0, 1), picks: fc.array(fc.nat(), { minLength: 1, maxLength: 6 }) });

type Device = typeof device extends fc.Arbitrary<infer Value> ? Value : never;
type Told = Omit<TrialEvent, "at"> & { minutes: number };

/** What a device tells: corrections name check-ins of either device. */
function toldBy(devices: readonly Device[]): Told[][] {
  const checkIns = devices.flatMap(({ events }) => events.filter(({ kind }) => kind === "check-in")).map(({ id }) => id);
  return devices.map(({ events, corrections }) => [
    ...(events as Told[]), // the arbitraries above make what these kinds have
    ...(checkIns.length === 0
      ? []
      : (corrections.map((one) => ({ ...one, corrects: checkIns[one.corrects % checkIns.length] })) as Told[])), // as above
  ]);
}

test("the same trial, and each event once", { timeout: 300_000 }, async () => {
  const clinic = await openTestClinic();
  const { socketId } = await readyEpisode(clinic, { until: "fitted" });
  const db = await database();

  await fc.assert(
    fc.asyncProperty(
      fc.tuple(device, device),
      fc.array(sending, { maxLength: 8 }),
      fc.integer({ min: 1, max: 9 }),
      async (devices, sendings, pieces) => {
        const told = toldBy(devices);
        const ids = told.flat().map(({ id }) => id);
        const aside = devices.flatMap((one) => one.unreadable.map(({ id }) => id));
        fc.pre(new Set([...ids, ...aside]).size === ids.length + aside.length);
        const { trialId } = await planWearTrial(clinic.prosthetist, { ...plan, socketId, againWhy: "The socket was altered." });
        const kept = devices.map(({ unreadable: wrong, clockOffMinutes }, index) =>
          [...(told[index] ?? []), ...wrong].map(({ minutes: at, ...event }) => ({
            ...event,
            at: minutesAfter(begin, at + clockOffMinutes),
          })),
        );
        const send = async (index: number, events: object[]) => {
          const sentAt = minutesAfter(today.toISOString(), devices[index]?.clockOffMinutes ?? 0);
          const { received } = await receiveTrialEvents(clinic.assistant, { trialId, sentAt, events });
          expect(received.map(({ id }) => id)).toEqual(events.map((event) => ("id" in event ? event.id : undefined)));
        };
        for (const { device: index, picks } of sendings) {
          const own = kept[index] ?? [];
          await send(
            index,
            picks.flatMap((pick) => own[pick % own.length] ?? []),
          );
        }
        // At last all of it, in pieces, the second device first.
        for (const index of [1, 0]) {
          const own = kept[index] ?? [];
          for (let from = 0; from < own.length; from += pieces) await send(index, own.slice(from, from + pieces));
        }

        const stored = await db.trialEvent.findMany({ where: { trialId }, select: { id: true } });
        expect(stored.map(({ id }) => id).toSorted()).toEqual(ids.toSorted());
        const setAside = await db.setAsideEvent.findMany({ where: { trialId }, select: { id: true } });
        expect(setAside.map(({ id }) => id).toSorted()).toEqual(aside.toSorted());

        const expected = told.flat().map(({ minutes: at, ...event }) => ({
          ...event,
          at: new Date(minutesAfter(begin, at)).toISOString(),
          ...(at < -1000 || at > 45 ? { misdated: true } : {}),
        })) as TrialEvent[]; // as above
        const { bundle } = await seeEpisodeOfTrial(clinic.assistant, trialId);
        const record = bundle.wearTrials.find(({ id }) => id === trialId);
        if (!record) throw new Error("the trial is in its episode");
        const replayed = (events: readonly TrialEvent[]) =>
          JSON.stringify(replayWearTrial(record.plan, events, today.toISOString()));
        expect(replayed(record.events)).toBe(replayed(expected));
        const { state, verdict } = replayWearTrial(record.plan, expected, today.toISOString());
        expect(await db.wearTrial.findUniqueOrThrow({ where: { id: trialId } })).toMatchObject({ state, verdict });
      },
    ),
    runs(25),
  );
});

import "fake-indexeddb/auto";
import { randomUUID } from "node:crypto";
import fc from "fast-check";
import { expect, test } from "vitest";
import type { Became } from "@/app/live/_device/live-trial";
import { sendAll } from "@/app/live/_device/outbox";
import {
  forgetOld,
  forgetSentByAccounts,
  itemsOf,
  type KeptItem,
  type KeptTrial,
  keepItem,
  markItems,
  openStore,
  unsentByAccounts,
} from "@/app/live/_device/store";

let order = 0;
const item = (what: "event" | "look", correctedMs = 0): KeptItem => {
  const id = randomUUID();
  const at = new Date(order).toISOString();
  order += 1;
  const base = { id, trialId: "t", order, correctedMs, state: "to send" as const };
  return what === "event"
    ? { ...base, what, event: { id, at, kind: "paused" } }
    : { ...base, what, look: { id, at, minutesAfterDoffing: 0, marks: [], noMarks: true } };
};

test("things go in the order in which they were pressed: looks alone, events together as far as one clock gave their times", async () => {
  const items = [item("event"), item("event"), item("look"), item("event"), item("event", 500)];
  const batches: string[][] = [];
  const state = await sendAll({
    items,
    send: async (batch) => {
      batches.push(batch.map(({ id }) => id));
      return { answer: { received: batch.map(({ id }) => ({ id, became: "stored" as const })) } };
    },
    heard: async () => undefined,
  });
  expect(state).toBe("all sent");
  expect(batches.map(({ length }) => length)).toEqual([2, 1, 1, 1]);
  expect(batches.flat()).toEqual(items.map(({ id }) => id));
});

test("whatever the network does, all that is acknowledged is stored, and all that is not is still there", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.constantFrom("event" as const, "look" as const), { minLength: 1, maxLength: 30 }),
      fc.array(fc.constantFrom("fine", "lost before", "lost after", "too much"), { minLength: 1, maxLength: 40 }),
      async (kinds, network) => {
        const server = new Set<string>();
        let left = kinds.map((kind) => item(kind));
        const all = left.map(({ id }) => id);
        let turn = 0;
        const send = async (batch: readonly KeptItem[]) => {
          const luck = network[turn] ?? "fine";
          turn += 1;
          if (luck === "lost before") return { failed: "offline" as const, why: "" };
          if (luck === "too much" && batch.length > 1) return { failed: "refused" as const, why: "" };
          const received: Became[] = batch.map(({ id }) => ({ id, became: server.has(id) ? "known" : "stored" }));
          for (const { id } of batch) server.add(id);
          return luck === "lost after" ? { failed: "offline" as const, why: "" } : { answer: { received } };
        };
        const heard = async (answers: readonly Became[]) => {
          const named = new Set(answers.map(({ id }) => id));
          for (const id of named) expect(server.has(id)).toBe(true);
          left = left.filter(({ id }) => !named.has(id));
        };
        for (let round = 0; left.length > 0 && round < 200; round += 1) await sendAll({ items: left, send, heard });
        expect(left).toEqual([]);
        expect([...server].sort()).toEqual([...all].sort());
      },
    ),
    { numRuns: 200 },
  );
});

test("what the server will never take stays, and does not hold up the others", async () => {
  const items = [item("event"), item("event"), item("event")];
  const [, bad] = items;
  const named: string[] = [];
  const state = await sendAll({
    items,
    send: async (batch) =>
      batch.some((one) => one === bad)
        ? { failed: "refused", why: "no" }
        : { answer: { received: batch.map(({ id }) => ({ id, became: "stored" as const })) } },
    heard: async (answers) => void named.push(...answers.map(({ id }) => id)),
  });
  expect(state).toBe("refused");
  expect(named).toEqual([items[0]?.id, items[2]?.id]);
});

test("the device keeps what is pressed until it hears what became of it", async () => {
  const db = await openStore(`test ${randomUUID()}`);
  const [first, second] = [item("event"), item("event")];
  await keepItem(db, second);
  await keepItem(db, first);
  expect((await itemsOf(db, "t")).map(({ id }) => id)).toEqual([first.id, second.id]);
  await markItems(db, [
    { id: first.id, became: "stored" },
    { id: randomUUID(), became: "stored" },
  ]);
  expect((await itemsOf(db, "t")).map(({ state }) => state)).toEqual(["sent", "to send"]);
  await markItems(db, [{ id: second.id, became: "set aside", why: "locked" }]);
  expect((await itemsOf(db, "t"))[1]).toMatchObject({ state: "set aside", why: "locked" });
  db.close();
});

test("who signs out leaves only what is still to be sent; a wearer's own trial stays until it is old", async () => {
  const db = await openStore(`test ${randomUUID()}`);
  const keep = (trialId: string, more: Partial<KeptTrial> = {}) => db.put("trials", { trialId, keptAt: 0, ...more } as KeptTrial); // only what is asked for
  await keep("sent");
  await keep("unsent");
  await keep("own", { pass: "p" });
  await keepItem(db, { ...item("event"), trialId: "sent", state: "sent" });
  const waiting = { ...item("event"), trialId: "unsent" };
  await keepItem(db, waiting);
  await keepItem(db, { ...item("event"), trialId: "own", state: "sent" });
  await forgetSentByAccounts(db);
  expect(await db.getAllKeys("trials")).toEqual(["own", "unsent"]);
  expect(await itemsOf(db, "sent")).toEqual([]);
  expect(await unsentByAccounts(db)).toBe(1);
  await forgetOld(db, 6 * 24 * 3600_000);
  expect(await db.getAllKeys("trials")).toEqual(["own", "unsent"]);
  await forgetOld(db, 8 * 24 * 3600_000);
  expect(await db.getAllKeys("trials")).toEqual(["unsent"]);
  expect(await itemsOf(db, "unsent")).toEqual([waiting]);
  db.close();
});

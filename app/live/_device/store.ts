/** What the device keeps: the trials that were opened on it, and everything that was pressed until the server has it. */
import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { TrialEvent } from "@/lib/fit/bundle";
import type { KeptClock } from "./clock";
import type { Became, LiveTrial, SentLook } from "./live-trial";

export type KeptItem = {
  id: string;
  trialId: string;
  /** The order in which they were pressed. */
  order: number;
  /** By how much the device's clock had been put right when it gave the time. */
  correctedMs: number;
  /** "to send" until the server says what became of it. */
  state: "to send" | "sent" | "set aside";
  why?: string;
} & ({ what: "event"; event: TrialEvent } | { what: "look"; look: SentLook });

export interface KeptTrial extends LiveTrial {
  /** The wearer's own link, opened on this device. */
  pass?: string;
  keptAt: number;
}

interface Schema extends DBSchema {
  trials: { key: string; value: KeptTrial };
  items: { key: string; value: KeptItem; indexes: { trialId: string } };
  clock: { key: "clock"; value: KeptClock };
  /** The trial that a wearer's link opened here, by its token. */
  links: { key: string; value: { trialId: string; pass: string } };
}

export type DeviceStore = IDBPDatabase<Schema>;

/** What is done and sent goes from the device after so long. */
const keepsMs = 7 * 24 * 3600_000;

/** @throws DOMException where this browser keeps nothing for this page */
export const openStore = async (name = "fitting-ledger-live"): Promise<DeviceStore> =>
  openDB<Schema>(name, 1, {
    upgrade: (db) => {
      db.createObjectStore("trials", { keyPath: "trialId" });
      db.createObjectStore("items", { keyPath: "id" }).createIndex("trialId", "trialId");
      db.createObjectStore("clock");
      db.createObjectStore("links");
    },
  });

/** Kept for good once this resolves: the browser has written it, not only promised to. */
export async function keepItem(db: DeviceStore, item: KeptItem): Promise<void> {
  const transaction = db.transaction("items", "readwrite", { durability: "strict" });
  await Promise.all([transaction.store.put(item), transaction.done]);
}

export async function itemsOf(db: DeviceStore, trialId: string): Promise<KeptItem[]> {
  return (await db.getAllFromIndex("items", "trialId", trialId)).sort((a, b) => a.order - b.order);
}

/** Writes what the server said. What it does not name stays to be sent. */
export async function markItems(db: DeviceStore, answers: readonly Became[]): Promise<void> {
  const transaction = db.transaction("items", "readwrite");
  for (const { id, became, why } of answers) {
    const item = await transaction.store.get(id);
    if (!item) continue;
    await transaction.store.put({
      ...item,
      state: became === "set aside" ? "set aside" : "sent",
      ...(why === undefined ? {} : { why }),
    });
  }
  await transaction.done;
}

/** What other trials left here, where nothing of it is still to be sent. */
export async function forgetOld(db: DeviceStore, now: number): Promise<void> {
  for (const trial of await db.getAll("trials")) {
    if (now - trial.keptAt >= keepsMs && (await unsentOf(db, trial.trialId)) === 0) await forget(db, trial.trialId);
  }
}

/** How much of trials that were opened with an account is still to be sent from here. */
export async function unsentByAccounts(db: DeviceStore): Promise<number> {
  const unsent = await Promise.all((await byAccounts(db)).map(({ trialId }) => unsentOf(db, trialId)));
  return unsent.reduce((sum, count) => sum + count, 0);
}

/** Who signs out leaves nothing behind of which the server has all; what is still to be sent stays until it is. */
export async function forgetSentByAccounts(db: DeviceStore): Promise<void> {
  for (const { trialId } of await byAccounts(db)) if ((await unsentOf(db, trialId)) === 0) await forget(db, trialId);
}

const byAccounts = async (db: DeviceStore): Promise<KeptTrial[]> =>
  (await db.getAll("trials")).filter(({ pass }) => pass === undefined);

const unsentOf = async (db: DeviceStore, trialId: string): Promise<number> =>
  (await itemsOf(db, trialId)).filter(({ state }) => state === "to send").length;

async function forget(db: DeviceStore, trialId: string): Promise<void> {
  for (const { id } of await itemsOf(db, trialId)) await db.delete("items", id);
  await db.delete("trials", trialId);
}

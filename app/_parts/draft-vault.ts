/**
 * Drafts a second time, in IndexedDB with strict durability.
 *
 * A browser writes localStorage to the disk seconds late: a tab may die and nothing is lost, but where the whole browser
 * is killed, or the battery is empty, the last of it is gone. What is here is on the disk when the write is done. It
 * takes a moment to be read, so that localStorage is asked first.
 *
 * Nothing here throws: where IndexedDB is missing, localStorage alone has to do.
 */
import { isDraftBy, isDraftName, nameInStore, readDraft, readGone, writeGone } from "./draft-record";

const [databaseName, storeName] = ["fitting-ledger drafts", "drafts"];

/** The newest of each name that is not written yet; a slow disk is not asked for what is out of date already. */
const waiting = new Map<string, string>();
let writing: Promise<void> | undefined;

export function keepInVault(key: string, text: string): void {
  waiting.set(nameInStore(key), text);
  writing ??= writeWaiting().finally(() => {
    writing = undefined;
  });
}

/** Remembers when it went, so that an older copy that comes to light after a crash is not taken for a draft. */
export async function dropFromVault(key: string, now: number): Promise<void> {
  keepInVault(key, writeGone(now));
  await writing;
}

export async function readVault(key: string): Promise<string | undefined> {
  const found: unknown = await asked("readonly", (store) => store.get(nameInStore(key)));
  return typeof found === "string" ? found : undefined;
}

/** The drafts of an account go, and what is too old of anybody. */
export async function clearVault(now: number, accountId?: string): Promise<void> {
  const names = (await asked("readonly", (store) => store.getAllKeys())) ?? [];
  for (const name of names) {
    if (typeof name !== "string" || !isDraftName(name)) continue;
    const text: unknown = await asked("readonly", (store) => store.get(name));
    const isKnown = typeof text === "string" && (readDraft(text, now) ?? readGone(text, now)) !== undefined;
    if (!isKnown) await asked("readwrite", (store) => store.delete(name));
    else if (accountId !== undefined && isDraftBy(name, accountId))
      await asked("readwrite", (store) => store.put(writeGone(now), name));
  }
}

async function writeWaiting(): Promise<void> {
  while (waiting.size > 0) {
    const entries = [...waiting];
    waiting.clear();
    await asked("readwrite", (store) => {
      for (const [name, text] of entries) store.put(text, name);
      return undefined;
    });
  }
}

async function asked<Result>(
  mode: IDBTransactionMode,
  ask: (store: IDBObjectStore) => IDBRequest<Result> | undefined,
): Promise<Result | undefined> {
  try {
    const database = await open();
    const transaction = database.transaction(storeName, mode, { durability: "strict" });
    const request = ask(transaction.objectStore(storeName));
    await new Promise<void>((done, failed) => {
      transaction.oncomplete = () => done();
      transaction.onabort = () => failed(transaction.error);
    });
    return request ? request.result : undefined;
  } catch {
    return undefined;
  }
}

let opened: Promise<IDBDatabase> | undefined;

function open(): Promise<IDBDatabase> {
  opened ??= new Promise<IDBDatabase>((done, failed) => {
    const request = indexedDB.open(databaseName, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(storeName);
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error);
  }).catch((error: unknown) => {
    opened = undefined;
    throw error;
  });
  return opened;
}

/** Drafts in localStorage: written before the next key, there after a tab has died. A store may refuse. */
import { type Draft, isDraftBy, isDraftName, nameInStore, readDraft, writeDraft } from "./draft-record";

/** What is used of the browser's `Storage`. */
export type TextStore = Pick<Storage, "getItem" | "setItem" | "removeItem" | "key" | "length">;

/** Why a draft is not on the device. */
export type Refused = "full" | "forbidden";

/** Nothing where the browser lets this page keep nothing: even asking for the store may throw. */
export function deviceStore(): TextStore | undefined {
  try {
    return window.localStorage;
  } catch {
    return undefined;
  }
}

export function loadDraft(store: TextStore | undefined, key: string, now: number): Draft | undefined {
  try {
    return readDraft(store?.getItem(nameInStore(key)) ?? null, now);
  } catch {
    return undefined;
  }
}

/** Says why it could not be kept; nothing where it is kept. */
export function keepDraft(store: TextStore | undefined, key: string, draft: Draft): Refused | undefined {
  if (!store) return "forbidden";
  try {
    store.setItem(nameInStore(key), writeDraft(draft));
    return undefined;
  } catch (error) {
    return error instanceof DOMException && error.name === "QuotaExceededError" ? "full" : "forbidden";
  }
}

export function dropDraft(store: TextStore | undefined, key: string): void {
  dropNames(store, [nameInStore(key)]);
}

/** What an account has not saved on this device, the newest first. */
export function draftsBy(store: TextStore | undefined, accountId: string, now: number): Draft[] {
  return names(store)
    .filter((name) => isDraftBy(name, accountId))
    .flatMap((name) => readDraft(store?.getItem(name) ?? null, now) ?? [])
    .sort((a, b) => b.keptAt - a.keptAt);
}

export function dropDraftsBy(store: TextStore | undefined, accountId: string): void {
  dropNames(
    store,
    names(store).filter((name) => isDraftBy(name, accountId)),
  );
}

/** Whoever wrote them: what is too old, or cannot be read, goes. */
export function dropOldDrafts(store: TextStore | undefined, now: number): void {
  dropNames(
    store,
    names(store).filter((name) => isDraftName(name) && readDraft(store?.getItem(name) ?? null, now) === undefined),
  );
}

function names(store: TextStore | undefined): string[] {
  try {
    return Array.from({ length: store?.length ?? 0 }, (_, position) => store?.key(position) ?? "");
  } catch {
    return [];
  }
}

function dropNames(store: TextStore | undefined, names: readonly string[]): void {
  try {
    for (const name of names) store?.removeItem(name);
  } catch {
    // A store that refuses to forget refuses to remember as well.
  }
}

const tabName = "fitting-ledger tab";

/** Names this tab for as long as it lives; a reload does not change it. */
export function thisTab(): string {
  const made = newUuid();
  try {
    const known = window.sessionStorage.getItem(tabName);
    if (known) return known;
    window.sessionStorage.setItem(tabName, made);
  } catch {
    // Then every page is a tab of its own.
  }
  return made;
}

/** `crypto.randomUUID` is missing where a clinic's server is reached without https. */
export function newUuid(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  const hex = Array.from(bytes, (byte, position) => {
    const set = position === 6 ? (byte & 0x0f) | 0x40 : position === 8 ? (byte & 0x3f) | 0x80 : byte;
    return set.toString(16).padStart(2, "0");
  }).join("");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}

/** What a draft is and how it lies on the device. Pure: the browser's store is in `draft-store.ts`. */
import type { FormValues } from "./form-state";

export interface Draft {
  values: FormValues;
  /** Milliseconds since 1970, by the device's clock. */
  keptAt: number;
  /** Which tab kept it. */
  tab: string;
  /** Where its form is, and what the form is called: no name of a person. */
  path: string;
  title: string;
}

/** Older drafts are dropped: a clinic's device is no archive. */
export const draftDays = 7;
const dayMs = 24 * 60 * 60 * 1000;

const prefix = "fitting-ledger draft: ";

/**
 * The `draft` of an `ActionForm`: what is written, of which record, by which account. Nobody else finds it.
 *
 * @example draftKey("fitting", "socket-3", "account-1") // => "fitting of socket-3 by account-1"
 */
export const draftKey = (what: string, recordId: string, accountId: string): string => `${what} of ${recordId} by ${accountId}`;

export const nameInStore = (key: string): string => prefix + key;
export const isDraftName = (name: string): boolean => name.startsWith(prefix);
export const isDraftBy = (name: string, accountId: string): boolean => isDraftName(name) && name.endsWith(` by ${accountId}`);

const version = 1;

export const writeDraft = (draft: Draft): string => JSON.stringify({ version, ...draft });

/** Nothing where it is too old, from the future, or not one of ours. */
export function readDraft(text: string | null, now: number): Draft | undefined {
  if (text === null) return undefined;
  let read: unknown;
  try {
    read = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (!isDraft(read) || isOld(read.keptAt, now)) return undefined;
  const { values, keptAt, tab, path, title } = read;
  return { values, keptAt, tab, path, title };
}

/** A clock that was set back by a day does not cost anybody a draft. */
const isOld = (at: number, now: number): boolean => now - at > draftDays * dayMs || now - at < -dayMs;

/** Left where a draft was saved or discarded: what was kept before that is none any more. */
export const writeGone = (now: number): string => JSON.stringify({ version, goneAt: now });

export function readGone(text: string | undefined, now: number): number | undefined {
  const [, at] = /^\{"version":1,"goneAt":(\d+)\}$/.exec(text ?? "") ?? [];
  return at === undefined || isOld(Number(at), now) ? undefined : Number(at);
}

function isDraft(read: unknown): read is Draft {
  if (typeof read !== "object" || read === null) return false;
  const draft = read as Record<string, unknown>; // any object may be asked for its properties
  return (
    draft.version === version &&
    typeof draft.keptAt === "number" &&
    ["tab", "path", "title"].every((name) => typeof draft[name] === "string") &&
    typeof draft.values === "object" &&
    draft.values !== null &&
    Object.values(draft.values).every(
      (value) => typeof value === "string" || (Array.isArray(value) && value.every((one) => typeof one === "string")),
    )
  );
}

/** The draft with what was typed since laid over it: an emptied or unticked field stays so. */
export const laidOver = (kept: FormValues, typed: FormValues, names: readonly string[]): FormValues =>
  Object.fromEntries([
    ...Object.entries(kept).filter(([name]) => !names.includes(name)),
    ...Object.entries(typed).filter(([name]) => names.includes(name)),
  ]);

export const sameValues = (a: FormValues, b: FormValues): boolean => {
  const names = Object.keys(a);
  return (
    names.length === Object.keys(b).length &&
    names.every(
      (name) =>
        Object.hasOwn(b, name) && String(a[name]) === String(b[name]) && Array.isArray(a[name]) === Array.isArray(b[name]),
    )
  );
};

/** "10:42", or "10:42 on 3 October" where that was another day, by the device's own clock. */
export function keptWhen(keptAt: number, now: number): string {
  const at = new Date(keptAt);
  const time = at.toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });
  return at.toDateString() === new Date(now).toDateString()
    ? time
    : `${time} on ${at.toLocaleDateString("en-GB", { day: "numeric", month: "long" })}`;
}

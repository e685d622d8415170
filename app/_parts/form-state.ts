/** What a form knows between two tries, and how its text becomes the input of a command. */

import type { ChangedMeanwhile, Refusal } from "@/lib/records/refusals";
import type { ScannableCode } from "./scannable-code";

/** What a person typed, by the name of the field; several where a name was ticked more than once. */
export type FormValues = Record<string, string | string[]>;

export interface FormState {
  values: FormValues;
  /** By the name of the field, as `stations.0.distanceMm`; under "" what belongs to no field. */
  errors: Record<string, string>;
  /** Values that were asked about; they go back with the next try, and are not asked about again. */
  asked?: readonly string[];
  /** Above the errors: what happened, what was kept, what to do. */
  message?: string;
  /** The session has ended: the message comes with the way to sign in again in another tab. */
  signIn?: boolean;
  /** Said after a save that stays on the page; the fields then start afresh. */
  saved?: string;
  /** What was made and is kept nowhere: this answer is the only time that it is seen. */
  shownOnce?: ShownOnce;
  /** Someone else saved in between: both versions, and the version to send with the next try. */
  changed?: { version: number; fields: readonly { label: string; theirs: string; yours: string }[] };
}

export interface ShownOnce {
  /** The record that it belongs to. */
  id: string;
  address: string;
  code: ScannableCode;
}

export type FormAction = (state: FormState, formData: FormData) => Promise<FormState>;

export const untouched: FormState = { values: {}, errors: {} };

/**
 * What the fields hold when they are begun anew: a draft, or what the page gave where there is none, under the id of the
 * record that the form now makes.
 *
 * @example begunAnew({}, { id: "a", pain: "4" }, "b") // => { id: "b", pain: "4" }
 */
export function begunAnew(draft: FormValues, fromPage: FormValues = {}, newRecordId?: string): FormValues {
  if (Object.keys(draft).length > 0) return draft;
  return "id" in fromPage && newRecordId !== undefined ? { ...fromPage, id: newRecordId } : fromPage;
}

/** What was typed, as it goes back into the fields. Files and the fields that React adds are left out. */
export function valuesOf(formData: FormData): FormValues {
  const values: FormValues = {};
  for (const [name, value] of formData) {
    if (typeof value !== "string" || name.startsWith("$ACTION")) continue;
    const before = values[name];
    values[name] = before === undefined ? value : [...(Array.isArray(before) ? before : [before]), value];
  }
  return values;
}

type Nested = string | string[] | Nested[] | { [key: string]: Nested };
type Branch = Map<string, Branch | string | string[]>;

/**
 * The input of a command from the names of the fields: `stations.3.distanceMm` becomes a row of `stations`.
 *
 * Rows keep their order; rows that were left free are dropped. `nameOf` leads from the path of an error in that input
 * back to the field where it was typed.
 *
 * @example
 * inputOf({ "stations.1.distanceMm": "", "stations.4.distanceMm": "40" }).input  // => { stations: [{ distanceMm: "40" }] }
 */
export function inputOf(values: FormValues): { input: { [key: string]: Nested }; nameOf: (path: string) => string } {
  const root: Branch = new Map();
  for (const [name, value] of Object.entries(values)) plant(root, name.split("."), value);
  const names = new Map<string, string>();
  const input = Object.fromEntries([...root].map(([key, value]) => [key, grow(value, key, key, names)]));
  return { input, nameOf: (path) => nearest(path, names) };
}

function plant(branch: Branch, [key, ...rest]: readonly string[], value: string | string[]): void {
  if (key === undefined) return;
  if (rest.length === 0) {
    branch.set(key, value);
    return;
  }
  const next = branch.get(key);
  const child: Branch = next instanceof Map ? next : new Map();
  branch.set(key, child);
  plant(child, rest, value);
}

function grow(node: Branch | string | string[], path: string, name: string, names: Map<string, string>): Nested {
  names.set(path, name);
  if (!(node instanceof Map)) return node;
  if (![...node.keys()].every((key) => /^\d+$/.test(key)))
    return Object.fromEntries([...node].map(([key, value]) => [key, grow(value, `${path}.${key}`, `${name}.${key}`, names)]));
  return [...node]
    .filter(([, row]) => !isBlank(row))
    .sort(([a], [b]) => Number(a) - Number(b))
    .map(([key, row], position) => grow(row, `${path}.${position}`, `${name}.${key}`, names));
}

/** The id that travels with a row does not make it filled: a row that a person emptied is left out. */
const isBlank = (node: Branch | string | string[]): boolean =>
  node instanceof Map
    ? [...node].every(([key, value]) => /^id$|Id$/.test(key) || isBlank(value))
    : Array.isArray(node)
      ? node.every(isBlank)
      : node.trim() === "";

/** An error may name a field that sent nothing, such as a box that was not ticked: its row is still found. */
function nearest(path: string, names: ReadonlyMap<string, string>): string {
  const parts = path.split(".");
  for (let length = parts.length; length > 0; length -= 1) {
    const known = names.get(parts.slice(0, length).join("."));
    if (known !== undefined) return [known, ...parts.slice(length)].join(".");
  }
  return path;
}

/** The state after a refusal: everything typed is still there, each error beside its field. */
export function refusedState(values: FormValues, refusal: Refusal, labels: Readonly<Record<string, string>> = {}): FormState {
  const { nameOf } = inputOf(values);
  const fields = "fields" in refusal ? Object.entries(refusal.fields as Record<string, string>) : []; // only InputRefused and AskedAbout have `fields`
  return {
    // Only AskedAbout has `asked`. A refusal of something else forgets nothing that was answered before.
    ...("asked" in refusal
      ? { asked: refusal.asked as readonly string[] }
      : values.confirmed === undefined
        ? {}
        : { asked: [values.confirmed].flat() }),
    values: "version" in refusal ? { ...values, version: String((refusal as ChangedMeanwhile).version) } : values,
    errors: Object.fromEntries(fields.map(([path, message]) => [nameOf(path), message])),
    message: refusal.tell,
    ...("theirs" in refusal ? { changed: bothVersions(values, refusal as ChangedMeanwhile, labels) } : {}),
  };
}

function bothVersions(values: FormValues, { theirs, version }: ChangedMeanwhile, labels: Readonly<Record<string, string>>) {
  const fields = Object.entries(labels)
    .map(([name, label]) => ({ label, theirs: asText(theirs[name]), yours: asText(values[name]) }))
    .filter(({ theirs, yours }) => theirs !== yours);
  return { version, fields };
}

function asText(value: unknown): string {
  if (value === undefined || value === null) return "";
  if (Array.isArray(value)) return value.map(asText).join(", ");
  if (value instanceof Date) return value.toISOString();
  return String(value);
}

/** What a form sends, as the nested values that a command reads: `stations.0.distanceMm` becomes stations[0].distanceMm. */
import { fromClinicTime } from "@/lib/records/clinic-time";

export type TypedValues = Record<string, string | string[]>;

/** The fields as they were typed, to fill the form again: no passwords, rows that were left free closed up. */
export function typedValues(form: FormData): TypedValues {
  const fields = fieldsOf(form);
  return Object.fromEntries([...fields].filter(([name]) => !/password/i.test(name)));
}

/** The fields as nested values, with times of the clinic's zone turned into instants. */
export function fromForm(form: FormData, timeZone: string): Record<string, unknown> {
  const root: Nested = {};
  for (const [name, value] of fieldsOf(form)) {
    put(root, name.split("."), typeof value === "string" ? fromClinicTime(value, timeZone) : value);
  }
  return withLists(root) as Record<string, unknown>; // the root is never a list: field names begin with a word
}

/** Field names that belong to the frame of a form, not to the record, begin with $ or _. */
const isOurs = (name: string) => !name.startsWith("$") && !name.startsWith("_");
const row = /^(.+?)\.(\d{1,3})\.(.+)$/;

/** One value a name, or several where boxes share it; in lists the rows with nothing in them are left out. */
function fieldsOf(form: FormData): Map<string, string | string[]> {
  const names = [...new Set([...form.keys()].filter(isOurs))];
  const all = new Map(names.map((name) => [name, form.getAll(name).filter((value) => typeof value === "string")]));
  const numbers = new Map<string, Map<string, number>>();
  for (const [name, values] of all) {
    const [, list, index] = row.exec(name) ?? [];
    if (list === undefined || index === undefined || values.every((value) => value.trim() === "")) continue;
    const used = numbers.get(list) ?? new Map<string, number>();
    if (!used.has(index)) used.set(index, used.size);
    numbers.set(list, used);
  }
  const fields = new Map<string, string | string[]>();
  for (const [name, values] of all) {
    const [, list, index, rest] = row.exec(name) ?? [];
    const number = list === undefined || index === undefined ? undefined : numbers.get(list)?.get(index);
    if (list !== undefined && number === undefined) continue;
    const [only, ...more] = values;
    if (only !== undefined) fields.set(list === undefined ? name : `${list}.${number}.${rest}`, more.length === 0 ? only : values);
  }
  return fields;
}

type Nested = { [key: string]: Nested | string | string[] };

function put(into: Nested, [head = "", ...rest]: string[], value: string | string[]): void {
  if (rest.length === 0) {
    into[head] = value;
    return;
  }
  const inner = into[head];
  const next: Nested = typeof inner === "object" && !Array.isArray(inner) ? inner : {};
  into[head] = next;
  put(next, rest, value);
}

/** Objects whose keys are all numbers are the rows of a list. */
function withLists(value: Nested | string | string[]): unknown {
  if (typeof value === "string" || Array.isArray(value)) return value;
  const entries = Object.entries(value).map(([key, inner]) => [key, withLists(inner)] as const);
  return entries.length > 0 && entries.every(([key]) => /^\d{1,3}$/.test(key)) ? entries.map(([, inner]) => inner) : Object.fromEntries(entries);
}

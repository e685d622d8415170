/** The rows of a list as they stand in the fields now, in their order. */
import type { FormValues } from "./form-state";

export interface TypedRow {
  row: number;
  /** What stands in the fields of the row, by their names. */
  fields: Readonly<Record<string, string>>;
}

/** @example typedRows({ "pulls.2.loadN": "45" }, "pulls") // => [{ row: 2, fields: { loadN: "45" } }] */
export function typedRows(values: FormValues, list: string): TypedRow[] {
  const rows = new Map<number, Record<string, string>>();
  for (const [name, value] of Object.entries(values)) {
    const [, number, field] = name.startsWith(`${list}.`) ? (/^(\d+)\.([^.]+)$/.exec(name.slice(list.length + 1)) ?? []) : [];
    if (number === undefined || field === undefined || typeof value !== "string") continue;
    rows.set(Number(number), { ...rows.get(Number(number)), [field]: value });
  }
  return [...rows].sort(([a], [b]) => a - b).map(([row, fields]) => ({ row, fields }));
}

/** An angle as people type it: "131", "131°", "−5,5". Nothing where it is no number. */
export function typedAngle(text: string | undefined): number | undefined {
  const written = (text ?? "")
    .trim()
    .replace(/\s*(?:°|deg)$/, "")
    .replace("−", "-")
    .replace(",", ".");
  return /^[-+]?\d+(?:\.\d+)?$/.test(written) ? Number(written) : undefined;
}

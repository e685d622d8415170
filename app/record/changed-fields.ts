/** What an entry changed, field by field, from the JSON that is kept before and after. */
import { dayAndTimeAt } from "@/app/_parts/dates";

export interface ChangedField {
  field: string;
  /** Undefined where nothing was noted of it. */
  before: string | undefined;
  after: string | undefined;
}

interface Values {
  before: string | null;
  after: string | null;
}

/** Fields that are the same before and after are left out. */
export function changedFields({ before, after }: Values, timeZone: string): ChangedField[] {
  const [was, is] = [leavesOf(before), leavesOf(after)];
  return [...new Set([...was.keys(), ...is.keys()])]
    .filter((path) => !was.has(path) || !is.has(path) || !Object.is(was.get(path), is.get(path)))
    .map((path) => ({
      field: path === "" ? "value" : path.split("/").map(fieldWords).join(", "),
      before: was.has(path) ? valueWords(was.get(path), timeZone) : undefined,
      after: is.has(path) ? valueWords(is.get(path), timeZone) : undefined,
    }));
}

/** Text and numbers by the way that leads to them: "stations/2/distanceMm". */
function leavesOf(json: string | null): Map<string, unknown> {
  const leaves = new Map<string, unknown>();
  if (json !== null) collect(leaves, "", JSON.parse(json));
  return leaves;
}

function collect(leaves: Map<string, unknown>, path: string, value: unknown): void {
  const parts = Array.isArray(value)
    ? value.map((part, index) => [String(index + 1), part] as const)
    : typeof value === "object" && value !== null
      ? Object.entries(value)
      : [];
  if (parts.length === 0) leaves.set(path, Array.isArray(value) ? "none" : value);
  for (const [name, part] of parts) collect(leaves, path === "" ? name : `${path}/${name}`, part);
}

/** @example fieldWords("circumferenceMm") // => "circumference mm" */
const fieldWords = (name: string): string => name.replace(/([a-z\d])([A-Z])/g, "$1 $2").toLowerCase();

const instant = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$/;

function valueWords(value: unknown, timeZone: string): string {
  if (value === null || value === "" || typeof value === "object") return "nothing";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string" && instant.test(value)) return dayAndTimeAt(value, timeZone);
  return String(value);
}

/** How a value stands on a page: rounded to what a reader can follow, and still what the code gave. */

const significantDigits = 6;
const widest = 100;

/** A number with six significant digits, without zeros that say nothing. */
export function rounded(value: number): number {
  return Number.isFinite(value) ? Number(value.toPrecision(significantDigits)) + 0 : value;
}

/** A value as code would write it: `{ volumeMl: 545.477 }`. Over several lines where one is too long. */
export function asCode(value: unknown): string {
  if (typeof value === "number") return String(rounded(value));
  if (typeof value !== "object" || value === null) return JSON.stringify(value) ?? String(value);
  const [open, close, parts] = Array.isArray(value)
    ? ["[", "]", value.map((item) => asCode(item))]
    : ["{ ", " }", Object.entries(value).map(([name, item]) => `${keyAsCode(name)}: ${asCode(item)}`)];
  if (parts.length === 0) return `${open}${close}`.replaceAll(" ", "");
  const line = `${open}${parts.join(", ")}${close}`;
  if (line.length <= widest && !line.includes("\n")) return line;
  return [open.trim(), ...parts.map((part) => `${indented(part)},`), close.trim()].join("\n");
}

const keyAsCode = (name: string): string => (/^[A-Za-z_$][\w$]*$/.test(name) ? name : JSON.stringify(name));
const indented = (text: string): string => text.replace(/^/gm, "  ");

/** A value as a sentence has it: a number with a true minus sign, a text as it is. */
export function asProse(value: unknown): string {
  if (typeof value === "string") return value;
  if (typeof value === "number") return String(rounded(value)).replace("-", "−");
  return asCode(value);
}

/** A Markdown table of texts; what would break a cell is made harmless. */
export function tableOf(head: readonly string[], rows: readonly (readonly unknown[])[]): string {
  const row = (cells: readonly unknown[]) => `| ${cells.map((cell) => cellOf(cell)).join(" | ")} |`;
  return [row(head), `|${head.map(() => "---").join("|")}|`, ...rows.map(row)].join("\n");
}

const cellOf = (value: unknown): string =>
  (value === undefined ? "" : asProse(value)).replaceAll("|", "\\|").replaceAll("\n", " ");

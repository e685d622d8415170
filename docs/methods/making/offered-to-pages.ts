/** What an example on a page may use: everything that the science exports, and a few ways to quote it. */
import { readFileSync } from "node:fs";
import path from "node:path";
import * as fit from "../../../lib/fit";
import { rounded, tableOf } from "./as-written";
import { bundleSchema } from "./bundle-schema";

const ready = path.resolve(import.meta.dirname, "../../../tests/fit/ready-transradial.json");

/** An episode of which the socket is ready, as its file holds it; anew for each page, so that none changes another's. */
export const readyTransradial = (): unknown => JSON.parse(readFileSync(ready, "utf8"));

export const offeredToPages = (): Record<string, unknown> => ({
  ...fit,
  readyTransradial: readyTransradial(),
  citations,
  limitsNamed,
  tableOf,
  beyondTheSchema: bundleSchema().refusals,
});

export const isSourceId = (id: string): id is fit.SourceId => id in fit.sources;

/** Sources in full, as a list. */
export const citations = (...ids: fit.SourceId[]): string => ids.map((id) => `- ${citation(id)}`).join("\n");

/** Its kind first: nobody should take for published what is common practice. */
export function citation(id: fit.SourceId): string {
  const source: fit.Source | undefined = fit.sources[id];
  if (!source) throw new Error(`There is no source ${id}.`);
  return `*${kindInWords[source.kind]}*: ${source.citation}`;
}

const kindInWords: Readonly<Record<fit.SourceKind, string>> = {
  published: "Published",
  "common practice": "Common practice",
  "clinic setting": "Clinic setting",
  "from memory": "From memory, not looked up",
};

/**
 * Some of the limits, as a table.
 *
 * @param written the values that the text of the page speaks of: where one has changed, the text must be read again
 */
export function limitsNamed(written: Partial<Record<fit.LimitId, number>>): string {
  const rows = Object.entries(written).map(([id, value]) => {
    const limit = fit.limitById(fit.defaultLimits, id);
    if (!limit) throw new Error(`There is no limit ${id}.`);
    if (rounded(limit.value) !== value)
      throw new Error(
        `The text was written for ${id} ${value}, and the code has ${limit.value}: change the text, then this figure.`,
      );
    return [`${limit.name} (\`${id}\`)`, settingOf(limit), rangeOf(limit), `${limit.kind}: \`${limit.source}\``];
  });
  return tableOf(["limit", "value", "a clinic may set", "source"], rows);
}

export const settingOf = ({ value, unit }: fit.Limit): string => withUnit(rounded(value), unit);

export const rangeOf = ({ low, high, unit, kind }: fit.Limit): string =>
  kind === "clinic setting" && low < high ? withUnit(`${rounded(low)} to ${rounded(high)}`, unit) : "no";

const withUnit = (figure: number | string, unit: string): string => (unit === "" ? String(figure) : `${figure} ${unit}`);

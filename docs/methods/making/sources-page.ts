/** Every source on one page, by its kind, with what rests on it. */
import { defaultLimits, type SourceId, type SourceKind, sourceKindNames, sources } from "../../../lib/fit";
import { usesBySource } from "./source-uses";
import { writtenByCode } from "./written-by-code";

const meaning: Readonly<Record<SourceKind, string>> = {
  published: "A work that can be looked up. It says nothing of this tool, which was not validated.",
  "common practice": "What practitioners do. There is no source, and none is claimed.",
  "clinic setting": "This tool's own scale or proposal, which a clinic answers for. Not validated.",
  "from memory":
    "A published work that was not at hand: neither the figure nor the place was looked up. Check it before you rely on it.",
};

const headings: Readonly<Record<SourceKind, string>> = {
  published: "Published",
  "common practice": "Common practice",
  "clinic setting": "Clinic setting",
  "from memory": "From memory",
};

export interface WrittenPage {
  name: string;
  text: string;
}

/** @param pages that persons write: each names the sources that it rests on */
export function sourcesPage(pages: readonly WrittenPage[]): string {
  const uses = usesBySource();
  const ids = Object.keys(sources) as SourceId[]; // Object.keys forgets the type of the keys
  const ofKind = (kind: SourceKind) => ids.filter((id) => sources[id].kind === kind);
  const section = (kind: SourceKind) =>
    [`## ${headings[kind]}`, meaning[kind], ...ofKind(kind).map((id) => entry(id, uses.get(id) ?? [], pages))].join("\n\n");
  return `${[
    writtenByCode("lib/fit/sources.ts"),
    "# Sources",
    "Where every limit and method comes from, by how far it can be trusted. Under each: the limits that have it ([all limits](limits.md)), the functions and files of `lib/fit` that name it, and the pages that cite it.",
    ...sourceKindNames.map(section),
  ].join("\n\n")}\n`;
}

function entry(id: SourceId, users: readonly string[], pages: readonly WrittenPage[]): string {
  const limits = defaultLimits.list.filter(({ source }) => source === id).map((limit) => `${limit.name} (\`${limit.id}\`)`);
  const methods = users.map((name) => `\`${name}\``);
  const citing = pages.filter(({ text }) => text.includes(`"${id}"`)).map(({ name }) => `[${name}](${name})`);
  return [
    `### ${id}`,
    "",
    sources[id].citation,
    "",
    ...(limits.length === 0 ? [] : [`- Limits: ${limits.join("; ")}.`]),
    ...(methods.length === 0 ? [] : [`- Methods: ${methods.join(", ")}.`]),
    ...(citing.length === 0 ? [] : [`- Pages: ${citing.join(", ")}.`]),
    ...(limits.length + methods.length === 0 ? ["- No limit and no method names it."] : []),
  ].join("\n");
}

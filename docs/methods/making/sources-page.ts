/** Every source on one page, by its kind, with what rests on it. */
import { defaultLimits, gateIds, type SourceId, type SourceKind, sourceKindNames, sources } from "../../../lib/fit";
import { gateSources } from "./gates-page";
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
  const [methods, gates] = [usesBySource(), gateSources()];
  const ids = Object.keys(sources) as SourceId[]; // Object.keys forgets the type of the keys
  const entry = (id: SourceId): string => {
    const rests: Readonly<Record<string, readonly string[]>> = {
      Limits: defaultLimits.list.filter(({ source }) => source === id).map((limit) => `${limit.name} (\`${limit.id}\`)`),
      Gates: gateIds.filter((gate) => gates.get(gate)?.has(id)).map((gate) => `[${gate}](gates.md#${gate})`),
      Methods: (methods.get(id) ?? []).map((name) => `\`${name}\``),
      Pages: pages.filter(({ text }) => text.includes(`"${id}"`)).map(({ name }) => `[${name}](${name})`),
    };
    const lines = Object.entries(rests).flatMap(([what, names]) =>
      names.length === 0 ? [] : [`- ${what}: ${names.join(", ")}.`],
    );
    return [`### ${id}`, sources[id].citation, lines.length === 0 ? "- Nothing names it." : lines.join("\n")].join("\n\n");
  };
  const section = (kind: SourceKind) =>
    [`## ${headings[kind]}`, meaning[kind], ...ids.filter((id) => sources[id].kind === kind).map(entry)].join("\n\n");
  return `${[
    writtenByCode("lib/fit/sources.ts"),
    "# Sources",
    "Where every limit and method comes from, by how far it can be trusted. Under each: the limits that have it ([all limits](limits.md)), the [gates](gates.md) that give it, the functions and files of `lib/fit` that name it, and the pages that cite it.",
    ...sourceKindNames.map(section),
  ].join("\n\n")}\n`;
}

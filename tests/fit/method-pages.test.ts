/** The pages of the methods say what the code gives: a wrong figure on them misleads whoever checks the science. */
import { existsSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { asCode, asProse, rounded } from "../../docs/methods/making/as-written";
import { gateCases } from "../../docs/methods/making/gate-cases";
import { contentOf, docsFolder, madePages } from "../../docs/methods/making/made-pages";
import { offeredToPages } from "../../docs/methods/making/offered-to-pages";
import { blocksOf, refreshed, resultsOn } from "../../docs/methods/making/worked-examples";
import * as fit from "../../lib/fit";

const files = madePages();

/** One page a part of the science. */
const methodPages = [
  "limb-size",
  "socket-and-limb",
  "load-and-suspension",
  "wear-trial",
  "skin-marks",
  "comparing-sockets",
  "adjustments-here-before",
  "readiness",
  "after-release",
  "caseload",
  "units",
];

/** What others may call by its name: a contract, so written down here by hand. */
const contract = [
  "limbVolume",
  "volumeBetween",
  "tapeErrorFromRepeats",
  "limbChange",
  "hasSettled",
  "forecastVolume",
  "fitByLevel",
  "explainDimensions",
  "proposeDimensions",
  "madeAsSpecified",
  "trialLoad",
  "socketCouple",
  "suspension",
  "motion",
  "replayWearTrial",
  "gradeMark",
  "mapMarks",
  "evenness",
  "pielou",
  "trackMarks",
  "compareSockets",
  "adjustmentEffects",
  "outcomesOfAdjustments",
  "recordOfKind",
  "consider",
  "assessReadiness",
  "nextStep",
  "wearSchedule",
  "kaplanMeier",
  "logRank",
  "wilson",
  "theilSen",
  "mannKendall",
  "geometricMean",
];

describe("each file of the docs that the code writes or fills in", () => {
  it.each(files)("$file says what the code gives", ({ file, made, present }) => {
    expect(present, `docs/${file} differs from what the code gives: run npm run docs`).toBe(made);
  });

  it("is among the pages that are there", () => {
    const names = files.map(({ file }) => file);
    for (const page of [...methodPages, "README", "limits", "sources", "gates", "findings", "fitting-bundle"])
      expect(names).toContain(`methods/${page}.md`);
  });

  it.each(files.filter(({ file }) => file.endsWith(".md")))("$file links to what is there", ({ file, made }) => {
    const links = [...made.matchAll(/\]\((?<to>[^)#\s]+)(?:#[^)]*)?\)/g)].map(({ groups }) => groups?.to ?? "");
    for (const link of links) expect(existsSync(path.join(docsFolder, path.dirname(file), link)), link).toBe(true);
  });
});

describe.each(methodPages)("the page %s", (name) => {
  const page = contentOf(`methods/${name}.md`);

  it("has its parts: what it answers, formula, worked example, what it does not tell, cautions, sources", () => {
    for (const heading of [
      "## What it answers",
      "### Formula",
      "### Worked example",
      "## What it does not tell",
      "## Cautions",
      "## Sources",
    ])
      expect(page.split("\n")).toContain(heading);
  });

  it("has a formula and results for each of its methods", () => {
    const methods = page.split(/^## /m).filter((part) => part.includes("### Formula"));
    expect(methods.length).toBeGreaterThan(0);
    for (const method of methods) {
      const [heading = "", example = ""] = method.split("### Worked example");
      expect(heading, heading).toMatch(/^ {4}\S|^\|/m);
      expect(resultsOn(example), heading).toBeGreaterThan(0);
    }
  });

  it("gives its sources in full, with their kind", () => {
    const sources = page.split("## Sources")[1] ?? "";
    expect(sources).toMatch(/^- \*(?:Published|Common practice|Clinic setting|From memory, not looked up)\*: .+/m);
  });
});

describe("the contract of lib/fit", () => {
  it.each(contract)("%s is exported, named in a heading of a page, and called in one of its examples", (name) => {
    expect(Object.keys(fit)).toContain(name);
    const pages = methodPages.map((page) => contentOf(`methods/${page}.md`));
    const onPage = pages.filter((page) => new RegExp(`^## .*\`${name}\``, "m").test(page));
    expect(onPage).toHaveLength(1);
    expect(blocksOf(onPage[0] ?? "").join("\n")).toMatch(new RegExp(`\\b${name}\\(`));
  });
});

describe("the pages made wholly from code", () => {
  it("have every limit once, with its value, range, levels and source in full", () => {
    const rows = contentOf("methods/limits.md").split("\n");
    for (const { id, name, value, low, high, kind, source, levels } of fit.defaultLimits.list) {
      const [row = "", ...more] = rows.filter((line) => line.includes(`| \`${id}\` |`));
      expect(more, id).toEqual([]);
      expect(row).toContain(`| ${name} |`);
      expect(row).toContain(String(rounded(value)));
      expect(row.includes(`${rounded(low)} to ${rounded(high)}`), id).toBe(kind === "clinic setting" && low < high);
      expect(row).toContain(fit.sources[source].citation);
      expect(row).toContain(`| ${levels?.join(", ") ?? "all"} |`);
    }
    expect(rows.filter((row) => row.startsWith("| "))).toHaveLength(fit.defaultLimits.list.length + 1);
  });

  it("have every source once, under its kind, and no limit without one", () => {
    const parts = contentOf("methods/sources.md").split(/^## /m).slice(1);
    expect(parts.map((part) => (part.split("\n")[0] ?? "").toLowerCase())).toEqual([...fit.sourceKindNames]);
    for (const [id, { kind, citation }] of Object.entries(fit.sources)) {
      const under = parts.filter((part) => part.includes(`### ${id}\n\n${citation}`));
      expect(
        under.map((part) => (part.split("\n")[0] ?? "").toLowerCase()),
        id,
      ).toEqual([kind]);
    }
    for (const { id } of fit.defaultLimits.list) expect(parts.join("").split(`(\`${id}\`)`), id).toHaveLength(2);
  });

  it("have every row of what is considered once, and nothing to adjust where it forbids", () => {
    const entries = contentOf("methods/findings.md").split("\n### ").slice(1);
    for (const { id, forbids, stopWhen, adjustments } of fit.considerations) {
      const [entry = "", ...more] = entries.filter((text) => text.includes(`\n\`${id}\`: `));
      expect(more, id).toEqual([]);
      expect(entry, id).toContain(`**${stopWhen}**`);
      expect(entry.includes("No adjustment is offered."), id).toBe(forbids);
      expect(entry.includes("Considered:"), id).toBe(adjustments.length > 0);
    }
    expect(entries).toHaveLength(fit.considerations.length);
  });

  it("show each gate when it is met and when it is not, and each that can forbid when it forbids", () => {
    const page = contentOf("methods/gates.md");
    const stateOf = (section: string) =>
      [...section.matchAll(/\| \*\*(?<state>[a-z ]+)\*\* \|/g)].map(({ groups }) => groups?.state);
    for (const id of fit.gateIds) {
      const section = page.split(`\n## ${id}\n`)[1]?.split("\n## ")[0] ?? "";
      const states = stateOf(section);
      expect(states[0], id).toBe("met");
      expect(
        states.some((state) => state !== "met"),
        id,
      ).toBe(true);
      expect(states).toHaveLength(1 + gateCases.filter(({ gate }) => gate === id).length);
      // The three of the plan that forbid a release.
      expect(states.includes("forbids"), id).toBe(["pain", "no-stop-sign", "skin-intact"].includes(id));
    }
  });
});

describe("the maker of the pages", () => {
  const page = (result: string) =>
    `# A page\n\n\`\`\`ts\nconst half = 1 / 2; // => ${result}\nhalf * 3\n// => ${result}\n\`\`\`\n\nThat is <!-- = half -->${result}<!-- /= --> of it.\n`;

  it("puts a wrong result right, in blocks and in prose, and leaves a right page as it is", () => {
    const made = refreshed(page("7"), {}, "page");
    expect(made).toBe(
      "# A page\n\n```ts\nconst half = 1 / 2; // => 0.5\nhalf * 3 // => 1.5\n```\n\nThat is <!-- = half -->0.5<!-- /= --> of it.\n",
    );
    expect(refreshed(made, {}, "page")).toBe(made);
  });

  it("writes a long result over several lines, and finds all of them again", () => {
    const made = refreshed("```ts\nArray.from({ length: 60 }, (_, index) => index / 7) // =>\n```\n", {}, "page");
    expect(made.split("\n").length).toBeGreaterThan(60);
    expect(refreshed(made, {}, "page")).toBe(made);
  });

  it("names the page where an example does not run", () => {
    expect(() => refreshed("```ts\nnoSuchMethod(1) // =>\n```\n", {}, "limb-size.md")).toThrow(/limb-size\.md.*noSuchMethod/);
  });

  it("refuses a limit that the text was not written for, and a source that is none", () => {
    const withMarker = (expression: string) => () => refreshed(`<!-- = ${expression} --><!-- /= -->`, offeredToPages(), "page");
    expect(withMarker('limitsNamed({ "fade-minutes": 20 })')).not.toThrow();
    expect(withMarker('limitsNamed({ "fade-minutes": 19 })')).toThrow("written for fade-minutes 19, and the code has 20");
    expect(withMarker('citations("hearsay")')).toThrow("no source hearsay");
  });

  it("says of a source from memory that it was not looked up", () => {
    expect(refreshed('<!-- = citations("goniometer-error") --><!-- /= -->', offeredToPages(), "page")).toContain(
      "*From memory, not looked up*: ",
    );
  });

  it("gives numbers six significant digits, in code with a hyphen and in prose with a minus sign", () => {
    expect(asCode([545.4767123, -1 / 3, 1e-9, 0, -0, null, undefined, "a"])).toBe(
      '[545.477, -0.333333, 1e-9, 0, 0, null, undefined, "a"]',
    );
    expect(asProse(-1.916_3)).toBe("−1.9163");
  });
});

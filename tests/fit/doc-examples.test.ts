/** Runs the examples in the doc comments of the science: an example that is not true misleads whoever reads it. */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";

const folder = path.resolve(import.meta.dirname, "../../lib/fit");
const files = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((file) => file.endsWith(".ts"));

interface Example {
  code: string;
  result: string;
}

/** An example is what stands between `@example` and `// =>`; its result is the rest of that line. */
function examplesIn(source: string): Example[] {
  return source.split(/\n/).reduce<{ found: Example[]; open: string[] | null }>(
    ({ found, open }, line) => {
      const text = line.replace(/^\s*\*\s?/, "");
      if (text.startsWith("@example")) return { found, open: [] };
      const result = /^\/\/ => (?<value>.+)$/.exec(text)?.groups?.value;
      if (open && result !== undefined) return { found: [...found, { code: open.join("\n"), result }], open: [] };
      if (open && /^\s*\*\//.test(line)) return { found, open: null };
      return { found, open: open && [...open, text] };
    },
    { found: [], open: null },
  ).found;
}

/** The value of an expression, with the names that the science exports. */
const evaluated = (expression: string, names: Record<string, unknown>): unknown =>
  new Function(...Object.keys(names), `return (${expression.trim().replace(/;$/, "")});`)(...Object.values(names));

/** A number is as exact as it is written; of an object, what is written must be so. */
function asWritten(expected: unknown): unknown {
  if (typeof expected === "number") return expect.closeTo(expected, String(expected).split(".")[1]?.length ?? 9);
  if (Array.isArray(expected)) return expected.map(asWritten);
  if (typeof expected !== "object" || expected === null) return expected;
  return expect.objectContaining(Object.fromEntries(Object.entries(expected).map(([name, value]) => [name, asWritten(value)])));
}

const documented = files
  .map((file) => ({ file, examples: examplesIn(readFileSync(path.join(folder, file), "utf8")) }))
  .filter(({ examples }) => examples.length > 0);

const modules: Record<string, unknown>[] = await Promise.all(documented.map(({ file }) => import(path.join(folder, file))));
const exported: Record<string, unknown> = Object.assign({}, ...modules);

describe.each(documented)("examples in $file", ({ examples }) => {
  it.each(examples)("$code is $result", ({ code, result }) => {
    expect(evaluated(code, exported)).toEqual(asWritten(evaluated(result, {})));
  });
});

describe("the search for examples", () => {
  it("finds those that are there", () => {
    expect(documented.length).toBeGreaterThanOrEqual(10);
    expect(examplesIn("/**\n * @example\n * one(\n *   2,\n * )\n * // => 3\n */")).toEqual([
      { code: "one(\n  2,\n)", result: "3" },
    ]);
  });
});

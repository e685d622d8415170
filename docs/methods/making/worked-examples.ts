/**
 * Runs the examples on a page and writes their results into it.
 *
 * In a fenced `ts` block a statement is followed, on its line or the next, by `// => result`. In prose a figure stands
 * between `<!-- = expression -->` and `<!-- /= -->`. What an earlier block names, a later one and the prose may use.
 */
import ts from "typescript";
import { asCode, asProse } from "./as-written";

interface Found {
  /** Where on the page the result stands. */
  from: number;
  to: number;
  /** Code that yields the value. */
  code: string;
  write: (value: unknown) => string;
}

/** What has to run before the values are there: the text of the blocks, cut where a value is taken. */
interface PageCode {
  found: Found[];
  /** TypeScript in which `keep(i, value)` is called for every place found. */
  program: string;
}

/**
 * @param names what the examples may use, by name
 * @throws Error that names the page, where an example does not run
 */
export function refreshed(page: string, names: Readonly<Record<string, unknown>>, title: string): string {
  const { found, program } = codeOf(page);
  const written = new Map<number, string>();
  const keep = (index: number, value: unknown) => written.set(index, found[index]?.write(value) ?? "");
  const { outputText } = ts.transpileModule(program, { compilerOptions: { target: ts.ScriptTarget.ES2023 } });
  try {
    // In a block of its own, so that a page may reuse a name that the science exports.
    new Function(...Object.keys(names), "keep", `"use strict"; {\n${outputText}\n}`)(...Object.values(names), keep);
  } catch (error) {
    throw new Error(`An example of ${title} does not run: ${error instanceof Error ? error.message : String(error)}`);
  }
  return found
    .map((place, index) => ({ ...place, text: written.get(index) ?? "" }))
    .sort((a, b) => b.from - a.from)
    .reduce((text, { from, to, text: result }) => text.slice(0, from) + result + text.slice(to), page);
}

/** How many results a page has, in blocks and in prose. */
export const resultsOn = (page: string): number => codeOf(page).found.length;

/** The code of all blocks of a page, for whoever asks what it calls. */
export const blocksOf = (page: string): string[] => [...page.matchAll(block)].map(({ groups }) => groups?.code ?? "");

const widestLine = 110;
const block = /^```ts\n(?<code>[\s\S]*?)^```$/gm;
const figureInProse = /(?<open><!-- = (?<code>[\s\S]*?) -->)(?<result>[\s\S]*?)<!-- \/= -->/g;

function codeOf(page: string): PageCode {
  const found: Found[] = [];
  const program: string[] = [];
  for (const { index, groups } of page.matchAll(block)) {
    const code = groups?.code ?? "";
    const start = index + "```ts\n".length;
    for (const { text, result } of statementsIn(code)) {
      program.push(text);
      if (!result) continue;
      program.push(`keep(${found.length}, (${result.code}));`);
      found.push({ ...result, from: start + result.from, to: start + result.to });
    }
  }
  for (const { index, groups } of page.matchAll(figureInProse)) {
    const { open = "", code = "", result = "" } = groups ?? {};
    const from = index + open.length;
    program.push(`keep(${found.length}, (${code}));`);
    found.push({ code, from, to: from + result.length, write: inProse });
  }
  return { found, program: program.join("\n") };
}

const inProse = (value: unknown): string => {
  const text = asProse(value);
  const isBlock = text.includes("\n") || /^(?:- |\|)/.test(text);
  return isBlock ? `\n\n${text}\n\n` : text;
};

function statementsIn(code: string): { text: string; result?: Found }[] {
  const file = ts.createSourceFile("example.ts", code, ts.ScriptTarget.ES2023, true);
  return file.statements.map((statement) => {
    const text = statement.getText(file);
    const comment = resultAfter(code, statement.end);
    if (!comment) return { text };
    const write = (value: unknown) => asComment(asCode(value), comment.column);
    if (ts.isExpressionStatement(statement))
      // Run once, where its value is taken.
      return { text: "", result: { ...comment, code: statement.expression.getText(file), write } };
    const name = ts.isVariableStatement(statement)
      ? statement.declarationList.declarations.at(-1)?.name.getText(file)
      : undefined;
    if (name === undefined) throw new Error(`Only an expression or a const has a result, not: ${text}`);
    return { text, result: { ...comment, code: name, write } };
  });
}

/** The comment with the result behind a statement, with the lines that go on with it. */
function resultAfter(code: string, end: number): { from: number; to: number; column: number } | undefined {
  const after = /^[ \t]*\n?\/\/ =>.*(?:\n\/\/ {4}.*)*/.exec(code.slice(end));
  return after ? { from: end, to: end + after[0].length, column: end - code.lastIndexOf("\n", end - 1) } : undefined;
}

/** On the line of its statement where there is room. */
function asComment(value: string, column: number): string {
  const lines = value.split("\n").map((line, index) => (index === 0 ? `// => ${line}` : `//    ${line}`));
  const hasRoom = lines.length === 1 && column + value.length < widestLine;
  return `${hasRoom ? " " : "\n"}${lines.join("\n")}`;
}

/** Which parts of the science name which source: read from the code, so that no page has to be kept alike by hand. */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import ts from "typescript";
import * as fit from "../../../lib/fit";
import { isSourceId } from "./offered-to-pages";

const science = path.resolve(import.meta.dirname, "../../../lib/fit");
/** They hold the sources themselves, and the limits, which are listed by their own ids. */
const notMethods: readonly string[] = ["sources.ts", "limit-table.ts"];
/** A limit may have the same id as its source: a word in one of these calls is a limit. */
const readsLimit = /^(?:limitValue|limit|value)$/;

/** By source: what names it, as the function `limbVolume`, or the file where the name is not offered; in the order of the alphabet. */
export function usesBySource(): Map<fit.SourceId, string[]> {
  const uses = new Map<fit.SourceId, Set<string>>();
  const note = (id: string, user: string) => {
    if (isSourceId(id)) uses.set(id, (uses.get(id) ?? new Set()).add(user));
  };
  for (const file of readdirSync(science, { recursive: true, encoding: "utf8" })) {
    if (!file.endsWith(".ts") || notMethods.includes(file)) continue;
    const source = ts.createSourceFile(file, readFileSync(path.join(science, file), "utf8"), ts.ScriptTarget.ES2023, true);
    for (const statement of source.statements) {
      for (const tag of ts.getJSDocTags(statement))
        if (tag.tagName.text === "source") note(ts.getTextOfJSDocComment(tag.comment) ?? "", nameOf(statement));
      for (const literal of literalsIn(statement)) note(literal, nameOf(statement));
    }
  }
  return new Map([...uses].map(([id, users]) => [id, [...users].sort()]));
}

function literalsIn(node: ts.Node): string[] {
  if (ts.isCallExpression(node) && readsLimit.test(node.expression.getText())) return [];
  if (ts.isStringLiteral(node)) return [node.text];
  return ts.isTypeNode(node) ? [] : node.getChildren().flatMap(literalsIn);
}

/** A name that the science offers, else the file. */
function nameOf(statement: ts.Statement): string {
  const declared = ts.isVariableStatement(statement) ? statement.declarationList.declarations[0] : statement;
  const named = declared as { name?: ts.Node } | undefined; // whatever declares something has its name there
  const name = named?.name?.getText() ?? "";
  return name in fit ? name : path.basename(statement.getSourceFile().fileName);
}

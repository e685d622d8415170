/** Every page of the methods as the code now makes it, and the published schema. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { bundleSchemaText } from "./bundle-schema";
import { findingsPage } from "./findings-page";
import { gatesPage } from "./gates-page";
import { limitsPage } from "./limits-page";
import { offeredToPages } from "./offered-to-pages";
import { sourcesPage } from "./sources-page";
import { refreshed } from "./worked-examples";

export const docsFolder = path.resolve(import.meta.dirname, "../..");

export interface MadeFile {
  /** From `docs`, as "methods/limits.md". */
  file: string;
  made: string;
  /** As it lies there; null where it does not. */
  present: string | null;
}

const generated: Readonly<Record<string, () => string>> = {
  "methods/limits.md": limitsPage,
  "methods/sources.md": () => sourcesPage(writtenPages().map((file) => ({ name: path.basename(file), text: contentOf(file) }))),
  "methods/gates.md": gatesPage,
  "methods/findings.md": findingsPage,
  "fitting-bundle.schema.json": bundleSchemaText,
};

/** Pages that a person writes, and whose results the code fills in. */
export const writtenPages = (): string[] =>
  readdirSync(path.join(docsFolder, "methods"))
    .filter((name) => name.endsWith(".md") && !(`methods/${name}` in generated))
    .map((name) => `methods/${name}`);

export const contentOf = (file: string): string => readFileSync(path.join(docsFolder, file), "utf8");

export function madePages(): MadeFile[] {
  const written = writtenPages().map((file) => {
    const present = contentOf(file);
    return { file, made: refreshed(present, offeredToPages(), file), present };
  });
  const whole = Object.entries(generated).map(([file, make]) => ({
    file,
    made: make(),
    present: existsSync(path.join(docsFolder, file)) ? contentOf(file) : null,
  }));
  return [...written, ...whole];
}

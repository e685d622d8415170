// Makes one database with all migrations before the tests run; each test copies it (see fresh-database.ts).
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { TestProject } from "vitest/node";
import { applyMigrations } from "../../prisma/migrate.mjs";

declare module "vitest" {
  interface ProvidedContext {
    migratedTemplate: string;
  }
}

export default async function makeTemplate(project: TestProject) {
  const folder = mkdtempSync(path.join(tmpdir(), "fitting-ledger-template-"));
  const template = path.join(folder, "migrated.db");
  await applyMigrations({ databaseUrl: `file:${template}` });
  project.provide("migratedTemplate", template);
  return () => rmSync(folder, { recursive: true, force: true });
}

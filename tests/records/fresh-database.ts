import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { inject, onTestFinished } from "vitest";

export type FreshDatabase = { file: string; databaseUrl: string; remove(): void };

/**
 * A database of its own with all migrations and, where no other template is named, no records, as a file in the system's temporary folder.
 * Whoever makes it removes it; `freshDatabase` does so by itself at the end of the running test.
 */
export function makeDatabase(template = inject("migratedTemplate")): FreshDatabase {
  const folder = mkdtempSync(path.join(tmpdir(), "fitting-ledger-test-"));
  const file = path.join(folder, "clinic.db");
  copyFileSync(template, file);
  return { file, databaseUrl: `file:${file}`, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

/** As `makeDatabase`, removed when the running test ends. */
export function freshDatabase(): FreshDatabase {
  const database = makeDatabase();
  onTestFinished(() => database.remove());
  return database;
}

// Made once before the tests of the store run, and copied by each: a database with all migrations, a clinic with its accounts,
// and that clinic with an episode at each milestone (clinic.ts, fresh-database.ts).
import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { TestProject } from "vitest/node";
import { closeJournal } from "../../lib/setup/clinic-files.mjs";
import { applyMigrations } from "../../prisma/migrate.mjs";
import type { Milestone, ReadyEpisode } from "./ready-episode";

type ReadyEpisodes = Record<Milestone, { file: string; ready: ReadyEpisode }>;

declare module "vitest" {
  interface ProvidedContext {
    migratedTemplate: string;
    openedClinic: string;
    readyEpisodes: ReadyEpisodes;
  }
}

export default async function makeTemplates(project: TestProject) {
  const folder = mkdtempSync(path.join(tmpdir(), "fitting-ledger-template-"));
  const migrated = path.join(folder, "migrated.db");
  await applyMigrations({ databaseUrl: `file:${migrated}` });
  project.provide("migratedTemplate", migrated);

  const opened = path.join(folder, "opened.db");
  copyFileSync(migrated, opened);
  const { openClinicOf, readyEpisodesOf } = await import("./make-templates");
  await openClinicOf(opened);
  await closeJournal(opened);
  project.provide("openedClinic", opened);
  project.provide("readyEpisodes", await readyEpisodesOf(opened, folder));
  return () => rmSync(folder, { recursive: true, force: true });
}

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

interface Templates {
  folder: string;
  migratedTemplate: string;
  openedClinic: string;
  readyEpisodes: ReadyEpisodes;
}

// Each project of vitest loads this module anew; they share what is made, and the last to end removes it.
const shared = globalThis as typeof globalThis & { fittingLedgerTemplates?: { made: Promise<Templates>; users: number } };

export default async function provideTemplates(project: TestProject) {
  shared.fittingLedgerTemplates ??= { made: makeTemplates(), users: 0 };
  const templates = shared.fittingLedgerTemplates;
  templates.users += 1;
  const { folder, ...made } = await templates.made;
  project.provide("migratedTemplate", made.migratedTemplate);
  project.provide("openedClinic", made.openedClinic);
  project.provide("readyEpisodes", made.readyEpisodes);
  return () => {
    templates.users -= 1;
    if (templates.users === 0) rmSync(folder, { recursive: true, force: true });
  };
}

async function makeTemplates(): Promise<Templates> {
  const folder = mkdtempSync(path.join(tmpdir(), "fitting-ledger-template-"));
  const [migratedTemplate, openedClinic] = [path.join(folder, "migrated.db"), path.join(folder, "opened.db")];
  await applyMigrations({ databaseUrl: `file:${migratedTemplate}` });
  copyFileSync(migratedTemplate, openedClinic);
  const { openClinicOf, readyEpisodesOf } = await import("./make-templates");
  await openClinicOf(openedClinic);
  await closeJournal(openedClinic);
  return { folder, migratedTemplate, openedClinic, readyEpisodes: await readyEpisodesOf(openedClinic, folder) };
}

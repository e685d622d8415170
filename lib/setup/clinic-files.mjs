// @ts-check
// What lies in data/: the databases and the secret.
import { randomBytes } from "node:crypto";
import { accessSync, constants, existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { dataFolder } from "./environment.mjs";
import { lastLines, runTypeScript } from "./run.mjs";
import { Stop } from "./stop.mjs";

/** @throws {Stop} where data/ cannot be written */
export function requireDataFolder() {
  try {
    mkdirSync(dataFolder, { recursive: true, mode: 0o700 });
    accessSync(dataFolder, constants.W_OK | constants.X_OK);
  } catch (error) {
    throw new Stop(
      `No permission to write in ${dataFolder}.`,
      "The database lives there. Give this user the right to write in it.",
      {
        cause: error,
      },
    );
  }
}

/**
 * What sessions are signed with; made once, readable by this user only.
 *
 * @returns {string}
 */
export function keptSecret() {
  if (process.env.BETTER_AUTH_SECRET) return process.env.BETTER_AUTH_SECRET;
  const file = path.join(dataFolder, "secret");
  if (!existsSync(file)) writeFileSync(file, randomBytes(32).toString("base64url"), { mode: 0o600 });
  return readFileSync(file, "utf8").trim();
}

/**
 * Applies the migrations that a database lacks.
 *
 * @param {string} file
 * @returns {Promise<string>} what came of it
 */
export async function bringUpToDate(file) {
  const { applyMigrations } = await import("../../prisma/migrate.mjs");
  const { applied, copyOfBefore } = await applyMigrations({ databaseUrl: `file:${file}` });
  if (applied.length === 0) return "up to date";
  const outcome = applied.length === 1 ? "1 migration applied" : `${applied.length} migrations applied`;
  return copyOfBefore === null ? outcome : `${outcome}; a copy from before is kept at ${copyOfBefore}`;
}

/**
 * Whether nothing has been written to a database yet.
 *
 * @param {string} file
 */
export async function isEmpty(file) {
  if (!existsSync(file)) return true;
  const { default: Database } = await import("better-sqlite3");
  const database = new Database(file, { readonly: true });
  try {
    const tables = database
      .prepare(
        "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name <> '_prisma_migrations'",
      )
      .pluck()
      .all();
    return tables.every((table) => database.prepare(`SELECT 1 FROM "${table}" LIMIT 1`).get() === undefined);
  } finally {
    database.close();
  }
}

/**
 * Makes a database with the invented clinic. It appears under its name only when it is whole, so that an
 * interrupted run leaves nothing half-made.
 *
 * @param {string} file replaced where it exists
 * @param {{ secret: string, today?: string, clockOffsetMs?: number }} manner
 *   today: the day as of which it is told, as 2027-02-28; this moment where left out
 *   clockOffsetMs: as in environment.mjs
 * @returns {Promise<string>} what the loader printed
 * @throws {Stop} where the records cannot be loaded
 */
export async function makeInventedClinic(file, { secret, today, clockOffsetMs }) {
  const unfinished = `${file}.unfinished`;
  removeDatabase(unfinished);
  await bringUpToDate(unfinished);
  const { code, output } = await runTypeScript("prisma/invented-clinic/load.ts", {
    words: today === undefined ? [] : [today],
    env: {
      DATABASE_URL: `file:${unfinished}`,
      BETTER_AUTH_SECRET: secret,
      ...(clockOffsetMs === undefined ? {} : { FITTING_LEDGER_CLOCK_OFFSET_MS: String(clockOffsetMs) }),
    },
  });
  if (code !== 0) {
    removeDatabase(unfinished);
    throw new Stop(`The invented clinic could not be loaded:\n${lastLines(output)}`, "Please report it with the lines above.");
  }
  await closeJournal(unfinished);
  removeDatabase(file);
  renameSync(keysOf(unfinished), keysOf(file));
  // The ends of the chain that were kept while it was made belong to it.
  if (existsSync(headsOf(unfinished))) renameSync(headsOf(unfinished), headsOf(file));
  renameSync(unfinished, file);
  return output;
}

/**
 * Folds the write-ahead log into the file, so that the file alone is the whole database.
 *
 * @param {string} file
 */
export async function closeJournal(file) {
  const { default: Database } = await import("better-sqlite3");
  const database = new Database(file);
  database.pragma("wal_checkpoint(TRUNCATE)");
  database.close();
}

/**
 * With the keys and the kept ends of the record that lie beside it.
 *
 * @param {string} file
 */
export function removeDatabase(file) {
  for (const part of ["", "-wal", "-shm", "-journal"]) rmSync(file + part, { force: true });
  for (const beside of [keysOf(file), headsOf(file)]) rmSync(beside, { force: true });
}

/**
 * The keys that a clinic signs with, as in lib/trail/beside-database.ts.
 *
 * @param {string} file of the database
 */
export const keysOf = (file) => `${file}.keys`;

/**
 * The ends of the record that were kept apart, as there.
 *
 * @param {string} file of the database
 */
export const headsOf = (file) => `${file}.heads`;

/** @returns {Promise<{ accounts: { name: string, email: string, role: string }[], password: string }>} */
export async function inventedAccounts() {
  const { tsImport } = await import("tsx/esm/api");
  const { demoAccounts, demoPassword } = await tsImport("../../prisma/invented-clinic/accounts.ts", import.meta.url);
  return { accounts: demoAccounts, password: demoPassword };
}

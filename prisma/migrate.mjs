// @ts-check
// Brings a database to the schema of this checkout. Migrations are ordinary Prisma folders, recorded in
// `_prisma_migrations`, so that a person who has the full Prisma can go on with them.
//
//   node prisma/migrate.mjs            applies to DATABASE_URL (or data/clinic.db) what has not run there yet
//   node prisma/migrate.mjs new NAME   writes the next migration: what separates the last one from schema.prisma
//   node prisma/migrate.mjs check      exit 2 where a fresh database after all migrations differs from schema.prisma
import { createHash } from "node:crypto";
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import Database from "better-sqlite3";
import { databasePath } from "../lib/setup/environment.mjs";
import { Stop } from "../lib/setup/stop.mjs";
import { readDatabase } from "./database-file.mjs";
import { withSchemaEngine } from "./schema-engine.mjs";

const here = path.dirname(fileURLToPath(import.meta.url));
const ourMigrations = path.join(here, "migrations");
const ourSchema = path.join(here, "schema.prisma");

/**
 * Applies what has not run yet. A database that holds records is copied beside itself first
 * (`clinic.db.before-NAME`), and put back from that copy where a migration fails.
 *
 * @param {{ databaseUrl: string, migrationsFolder?: string, schemaPath?: string }} place
 * @returns {Promise<{ applied: string[], copyOfBefore: string | null }>} names in order; path of the copy, if one was made
 * @throws {Stop} where the database is not ours, is newer, is damaged, or a migration fails
 */
export async function applyMigrations({ databaseUrl, migrationsFolder = ourMigrations, schemaPath = ourSchema }) {
  const file = databasePath(databaseUrl);
  const migrations = readMigrations(migrationsFolder);
  const { empty, applied } = readDatabase(file);
  refuseOtherHistory(file, applied, migrations);

  const next = migrations.find(({ name }) => !applied.some((done) => done.name === name));
  if (next === undefined) return { applied: [], copyOfBefore: null };

  const copyOfBefore = empty ? null : await copyBeside(file, next.name);
  try {
    const names = await withSchemaEngine({ databaseUrl: `file:${file}`, schemaPath }, (engine) => engine.apply(migrations));
    return { applied: names, copyOfBefore };
  } catch (error) {
    putBack(file, copyOfBefore);
    throw new Stop(
      whatFailed(error),
      copyOfBefore === null
        ? "The new database was removed again."
        : `The database was put back as it was before; a copy of it is kept at ${copyOfBefore}. Go back to the version of the program that last ran.`,
      { cause: error },
    );
  }
}

/**
 * What a fresh database still lacks after all migrations, compared with the schema.
 *
 * @param {{ migrationsFolder?: string, schemaPath?: string }} [place]
 * @returns {Promise<string>} SQL; empty where there is no difference
 */
export async function migrationDrift({ migrationsFolder = ourMigrations, schemaPath = ourSchema } = {}) {
  const folder = mkdtempSync(path.join(tmpdir(), "fitting-ledger-migrations-"));
  const databaseUrl = `file:${path.join(folder, "fresh.db")}`;
  try {
    await applyMigrations({ databaseUrl, migrationsFolder, schemaPath });
    return await withSchemaEngine({ databaseUrl, schemaPath }, (engine) => engine.sqlToSchema());
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/**
 * Writes the next migration folder.
 *
 * @param {{ title: string, now: Date, migrationsFolder?: string, schemaPath?: string }} wanted
 * @returns {Promise<string | null>} path of the SQL file; null where schema and migrations agree already
 */
export async function writeNextMigration({ title, now, migrationsFolder = ourMigrations, schemaPath = ourSchema }) {
  if (!/^[a-z][a-z0-9_]*$/.test(title)) {
    throw new Stop(
      `"${title}" cannot name a migration.`,
      "Use small letters, digits and underscores: node prisma/migrate.mjs new add_limit_history",
    );
  }
  const sql = await migrationDrift({ migrationsFolder, schemaPath });
  if (sql === "") return null;
  const stamp = now.toISOString().replace(/\D/g, "").slice(0, 14);
  const folder = path.join(migrationsFolder, `${stamp}_${title}`);
  mkdirSync(folder, { recursive: true });
  writeFileSync(path.join(migrationsFolder, "migration_lock.toml"), 'provider = "sqlite"\n');
  writeFileSync(path.join(folder, "migration.sql"), sql);
  return path.join(folder, "migration.sql");
}

/**
 * @param {string} folder
 * @returns {import("./schema-engine.mjs").Migration[]} oldest first
 */
function readMigrations(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => ({ name, sql: readFileSync(path.join(folder, name, "migration.sql"), "utf8") }))
    .sort((one, other) => (one.name < other.name ? -1 : 1));
}

/**
 * @param {string} file
 * @param {import("./database-file.mjs").AppliedMigration[]} applied
 * @param {import("./schema-engine.mjs").Migration[]} migrations
 */
function refuseOtherHistory(file, applied, migrations) {
  for (const { name, checksum, finished } of applied) {
    const ours = migrations.find((migration) => migration.name === name);
    if (ours === undefined) {
      throw new Stop(
        `${file} comes from a newer version of the program: it has the migration ${name}, which this version does not know.`,
        "Nothing was changed. Run the newer version, or restore the backup from before it.",
      );
    }
    if (!finished) {
      throw new Stop(
        `The migration ${name} did not finish in ${file}.`,
        "Put the copy from before it (the file's name with .before- and a migration after it) or a backup in its place, and try again.",
      );
    }
    if (checksum !== createHash("sha256").update(ours.sql).digest("hex")) {
      throw new Stop(
        `The migration ${name} was changed after it ran in ${file}.`,
        "Nothing was changed. Restore the migration as it was; write changes as a new one (node prisma/migrate.mjs new NAME). A demo database may simply be deleted.",
      );
    }
  }
}

/**
 * @param {string} file
 * @param {string} nextName
 */
async function copyBeside(file, nextName) {
  const copy = `${file}.before-${nextName}`;
  const database = new Database(file);
  try {
    await database.backup(copy);
  } finally {
    database.close();
  }
  return copy;
}

/**
 * @param {string} file
 * @param {string | null} copyOfBefore
 */
function putBack(file, copyOfBefore) {
  for (const part of [file, `${file}-wal`, `${file}-shm`, `${file}-journal`]) rmSync(part, { force: true });
  if (copyOfBefore !== null) copyFileSync(copyOfBefore, file);
}

/**
 * The engine answers with a trace of its own; the first line says what, and a later one which migration.
 *
 * @param {unknown} error
 */
function whatFailed(error) {
  const account = error instanceof Error ? error.message : String(error);
  const name = /migration_name="([^"]+)"/.exec(account)?.[1];
  return `The migration ${name ?? "that was next"} failed: ${account.trim().split("\n")[0]}.`;
}

/** @param {string[]} words what was typed after the file's name */
async function main([command, title]) {
  if (command === undefined) {
    const databaseUrl = process.env.DATABASE_URL ?? `file:${path.join(here, "..", "data", "clinic.db")}`;
    const { applied, copyOfBefore } = await applyMigrations({ databaseUrl });
    console.log(applied.length === 0 ? "The database is up to date." : `Applied: ${applied.join(", ")}`);
    if (copyOfBefore !== null) console.log(`A copy from before is kept at ${copyOfBefore}`);
    return 0;
  }
  if (command === "new" && title !== undefined) {
    const written = await writeNextMigration({ title, now: new Date() });
    console.log(
      written === null
        ? "Nothing to write: the migrations already lead to schema.prisma."
        : `Written: ${written}. Read it before you commit it.`,
    );
    return 0;
  }
  if (command === "check") {
    const drift = await migrationDrift();
    console.log(
      drift === ""
        ? "The migrations lead to schema.prisma."
        : `schema.prisma says more than the migrations do. Missing:\n${drift}`,
    );
    return drift === "" ? 0 : 2;
  }
  throw new Stop(
    "This is not something that migrate.mjs does.",
    "node prisma/migrate.mjs, node prisma/migrate.mjs new NAME, or node prisma/migrate.mjs check",
  );
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    process.exitCode = await main(process.argv.slice(2));
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    console.error(`${error.message}\n${error.remedy}`);
    process.exitCode = 1;
  }
}

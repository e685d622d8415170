// @ts-check
// What stands in a database file before anything is written to it: is it ours, how far has it come, may it be opened.
import { accessSync, constants, existsSync, mkdirSync, statSync } from "node:fs";
import path from "node:path";
import Database from "better-sqlite3";
import { Stop } from "../lib/setup/stop.mjs";

/**
 * @typedef {{ name: string, checksum: string, finished: boolean }} AppliedMigration
 */

/**
 * Reads how far a database has come. A file that is absent or empty has come nowhere yet; its folder is made.
 *
 * @param {string} file absolute path
 * @returns {{ empty: boolean, applied: AppliedMigration[] }}
 * @throws {Stop} where the file cannot be read or written, is no SQLite database, or belongs to another program
 */
export function readDatabase(file) {
  requireWritable(file);
  if (!existsSync(file) || statSync(file).size === 0) return { empty: true, applied: [] };
  const database = openDatabase(file);
  try {
    const tables = tableNames(database);
    if (tables.length === 0) return { empty: true, applied: [] };
    if (!tables.includes("_prisma_migrations")) {
      throw new Stop(
        `${file} is a database of another program: it has tables, but no record of migrations.`,
        "Nothing was changed. Name another file in DATABASE_URL.",
      );
    }
    return { empty: false, applied: appliedMigrations(database) };
  } catch (error) {
    throw unreadable(file, error);
  } finally {
    database.close();
  }
}

/** @param {string} file */
function requireWritable(file) {
  const folder = path.dirname(file);
  try {
    mkdirSync(folder, { recursive: true });
    accessSync(folder, constants.W_OK);
    if (existsSync(file)) accessSync(file, constants.R_OK | constants.W_OK);
  } catch (error) {
    throw new Stop(
      `No permission to write ${file} or the folder around it.`,
      `Give this user the right to write in ${folder}, or name another file in DATABASE_URL.`,
      { cause: error },
    );
  }
}

/** @param {string} file */
function openDatabase(file) {
  try {
    return new Database(file, { fileMustExist: true });
  } catch (error) {
    throw unreadable(file, error);
  }
}

/** @param {Database.Database} database */
function tableNames(database) {
  return database.prepare("SELECT name FROM sqlite_master WHERE type = 'table'").pluck().all().map(String);
}

/**
 * @param {Database.Database} database
 * @returns {AppliedMigration[]}
 */
function appliedMigrations(database) {
  const rows = database
    .prepare(
      "SELECT migration_name, checksum, finished_at IS NOT NULL FROM _prisma_migrations WHERE rolled_back_at IS NULL ORDER BY started_at",
    )
    .raw()
    .all();
  // `raw` gives an array a row, in the order of the columns named above.
  return /** @type {[string, string, number][]} */ (rows).map(([name, checksum, finished]) => ({
    name,
    checksum,
    finished: finished === 1,
  }));
}

/**
 * @param {string} file
 * @param {unknown} error
 */
function unreadable(file, error) {
  if (error instanceof Stop) return error;
  const code = error instanceof Database.SqliteError ? error.code : "";
  if (code === "SQLITE_BUSY" || code === "SQLITE_LOCKED") {
    return new Stop(`${file} is held by another program.`, "Stop the other server or backup that uses it, then try again.", {
      cause: error,
    });
  }
  if (code === "SQLITE_NOTADB") {
    return new Stop(
      `${file} is not a SQLite database.`,
      "Nothing was changed. Put a backup in its place, or name another file in DATABASE_URL.",
      { cause: error },
    );
  }
  if (code.startsWith("SQLITE_")) {
    return new Stop(
      `${file} cannot be read (${code}): the file is damaged or the disk fails.`,
      "Nothing was changed. Keep the damaged file, put the latest backup in its place, and try again.",
      { cause: error },
    );
  }
  return error;
}

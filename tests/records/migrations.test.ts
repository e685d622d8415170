import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import Database from "better-sqlite3";
import { expect, onTestFinished, test } from "vitest";
import { applyMigrations, migrationDrift, writeNextMigration } from "../../prisma/migrate.mjs";
import { freshDatabase } from "./fresh-database";

const ourMigrations = path.resolve(import.meta.dirname, "../../prisma/migrations");

test("a fresh database after all migrations equals the schema", async () => {
  expect(await migrationDrift()).toBe("");
});

test("a column that no migration makes is named by the check", async () => {
  const { schemaPath } = schemaWithOneMoreColumn();
  expect(await migrationDrift({ schemaPath })).toContain('ALTER TABLE "Clinic" ADD COLUMN "harbour" TEXT');
});

test("the next migration holds what the schema says more, and closes the difference", async () => {
  const { schemaPath, migrationsFolder } = schemaWithOneMoreColumn();
  const now = new Date("2099-02-03T04:05:06Z");

  const written = await writeNextMigration({ title: "add_harbour", now, schemaPath, migrationsFolder });

  expect(written).toBe(path.join(migrationsFolder, "20990203040506_add_harbour", "migration.sql"));
  expect(await migrationDrift({ schemaPath, migrationsFolder })).toBe("");
  expect(await writeNextMigration({ title: "again", now, schemaPath, migrationsFolder })).toBeNull();
});

test("migrating twice does nothing the second time", async () => {
  const { databaseUrl } = freshDatabase();
  expect(await applyMigrations({ databaseUrl })).toEqual({ applied: [], copyOfBefore: null });
});

test("a database from a newer version is refused and left as it was", async () => {
  const { databaseUrl, file } = freshDatabase();
  run(
    file,
    "INSERT INTO _prisma_migrations (id, checksum, migration_name, finished_at) VALUES ('1', '', '99990101000000_later', 1)",
  );
  const before = readFileSync(file);

  await expect(applyMigrations({ databaseUrl })).rejects.toThrow(
    /comes from a newer version of the program: it has the migration 99990101000000_later/,
  );
  expect(readFileSync(file).equals(before)).toBe(true);
});

test("a migration that was changed after it ran is refused", async () => {
  const { databaseUrl, file } = freshDatabase();
  run(file, "UPDATE _prisma_migrations SET checksum = 'another'");
  await expect(applyMigrations({ databaseUrl })).rejects.toThrow(/was changed after it ran/);
});

test("a migration that did not finish is refused", async () => {
  const { databaseUrl, file } = freshDatabase();
  run(file, "UPDATE _prisma_migrations SET finished_at = NULL");
  await expect(applyMigrations({ databaseUrl })).rejects.toThrow(/did not finish/);
});

test("a file that is no database is refused and left as it was", async () => {
  const file = path.join(temporaryFolder(), "notes.txt");
  writeFileSync(file, "These are notes, and no database at all.");

  await expect(applyMigrations({ databaseUrl: `file:${file}` })).rejects.toThrow(`${file} is not a SQLite database.`);
  expect(readFileSync(file, "utf8")).toBe("These are notes, and no database at all.");
});

test("a damaged database is refused", async () => {
  const { databaseUrl, file } = freshDatabase();
  writeFileSync(file, readFileSync(file).subarray(0, 6000));
  await expect(applyMigrations({ databaseUrl })).rejects.toThrow(/cannot be read \(SQLITE_CORRUPT\)/);
});

test("a database of another program is refused", async () => {
  const file = path.join(temporaryFolder(), "other.db");
  run(file, "CREATE TABLE boats (name TEXT)");
  await expect(applyMigrations({ databaseUrl: `file:${file}` })).rejects.toThrow(/is a database of another program/);
});

test("where a migration fails, the records are as they were and a copy is kept", async () => {
  const { databaseUrl, file } = freshDatabase();
  run(file, "INSERT INTO Clinic (name, timeZone, openedAt) VALUES ('Tidewater', 'UTC', 0)");
  const migrationsFolder = ourMigrationsAnd("CREATE TABLE halfway (a TEXT); CREATE TABLE Clinic (a TEXT);");

  await expect(applyMigrations({ databaseUrl, migrationsFolder })).rejects.toThrow(
    "The migration 99990101000000_next failed: table Clinic already exists.",
  );
  expect(column(file, "SELECT name FROM Clinic")).toEqual(["Tidewater"]);
  expect(column(file, "SELECT name FROM sqlite_master WHERE name = 'halfway'")).toEqual([]);
  expect(column(`${file}.before-99990101000000_next`, "SELECT name FROM Clinic")).toEqual(["Tidewater"]);
});

test("where the first migration of a new database fails, no half-made file stays behind", async () => {
  const file = path.join(temporaryFolder(), "new.db");
  const migrationsFolder = ourMigrationsAnd("CREATE TABLE Clinic (a TEXT);");

  await expect(applyMigrations({ databaseUrl: `file:${file}`, migrationsFolder })).rejects.toThrow(/already exists/);
  expect(existsSync(file)).toBe(false);
});

test("an episode from before its adjustments' outcomes were kept is due as of its own last refresh", async () => {
  const folder = temporaryFolder();
  const [before, databaseUrl] = [path.join(folder, "before"), `file:${path.join(folder, "older.db")}`];
  cpSync(ourMigrations, before, { recursive: true, filter: (source) => !source.includes("_adjustment_outcomes") });
  await applyMigrations({ databaseUrl, migrationsFolder: before });
  const file = path.join(folder, "older.db");
  const derivedAt = "2026-10-08T09:00:00.000+00:00";
  run(
    file,
    `INSERT INTO Wearer (id, clinicNumber, name, addedById, addedAt) VALUES ('w', 'T-1', 'Wearer One', 'a', 0);
     INSERT INTO Episode (id, wearerId, side, level, cause, landmark, stationsFrom, limbLengthMm, suspension, prosthetistId, openedById,
       openedAt, derivedAt, derivedDue) VALUES
       ('settled', 'w', 'left', 'transradial', 'trauma', 'end', 'distal end', 170, 'pin', 'a', 'a', 'opened', '${derivedAt}', NULL),
       ('due', 'w', 'left', 'transradial', 'trauma', 'end', 'distal end', 170, 'pin', 'a', 'a', 'opened', '${derivedAt}', 'later'),
       ('never', 'w', 'left', 'transradial', 'trauma', 'end', 'distal end', 170, 'pin', 'a', 'a', 'opened', NULL, NULL)`,
  );
  await applyMigrations({ databaseUrl });
  expect(column(file, "SELECT id || ': ' || derivedDue FROM Episode ORDER BY id")).toEqual([
    "due: later",
    "never: opened",
    `settled: ${derivedAt}`,
  ]);
  expect(column(file, "SELECT adjustmentOutcomes FROM Episode")).toEqual([null, null, null]);
});

function temporaryFolder() {
  const folder = mkdtempSync(path.join(tmpdir(), "fitting-ledger-test-"));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return folder;
}

function schemaWithOneMoreColumn() {
  const folder = temporaryFolder();
  const schemaPath = path.join(folder, "schema.prisma");
  const ours = readFileSync(path.resolve(ourMigrations, "../schema.prisma"), "utf8");
  writeFileSync(schemaPath, ours.replace("model Clinic {", "model Clinic {\n  harbour String?"));
  const migrationsFolder = path.join(folder, "migrations");
  cpSync(ourMigrations, migrationsFolder, { recursive: true });
  return { schemaPath, migrationsFolder };
}

function ourMigrationsAnd(sql: string) {
  const migrationsFolder = path.join(temporaryFolder(), "migrations");
  cpSync(ourMigrations, migrationsFolder, { recursive: true });
  mkdirSync(path.join(migrationsFolder, "99990101000000_next"));
  writeFileSync(path.join(migrationsFolder, "99990101000000_next", "migration.sql"), sql);
  return migrationsFolder;
}

function run(file: string, sql: string) {
  const database = new Database(file);
  database.exec(sql);
  database.close();
}

function column(file: string, sql: string) {
  const database = new Database(file, { readonly: true });
  try {
    return database.prepare(sql).pluck().all();
  } finally {
    database.close();
  }
}

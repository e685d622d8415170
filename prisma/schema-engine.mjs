// @ts-check
// Prisma's own schema engine as WebAssembly: it applies migrations and works out the next one where the native
// engine cannot be fetched. What needs a shadow database (createMigration, `diff` from a folder) does not work this way.
import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import { bindMigrationAwareSqlAdapterFactory } from "@prisma/driver-adapter-utils";
import * as engineModule from "@prisma/schema-engine-wasm/schema_engine_bg";

const noFilters = { externalTables: [], externalEnums: [] };

/**
 * Opens the engine on a database, lends it, and closes the connection again whatever happens.
 *
 * @template Result
 * @param {{ databaseUrl: string, schemaPath: string }} place
 * @param {(engine: OpenEngine) => Promise<Result>} work
 * @returns {Promise<Result>}
 */
export async function withSchemaEngine({ databaseUrl, schemaPath }, work) {
  await instantiateEngine();
  const schema = { path: path.basename(schemaPath), content: readFileSync(schemaPath, "utf8") };
  const { factory, closeConnections } = closableConnections(databaseUrl);
  try {
    const engine = await engineModule.SchemaEngine.new(
      { datamodels: [[schema.path, schema.content]] },
      () => {},
      bindMigrationAwareSqlAdapterFactory(factory),
    );
    return await work(openEngine(engine, schema, path.dirname(schemaPath)));
  } finally {
    await closeConnections();
  }
}

/**
 * @typedef {{ name: string, sql: string }} Migration
 * @typedef {ReturnType<typeof openEngine>} OpenEngine
 */

/**
 * @param {engineModule.SchemaEngine} engine
 * @param {{ path: string, content: string }} schema
 * @param {string} schemaFolder
 */
function openEngine(engine, schema, schemaFolder) {
  return {
    /**
     * Runs what has not run yet and records it in `_prisma_migrations`.
     *
     * @param {Migration[]} migrations
     * @returns {Promise<string[]>} the names of those that ran
     */
    async apply(migrations) {
      const { appliedMigrationNames } = await engine.applyMigrations({
        migrationsList: {
          baseDir: "migrations",
          lockfile: { path: "migration_lock.toml", content: 'provider = "sqlite"\n' },
          shadowDbInitScript: "",
          migrationDirectories: migrations.map(({ name, sql }) => ({
            path: name,
            migrationFile: { path: "migration.sql", content: { tag: "ok", value: sql } },
          })),
        },
        filters: noFilters,
      });
      return appliedMigrationNames;
    },

    /** @returns {Promise<string>} the SQL that leads from the open database to the schema; empty where they agree */
    async sqlToSchema() {
      const { exitCode, stdout } = await engine.diff({
        from: { tag: "schemaDatasource", files: [schema], configDir: schemaFolder },
        to: { tag: "schemaDatamodel", files: [schema] },
        script: true,
        exitCode: true,
        filters: noFilters,
      });
      return exitCode === 0 ? "" : (stdout ?? "");
    },
  };
}

let instantiated = false;

async function instantiateEngine() {
  if (instantiated) return;
  const folder = path.dirname(createRequire(import.meta.url).resolve("@prisma/schema-engine-wasm/schema_engine_bg"));
  const wasmFile = readdirSync(folder).find((name) => name.endsWith(".wasm"));
  if (wasmFile === undefined) throw new Error(`no .wasm file in ${folder}`);
  const { instance } = await WebAssembly.instantiate(readFileSync(path.join(folder, wasmFile)), {
    // The package types its glue as a module of functions; WebAssembly wants a plain record of them.
    "./schema_engine_bg.js": /** @type {WebAssembly.ModuleImports} */ (/** @type {unknown} */ (engineModule)),
  });
  engineModule.__wbg_set_wasm(instance.exports);
  if (typeof instance.exports.__wbindgen_start === "function") instance.exports.__wbindgen_start();
  instantiated = true;
}

/**
 * The engine does not close what it opens; on SQLite an open connection would keep the file from being put back.
 *
 * @param {string} databaseUrl
 */
function closableConnections(databaseUrl) {
  const factory = new PrismaBetterSqlite3({ url: databaseUrl });
  /** @type {{ dispose(): Promise<void> }[]} */
  const open = [];
  const connect = factory.connect.bind(factory);
  factory.connect = async () => {
    const connection = await connect();
    open.push(connection);
    return connection;
  };
  return { factory, closeConnections: () => Promise.all(open.map((connection) => connection.dispose())) };
}

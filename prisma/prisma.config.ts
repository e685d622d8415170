// `prisma generate` looks for its native schema engine before it does anything, although it does not use it.
// Any executable satisfies it, so generating works where the engine cannot be fetched. Migrations: migrate.mjs.
import { defineConfig } from "prisma/config";

process.env.PRISMA_SCHEMA_ENGINE_BINARY ??= process.execPath;

export default defineConfig({
  schema: "schema.prisma",
  migrations: { path: "migrations" },
});

// Before the browser tests: the site is built, and two databases lie ready to be copied.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { ensureBuilt, ensureClient } from "../../lib/setup/build.mjs";
import { makeInventedClinic } from "../../lib/setup/clinic-files.mjs";
import { applyMigrations } from "../../prisma/migrate.mjs";
import { clockOffsetMs, emptyClinic, fixDay, inventedClinic, secret, setPreparedFolder } from "./prepared";

export default async function prepare() {
  await ensureClient();
  await ensureBuilt();
  const folder = mkdtempSync(path.join(tmpdir(), "fitting-ledger-screens-"));
  setPreparedFolder(folder);
  fixDay();
  await applyMigrations({ databaseUrl: `file:${emptyClinic()}` });
  await makeInventedClinic(inventedClinic(), { secret, clockOffsetMs: clockOffsetMs() });
  return () => rmSync(folder, { recursive: true, force: true });
}

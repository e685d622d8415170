/** One process of days.ts: loads the invented clinic into a store on so many days in a row, and prints a line of JSON a day. */
import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { setHashing } from "@/lib/access/password";
import { closeDatabase } from "@/lib/records/database";
import { removeDatabase } from "@/lib/setup/clinic-files.mjs";
import { loadInventedClinic, outcomesInStore } from "@/prisma/invented-clinic";
import { noonOf } from "@/prisma/invented-clinic/calendar";
import { applyMigrations } from "@/prisma/migrate.mjs";
import { quickHashing } from "../records/quick-hashing";
import { dayAfter } from "./day-after";

const [, , firstDay = "", count = "0"] = process.argv;
const folder = mkdtempSync(path.join(tmpdir(), "fitting-ledger-days-"));
const [migrated, file] = [path.join(folder, "migrated.db"), path.join(folder, "clinic.db")];
await applyMigrations({ databaseUrl: `file:${migrated}` });
setHashing(quickHashing);
process.env.DATABASE_URL = `file:${file}`;
for (let index = 0; index < Number(count); index++) {
  const day = dayAfter(firstDay, index);
  removeDatabase(file);
  copyFileSync(migrated, file);
  await loadInventedClinic({ today: noonOf(day) });
  console.log(JSON.stringify({ day, outcomes: await outcomesInStore() }));
  await closeDatabase();
}
rmSync(folder, { recursive: true, force: true });

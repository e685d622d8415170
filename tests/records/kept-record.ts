/** A record that can be tampered with as someone with the database's file could. */
import Connection from "better-sqlite3";
import { expect } from "vitest";
import { addWearer } from "@/lib/records/add-wearer";
import { anchorTrail } from "@/lib/records/anchor-trail";
import { closeDatabase } from "@/lib/records/database";
import { seeWearer } from "@/lib/records/see-wearers";
import { verifyRecord } from "@/lib/records/verify-record";
import { beginning, type ChainedEntry, digestOf } from "@/lib/trail/chain";
import { hashedTime } from "@/lib/trail/stored-entry";
import { openTestClinic, type TestClinic } from "./clinic";
import { dropLocks } from "./without-locks";

/** A record of some entries, whose end was kept apart at the fourth and at the last. */
export async function kept() {
  const clinic = await openTestClinic();
  const { wearerId } = await addWearer(clinic.assistant, {
    clinicNumber: "T-1",
    name: "Wearer “One”\n\u0001",
    birthOn: "1984-06-30",
    bodyMassKg: "74",
  });
  for (let reading = 0; reading < 3; reading++) await seeWearer(clinic.prosthetist, wearerId);
  await anchorTrail();
  for (let reading = 0; reading < 4; reading++) await seeWearer(clinic.assistant, wearerId);
  await anchorTrail();
  expect(await check(clinic)).toMatchObject({ holds: true, entries: 8 });
  return clinic;
}

export const check = (clinic: TestClinic) => verifyRecord(clinic.administrator, null);
export const words = async (clinic: TestClinic, state: "met" | "not met" | "unknown") =>
  (await check(clinic)).findings.filter((finding) => finding.state === state).map((finding) => finding.words);

export async function tamper(clinic: TestClinic, how: (connection: Connection.Database) => void) {
  await closeDatabase();
  const connection = new Connection(clinic.file);
  dropLocks(connection);
  how(connection);
  connection.close();
}

/** As whoever knows the program would: every digest from this entry on is made anew. */
export function recompute(connection: Connection.Database, from: number) {
  const rows = connection.prepare("SELECT * FROM TrailEntry WHERE position >= ? ORDER BY position").all(from);
  const before = connection
    .prepare("SELECT digest FROM TrailEntry WHERE position = ?")
    .pluck()
    .get(from - 1);
  let previousDigest = typeof before === "string" ? before : beginning;
  for (const { digest: _old, ...entry } of rows as (ChainedEntry & { digest: string })[]) {
    const digest = digestOf({ ...entry, at: hashedTime(entry.at) ?? "", previousDigest });
    connection
      .prepare("UPDATE TrailEntry SET previousDigest = ?, digest = ? WHERE position = ?")
      .run(previousDigest, digest, entry.position);
    previousDigest = digest;
  }
}

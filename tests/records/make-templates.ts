/** What migrated-template.ts fills its databases with. */
import { copyFileSync } from "node:fs";
import path from "node:path";
import { setClock } from "@/lib/records/clock";
import { closeDatabase, database } from "@/lib/records/database";
import { closeJournal } from "../../lib/setup/clinic-files.mjs";
import { password, quickHashing } from "./quick-hashing";
import { type Milestone, type ReadyEpisode, recordReadyEpisode, staff, today } from "./ready-episode";

/** One clinic, and an account for each of its staff. */
export async function openClinicOf(file: string): Promise<void> {
  await on(file, async () => {
    const db = await database();
    await db.clinic.create({ data: { id: 1, name: "Test clinic", timeZone: "Europe/Lisbon", openedAt: today } });
    const times = { createdAt: today, updatedAt: today };
    for (const { id, name, role } of Object.values(staff))
      await db.user.create({
        data: {
          ...{ ...times, id, name, role },
          email: `${name.replaceAll(" ", ".")}@example.test`,
          credentials: {
            create: {
              ...{ ...times, id: `${name} password`, accountId: id, providerId: "credential" },
              password: await quickHashing.hash(password),
            },
          },
        },
      });
  });
}

/** A copy of the clinic for each milestone of an episode. */
export async function readyEpisodesOf(opened: string, folder: string) {
  const working = path.join(folder, "working.db");
  copyFileSync(opened, working);
  const made: Partial<Record<Milestone, { file: string; ready: ReadyEpisode }>> = {};
  await on(working, async () => {
    for await (const { milestone, ready } of recordReadyEpisode(staff)) {
      // Closed and opened again, so that the file holds all of it.
      await closeDatabase();
      await closeJournal(working);
      const file = path.join(folder, `${milestone}.db`);
      copyFileSync(working, file);
      made[milestone] = { file, ready };
    }
  });
  return made as Required<typeof made>; // the generator gives every milestone
}

async function on(file: string, work: () => Promise<void>): Promise<void> {
  const before = process.env.DATABASE_URL;
  process.env.DATABASE_URL = `file:${file}`;
  const stopClock = setClock({ now: () => today });
  try {
    await work();
  } finally {
    stopClock();
    await closeDatabase();
    if (before === undefined) delete process.env.DATABASE_URL;
    else process.env.DATABASE_URL = before;
  }
}

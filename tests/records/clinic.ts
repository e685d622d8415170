/** A clinic of its own for a test, and a wearer whose evidence is ready. */
import { copyFileSync } from "node:fs";
import { inject, onTestFinished } from "vitest";
import { hashPassword, setHashing } from "@/lib/access/password";
import { now, setClock } from "@/lib/records/clock";
import { clientAndConnection, closeDatabase, database } from "@/lib/records/database";
import { episodeAsOf } from "@/lib/records/see-episode";
import { digestOfShown } from "@/lib/records/shown-evidence";
import { makeDatabase } from "./fresh-database";
import { password, quickHashing } from "./quick-hashing";
import { type Milestone, type ReadyEpisode, recordReadyEpisode, staff, today } from "./ready-episode";

export { password } from "./quick-hashing";
export * from "./ready-episode";

/** As the page hands it to the command: with the version of the evidence, and the digest of what the page showed. */
export async function signingOf(episodeId: string, meaning: string) {
  const { episode, bundle, assessment } = await episodeAsOf(await database(), episodeId, now());
  return { episodeId, evidenceVersion: episode.evidenceVersion, shown: digestOfShown(bundle, assessment), meaning, password };
}

interface Opening {
  /** Where people sign in through better-auth, which knows only its own slow hash. */
  slowHashing?: boolean;
}

/** A clinic with one account for each role and one more prosthetist, on a file of its own, at the hour of `today`. */
export async function openTestClinic({ slowHashing = false }: Opening = {}) {
  const made = makeDatabase(inject("openedClinic"));
  await closeDatabase();
  process.env.DATABASE_URL = made.databaseUrl;
  const clock = { now: today };
  const stopClock = setClock({ now: () => clock.now });
  const stopHashing = slowHashing ? () => undefined : setHashing(quickHashing);
  onTestFinished(async () => {
    stopHashing();
    stopClock();
    await closeDatabase();
    made.remove();
  });
  if (slowHashing) await (await database()).credential.updateMany({ data: { password: await hashPassword(password) } });
  return {
    file: made.file,
    /** Moves the clinic's clock. */
    setNow: (at: string) => {
      clock.now = new Date(at);
    },
    ...staff,
  };
}

export type TestClinic = Awaited<ReturnType<typeof openTestClinic>>;

/**
 * Two sockets; the second fits, its trial passed, its marks faded: ready to be signed. In a clinic where nothing was
 * written yet it is copied from a file that was made once; elsewhere it is recorded step by step.
 */
export async function readyEpisode(clinic: TestClinic, { until = "looked" }: { until?: Milestone } = {}): Promise<ReadyEpisode> {
  if (await isUntouched()) {
    const { file, ready } = inject("readyEpisodes")[until];
    await closeDatabase();
    copyFileSync(file, clinic.file);
    return ready;
  }
  for await (const { milestone, ready } of recordReadyEpisode(clinic)) if (milestone === until) return ready;
  throw new Error(`nobody comes to ${until}`);
}

/** Nothing was written since the clinic's file was copied, and its clock stands where the copies were made. */
async function isUntouched(): Promise<boolean> {
  const { connection } = await clientAndConnection();
  const changes = connection.prepare("SELECT total_changes()").pluck().get();
  return changes === 0 && now().getTime() === today.getTime();
}

import { now } from "./clock";
import type { Database } from "./database";
import { query } from "./query";
import { NotFound } from "./refusals";
import { episodeAsOf } from "./see-episode";

/** One wear trial with all that a device needs to run it: also for who came by the wearer's own link, and then only that one. */
export const seeLiveTrial = query({
  permission: "record a wear trial",
  ofTrial: (trialId: string) => trialId,
  read: async (db, trialId: string, actor) => {
    const episodeId = await episodeOfTrial(db, trialId);
    const [seen, clinic, seenLately] = await Promise.all([
      episodeAsOf(db, episodeId, now()),
      db.clinic.findUniqueOrThrow({ where: { id: 1 } }),
      db.trailEntry.findFirst({
        where: { actorId: actor.id, recordId: episodeId, action: opened, at: { gte: new Date(now().getTime() - saidOnceInMs) } },
        select: { position: true },
      }),
    ]);
    return { ...seen, clinic, trialId, seenLately: seenLately !== null };
  },
  seen: ({ episode, seenLately }) =>
    seenLately ? null : { action: opened, kind: "episode", id: episode.id, wearerId: episode.wearerId },
});

const opened = "opened a wear trial on a device";

/** A device asks anew whenever something changes: the trail says once an hour that it was open. */
const saidOnceInMs = 3600_000;

/** Which episode a trial belongs to, for hearing of its changes. */
export const episodeOfLiveTrial = query({
  permission: "record a wear trial",
  ofTrial: (trialId: string) => trialId,
  read: episodeOfTrial,
});

async function episodeOfTrial(db: Database, trialId: string): Promise<string> {
  const trial = await db.wearTrial.findUnique({ where: { id: trialId }, select: { episodeId: true } });
  if (!trial) throw new NotFound("wear trial");
  return trial.episodeId;
}

import { type Limits, limitsOfVersion, limitValue, type SeriesTrends, seriesOf, settingsInVersion, trendsOf } from "@/lib/fit";
import { type EpisodeWhole, readEpisode } from "./bundle-of";
import { now } from "./clock";
import type { Database } from "./database";
import { type JudgedEpisode, judgeEpisode } from "./judge-episode";
import { limitsInForce } from "./limits-in-force";
import { query } from "./query";
import { NotFound } from "./refusals";
import { setAsideOf } from "./set-aside";

export interface SeenEpisode extends JudgedEpisode {
  episode: EpisodeWhole;
  limits: Limits;
  prosthetist: string;
}

/** One episode whole, judged as of now by the limits in force. */
export const seeEpisode = query({
  permission: "see wearers",
  read: async (db, episodeId: string) => withSetAside(db, await episodeAsOf(db, episodeId, now())),
  seen: ({ episode }) => ({ action: "saw an episode", kind: "episode", id: episode.id, wearerId: episode.wearerId }),
});

/** One episode with its sockets over time, each judged by the limits that the episode is judged by. */
export const seeTrends = query({
  permission: "see wearers",
  read: async (db, episodeId: string): Promise<SeenEpisode & { trends: SeriesTrends }> => {
    const seen = await episodeAsOf(db, episodeId, now());
    const limits = limitsOfVersion(seen.assessment.rulesVersion);
    return { ...seen, limits, trends: trendsOf(seen.bundle, seriesOf(seen.bundle, { limits }), { limits }) };
  },
  seen: ({ episode }) => ({
    action: "saw the trends of an episode",
    kind: "episode",
    id: episode.id,
    wearerId: episode.wearerId,
  }),
});

/** The episode as a file of its own, for the clinic's archive or another clinic; with the clinic's own limits, if it has any. */
export const exportBundle = query({
  permission: "see wearers",
  read: async (db, episodeId: string) => {
    const seen = await episodeAsOf(db, episodeId, now());
    const own = settingsInVersion(seen.assessment.rulesVersion);
    return Object.keys(own).length === 0 ? seen : { ...seen, bundle: { ...seen.bundle, ownLimits: own } };
  },
  seen: ({ episode }) => ({ action: "exported an episode", kind: "episode", id: episode.id, wearerId: episode.wearerId }),
});

/** The episode that a socket belongs to. */
export const seeEpisodeOfSocket = query({
  permission: "see wearers",
  read: async (db, socketId: string) => {
    const socket = await db.checkSocket.findUnique({ where: { id: socketId }, select: { episodeId: true } });
    if (!socket) throw new NotFound("socket");
    return episodeAsOf(db, socket.episodeId, now());
  },
  seen: ({ episode }) => ({ action: "saw a socket", kind: "episode", id: episode.id, wearerId: episode.wearerId }),
});

/** The episode that a wear trial belongs to. */
export const seeEpisodeOfTrial = query({
  permission: "see wearers",
  read: async (db, trialId: string) => {
    const trial = await db.wearTrial.findUnique({ where: { id: trialId }, select: { episodeId: true } });
    if (!trial) throw new NotFound("wear trial");
    return withSetAside(db, await episodeAsOf(db, trial.episodeId, now()));
  },
  seen: ({ episode }) => ({ action: "saw a wear trial", kind: "episode", id: episode.id, wearerId: episode.wearerId }),
});

/** With what devices sent for its trials and is kept as it came. */
const withSetAside = async (db: Database, seen: SeenEpisode) => ({
  ...seen,
  setAside: await setAsideOf(db, seen.episode, limitValue(seen.limits, "pain-forbids")),
});

export async function episodeAsOf(db: Database, episodeId: string, asOf: Date): Promise<SeenEpisode> {
  const [episode, clinic, limits] = await Promise.all([
    readEpisode(db, episodeId),
    db.clinic.findUniqueOrThrow({ where: { id: 1 } }),
    limitsInForce(db),
  ]);
  if (episode.struckOutAt) throw new NotFound("episode");
  const judged = judgeEpisode(episode, { asOf, timeZone: clinic.timeZone, limits });
  const prosthetist = await db.user.findUnique({ where: { id: episode.prosthetistId }, select: { name: true } });
  return { episode, ...judged, limits, prosthetist: prosthetist?.name ?? "not known" };
}

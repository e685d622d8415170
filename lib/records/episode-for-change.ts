/** The rules that every change of an episode's records shares. */
import type { Prisma } from "@/lib/generated/prisma/client";
import { isAhead, isBeforeSocket } from "./believable-times";
import type { CommonStore, Store } from "./command";
import { releaseMeaning } from "./meanings";
import { InputRefused, Locked, NotFound } from "./refusals";

const withSignatures = {
  wearer: true,
  signOffs: { where: { withdrawal: null }, orderBy: { position: "desc" }, include: { withdrawal: true, countersignature: true } },
} as const satisfies Prisma.EpisodeInclude;

export type EpisodeForChange = Prisma.EpisodeGetPayload<{ include: typeof withSignatures }>;

export async function findEpisode(store: Store, episodeId: string): Promise<EpisodeForChange> {
  const episode = await store.db.episode.findUnique({ where: { id: episodeId }, include: withSignatures });
  if (!episode || episode.struckOutAt) throw new NotFound("episode");
  return episode;
}

/** An episode whose evidence may still grow: not released, not closed. */
export async function episodeForChange(store: Store, episodeId: string): Promise<EpisodeForChange> {
  const episode = await findEpisode(store, episodeId);
  refuseFinished(episode);
  return episode;
}

type Standing = Pick<EpisodeForChange["signOffs"][number], "meaning" | "socketId" | "byName" | "at">;

export function refuseFinished(episode: { closedAt: Date | null; signOffs: readonly Standing[] }): void {
  const release = episode.signOffs.find(({ meaning }) => meaning === releaseMeaning);
  if (release)
    throw new Locked(
      `This episode was released by ${release.byName} on ${release.at.toISOString().slice(0, 10)}; its evidence is locked. To go on, a prosthetist withdraws the release with a reason.`,
    );
  if (episode.closedAt) throw new Locked("This episode is closed. Open it again first.");
}

/** The socket's trial was accepted by a signature: its trial, looks and fittings stand as they were signed. */
export function refuseUnderSignature(episode: { signOffs: readonly Standing[] }, socketId: string): void {
  const signed = episode.signOffs.find((signOff) => signOff.socketId === socketId);
  if (signed)
    throw new Locked(
      `${signed.byName} signed for this socket on ${signed.at.toISOString().slice(0, 10)} (${signed.meaning}); what the signature covers is locked. A prosthetist can withdraw it with a reason.`,
    );
}

/** What was recorded cannot have happened later than now. */
export function refuseFuture(store: CommonStore, field: string, at: Date): void {
  if (isAhead(at, store.now)) throw new InputRefused({ [field]: "This time has not come yet. Look at the date and the clock." });
  if (at.getUTCFullYear() < 1990) throw new InputRefused({ [field]: "This is too long ago. Look at the year." });
}

export function refuseBeforeSocket(socket: { number: number; specifiedAt: Date }, field: string, at: Date): void {
  if (isBeforeSocket(at, socket))
    throw new InputRefused({ [field]: `Socket ${socket.number} was specified only after this. Look at the date and the clock.` });
}

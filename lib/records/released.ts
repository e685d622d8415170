/** What a standing release says, for the commands that come after it. */
import { Bundle, proposeDimensions, type Station } from "@/lib/fit";
import type { Store } from "./command";
import { type EpisodeForChange, findEpisode } from "./episode-for-change";
import { awaitsCountersignature, releaseMeaning } from "./meanings";
import { InputRefused, Locked } from "./refusals";

/** The inside dimensions that the definitive socket is to have: those of the check socket with the carried adjustments. */
export function definitiveStations(evidence: string): Station[] {
  const signed: { bundle: unknown; assessment: { subject?: { socketId?: string } } } = JSON.parse(evidence);
  const bundle = Bundle.parse(signed.bundle);
  const socket = bundle.sockets.find(({ id }) => id === signed.assessment.subject?.socketId);
  return socket ? proposeDimensions(socket.stations, bundle.carried, bundle.episode) : [];
}

export const notInForce = "A second prosthetist has to sign this release before anything is made from it.";

/** @throws InputRefused, Locked where it is no release, or one that was withdrawn */
export async function standingRelease(store: Store, signOffId: string) {
  const release = await store.db.signOff.findUnique({
    where: { id: signOffId },
    include: { withdrawal: true, countersignature: true },
  });
  if (!release || release.meaning !== releaseMeaning) throw new InputRefused({ signOffId: "There is no such release." });
  if (release.withdrawal) throw new Locked(`${release.withdrawal.byName} withdrew this release. Nothing is made from it.`);
  if (awaitsCountersignature(release)) throw new Locked(notInForce);
  const episode: EpisodeForChange = await findEpisode(store, release.episodeId);
  return { release, episode };
}

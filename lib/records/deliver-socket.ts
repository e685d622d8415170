import { z } from "zod";
import { wholeMinute } from "./believable-times";
import { command } from "./command";
import { findEpisode, refuseFuture } from "./episode-for-change";
import { id, instant, maybeText } from "./input";
import { releaseMeaning } from "./meanings";
import { InputRefused, Locked } from "./refusals";

/** The definitive socket reached its wearer. */
export const deliverSocket = command({
  permission: "deliver a socket",
  input: z.strictObject({
    episodeId: id("The episode"),
    at: instant("When it was delivered"),
    note: maybeText("The note", 1000),
  }),
  run: async (store, { episodeId, at, note }) => {
    const episode = await findEpisode(store, episodeId);
    const release = episode.signOffs.find(({ meaning }) => meaning === releaseMeaning);
    if (!release) throw new Locked("Nothing is released in this episode: there is no definitive socket to deliver.");
    if (episode.deliveredAt) throw new Locked("The definitive socket was delivered already.");
    refuseFuture(store, "at", at);
    if (at.getTime() < wholeMinute(release.at)) throw new InputRefused({ at: "This is before the release was signed." });
    await store.db.episode.update({ where: { id: episodeId }, data: { deliveredAt: at, version: { increment: 1 } } });
    await store.note({
      action: "delivered the definitive socket",
      kind: "episode",
      id: episodeId,
      wearerId: episode.wearerId,
      episodeId,
      after: { at, note },
    });
    return { episodeId };
  },
});

import { z } from "zod";
import { wholeMinute } from "./believable-times";
import { command } from "./command";
import { findEpisode, refuseFuture } from "./episode-for-change";
import { id, instant, maybeText } from "./input";
import { awaitsCountersignature, releaseMeaning } from "./meanings";
import { InputRefused, Locked } from "./refusals";
import { notInForce } from "./released";
import type { Question } from "./unusual";

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
    if (awaitsCountersignature(release)) throw new Locked(notInForce);
    if (episode.deliveredAt) throw new Locked("The definitive socket was delivered already.");
    refuseFuture(store, "at", at);
    if (at.getTime() < wholeMinute(release.at)) throw new InputRefused({ at: "This is before the release was signed." });
    const check = await store.db.madeCheck.findFirst({ where: { signOffId: release.id }, orderBy: { recordedAt: "desc" } });
    store.ask(questionsAbout(check));
    await store.db.episode.update({ where: { id: episodeId }, data: { deliveredAt: at, version: { increment: 1 } } });
    await store.note({
      action: "delivered the definitive socket",
      kind: "episode",
      id: episodeId,
      wearerId: episode.wearerId,
      episodeId,
      after: { at, note, madeCheck: check?.state ?? "not measured" },
    });
    return { episodeId };
  },
});

/** A socket that nobody measured, or that is off, may be delivered; whoever does it has seen that it is so. */
function questionsAbout(check: { id: string; state: string } | null): Question[] {
  if (!check)
    return [{ path: "at", why: "The definitive socket was not measured against its release sheet.", key: "not measured" }];
  return check.state === "not met"
    ? [{ path: "at", why: "The definitive socket was not made as the release sheet says.", key: `off ${check.id}` }]
    : [];
}

import { z } from "zod";
import { digestOfSecret, newSecret } from "@/lib/access/secrets";
import { command, type Store } from "./command";
import { episodeForChange, refuseUnderSignature } from "./episode-for-change";
import { blankToNothing, id, readNumber } from "./input";
import { InputRefused, NotFound } from "./refusals";
import { linkEnd } from "./wearer-link-state";

export const usualDays = 7;
export const mostDays = 14;

const Days = z.preprocess(
  (value) => blankToNothing(readNumber(value)) ?? usualDays,
  z
    .number({ error: "Choose for how many days." })
    .int("Choose whole days.")
    .min(1, `From 1 to ${mostDays} days.`)
    .max(mostDays, `From 1 to ${mostDays} days.`),
);

/**
 * Makes the link with which a wearer opens one wear trial on a telephone of their own. Its token is in the answer and
 * nowhere else; an earlier link of the trial ends.
 */
export const makeWearerLink = command({
  permission: "make a wearer's link",
  input: z.strictObject({ trialId: id("The wear trial"), days: Days }),
  run: async (store, { trialId, days }) => {
    const trial = await store.db.wearTrial.findUnique({ where: { id: trialId } });
    if (!trial) throw new NotFound("wear trial");
    const episode = await episodeForChange(store, trial.episodeId);
    refuseUnderSignature(episode, trial.socketId);
    if (trial.state === "ended" || trial.state === "stopped")
      throw new InputRefused({ "": "This trial is over. A link is for one that is planned or running." });
    if (!episode.wearer.birthOn)
      throw new InputRefused({
        "": "The link asks for the year of birth, and none is on record. Enter the wearer's birth date first.",
      });
    await endLinks(store, { trialId });
    const token = newSecret();
    const link = { id: store.newId(), trialId, madeAt: store.now, expiresAt: linkEnd(store.now, days) };
    await store.db.wearerLink.create({
      data: { ...link, tokenDigest: digestOfSecret(token), madeById: store.actor.id, madeByName: store.actor.name },
    });
    await store.note({
      action: "made a wearer's own link",
      kind: "wearer's own link",
      id: link.id,
      wearerId: episode.wearerId,
      after: { trialId, days, expiresAt: link.expiresAt },
    });
    return { trialId, linkId: link.id, token, expiresAt: link.expiresAt };
  },
});

/** Ends a link before its time. What its devices still send is set aside, except a stop sign. */
export const withdrawWearerLink = command({
  permission: "make a wearer's link",
  input: z.strictObject({ linkId: id("The link") }),
  run: async (store, { linkId }) => {
    const link = await store.db.wearerLink.findUnique({
      where: { id: linkId },
      include: { trial: { select: { episode: { select: { wearerId: true } } } } },
    });
    if (!link) throw new NotFound("link");
    if (link.withdrawnAt) return { linkId, trialId: link.trialId };
    await endLinks(store, { id: linkId });
    await store.note({
      action: "withdrew a wearer's own link",
      kind: "wearer's own link",
      id: linkId,
      wearerId: link.trial.episode.wearerId,
      after: { trialId: link.trialId },
    });
    return { linkId, trialId: link.trialId };
  },
});

async function endLinks(store: Store, which: { id: string } | { trialId: string }): Promise<void> {
  await store.db.wearerLink.updateMany({
    where: { ...which, withdrawnAt: null },
    data: { withdrawnAt: store.now, withdrawnByName: store.actor.name },
  });
}

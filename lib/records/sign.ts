import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { may } from "@/lib/access/roles";
import { gateIds } from "@/lib/fit";
import { sha256 } from "@/lib/trail/chain";
import { anchorTrail } from "./anchor-trail";
import { type EpisodeWhole, readEpisode } from "./bundle-of";
import { signForClinic } from "./clinic-signature";
import { inTransaction, parseInput } from "./command";
import { findEpisode } from "./episode-for-change";
import { freezeEvidence } from "./freeze-evidence";
import { choice, id, maybeText, rows, text, version } from "./input";
import { meanings, releaseMeaning, statements } from "./meanings";
import { setSocketState } from "./move-socket";
import { proofFields, proveSigner, refuseClockSetBack } from "./prove-signer";
import { ChangedMeanwhile, Locked, NotAllowed } from "./refusals";

const Signing = z.strictObject({
  episodeId: id("The episode"),
  evidenceVersion: version,
  /** Digest of what the signer's page showed (shown-evidence.ts). */
  shown: text("What the page showed", 64),
  meaning: choice("what the signature means", meanings),
  acceptances: rows(z.strictObject({ gate: choice("a gate", gateIds), why: text("The reason for accepting it", 1000) }), 20),
  /** Gates close to their limit that the signer has read. */
  closeRead: z.preprocess((value) => (typeof value === "string" ? [value] : (value ?? [])), z.array(z.string())),
  /** Of the definitive socket; the bench reads it on the sheet. */
  definitiveMaterial: maybeText("The material", 160),
  ...proofFields,
});

/**
 * A prosthetist takes responsibility: the evidence is frozen as it stands, with its assessment, under a digest chained to
 * the signature before and signed with the clinic's key. Nothing that forbids, and nothing that is open and not accepted,
 * can be signed.
 */
export async function sign(actor: Actor, raw: unknown): Promise<{ signOffId: string; episodeId: string }> {
  if (!may(actor, "sign")) throw new NotAllowed("sign", actor.role);
  const { episodeId, meaning, acceptances, ...input } = parseInput(Signing, raw);
  const proved = await proveSigner(actor, input, { kind: "episode", id: episodeId });
  const done = await inTransaction(actor, async (store) => {
    await refuseClockSetBack(store);
    const { closedAt, onHoldAt } = await findEpisode(store, episodeId);
    if (closedAt || onHoldAt)
      throw new Locked(`This episode is ${closedAt ? "closed" : "on hold"}. Take it up again before anything is signed.`);
    const episode = await readEpisode(store.db, episodeId);
    if (episode.evidenceVersion !== input.evidenceVersion)
      throw new ChangedMeanwhile("The evidence", { decision: episode.decisionSentence }, episode.evidenceVersion);
    const subject = episode.sockets.at(-1);
    if (!subject) throw new Locked("There is no socket to sign for yet.");
    refuseSecondSignature(episode, subject.id, meaning);
    const signOffId = store.newId();
    const { closeRead, shown, definitiveMaterial = null } = input;
    const frozen = await freezeEvidence(store, episode, {
      ...{ id: signOffId, meaning, acceptances, closeRead, shown, definitiveMaterial, provedBy: proved.by },
    });
    await proved.useUp(store);

    const { assessment, evidence } = frozen;
    const digest = sha256(evidence);
    const by = { byId: actor.id, byName: actor.name, at: store.now };
    await store.db.signOff.create({
      data: {
        ...{ id: signOffId, episodeId, socketId: subject.id, meaning, ...by, evidence, digest },
        position: frozen.position,
        statement: statements[meaning],
        credentialsLine: actor.credentialsLine ?? null,
        timeZone: frozen.timeZone,
        rulesVersion: assessment.rulesVersion,
        previousDigest: frozen.previousDigest,
        signature: await signForClinic(evidence, store.now),
        countersignAsked: frozen.countersignAsked,
        acceptances: {
          create: acceptances.map(({ gate, why }) => ({
            ...{ id: store.newId(), episodeId, socketId: subject.id, gate, why, ...by },
          })),
        },
      },
    });
    if (meaning === releaseMeaning && !frozen.countersignAsked)
      await setSocketState(store, { socket: subject, state: "released", at: store.now });
    await store.note({
      action: `signed: ${meaning}`,
      kind: "sign-off",
      id: signOffId,
      wearerId: episode.wearerId,
      episodeId,
      after: { meaning, socket: subject.number, decision: assessment.decision, digest, acceptances },
    });
    return { signOffId, episodeId };
  });
  await anchorTrail();
  return done;
}

function refuseSecondSignature(episode: EpisodeWhole, socketId: string, meaning: string): void {
  const standing = episode.signOffs.filter((signOff) => signOff.withdrawal === null);
  if (standing.some((signOff) => signOff.meaning === releaseMeaning)) throw new Locked("This episode is released already.");
  if (standing.some((signOff) => signOff.meaning === meaning && signOff.socketId === socketId))
    throw new Locked("This was signed already.");
}

import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { may } from "@/lib/access/roles";
import { anchorTrail } from "./anchor-trail";
import { signedText, signForClinic } from "./clinic-signature";
import { inTransaction, parseInput } from "./command";
import { findEpisode } from "./episode-for-change";
import { id, text } from "./input";
import { releaseMeaning, trialMeaning } from "./meanings";
import { setSocketState } from "./move-socket";
import { proofFields, proveSigner, refuseClockSetBack } from "./prove-signer";
import { InputRefused, Locked, NotAllowed } from "./refusals";

const Withdrawing = z.strictObject({
  signOffId: id("The signature"),
  why: text("Why it is withdrawn", 2000),
  ...proofFields,
});

/** Withdraws a signature, with a reason. The signature stays, marked wherever it is shown. */
export async function withdrawSignature(actor: Actor, raw: unknown): Promise<{ signOffId: string; episodeId: string }> {
  if (!may(actor, "withdraw a signature")) throw new NotAllowed("withdraw a signature", actor.role);
  const { signOffId, why, ...proof } = parseInput(Withdrawing, raw);
  const proved = await proveSigner(actor, proof, { kind: "sign-off", id: signOffId });
  const done = await inTransaction(actor, async (store) => {
    await refuseClockSetBack(store);
    const signOff = await store.db.signOff.findUnique({ where: { id: signOffId }, include: { withdrawal: true, socket: true } });
    if (!signOff) throw new InputRefused({ signOffId: "There is no such signature." });
    if (signOff.withdrawal) throw new Locked(`${signOff.withdrawal.byName} withdrew this signature already.`);
    const episode = await findEpisode(store, signOff.episodeId);
    if (signOff.meaning === trialMeaning && episode.signOffs.some(({ meaning }) => meaning === releaseMeaning))
      throw new Locked("A release rests on this acceptance. Withdraw the release first.");
    await proved.useUp(store);
    const statement = signedText({
      format: "fitting-withdrawal/1",
      ...{ signOffId, digest: signOff.digest, meaning: signOff.meaning, why, at: store.now },
      signedBy: { id: actor.id, name: actor.name, credentialsLine: actor.credentialsLine },
    });
    await store.db.withdrawal.create({
      data: {
        ...{ id: store.newId(), signOffId, byId: actor.id, byName: actor.name, at: store.now, why, statement },
        signature: await signForClinic(statement, store.now),
      },
    });
    if (signOff.socket.state === "released")
      await setSocketState(store, { socket: signOff.socket, state: "fitted", at: store.now, note: "release withdrawn" });
    await store.note({
      action: `withdrew a signature: ${signOff.meaning}`,
      kind: "sign-off",
      id: signOffId,
      wearerId: episode.wearerId,
      episodeId: episode.id,
      before: { meaning: signOff.meaning, by: signOff.byName, at: signOff.at },
      after: { why },
    });
    return { signOffId, episodeId: episode.id };
  });
  await anchorTrail();
  return done;
}

import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { may } from "@/lib/access/roles";
import { anchorTrail } from "./anchor-trail";
import { signedText, signForClinic } from "./clinic-signature";
import { command, inTransaction, parseInput } from "./command";
import { id, yes } from "./input";
import { awaitsCountersignature, countersignStatement } from "./meanings";
import { setSocketState } from "./move-socket";
import { proofFields, proveSigner, refuseClockSetBack } from "./prove-signer";
import { InputRefused, Locked, NotAllowed, NotFound } from "./refusals";

const Countersigning = z.strictObject({ signOffId: id("The release"), ...proofFields });

/** A second prosthetist signs the evidence of a release; with it the release is in force. */
export async function countersign(actor: Actor, raw: unknown): Promise<{ signOffId: string; episodeId: string }> {
  if (!may(actor, "sign")) throw new NotAllowed("sign", actor.role);
  const { signOffId, ...proof } = parseInput(Countersigning, raw);
  const proved = await proveSigner(actor, proof, { kind: "sign-off", id: signOffId });
  const done = await inTransaction(actor, async (store) => {
    await refuseClockSetBack(store);
    const signOff = await store.db.signOff.findUnique({
      where: { id: signOffId },
      include: { withdrawal: true, countersignature: true, socket: true, episode: { select: { wearerId: true } } },
    });
    if (!signOff) throw new InputRefused({ signOffId: "There is no such release." });
    if (signOff.withdrawal) throw new Locked(`${signOff.withdrawal.byName} withdrew this signature.`);
    if (signOff.countersignature) throw new Locked(`${signOff.countersignature.byName} countersigned this already.`);
    if (!awaitsCountersignature(signOff)) throw new Locked("No second signature was asked for here.");
    if (signOff.byId === actor.id) throw new Locked("You signed this yourself: another prosthetist has to sign it as well.");
    await proved.useUp(store);
    const { episodeId, digest, meaning, timeZone } = signOff;
    const statement = signedText({
      format: "fitting-countersignature/1",
      ...{ signOffId, digest, meaning, statement: countersignStatement, at: store.now, timeZone, provedBy: proved.by },
      signedBy: { id: actor.id, name: actor.name, credentialsLine: actor.credentialsLine },
    });
    await store.db.countersignature.create({
      data: {
        ...{ id: store.newId(), signOffId, byId: actor.id, byName: actor.name, at: store.now, statement },
        credentialsLine: actor.credentialsLine ?? null,
        signature: await signForClinic(statement, store.now),
      },
    });
    await setSocketState(store, { socket: signOff.socket, state: "released", at: store.now });
    await store.note({
      action: `countersigned: ${meaning}`,
      kind: "sign-off",
      id: signOffId,
      wearerId: signOff.episode.wearerId,
      episodeId,
      after: { digest },
    });
    return { signOffId, episodeId };
  });
  await anchorTrail();
  return done;
}

/** Whether releases need a second prosthetist's signature from now on. What was signed before stays as it was. */
export const askForCountersignatures = command({
  permission: "change a limit",
  input: z.strictObject({ asked: yes }),
  run: async (store, { asked }) => {
    const clinic = await store.db.clinic.findUnique({ where: { id: 1 } });
    if (!clinic) throw new NotFound("clinic");
    const prosthetists = await store.db.user.count({ where: { role: "prosthetist", banned: { not: true } } });
    if (asked && prosthetists < 2)
      throw new InputRefused({ asked: "A second signature needs two active prosthetists, and this clinic has not got them." });
    await store.db.clinic.update({ where: { id: 1 }, data: { countersignReleases: asked } });
    await store.note({
      action: "changed whether releases are countersigned",
      kind: "clinic",
      id: "1",
      before: { countersignReleases: clinic.countersignReleases === true },
      after: { countersignReleases: asked },
    });
    return { clinicId: 1 };
  },
});

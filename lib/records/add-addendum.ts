import { z } from "zod";
import { signedText, signForClinic } from "./clinic-signature";
import { command, isSavedAlready } from "./command";
import { id, newRecordId, text } from "./input";
import { NotFound } from "./refusals";

/** Puts something right under a signature. It is added and signed with the clinic's key; nothing that was signed changes. */
export const addAddendum = command({
  permission: "sign",
  input: z.strictObject({ id: newRecordId, signOffId: id("The signature"), words: text("What is put right", 1000) }),
  run: async (store, { id, signOffId, words }) => {
    const { actor, now: at } = store;
    const signOff = await store.db.signOff.findUnique({
      where: { id: signOffId },
      include: { episode: { select: { wearerId: true } } },
    });
    if (!signOff) throw new NotFound("signature");
    if (await isSavedAlready(store, { kind: "addendum", id, fields: { signOffId, words } })) return { signOffId };
    const addendumId = id ?? store.newId();
    const statement = signedText({
      format: "fitting-addendum/1",
      ...{ id: addendumId, signOffId, digest: signOff.digest, words, at },
      signedBy: { id: actor.id, name: actor.name, credentialsLine: actor.credentialsLine },
    });
    const signature = await signForClinic(statement, at);
    await store.db.addendum.create({
      data: { id: addendumId, signOffId, words, byId: actor.id, byName: actor.name, at, statement, signature },
    });
    await store.note({
      action: "added an addendum to a signature",
      kind: "addendum",
      id: addendumId,
      wearerId: signOff.episode.wearerId,
      after: { signOffId, words },
    });
    return { signOffId };
  },
});

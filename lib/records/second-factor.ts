/** A person sets up, or takes away, the codes of their own device. What better-auth does is done by it; the trail is ours. */
import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { removeSecondFactor, type SecondFactor, secondFactorOfAccount } from "@/lib/access/second-factor";
import { confirmWithCode, prepareSecondFactor } from "@/lib/access/second-factor-of-session";
import { inTransaction, parseInput, requireAccount } from "./command";
import { database } from "./database";
import { text } from "./input";
import { proofFields, proveSigner } from "./prove-signer";
import { InputRefused } from "./refusals";

export async function seeSecondFactor(actor: Actor): Promise<SecondFactor> {
  requireAccount(actor, "see a second factor");
  return secondFactorOfAccount(await database(), actor.id);
}

/** Whether whoever signs is asked for a code beside the password. */
export const asksForCode = async (actor: Actor): Promise<boolean> => (await seeSecondFactor(actor)).state === "on";

const ofAccount = (actor: Actor) => ({ kind: "account", id: actor.id });

export async function beginSecondFactor(actor: Actor, raw: unknown): Promise<{ userId: string }> {
  requireAccount(actor, "set up a second factor");
  const { password } = parseInput(z.strictObject({ password: proofFields.password }), raw);
  if (!(await prepareSecondFactor(password))) throw new InputRefused({ password: "This is not your password." });
  await inTransaction(actor, (store) => store.note({ action: "began to set up a second factor", ...ofAccount(actor) }));
  return { userId: actor.id };
}

export async function confirmSecondFactor(actor: Actor, raw: unknown): Promise<{ userId: string }> {
  requireAccount(actor, "set up a second factor");
  const { passwordCode } = parseInput(z.strictObject({ passwordCode: text("The code", 20) }), raw);
  if (!(await confirmWithCode(passwordCode.replaceAll(/\s/g, ""))))
    throw new InputRefused({ passwordCode: "This is not the code of the moment. Wait for the next one and type that." });
  await inTransaction(actor, (store) => store.note({ action: "set up a second factor", ...ofAccount(actor) }));
  return { userId: actor.id };
}

export async function endSecondFactor(actor: Actor, raw: unknown): Promise<{ userId: string }> {
  requireAccount(actor, "take away a second factor");
  const proved = await proveSigner(actor, parseInput(z.strictObject(proofFields), raw), ofAccount(actor));
  return inTransaction(actor, async (store) => {
    await proved.useUp(store);
    await removeSecondFactor(store.db, actor.id);
    await store.note({ action: "took away their second factor", ...ofAccount(actor) });
    return { userId: actor.id };
  });
}

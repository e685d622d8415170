/** At the moment of signing whoever signs proves again who they are (21 CFR 11.200): password, and the code where one is set up. */
import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { isPasswordOf } from "@/lib/access/password";
import { hasSecondFactor, markStepUsed, stepOfCode } from "@/lib/access/second-factor";
import { now } from "./clock";
import { inTransaction, type Store } from "./command";
import { database } from "./database";
import { maybeText, text } from "./input";
import { InputRefused, Locked } from "./refusals";

/** Fields of every form that signs; their names keep them from being sent back to the page. */
export const proofFields = { password: text("Your password", 400), passwordCode: maybeText("The code", 20) };
const Proof = z.object(proofFields);
type Proof = z.output<typeof Proof>;

export type ProvedBy = ("password" | "code")[];

export interface Proved {
  by: ProvedBy;
  /** To be called in the transaction that signs: the code is used up with the signature, or not at all. */
  useUp: (store: Store) => Promise<void>;
}

const mostWrong = 5;
const wrongMinutes = 15;
const wrongAction = "gave a wrong password when signing";

/** Comes before the transaction: a password takes half a second to check. */
export async function proveSigner(
  actor: Actor,
  { password, passwordCode }: Proof,
  record: { kind: string; id: string },
): Promise<Proved> {
  const db = await database();
  const since = new Date(now().getTime() - wrongMinutes * 60_000);
  const wrong = await db.trailEntry.count({ where: { actorId: actor.id, action: wrongAction, at: { gte: since } } });
  if (wrong >= mostWrong) throw new InputRefused({ password: `Too many wrong passwords. Try again in ${wrongMinutes} minutes.` });
  const refuse = async (field: keyof Proof, why: string): Promise<never> => {
    await inTransaction(actor, (store) => store.note({ action: wrongAction, ...record }));
    throw new InputRefused({ [field]: why });
  };
  if (!(await isPasswordOf(db, actor.id, password))) return refuse("password", "This is not your password. Nothing was signed.");
  if (!(await hasSecondFactor(db, actor.id))) return { by: ["password"], useUp: async () => {} };
  if (!passwordCode) throw new InputRefused({ passwordCode: "The code from your device is missing. Nothing was signed." });
  const step = await stepOfCode(db, actor.id, passwordCode, now());
  if (step === null)
    return refuse(
      "passwordCode",
      "This is not a code of your device that is good now. Wait for the next one. Nothing was signed.",
    );
  return {
    by: ["password", "code"],
    useUp: async (store) => {
      // Two requests with one code at the same time: the second finds it used.
      const used = await store.db.twoFactor.findFirst({ where: { userId: actor.id, lastStep: { gte: step } } });
      if (used) throw new InputRefused({ passwordCode: "This code was used already. Wait for the next one." });
      await markStepUsed(store.db, actor.id, step);
    },
  };
}

const clockToleranceMs = 120_000;

/** A signature must not be older than what it signs: a clock that was set back shows against the record. */
export async function refuseClockSetBack(store: Store): Promise<void> {
  const last = await store.db.trailEntry.findFirst({ orderBy: { position: "desc" }, select: { at: true } });
  if (last && last.at.getTime() - store.now.getTime() > clockToleranceMs)
    throw new Locked(
      `This server's clock says ${store.now.toISOString().slice(0, 16)} UTC, and its record has an entry of ${last.at.toISOString().slice(0, 16)} UTC: the clock was set back. Put it right before anything is signed.`,
    );
}

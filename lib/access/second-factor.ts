/**
 * A code from a device of one's own beside the password (RFC 6238). Setting it up and signing in with it are better-auth's;
 * here it is asked for once more at the moment of signing, and no code signs twice (RFC 6238, 5.2).
 */
import { timingSafeEqual } from "node:crypto";
import { createOTP } from "@better-auth/utils/otp";
import { symmetricDecrypt } from "better-auth/crypto";
import type { Transaction } from "@/lib/records/database";
import { auth } from "./auth";

const stepSeconds = 30;

export async function hasSecondFactor(db: Transaction, userId: string): Promise<boolean> {
  return (await secondFactorOf(db, userId)) !== null;
}

/**
 * The time step of a code that is right and was not used before; null of any other. A device's clock may be one step off.
 *
 * @param code six digits; spaces between them do not matter
 */
export async function stepOfCode(db: Transaction, userId: string, code: string, now: Date): Promise<number | null> {
  const kept = await secondFactorOf(db, userId);
  if (!kept) return null;
  const { secretConfig } = await (await auth()).$context;
  const secret = await symmetricDecrypt({ key: secretConfig, data: kept.secret });
  return matchingStep(secret, code, { now, after: kept.lastStep });
}

/** @param after the step of the last code that was used */
export async function matchingStep(
  secret: string,
  code: string,
  { now, after }: { now: Date; after: number | null },
): Promise<number | null> {
  const given = Buffer.from(code.replaceAll(/\s/g, ""));
  const present = Math.floor(now.getTime() / 1000 / stepSeconds);
  for (const step of [present - 1, present, present + 1]) {
    const right = Buffer.from(await createOTP(secret).hotp(step));
    if (given.length === right.length && timingSafeEqual(given, right) && step > (after ?? -1)) return step;
  }
  return null;
}

export async function markStepUsed(db: Transaction, userId: string, step: number): Promise<void> {
  await db.twoFactor.updateMany({ where: { userId }, data: { lastStep: step } });
}

export type SecondFactor =
  | { state: "none" | "on" }
  /** Shown to its owner until a first code confirms that their device has it. */
  | { state: "begun"; address: string; key: string; backupCodes: string[] };

export async function secondFactorOfAccount(db: Transaction, userId: string): Promise<SecondFactor> {
  const user = await db.user.findUniqueOrThrow({ where: { id: userId }, include: { twoFactor: true } });
  if (await hasSecondFactor(db, userId)) return { state: "on" };
  const begun = user.twoFactor.find(({ verified }) => verified === false);
  if (!begun) return { state: "none" };
  const { secretConfig } = await (await auth()).$context;
  const secret = await symmetricDecrypt({ key: secretConfig, data: begun.secret });
  const address = createOTP(secret).url("Fitting Ledger", user.email);
  const codes: unknown = JSON.parse(await symmetricDecrypt({ key: secretConfig, data: begun.backupCodes }));
  return {
    state: "begun",
    address,
    key: new URL(address).searchParams.get("secret") ?? "",
    backupCodes: Array.isArray(codes) ? codes.map(String) : [],
  };
}

/** Takes it away, for its owner or for someone who lost their device. */
export async function removeSecondFactor(db: Transaction, userId: string): Promise<void> {
  await db.twoFactor.deleteMany({ where: { userId } });
  await db.user.update({ where: { id: userId }, data: { twoFactorEnabled: false } });
}

/** One that was begun and never confirmed does not count. */
async function secondFactorOf(db: Transaction, userId: string) {
  const user = await db.user.findUnique({ where: { id: userId }, select: { twoFactorEnabled: true, twoFactor: true } });
  return user?.twoFactorEnabled ? (user.twoFactor.find(({ verified }) => verified !== false) ?? null) : null;
}

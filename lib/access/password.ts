/** The password asked for again at the moment of signing. Hashing and checking are better-auth's. */
import { hashPassword as hashSlowly, verifyPassword } from "better-auth/crypto";
import type { Transaction } from "@/lib/records/database";

export const shortestPassword = 12;

interface Hashing {
  hash: (password: string) => Promise<string>;
  verify: (kept: { hash: string; password: string }) => Promise<boolean>;
}

const real: Hashing = { hash: hashSlowly, verify: verifyPassword };
let current = real;

export const hashPassword = (password: string): Promise<string> => current.hash(password);

/** Takes the place of the slow hash until the returned function is called; for tests that are not about passwords. */
export function setHashing(hashing: Hashing): () => void {
  current = hashing;
  return () => {
    current = real;
  };
}

export async function isPasswordOf(db: Transaction, userId: string, password: string): Promise<boolean> {
  const credential = await db.credential.findFirst({ where: { userId, providerId: "credential" }, select: { password: true } });
  if (!credential?.password) return false;
  return current.verify({ hash: credential.password, password });
}

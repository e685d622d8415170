/** The password asked for again at the moment of signing. Hashing and checking are better-auth's. */
import { hashPassword, verifyPassword } from "better-auth/crypto";
import type { Transaction } from "@/lib/records/database";

export { hashPassword };

export const shortestPassword = 12;

export async function isPasswordOf(db: Transaction, userId: string, password: string): Promise<boolean> {
  const credential = await db.credential.findFirst({ where: { userId, providerId: "credential" }, select: { password: true } });
  if (!credential?.password) return false;
  return verifyPassword({ hash: credential.password, password });
}

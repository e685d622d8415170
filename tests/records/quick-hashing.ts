/** A hash in place of better-auth's, which takes half a second by design: for tests that are not about passwords. */
import { createHash } from "node:crypto";

export const password = "a password for tests";

const quickHash = (text: string): string => createHash("sha256").update(text).digest("hex");

export const quickHashing = {
  hash: async (text: string): Promise<string> => quickHash(text),
  verify: async (kept: { hash: string; password: string }): Promise<boolean> => kept.hash === quickHash(kept.password),
};

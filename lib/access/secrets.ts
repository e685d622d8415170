/** What a link or a device holds to be let in: long, by chance, and kept here only as a digest. */
import { createHash, randomBytes } from "node:crypto";

/** 32 random bytes, in letters that may stand in an address. */
export const newSecret = (): string => randomBytes(32).toString("base64url");

export const digestOfSecret = (secret: string): string => createHash("sha256").update(secret, "utf8").digest("hex");

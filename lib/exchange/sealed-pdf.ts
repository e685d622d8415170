/**
 * A PDF with the clinic's signature over its bytes, in a comment behind its end, where readers of PDF pass over it: whoever
 * changes one byte of the paper's file breaks the seal.
 */
import { createHash } from "node:crypto";
import { z } from "zod";
import { signedText, signForClinic } from "@/lib/records/clinic-signature";
import { canonicalJson } from "@/lib/trail/chain";
import { checkDetached } from "@/lib/trail/jws";
import type { PublicKey } from "@/lib/trail/keys";
import type { ReleaseCheck } from "./verify-release";

const mark = "%fitting-sheet";

const Statement = z.object({
  format: z.literal("fitting-sheet/1"),
  signOffId: z.string(),
  /** Of the evidence. */
  digest: z.string(),
  /** Of all bytes before the seal. */
  sha256: z.string(),
  at: z.string(),
});

export async function sealPdf(pdf: Buffer, sheet: { signOffId: string; digest: string }, now: Date): Promise<Buffer> {
  const statement = signedText({ format: "fitting-sheet/1", ...sheet, sha256: digestOfBytes(pdf), at: now });
  const seal = `\n${mark} ${Buffer.from(statement).toString("base64url")} ${await signForClinic(statement, now)}\n`;
  return Buffer.concat([pdf, Buffer.from(seal)]);
}

export const isPdf = (file: Buffer): boolean => file.subarray(0, 5).equals(Buffer.from("%PDF-"));

/** Says of a sheet's file whether it is as the clinic's server made it. Whether the sheet still stands only the clinic knows. */
export async function verifySheet(file: Buffer, keys: readonly PublicKey[]): Promise<ReleaseCheck> {
  const seal = sealOf(file);
  if (!seal)
    return {
      verdict: "does not hold",
      about: "A PDF without the seal of a release sheet.",
      findings: [{ state: "not met", words: "There is no seal that can be read: it was taken off, or was never there." }],
    };
  const { content, statement, signature } = seal;
  const about = `A release sheet made at ${statement.at}, of the signature ${statement.signOffId} whose evidence has the digest ${statement.digest}. Whether it stands: scan its code, or ask the clinic.`;
  const signed = await checkDetached(canonicalJson(statement), signature, keys);
  const findings: ReleaseCheck["findings"] = [
    digestOfBytes(content) === statement.sha256
      ? { state: "met", words: "The file is byte for byte the one that was sealed." }
      : { state: "not met", words: "The file was changed after it was sealed." },
    keys.length === 0
      ? { state: "unknown", words: "The seal bears a signature, and no public key was given to check it with." }
      : signed.state === "holds"
        ? { state: "met", words: `The seal was made with the clinic's key ${signed.key.kid}.` }
        : { state: "not met", words: "The seal was not made with one of the given keys." },
  ];
  const holds = findings.every(({ state }) => state === "met");
  const verdict = holds ? "holds" : findings.some(({ state }) => state === "not met") ? "does not hold" : "cannot tell";
  return { verdict, about, findings };
}

function sealOf(file: Buffer) {
  const from = file.lastIndexOf(`\n${mark} `);
  if (from === -1) return null;
  const [, text = "", signature = "", ...more] = file.subarray(from).toString("latin1").trim().split(" ");
  if (more.length > 0) return null;
  try {
    const statement = Statement.parse(JSON.parse(Buffer.from(text, "base64url").toString("utf8")));
    return { content: file.subarray(0, from), statement, signature };
  } catch {
    return null;
  }
}

const digestOfBytes = (bytes: Buffer): string => createHash("sha256").update(bytes).digest("hex");

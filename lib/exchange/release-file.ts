/** A signed release as a file of its own: all that it takes, with the clinic's public key, to check it anywhere. */
import { z } from "zod";
import { canonicalJson } from "@/lib/trail/chain";

export const releaseFormat = "fitting-release/1";

/** A statement that was signed after the release: its text as JSON, and its JWS. */
const Signed = z.strictObject({ statement: z.looseObject({}), signature: z.string().nullable() });

export const ReleaseFile = z.strictObject({
  format: z.literal(releaseFormat),
  evidence: z.looseObject({}),
  digest: z.string(),
  signature: z.string().nullable(),
  countersignature: Signed.nullable(),
  addenda: z.array(Signed),
  withdrawal: Signed.nullable(),
});
export type ReleaseFile = z.output<typeof ReleaseFile>;

interface KeptStatement {
  statement: string | null;
  signature: string | null;
}

interface KeptRelease {
  evidence: string;
  digest: string;
  signature: string | null;
  countersignature: KeptStatement | null;
  addenda: readonly KeptStatement[];
  withdrawal: (KeptStatement & { byName: string; at: Date; why: string }) | null;
}

export function releaseFile({ evidence, digest, signature, countersignature, addenda, withdrawal }: KeptRelease): ReleaseFile {
  return {
    format: releaseFormat,
    evidence: JSON.parse(evidence),
    digest,
    signature,
    countersignature: countersignature && signed(countersignature),
    addenda: addenda.map(signed),
    withdrawal: withdrawal && {
      ...signed(withdrawal),
      // What was withdrawn before there were keys has no text of its own.
      ...(withdrawal.statement === null
        ? { statement: { by: withdrawal.byName, at: withdrawal.at.toISOString(), why: withdrawal.why } }
        : {}),
    },
  };
}

const signed = ({ statement, signature }: KeptStatement): z.output<typeof Signed> => ({
  statement: statement === null ? {} : JSON.parse(statement),
  signature,
});

/** One line of canonical JSON. */
export const releaseFileText = (kept: KeptRelease): string => `${canonicalJson(releaseFile(kept))}\n`;

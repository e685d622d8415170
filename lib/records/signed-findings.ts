/** Whether the signatures in a store are the ones that were made: each digest, the chain of them, and the clinic's key. */
import type Connection from "better-sqlite3";
import { beginning, sha256 } from "@/lib/trail/chain";
import { checkDetached } from "@/lib/trail/jws";
import type { PublicKey } from "@/lib/trail/keys";
import type { Finding } from "./record-findings";

interface Row {
  position: number;
  evidence: string;
  digest: string;
  previousDigest: string;
  signature: string | null;
}

/** @returns nothing where nothing was signed */
export async function signedFindings(connection: Connection.Database, keys: readonly PublicKey[]): Promise<Finding[]> {
  const rows = connection
    .prepare("SELECT position, evidence, digest, previousDigest, signature FROM SignOff ORDER BY position")
    .all() as Row[]; // the columns above
  const wrong: string[] = [];
  let unsigned = 0;
  let last: Pick<Row, "position" | "digest"> = { position: 0, digest: beginning };
  for (const row of rows) {
    const named = `Signature ${row.position}`;
    if (row.position !== last.position + 1) wrong.push(`Signature ${last.position + 1} is missing.`);
    else if (row.previousDigest !== last.digest) wrong.push(`${named} does not follow the one before it.`);
    if (sha256(row.evidence) !== row.digest) wrong.push(`${named}: its evidence is not the one that its digest was made of.`);
    if (row.signature === null) unsigned += 1;
    else if ((await checkDetached(row.evidence, row.signature, keys)).state !== "holds")
      wrong.push(`${named} was not made with a key of this clinic over the evidence that stands there.`);
    last = row;
  }
  if (rows.length === 0) return [];
  return [
    ...wrong.map((words) => ({ state: "not met", words }) as const),
    ...(wrong.length === 0
      ? [{ state: "met", words: `The ${rows.length} signatures follow each other and are as they were made.` } as const]
      : []),
    ...(unsigned > 0 ? [{ state: "unknown", words: `${unsigned} of them were made before there were keys.` } as const] : []),
  ];
}

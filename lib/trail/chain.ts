/** The chained record: each entry carries the digest of the one before, so that a change anywhere shows. */
import { createHash } from "node:crypto";
import canonicalize from "canonicalize";

/** An entry as it is hashed: everything but its own digest. */
export interface ChainedEntry {
  position: number;
  at: string;
  actorId: string;
  actorName: string;
  actorRole: string;
  action: string;
  recordKind: string;
  recordId: string;
  wearerId: string | null;
  episodeId: string | null;
  before: string | null;
  after: string | null;
  previousDigest: string;
}

/** What the first entry names as the digest before it. */
export const beginning = "0".repeat(64);

/** RFC 8785 canonical JSON of plain JSON values; undefined fields are left out. */
export function canonicalJson(value: unknown): string {
  const text = canonicalize(value);
  if (text === undefined) throw new TypeError("this value has no JSON form");
  return text;
}

export const sha256 = (text: string): string => createHash("sha256").update(text, "utf8").digest("hex");

export const digestOf = (entry: ChainedEntry): string => sha256(canonicalJson(entry));

export type ChainCheck = { holds: true; entries: number; head: string } | { holds: false; position: number; why: string };

/** Walks entries in the order of their positions and says where the chain first breaks. */
export function checkChain(entries: Iterable<ChainedEntry & { digest: string }>): ChainCheck {
  let previous = beginning;
  let position = 0;
  for (const { digest, ...entry } of entries) {
    position += 1;
    if (entry.position !== position) return { holds: false, position, why: `entry ${position} is missing` };
    if (entry.previousDigest !== previous)
      return { holds: false, position, why: `entry ${position} does not follow the one before it` };
    if (digestOf(entry) !== digest) return { holds: false, position, why: `entry ${position} was changed after it was written` };
    previous = digest;
  }
  return { holds: true, entries: position, head: previous };
}

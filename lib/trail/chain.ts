/** The chained record: each entry carries the digest of the one before, so that a change anywhere shows. */
import { hash } from "node:crypto";
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

export const sha256 = (text: string): string => hash("sha256", text, "hex");

const quoted = (text: string | null): string => (text === null ? "null" : JSON.stringify(text));

/** The RFC 8785 canonical JSON of an entry: what its digest is made of. Written out, because a whole record is many entries. */
export const entryJson = (entry: ChainedEntry): string =>
  `{"action":${quoted(entry.action)},"actorId":${quoted(entry.actorId)},"actorName":${quoted(entry.actorName)},"actorRole":${quoted(entry.actorRole)},"after":${quoted(entry.after)},"at":${quoted(entry.at)},"before":${quoted(entry.before)},"episodeId":${quoted(entry.episodeId)},"position":${entry.position},"previousDigest":${quoted(entry.previousDigest)},"recordId":${quoted(entry.recordId)},"recordKind":${quoted(entry.recordKind)},"wearerId":${quoted(entry.wearerId)}}`;

export const digestOf = (entry: ChainedEntry): string => sha256(entryJson(entry));

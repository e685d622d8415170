/** The record in a store's file, read over a connection of its own: only what was committed, and nothing is written. */
import Connection from "better-sqlite3";
import { type ChainedEntry, entryJson } from "@/lib/trail/chain";
import { entryJsonSql, hashedTime, storedColumns } from "@/lib/trail/stored-entry";
import type { ChainEnd, WalkedRow } from "@/lib/trail/walk-chain";

const pageLength = 1000;
const columns = storedColumns.map((column) => `"${column}"`).join(", ");

/** A signature, and the end that the chain had before it. */
export interface SignatureEnd {
  position: number;
  at: string;
  /** Null where it names none. */
  chainEnd: ChainEnd | null;
  /** Whether its evidence can be read. */
  readable: boolean;
}

export interface RecordFile {
  count: number;
  pages: Iterable<readonly WalkedRow[]>;
  /** What is hashed of an entry, made of its columns one by one. */
  jsonOf: (position: number) => string;
  signatures: readonly SignatureEnd[];
  connection: Connection.Database;
}

/** Everything that `read` sees is of one moment. @throws where the file cannot be read as a store of records */
export async function withRecordFile<Result>(file: string, read: (record: RecordFile) => Promise<Result>): Promise<Result> {
  const connection = new Connection(file, { readonly: true, fileMustExist: true, timeout: 10_000 });
  try {
    connection.exec("BEGIN");
    const count = connection.prepare("SELECT count(*) FROM TrailEntry").pluck().get() as number; // a count
    return await read({
      count,
      pages: pagesOf(connection),
      jsonOf: (position) => jsonOf(connection, position),
      signatures: signaturesOf(connection),
      connection,
    });
  } finally {
    connection.close();
  }
}

/** The last entry; null where there is none. */
export function headOf(file: string): ChainEnd | null {
  const connection = new Connection(file, { readonly: true, fileMustExist: true, timeout: 10_000 });
  try {
    const found = connection.prepare("SELECT position, digest FROM TrailEntry ORDER BY position DESC LIMIT 1").get();
    return (found as ChainEnd | undefined) ?? null; // the columns above
  } finally {
    connection.close();
  }
}

function* pagesOf(connection: Connection.Database): Generator<WalkedRow[]> {
  const statement = connection.prepare(
    `SELECT position, at, previousDigest, digest, ${entryJsonSql} FROM TrailEntry WHERE position > ? ORDER BY position LIMIT ${pageLength}`,
  );
  let after = Number.MIN_SAFE_INTEGER;
  for (;;) {
    const page = statement.raw().all(after) as WalkedRow[]; // the columns, in their order
    const last = page.at(-1);
    if (!last) return;
    yield page;
    after = last[0];
  }
}

function jsonOf(connection: Connection.Database, position: number): string {
  const found = connection.prepare(`SELECT ${columns} FROM TrailEntry WHERE position = ?`).get(position);
  const { digest: _own, ...entry } = found as ChainedEntry & { digest: string }; // the columns, by their names
  return entryJson({ ...entry, at: hashedTime(entry.at) ?? entry.at });
}

function signaturesOf(connection: Connection.Database): SignatureEnd[] {
  const rows = connection.prepare("SELECT position, at, evidence FROM SignOff ORDER BY position").all();
  return (rows as { position: number; at: string; evidence: string }[]) // the columns above
    .map(({ position, at, evidence }) => ({ position, at, ...endIn(evidence) }));
}

function endIn(evidence: string): Pick<SignatureEnd, "chainEnd" | "readable"> {
  try {
    const { trail } = JSON.parse(evidence);
    if (trail === undefined) return { chainEnd: null, readable: true };
    const { position, digest } = trail;
    return typeof position === "number" && typeof digest === "string"
      ? { chainEnd: { position, digest }, readable: true }
      : { chainEnd: null, readable: false };
  } catch {
    return { chainEnd: null, readable: false };
  }
}

/** Walks the chain from its first entry to its last, page by page, and says where it first breaks. */
import { setImmediate as othersFirst } from "node:timers/promises";
import { beginning, sha256 } from "./chain";
import { hashedTime } from "./stored-entry";

/** json: what is hashed */
export type WalkedRow = readonly [position: number, at: string, previousDigest: string, digest: string, json: string];

/** An entry that was, or is, the last of the chain. */
export interface ChainEnd {
  position: number;
  digest: string;
}

export interface ClockSetBack {
  position: number;
  from: string;
  to: string;
}

export interface Walked {
  entries: number;
  head: (ChainEnd & { at: string }) | null;
  /** Where the chain first breaks, and how. */
  broken: { position: number; why: string } | null;
  /** The digests that stand at the positions that were asked about. */
  digests: ReadonlyMap<number, string>;
  clockSetBack: readonly ClockSetBack[];
}

interface WalkOptions {
  /** How many entries there are, for `progress`. */
  total: number;
  /** Positions whose digests are wanted. */
  wanted: ReadonlySet<number>;
  /** Makes anew, the slow and sure way, what is hashed of an entry that seems to have been changed. */
  jsonOf: (position: number) => string;
  progress?: ((done: number, total: number) => void) | undefined;
}

/** Commands take the time at their beginning and are written in turn: so much disorder is none. */
const disorderMs = 2 * 60_000;

/** @param pages entries in the order of their positions; between two pages others get their turn */
export async function walkChain(pages: Iterable<readonly WalkedRow[]>, options: WalkOptions): Promise<Walked> {
  let entries = 0;
  let broken: Walked["broken"] = null;
  const digests = new Map<number, string>();
  const clockSetBack: ClockSetBack[] = [];
  const last = { position: 0, digest: beginning as string, at: "" };
  for (const page of pages) {
    for (const row of page) {
      entries += 1;
      const at = hashedTime(row[1]);
      if (broken === null && !follows(row, entries, last.digest, at))
        broken = breakAt(row, { expected: entries, at, last, ...options });
      if (at !== null && isSetBack(last.at, at)) clockSetBack.push({ position: row[0], from: last.at, to: at });
      if (options.wanted.has(row[0])) digests.set(row[0], row[3]);
      last.position = row[0];
      last.digest = row[3];
      last.at = at ?? last.at;
    }
    options.progress?.(entries, Math.max(options.total, entries));
    await othersFirst();
  }
  return { entries, head: entries === 0 ? null : last, broken, digests, clockSetBack };
}

// One entry after the other, tens of thousands of them: no object is made of what is right.
const follows = (row: WalkedRow, expected: number, previous: string, at: string | null): boolean =>
  row[0] === expected && row[2] === previous && at !== null && sha256(row[4]) === row[3];

interface Expected extends Pick<WalkOptions, "jsonOf"> {
  expected: number;
  at: string | null;
  last: ChainEnd;
}

function breakAt(row: WalkedRow, { expected, at, last, jsonOf }: Expected): Walked["broken"] {
  const [position, , previousDigest, digest] = row;
  if (position !== expected)
    return { position: expected, why: `entry ${expected} is missing; the next one found is ${position}` };
  if (previousDigest !== last.digest)
    return {
      position,
      why: `entry ${position} does not follow the one before it: entries were put in another order, taken out, or written anew`,
    };
  if (at === null) return { position, why: `the time of entry ${position} was changed after it was written` };
  return sha256(jsonOf(position)) === digest ? null : { position, why: `entry ${position} was changed after it was written` };
}

/** Instants of one form are in order where their texts are; only where they are not is there anything to reckon. */
const isSetBack = (before: string, at: string): boolean => at < before && Date.parse(before) - Date.parse(at) > disorderMs;

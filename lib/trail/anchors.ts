/**
 * Ends of the chain that are kept apart from it: whoever takes entries away at its end, or writes it anew, has to
 * change this file too, and every copy of it.
 *
 * One line of JSON each, only ever added: {"at":"…","digest":"…","position":…}
 */
import { closeSync, existsSync, fsyncSync, openSync, readFileSync, writeSync } from "node:fs";
import path from "node:path";
import { headsBeside } from "./beside-database";
import { canonicalJson } from "./chain";
import type { ChainEnd } from "./walk-chain";

/** at: when it was kept */
export interface Anchor extends ChainEnd {
  at: string;
}

export interface Anchors {
  file: string;
  /** Whether there is such a file. */
  found: boolean;
  anchors: readonly Anchor[];
  /** Numbers of lines that say nothing. */
  unreadable: readonly number[];
}

/** @throws where there is a file and it cannot be read */
export function readAnchors(databaseFile: string): Anchors {
  const file = headsBeside(databaseFile);
  if (!existsSync(file)) return { file, found: false, anchors: [], unreadable: [] };
  const anchors: Anchor[] = [];
  const unreadable: number[] = [];
  for (const [index, line] of readFileSync(file, "utf8").split("\n").entries()) {
    if (line.trim() === "") continue;
    const anchor = anchorOf(line);
    if (anchor) anchors.push(anchor);
    else unreadable.push(index + 1);
  }
  return { file, found: true, anchors, unreadable };
}

/** Adds one, on disk when this returns. */
export function keepAnchor(databaseFile: string, { position, digest, at }: Anchor): void {
  const file = headsBeside(databaseFile);
  const isNew = !existsSync(file);
  // A line that was cut short, as by a power cut, stays one line.
  const begin = isNew || readFileSync(file, "utf8").endsWith("\n") ? "" : "\n";
  onDisk(file, "a", (open) => writeSync(open, `${begin}${canonicalJson({ position, digest, at })}\n`));
  if (isNew) onDisk(path.dirname(file), "r", () => undefined);
}

function onDisk(file: string, flags: "a" | "r", write: (open: number) => void): void {
  const open = openSync(file, flags, 0o600);
  try {
    write(open);
    fsyncSync(open);
  } finally {
    closeSync(open);
  }
}

function anchorOf(line: string): Anchor | null {
  try {
    const { position, digest, at } = JSON.parse(line);
    const isOne = Number.isSafeInteger(position) && position > 0 && typeof digest === "string" && typeof at === "string";
    return isOne ? { position, digest, at } : null;
  } catch {
    return null;
  }
}

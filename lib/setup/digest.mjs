// @ts-check
// Tells whether something made from sources is still the one that they would give.
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import path from "node:path";
import { root } from "./environment.mjs";

/**
 * @param {string[]} sources files and folders, relative to the root; absent ones count as empty
 * @param {string[]} [leftOut] folders that do not count
 * @returns {string} SHA-256 over names and contents, with this Node's version
 */
export function digestOf(sources, leftOut = []) {
  const hash = createHash("sha256").update(process.version);
  for (const file of sources.flatMap((source) => filesUnder(source, leftOut)).sort()) {
    hash.update(`\n${file}\n`).update(readFileSync(path.join(root, file)));
  }
  return hash.digest("hex");
}

/**
 * @param {string} source
 * @param {string[]} leftOut
 * @returns {string[]}
 */
function filesUnder(source, leftOut) {
  const place = path.join(root, source);
  if (leftOut.includes(source) || !existsSync(place)) return [];
  if (!statSync(place).isDirectory()) return [source];
  return readdirSync(place).flatMap((name) => filesUnder(`${source}/${name}`, leftOut));
}

/**
 * Makes something again where its sources have changed since it was made.
 *
 * @param {{ stampFile: string, digest: string }} made stampFile: relative to the root
 * @param {() => Promise<void>} make
 * @returns {Promise<boolean>} whether it was made
 */
export async function makeIfChanged({ stampFile, digest }, make) {
  const stamp = path.join(root, stampFile);
  if (existsSync(stamp) && readFileSync(stamp, "utf8") === digest) return false;
  // A failed attempt must not leave the impression that what lies there is whole.
  rmSync(stamp, { force: true });
  await make();
  mkdirSync(path.dirname(stamp), { recursive: true });
  writeFileSync(stamp, digest);
  return true;
}

// @ts-check
// A store with the invented clinic as of any day.
import { randomBytes } from "node:crypto";
import { existsSync } from "node:fs";
import path from "node:path";
import { parseArgs } from "node:util";
import { ensureClient } from "./build.mjs";
import { headsOf, keysOf, makeInventedClinic } from "./clinic-files.mjs";
import { ensurePackages } from "./packages.mjs";
import { explain, sayOnStandardError, step } from "./say.mjs";
import { Stop } from "./stop.mjs";

const usage = "Usage: npm run --silent invent -- --today 2027-02-28 --to FILE";

/**
 * @param {string[]} words of the command line
 * @returns {Promise<number>} exit code: 0 made, 2 the day or the file cannot be used
 */
export async function inventStore(words) {
  const wanted = wantedStore(words);
  if (wanted instanceof Stop) {
    explain(wanted);
    return 2;
  }
  sayOnStandardError();
  await ensurePackages();
  await step("Database client", ensureClient);
  // Nobody has signed in yet: whoever serves the store signs sessions with a secret of their own.
  const secret = randomBytes(32).toString("base64url");
  const printed = await makeInventedClinic(wanted.file, { secret, today: wanted.today });
  console.log(printed.trimEnd().split("\n").at(-1));
  return 0;
}

/**
 * @param {string[]} words
 * @returns {{ today: string, file: string } | Stop}
 */
function wantedStore(words) {
  const { today, to } = read(words);
  if (today === undefined || to === undefined) return new Stop("Say the day and the file.", usage);
  if (!isDay(today)) return new Stop(`"${today}" is no day of the calendar.`, `Write it as 2027-02-28. ${usage}`);
  const file = path.resolve(to);
  const there = [file, keysOf(file), headsOf(file), `${file}-wal`].find((name) => existsSync(name));
  if (there !== undefined)
    return new Stop(`${there} exists already; nothing was changed.`, "Name a file that does not exist yet.");
  if (!existsSync(path.dirname(file))) return new Stop(`There is no folder ${path.dirname(file)}.`, "Make it first.");
  return { today, file };
}

/**
 * @param {string[]} words
 * @returns {{ today?: string, to?: string }}
 */
function read(words) {
  try {
    return parseArgs({ args: words, options: { today: { type: "string" }, to: { type: "string" } } }).values;
  } catch {
    return {};
  }
}

/** @param {string} text */
function isDay(text) {
  if (!/^\d{4}-\d\d-\d\d$/.test(text)) return false;
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}

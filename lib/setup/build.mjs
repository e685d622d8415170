// @ts-check
// The two things that are made from the sources: the database client and the site.
import { randomBytes } from "node:crypto";
import { tmpdir } from "node:os";
import path from "node:path";
import { digestOf, makeIfChanged } from "./digest.mjs";
import { buildLiveApp } from "./live-app.mjs";
import { lastLines, runScript } from "./run.mjs";
import { Stop } from "./stop.mjs";

/**
 * @returns {Promise<string>} what came of it
 * @throws {Stop} where the generator fails
 */
export async function ensureClient() {
  const digest = digestOf(["prisma/schema.prisma", "package-lock.json"]);
  const made = await makeIfChanged({ stampFile: "lib/generated/schema.sha256", digest }, async () => {
    const { code, output } = await runScript("prisma", ["generate", "--config", "prisma/prisma.config.ts"]);
    if (code !== 0)
      throw new Stop(
        `The database client could not be made:\n${lastLines(output)}`,
        "The lines above say where prisma/schema.prisma is wrong.",
      );
  });
  return made ? "made" : "up to date";
}

/**
 * @returns {Promise<string>} what came of it
 * @throws {Stop} where the build fails
 */
export async function ensureBuilt() {
  const made = await makeIfChanged({ stampFile: ".next/sources.sha256", digest: digestOfSite() }, async () => {
    const { code, output } = await runScript("next", ["build"], { env: settingsForBuilding });
    if (code !== 0)
      throw new Stop(
        `The site could not be built:\n${lastLines(output, 40)}`,
        "The lines above say what is wrong; npm test checks each part by itself.",
      );
    await buildLiveApp();
  });
  return made ? "built" : "up to date";
}

function digestOfSite() {
  const sources = [
    "app",
    "lib",
    "prisma/schema.prisma",
    "proxy.ts",
    "next.config.js",
    "tsconfig.json",
    "package-lock.json",
    "lib/setup/live-app.mjs",
  ];
  return digestOf(sources, ["lib/setup", "lib/generated"]);
}

/** Building loads the pages' modules, but serves nobody: it gets a secret and a database of nobody. */
const settingsForBuilding = {
  BETTER_AUTH_SECRET: randomBytes(32).toString("base64url"),
  DATABASE_URL: `file:${path.join(tmpdir(), "fitting-ledger-no-such.db")}`,
};

// @ts-check
// The common course of `npm run demo` and `npm start`: packages, client, site, database, server.
import { existsSync } from "node:fs";
import path from "node:path";
import { ensureBuilt, ensureClient } from "./build.mjs";
import { bringUpToDate, inventedAccounts, isEmpty, keptSecret, makeInventedClinic, requireDataFolder } from "./clinic-files.mjs";
import { databasePath, dataFolder, root, wantedPlace } from "./environment.mjs";
import { ensurePackages } from "./packages.mjs";
import { endWith, secondsSince, step } from "./say.mjs";
import { requireFreePort, startServer } from "./server.mjs";
import { Stop } from "./stop.mjs";

/**
 * Serves the invented clinic from data/demo.db.
 *
 * @param {{ afresh: boolean }} manner afresh: throw away what was changed in an earlier demo
 * @returns {Promise<number>} exit code, when the server has ended
 */
export function serveDemo({ afresh }) {
  const file = path.join(dataFolder, "demo.db");
  const prepareDatabase = async (/** @type {string} */ secret) => {
    if (!afresh && existsSync(file)) {
      const outcome = await bringUpToDate(file);
      if (!(await isEmpty(file))) return outcome;
    }
    await makeInventedClinic(file, { secret });
    return "made, invented clinic loaded";
  };
  return serve({
    title: "Fitting Ledger with an invented clinic",
    file,
    prepareDatabase: (secret) => prepareDatabase(secret).catch(offerToStartAfresh),
    lastWords: async () => describeAccounts(await inventedAccounts()),
  });
}

/**
 * Serves a clinic's own records from DATABASE_URL or data/clinic.db.
 *
 * @returns {Promise<number>} exit code, when the server has ended
 */
export function serveClinic() {
  const file = databasePath(process.env.DATABASE_URL ?? `file:${path.join(dataFolder, "clinic.db")}`);
  return serve({
    title: "Fitting Ledger",
    file,
    prepareDatabase: () => bringUpToDate(file),
    lastWords: async () => ((await isEmpty(file)) ? "No account exists yet: the first page makes the first administrator." : ""),
  });
}

/**
 * @param {{
 *   title: string,
 *   file: string,
 *   prepareDatabase: (secret: string) => Promise<string>,
 *   lastWords: () => Promise<string>,
 * }} course file: the database; prepareDatabase gives what came of it; lastWords are said when the server runs
 */
async function serve({ title, file, prepareDatabase, lastWords }) {
  const begun = performance.now();
  console.log(`${title}\n`);
  const place = wantedPlace();
  await requireFreePort(place);
  requireDataFolder();
  await ensurePackages();
  await step("Database client", ensureClient);
  await step("Site (the first time about a minute)", ensureBuilt);
  const secret = keptSecret();
  await step(`Database ${path.relative(root, file)}`, () => prepareDatabase(secret));
  const words = await lastWords();

  const server = await startServer({ place, file, secret, onOutput: (text) => process.stdout.write(text) });
  let asked = false;
  endWith(async () => {
    asked = true;
    console.log("\nStopping …");
    await server.stop();
    console.log("Stopped.");
  });
  console.log(`\nOpen ${server.address}  (ready after ${secondsSince(begun)}; Ctrl-C stops it)`);
  if (place.host !== "127.0.0.1")
    console.log(`It listens on ${place.host}: whoever reaches this machine reaches the sign-in page.`);
  if (words !== "") console.log(`\n${words}`);
  const code = await server.ended;
  if (asked) return 0;
  throw new Stop(
    `The server ended by itself (exit code ${code}).`,
    "The lines above say why. Start it again; nothing that was saved is lost.",
  );
}

/**
 * @param {unknown} error
 * @returns {never}
 */
function offerToStartAfresh(error) {
  if (!(error instanceof Stop)) throw error;
  throw new Stop(error.message, `${error.remedy}\nThe demo's records are invented; to make them anew: npm run demo -- --afresh`);
}

/** @param {Awaited<ReturnType<typeof inventedAccounts>>} invented */
function describeAccounts({ accounts, password }) {
  const widest = Math.max(...accounts.map(({ email }) => email.length));
  const rows = accounts.map(({ email, name, role }) => `  ${email.padEnd(widest)}  ${name}, ${role}`);
  return [`Invented accounts, each with the password ${password}`, ...rows, "No such people, no such clinic."].join("\n");
}

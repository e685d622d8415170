// @ts-check
// The common course of `npm run demo` and `npm start`: packages, client, site, database, server.
import { existsSync } from "node:fs";
import path from "node:path";
import { ensureBuilt, ensureClient } from "./build.mjs";
import { bringUpToDate, inventedAccounts, isEmpty, keptSecret, makeInventedClinic, requireDataFolder } from "./clinic-files.mjs";
import { dataFolder, root, wantedPlace } from "./environment.mjs";
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
  return serve("Fitting Ledger with an invented clinic", `file:${file}`, async (secret) => {
    try {
      await step(`Database ${path.relative(root, file)}`, async () => {
        if (!afresh && existsSync(file)) {
          const outcome = await bringUpToDate(`file:${file}`);
          if (!(await isEmpty(file))) return outcome;
        }
        await makeInventedClinic(file, secret);
        return "made, invented clinic loaded";
      });
    } catch (error) {
      throw error instanceof Stop
        ? new Stop(error.message, `${error.remedy}\nThe demo's records are invented; to make them anew: npm run demo -- --afresh`)
        : error;
    }
    return describeAccounts(await inventedAccounts());
  });
}

/**
 * Serves a clinic's own records from DATABASE_URL or data/clinic.db.
 *
 * @returns {Promise<number>} exit code, when the server has ended
 */
export function serveClinic() {
  return serve("Fitting Ledger", clinicDatabase, async (file) => {
    await step(`Database ${path.relative(root, file)}`, () => bringUpToDate(`file:${file}`));
    return (await isEmpty(file)) ? "No account exists yet: the first page makes the first administrator." : "";
  });
}

/**
 * @param {string} title
 * @param {string} databaseUrl
 * @param {(secret: string) => Promise<string>} prepareDatabase gives what is said once the server runs
 */
async function serve(title, databaseUrl, prepareDatabase) {
  const begun = performance.now();
  console.log(`${title}\n`);
  const place = wantedPlace();
  await requireFreePort(place);
  requireDataFolder();
  await ensurePackages();
  await step("Database client", ensureClient);
  await step("Site (the first time about a minute)", ensureBuilt);
  const secret = keptSecret();
  const lastWords = await prepareDatabase(secret);

  const server = await startServer({ place, databaseUrl, secret, onOutput: (text) => process.stdout.write(text) });
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
  if (lastWords !== "") console.log(`\n${lastWords}`);
  const code = await server.ended;
  if (asked) return 0;
  throw new Stop(
    `The server ended by itself (exit code ${code}).`,
    "The lines above say why. Start it again; nothing that was saved is lost.",
  );
}

/** @param {Awaited<ReturnType<typeof inventedAccounts>>} invented */
function describeAccounts({ accounts, password }) {
  const widest = Math.max(...accounts.map(({ email }) => email.length));
  const rows = accounts.map(({ email, name, role }) => `  ${email.padEnd(widest)}  ${name}, ${role}`);
  return [`Invented accounts, each with the password ${password}`, ...rows, "No such people, no such clinic."].join("\n");
}

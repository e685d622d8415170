// What every browser test starts from: a clinic of its own, and somebody signed in.
//
//   import { expect, test } from "./clinic";
//   test.use({ signedInAs: "technician" });          // prosthetist where nothing is said; "nobody" for the sign-in page
//   test.use({ records: "none" });                   // a clinic where nothing was recorded yet; goes with "nobody"
//   test("…", async ({ page, clinic }) => { await page.goto("/"); … });
//
// Each spec file has the records as they were loaded: tests of one file see each other's records, no others. The server
// stays, because a warm one answers sooner; between two files its database is put back.
import { copyFileSync, existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { test as base } from "@playwright/test";
import Database from "better-sqlite3";
import { headsOf, keysOf } from "../../lib/setup/clinic-files.mjs";
import { type ClinicServer, serveDatabase } from "./clinic-server";
import { clockOffsetMs, emptyClinic, inventedClinic, moveClock, signedInState } from "./prepared";

export { expect } from "@playwright/test";

export type ClinicOptions = {
  signedInAs: "prosthetist" | "assistant" | "technician" | "administrator" | "nobody";
  records: "invented" | "none";
};

/** file: the database, for a test that looks at what was written. */
export type OpenClinic = ClinicServer & { file: string };

type Opener = { clinicFor(specFile: string, records: ClinicOptions["records"]): Promise<OpenClinic> };

export const test = base.extend<ClinicOptions & { clinic: OpenClinic }, { opener: Opener }>({
  // Every page of every context has the clinic's time.
  browser: [
    async ({ browser }, use) => {
      const newContext = browser.newContext.bind(browser);
      browser.newContext = async (options) => {
        const context = await newContext(options);
        await context.addInitScript(moveClock, clockOffsetMs());
        return context;
      };
      await use(browser);
    },
    { scope: "worker" },
  ],

  signedInAs: ["prosthetist", { option: true }],
  records: ["invented", { option: true }],

  opener: [
    // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the fixtures that are needed from this pattern.
    async ({}, use) => {
      const open = new Map<ClinicOptions["records"], Awaited<ReturnType<typeof openClinic>> & { specFile: string }>();
      await use({
        async clinicFor(specFile, records) {
          const there = open.get(records) ?? { specFile, ...(await openClinic(records)) };
          open.set(records, there);
          if (there.specFile !== specFile) {
            await there.putBack();
            there.specFile = specFile;
          }
          return there.clinic;
        },
      });
      for (const { close } of open.values()) await close();
    },
    { scope: "worker" },
  ],

  clinic: async ({ opener, records }, use, testInfo) => {
    const clinic = await opener.clinicFor(testInfo.file, records);
    await use(clinic);
    if (testInfo.status !== testInfo.expectedStatus) await testInfo.attach("what the server said", { body: clinic.log() });
  },

  baseURL: async ({ clinic }, use) => use(clinic.address),

  storageState: async ({ signedInAs }, use) => use(signedInAs === "nobody" ? undefined : signedInState(signedInAs)),
});

async function openClinic(records: ClinicOptions["records"]) {
  const folder = mkdtempSync(path.join(tmpdir(), "fitting-ledger-clinic-"));
  const [file, template] = [path.join(folder, "clinic.db"), records === "none" ? emptyClinic() : inventedClinic()];
  copyFileSync(template, file);
  if (records !== "none") copyFileSync(keysOf(template), keysOf(file));
  const server = await serveDatabase(file, records === "none" ? {} : { clockOffsetMs: clockOffsetMs() });
  const putBack = async () => {
    await writeOver(file, template);
    // The ends of the record that were kept since belong to what is gone.
    if (existsSync(headsOf(template))) copyFileSync(headsOf(template), headsOf(file));
    else rmSync(headsOf(file), { force: true });
  };
  const close = async () => {
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  };
  return { clinic: { ...server, file }, putBack, close };
}

/** Puts the records of one database into another, which a server has open: in one step, as a transaction of its own. */
async function writeOver(file: string, template: string): Promise<void> {
  const database = new Database(template, { readonly: true });
  try {
    await database.backup(file, { progress: () => 1_000_000 });
  } finally {
    database.close();
  }
}

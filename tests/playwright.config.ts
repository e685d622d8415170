import { defineConfig } from "@playwright/test";
import { browserFile } from "../lib/setup/environment.mjs";
import type { ClinicOptions } from "./screens/clinic";

const report = process.env.PLAYWRIGHT_JSON_OUTPUT_FILE;

export default defineConfig<ClinicOptions>({
  testDir: "screens",
  outputDir: "../test-results",
  globalSetup: "./screens/prepare.ts",
  workers: 2,
  retries: 0,
  forbidOnly: true,
  // What is slow and rare runs in `npm run test:all`.
  ...(process.env.FITTING_LEDGER_TEST_ALL ? {} : { grepInvert: /@slow/ }),
  timeout: 60_000,
  expect: { timeout: 10_000 },
  reporter: report === undefined ? "list" : [["list"], ["json", { outputFile: report }]],
  use: {
    launchOptions: { executablePath: browserFile, args: ["--no-sandbox", "--disable-gpu"] },
    viewport: { width: 1440, height: 900 },
    locale: "en-GB",
    // Watching every step costs time: TRACE=1 npm run screens -- NAME shows what a test that fails did.
    trace: process.env.TRACE ? "retain-on-failure" : "off",
  },
  projects: [
    { name: "sign-in", testMatch: "sign-in.setup.ts" },
    // The longest first, so that no browser is left to itself at the end.
    { name: "whole job", testMatch: "whole-job.spec.ts", dependencies: ["sign-in"] },
    { name: "screens", testMatch: "*.spec.ts", testIgnore: "whole-job.spec.ts", dependencies: ["sign-in"] },
  ],
});

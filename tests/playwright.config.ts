import { defineConfig } from "@playwright/test";
import type { ClinicOptions } from "./screens/clinic";

const report = process.env.PLAYWRIGHT_JSON_OUTPUT_FILE;

export default defineConfig<ClinicOptions>({
  testDir: "screens",
  outputDir: "../test-results",
  globalSetup: "./screens/prepare.ts",
  workers: 2,
  retries: 0,
  forbidOnly: true,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  reporter: report === undefined ? "list" : [["list"], ["json", { outputFile: report }]],
  use: {
    launchOptions: { executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: ["--no-sandbox"] },
    viewport: { width: 1440, height: 900 },
    locale: "en-GB",
    trace: "retain-on-failure",
  },
  projects: [
    { name: "sign-in", testMatch: "sign-in.setup.ts" },
    { name: "screens", testMatch: "*.spec.ts", dependencies: ["sign-in"] },
  ],
});

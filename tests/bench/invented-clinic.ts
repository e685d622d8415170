/** A browser, and the site as it is built, on an invented clinic of its own. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { type Browser, chromium, type Page } from "@playwright/test";
import { ensureBuilt, ensureClient } from "../../lib/setup/build.mjs";
import { makeInventedClinic } from "../../lib/setup/clinic-files.mjs";
import { browserFile } from "../../lib/setup/environment.mjs";
import { demoAccounts, demoPassword } from "../../prisma/invented-clinic/accounts";
import { serveDatabase } from "../screens/clinic-server";
import { secret } from "../screens/prepared";

type Clinic = { address: string; file: string };

export async function onInventedClinic<Result>(measure: (browser: Browser, clinic: Clinic) => Promise<Result>): Promise<Result> {
  await ensureClient();
  await ensureBuilt();
  const folder = mkdtempSync(path.join(tmpdir(), "fitting-ledger-bench-"));
  const file = path.join(folder, "clinic.db");
  await makeInventedClinic(file, { secret });
  const server = await serveDatabase(file);
  const browser = await chromium.launch({ executablePath: browserFile, args: ["--no-sandbox"] });
  try {
    return await measure(browser, { address: server.address, file });
  } finally {
    await browser.close();
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

export async function signIn(page: Page) {
  const account = demoAccounts.find(({ role }) => role === "prosthetist");
  if (!account) throw new Error("the invented clinic has a prosthetist");
  await page.goto("/sign-in");
  await page.getByLabel("E-mail").fill(account.email);
  await page.getByLabel("Password").fill(demoPassword);
  await page.getByRole("button", { name: "Sign in" }).click();
  await page.waitForURL((url) => !url.pathname.includes("sign-in"));
}

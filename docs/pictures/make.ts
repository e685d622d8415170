/**
 * Takes the pictures of these docs from the running demo, so that they stay true:
 *
 *   npm run demo                                       (in one window)
 *   npx tsx docs/pictures/make.ts http://localhost:3000  (in another)
 */
import path from "node:path";
import { chromium } from "@playwright/test";
import { browserFile } from "@/lib/setup/environment.mjs";
import { demoAccounts, demoPassword } from "@/prisma/invented-clinic/accounts";

const address = process.argv[2] ?? "http://localhost:3000";
const lead = demoAccounts.find(({ role }) => role === "prosthetist");
if (!lead) throw new Error("the invented clinic has a prosthetist");

const browser = await chromium.launch({ executablePath: browserFile, args: ["--no-sandbox"] });
const signIn = await browser.newPage();
await signIn.goto(`${address}/sign-in`);
await signIn.getByLabel("E-mail").fill(lead.email);
await signIn.getByLabel("Password").fill(demoPassword);
await signIn.getByRole("button", { name: "Sign in" }).click();
await signIn.waitForURL("**/today");
const storageState = await signIn.context().storageState();

for (const { width, colorScheme, ending } of [
  { width: 1440, colorScheme: "light", ending: "1440" },
  { width: 1440, colorScheme: "dark", ending: "1440-dark" },
  { width: 360, colorScheme: "light", ending: "360" },
] as const) {
  const context = await browser.newContext({ storageState, colorScheme, viewport: { width, height: 1200 } });
  const page = await context.newPage();
  const take = async (name: string) => {
    await page.waitForTimeout(500);
    await page.screenshot({ path: path.join(import.meta.dirname, `${name}-${ending}.png`) });
  };
  await page.goto(`${address}/today`);
  await take("today");
  // The boat builder: a long series that ends well.
  await page.getByRole("link", { name: "Tomé Vilarinho" }).first().click();
  await page.getByRole("heading", { name: "The series" }).waitFor();
  await take("episode");
  await context.close();
}
await browser.close();

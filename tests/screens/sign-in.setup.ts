// One account of each role signs in once, as a person does; every other test starts with the session kept here.
import { expect, test } from "@playwright/test";
import { closeJournal } from "../../lib/setup/clinic-files.mjs";
import { demoPassword } from "../../prisma/invented-clinic/accounts";
import { type ClinicServer, serveDatabase } from "./clinic-server";
import { accountsThatSignIn, clockOffsetMs, inventedClinic, signedInState } from "./prepared";

let server: ClinicServer;

test.beforeAll(async () => {
  server = await serveDatabase(inventedClinic(), { clockOffsetMs: clockOffsetMs() });
});

test.afterAll(async () => {
  await server.stop();
  await closeJournal(inventedClinic());
});

for (const { email, role } of accountsThatSignIn) {
  test(`the ${role} signs in with e-mail and password`, async ({ page }) => {
    await page.goto(`${server.address}/sign-in`);
    await page.getByLabel("E-mail").fill(email);
    await page.getByLabel("Password").fill(demoPassword);
    await page.getByRole("button", { name: "Sign in" }).click();
    await expect(page).not.toHaveURL(/sign-in/);
    await page.context().storageState({ path: signedInState(role) });
  });
}

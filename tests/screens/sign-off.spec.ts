import { spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import path from "node:path";
import { createOTP } from "@better-auth/utils/otp";
import type { Browser, Page } from "@playwright/test";
import { demoPassword, staff } from "../../prisma/invented-clinic/accounts";
import { expect, test } from "./clinic";
import { expectNoViolations } from "./page-checks";
import { clinicNow, signedInState } from "./prepared";
import { stored } from "./stored";

test.describe.configure({ mode: "serial", timeout: 120_000 });

const root = path.resolve(import.meta.dirname, "../..");

/** Evidence that a prosthetist can sign as it stands. */
const ready = (file: string) =>
  stored(file, "SELECT id FROM Episode WHERE decision = 'ready' AND stage = 'awaiting sign-off' AND struckOutAt IS NULL LIMIT 1");

async function signRelease(page: Page, episodeId: string) {
  await page.goto(`/episodes/${episodeId}/sign-off`);
  await page.getByRole("group", { name: "What the signature means" }).getByText("release for definitive fabrication").click();
  await page.getByLabel("Your password, again").fill(demoPassword);
  await page.getByRole("button", { name: "Sign", exact: true }).click();
  await expect(page.getByRole("heading", { name: "Release for definitive fabrication" })).toBeVisible();
}

async function signIn(browser: Browser, address: string, email: string) {
  const page = await (await browser.newContext({ storageState: { cookies: [], origins: [] } })).newPage();
  await page.goto(`${address}/sign-in`);
  await page.getByLabel("E-mail").fill(email);
  await page.getByLabel("Password").fill(demoPassword);
  await page.getByRole("button", { name: "Sign in" }).click();
  await expect(page).not.toHaveURL(/sign-in$|sign-in\?/);
  return page;
}

let episodeId = "";

test("a prosthetist signs, and anyone with the file and the public key can check it; one digit altered is caught", async ({
  page,
  clinic,
}, testInfo) => {
  episodeId = ready(clinic.file).id ?? "";
  await signRelease(page, episodeId);
  await expect(page.getByRole("heading", { name: "Checked now: what was signed is unaltered." })).toBeVisible();
  await page.getByText("What was checked, and how to check it elsewhere").click();
  await expect(page.getByText(/was signed with the clinic's key/)).toBeVisible();
  await expectNoViolations(page);

  const release = await (await page.request.get(`${page.url()}/file`)).text();
  const keys = await (await page.request.get(`${clinic.address}/releases/public-keys.json`)).text();
  expect(keys).not.toContain('"d"');
  const verify = (text: string) => {
    const [file, key] = [testInfo.outputPath("release.json"), testInfo.outputPath("keys.json")];
    writeFileSync(file, text);
    writeFileSync(key, keys);
    const tsx = path.join(root, "node_modules/tsx/dist/cli.mjs");
    return spawnSync(process.execPath, [tsx, "lib/exchange/verify.ts", file, "--key", key], { cwd: root, encoding: "utf8" });
  };
  expect(verify(release)).toMatchObject({ status: 0, stdout: expect.stringContaining("The release holds.") });
  const altered = release.replace(/"circumferenceMm":(\d+)/, (_, mm) => `"circumferenceMm":${Number(mm) + 1}`);
  expect(verify(altered)).toMatchObject({ status: 4, stdout: expect.stringContaining("The evidence was altered") });
});

test("the same request sent again, and the same page signed in another tab, sign nothing", async ({ page }) => {
  await page.goto(`/episodes/${episodeId}/sign-off`);
  await expect(page.getByText("This socket is signed for.")).toBeVisible();
  await expect(page.getByRole("button", { name: "Sign", exact: true })).toHaveCount(0);
});

test("the wrong model was poured: the signature is withdrawn with a reason, and the sheet says so to the bench", async ({
  page,
  clinic,
  browser,
}) => {
  const { id } = stored(clinic.file, `SELECT id FROM SignOff WHERE episodeId = '${episodeId}' ORDER BY position DESC`);
  await page.goto(`/releases/${id}`);
  await page.getByRole("link", { name: "Withdraw this signature" }).click();
  await page.getByLabel("Why it is withdrawn").fill("The wrong model was poured.");
  await page.getByLabel("Your password, again").fill("not the password");
  await page.getByRole("button", { name: "Withdraw the signature" }).click();
  await expect(page.getByText("This is not your password. Nothing was signed.").first()).toBeVisible();
  await expect(page.getByLabel("Why it is withdrawn")).toHaveValue("The wrong model was poured.");
  await page.getByLabel("Your password, again").fill(demoPassword);
  await page.getByRole("button", { name: "Withdraw the signature" }).click();
  await expect(page.getByRole("note").filter({ hasText: "Withdrawn" })).toContainText("The wrong model was poured.");

  const bench = await (await browser.newContext({ storageState: signedInState("technician") })).newPage();
  await bench.goto(`${clinic.address}/releases/${id}`);
  await expect(bench.getByRole("note").filter({ hasText: "Withdrawn" })).toContainText("Do not make anything from this sheet");
  await bench.goto(`${clinic.address}/workshop`);
  await expect(bench.locator(`a[href="/releases/${id}"]`)).toHaveCount(0);
  await bench.context().close();
});

test("it is signed again, and the second signature names the first as the one before it", async ({ page, clinic }) => {
  await signRelease(page, episodeId);
  const signature = (back: number) =>
    stored(
      clinic.file,
      `SELECT digest, previousDigest FROM SignOff WHERE episodeId = '${episodeId}' ORDER BY position DESC LIMIT 1 OFFSET ${back}`,
    );
  expect(signature(0).previousDigest).toBe(signature(1).digest);
  await page.goto(`/episodes/${episodeId}`);
  const signatures = page.getByRole("region", { name: "Signatures" });
  await expect(signatures.getByText(/withdrawn by .*The wrong model was poured/)).toBeVisible();
  const { kept } = stored(clinic.file, `SELECT COUNT(*) AS kept FROM SignOff WHERE episodeId = '${episodeId}'`);
  await expect(signatures.getByRole("listitem")).toHaveCount(Number(kept));
});

test("something on the sheet is put right: an addendum stands below, what was signed stays", async ({ page, clinic }) => {
  const { id } = stored(clinic.file, `SELECT id FROM SignOff WHERE episodeId = '${episodeId}' ORDER BY position DESC`);
  await page.goto(`/releases/${id}`);
  await page.getByRole("link", { name: "Put something right" }).click();
  await page.getByRole("button", { name: "Add it" }).click();
  await expect(page.getByText("What is put right is missing.").first()).toBeVisible();
  await page.getByLabel("What is put right").fill("The wall is 4 mm, not 3 mm.");
  await page.getByRole("button", { name: "Add it" }).click();
  await expect(page.getByText("The wall is 4 mm, not 3 mm.")).toBeVisible();
  await expect(page.getByRole("heading", { name: "Checked now: what was signed is unaltered." })).toBeVisible();
});

test("where the rules ask for it, a release waits for the second prosthetist", async ({ page, clinic, browser }) => {
  const rules = await (await browser.newContext({ storageState: signedInState("administrator") })).newPage();
  await rules.goto(`${clinic.address}/rules`);
  await rules.getByLabel("Ask for a second prosthetist’s signature on every release").check();
  await rules.getByRole("region", { name: "Countersigning" }).getByRole("button", { name: "Save" }).click();
  await expect(rules.getByText("A release is in force only once a second prosthetist has signed it as well.")).toBeVisible();
  await rules.context().close();

  const { id } = stored(
    clinic.file,
    `SELECT id FROM Episode WHERE decision = 'ready' AND stage = 'awaiting sign-off' AND struckOutAt IS NULL AND id <> '${episodeId}'`,
  );
  await signRelease(page, id ?? "");
  const sheet = page.url();
  await expect(page.getByRole("note").filter({ hasText: "Not in force yet" })).toBeVisible();
  await page.goto(`/episodes/${id}`);
  await expect(page.getByText(/signed the release; a second prosthetist signs it too/).first()).toBeVisible();
  await page.goto(`${sheet}/countersign`);
  await expect(page.getByText("You signed this yourself")).toBeVisible();

  const second = await signIn(browser, clinic.address, staff.junior.email);
  await second.goto(sheet);
  await second.getByRole("link", { name: "Countersign" }).click();
  await expect(second.getByRole("heading", { name: /^Ready/ })).toBeVisible();
  await expectNoViolations(second);
  await second.getByLabel("Your password, again").fill(demoPassword);
  await second.getByRole("button", { name: "Countersign" }).click();
  await expect(second).toHaveURL(sheet);
  await expect(second.getByText("Not in force yet")).toHaveCount(0);
  await expect(second.getByText(new RegExp(`Countersigned.*${staff.junior.name}`))).toBeVisible();
  await second.context().close();
});

test("codes of a device: set up, asked for at sign-in, asked for at the signature", async ({ clinic, browser }) => {
  const page = await signIn(browser, clinic.address, staff.junior.email);
  await page.goto(`${clinic.address}/my-second-factor`);
  await page.getByLabel("Your password").fill(demoPassword);
  await page.getByRole("button", { name: "Begin" }).click();
  await expect(page.getByRole("heading", { name: "1. Give it to your device" })).toBeVisible();
  await expectNoViolations(page);
  const key = ((await page.locator("code").first().textContent()) ?? "").replaceAll(/\s/g, "");
  const kept = (await page.getByRole("listitem").locator("code").first().textContent()) ?? "";
  const code = (atMs = Date.now()) => createOTP(fromBase32(key)).hotp(Math.floor(atMs / 30_000));
  await page.getByLabel("The code that your device shows now").fill("000000");
  await page.getByRole("button", { name: "Confirm" }).click();
  await expect(page.getByText("This is not the code of the moment").first()).toBeVisible();
  await page.getByLabel("The code that your device shows now").fill(await code());
  await page.getByRole("button", { name: "Confirm" }).click();
  await expect(page.getByText("A code of your device is asked for when you sign in")).toBeVisible();
  await page.context().close();

  const again = await (await browser.newContext({ storageState: { cookies: [], origins: [] } })).newPage();
  await again.goto(`${clinic.address}/sign-in?back=/my-second-factor`);
  await again.getByLabel("E-mail").fill(staff.junior.email);
  await again.getByLabel("Password").fill(demoPassword);
  await again.getByRole("button", { name: "Sign in" }).click();
  await expect(again.getByRole("heading", { name: "Your code" })).toBeVisible();
  await expectNoViolations(again);
  // Half a sign-in opens nothing.
  await again.goto(`${clinic.address}/today`);
  await expect(again).toHaveURL(/sign-in/);
  await again.goto(`${clinic.address}/sign-in/code?back=/my-second-factor`);
  await again.getByLabel("Code of your device").fill("000000");
  await again.getByRole("button", { name: "Go on" }).click();
  await expect(again.getByText("This code is not good now.").first()).toBeVisible();
  await again.getByLabel("Code of your device").fill(await code());
  await again.getByRole("button", { name: "Go on" }).click();
  await expect(again.getByRole("heading", { name: "Your second factor" })).toBeVisible();

  const { id } = stored(
    clinic.file,
    `SELECT SignOff.id FROM SignOff JOIN Episode ON Episode.id = episodeId
     WHERE meaning = 'release for definitive fabrication' AND stage = 'released' ORDER BY position DESC`,
  );
  await again.goto(`${clinic.address}/releases/${id}/withdraw`);
  await again.getByLabel("Why it is withdrawn").fill("The bench asked for another model.");
  await again.getByLabel("Your password, again").fill(demoPassword);
  await again.getByRole("button", { name: "Withdraw the signature" }).click();
  await expect(again.getByText("The code from your device is missing").first()).toBeVisible();
  await again.getByLabel("Your password, again").fill(demoPassword);
  await again.getByLabel("Code of your device").fill(await code(clinicNow()));
  await again.getByRole("button", { name: "Withdraw the signature" }).click();
  await expect(again.getByRole("note").filter({ hasText: "Withdrawn" })).toBeVisible();
  await again.context().close();

  // The device is lost: a code that was written down signs in, once.
  for (const heading of ["Your second factor", "Your code"]) {
    const lost = await (await browser.newContext({ storageState: { cookies: [], origins: [] } })).newPage();
    await lost.goto(`${clinic.address}/sign-in?back=/my-second-factor`);
    await lost.getByLabel("E-mail").fill(staff.junior.email);
    await lost.getByLabel("Password").fill(demoPassword);
    await lost.getByRole("button", { name: "Sign in" }).click();
    await lost.getByLabel("Code of your device").fill(kept);
    await lost.getByRole("button", { name: "Go on" }).click();
    if (heading === "Your code") await expect(lost.getByText("This code is not good now.").first()).toBeVisible();
    await expect(lost.getByRole("heading", { name: heading })).toBeVisible();
    await lost.context().close();
  }
});

/** RFC 4648; the device's key is written in it. */
function fromBase32(text: string): string {
  const bits = [...text]
    .map((letter) => "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567".indexOf(letter).toString(2).padStart(5, "0"))
    .join("");
  return String.fromCharCode(...(bits.match(/.{8}/g) ?? []).map((byte) => Number.parseInt(byte, 2)));
}

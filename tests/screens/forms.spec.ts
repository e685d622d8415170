import type { Page } from "@playwright/test";
import { expect, test } from "./clinic";
import { signedInState } from "./prepared";
import { stored } from "./stored";

const measured = (file: string) =>
  stored(
    file,
    `SELECT Episode.id, Episode.wearerId, Wearer.name FROM Episode JOIN Wearer ON Wearer.id = wearerId
     JOIN LimbMeasurement ON LimbMeasurement.episodeId = Episode.id WHERE stage = 'check sockets' AND level = 'transradial' AND struckOutAt IS NULL`,
  );

const levels = (page: Page) => page.getByRole("group", { name: "Circumferences" });

async function fillCircumferences(page: Page, first: string) {
  const rows = levels(page).getByLabel(/^circumference now/);
  const count = await rows.count();
  for (let row = 0; row < count; row += 1) await rows.nth(row).fill(row === 0 ? first : String(200 + row * 10));
  return count;
}

test("what was typed wrong is told at its field, and nothing else is lost", async ({ page, clinic }) => {
  const { id } = measured(clinic.file);
  await page.goto(`/episodes/${id}/measure`);
  await fillCircumferences(page, "about nineteen");
  await page.getByLabel("Minutes since doffing").fill("45");
  await page.getByLabel("Note").fill("after a long walk");
  await page.getByRole("button", { name: "Save the measurement" }).click();

  const summary = page.getByRole("alert").filter({ hasText: "One field needs another look." });
  await expect(summary).toBeFocused();
  await summary.getByRole("link", { name: /Give a number in mm/ }).click();
  const wrong = levels(page)
    .getByLabel(/^circumference now/)
    .first();
  await expect(wrong).toBeFocused();
  await expect(wrong).toHaveValue("about nineteen");
  await expect(wrong).toHaveAccessibleDescription(/Give a number in mm/);
  await expect(page.getByLabel("Note")).toHaveValue("after a long walk");
  await expect(page.getByLabel("Minutes since doffing")).toHaveValue("45");

  await wrong.fill("191,5");
  await page.getByRole("button", { name: "Save the measurement" }).click();
  await expect(page.getByRole("heading", { name: "The limb’s size" })).toBeVisible();
});

test("a time that has not come and a date that is none are refused", async ({ page, clinic }) => {
  const { id } = measured(clinic.file);
  await page.goto(`/episodes/${id}/measure`);
  await fillCircumferences(page, "190");
  await page.getByLabel("When", { exact: true }).fill("2099-01-01T10:00");
  await page.getByRole("button", { name: "Save the measurement" }).click();
  await expect(page.getByLabel("When", { exact: true })).toHaveAccessibleDescription(/has not come yet/);
});

test("a session that ends in the middle of a form loses nothing", async ({ page, context, clinic }) => {
  const { id } = measured(clinic.file);
  await page.goto(`/episodes/${id}/measure`);
  await fillCircumferences(page, "192");
  await page.getByLabel("Note").fill("kept through the end of a session");
  const session = await context.cookies();
  await context.clearCookies();
  await page.getByRole("button", { name: "Save the measurement" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "Your session has ended. Nothing was saved" })).toBeVisible();
  await expect(page.getByRole("link", { name: "Sign in again in another tab" })).toBeVisible();
  await expect(page.getByLabel("Note")).toHaveValue("kept through the end of a session");

  await context.addCookies(session);
  await page.getByRole("button", { name: "Save the measurement" }).click();
  await expect(page.getByText("kept through the end of a session")).toBeVisible();
});

test("two tabs change one wearer: the second is told, sees both, and chooses", async ({ context, clinic }) => {
  const { wearerId } = measured(clinic.file);
  const [one, two] = [await context.newPage(), await context.newPage()];
  for (const page of [one, two]) await page.goto(`/wearers/${wearerId}/change`);
  await one.getByLabel("What the wearer does").fill("mends nets");
  await one.getByRole("button", { name: "Save" }).click();
  await expect(one.getByText("mends nets")).toBeVisible();

  await two.getByLabel("What the wearer does").fill("builds boats");
  await two.getByRole("button", { name: "Save" }).click();
  await expect(two.getByText("was changed by someone else while you had it open")).toBeVisible();
  await expect(two.getByRole("row", { name: /mends nets builds boats/ })).toBeVisible();
  await expect(two.getByLabel("What the wearer does")).toHaveValue("builds boats");
  await two.getByRole("button", { name: "Save" }).click();
  await expect(two.getByText("builds boats")).toBeVisible();
});

test("a network that is gone leaves the form as it is", async ({ page, context, clinic }) => {
  const { id } = measured(clinic.file);
  await page.goto(`/episodes/${id}/measure`);
  await page.getByLabel("Note").fill("written without a network");
  await context.setOffline(true);
  await page.getByRole("button", { name: "Save the measurement" }).click();
  await expect(page.getByText("Not saved: the server could not be reached.")).toBeVisible();
  await expect(page.getByLabel("Note")).toHaveValue("written without a network");
});

test("without JavaScript a form comes back filled with its errors, and saves", async ({ browser, clinic }) => {
  const { id } = measured(clinic.file);
  const context = await browser.newContext({
    javaScriptEnabled: false,
    storageState: signedInState("assistant"),
    baseURL: clinic.address,
  });
  const page = await context.newPage();
  await page.goto(`/episodes/${id}/measure`);
  await fillCircumferences(page, "9000");
  await page.getByLabel("Note").fill("no script ran here");
  await page.getByRole("button", { name: "Save the measurement" }).click();
  await expect(page.getByText("A circumference is between 30 and 1200 mm.").first()).toBeVisible();
  await expect(page.getByLabel("Note")).toHaveValue("no script ran here");
  await levels(page)
    .getByLabel(/^circumference now/)
    .first()
    .fill("193");
  await page.getByRole("button", { name: "Save the measurement" }).click();
  await expect(page.getByText("no script ran here")).toBeVisible();
  await context.close();
});

test("an address that leads nowhere says so", async ({ page }) => {
  await page.goto("/episodes/no-such-episode");
  await expect(page.getByRole("heading", { name: "There is nothing at this address" })).toBeVisible();
});

test("a technician sees orders by number, and no wearer", async ({ browser, clinic }) => {
  const { id, wearerId, name } = measured(clinic.file);
  const context = await browser.newContext({ storageState: signedInState("technician"), baseURL: clinic.address });
  const page = await context.newPage();
  await page.goto("/");
  await expect(page.getByRole("heading", { name: "Workshop", level: 1 })).toBeVisible();
  await expect(page.getByText(name ?? "")).toHaveCount(0);
  for (const address of [`/wearers/${wearerId}`, `/episodes/${id}`, `/episodes/${id}/measure`, "/today"]) {
    await page.goto(address);
    await expect(page.getByRole("heading", { name: "This page is not for your account" })).toBeVisible();
  }
  expect((await page.request.get(`/episodes/${id}/bundle`)).status()).toBe(403);
  await context.close();
});

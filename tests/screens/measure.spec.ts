import type { Page } from "@playwright/test";
import { expect, test } from "./clinic";
import { expectNoViolations } from "./page-checks";
import { signedInState } from "./prepared";
import { stored } from "./stored";

test.use({ viewport: { width: 1280, height: 900 } });
test.describe.configure({ timeout: 120_000 });

const measured = (file: string) =>
  stored(
    file,
    `SELECT Episode.id, LimbMeasurement.stations FROM Episode JOIN LimbMeasurement ON LimbMeasurement.episodeId = Episode.id
     WHERE stage = 'check sockets' AND level = 'transradial' AND struckOutAt IS NULL ORDER BY LimbMeasurement.at DESC`,
  );

const lastTime = (stations: string | undefined): number[] =>
  (JSON.parse(stations ?? "[]") as { circumferenceMm: number }[]).map(({ circumferenceMm }) => circumferenceMm); // as the seed wrote it

const focused = (page: Page) => page.evaluate(() => document.activeElement?.getAttribute("name"));

/** The page answers to what is typed once its scripts run. */
const ready = (page: Page) => expect(page.getByRole("button", { name: "Add a level" })).toBeVisible();

test("down the limb by keyboard: Tab goes from circumference to circumference, and each is held against last time", async ({
  page,
  clinic,
}) => {
  const { id, stations } = measured(clinic.file);
  const before = lastTime(stations);
  await page.goto(`/episodes/${id}/measure`);
  await ready(page);
  await page.getByLabel("Minutes since doffing").fill("12");
  await expect(page.getByText("Less than 30 minutes")).toBeVisible();

  await page
    .getByLabel(/^circumference now/)
    .first()
    .focus();
  for (const [row, circumference] of before.entries()) {
    expect(await focused(page)).toBe(`stations.${row}.circumferenceMm`);
    await page.keyboard.type(String(circumference + (row === 1 ? 6 : 1)).replace(".", ","));
    await page.keyboard.press("Tab");
  }
  const levels = page.getByRole("group", { name: "Circumferences" });
  await expect(levels.getByRole("listitem").nth(0)).toContainText("+1 mm, no more than the tape’s error");
  await expect(levels.getByRole("listitem").nth(1)).toContainText("+6 mm, changed");
  await expect(levels.getByLabel(/^circumference now/).nth(1)).toHaveAccessibleDescription(/\+6 mm, changed/);
  const size = page.getByRole("complementary", { name: "The volume so far" });
  await expect(size).toContainText(/\d+\s±\s\d+\smL/);
  await expect(size).toContainText(/90 % interval −?\d+\.\d to −?\d+\.\d %/);

  // The distances are reached once they are asked for.
  await page.getByRole("button", { name: "Change the levels" }).press("Enter");
  await levels
    .getByLabel(/^circumference now/)
    .first()
    .focus();
  await page.keyboard.press("Shift+Tab");
  expect(await focused(page)).toBe("stations.0.distanceMm");
  await page.getByRole("button", { name: "Change the levels" }).press("Enter");
  await expectNoViolations(page);

  await page.getByRole("button", { name: "Save the measurement" }).press("Enter");
  await expect(page.getByRole("heading", { name: "The limb’s size" })).toBeVisible();
});

test("a second reading is folded away until asked for; ten pairs make the clinic's own tape error, and the rules say so", async ({
  page,
  clinic,
}) => {
  const { id, stations } = measured(clinic.file);
  const before = lastTime(stations);
  const times = Math.ceil(10 / before.length);
  for (let time = 0; time < times; time += 1) {
    await page.goto(`/episodes/${id}/measure`);
    await ready(page);
    const now = page.getByLabel(/^circumference now/);
    for (const [row, circumference] of before.entries()) await now.nth(row).fill(String(circumference));
    await expect(page.getByLabel(/^again, level 1/)).toBeHidden();
    await page.getByText("Measure again", { exact: true }).click();
    for (const [row, circumference] of before.entries())
      await page.getByLabel(new RegExp(`^again, level ${row + 1}`)).fill(String(circumference + 2));
    await expect(page.getByText("+2 mm from the first, no more than the tape’s error")).toHaveCount(before.length);
    await page.getByRole("button", { name: "Save the measurement" }).click();
    await expect(page.getByRole("heading", { name: "The limb’s size" })).toBeVisible();
  }
  await page.goto("/rules");
  // Every pair differs by 2 mm: s = √(2²/2) = 1.414 mm, by hand.
  await expect(page.getByText("In force: fit-rules/1; tape-error-mm 1.41")).toBeVisible();
  await expect(page.locator("#limit-tape-error-mm")).toContainText(
    `1.41 mm is this clinic’s own, from ${times * before.length} levels that were measured twice: s = √(Σd²/2n) = 1.414 mm`,
  );
  await page.goto(`/episodes/${id}/measure`);
  await expect(page.getByText("± 1.41 mm (one standard error)")).toBeVisible();
});

test("a jump is asked about at its field, and saved at once where it was confirmed there", async ({ page, clinic }) => {
  const { id, stations } = measured(clinic.file);
  const before = lastTime(stations);
  await page.goto(`/episodes/${id}/measure`);
  await ready(page);
  const now = page.getByLabel(/^circumference now/);
  for (const [row, circumference] of before.entries()) await now.nth(row).fill(String(circumference));
  await now.nth(1).fill("390 mm");
  const level = page.getByRole("group", { name: "Circumferences" }).getByRole("listitem").nth(1);
  await expect(level).toContainText("% more than at the level before");
  await page.getByRole("button", { name: "Save the measurement" }).click();
  await expect(now.nth(1)).toHaveAccessibleDescription(/Is it so\? Save once more if it is/);

  await now.nth(1).fill("391");
  for (const box of await page.getByRole("checkbox", { name: "it is so" }).all()) await box.check();
  await page.getByRole("button", { name: "Save the measurement" }).click();
  await expect(page.getByRole("heading", { name: "The limb’s size" })).toBeVisible();
});

test("on a phone in the dark nothing is cut off, and axe finds nothing", { tag: "@slow" }, async ({ browser, clinic }) => {
  const { id, stations } = measured(clinic.file);
  const context = await browser.newContext({
    storageState: signedInState("assistant"),
    baseURL: clinic.address,
    colorScheme: "dark",
    viewport: { width: 360, height: 780 },
  });
  const page = await context.newPage();
  await page.goto(`/episodes/${id}/measure`);
  await ready(page);
  for (const [row, circumference] of lastTime(stations).entries())
    await page
      .getByLabel(/^circumference now/)
      .nth(row)
      .fill(String(circumference * (row === 1 ? 1.5 : 1)));
  await page.getByText("Measure again", { exact: true }).click();
  await page.getByLabel(/^again, level 1/).fill("150");
  await page.getByRole("button", { name: "Change the levels" }).click();
  await expectNoViolations(page);
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(overflow).toBeLessThanOrEqual(0);
  await context.close();
});

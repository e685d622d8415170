import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import { expect, test } from "./clinic";
import { expectNothingWiderThanTheWindow, expectNoViolations } from "./page-checks";
import { stored } from "./stored";

const search = (page: Page) => page.getByRole("search", { name: "The record" });
const entries = (page: Page) => page.getByRole("table", { name: "Entries" });

/** The text of what a link downloads. */
async function downloaded(page: Page, name: RegExp) {
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("link", { name }).click()]);
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), "utf8") };
}

/** An entry with a before and an after that differ, and the day of it. */
const onHold = (file: string) =>
  stored(
    file,
    "SELECT position, actorName, substr(at, 1, 10) AS day, json_extract(after, '$.why') AS why FROM TrailEntry WHERE action = 'put an episode on hold'",
  );

test("a prosthetist finds who changed something by day and person, sees before and after, takes it along, and verifies it", async ({
  page,
  clinic,
}) => {
  const { position = "", actorName = "", day = "", why = "" } = onHold(clinic.file);
  await page.goto("/record");
  await search(page).getByLabel("who did it").fill(actorName);
  await search(page).getByLabel("first day").fill(day);
  await search(page).getByLabel("last day").fill(day);
  await search(page).getByLabel("words").fill("on hold");
  await search(page).getByRole("button", { name: "Find" }).click();
  await expect(page).toHaveURL(new RegExp(`from=${day}&to=${day}`));

  const entry = entries(page).getByRole("row").filter({ hasText: "put an episode on hold" }).first();
  await expect(entry).toContainText(actorName);
  await entry.getByText("before and after").click();
  const changed = page.getByRole("table", { name: `What entry ${position} changed` });
  await expect(changed.getByRole("row", { name: "course" })).toContainText("on hold");
  await expect(changed.getByRole("row", { name: "why" })).toContainText(why);
  await expect(entry.getByText('"course"')).toBeHidden();
  await entry.getByText("as it is kept").click();
  await expect(entry.getByText('"course": "on hold"')).toBeVisible();

  const table = await downloaded(page, /CSV/);
  expect(table.name).toMatch(/^record-\d{4}-\d\d-\d\d\.csv$/);
  expect(table.text).toContain("put an episode on hold");
  const { text } = await downloaded(page, /JSON lines/);
  const line = text.split("\n").find((one) => one.includes(`"position":${position},`)) ?? "";
  expect(createHash("sha256").update(line.slice(85, -1)).digest("hex")).toBe(JSON.parse(line).digest);

  await page.getByRole("link", { name: "Verify the chain" }).click();
  const check = page.getByRole("region", { name: "Can this record be trusted?" });
  await expect(check).toContainText("Nothing speaks against this record.");
  await expect(check).toContainText(/The chain holds over \d+ entries/);
  // What was looked for is still there.
  await expect(search(page).getByLabel("who did it")).toHaveValue(actorName);
  await expect(entries(page)).toContainText("put an episode on hold");

  await page.goto("/record");
  await expect(entries(page).getByRole("row", { name: "exported the record" })).toHaveCount(2);
});

test("a wearer is found by name, and that is itself in the record", async ({ page, clinic }) => {
  const { name = "", id = "" } = stored(clinic.file, "SELECT name, id FROM Wearer ORDER BY clinicNumber");
  await page.goto("/record");
  await search(page).getByLabel("wearer").fill(name);
  await search(page).getByRole("button", { name: "Find" }).click();
  await expect(entries(page)).toContainText("added a wearer");
  await expect(page.getByText(/entries, of 1 wearer$/)).toBeVisible();
  const { count } = stored(
    clinic.file,
    `SELECT count(*) AS count FROM TrailEntry WHERE action LIKE 'looked for a wearer in the record%' AND wearerId = '${id}'`,
  );
  expect(Number(count)).toBeGreaterThan(0);
});

test("days in the wrong order are said at the field, and nothing that was typed is lost", async ({ page }) => {
  await page.goto("/record");
  await search(page).getByLabel("who did it").fill("Somebody");
  await search(page).getByLabel("first day").fill("2026-11-10");
  await search(page).getByLabel("last day").fill("2026-11-01");
  await search(page).getByRole("button", { name: "Find" }).click();
  const last = search(page).getByLabel("last day");
  await expect(last).toHaveAttribute("aria-invalid", "true");
  await expect(last).toHaveAccessibleDescription(/lies before the first/);
  await expect(last).toHaveValue("2026-11-01");
  await expect(search(page).getByLabel("who did it")).toHaveValue("Somebody");
  await expect(entries(page)).toHaveCount(0);

  await page.goto("/record?from=yesterday");
  await expect(search(page).getByLabel("first day")).toHaveAccessibleDescription(/no date of the calendar/);
  const refused = await page.request.get("/record/entries.csv?from=yesterday");
  expect(refused.status()).toBe(400);
});

test("nothing is cut off and nothing is in the way of assistive technology, on a phone and on a wide window", async ({
  page,
}) => {
  await page.goto("/record?verify=yes");
  await expect(page.getByText("Nothing speaks against this record.")).toBeVisible();
  await page.evaluate(() => {
    for (const folded of [...document.querySelectorAll("details")].slice(0, 24)) folded.open = true;
  });
  for (const width of [360, 1440]) {
    await page.setViewportSize({ width, height: 900 });
    await expectNothingWiderThanTheWindow(page, `${width}`);
    await expectNoViolations(page, `${width}`);
  }
});

test.describe("the bench", () => {
  test.use({ signedInAs: "technician" });
  test("sees no record and exports none", async ({ page }) => {
    await page.goto("/record");
    await expect(page).toHaveURL(/not-allowed/);
    expect((await page.request.get("/record/entries.jsonl")).status()).toBe(403);
  });
});

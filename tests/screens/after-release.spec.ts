import type { Page } from "@playwright/test";
import { toClinicTime } from "@/lib/records/clinic-time";
import { expect, test } from "./clinic";
import { expectNoViolations } from "./page-checks";
import { clinicNow, signedInState } from "./prepared";
import { stored } from "./stored";

test.describe.configure({ mode: "serial", timeout: 120_000 });

/** A release that stands and was not delivered yet. */
const release = (file: string) =>
  stored(
    file,
    `SELECT SignOff.id, episodeId FROM SignOff JOIN Episode ON Episode.id = episodeId
     WHERE meaning = 'release for definitive fabrication' AND stage = 'released' AND struckOutAt IS NULL`,
  );

const fits = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

test("the socket came back: it is measured against its sheet, and the tape says what it cannot show", async ({
  page,
  clinic,
}) => {
  const { id, episodeId } = release(clinic.file);
  await page.goto(`/episodes/${episodeId}`);
  await page.getByRole("link", { name: "Was the definitive socket made as specified?" }).click();
  await expect(page.getByText("The definitive socket was not measured yet.")).toBeVisible();
  await expectNoViolations(page);
  const hint = (await page.getByText(/^At the levels of the sheet/).textContent()) ?? "";
  const specified = [...hint.matchAll(/([\d.]+) mm at (\d+)/g)].map(([, circumference]) => Number(circumference));
  expect(specified.length).toBeGreaterThan(1);
  const fields = page.getByLabel("inside circumference");
  await page.getByRole("radio", { name: /by tape/ }).check();
  for (const [index, circumference] of specified.entries()) await fields.nth(index).fill(String(circumference));
  await page.getByRole("button", { name: "Save the check" }).click();
  await expect(page).toHaveURL(`/releases/${id}/made`);
  await expect(page.getByText("it cannot be shown that it was made as specified")).toBeVisible();
  await expect(page.getByText(/A tape is too coarse/)).toBeVisible();

  // Three of them 6 mm too wide.
  await page.getByRole("radio", { name: /from a scan/ }).check();
  for (const [index, circumference] of specified.entries()) await fields.nth(index).fill(String(circumference + 6));
  await page.getByRole("button", { name: "Save the check" }).click();
  await expect(page.getByText("not made as specified", { exact: true })).toBeVisible();
  await page.goto(`/episodes/${episodeId}`);
  await page.getByText("The definitive socket was delivered", { exact: true }).click();
  await page.getByLabel("When").fill(toClinicTime(new Date(clinicNow()), "Europe/Lisbon"));
  await page.getByRole("button", { name: "Record the delivery" }).click();
  await expect(page.getByText(/was not made as the release sheet says\. Is it so\?/).first()).toBeVisible();
});

test("the prosthetist plans the wearing, and the wearer gets a page to tick", async ({ page, clinic }) => {
  const { id } = release(clinic.file);
  await page.goto(`/releases/${id}/wearing`);
  await page.getByRole("link", { name: "Plan the wearing" }).click();
  await expectNoViolations(page);
  await page.getByLabel("First day of wearing").fill("2031-03-03");
  await page.getByLabel("Whom the wearer calls, and how").fill("Tidewater Limb Clinic, 555 0100");
  await page.getByLabel("What you add, in plain words").fill("Wear the thin sock under it.");
  await page.getByRole("button", { name: "Save the schedule" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Getting used to your new socket" })).toBeVisible();
  const days = page.getByRole("table", { name: /How long to wear the socket/ });
  await expect(days.getByRole("row", { name: /^Monday 3 March (15|30) minutes/ })).toBeVisible();
  await expect(days.getByRole("row", { name: /^from \w+day \d+ March all day/ })).toBeVisible();
  await expect(page.getByText("Call: Tidewater Limb Clinic, 555 0100")).toBeVisible();
  await expect(page.getByText("Wear the thin sock under it.")).toBeVisible();
  for (const width of [360, 768, 1440]) {
    await page.setViewportSize({ width, height: 900 });
    expect(await fits(page)).toBeLessThanOrEqual(0);
    await expectNoViolations(page);
  }
  for (const format of ["A4", "Letter"]) {
    const pdf = await page.pdf({ preferCSSPageSize: true, format });
    expect(pdf.toString("latin1").match(/\/Type\s*\/Page\b/g), format).toHaveLength(1);
  }
});

test("an assistant prints the schedule and does not change it; a technician sees the check and no schedule", async ({
  browser,
  clinic,
}) => {
  const { id } = release(clinic.file);
  const as = async (role: string) =>
    (await browser.newContext({ storageState: signedInState(role), baseURL: clinic.address })).newPage();
  const assistant = await as("assistant");
  await assistant.goto(`/releases/${id}/wearing`);
  await expect(assistant.getByRole("heading", { level: 1 })).toHaveText("Getting used to your new socket");
  await expect(assistant.getByRole("link", { name: "Change the schedule" })).toHaveCount(0);
  await assistant.goto(`/releases/${id}/wearing/change`);
  await expect(assistant).toHaveURL(/not-allowed/);
  const technician = await as("technician");
  await technician.goto(`/releases/${id}/wearing`);
  await expect(technician).toHaveURL(/not-allowed/);
  await technician.goto(`/releases/${id}/made`);
  await expect(technician.getByText("not made as specified", { exact: true })).toBeVisible();
  for (const page of [assistant, technician]) await page.context().close();
});

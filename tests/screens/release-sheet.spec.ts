import type { Page } from "@playwright/test";
import { readPdf } from "../pdf-text";
import { expect, test } from "./clinic";
import { expectNoViolations } from "./page-checks";
import { signedInState } from "./prepared";
import { stored } from "./stored";

test.describe.configure({ mode: "serial", timeout: 120_000 });
test.use({ signedInAs: "technician" });

/** A release that stands, with something carried into the definitive socket and a reason for it. */
const release = (file: string) =>
  stored(
    file,
    `SELECT SignOff.id, SignOff.digest, SignOff.episodeId, Adjustment.reason FROM SignOff
     JOIN Episode ON Episode.id = SignOff.episodeId JOIN Adjustment ON Adjustment.carriedFromId = SignOff.socketId
     WHERE meaning = 'release for definitive fabrication' AND stage = 'released' AND droppedAt IS NULL
       AND NOT EXISTS (SELECT 1 FROM Withdrawal WHERE signOffId = SignOff.id) LIMIT 1`,
  );

const fits = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

test("the technician opens the sheet from the workshop, reads what to make, and no reason for it", async ({ page, clinic }) => {
  const { id, reason = "" } = release(clinic.file);
  await page.goto("/workshop");
  await page.locator(`a[href="/releases/${id}"]`).click();
  await expect(page.getByRole("heading", { level: 1, name: "Release for definitive fabrication" })).toBeVisible();
  const dimensions = page.getByRole("table");
  await expect(dimensions.getByRole("columnheader")).toHaveText([/^from /, "limb", /^socket \d/, "definitive"]);
  await expect(page.getByRole("img", { name: "Where the carried adjustments go" })).toBeVisible();
  await expect(page.getByRole("heading", { name: "When it comes back" })).toBeVisible();
  expect(reason.length).toBeGreaterThan(5);
  expect(await page.content()).not.toContain(reason);
  for (const width of [360, 768, 1440]) {
    await page.setViewportSize({ width, height: 900 });
    expect(await fits(page)).toBeLessThanOrEqual(0);
    await expectNoViolations(page);
  }
});

test("the PDF says the same, on A4 and Letter", async ({ page, clinic }) => {
  const { id, digest = "", reason = "" } = release(clinic.file);
  await page.goto(`/releases/${id}`);
  const rows = await page
    .getByRole("row")
    .evaluateAll((found) => found.map((row) => Array.from(row.children, (cell) => cell.textContent).join(" ")));
  expect(rows.length).toBeGreaterThan(3);
  for (const [paper, width] of [
    ["A4", 595],
    ["Letter", 612],
  ] as const) {
    const href = (await page.getByRole("link", { name: paper, exact: true }).getAttribute("href")) ?? "";
    const answer = await page.request.get(href);
    expect(answer.headers()["content-type"]).toBe("application/pdf");
    const { text, pages, size, language } = await readPdf(await answer.body());
    expect(pages).toBeLessThanOrEqual(2);
    expect([size.width, language]).toEqual([width, "en"]);
    expect(text.replaceAll(" ", "")).toContain(digest);
    for (const row of rows) expect(text).toContain(row);
    expect(text).not.toContain(reason);
  }
  expect((await page.request.get(`/releases/${id}/sheet.pdf?paper=papyrus`)).status()).toBe(400);
  expect((await page.request.get("/releases/none/sheet.pdf")).status()).toBe(404);
});

test("the page prints as the same sheet: two pages at the most, without the questions and the check", async ({
  page,
  clinic,
}) => {
  const { id, digest = "" } = release(clinic.file);
  await page.goto(`/releases/${id}`);
  for (const format of ["A4", "Letter"]) {
    const { text, pages } = await readPdf(await page.pdf({ format, preferCSSPageSize: true }));
    expect(pages).toBeLessThanOrEqual(2);
    expect(text.replaceAll(" ", "")).toContain(digest);
    for (const notPrinted of ["Checked now", "Ask about this sheet", "Workshop"]) expect(text).not.toContain(notPrinted);
  }
});

test("the code on a paper sheet leads to whether that sheet stands", async ({ page, clinic }) => {
  const { id, digest } = release(clinic.file);
  await page.goto(`/releases/${id}?digest=${digest}`);
  await expect(page.getByRole("status")).toHaveText("Your sheet is this one, and it stands.");
  await page.goto(`/releases/${id}?digest=${digest?.replace(/^./, (first) => (first === "0" ? "1" : "0"))}`);
  await expect(page.getByRole("status")).toContainText("Your sheet was altered, or belongs to another release.");
});

test("the technician has read it and asks; a prosthetist sees the question today and answers; the bench reads the answer", async ({
  page,
  clinic,
  browser,
}) => {
  const { id, episodeId } = release(clinic.file);
  await page.goto(`/releases/${id}`);
  await page.getByRole("button", { name: "I have read this sheet" }).click();
  await expect(page.getByText(/^Ruta Salgueiro read this sheet/)).toBeVisible();
  await expect(page.getByRole("button", { name: "I have read this sheet" })).toHaveCount(0);
  await page.getByLabel("Ask about this sheet").fill("How far do I round the brim?");
  await page.getByRole("button", { name: "Ask", exact: true }).click();
  await expect(page.getByText("How far do I round the brim?")).toBeVisible();
  await expect(page.getByText("Not answered yet.")).toBeVisible();

  const prosthetist = await (
    await browser.newContext({ storageState: signedInState("prosthetist"), baseURL: clinic.address })
  ).newPage();
  await prosthetist.goto(`/episodes/${episodeId}`);
  await expect(prosthetist.getByRole("region", { name: "The bench asks" })).toContainText("How far do I round the brim?");
  await prosthetist.goto("/today");
  const asked = prosthetist.getByRole("region", { name: "The bench asks" });
  await expect(asked).toContainText("How far do I round the brim?");
  await asked.getByRole("link").click();
  await expectNoViolations(prosthetist);
  await prosthetist.getByLabel("Your answer").fill("Six millimetres, all round.");
  await prosthetist.getByRole("button", { name: "Answer" }).click();
  await expect(prosthetist.getByText("Six millimetres, all round.")).toBeVisible();
  await prosthetist.goto("/today");
  await expect(asked).toHaveCount(0);
  await prosthetist.context().close();

  await page.reload();
  await expect(page.getByText("Six millimetres, all round.")).toBeVisible();
  await page.goto("/workshop");
  await expect(page.getByText(/sheet read by Ruta Salgueiro/)).toBeVisible();
});

import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { type Browser, expect, type Page, test } from "@playwright/test";
import Database from "better-sqlite3";
import { serveDatabase } from "./clinic-server";
import { clockOffsetMs, inventedClinic, signedInState } from "./prepared";
import { stored } from "./stored";

const status = (page: Page) =>
  page
    .getByRole("status")
    .filter({ hasText: /sent|to send|Keeping/ })
    .first();
const allSent = (page: Page) => expect(status(page)).toContainText("All sent", { timeout: 30_000 });

async function checkIn(page: Page, comfort: number, exertion: number) {
  for (const [question, figure] of [
    [/How comfortable/, comfort],
    [/How much does it hurt/, 1],
    [/How hard/, exertion],
  ] as const)
    await page.getByRole("group", { name: question }).getByText(String(figure), { exact: true }).click();
  const wearer = page.getByRole("radio", { name: "the wearer" });
  if (!(await wearer.isChecked())) await wearer.check();
  await page.getByRole("button", { name: "Save this check-in" }).click();
  await expect(page.getByText(/Check-in \d+ saved\./)).toBeVisible();
}

async function openOn(browser: Browser, address: string, role: string) {
  const context = await browser.newContext({ storageState: signedInState(role), viewport: { width: 390, height: 780 } });
  const page = await context.newPage();
  await page.goto(address);
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));
  return page;
}

test("a whole trial on two devices, the network cut twice and the server killed once: nothing lost, nothing doubled", async ({
  browser,
}) => {
  test.setTimeout(180_000);
  const folder = mkdtempSync(path.join(tmpdir(), "fitting-ledger-live-"));
  const file = path.join(folder, "clinic.db");
  copyFileSync(inventedClinic(), file);
  const { id } = stored(file, "SELECT id FROM WearTrial WHERE state = 'planned'");
  const manner = { clockOffsetMs: clockOffsetMs() };
  let server = await serveDatabase(file, manner);
  const port = Number(new URL(server.address).port);
  const address = `${server.address}/live/trial#${id}`;
  const [phone, tablet] = [await openOn(browser, address, "assistant"), await openOn(browser, address, "prosthetist")];

  await phone.getByRole("button", { name: "The socket is on: begin" }).click();
  await expect(tablet.getByRole("timer", { name: "worn" })).toBeVisible();
  await checkIn(phone, 10, 0);
  await checkIn(tablet, 9, 1);

  await phone.context().setOffline(true);
  await checkIn(phone, 8, 2);
  // The page is closed without a network, and opened again.
  await phone.reload();
  await expect(status(phone)).toContainText("Kept on this device: 1 to send");
  await checkIn(phone, 8, 3);
  await checkIn(tablet, 7, 4);
  await phone.context().setOffline(false);
  await allSent(phone);

  await tablet.context().setOffline(true);
  await checkIn(tablet, 7, 5);
  await server.kill();
  await checkIn(phone, 6, 6);
  await expect(status(phone)).toContainText("Kept on this device: 1 to send");
  await tablet.context().setOffline(false);
  await checkIn(tablet, 6, 7);
  server = await serveDatabase(file, { ...manner, port });
  for (const page of [phone, tablet]) await allSent(page);

  await phone.getByRole("button", { name: "End the trial early" }).click();
  await phone.getByRole("button", { name: "Yes, end it now" }).click();
  await phone.getByRole("button", { name: "The socket is off" }).click();
  await expect(tablet.getByRole("heading", { name: /The skin, 0 minutes/ })).toBeVisible({ timeout: 20_000 });
  await tablet.getByRole("checkbox", { name: /No mark anywhere/ }).check();
  await tablet.getByRole("button", { name: "Save this look" }).click();
  await expect(phone.getByText("Nothing is left to see. The trial is done.")).toBeVisible({ timeout: 20_000 });
  for (const page of [phone, tablet]) await page.context().close();
  await server.stop();

  const database = new Database(file, { readonly: true });
  const recorded = database
    .prepare("SELECT kind, comfort, exertion FROM TrialEvent WHERE trialId = ? ORDER BY at, id")
    .all(id)
    .map((row) =>
      Object.values(row as object)
        .filter((value) => value !== null)
        .join(" "),
    ); // better-sqlite3 types a row as unknown
  const [looks, aside] = ["SkinInspection", "SetAsideEvent"].map((table) =>
    database.prepare(`SELECT count(*) FROM ${table} WHERE trialId = ?`).pluck().get(id),
  );
  database.close();
  // Two clocks are put right to within the time of an answer: which of two check-ins came first is not told apart here.
  const checkIns = ["10 0", "9 1", "8 2", "8 3", "7 4", "7 5", "6 6", "6 7"].map((ratings) => `check-in ${ratings}`);
  expect(recorded.toSorted()).toEqual(["begun", ...checkIns, "ended", "doffed"].toSorted());
  expect([recorded[0], ...recorded.slice(-2)]).toEqual(["begun", "ended", "doffed"]);
  expect([looks, aside]).toEqual([1, 0]);
  rmSync(folder, { recursive: true, force: true });
});

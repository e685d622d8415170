import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { type BrowserContext, chromium, type Page } from "@playwright/test";
import { browserFile } from "@/lib/setup/environment.mjs";
import { demoAccounts, demoPassword } from "@/prisma/invented-clinic/accounts";
import { expect, test } from "./clinic";
import { signedInState } from "./prepared";
import { stored } from "./stored";

const socketToFit = (file: string) =>
  stored(
    file,
    `SELECT CheckSocket.id FROM CheckSocket JOIN Episode ON Episode.id = CheckSocket.episodeId
     WHERE Episode.level = 'transradial' AND Episode.stage = 'check sockets' AND CheckSocket.state IN ('at hand', 'fitted')
     AND CheckSocket.id NOT IN (SELECT socketId FROM SignOff) AND Episode.struckOutAt IS NULL ORDER BY CheckSocket.number DESC`,
  );

const fittingsOf = (file: string, socketId: string | undefined) =>
  Number(stored(file, `SELECT COUNT(*) AS count FROM Fitting WHERE socketId = '${socketId}'`).count);

const line = (page: Page) =>
  page
    .locator("form", { has: page.getByRole("button", { name: "Save the fitting" }) })
    .getByRole("status")
    .first();
const radio = (page: Page, question: string, choice: string) =>
  page.getByRole("group", { name: new RegExp(`^${question}`) }).getByRole("radio", { name: choice, exact: true });

/** One field of every kind that the form has. */
async function fillSome(page: Page) {
  await radio(page, "Where", "home").check({ force: true });
  await radio(page, "The limb is seated fully", "concern").check({ force: true });
  await radio(page, "How comfortable is the socket?", "8").check({ force: true });
  await radio(page, "Pain", "not asked").check({ force: true });
  const pulls = page.getByRole("group", { name: "Pulls", exact: true });
  await pulls.getByLabel("load").nth(2).fill("45");
  await pulls.getByRole("button", { name: "Add a pull" }).click();
  await pulls.getByLabel("load").nth(3).fill("60");
  await pulls.getByRole("button", { name: "remove pull 1" }).click();
  await page.getByRole("group", { name: "Motion", exact: true }).getByLabel("movement").first().selectOption("elbow-extension");
  await page.getByText("Not all of it was seen").click();
  await page.getByLabel("pulls", { exact: true }).check();
  await page.getByLabel(/own words/).fill("It pinches “here”.\nOnly when I lift.");
  await expect(line(page)).toHaveText(/^Kept on this device at \d\d:\d\d\.$/);
}

async function expectSome(page: Page) {
  await expect(radio(page, "Where", "home")).toBeChecked();
  await expect(radio(page, "The limb is seated fully", "concern")).toBeChecked();
  await expect(radio(page, "The wearer gets into it", "met")).not.toBeChecked();
  await expect(radio(page, "How comfortable is the socket?", "8")).toBeChecked();
  await expect(radio(page, "Pain", "not asked")).toBeChecked();
  const loads = page.getByRole("group", { name: "Pulls", exact: true }).getByLabel("load");
  await expect(loads.nth(1)).toHaveValue("45");
  await expect(loads.nth(2)).toHaveValue("60");
  await expect(page.getByRole("group", { name: "Motion", exact: true }).getByLabel("movement").first()).toHaveValue(
    "elbow-extension",
  );
  await expect(page.getByLabel("pulls", { exact: true })).toBeChecked();
  await expect(page.getByLabel(/own words/)).toHaveValue("It pinches “here”.\nOnly when I lift.");
}

test.beforeEach(async ({ page, clinic }) => {
  await page.goto(`/sockets/${socketToFit(clinic.file).id}/fitting`);
});

test("a draft is there after a reload, in every kind of field, until it is saved", async ({ page, clinic }) => {
  const { id } = socketToFit(clinic.file);
  const before = fittingsOf(clinic.file, id);
  await fillSome(page);
  await page.reload();
  await expect(line(page)).toHaveText(/^Taken up again: what was kept on this device at \d\d:\d\d\.$/);
  await expectSome(page);
  await page.getByRole("group", { name: "Pulls", exact: true }).getByLabel("displaced").nth(1).fill("2,4");
  await page.getByRole("group", { name: "Pulls", exact: true }).getByLabel("displaced").nth(2).fill("3");
  await page.getByRole("button", { name: "Save the fitting" }).click();
  await expect(page.getByRole("heading", { name: /what next$/ })).toBeVisible();
  expect(fittingsOf(clinic.file, id)).toBe(before + 1);

  await page.goto(`/sockets/${id}/fitting`);
  await expect(line(page)).toHaveText("What you type is kept on this device as you go.");
  await expect(radio(page, "Where", "home")).not.toBeChecked();
});

test("a tab that was closed without a word left its draft, and another tab takes it up and says so", async ({
  page,
  context,
}) => {
  await fillSome(page);
  const address = page.url();
  await page.close();
  const later = await context.newPage();
  await later.goto(address);
  await expect(line(later)).toHaveText(/^Taken up from another tab: a draft kept on this device at \d\d:\d\d\.$/);
  await expectSome(later);
});

test("going elsewhere in the program and coming back by the address finds the draft", async ({ page }) => {
  await fillSome(page);
  await page.getByRole("link", { name: "Rules" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Rules" })).toBeVisible();
  await page.goBack();
  await expectSome(page);
});

test("a lost session: saved, refused, signed in again, and everything is there", async ({ page, context, clinic }) => {
  const { id } = socketToFit(clinic.file);
  await fillSome(page);
  await context.clearCookies();
  await page.getByRole("button", { name: "Save the fitting" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "Your session has ended. Nothing was saved" })).toBeVisible();
  await expect(page.getByRole("link", { name: /^Sign in/ })).toHaveCount(1);
  await page.goto(`/sockets/${id}/fitting`);
  await page.getByLabel("E-mail").fill(demoAccounts.find(({ role }) => role === "prosthetist")?.email ?? "");
  await page.getByLabel("Password").fill(demoPassword);
  await page.getByRole("button", { name: "Sign in" }).click();
  await expect(page.getByRole("heading", { level: 1, name: /^Fitting of socket/ })).toBeVisible();
  await expectSome(page);
});

test("a save whose answer was lost is not saved twice, even after a reload", async ({ page, clinic }) => {
  const { id } = socketToFit(clinic.file);
  const before = fittingsOf(clinic.file, id);
  await radio(page, "Where", "clinic").check({ force: true });
  await page.getByLabel("Note").fill("the answer is lost");
  await page.route(page.url(), async (route) => {
    if (route.request().method() !== "POST") return route.continue();
    await route.fetch({ maxRedirects: 0 });
    await route.abort();
  });
  await page.getByRole("button", { name: "Save the fitting" }).click();
  await expect(page.getByText("Not saved: the server could not be reached.")).toBeVisible();
  expect(fittingsOf(clinic.file, id)).toBe(before + 1);
  await page.unroute(page.url());
  await page.reload();
  await expect(page.getByLabel("Note")).toHaveValue("the answer is lost");
  await page.getByRole("button", { name: "Save the fitting" }).click();
  await expect(page.getByRole("heading", { name: /what next$/ })).toBeVisible();
  expect(fittingsOf(clinic.file, id)).toBe(before + 1);
});

test("two tabs: each is told of the other, nothing is merged, and a save in one is told in the other", async ({
  page,
  context,
}) => {
  await page.getByLabel("Note").fill("typed in the first");
  const second = await context.newPage();
  await second.goto(page.url());
  await expect(line(second)).toHaveText(/^Taken up from another tab/);
  await expect(second.getByLabel("Note")).toHaveValue("typed in the first");

  await second.getByLabel("Note").fill("typed in the second");
  await expect(line(page)).toHaveText(/typed into in another tab at \d\d:\d\d\. What stands here is as it was before/);
  await expect(page.getByLabel("Note")).toHaveValue("typed in the first");
  await page.getByRole("button", { name: "Take up what was typed there" }).click();
  await expect(page.getByLabel("Note")).toHaveValue("typed in the second");
  await expect(line(page)).toHaveText(/^Taken up from another tab/);

  await radio(page, "Where", "clinic").check({ force: true });
  await page.getByRole("button", { name: "Save the fitting" }).click();
  await expect(page.getByRole("heading", { name: /what next$/ })).toBeVisible();
  await expect(line(second)).toHaveText(/^Saved or discarded in another tab/);
});

test("a draft that is discarded can be brought back, and what is typed after that is another record", async ({ page }) => {
  await fillSome(page);
  const idOf = () => page.locator('input[name="id"]').inputValue();
  const first = await idOf();
  await page.getByRole("button", { name: /^Discard it/ }).click();
  await expect(line(page)).toHaveText("Discarded.");
  await expect(page.getByLabel(/own words/)).toHaveValue("");
  await expect(radio(page, "Where", "home")).not.toBeChecked();
  expect(await idOf()).not.toBe(first);
  await expect(page.getByRole("button", { name: "Undo" })).toBeFocused();
  await page.getByRole("button", { name: "Undo" }).click();
  await expectSome(page);
  expect(await idOf()).toBe(first);
  await page.getByRole("button", { name: /^Discard it/ }).click();
  await page.reload();
  await expect(line(page)).toHaveText("What you type is kept on this device as you go.");
  await expect(page.getByLabel(/own words/)).toHaveValue("");
});

test("another person at the same device does not see it", async ({ page, browser, clinic }) => {
  await fillSome(page);
  const device = await page.context().storageState();
  const origins = device.origins;
  const { cookies } = JSON.parse(readFileSync(signedInState("assistant"), "utf8"));
  const context = await browser.newContext({ storageState: { cookies, origins }, baseURL: clinic.address });
  const other = await context.newPage();
  await other.goto(new URL(page.url()).pathname);
  expect(await other.evaluate(() => Object.keys(localStorage).length)).toBe(1);
  await expect(line(other)).toHaveText("What you type is kept on this device as you go.");
  await expect(other.getByLabel(/own words/)).toHaveValue("");
  await context.close();
});

test("a store that is full or forbidden is said plainly", async ({ page }) => {
  await page.evaluate(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
  });
  await page.getByLabel("Note").fill("a");
  await expect(line(page)).toHaveText(/^Not kept on this device: its store is full\. Save before you leave this page/);
});

test("what is typed before the page's scripts have come is laid over the draft, and the caret stays", async ({ page }) => {
  await fillSome(page);
  let release = () => {};
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  await page.route(/\/_next\/static\/.*\.js/, async (route) => {
    await held;
    await route.continue();
  });
  await page.reload({ waitUntil: "commit" });
  await page.getByLabel("Who was there").pressSequentially("Sister");
  await radio(page, "Where", "video").check({ force: true });
  await page.getByLabel("Note").pressSequentially("early");
  await page.keyboard.press("ArrowLeft");
  release();
  await expect(line(page)).toHaveText(/^(?:Taken up again|Kept on this device)/);
  await expect(page.getByLabel("Who was there")).toHaveValue("Sister");
  await expect(radio(page, "Where", "video")).toBeChecked();
  await expect(page.getByLabel(/own words/)).toHaveValue("It pinches “here”.\nOnly when I lift.");
  await expect(page.getByLabel("Note")).toBeFocused();
  await page.keyboard.type("?");
  await expect(page.getByLabel("Note")).toHaveValue("earl?y");
});

test("signing out asks about what is not saved, and discards it with the session", async ({ browser, clinic }) => {
  const context = await browser.newContext({
    baseURL: clinic.address,
    // A session of its own: the other tests go on with the one that is kept for them.
    storageState: { cookies: [], origins: [] },
  });
  const page = await context.newPage();
  await page.goto(`/sockets/${socketToFit(clinic.file).id}/fitting`);
  await page.getByLabel("E-mail").fill(demoAccounts.findLast(({ role }) => role === "prosthetist")?.email ?? "");
  await page.getByLabel("Password").fill(demoPassword);
  await page.getByRole("button", { name: "Sign in" }).click();
  await page.getByLabel("Note").fill("not saved");
  await page.getByRole("button", { name: "Sign out" }).click();
  const dialog = page.getByRole("dialog", { name: "One form is not saved" });
  await expect(dialog.getByRole("link", { name: /^Fitting of socket/ })).toBeVisible();
  await dialog.getByRole("button", { name: "Stay signed in" }).click();
  await expect(page.getByLabel("Note")).toHaveValue("not saved");
  await page.getByRole("button", { name: "Sign out" }).click();
  await dialog.getByRole("button", { name: "Discard and sign out" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Sign in" })).toBeVisible();
  expect(await page.evaluate(() => Object.keys(localStorage).filter((name) => name.includes("draft")))).toEqual([]);
  await context.close();
});

/** A browser of its own that can be killed whole. */
async function openBrowser(folder: string): Promise<{ process: ChildProcess; context: BrowserContext }> {
  const file = browserFile;
  const words = ["--headless=new", "--no-sandbox", "--no-first-run", `--user-data-dir=${folder}`, "--remote-debugging-port=0"];
  const child = spawn(file, [...words, "about:blank"], { detached: true, stdio: ["ignore", "ignore", "pipe"] });
  const address = await new Promise<string>((resolve, reject) => {
    let said = "";
    child.stderr.on("data", (text) => {
      said += text;
      const [, found] = /listening on (ws:\S+)/.exec(said) ?? [];
      if (found) resolve(found);
    });
    child.once("exit", () => reject(new Error(`the browser did not start: ${said}`)));
  });
  const [context] = (await chromium.connectOverCDP(address)).contexts();
  if (!context) throw new Error("a browser has a context");
  return { process: child, context };
}

/** All drafts that the vault of this device holds. */
async function inVault(): Promise<string> {
  const asked = <Result>(request: IDBRequest<Result>) =>
    new Promise<Result>((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
  const open = await asked(indexedDB.open("fitting-ledger drafts"));
  const drafts = await asked(open.transaction("drafts").objectStore("drafts").getAll());
  open.close();
  return drafts.join("\n");
}

async function kill({ process: child }: { process: ChildProcess }) {
  const ended = once(child, "exit");
  if (child.pid !== undefined) process.kill(-child.pid, "SIGKILL");
  await ended;
}

test("a browser that was killed whole, right after the last word, has lost nothing", async ({ page, clinic }) => {
  const { cookies } = await page.context().storageState();
  const folder = mkdtempSync(path.join(tmpdir(), "fitting-ledger-browser-"));
  const address = `${clinic.address}/sockets/${socketToFit(clinic.file).id}/fitting`;
  const first = await openBrowser(folder);
  await first.context.addCookies(cookies);
  const before = await first.context.newPage();
  await before.goto(address);
  await fillSome(before);
  // The line says "kept" once the tab's own store has it; what is in the vault is on the disk.
  await expect.poll(() => before.evaluate(inVault)).toContain("Only when I lift.");
  await kill(first);

  const second = await openBrowser(folder);
  await second.context.addCookies(cookies);
  const after = await second.context.newPage();
  await after.goto(address);
  await expect(line(after)).toHaveText(/^Taken up from another tab/);
  await expectSome(after);
  await kill(second);
  rmSync(folder, { recursive: true, force: true });
});

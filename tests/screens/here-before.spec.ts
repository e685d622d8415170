// What kinds of adjustment have done before, on the pages where adjustments are read and written.
import type { Page } from "@playwright/test";
import { expect, test } from "./clinic";
import { expectNothingWiderThanTheWindow, expectNoViolations } from "./page-checks";
import { signedInState } from "./prepared";
import { stored } from "./stored";

const summary = "What these kinds of adjustment have done here before";

const socketOf = (file: string, clinicNumber: string, number: number) =>
  stored(
    file,
    `SELECT CheckSocket.id, episodeId FROM CheckSocket JOIN Episode ON Episode.id = episodeId JOIN Wearer ON Wearer.id = wearerId
     WHERE clinicNumber = '${clinicNumber}' AND number = ${number}`,
  );

const before = (page: Page) => page.locator("details").filter({ has: page.getByText(summary, { exact: true }) });

/** The page as it stands, on a phone in the dark and on a wide window. */
async function expectInOrder(page: Page) {
  for (const [width, colorScheme] of [
    [1440, "light"],
    [360, "dark"],
  ] as const) {
    await page.setViewportSize({ width, height: 800 });
    await page.emulateMedia({ colorScheme });
    await expectNothingWiderThanTheWindow(page, `${width}`);
    await expectNoViolations(page, `${width}, ${colorScheme}`);
  }
}

test("a socket's page says what its kinds have done in other episodes", async ({ page, clinic }) => {
  // The boat builder's second socket: less volume, and a lower trim line.
  await page.goto(`/sockets/${socketOf(clinic.file, "TW-0112", 2).id}`);
  await expect(before(page).getByRole("listitem")).toHaveCount(0);
  await page.getByText(summary, { exact: true }).click();
  await expect(before(page).getByRole("listitem")).toHaveCount(1);
  await expect(before(page).getByRole("listitem")).toHaveText(
    /^Trim: worked 4 of 5 \(80\s%, between 38 and 96\s%\), no detectable change 1, worse 0 \(0\s%, between 0 and 43\s%\)\. The 5 that were judged are from 5 episodes\./,
  );
  await expect(before(page)).toContainText("Volume: fewer than five judged here, so no count is shown.");
  await expect(before(page)).toContainText("A count of one clinic is no proof of a cause: a prosthetist decides.");
  await expectInOrder(page);
});

test("where the next socket is specified every kind can be read", async ({ page, clinic }) => {
  const { id, episodeId } = socketOf(clinic.file, "TW-0143", 2);
  await page.goto(`/episodes/${episodeId}/next-socket`);
  await page.getByText(summary, { exact: true }).click();
  await expect(
    before(page)
      .getByRole("listitem")
      .filter({ hasText: /^(?:Relief|Trim|Volume):/ }),
  ).toHaveCount(3);
  await expect(before(page)).toContainText("Build-up, flare, length, closure, suspension, alignment and other: fewer than five");
  await expectInOrder(page);
  await page.goto(`/sockets/${id}/what-next`);
  await page.getByText(summary, { exact: true }).click();
  await expect(before(page)).toContainText("a prosthetist decides");
  await expectInOrder(page);
});

test("on paper it is read without unfolding", async ({ page, clinic }) => {
  await page.goto(`/sockets/${socketOf(clinic.file, "TW-0112", 2).id}`);
  await page.emulateMedia({ media: "print" });
  await expect(before(page).getByText("Trim:", { exact: true })).toBeVisible();
});

test("where something forbids, nothing is said of what adjustments have done", async ({ page, clinic }) => {
  const { socket, id } = stored(
    clinic.file,
    "SELECT id, subjectSocketId AS socket FROM Episode WHERE decision = 'must not be released' AND struckOutAt IS NULL",
  );
  for (const address of [`/sockets/${socket}/what-next`, `/episodes/${id}/next-socket`]) {
    await page.goto(address);
    await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
    await expect(page.getByText(summary)).toHaveCount(0);
  }
});

test("a technician does not see it", async ({ browser, clinic }) => {
  const context = await browser.newContext({ storageState: signedInState("technician"), baseURL: clinic.address });
  const page = await context.newPage();
  await page.goto(`/sockets/${socketOf(clinic.file, "TW-0112", 2).id}`);
  await expect(page.getByRole("heading", { name: /What separates it from socket 1/ })).toBeVisible();
  await expect(page.getByText(summary)).toHaveCount(0);
  await context.close();
});

import type { Locator, Page } from "@playwright/test";
import { expect, test } from "./clinic";
import { signedInState } from "./prepared";
import { stored } from "./stored";

const planned = "SELECT id, minutes FROM WearTrial WHERE state = 'planned' AND intervalMin = 5";

const rate = async (page: Page, question: RegExp, figure: number) =>
  page.getByRole("group", { name: question }).getByText(String(figure), { exact: true }).click();

async function checkIn(page: Page, { comfort, pain, exertion }: { comfort: number; pain: number; exertion: number }) {
  await rate(page, /How comfortable/, comfort);
  await rate(page, /How much does it hurt/, pain);
  await rate(page, /How hard/, exertion);
  const wearer = page.getByRole("radio", { name: "the wearer" });
  if (!(await wearer.isChecked())) await wearer.check({ force: true });
  await page.getByRole("button", { name: "Save this check-in" }).click();
}

const status = (page: Page): Locator =>
  page
    .getByRole("status")
    .filter({ hasText: /sent|to send|device/ })
    .first();
const readyOffline = (page: Page) => page.evaluate(async () => void (await navigator.serviceWorker.ready));

test("a trial runs on a phone with the network gone, is reloaded without it, and arrives whole", async ({ browser, clinic }) => {
  const { id, minutes: plannedMinutes } = stored(clinic.file, planned);
  const context = await browser.newContext({
    storageState: signedInState("prosthetist"),
    baseURL: clinic.address,
    viewport: { width: 390, height: 780 },
    serviceWorkers: "allow",
  });
  const page = await context.newPage();
  await page.clock.install();
  await page.goto(`/trials/${id}`);
  await page.getByRole("link", { name: "Run it on this device" }).click();
  await expect(page.getByRole("heading", { name: "Stop at once if" })).toBeVisible();
  await readyOffline(page);
  // The server's clock would put the device's right: from here on the device is alone with its own.
  await context.setOffline(true);
  await page.getByRole("button", { name: "The socket is on: begin" }).click();
  await expect(page.getByRole("timer", { name: "worn" })).toHaveText(/^0:0\d$/);
  await page.clock.fastForward("05:00");
  await expect(page.getByText("Check in now.")).toBeVisible();
  await checkIn(page, { comfort: 8, pain: 1, exertion: 2 });
  await expect(page.getByText("Check-in 1 saved.")).toBeVisible();
  await expect(status(page)).toContainText("Kept on this device: 2 to send");

  await page.reload();
  await expect(status(page)).toContainText("Kept on this device: 2 to send");
  await expect(page.getByRole("timer", { name: "worn" })).toHaveText(/^5:\d\d$/);

  const checkIns = Number(plannedMinutes) / 5;
  for (let minutes = 10; minutes <= 5 * checkIns; minutes += 5) {
    await page.clock.fastForward("05:00");
    await checkIn(page, { comfort: 7, pain: 2, exertion: 4 });
    await expect(page.getByRole("timer", { name: "worn" })).toHaveText(new RegExp(`^${minutes}:\\d\\d$`));
  }
  await expect(page.getByRole("status").filter({ hasText: "The time is up" })).toBeVisible();
  await page.getByRole("button", { name: "End the trial" }).click();
  await page.getByRole("button", { name: "The socket is off" }).click();
  await expect(page.getByText("Look at the skin now.")).toBeVisible();
  const look = page.getByRole("form", { name: "Look at the skin" });
  await look.getByRole("button", { name: "Save this look" }).click();
  await expect(look.getByRole("alert")).toContainText("List the marks, or tick that there was none.");
  await look.getByRole("checkbox", { name: /No mark anywhere/ }).check();
  await look.getByRole("button", { name: "Save this look" }).click();
  await expect(page.getByText("Nothing is left to see. The trial is done.")).toBeVisible();
  await expect(status(page)).toContainText(`Kept on this device: ${checkIns + 4} to send`);

  await context.setOffline(false);
  await page.clock.runFor(10_000);
  await expect(status(page)).toContainText("All sent");
  const count = (sql: string) => stored(clinic.file, sql).n;
  expect(count(`SELECT count(*) AS n FROM TrialEvent WHERE trialId = '${id}'`)).toBe(String(checkIns + 3));
  expect(count(`SELECT count(*) AS n FROM TrialEvent WHERE trialId = '${id}' AND kind = 'check-in'`)).toBe(String(checkIns));
  expect(count(`SELECT count(*) AS n FROM SkinInspection WHERE trialId = '${id}'`)).toBe("1");
  expect(count(`SELECT count(*) AS n FROM SetAsideEvent WHERE trialId = '${id}'`)).toBe("0");

  await page.getByRole("link", { name: "the trial’s record" }).click();
  await expect(page.getByRole("heading", { name: "Ended" })).toBeVisible();
  await expect(page.getByText(new RegExp(`worn ${plannedMinutes}(\\.\\d)? minutes`))).toBeVisible();
  await context.close();
});

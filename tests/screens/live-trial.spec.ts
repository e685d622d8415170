import { gzipSync } from "node:zlib";
import type { Locator, Page } from "@playwright/test";
import { demoAccounts, demoPassword } from "../../prisma/invented-clinic/accounts";
import { expect, test } from "./clinic";
import { expectNoViolations } from "./page-checks";
import { clinicNow, signedInState } from "./prepared";
import { stored } from "./stored";

const planned = "SELECT id, minutes FROM WearTrial WHERE state = 'planned' AND intervalMin = 5";

const rate = async (page: Page, question: RegExp, figure: number) =>
  page.getByRole("group", { name: question }).getByText(String(figure), { exact: true }).click();

async function checkIn(page: Page, { comfort, pain, exertion }: { comfort: number; pain: number; exertion: number }) {
  await rate(page, /How comfortable/, comfort);
  await rate(page, /How much does it hurt/, pain);
  await rate(page, /How hard/, exertion);
  const wearer = page.getByRole("radio", { name: "the wearer" });
  if (!(await wearer.isChecked())) await wearer.check();
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
  await page.clock.install({ time: clinicNow() });
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

test("after a clock that was fast is put right, what is pressed next has the right time", async ({ page, clinic }) => {
  const { id } = stored(clinic.file, "SELECT id FROM WearTrial WHERE state = 'running'");
  await page.clock.install({ time: clinicNow() });
  await page.goto(`/live/trial#${id}`);
  await expect(page.getByRole("button", { name: "Save this check-in" })).toBeVisible();
  await page.context().setOffline(true);
  // The device believes that twenty minutes have passed.
  await page.clock.fastForward("20:00");
  await checkIn(page, { comfort: 8, pain: 0, exertion: 3 });
  await expect(status(page)).toContainText("Kept on this device: 1 to send");
  await page.context().setOffline(false);
  await page.clock.runFor(10_000);
  await expect(status(page)).toContainText("All sent to the clinic.");
  await checkIn(page, { comfort: 8, pain: 0, exertion: 4 });
  const last = () =>
    stored(
      clinic.file,
      `SELECT exertion, at FROM TrialEvent WHERE trialId = '${id}' AND kind = 'check-in' ORDER BY receivedAt DESC, at DESC`,
    );
  await expect.poll(() => last().exertion).toBe("4");
  const { at = "" } = last();
  const instant = new Date(/^\d+$/.test(at) ? Number(at) : at).getTime();
  expect(Math.abs(instant - clinicNow())).toBeLessThan(60_000);
  expect(stored(clinic.file, `SELECT count(*) AS n FROM SetAsideEvent WHERE trialId = '${id}'`).n).toBe("0");
});

test("two devices run one trial: each shows what the other recorded, and a stop from the clinic ends it on both", async ({
  browser,
  clinic,
}) => {
  const { id } = stored(clinic.file, "SELECT id FROM WearTrial WHERE state = 'running'");
  const open = async (role: "prosthetist" | "assistant") => {
    const context = await browser.newContext({ storageState: signedInState(role), baseURL: clinic.address });
    const page = await context.newPage();
    await page.goto(`/live/trial#${id}`);
    await expect(page.getByRole("timer", { name: "worn" })).toBeVisible();
    return page;
  };
  const [phone, tablet] = [await open("assistant"), await open("prosthetist")];
  const desk = await (
    await browser.newContext({ storageState: signedInState("prosthetist"), baseURL: clinic.address })
  ).newPage();
  await desk.goto(`/trials/${id}`);
  const before = Number(stored(clinic.file, `SELECT count(*) AS n FROM TrialEvent WHERE trialId = '${id}'`).n);

  // Both check in while one of them has no network.
  await tablet.context().setOffline(true);
  await checkIn(tablet, { comfort: 6, pain: 2, exertion: 5 });
  await expect(status(tablet)).toContainText("Kept on this device: 1 to send");
  await checkIn(phone, { comfort: 7, pain: 1, exertion: 4 });
  await expect(status(phone)).toContainText("All sent");
  await expect(desk.getByRole("row", { name: /check-in: comfort 7, pain 1, exertion 4/ })).toBeVisible();
  await tablet.context().setOffline(false);
  await expect(desk.getByRole("row", { name: /check-in: comfort 6, pain 2, exertion 5/ })).toBeVisible();
  await expect(status(tablet)).toContainText("All sent");
  expect(Number(stored(clinic.file, `SELECT count(*) AS n FROM TrialEvent WHERE trialId = '${id}'`).n)).toBe(before + 2);

  await desk.getByRole("combobox", { name: "What was seen or said" }).first().selectOption("cold");
  await desk.getByRole("button", { name: "Stop the trial" }).click();
  for (const page of [phone, tablet])
    await expect(page.getByRole("heading", { name: "Stopped: the limb is cold" })).toBeVisible();
  for (const page of [phone, tablet, desk]) await page.context().close();
});

test("the device’s store is full: it says so, and what was pressed is sent all the same", async ({ page, clinic }) => {
  const { id } = stored(
    clinic.file,
    `SELECT id FROM WearTrial WHERE state = 'stopped' AND socketId NOT IN (SELECT socketId FROM SignOff WHERE socketId IS NOT NULL)
     AND NOT EXISTS (SELECT 1 FROM TrialEvent WHERE trialId = WearTrial.id AND kind = 'doffed')`,
  );
  await page.goto(`/live/trial#${id}`);
  await expect(page.getByRole("heading", { level: 1 })).toContainText("Wear trial:");
  await readyOffline(page);
  const hasRoom = (room: boolean) =>
    page.evaluate((has) => {
      Reflect.set(window, "put", Reflect.get(window, "put") ?? IDBObjectStore.prototype.put);
      IDBObjectStore.prototype.put = has
        ? Reflect.get(window, "put")
        : () => {
            throw new DOMException("The quota has been exceeded.", "QuotaExceededError");
          };
    }, room);
  await hasRoom(false);
  await page.context().setOffline(true);
  await page.getByRole("button", { name: "The socket is off" }).click();
  await expect(status(page)).toContainText("This device’s store is full: 1 not kept and not sent yet.");
  // There is room again: it is kept without anybody doing anything, and is there after a reload.
  await hasRoom(true);
  await expect(status(page)).toContainText("Kept on this device: 1 to send.", { timeout: 15_000 });
  await page.reload();
  await expect(status(page)).toContainText("Kept on this device: 1 to send.");
  await hasRoom(false);
  await page.getByText("Something else was or is wrong").click();
  await page.getByRole("button", { name: "Dizzy or faint" }).click();
  await expect(status(page)).toContainText("This device’s store is full: 1 not kept and not sent yet.");
  await page.context().setOffline(false);
  await expect(status(page)).toContainText("What was pressed is sent", { timeout: 20_000 });
  const dizzy = `SELECT count(*) AS n FROM TrialEvent WHERE trialId = '${id}' AND sign = 'dizziness'`;
  await expect.poll(() => stored(clinic.file, dizzy).n).toBe("1");
});

test("a session that ends in the middle keeps what is pressed, and signing in again sends it", async ({ page, clinic }) => {
  const { id } = stored(
    clinic.file,
    `SELECT id FROM WearTrial WHERE state = 'stopped' AND socketId NOT IN (SELECT socketId FROM SignOff WHERE socketId IS NOT NULL)
     AND EXISTS (SELECT 1 FROM TrialEvent WHERE trialId = WearTrial.id AND kind = 'doffed')
     AND NOT EXISTS (SELECT 1 FROM SkinInspection WHERE trialId = WearTrial.id)`,
  );
  await page.goto(`/live/trial#${id}`);
  const look = page.getByRole("form", { name: "Look at the skin" });
  await expect(look).toBeVisible();
  await page.context().clearCookies();
  await look.getByRole("checkbox", { name: /No mark anywhere/ }).check();
  await look.getByRole("button", { name: "Save this look" }).click();
  await expect(status(page)).toContainText("Kept on this device: 1 to send. This device is signed out at the clinic.");
  await page.getByRole("link", { name: "Sign in to send" }).click();
  const account = demoAccounts.find(({ role }) => role === "prosthetist");
  await page.getByLabel("E-mail").fill(account?.email ?? "");
  await page.getByLabel("Password").fill(demoPassword);
  await page.getByRole("button", { name: "Sign in" }).click();
  await expect(page).toHaveURL(new RegExp(`/live/trial#${id}$`));
  await expect(status(page)).toContainText("All sent to the clinic.");
  expect(stored(clinic.file, `SELECT count(*) AS n FROM SkinInspection WHERE trialId = '${id}'`).n).toBe("1");
});

test("the live screen is small, stands in nobody's way, and keeps the way to stop in reach", async ({ page, clinic }) => {
  const { id } = stored(
    clinic.file,
    "SELECT id FROM WearTrial WHERE state IN ('ended', 'stopped') AND socketId NOT IN (SELECT socketId FROM SignOff WHERE socketId IS NOT NULL)",
  );
  await page.goto(`/live/trial#${id}`);
  await expect(page.getByRole("heading", { name: /The skin|Take the socket off/ })).toBeVisible();
  const script = (await page.locator("script[src]").getAttribute("src")) ?? "";
  const answer = await page.request.get(script, { headers: { "accept-encoding": "gzip" } });
  expect(answer.headers()["content-encoding"]).toBe("gzip");
  expect(gzipSync(await answer.body()).length).toBeLessThan(120_000);
  for (const scheme of ["light", "dark"] as const) {
    await page.emulateMedia({ colorScheme: scheme });
    for (const width of [360, 1440]) {
      await page.setViewportSize({ width, height: 780 });
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      await expectNoViolations(page);
    }
  }
});

import AxeBuilder from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import { expect, test } from "./clinic";
import { signedInState } from "./prepared";
import { stored } from "./stored";

async function expectNoViolations(page: Page, address: string) {
  await page.goto(address);
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
  const { violations } = await new AxeBuilder({ page })
    .withTags(["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"])
    .analyze();
  expect(
    violations.map(({ id, nodes }) => `${address}: ${id}: ${nodes.map(({ html }) => html).join(" ")}`),
    address,
  ).toEqual([]);
}

/** One address of every screen, on records of the invented clinic that fill it. */
function addresses(file: string): string[] {
  const long = stored(file, "SELECT id FROM Episode WHERE socketCount >= 5");
  const pair = [1, 2]
    .map((number) => stored(file, `SELECT id FROM CheckSocket WHERE episodeId = '${long.id}' AND number = ${number}`))
    .map(({ id }) => `socket=${id}`)
    .join("&");
  const open = stored(file, "SELECT id, wearerId, subjectSocketId AS socket FROM Episode WHERE nextStep = 'sign'");
  const fresh = stored(file, "SELECT id FROM Episode WHERE stage = 'assessment'");
  const trial = stored(file, `SELECT id FROM WearTrial WHERE socketId = '${open.socket}' AND state = 'ended'`);
  const running = stored(file, "SELECT id FROM WearTrial WHERE state IN ('running', 'planned', 'paused')");
  const planned = stored(file, "SELECT id FROM CheckSocket WHERE state = 'planned'");
  const fitting = stored(file, `SELECT id FROM Fitting WHERE socketId = '${open.socket}'`);
  const signOff = stored(file, "SELECT id FROM SignOff");
  return [
    "/today",
    "/my-units",
    "/wearers",
    "/wearers?find=zzz",
    "/wearers/new",
    `/wearers/${open.wearerId}`,
    `/wearers/${open.wearerId}/change`,
    `/wearers/${open.wearerId}/new-episode`,
    `/episodes/${long.id}`,
    `/episodes/${long.id}/trends`,
    `/episodes/${long.id}/side-by-side`,
    `/episodes/${long.id}/side-by-side?${pair}`,
    `/episodes/${fresh.id}`,
    `/episodes/${open.id}/change`,
    `/episodes/${open.id}/measure`,
    `/episodes/${open.id}/next-socket`,
    `/episodes/${open.id}/sign-off`,
    `/sockets/${open.socket}`,
    `/sockets/${planned.id}/change`,
    `/sockets/${open.socket}/fitting`,
    `/sockets/${open.socket}/what-next`,
    `/fittings/${fitting.id}`,
    `/fittings/${fitting.id}/correct`,
    `/fittings/${fitting.id}/look`,
    `/sockets/${open.socket}/wear-trial`,
    `/trials/${trial.id}`,
    `/trials/${trial.id}/look`,
    `/trials/${running.id}`,
    `/releases/${signOff.id}`,
    `/releases/${signOff.id}/withdraw`,
    "/workshop",
    "/rules",
    "/record?reads=yes&verify=yes",
    "/no-such-page",
  ];
}

/** In parts, because axe takes seconds a page. */
const parts = [1, 2, 3];
const partOf = (file: string, part: number) => addresses(file).filter((_, index) => index % parts.length === part - 1);

for (const part of parts)
  test(`no screen has a violation that axe can find, part ${part}`, async ({ page, clinic }) => {
    test.setTimeout(240_000);
    for (const address of partOf(clinic.file, part)) await expectNoViolations(page, address);
  });

for (const part of parts)
  test(`nor in the dark, on a phone, part ${part}`, async ({ browser, clinic }) => {
    test.setTimeout(240_000);
    const context = await browser.newContext({
      storageState: signedInState("prosthetist"),
      baseURL: clinic.address,
      colorScheme: "dark",
      viewport: { width: 360, height: 780 },
    });
    const page = await context.newPage();
    for (const address of partOf(clinic.file, part)) {
      await expectNoViolations(page, address);
      const overflow = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      expect(overflow, `${address} is wider than the window`).toBeLessThanOrEqual(0);
    }
    await context.close();
  });

test("the administrator's screens and those of nobody", async ({ browser, clinic }) => {
  for (const [state, address] of [
    [signedInState("administrator"), "/accounts"],
    [signedInState("administrator"), "/not-allowed"],
    [undefined, "/sign-in"],
  ] as const) {
    const context = await browser.newContext({ ...(state ? { storageState: state } : {}), baseURL: clinic.address });
    await expectNoViolations(await context.newPage(), address);
    await context.close();
  }
});

import type { Page } from "@playwright/test";
import { expect, test } from "./clinic";
import { expectNothingWiderThanTheWindow, expectNoViolations } from "./page-checks";
import { signedInState } from "./prepared";
import { stored } from "./stored";

async function expectAccessible(page: Page, address: string) {
  await page.goto(address);
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
  await expectNoViolations(page, address);
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

/** In parts, so that two browsers share them. */
const parts = [1, 2, 3, 4];
const partOf = (file: string, part: number) => addresses(file).filter((_, index) => index % parts.length === part - 1);

for (const part of parts)
  test(`no screen has a violation that axe can find, part ${part}`, async ({ page, clinic }) => {
    for (const address of partOf(clinic.file, part)) await expectAccessible(page, address);
  });

const onPhoneInTheDark = { colorScheme: "dark", viewport: { width: 360, height: 780 } } as const;

test.describe("nor in the dark, on a phone", () => {
  test.use(onPhoneInTheDark);

  async function expectAllAccessible(page: Page, all: readonly string[]) {
    for (const address of all) {
      await expectAccessible(page, address);
      await expectNothingWiderThanTheWindow(page, address);
    }
  }

  test("those that are seen the most", async ({ page, clinic }) => {
    const { id, socket } = stored(clinic.file, "SELECT id, subjectSocketId AS socket FROM Episode WHERE nextStep = 'sign'");
    await expectAllAccessible(page, ["/today", `/episodes/${id}`, `/sockets/${socket}/fitting`]);
  });

  for (const part of parts)
    test(`all of them, part ${part}`, { tag: "@slow" }, async ({ page, clinic }) => {
      await expectAllAccessible(page, partOf(clinic.file, part));
    });
});

test("the administrator's screens and those of nobody", async ({ browser, clinic }) => {
  for (const [state, address] of [
    [signedInState("administrator"), "/accounts"],
    [signedInState("administrator"), "/not-allowed"],
    [undefined, "/sign-in"],
  ] as const) {
    const context = await browser.newContext({ ...(state ? { storageState: state } : {}), baseURL: clinic.address });
    await expectAccessible(await context.newPage(), address);
    await context.close();
  }
});

import type { Page } from "@playwright/test";
import { expect, test } from "./clinic";
import { expectNoViolations } from "./page-checks";
import { signedInState } from "./prepared";
import { stored } from "./stored";

test.use({ viewport: { width: 1280, height: 900 } });
test.describe.configure({ timeout: 120_000 });

/** An open episode whose last socket left marks, and one where something forbids. */
const open = (file: string) =>
  stored(
    file,
    `SELECT Episode.id, CheckSocket.id AS socket, CheckSocket.number, CheckSocket.stations FROM Episode
     JOIN CheckSocket ON CheckSocket.id = subjectSocketId
     WHERE decision = 'not ready' AND stage = 'check sockets' AND level = 'transradial' AND struckOutAt IS NULL`,
  );
const forbidden = (file: string) =>
  stored(
    file,
    "SELECT id, subjectSocketId AS socket FROM Episode WHERE decision = 'must not be released' AND struckOutAt IS NULL",
  );

const dimensions = (page: Page) => page.getByRole("group", { name: "Inside circumferences" });
const inside = (page: Page) => dimensions(page).getByLabel(/^inside circumference/);
const adjustment = (page: Page, index: number) =>
  page.getByRole("group", { name: "Adjustments to the socket before" }).getByRole("listitem").nth(index);
const ready = (page: Page) => expect(page.getByRole("button", { name: "Add an adjustment" })).toBeVisible();

test("on a phone in the dark nothing is cut off, and axe finds nothing", { tag: "@slow" }, async ({ browser, clinic }) => {
  const { id, socket } = open(clinic.file);
  const context = await browser.newContext({
    storageState: signedInState("prosthetist"),
    baseURL: clinic.address,
    colorScheme: "dark",
    viewport: { width: 360, height: 780 },
  });
  const page = await context.newPage();
  for (const address of [`/episodes/${id}/next-socket`, `/sockets/${socket}/what-next`]) {
    await page.goto(address);
    await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
    for (const summary of await page.locator("li > details > summary").all()) await summary.click();
    await expectNoViolations(page);
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(overflow, address).toBeLessThanOrEqual(0);
  }
  await context.close();
});

test("from a finding to an adjustment to the dimensions, by keyboard", async ({ page, clinic }) => {
  const { id, number } = open(clinic.file);
  await page.goto(`/episodes/${id}/next-socket`);
  await ready(page);
  await expect(page.getByRole("heading", { name: `What was found with socket ${number}` })).toBeVisible();
  const mark = page.locator("summary", { hasText: /^Mark \d+, grade/ }).first();
  await mark.press("Enter");
  await expect(page.getByText("common practice, no source").first()).toBeVisible();
  await expect(page.getByText("Reason to stop and call the physician").first()).toBeVisible();
  await page
    .getByRole("button", { name: /^Take up\s*: relief/ })
    .first()
    .press("Enter");

  const first = adjustment(page, 0);
  await expect(first.getByLabel("kind")).toHaveValue("relief");
  await expect(first.getByLabel("answers")).toHaveValue(/^mark:/);
  await expect(first.getByLabel("amount")).toBeFocused();
  await page.keyboard.type("3");
  await first.getByLabel("third").selectOption("");
  await first.getByLabel("reason").fill("the mark was clear for eight minutes");

  // A relief of 3 mm is 3·π/4 = 2.4 mm of circumference, at every level where no third is named.
  const before = Number(
    /([\d.]+) mm/.exec((await dimensions(page).getByRole("row").nth(1).getByRole("cell").nth(1).textContent()) ?? "")?.[1],
  );
  await expect(inside(page).first()).toHaveValue(String(Math.round((before + 2.356) * 10) / 10));
  await expect(page.getByText("The adjustments explain every level")).toBeVisible();
  await expect(page.getByRole("img", { name: /^Profile of socket/ })).toBeVisible();
  await expectNoViolations(page);
  await page.getByRole("button", { name: "Specify the socket" }).press("Enter");
  await expect(page.getByRole("link", { name: `Socket ${Number(number) + 1}`, exact: true }).first()).toBeVisible();
});

test("a level that was typed stays; what no adjustment explains is said at the level, and can be taken back", async ({
  page,
  clinic,
}) => {
  const { id } = stored(
    clinic.file,
    "SELECT id FROM Episode WHERE decision = 'not ready' AND level = 'transfemoral' AND stage = 'check sockets'",
  );
  await page.goto(`/episodes/${id}/next-socket`);
  await ready(page);
  const proposed = await inside(page).nth(1).inputValue();
  await inside(page)
    .nth(1)
    .fill(String(Number(proposed) + 9).replace(".", ","));
  const row = dimensions(page).getByRole("row").nth(2);
  await expect(row).toContainText("not explained: 9 mm more than the adjustments make it");
  await expect(inside(page).nth(1)).toHaveAccessibleDescription(/not explained/);
  await expect(page.getByText("It can be saved as it stands")).toBeVisible();

  const first = adjustment(page, 0);
  await first.getByLabel("kind").selectOption("volume");
  await first.getByLabel("amount").fill("−2");
  await first.getByLabel("unit").selectOption("percent");
  await expect(inside(page).nth(1)).toHaveValue(String(Number(proposed) + 9).replace(".", ","));
  await row.getByRole("button", { name: /^as proposed/ }).click();
  // √0.98 = 0.98995, by hand.
  await expect(inside(page).nth(1)).toHaveValue(String(Math.round(Number(proposed) * 9.8995) / 10));
  await expect(page.getByText("The adjustments explain every level")).toBeVisible();
});

test("what forbids stands open, offers nothing, and no trial is offered after the fitting", async ({ page, clinic }) => {
  const { id, socket } = forbidden(clinic.file);
  await page.goto(`/episodes/${id}/next-socket`);
  await ready(page);
  const first = page
    .locator("section", { has: page.getByRole("heading", { name: /^What was found/ }) })
    .getByRole("listitem")
    .first();
  await expect(first).toContainText("Leave the socket off and ask the physician first.");
  await expect(first.getByRole("button", { name: /^Take up/ })).toHaveCount(0);
  await page.goto(`/sockets/${socket}/what-next`);
  await expect(page.getByText("Something here forbids.")).toBeVisible();
  await expect(page.getByText("no trial over a finding that forbids")).toBeVisible();
  await expect(page.getByRole("link", { name: "Plan a wear trial" })).toHaveCount(0);
  await expectNoViolations(page);
});

test("what is ticked after a fitting stands among the adjustments of the next socket", async ({ page, clinic }) => {
  const { socket } = stored(
    clinic.file,
    "SELECT subjectSocketId AS socket FROM Episode WHERE decision = 'not ready' AND level = 'transtibial' AND stage = 'check sockets'",
  );
  await page.goto(`/sockets/${socket}/what-next`);
  for (const summary of await page.locator("form li > details > summary").all()) await summary.click();
  const box = page.getByRole("checkbox", { name: /^take up/ }).first();
  await box.check();
  await page.getByRole("button", { name: /^Alter socket/ }).click();
  await expect(page.getByRole("heading", { name: /^Specify socket/ })).toBeVisible();
  await expect(adjustment(page, 0)).toContainText("Considered:");
  await expect(adjustment(page, 0).getByLabel("kind")).not.toHaveValue("");
  await expect(page.getByLabel("Note for the bench")).toHaveValue(/^Alter socket/);
});

test("without JavaScript the dimensions are worked out by the tick", async ({ browser, clinic }) => {
  const { id } = stored(
    clinic.file,
    "SELECT id FROM Episode WHERE decision = 'not ready' AND level = 'knee disarticulation' AND stage = 'check sockets'",
  );
  const context = await browser.newContext({
    javaScriptEnabled: false,
    storageState: signedInState("prosthetist"),
    baseURL: clinic.address,
  });
  const page = await context.newPage();
  await page.goto(`/episodes/${id}/next-socket`);
  const first = adjustment(page, 0);
  await first.getByLabel("kind").selectOption("volume");
  await first.getByLabel("amount").fill("-2");
  await first.getByLabel("unit").selectOption("percent");
  await first.getByLabel("reason").fill("loose all along");
  await page.getByLabel("Work the inside circumferences out").check();
  await page.getByRole("button", { name: "Specify the socket" }).click();
  await expect(page.getByRole("heading", { name: "The series" })).toBeVisible();
  const made = stored(
    clinic.file,
    `SELECT stations, derivedFromId FROM CheckSocket WHERE episodeId = '${id}' ORDER BY number DESC`,
  );
  const origin = stored(clinic.file, `SELECT stations FROM CheckSocket WHERE id = '${made.derivedFromId}'`);
  const first0 = (json: string | undefined) =>
    (JSON.parse(json ?? "[]") as { circumferenceMm: number }[])[0]?.circumferenceMm ?? 0; // as the store wrote it
  expect(first0(made.stations)).toBeCloseTo(Math.round(first0(origin.stations) * 9.8995) / 10, 6);
  await context.close();
});

test("a mark that does not blanch leads from the fitting to the next look, and the look to an answer; both pages of the socket lead to the fitting", async ({
  page,
  clinic,
}) => {
  const { id } = stored(
    clinic.file,
    `SELECT CheckSocket.id FROM CheckSocket JOIN Episode ON Episode.subjectSocketId = CheckSocket.id
     WHERE Episode.stage = 'check sockets' AND CheckSocket.state IN ('at hand', 'fitted') AND decision = 'not ready'
     AND CheckSocket.id NOT IN (SELECT socketId FROM SignOff) AND Episode.struckOutAt IS NULL ORDER BY Episode.id`,
  );
  await page.goto(`/sockets/${id}/fitting`);
  await page.getByRole("group", { name: "Where" }).getByRole("radio", { name: "clinic" }).check({ force: true });
  await page
    .getByRole("group", { name: "The limb is seated fully" })
    .getByRole("radio", { name: "not met" })
    .check({ force: true });
  await page.getByLabel("Skin looked at, minutes after doffing").fill("2");
  await page.getByRole("button", { name: "Add a mark" }).click();
  const mark = page.getByRole("group", { name: "Mark 1", exact: true });
  for (const [label, value] of Object.entries({ "from the end": "60", angle: "8", width: "20", height: "12" }))
    await mark.getByRole("textbox", { name: label }).fill(value);
  await mark.getByRole("radio", { name: "clear" }).check({ force: true });
  await mark.getByRole("group", { name: "blanches" }).getByRole("radio", { name: "no", exact: true }).check({ force: true });
  await page.getByRole("button", { name: "Save the fitting" }).click();

  await expect(page.getByRole("heading", { level: 1, name: /what next$/ })).toBeVisible();
  const found = page.getByRole("listitem").filter({ hasText: /Mark 1, grade 3.*20 × 12.*does not blanch/ });
  await expect(found).toContainText(/Fitting of \d+.[A-Z][a-z]+ \d{4}, \d\d:\d\d/);
  await expect(found).toContainText("It counts as not blanching, and forbids, until a look up to 20 minutes after doffing");
  await expect(page.getByText("That is about the release. Before it: what does not blanch forbids")).toBeVisible();
  await expect(page.getByText("Something here forbids until a later look shows otherwise.")).toBeVisible();
  await expect(page.getByRole("link", { name: "Plan a wear trial" })).toHaveCount(0);
  await expect(page.locator("summary", { hasText: "The limb is seated fully: not met" })).toBeVisible();
  await expect(page.getByRole("link", { name: /^Put it right\s*, fitting of/ })).toBeVisible();
  await expectNoViolations(page);
  await page.setViewportSize({ width: 360, height: 780 });
  // The triangle beside the words: their first line is where the summary begins.
  const summary = found.locator("summary").first();
  const [whole, words] = [await summary.boundingBox(), await summary.getByText(/^Mark 1, grade 3/).boundingBox()];
  expect((words?.y ?? 0) - (whole?.y ?? 0)).toBeLessThan(12);
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(overflow).toBeLessThanOrEqual(0);
  await page.setViewportSize({ width: 1280, height: 900 });

  await found.getByRole("link", { name: "Look at the skin again" }).click();
  await page.getByRole("textbox", { name: "Minutes after doffing" }).fill("20");
  await page.getByRole("button", { name: /^Gone: mark/ }).click();
  await page.getByRole("button", { name: "Save this look" }).click();
  // Nobody waited: by the clock it is the same minute, which is asked about once.
  await expect(page.getByRole("alert").filter({ hasText: "by the clock this one is" })).toBeVisible();
  await page.getByRole("button", { name: "Save this look" }).click();
  await expect(page.getByRole("heading", { name: "20 minutes after doffing" })).toBeVisible();

  await page.goto(`/sockets/${id}`);
  const fitting = page.getByRole("article", { name: /^Fitting of/ }).last();
  await expect(fitting.getByRole("link", { name: /^Look at the skin again/ })).toBeVisible();
  await expect(fitting.getByRole("link", { name: /^Put it right/ })).toBeVisible();
  await expectNoViolations(page);
  await fitting.getByRole("link", { name: /^Read the fitting/ }).click();
  await expect(page.getByRole("heading", { name: "20 minutes after doffing" })).toBeVisible();

  await page.goto(`/sockets/${id}/what-next`);
  await expect(page.locator("summary", { hasText: /does not blanch; gone 20 min after doffing/ }).first()).toBeVisible();
  await expect(page.getByText("until a later look shows otherwise")).toHaveCount(0);
});

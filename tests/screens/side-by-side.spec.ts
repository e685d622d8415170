import { readFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import { expect, test } from "./clinic";
import { expectNothingWiderThanTheWindow, expectNoViolations } from "./page-checks";
import { signedInState } from "./prepared";
import { stored } from "./stored";

test.describe.configure({ timeout: 120_000 });

interface Series {
  id: string;
  socket: (number: number) => string;
  /** The address that holds these sockets against each other. */
  beside: (...numbers: number[]) => string;
}

/** The longest series of a wearer of the invented clinic. */
function seriesOf(file: string, name: string): Series {
  const { id = "" } = stored(
    file,
    `SELECT Episode.id FROM Episode JOIN Wearer ON Wearer.id = wearerId WHERE name = '${name}' ORDER BY socketCount DESC`,
  );
  const socket = (number: number) =>
    stored(file, `SELECT id FROM CheckSocket WHERE episodeId = '${id}' AND number = ${number}`).id ?? "";
  const beside = (...numbers: number[]) =>
    `/episodes/${id}/side-by-side?${numbers.map((number) => `socket=${socket(number)}`).join("&")}`;
  return { id, socket, beside };
}
const gardener = (file: string) => seriesOf(file, "Hedwig Castanheira");
const boatBuilder = (file: string) => seriesOf(file, "Tomé Vilarinho");

const changes = (page: Page) => page.getByRole("region", { name: "What was changed, and what came of it" });
const measures = (page: Page) => page.getByRole("table", { name: "Measures that differ" });

const widths = [360, 768, 1440];

test("which adjustment helped, which did nothing, which did harm: on the line, at every width", async ({ page, clinic }) => {
  await page.goto(`/episodes/${gardener(clinic.file).id}`);
  const line = page.getByRole("region", { name: "The series" });
  const leads = (from: number, to: number) => line.getByRole("list", { name: `From socket ${from} to socket ${to}` });
  await expect(leads(1, 2).getByRole("listitem").filter({ hasText: "volume −4.5" })).toContainText(/worked\s*12.7 → 7.6 mm/);
  await expect(leads(2, 3).getByRole("listitem").filter({ hasText: "build-up 2" })).toContainText("no detectable change");
  await expect(leads(4, 5).getByRole("listitem").filter({ hasText: "build-up 4" })).toContainText(/worse\s*painful marks 0 → 1/);
  await expect(line.getByText("The limb changed detectably between sockets 1 and 2")).toBeVisible();
  for (const width of widths) {
    await page.setViewportSize({ width, height: 900 });
    await expectNothingWiderThanTheWindow(page, `${width}`);
  }
});

test("a socket that was made from an older one hangs on that one", async ({ page, clinic }) => {
  await page.goto(`/episodes/${boatBuilder(clinic.file).id}`);
  const line = page.getByRole("region", { name: "The series" });
  await expect(line.getByRole("listitem").filter({ hasText: "made from socket 3" })).toContainText("Socket 5");
  await expect(line.getByRole("list", { name: "From socket 3 to socket 5" }).getByRole("listitem")).toHaveCount(2);
});

test("the line is walked as a list", async ({ page, clinic }) => {
  await page.goto(`/episodes/${boatBuilder(clinic.file).id}`);
  await expect(
    page.getByRole("region", { name: "The series" }).getByRole("listitem").filter({ hasText: "Socket 3" }).first(),
  ).toMatchAriaSnapshot(`
    - listitem:
      - strong:
        - link "Socket 3"
      - text: /fitted .*, in clinic/
      - term: comfort
      - definition: 6 of 10
      - term: marks
      - definition: deep or firm
      - term: drop
      - definition: /7\\.4 mm at 45 N/
      - checkbox "compare socket 3"
      - text: compare socket 3
      - list "From socket 3 to socket 4":
        - listitem:
          - strong: build-up 4 mm, posterior, middle third
          - text: "/for: The socket turns on the limb when he lifts a bucket worked not met → met/"
  `);
});

test("two sockets are chosen by keyboard and stand in the address", async ({ page, clinic }) => {
  const { id, socket } = gardener(clinic.file);
  await page.goto(`/episodes/${id}`);
  // The two that were tried last are chosen already.
  for (const number of [6, 7]) await page.getByRole("checkbox", { name: `compare socket ${number}` }).press("Space");
  for (const number of [4, 5]) await page.getByRole("checkbox", { name: `compare socket ${number}` }).press("Space");
  await page.getByRole("button", { name: "Compare side by side" }).press("Enter");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Sockets 4 and 5, side by side");
  await expect(page).toHaveURL(`/episodes/${id}/side-by-side?socket=${socket(4)}&socket=${socket(5)}`);
  await page.goBack();
  await expect(page.getByRole("heading", { name: "The series" })).toBeVisible();
});

test("what came of it, and what was found with each, at every width", async ({ page, clinic }) => {
  await page.goto(gardener(clinic.file).beside(4, 5));
  const relief = changes(page).getByRole("listitem").filter({ hasText: "relief 3" });
  await expect(relief).toContainText("worked");
  await expect(relief).toContainText("Hardest mark there: grade 3 before, 1 after.");
  const buildUp = changes(page).getByRole("listitem").filter({ hasText: "build-up 4" });
  await expect(buildUp).toContainText("worse");
  await expect(buildUp).toContainText("Made together with 1 other, cannot be told apart.");
  await expect(changes(page)).toContainText("mark elsewhere, anterior middle: grade 1 → 3, where build-up 4");

  const comfort = measures(page).getByRole("row").filter({ hasText: "Comfort at the fitting" });
  await expect(comfort).toContainText(/worse by 3 points/);
  await expect(comfort).toContainText("−3; counts from 2");
  await expect(measures(page)).not.toContainText("within measuring error");
  await expect(page.getByRole("img", { name: /Marks with Socket/ })).toHaveCount(2);
  const place = page.getByRole("row", { name: /anterior, middle third/ });
  await expect(place).toContainText(/grade 1.*grade 3.*stronger/);
  await expect(page.getByRole("region", { name: "The index" })).toContainText("does not decide");
  for (const width of widths) {
    await page.setViewportSize({ width, height: 900 });
    await expectNothingWiderThanTheWindow(page, `${width}`);
    await expectNoViolations(page, `${width}`);
  }
});

test("in the dark on a phone axe finds nothing in four sockets", { tag: "@slow" }, async ({ browser, clinic }) => {
  const context = await browser.newContext({
    storageState: signedInState("prosthetist"),
    baseURL: clinic.address,
    colorScheme: "dark",
    viewport: { width: 360, height: 780 },
  });
  const page = await context.newPage();
  await page.goto(gardener(clinic.file).beside(1, 2, 6, 7));
  for (const summary of await page.locator("summary").all()) await summary.click();
  await expectNoViolations(page);
  await expectNothingWiderThanTheWindow(page);
  await context.close();
});

test("the way from one to another goes over those between, and says where the limb changed", async ({ page, clinic }) => {
  await page.goto(gardener(clinic.file).beside(2, 6));
  await expect(changes(page).getByRole("heading", { level: 3 })).toHaveText(
    [2, 3, 4, 5].map((n) => `From socket ${n} to socket ${n + 1}`),
  );
  await expect(changes(page)).toContainText(
    /The limb changed detectably between sockets 2 and 6: −8\.\d % ± 0\.\d % of its volume/,
  );
});

test("two branches tell which socket both come from", async ({ page, clinic }) => {
  await page.goto(boatBuilder(clinic.file).beside(4, 5));
  await expect(changes(page)).toContainText("Socket 5 was not made from socket 4: both come from socket 3.");
  await expect(page.getByRole("list", { name: "Read this first" })).toContainText(
    "The trials were not alike: worn for 13 to 21 minutes.",
  );
});

test("against the first of them, in the address", async ({ page, clinic }) => {
  const { beside, socket } = gardener(clinic.file);
  await page.goto(beside(1, 2, 7));
  const displacement = measures(page).getByRole("row").filter({ hasText: "Displacement" });
  await expect(displacement).toContainText("better by 3.9 mm than socket 2");
  await page.getByText("Choose other sockets").click();
  await page.getByRole("radio", { name: "the first of them" }).check();
  await page.getByRole("button", { name: "Compare" }).click();
  await expect(page).toHaveURL(new RegExp(`socket=${socket(7)}&against=first$`));
  await expect(displacement).toContainText("than socket 1");
  await expect(displacement).not.toContainText("than socket 2");
});

test("one socket, five or a wrong address ask for two to four and keep what was chosen", async ({ page, clinic }) => {
  const { id, beside, socket } = gardener(clinic.file);
  await page.goto(beside(1, 2, 3, 4, 5));
  await expect(page.locator("main").getByRole("alert")).toHaveText("Choose two to four sockets: 5 are chosen. Take some away.");
  await expect(page.getByRole("checkbox", { checked: true })).toHaveCount(5);
  await page.goto(beside(3));
  await expect(page.locator("main").getByRole("alert")).toHaveText("Choose two to four sockets: one is chosen. Take another.");
  await page.goto(`/episodes/${id}/side-by-side`);
  await expect(page.locator("main").getByRole("alert")).toHaveText("Choose two to four sockets.");
  await page.goto(`${beside(3, 4)}&socket=none&socket=${boatBuilder(clinic.file).socket(1)}`);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Sockets 3 and 4, side by side");
  await page.getByText("Choose other sockets").click();
  await expect(page.getByText("A socket of the address was left out.")).toHaveText([
    "A socket of the address was left out. There is none of that address.",
    "A socket of the address was left out. It is another wearer’s.",
  ]);
  await page.goto(`/episodes/${id}/side-by-side?socket=${socket(1)}&socket=${socket(1)}`);
  await expect(page.locator("main").getByRole("alert")).toContainText("one is chosen");
});

test("the file holds what the page says", async ({ page, clinic }) => {
  await page.goto(gardener(clinic.file).beside(4, 5));
  const waiting = page.waitForEvent("download");
  await page.getByRole("link", { name: "Download as CSV" }).click();
  const download = await waiting;
  expect(download.suggestedFilename()).toMatch(/^TW-\d+-sockets-4-5-\d{4}-\d\d-\d\d\.csv$/);
  const lines = readFileSync(await download.path(), "utf8").split(/\r?\n/);
  expect(lines[0]).toBe(
    "\ufeffabout,what,unit,socket,value,standard error,compared with,difference,error of difference,counts from,outcome,why",
  );
  expect(lines).toContainEqual(expect.stringMatching(/^measure,comfort at the fitting,of 10,Socket 5,4,,Socket 4,-3,,2,worse,/));
  expect(lines).toContainEqual(
    expect.stringMatching(/^adjustment,"build-up 4.mm, anterior, middle third",,Socket 5,,,Socket 4,,,,worse,/),
  );
});

test("a technician opens no comparison", async ({ browser, clinic }) => {
  const context = await browser.newContext({ storageState: signedInState("technician"), baseURL: clinic.address });
  const page = await context.newPage();
  const { beside } = gardener(clinic.file);
  await page.goto(beside(4, 5));
  await expect(page).toHaveURL(/not-allowed/);
  const refused = await context.request.get(beside(4, 5).replace("?", "/csv?"));
  expect(refused.status()).toBe(403);
  await context.close();
});

for (const format of ["A4", "Letter"])
  test(`it prints on one page of ${format}`, format === "A4" ? {} : { tag: "@slow" }, async ({ page, clinic }) => {
    const [long, branched] = [gardener(clinic.file), boatBuilder(clinic.file)];
    for (const address of [long.beside(4, 5), long.beside(1, 2, 6, 7), branched.beside(4, 5)]) {
      await page.goto(address);
      await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
      const pdf = await page.pdf({ preferCSSPageSize: true, format });
      expect(pdf.toString("latin1").match(/\/Type\s*\/Page\b/g), `${address} on ${format}`).toHaveLength(1);
    }
  });

test("a socket's own page says what came of its adjustments, but not to the bench", async ({ page, browser, clinic }) => {
  const address = `/sockets/${gardener(clinic.file).socket(5)}`;
  await page.goto(address);
  const adjustments = page.getByRole("region", { name: "What separates it from socket 4" });
  await expect(adjustments.getByRole("listitem").filter({ hasText: "relief 3" })).toContainText(/worked\s*grade 3 → 1/);
  await expect(adjustments.getByRole("listitem").filter({ hasText: "build-up 4" })).toContainText("worse");
  await adjustments.getByRole("link", { name: "Sockets 4 and 5 side by side" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Sockets 4 and 5, side by side");

  const context = await browser.newContext({ storageState: signedInState("technician"), baseURL: clinic.address });
  const bench = await context.newPage();
  await bench.goto(address);
  const read = bench.getByRole("region", { name: "What separates it from socket 4" });
  await expect(read.getByRole("listitem")).toHaveCount(2);
  await expect(read).not.toContainText(/worked|worse|grade/);
  await context.close();
});

import type { Page } from "@playwright/test";
import { expect, test } from "./clinic";
import { expectNoViolations } from "./page-checks";
import { signedInState } from "./prepared";
import { stored } from "./stored";

/** The gardener: seven sockets in a year, on a limb that shrinks. */
const gardener = "SELECT Episode.id FROM Episode JOIN Wearer ON Wearer.id = wearerId WHERE name = 'Hedwig Castanheira'";
const withSockets = (count: number, fitted: boolean) =>
  `SELECT id FROM Episode WHERE struckOutAt IS NULL AND socketCount = ${count} AND ${fitted ? "" : "NOT "}EXISTS (SELECT 1 FROM Fitting JOIN CheckSocket ON CheckSocket.id = socketId WHERE CheckSocket.episodeId = Episode.id)`;

async function openTrends(page: Page, { file, of = gardener }: { file: string; of?: string }) {
  const { id } = stored(file, of);
  await page.goto(`/episodes/${id}/trends`);
  await expect(page.getByRole("heading", { level: 1, name: "Trends over the series" })).toBeVisible();
  return id;
}

const panels = ["Comfort", "Hardest mark", "Displacement under load", "Readiness index", "The limb’s volume"];
const panelOf = (page: Page, name: string) => page.getByRole("figure").filter({ has: page.getByText(name, { exact: true }) });

for (const width of [360, 768, 1440])
  test(
    `the trends of a long series say that the limb changed, and nothing moves or spills at ${width} px`,
    width === 768 ? { tag: "@slow" } : {},
    async ({ browser, clinic }) => {
      const context = await browser.newContext({
        storageState: signedInState("prosthetist"),
        baseURL: clinic.address,
        viewport: { width, height: 900 },
        colorScheme: width === 768 ? "dark" : "light",
      });
      const page = await context.newPage();
      await page.addInitScript(() => {
        Object.assign(window, { moved: 0 });
        new PerformanceObserver((list) => {
          for (const entry of list.getEntries())
            if ("value" in entry) Object.assign(window, { moved: Reflect.get(window, "moved") + entry.value });
        }).observe({ type: "layout-shift", buffered: true });
      });
      await openTrends(page, clinic);
      await expect(
        page.getByText(/^The limb changed detectably between sockets 1 and 2 \(−4.5 % ± 0.6 % of its volume\), 3 and 4 /),
      ).toContainText("What came of the adjustments there may be the limb’s doing.");
      await expect(page.getByText(/^From socket 1 to socket 7 it changed in all by −13.9 % ± 0.6 %/)).toBeVisible();
      await expect(
        page.getByText(/^Between sockets 2 and 3, and 4 and 5 it is not known whether the limb changed/),
      ).toBeVisible();
      await expect(page.getByText("There was a stop sign in the wear trial of socket 5.")).toBeVisible();
      for (const name of panels) await expect(panelOf(page, name).getByRole("img")).toBeVisible();
      // All begin and end at the same place: one axis of dates.
      const boxes = await Promise.all(panels.map((name) => panelOf(page, name).getByRole("img").boundingBox()));
      expect(new Set(boxes.map((box) => `${box?.x} ${box?.width}`)).size).toBe(1);
      await page.waitForLoadState("networkidle");
      expect(await page.evaluate(() => Reflect.get(window, "moved"))).toBeLessThan(0.02);
      await page.getByText("The sockets as a table").click();
      await page.getByText("The limb’s volume as a table").click();
      const overflow = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      expect(overflow).toBeLessThanOrEqual(0);
      await expectNoViolations(page);
      await context.close();
    },
  );

test("the same numbers stand in tables: what was not measured is said, and is no zero", async ({ page, clinic }) => {
  await openTrends(page, clinic);
  await page.getByText("The sockets as a table").click();
  await page.getByText("The limb’s volume as a table").click();
  const sockets = page.getByRole("table", { name: "Each socket on the day it was last worn" });
  const cells = (socket: string) =>
    sockets
      .getByRole("row")
      .filter({ has: page.getByRole("rowheader", { name: socket, exact: true }) })
      .getByRole("cell");
  const rest = (texts: string[]) => texts.slice(1).map((text) => text.replaceAll("\u00a0", " "));
  expect(rest(await cells("1").allInnerTexts())).toEqual([
    "5",
    "not asked",
    "clear (2), fitting",
    "12.7 ± 0.3 mm at 90 N",
    "not known",
    "none",
  ]);
  expect(rest(await cells("5").allInnerTexts())).toEqual([
    "4",
    "4",
    "deep or firm (3), trial",
    "5.0 ± 0.3 mm at 90 N",
    "0.00, 0.00 to 0.00",
    "1",
  ]);
  const limb = page.getByRole("table", { name: /^The limb’s volume between the same levels/ });
  await expect(limb.getByRole("row")).toHaveCount(7);
  expect((await limb.getByRole("cell").allTextContents()).map((text) => text.replaceAll("\u00a0", " ")).slice(0, 2)).toEqual([
    "1078 mL",
    "1070 to 1085 mL",
  ]);
  await expect(panelOf(page, "Readiness index")).toContainText("Not measured with sockets 1, 2, 3 and 4.");
});

test("each panel is heard with its name, its unit, which way is better, and its numbers", async ({ page, clinic }) => {
  await openTrends(page, clinic);
  await expect(page.getByRole("region", { name: "Measures over time" })).toMatchAriaSnapshot(`
    - region "Measures over time":
      - paragraph: "Shaded: between two sockets where the limb changed detectably."
      - figure /Comfort, 0 to 10, higher is better/:
        - strong: Comfort
        - img /Comfort in the wear trial. socket 5 4, socket 6 7, socket 7 8\\. Comfort at the fitting. socket 1 5, .* socket 7 8\\./
        - paragraph: Not asked in a wear trial of sockets 1, 2, 3 and 4.
      - figure /Hardest mark, at the first look after doffing, grade 0 to 4, lower is better/:
        - strong: Hardest mark
        - img /Hardest mark. socket 1 2, .* socket 5 3, .* socket 7 2\\./
      - figure /Displacement under load, mm at 90 N \\(at most 10 asked for\\), with its 90 % interval, lower is better/:
        - strong: Displacement under load
        - img /Displacement. socket 1 12\\.68, .* socket 7 3\\.70\\./
      - figure /Readiness index, 0 to 1, with its 90 % interval, higher is better\\. It compares sockets and decides nothing/:
        - strong: Readiness index
        - img /Readiness index. socket 5 0, socket 6 0\\.64, socket 7 0\\.71\\./
        - paragraph: Not measured with sockets 1, 2, 3 and 4.
      - figure /The limb’s volume, mL between the same levels, with its 90 % error band; neither way is better/:
        - strong: The limb’s volume
        - img /The limb’s volume from 1078 mL on .* to 928 mL on .*\\./
        - group: The limb’s volume as a table
  `);
});

test("the episode leads there and back, and looking is on the record", async ({ page, clinic }) => {
  const { id } = stored(clinic.file, gardener);
  await page.goto(`/episodes/${id}`);
  await page.getByRole("link", { name: "Trends over the series" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Trends over the series" })).toBeVisible();
  const { looked } = stored(
    clinic.file,
    `SELECT COUNT(*) AS looked FROM TrailEntry WHERE action = 'saw the trends of an episode' AND recordId = '${id}'`,
  );
  expect(Number(looked)).toBeGreaterThan(0);
  await page.getByRole("link", { name: "Hedwig Castanheira, right transtibial" }).click();
  await expect(page.getByRole("region", { name: "The series" })).toBeVisible();
});

test("an empty page says what goes there and what comes first", async ({ page, clinic }) => {
  await openTrends(page, { ...clinic, of: withSockets(0, false) });
  await expect(page.getByText("No check socket yet")).toBeVisible();
  await expect(page.getByRole("link", { name: "Specify socket 1" })).toBeVisible();
  await openTrends(page, { ...clinic, of: withSockets(1, false) });
  await expect(page.getByText("No socket was worn yet")).toBeVisible();
  await expect(page.getByText(/will stand here by date, with the limb’s volume beneath them/)).toBeVisible();
  await expect(page.getByRole("link", { name: "Open socket 1" })).toBeVisible();
  await openTrends(page, { ...clinic, of: withSockets(1, true) });
  await expect(page.getByRole("heading", { name: "One socket so far" })).toBeVisible();
  await expect(page.getByText(/A trend needs two/)).toBeVisible();
  await expect(panelOf(page, "Comfort").getByRole("img")).toBeVisible();
});

test("it prints on one page, with the tables open", async ({ page, clinic }) => {
  await openTrends(page, clinic);
  await page.emulateMedia({ media: "print" });
  await expect(page.getByRole("table", { name: "Each socket on the day it was last worn" })).toBeVisible();
  const printed = await page.pdf({ format: "A4", preferCSSPageSize: true });
  expect(printed.toString("latin1").match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
});

test("without scripts the numbers are there all the same", async ({ browser, clinic }) => {
  const context = await browser.newContext({
    storageState: signedInState("prosthetist"),
    baseURL: clinic.address,
    javaScriptEnabled: false,
  });
  const page = await context.newPage();
  await openTrends(page, clinic);
  await expect(page.getByRole("table", { name: "Each socket on the day it was last worn" })).toBeVisible();
  await context.close();
});

test.describe("who may not see wearers", () => {
  test.use({ signedInAs: "technician" });
  test("does not see their trends", async ({ page, clinic }) => {
    const { id } = stored(clinic.file, gardener);
    await page.goto(`/episodes/${id}/trends`);
    await expect(page).toHaveURL(/not-allowed/);
  });
});

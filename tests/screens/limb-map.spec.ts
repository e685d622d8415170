import type { Locator, Page } from "@playwright/test";
import { expect, test } from "./clinic";
import { expectNoViolations } from "./page-checks";
import { signedInState } from "./prepared";
import { stored } from "./stored";

/** A fitting of the boat builder's sixth socket: left transradial, 170 mm long. */
async function openFitting(page: Page, file: string) {
  const { socket } = stored(
    file,
    "SELECT subjectSocketId AS socket FROM Episode WHERE nextStep = 'sign' AND side = 'left' AND level = 'transradial'",
  );
  await page.goto(`/sockets/${socket}/fitting`);
  const marks = page.getByRole("group", { name: "Marks", exact: true });
  // Rows are pressed only once the page has come alive; before that there is nothing to wait for but this.
  await expect(marks.getByRole("button", { name: "Add a mark" })).toBeVisible();
  return { socket, marks, map: marks.getByRole("group", { name: "Map of the marks" }), list: marks.getByRole("list").last() };
}

const openMark = (marks: Locator, number: number) => marks.getByRole("group", { name: `Mark ${number}`, exact: true });
const row = (marks: Locator, number: number) =>
  marks.getByRole("listitem").getByRole("button", { name: new RegExp(`^Mark ${number},`) });
const onMap = (map: Locator, number: number) => map.getByRole("button", { name: new RegExp(`^Mark ${number}:`) });

/** A point of the map as a share of its width and height. */
async function pointOf(map: Locator, [across, down]: readonly [number, number]) {
  await map.scrollIntoViewIfNeeded();
  const box = await map.boundingBox();
  if (!box) throw new Error("the map is on the page");
  return { x: box.x + box.width * across, y: box.y + box.height * down };
}

async function drag(page: Page, map: Locator, from: readonly [number, number], to: readonly [number, number]) {
  const [start, end] = [await pointOf(map, from), await pointOf(map, to)];
  await page.mouse.move(start.x, start.y);
  await page.mouse.down();
  await page.mouse.move((start.x + end.x) / 2, (start.y + end.y) / 2);
  await page.mouse.move(end.x, end.y);
  await page.mouse.up();
}

async function typeMark(marks: Locator, number: number, values: Record<string, string>) {
  for (const [field, value] of Object.entries(values))
    await openMark(marks, number).getByRole("textbox", { name: field }).fill(value);
}

const choose = (marks: Locator, number: number, question: string, answer: string) =>
  openMark(marks, number)
    .getByRole("group", { name: question })
    .getByRole("radio", { name: answer, exact: true })
    .check({ force: true });

test("a mark is added, moved, sized, described and taken away by keyboard alone", async ({ page, clinic }) => {
  const { marks, map } = await openFitting(page, clinic.file);
  const press = (...keys: string[]) =>
    keys.reduce((before, key) => before.then(() => page.keyboard.press(key)), Promise.resolve());
  await marks.getByRole("button", { name: "Add a mark" }).focus();
  await press("Enter");
  const distance = openMark(marks, 1).getByRole("textbox", { name: "from the end" });
  await expect(distance).toBeFocused();
  await page.keyboard.type("88");
  await press("Tab");
  await page.keyboard.type("8");
  await press("Tab");
  await page.keyboard.type("20");
  await press("Tab");
  await page.keyboard.type("12");
  await press("Tab", "Space", "ArrowRight", "ArrowRight");
  await expect(openMark(marks, 1).getByRole("radio", { name: "clear" })).toBeChecked();
  await press("Tab", "Space");
  await expect(onMap(map, 1)).toHaveAccessibleName(
    /^Mark 1: anterior, middle third, 88.mm from the end, 8°; 20 × 12.mm; clear; blanches; grade 2 of 4\.$/,
  );

  await openMark(marks, 1).getByRole("button", { name: "Move it by keys" }).press("Enter");
  await expect(onMap(map, 1)).toBeFocused();
  await press("ArrowUp", "Shift+ArrowUp", "ArrowRight", "Shift+ArrowRight", "+", "Alt+ArrowRight", "Alt+ArrowDown");
  await expect(onMap(map, 1)).toHaveAccessibleName(/94.mm from the end, 20°; 22 × 12.mm/);
  await expect(
    page.getByRole("status").filter({ hasText: "Mark 1: anterior, 94 mm from the end, 20°, 22 by 12 mm" }),
  ).toBeAttached();

  await press("Delete");
  await expect(row(marks, 1)).toHaveCount(0);
  const undo = marks.getByRole("button", { name: "Undo" });
  await expect(undo).toBeFocused();
  await press("Enter");
  await expect(row(marks, 1)).toHaveAccessibleName(/anterior, middle third, 94.mm, 20°, 22 × 12.mm, clear, blanches/);
  await expect(openMark(marks, 1)).toBeVisible();
  await press("Escape");
  await expect(row(marks, 1)).toBeFocused();
  await expect(openMark(marks, 1)).toHaveCount(0);
});

test("a mark is drawn, moved and sized by the mouse, and stays on the limb", async ({ page, clinic }) => {
  const { marks, map } = await openFitting(page, clinic.file);
  await drag(page, map, [0.45, 0.3], [0.53, 0.36]);
  const value = (field: string) => openMark(marks, 1).getByRole("textbox", { name: field }).inputValue().then(Number);
  const [wide, far] = [await value("width"), await value("from the end")];
  expect(wide).toBeGreaterThan(5);
  expect(await value("height")).toBeGreaterThan(3);
  await expect(openMark(marks, 1).getByRole("radio", { checked: true })).toHaveCount(0);

  await drag(page, map, [0.49, 0.33], [0.49, 0.45]);
  expect(await value("from the end")).toBeLessThan(far - 10);
  expect(await value("width")).toBe(wide);
  await drag(page, map, [0.49, 0.45], [0.02, 0.02]);
  expect(await value("from the end")).toBeLessThanOrEqual(196);
  expect(await value("angle")).toBe(180);

  await drag(page, map, [0.48, 0.88], [0.5, 0.905]);
  expect(await openMark(marks, 2).getByRole("textbox", { name: "from the end" }).inputValue().then(Number)).toBeLessThan(17);
  await expect(row(marks, 2)).toHaveAccessibleName(/^Mark 2, distal end/);
  await marks.getByRole("button", { name: "Remove mark 2" }).click();
  await expect(row(marks, 2)).toHaveCount(0);
});

test("on a phone a finger presses, draws and moves, and the page still scrolls", async ({ browser, clinic }) => {
  const context = await browser.newContext({
    storageState: signedInState("prosthetist"),
    baseURL: clinic.address,
    viewport: { width: 360, height: 780 },
    hasTouch: true,
    isMobile: true,
  });
  const page = await context.newPage();
  const { marks, map } = await openFitting(page, clinic.file);
  const touch = await context.newCDPSession(page);
  const finger = async (from: readonly [number, number], to: readonly [number, number]) => {
    const [start, end] = [await pointOf(map, from), await pointOf(map, to)];
    await touch.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [start] });
    for (let step = 1; step <= 8; step += 1) {
      const at = { x: start.x + ((end.x - start.x) * step) / 8, y: start.y + ((end.y - start.y) * step) / 8 };
      await touch.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: [at] });
    }
    await touch.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  };

  const at = await pointOf(map, [0.5, 0.35]);
  await page.touchscreen.tap(at.x, at.y);
  await expect(row(marks, 1)).toHaveAccessibleName(/anterior, .*how large\?, how strong\?/);
  // Its handle stands below and to the right of it.
  const width = openMark(marks, 1).getByRole("textbox", { name: "width" });
  await expect(width).toHaveValue("");
  const handle = await map.evaluate((svg) => {
    const circle = [...svg.querySelectorAll("circle")].at(-1)?.getBoundingClientRect();
    const box = svg.getBoundingClientRect();
    return circle
      ? ([(circle.x + circle.width / 2 - box.x) / box.width, (circle.y + circle.height / 2 - box.y) / box.height] as const)
      : undefined;
  });
  if (!handle) throw new Error("the chosen mark has a handle");
  await finger(handle, [handle[0] + 0.05, handle[1] + 0.03]);
  await expect(width).toHaveValue(/^\d+$/);
  const far = Number(await openMark(marks, 1).getByRole("textbox", { name: "from the end" }).inputValue());
  await finger([0.5, 0.35], [0.5, 0.5]);
  await expect(openMark(marks, 1).getByRole("textbox", { name: "from the end" })).not.toHaveValue(String(far));

  const before = await page.evaluate(() => window.scrollY);
  await finger([0.25, 0.6], [0.25, 0.2]);
  await expect.poll(() => page.evaluate(() => window.scrollY)).toBeGreaterThan(before + 40);
  await expect(row(marks, 2)).toHaveCount(0);

  for (const target of await marks.getByRole("button").all()) {
    if ((await target.evaluate((element) => element.tagName)) !== "BUTTON" || !(await target.isVisible())) continue;
    expect((await target.boundingBox())?.height, (await target.textContent()) ?? "").toBeGreaterThanOrEqual(44);
  }
  expect(
    await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth),
  ).toBeLessThanOrEqual(0);
  await context.close();
});

test("thirty marks keep the overview: one line each, one open, and nothing is chosen for anybody", async ({ page, clinic }) => {
  const { marks, map } = await openFitting(page, clinic.file);
  const add = marks.getByRole("button", { name: "Add a mark" });
  for (let number = 1; number <= 30; number += 1) {
    await add.click();
    // The field for its distance has the focus; that for its angle follows by Tab. Its size is drawn as long as none is given.
    await expect(page.locator(":focus")).toHaveValue("");
    await page.keyboard.insertText(String((number * 37) % 160));
    await page.keyboard.press("Tab");
    await page.keyboard.insertText(String((number * 67) % 360));
  }
  await expect(map.getByRole("button")).toHaveCount(30);
  await expect(marks.getByRole("listitem").getByRole("button")).toHaveCount(30);
  await expect(marks.getByRole("group", { name: /^Mark \d+$/ })).toHaveCount(1);
  await expect(marks.getByRole("radio", { checked: true })).toHaveCount(0);
  await onMap(map, 30).focus();
  await page.keyboard.press("PageUp");
  await expect(onMap(map, 29)).toBeFocused();
  await expect(openMark(marks, 29)).toBeVisible();
  for (const colorScheme of ["light", "dark"] as const) {
    await page.emulateMedia({ colorScheme });
    await expectNoViolations(page, colorScheme);
  }
});

test("the control says what it is and what it holds", async ({ page, clinic }) => {
  const { marks, map } = await openFitting(page, clinic.file);
  await marks.getByRole("button", { name: "Add a mark" }).click();
  await typeMark(marks, 1, { "from the end": "84", angle: "176", width: "22", height: "12" });
  await choose(marks, 1, "strength", "clear");
  await choose(marks, 1, "blanches", "no");
  await expect(map).toMatchAriaSnapshot(`
    - group "Map of the marks":
      - button /^Mark 1. posterior, middle third, 84.mm from the end, 176°; 22 × 12.mm; clear; does not blanch; grade 3 of 4\\.$/ [pressed]
  `);
  await expect(marks).toMatchAriaSnapshot(`
    - group "Mark 1":
      - paragraph
      - textbox "from the end": "84"
      - textbox "angle": "176"
      - textbox "width": "22"
      - textbox "height": "12"
      - group "strength":
        - radio "no redness"
        - radio "faint"
        - radio "clear" [checked]
        - radio "deep"
        - radio "purple"
      - group "blanches":
        - radio "yes"
        - radio "no" [checked]
        - radio "not tested"
      - checkbox "firm"
      - checkbox "warm"
      - checkbox "painful"
      - checkbox "broken or blistered"
      - textbox "gone at optional"
      - button "Done"
      - button "Move it by keys"
      - button "Remove mark 1"
  `);
  await expect(row(marks, 1)).toHaveAttribute("aria-expanded", "true");
  await expect(map).toHaveAccessibleDescription(/Left limb seen from the front.*The trim line \(dashed\) is drawn level/);
});

test("what is missing or beyond the limb is told at its field, on the map, and nothing typed is lost", async ({
  page,
  clinic,
}) => {
  const { marks } = await openFitting(page, clinic.file);
  await marks.getByRole("button", { name: "Add a mark" }).click();
  await typeMark(marks, 1, { "from the end": "400", angle: "8", width: "22", height: "12" });
  const distance = openMark(marks, 1).getByRole("textbox", { name: "from the end" });
  await expect(distance).toHaveAccessibleDescription(/This residual limb is 170 mm long: the mark would lie off it/);
  await distance.fill("88");
  await expect(distance).not.toHaveAccessibleDescription(/would lie off it/);
  await marks.getByRole("button", { name: "Add a mark" }).click();
  await typeMark(marks, 2, { "from the end": "40", angle: "90", width: "9", height: "9" });
  await choose(marks, 2, "strength", "faint");
  await page.getByLabel("Skin looked at, minutes after doffing optional").fill("3");
  await page.getByRole("button", { name: "Save the fitting" }).click();

  const summary = page.getByRole("alert").filter({ hasText: "fields need another look" });
  await expect(summary).toBeFocused();
  await expect(openMark(marks, 1).getByRole("group", { name: "strength" })).toHaveAccessibleDescription(
    /Choose how strong it is/,
  );
  await summary.getByRole("link", { name: /Mark 2: Choose if it blanches/ }).click();
  await expect(openMark(marks, 2).getByRole("radio", { name: "yes" })).toBeFocused();
  await expect(openMark(marks, 2).getByRole("radio", { name: "faint" })).toBeChecked();
  await choose(marks, 2, "blanches", "yes");
  await expect(openMark(marks, 2)).not.toContainText("Choose if it blanches");
  await row(marks, 1).click();
  await expect(distance).toHaveValue("88");
});

test("without JavaScript marks are typed in plain rows", async ({ browser, clinic }) => {
  const context = await browser.newContext({
    javaScriptEnabled: false,
    storageState: signedInState("prosthetist"),
    baseURL: clinic.address,
  });
  const page = await context.newPage();
  const { socket } = stored(clinic.file, "SELECT subjectSocketId AS socket FROM Episode WHERE nextStep = 'sign'");
  await page.goto(`/sockets/${socket}/fitting`);
  const first = page.getByRole("group", { name: "Marks", exact: true }).getByRole("listitem").first();
  await first.getByLabel("from the end").fill("900");
  await first.getByLabel("strength").selectOption("clear");
  await page.getByRole("button", { name: "Save the fitting" }).click();
  await expect(first.getByLabel("from the end")).toHaveValue("900");
  await expect(first.getByLabel("strength")).toHaveValue("clear");
  await context.close();
});

test("at the next look the marks of the last one are answered anew, or said to be gone at one press", async ({
  page,
  clinic,
}) => {
  const { trial } = stored(
    clinic.file,
    `SELECT WearTrial.id AS trial FROM WearTrial JOIN SkinInspection ON SkinInspection.trialId = WearTrial.id
     WHERE WearTrial.state = 'ended' AND WearTrial.socketId NOT IN (SELECT socketId FROM SignOff WHERE socketId IS NOT NULL)
       AND NOT EXISTS (SELECT 1 FROM SkinInspection later WHERE later.trialId = WearTrial.id AND later.minutesAfterDoffing > SkinInspection.minutesAfterDoffing)
       AND (SELECT count(*) FROM SkinMark WHERE inspectionId = SkinInspection.id AND strength <> 'none') = 4`,
  );
  await page.goto(`/trials/${trial}/look`);
  const marks = page.getByRole("group", { name: "Marks", exact: true });
  await expect(marks.getByRole("listitem")).toHaveCount(4);
  await expect(row(marks, 1)).toHaveAccessibleName(/how strong\?, last time/);
  for (const number of [1, 2, 3]) {
    const gone = marks.getByRole("button", { name: `Gone: mark ${number}` });
    await gone.click();
    await expect(gone).toHaveAttribute("aria-pressed", "true");
  }
  await row(marks, 4).click();
  await choose(marks, 4, "strength", "faint");
  await choose(marks, 4, "blanches", "yes");
  const [when, minutes] = [page.getByLabel("When", { exact: true }), page.getByLabel("Minutes after doffing")];
  await minutes.fill("20");
  await when.fill(await timeOfLook(clinic.file, String(trial), 20));
  await page.getByRole("button", { name: "Save this look" }).click();
  const look = page.getByRole("article", { name: "Look 20 minutes after doffing" });
  await expect(look.getByText(/gone: 1, 2, 3/)).toBeVisible();
  await expect(page.getByRole("row", { name: /still there at 20.min: late/ })).toHaveCount(1);
});

/** On the clinic's clock, so many minutes after the socket came off. */
async function timeOfLook(file: string, trial: string, minutes: number): Promise<string> {
  const { at, after } = stored(
    file,
    `SELECT at, minutesAfterDoffing AS after FROM SkinInspection WHERE trialId = '${trial}' ORDER BY minutesAfterDoffing DESC`,
  );
  const instant = new Date(/^\d+$/.test(String(at)) ? Number(at) : String(at));
  const { toClinicTime } = await import("@/lib/records/clinic-time");
  return toClinicTime(new Date(instant.getTime() + (minutes - Number(after)) * 60_000), "Europe/Lisbon");
}

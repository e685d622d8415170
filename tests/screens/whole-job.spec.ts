import type { Locator, Page } from "@playwright/test";
import { toClinicTime } from "@/lib/records/clinic-time";
import { demoAccounts, demoPassword } from "@/prisma/invented-clinic/accounts";
import { expect, test } from "./clinic";
import { clinicNow } from "./prepared";

test.use({ signedInAs: "nobody" });

const zone = "Europe/Lisbon";
const ago = (minutes: number): string => toClinicTime(new Date(clinicNow() - minutes * 60_000), zone);
const dayMinutes = 24 * 60;

const answer = (page: Page | Locator, question: string, choice: string) =>
  page.getByRole("group", { name: question }).getByRole("radio", { name: choice, exact: true }).check({ force: true });

async function fillRow(list: Locator, row: number, fields: Record<string, string>) {
  const one = list.getByRole("listitem").nth(row);
  for (const [label, value] of Object.entries(fields)) {
    const field = one.getByLabel(label, { exact: true }).or(one.getByLabel(`${label} optional`, { exact: true }));
    if ((await field.evaluate((element) => element.tagName)) === "SELECT") await field.selectOption(value);
    else await field.fill(value);
  }
}

const limb = [176, 188, 203, 219, 238];

async function measure(page: Page, minutesAgo: number, circumferences: number[]) {
  await page.getByRole("link", { name: "Measure the limb" }).first().click();
  await page.getByLabel("When", { exact: true }).fill(ago(minutesAgo));
  await page.getByLabel("Minutes since doffing").fill("40");
  const levels = page.getByRole("group", { name: "Circumferences" });
  for (const [index, circumference] of circumferences.entries()) {
    const row = levels.getByRole("listitem").nth(index);
    await row.getByLabel("distance").fill(String(index * 40));
    await row.getByLabel(/^circumference/).fill(String(circumference));
  }
  await page.getByRole("button", { name: "Save the measurement" }).click();
  await expect(page.getByRole("heading", { name: "The limb’s size" })).toBeVisible();
}

/** Each state an hour after the one before. */
async function bringSocket(page: Page, number: number, specifiedMinutesAgo: number) {
  await page
    .getByRole("list")
    .getByRole("link", { name: `Socket ${number}`, exact: true })
    .click();
  for (const [index, state] of ["being made", "at hand"].entries()) {
    await answer(page, "It is", state);
    await page.getByLabel("Since").fill(ago(specifiedMinutesAgo - 60 * (index + 1)));
    await page.getByRole("button", { name: "Save" }).click();
    await expect(page.getByText(`${state} since`)).toBeVisible();
  }
}

async function recordFitting(
  page: Page,
  { minutesAgo, suspension, pulls, comfort }: { minutesAgo: number; suspension: string; pulls: number[]; comfort: string },
) {
  await page.getByRole("link", { name: "Record a fitting" }).click();
  await page.getByLabel("When", { exact: true }).fill(ago(minutesAgo));
  await answer(page, "Where", "clinic");
  for (const question of [
    "The wearer gets into it",
    "The limb is seated fully",
    "The socket does not turn",
    "Contact everywhere",
    "Bony places are free",
    "Edges neither dig in",
    "Comfortable at rest",
    "Comfortable with a load",
    "No numbness",
    "Colour and warmth",
  ])
    await answer(page, question, "met");
  await answer(page, "Suspension holds", suspension);
  const list = page.getByRole("group", { name: "Pulls", exact: true });
  for (const [index, displaced] of pulls.entries())
    await fillRow(list, index, { load: String([22, 34, 45][index]), displaced: String(displaced) });
  await fillRow(page.getByRole("group", { name: "Motion", exact: true }), 0, {
    movement: "elbow-flexion",
    without: "138",
    with: "131",
  });
  await answer(page, "How comfortable is the socket?", comfort);
  await answer(page, "Pain", "0");
  await page.getByRole("button", { name: "Save the fitting" }).click();
  await expect(page.getByRole("heading", { name: /what next$/ })).toBeVisible();
  await page.getByRole("link", { name: /Odile Marchetti/ }).click();
  await expect(page.getByRole("heading", { name: "What stands behind it" })).toBeVisible();
}

async function recordEvent(page: Page, button: string, minutesAgo: number) {
  const form = page.locator("form", { has: page.getByRole("button", { name: button, exact: true }) });
  await form.getByLabel(/^When/).fill(ago(minutesAgo));
  await form.getByRole("button", { name: button, exact: true }).click();
}

async function checkIn(page: Page, minutesAgo: number) {
  const form = page.locator("form", { has: page.getByRole("button", { name: "Save this check-in" }) });
  await answer(form, "How comfortable is the socket?", "8");
  await answer(form, "Pain", "0");
  await answer(form, "How hard is it to carry on?", "3");
  await answer(form, "Who said so", "wearer");
  await form.getByLabel(/^When/).fill(ago(minutesAgo));
  await form.getByRole("button", { name: "Save this check-in" }).click();
}

async function look(page: Page, { minutesAgo, after, strength }: { minutesAgo: number; after: number; strength: string }) {
  await page.getByRole("link", { name: /^Record (a look at the skin|another look)$/ }).click();
  await page.getByLabel("When", { exact: true }).fill(ago(minutesAgo));
  await page.getByLabel("Minutes after doffing").fill(String(after));
  const marks = page.getByRole("group", { name: "Marks", exact: true });
  for (const number of [1, 2, 3, 4]) {
    const row = marks.getByRole("listitem").getByRole("button", { name: new RegExp(`^Mark ${number},`) });
    const isNew = (await row.count()) === 0;
    await (isNew ? marks.getByRole("button", { name: "Add a mark" }) : row).click();
    const mark = marks.getByRole("group", { name: `Mark ${number}`, exact: true });
    if (isNew)
      for (const [field, value] of Object.entries({ "from the end": 85, angle: (number - 1) * 90, width: 18, height: 14 }))
        await mark.getByRole("textbox", { name: field }).fill(String(value));
    await answer(mark, "strength", strength === "none" ? "no redness" : strength);
    await answer(mark, "blanches", "yes");
    if (strength === "none") await mark.getByRole("textbox", { name: "gone at" }).fill(String(after));
  }
  await page.getByRole("button", { name: "Save this look" }).click();
  await expect(page.getByRole("heading", { name: new RegExp(`^${after} minutes? after doffing$`) })).toBeVisible();
}

test("a prosthetist takes a new wearer from the first measurement to a signed release", async ({ page }) => {
  test.setTimeout(240_000);
  const lead = demoAccounts.find(({ role }) => role === "prosthetist");
  if (!lead) throw new Error("the invented clinic has a prosthetist");
  await page.goto("/");
  await page.getByLabel("E-mail").fill(lead.email);
  await page.getByLabel("Password").fill(demoPassword);
  await page.getByRole("button", { name: "Sign in" }).click();

  await page.getByRole("link", { name: "Wearers", exact: true }).click();
  await page.getByRole("link", { name: "Add a wearer" }).click();
  await page.getByLabel("Name", { exact: true }).fill("Odile Marchetti");
  await page.getByLabel("Clinic number").fill("TL-9001");
  await page.getByLabel("Born").fill("1984-06-30");
  await page.getByLabel("Body mass").fill("74,5");
  await page.getByRole("button", { name: "Add the wearer" }).click();

  await page.getByText("Add a caution").click();
  await page.getByLabel("What to be careful of").selectOption("reduced-feeling");
  await page.getByRole("button", { name: "Add the caution" }).click();
  await page.getByRole("link", { name: "Open an episode" }).first().click();
  await page.getByLabel("Side").selectOption("left");
  await page.getByLabel("Level", { exact: true }).selectOption("transradial");
  await page.getByLabel("Cause").selectOption("trauma");
  await page.getByLabel("Date of limb loss").fill("2023-02-11");
  await page.getByLabel("Residual-limb length").fill("170");
  await page.getByLabel("Distances are measured from").selectOption("distal end");
  await page.getByLabel("Landmark").fill("distal end");
  await page.getByLabel("Suspension").selectOption("self-suspending");
  await page.getByLabel("Mass of the planned device").fill("0.68");
  await page.getByLabel("Distance of its centre of mass").fill("220");
  await page.getByRole("button", { name: "Open the episode" }).click();
  await page.getByRole("button", { name: "I have read this caution" }).click();
  await expect(page.getByText(/^read by/)).toBeVisible();

  await measure(page, 30 * dayMinutes, limb);
  await measure(
    page,
    1 * dayMinutes,
    limb.map((circumference) => circumference - 0.5),
  );

  await page.getByRole("link", { name: "Specify socket 1" }).click();
  await page.getByLabel("Specified", { exact: true }).fill(ago(20 * dayMinutes));
  for (const [index, circumference] of limb.entries())
    await page.getByLabel(`inside circumference at ${index * 40} mm`).fill(String(circumference - 4));
  await page.getByRole("button", { name: "Specify the socket" }).click();
  await bringSocket(page, 1, 20 * dayMinutes);
  await recordFitting(page, { minutesAgo: 10 * dayMinutes, suspension: "not met", pulls: [7, 10, 14], comfort: "6" });
  await expect(page.getByRole("heading", { name: /not ready/i })).toBeVisible();

  await page.getByRole("link", { name: "Specify socket 2" }).click();
  await page.getByLabel("Specified", { exact: true }).fill(ago(6 * 60));
  await fillRow(page.getByRole("group", { name: "Adjustments to the socket before" }), 0, {
    kind: "volume",
    amount: "-2",
    unit: "percent",
    reason: "the limb moved in the socket when lifted",
    answers: "displacement",
  });
  await expect(page.getByText("The adjustments explain every level")).toBeVisible();
  await page.getByRole("button", { name: "Specify the socket" }).click();
  await bringSocket(page, 2, 6 * 60);
  await recordFitting(page, { minutesAgo: 90, suspension: "met", pulls: [1.6, 2.1, 2.7], comfort: "8" });

  await page.getByRole("link", { name: "Plan a wear trial" }).first().click();
  await page.getByLabel("What the wearer will do").fill("coiling rope\nlifting a bucket");
  await page.getByLabel("The trial is over; I enter it afterwards").check();
  await page.getByRole("button", { name: "Save the plan" }).click();
  await recordEvent(page, "Begin the trial", 60);
  await expect(page.getByRole("row", { name: /begun/ })).toBeVisible();
  for (const minute of [5, 10, 15, 20]) {
    await checkIn(page, 60 - minute);
    await expect(page.getByRole("row", { name: /check-in: comfort 8/ })).toHaveCount(minute / 5);
  }
  await recordEvent(page, "End the trial", 39);
  await expect(page.getByRole("heading", { name: "Ended" })).toBeVisible();
  await recordEvent(page, "Socket is off", 38);
  await expect(page.getByRole("row", { name: /doffed/ })).toBeVisible();
  await look(page, { minutesAgo: 37, after: 1, strength: "clear" });
  await look(page, { minutesAgo: 30, after: 8, strength: "none" });

  await page.getByRole("link", { name: /Odile Marchetti/ }).click();
  await expect(page.getByRole("heading", { name: "Ready: every check is met." })).toBeVisible();
  await page.getByRole("link", { name: "Go to sign-off" }).click();
  await answer(page, "What the signature means", "release for definitive fabrication");
  await page.getByLabel("Your password, again").fill(demoPassword);
  await page.getByRole("button", { name: "Sign", exact: true }).click();

  await expect(page.getByRole("heading", { name: "Release for definitive fabrication" })).toBeVisible();
  await expect(page.getByText("Socket 2 of TL-9001")).toBeVisible();
  await expect(page.getByText(/SHA-256 of the evidence: [0-9a-f]{8}/)).toBeVisible();
});

import { expect, test } from "./clinic";
import { stored } from "./stored";

/** A fitting as it counts now, whose socket nobody has signed for. */
const openFitting = (file: string) =>
  stored(
    file,
    "SELECT f.id, f.socketId FROM Fitting f JOIN Episode e ON e.id = f.episodeId WHERE e.nextStep = 'sign' AND f.socketId = e.subjectSocketId AND f.id NOT IN (SELECT correctsId FROM Fitting WHERE correctsId IS NOT NULL)",
  );

test("the skin is looked at again after a fitting", async ({ page, clinic }) => {
  const { id } = openFitting(clinic.file);
  await page.goto(`/fittings/${id}/look`);
  await page.getByRole("textbox", { name: "Minutes after doffing" }).fill("25");
  for (const gone of await page.getByRole("button", { name: /^Gone: mark/ }).all()) await gone.click();
  await page.getByRole("button", { name: "Save this look" }).click();
  // The invented fitting is days old: by the clock this look is much later, which is asked about once.
  await expect(page.getByRole("alert").filter({ hasText: "by the clock this one is" })).toBeVisible();
  await page.getByRole("button", { name: "Save this look" }).click();
  await expect(page.getByRole("heading", { name: "25 minutes after doffing" })).toBeVisible();
});

test("a saved fitting is put right with a reason; both versions can be read", async ({ page, clinic }) => {
  const { id } = openFitting(clinic.file);
  await page.goto(`/fittings/${id}`);
  await page.getByRole("link", { name: "Put it right" }).click();
  await expect(page.getByRole("heading", { level: 1, name: /Put right: fitting of socket/ })).toBeVisible();

  await page.getByRole("textbox", { name: "In the wearer’s own words" }).fill("It pinches a little when I bend");
  await page.getByRole("button", { name: "Save the correction" }).click();
  await expect(page.getByText("One field needs another look.")).toBeVisible();
  await expect(page.getByRole("textbox", { name: "In the wearer’s own words" })).toHaveValue("It pinches a little when I bend");

  await page.getByRole("textbox", { name: "Why it is put right" }).fill("The wearer rang and said more");
  await page.getByRole("button", { name: "Save the correction" }).click();
  await expect(page.getByRole("heading", { name: "Versions" })).toBeVisible();
  const quoted = page.getByRole("blockquote").filter({ hasText: "It pinches a little when I bend" });
  await expect(quoted).toBeVisible();
  await expect(page.getByText("The wearer rang and said more")).toBeVisible();

  await page.goto(`/fittings/${id}`);
  await expect(page.getByRole("note").filter({ hasText: "This version was put right." })).toBeVisible();
  await expect(quoted).toHaveCount(0);
  await page.getByRole("link", { name: "Read the one that counts" }).click();
  await expect(quoted).toBeVisible();
});

test("what is put right is kept as one types, and discarding it brings back what was recorded", async ({ page, clinic }) => {
  const { id } = openFitting(clinic.file);
  await page.goto(`/fittings/${id}/correct`);
  const [words, displaced] = [
    page.getByRole("textbox", { name: "In the wearer’s own words" }),
    page.getByRole("group", { name: "Pulls", exact: true }).getByLabel("displaced"),
  ];
  const line = page
    .getByRole("main")
    .getByRole("status")
    .filter({ hasText: /kept on this device/i });
  await expect(line).toHaveText("What you type is kept on this device as you go.");
  const [recorded, rows] = [await displaced.first().inputValue(), await displaced.count()];
  expect(recorded).not.toBe("");
  expect(rows).toBe(3);
  await displaced.first().fill("4.4");
  await words.fill("Half a sentence");
  await expect(line).toHaveText(/^Kept on this device/);
  await page.reload();
  await expect(line).toHaveText(/^Taken up again/);
  await expect(displaced.first()).toHaveValue("4.4");
  await expect(words).toHaveValue("Half a sentence");
  await page.getByRole("button", { name: /^Discard it/ }).click();
  await expect(displaced.first()).toHaveValue(recorded);
  await expect(words).not.toHaveValue("Half a sentence");

  await words.fill("A whole sentence");
  await page.getByRole("textbox", { name: "Why it is put right" }).fill("Half of it was missing");
  await page.getByRole("button", { name: "Save the correction" }).click();
  await expect(page.getByRole("heading", { name: "Versions" })).toBeVisible();
  await expect(page.getByRole("listitem").filter({ hasText: /^The wearer’s words: .*→ A whole sentence$/ })).toBeVisible();
  await page.getByRole("link", { name: "Put it right" }).click();
  await expect(line).toHaveText("What you type is kept on this device as you go.");
});

test("a mark that a correction took out can be read in the older version; the others keep their numbers", async ({
  page,
  clinic,
}) => {
  const { id } = openFitting(clinic.file);
  const numbers = (minutes: number) =>
    page.getByRole("table", { name: new RegExp(`^Marks ${minutes} minutes? after doffing`) }).getByRole("rowheader");
  const open = page.getByRole("group", { name: /^Mark \d+$/ });
  await page.goto(`/fittings/${id}`);
  await expect(numbers(2)).toHaveText(["1", "2", "3", "4"]);
  await page.getByRole("link", { name: "Put it right" }).click();
  await page.getByRole("button", { name: /^Mark 2, / }).click();
  await open.getByRole("button", { name: /^Remove/ }).click();
  await page.getByRole("button", { name: "Add a mark" }).click();
  await open.getByLabel("from the end").fill("60");
  await open.getByLabel("angle").fill("100");
  await open.getByLabel("width").fill("20");
  await open.getByLabel("height").fill("12");
  await open.getByRole("radio", { name: "clear", exact: true }).check({ force: true });
  await open.getByRole("radio", { name: "yes", exact: true }).check({ force: true });
  await page.getByRole("textbox", { name: "Why it is put right" }).fill("The second was an old scar; one was left out");
  await page.getByRole("button", { name: "Save the correction" }).click();
  await expect(page.getByRole("heading", { name: "Versions" })).toBeVisible();
  await expect(numbers(2)).toHaveText(["1", "3", "4", "5"]);
  for (const change of [/^Mark 2 taken out: /, /^Mark 5 added: clear, blanches; 60\smm from the end, 100°/])
    await expect(page.getByRole("listitem").filter({ hasText: change })).toBeVisible();

  await page.goto(`/fittings/${id}`);
  await expect(page.getByRole("note").filter({ hasText: "This version was put right." })).toBeVisible();
  await expect(numbers(2)).toHaveText(["1", "2", "3", "4"]);
  await expect(page.getByRole("img", { name: /^Marks 2 minutes/ })).toHaveAccessibleDescription(/Mark 2: grade \d of 4/);
});

test("who prefers inches types and reads them; what is kept is metric", async ({ page, clinic }) => {
  await page.goto("/my-units");
  await page.getByRole("combobox", { name: "Lengths" }).selectOption("in");
  await page.getByRole("button", { name: "Save your units" }).click();
  await expect(page.getByRole("status")).toContainText("Saved.");
  const episode = stored(clinic.file, "SELECT id, limbLengthMm FROM Episode WHERE nextStep = 'sign'");
  await page.goto(`/episodes/${episode.id}/change`);
  const length = page.getByRole("textbox", { name: /Residual-limb length/ });
  await length.fill("7 1/4");
  await expect(length).toHaveAccessibleDescription(/184.2 mm/);
  await page.getByRole("button", { name: /Save/ }).click();
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
  await expect
    .poll(() => stored(clinic.file, `SELECT limbLengthMm FROM Episode WHERE id = '${episode.id}'`).limbLengthMm)
    .toBe("184.15");
});

import { expect, test } from "./clinic";
import { signedInState } from "./prepared";
import { stored } from "./stored";

const planned =
  "SELECT t.id, w.birthOn FROM WearTrial t JOIN Episode e ON e.id = t.episodeId JOIN Wearer w ON w.id = e.wearerId WHERE t.state = 'planned'";

test("a prosthetist makes a wearer's own link, shows it, and withdraws it", async ({ page, clinic, context, browser }) => {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  const { id, birthOn = "" } = stored(clinic.file, planned);
  await page.goto(`/trials/${id}`);
  const section = page.getByRole("region", { name: "The wearer’s own link" });
  await expect(section).toContainText("No link has been made for this trial.");
  await expect(section.getByLabel("It holds for")).toHaveValue("7");
  await section.getByLabel("It holds for").selectOption("3 days");
  await section.getByRole("button", { name: "Make a link" }).click();

  await expect(section.getByRole("img", { name: "The wearer’s own link as a code" })).toBeVisible();
  await expect(section.getByText("Show it now: it is not kept.")).toBeVisible();
  await expect(section).toContainText("It can be opened.");
  await section.getByRole("button", { name: "Copy the address" }).click();
  await expect(section.getByText("Copied.")).toBeVisible();
  const address = new URL(await page.evaluate(() => navigator.clipboard.readText()));
  expect(address.origin + address.pathname).toBe(`${clinic.address}/live/own`);
  expect(address.hash).toMatch(/^#[\w-]{43}$/);
  await expect(section.getByText(address.href)).toBeVisible();
  const token = address.hash.slice(1);

  // The wearer, who has no account.
  const wearer = await browser.newContext({ baseURL: clinic.address, storageState: { cookies: [], origins: [] } });
  const open = (birthYear: string) => wearer.request.post("/own/open", { data: { token, birthYear } });
  expect((await open("1900")).status()).toBe(404);
  const opened = await open(birthOn.slice(0, 4));
  expect(opened.status()).toBe(200);
  expect(await opened.json()).toEqual({ pass: expect.stringMatching(/^[\w-]{43}$/), trialId: id });

  // Seen once: not after a reload.
  await page.reload();
  await expect(section).toContainText(/Opened\s*once/);
  await expect(section).toContainText(/Refused\s*one try/);
  await expect(section.getByRole("img")).toHaveCount(0);
  expect(await page.content()).not.toContain(token);
  expect(clinic.log()).not.toContain(token);

  // Others see how it stands, and no more.
  const assistant = await browser.newContext({ baseURL: clinic.address, storageState: signedInState("assistant") });
  const theirs = await assistant.newPage();
  await theirs.goto(`/trials/${id}`);
  const theirSection = theirs.getByRole("region", { name: "The wearer’s own link" });
  await expect(theirSection).toContainText("It can be opened.");
  await expect(theirSection.getByRole("button")).toHaveCount(0);
  await assistant.close();

  // A new one ends the one before; once it is withdrawn, its address is not shown any more either.
  await section.getByRole("button", { name: "Make a new link" }).click();
  await expect(section.getByRole("img")).toBeVisible();
  await expect(section).toContainText(/Opened\s*not yet/);
  expect((await open(birthOn.slice(0, 4))).status()).toBe(404);
  await section.getByRole("button", { name: "Withdraw the link" }).click();
  await expect(section).toContainText("Withdrawn.");
  await expect(section.getByRole("img")).toHaveCount(0);
  await expect(section.getByRole("button", { name: "Withdraw the link" })).toHaveCount(0);
  await wearer.close();
});

import { expect, test } from "./clinic";
import { stored } from "./stored";

test("a wearer opens the link on a phone, runs the trial and looks at the skin; the clinic sees it come and says stop", async ({
  page,
  clinic,
  browser,
}) => {
  const {
    id,
    birthOn = "",
    name = "",
  } = stored(
    clinic.file,
    `SELECT t.id, w.birthOn, w.name FROM WearTrial t JOIN Episode e ON e.id = t.episodeId JOIN Wearer w ON w.id = e.wearerId
     WHERE t.state = 'planned'`,
  );
  await page.goto(`/trials/${id}`);
  const section = page.getByRole("region", { name: "The wearer’s own link" });
  await section.getByRole("button", { name: "Make a link" }).click();
  const address = (await section.getByText("/live/own#").textContent()) ?? "";

  const phone = await (
    await browser.newContext({
      storageState: { cookies: [], origins: [] },
      viewport: { width: 360, height: 740 },
      hasTouch: true,
    })
  ).newPage();
  await phone.goto(address);
  // Nothing is told before the year of birth.
  await expect(phone.getByText("In which year was the person born who wears the socket?")).toBeVisible();
  expect(await phone.content()).not.toContain("socket 1");
  await phone.getByLabel(/In which year/).fill("85");
  await phone.getByRole("button", { name: "Open" }).click();
  await expect(phone.getByRole("alert")).toHaveText("Give the year with four figures, as 1985.");
  await phone.getByLabel(/In which year/).fill("1901");
  await phone.getByRole("button", { name: "Open" }).click();
  await expect(phone.getByRole("alert")).toContainText("This link cannot be opened.");
  await phone.getByLabel(/In which year/).fill(birthOn.slice(0, 4));
  await phone.getByRole("button", { name: "Open" }).click();

  await expect(phone.getByRole("heading", { name: "Your wear trial" })).toBeVisible();
  await expect(phone.getByText("Stop at once if")).toBeVisible();
  expect(await phone.locator("body").textContent()).not.toContain(name);
  await phone.getByRole("button", { name: "The socket is on: begin" }).tap();
  for (const [question, figure] of [
    [/How comfortable/, 7],
    [/How much does it hurt/, 2],
    [/How hard/, 4],
  ] as const)
    await phone.getByRole("group", { name: question }).getByText(String(figure), { exact: true }).tap();
  await phone.getByRole("radio", { name: "a helper" }).check();
  // A finger that taps twice saves once, and is told nothing wrong.
  await phone.getByRole("button", { name: "Save this check-in" }).dblclick();
  await expect(phone.getByText("Check-in 1 saved.")).toBeVisible();
  await expect(phone.getByRole("status").first()).toContainText("All sent to the clinic.");
  // The clinic had the page open: it came by itself, and says who said so.
  await expect(page.getByRole("row", { name: /check-in: comfort 7, pain 2, exertion 4 carer/ })).toBeVisible();

  await page.getByRole("combobox", { name: "What was seen or said" }).first().selectOption("colour-change");
  await page.getByRole("button", { name: "Stop the trial" }).click();
  await expect(phone.getByRole("heading", { name: "Stopped: the limb changes colour" })).toBeVisible();
  await expect(phone.getByText(/^Take the socket off now\..*Call Tidewater Limb Clinic, \+00 555 0100/)).toBeVisible();

  // The looks need no network, nor does the page.
  await phone.evaluate(async () => void (await navigator.serviceWorker.ready));
  await phone.context().setOffline(true);
  await phone.reload();
  await phone.getByRole("button", { name: "The socket is off" }).tap();
  await phone.getByRole("button", { name: "There is a mark" }).tap();
  await phone.getByRole("button", { name: "Save this look" }).tap();
  await expect(phone.getByRole("form").getByRole("alert")).toHaveText("Mark 1: press an answer in each row.");
  for (const answer of ["front", "near the end of the limb", "clearly red or darker", "goes pale"])
    await phone.getByRole("radio", { name: answer }).check();
  await phone.getByRole("checkbox", { name: "is sore" }).check();
  await phone.getByRole("button", { name: "Save this look" }).tap();
  await expect(phone.getByText(/^Next look in 5 min\.$/)).toBeVisible();
  await expect(phone.getByText("at once: one mark")).toBeVisible();
  await phone.context().setOffline(false);
  await expect(phone.getByRole("status").first()).toContainText("All sent to the clinic.", { timeout: 20_000 });
  await expect(page.getByRole("article", { name: /^Look .* after doffing/ })).toBeVisible();
  expect(
    stored(
      clinic.file,
      `SELECT strength, painful FROM SkinMark JOIN SkinInspection i ON i.id = inspectionId WHERE i.trialId = '${id}'`,
    ),
  ).toEqual({
    strength: "clear",
    painful: "1",
  });
  expect(stored(clinic.file, `SELECT byName FROM SkinInspection WHERE trialId = '${id}'`).byName).toBe("the wearer, by own link");

  // Nothing else opens.
  for (const path of [`/trials/${id}`, "/today", "/wearers"]) {
    await phone.goto(clinic.address + path);
    await expect(phone).toHaveURL(/sign-in/);
  }
  await page.getByRole("button", { name: "Withdraw the link" }).click();
  await expect(page.getByText("Withdrawn.")).toBeVisible();
  await phone.context().close();
});

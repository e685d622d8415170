import { demoPassword } from "@/prisma/invented-clinic/accounts";
import { expect, test } from "./clinic";
import { stored } from "./stored";

/** An episode of the invented clinic whose trial has a stop sign. */
const stoppedEpisode = (file: string) =>
  stored(
    file,
    `SELECT Episode.id, Episode.evidenceVersion, WearTrial.id AS trialId FROM Episode JOIN WearTrial ON WearTrial.episodeId = Episode.id
     JOIN TrialEvent ON TrialEvent.trialId = WearTrial.id
     WHERE TrialEvent.kind = 'stop-sign' AND decision = 'must not be released' AND WearTrial.socketId = subjectSocketId AND stage NOT IN ('closed', 'on hold') AND struckOutAt IS NULL`,
  );

test("a trial with a stop sign cannot be released by any path", async ({ page, clinic }) => {
  const { id, trialId } = stoppedEpisode(clinic.file);

  await page.goto(`/episodes/${id}`);
  await expect(page.getByText("must not be released").first()).toBeVisible();
  await expect(page.getByRole("row", { name: /forbids.*No stop sign/ })).toBeVisible();

  await page.goto(`/episodes/${id}/sign-off`);
  await expect(page.getByText("This cannot be signed.")).toBeVisible();
  await expect(page.getByLabel("Your password, again")).toHaveCount(0);
  await expect(page.getByRole("button", { name: "Sign", exact: true })).toHaveCount(0);

  await page.goto(`/trials/${trialId}`);
  await expect(page.getByText("A trial with a stop sign is never passed.")).toBeVisible();

  const bundle = await page.request.get(`/episodes/${id}/bundle`);
  expect(bundle.status()).toBe(200);
  expect(JSON.parse(await bundle.text())).toMatchObject({ format: "fitting-bundle/1" });
});

test("a signing form that was bent to fit another episode is refused by the server", async ({ page, clinic }) => {
  const stopped = stoppedEpisode(clinic.file);
  const ready = stored(clinic.file, "SELECT id FROM Episode WHERE nextStep = 'sign' AND struckOutAt IS NULL");

  await page.goto(`/episodes/${ready.id}/sign-off`);
  await page.locator('input[name="episodeId"]').evaluate((field, id) => field.setAttribute("value", id), stopped.id ?? "");
  await page
    .locator('input[name="evidenceVersion"]')
    .evaluate((field, version) => field.setAttribute("value", version), stopped.evidenceVersion ?? "");
  for (const box of await page.getByRole("checkbox", { name: /^I have read/ }).all()) await box.check();
  await page.getByRole("radio", { name: "release for definitive fabrication" }).check({ force: true });
  await page.getByLabel("Your password, again").fill(demoPassword);
  await page.getByRole("button", { name: "Sign", exact: true }).click();

  await expect(page.getByRole("alert").filter({ hasText: /must not be released/i })).toBeVisible();
  await page.goto(`/episodes/${stopped.id}`);
  await expect(page.getByRole("heading", { name: "Signatures" })).toHaveCount(0);
});

import { randomUUID } from "node:crypto";
import { expect, test } from "./clinic";
import { clinicNow, signedInState } from "./prepared";
import { stored } from "./stored";

const planned = "SELECT id FROM WearTrial WHERE state = 'planned'";

test("what a device sends is stored once; what the trial cannot take stands on its page with the reason", async ({
  page,
  clinic,
  playwright,
}) => {
  const { id } = stored(clinic.file, planned);
  const now = clinicNow();
  const at = (minutesAgo: number) => new Date(now - minutesAgo * 60_000).toISOString();
  const events = [
    { id: randomUUID(), kind: "begun", at: at(6) },
    { id: randomUUID(), kind: "check-in", at: at(1), comfort: 8, pain: 0, exertion: 2, reportedBy: "wearer" },
    { id: randomUUID(), kind: "check-in", at: at(0), comfort: 8, pain: 12, exertion: 2, reportedBy: "wearer" },
  ];
  const send = () => page.request.post(`/trials/${id}/events`, { data: { sentAt: new Date(clinicNow()).toISOString(), events } });
  const { received } = await (await send()).json();
  expect(received.map(({ became }: { became: string }) => became)).toEqual(["stored", "stored", "set aside"]);
  expect((await (await send()).json()).received.map(({ became }: { became: string }) => became)).toEqual([
    "known",
    "known",
    "set aside",
  ]);
  expect((await page.request.post(`/trials/${id}/events`, { data: "[]" })).status()).toBe(400);

  await page.goto(`/trials/${id}`);
  await expect(page.getByRole("heading", { name: "Running" })).toBeVisible();
  await expect(page.getByRole("row", { name: /check-in: comfort 8, pain 0/ })).toHaveCount(1);
  const aside = page.getByRole("region", { name: "Came and set aside" });
  await expect(aside.getByRole("listitem")).toHaveCount(1);
  await expect(aside.getByRole("listitem")).toContainText("pain 12");
  await expect(aside.getByRole("listitem")).toContainText("Pain is between 0 and 10.");

  // Nobody, and somebody who may not.
  const nobody = await playwright.request.newContext({ baseURL: clinic.address, storageState: { cookies: [], origins: [] } });
  const technician = await playwright.request.newContext({ baseURL: clinic.address, storageState: signedInState("technician") });
  const body = { data: { sentAt: new Date(clinicNow()).toISOString(), events } };
  expect((await nobody.post(`/trials/${id}/events`, body)).status()).toBe(401);
  expect((await technician.post(`/trials/${id}/events`, body)).status()).toBe(403);
  await nobody.dispose();
  await technician.dispose();
});

test("a stop sign after the signature stands on the episode's page, in the strongest words, with the way to it", async ({
  page,
  clinic,
}) => {
  const { trial, episode } = stored(
    clinic.file,
    `SELECT WearTrial.id AS trial, WearTrial.episodeId AS episode FROM WearTrial JOIN SignOff USING (socketId)
     LEFT JOIN Withdrawal ON signOffId = SignOff.id WHERE Withdrawal.id IS NULL`,
  );
  const at = new Date(clinicNow()).toISOString();
  const send = (event: object) => page.request.post(`/trials/${trial}/events`, { data: { sentAt: at, events: [event] } });
  await send({ id: randomUUID(), kind: "check-in", at, comfort: 8, pain: 2, exertion: 2, reportedBy: "wearer" });
  await page.goto(`/episodes/${episode}`);
  const notice = page.getByRole("region", { name: "Set aside" });
  await expect(notice).toContainText("1 event from a device was set aside and is judged nowhere");
  await expect(notice).not.toContainText("came after the signature");

  await send({ id: randomUUID(), kind: "stop-sign", at, sign: "numbness" });
  await send({ id: randomUUID(), kind: "check-in", at, comfort: 3, pain: 8, exertion: 2, reportedBy: "wearer" });
  await page.reload();
  await expect(notice).toContainText("A stop sign came after the signature and is judged nowhere: look at it.");
  await expect(notice).toContainText("High pain came after the signature and is judged nowhere: look at it.");
  await notice.getByRole("link").click();
  const aside = page.getByRole("region", { name: "Came and set aside" });
  await expect(aside.getByRole("listitem").filter({ hasText: "A stop sign, judged nowhere" })).toContainText("sign numbness");
});

import { randomUUID } from "node:crypto";
import { expect, test } from "./clinic";
import { signedInState } from "./prepared";
import { stored } from "./stored";

const planned = "SELECT id FROM WearTrial WHERE state = 'planned'";

test("what a device sends is stored once; what the trial cannot take stands on its page with the reason", async ({
  page,
  clinic,
  playwright,
}) => {
  const { id } = stored(clinic.file, planned);
  const now = Date.now();
  const at = (minutesAgo: number) => new Date(now - minutesAgo * 60_000).toISOString();
  const events = [
    { id: randomUUID(), kind: "begun", at: at(6) },
    { id: randomUUID(), kind: "check-in", at: at(1), comfort: 8, pain: 0, exertion: 2, reportedBy: "wearer" },
    { id: randomUUID(), kind: "check-in", at: at(0), comfort: 8, pain: 12, exertion: 2, reportedBy: "wearer" },
  ];
  const send = () => page.request.post(`/trials/${id}/events`, { data: { sentAt: new Date().toISOString(), events } });
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
  const body = { data: { sentAt: new Date().toISOString(), events } };
  expect((await nobody.post(`/trials/${id}/events`, body)).status()).toBe(401);
  expect((await technician.post(`/trials/${id}/events`, body)).status()).toBe(403);
  await nobody.dispose();
  await technician.dispose();
});

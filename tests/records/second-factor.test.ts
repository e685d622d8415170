import { createOTP } from "@better-auth/utils/otp";
import { symmetricEncrypt } from "better-auth/crypto";
import { expect, test } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { auth } from "@/lib/access/auth";
import { matchingStep } from "@/lib/access/second-factor";
import { changeAccount } from "@/lib/records/accounts";
import { database } from "@/lib/records/database";
import { releaseMeaning } from "@/lib/records/meanings";
import { endSecondFactor, seeSecondFactor } from "@/lib/records/second-factor";
import { sign } from "@/lib/records/sign";
import { withdrawSignature } from "@/lib/records/withdraw-signature";
import { openTestClinic, password, readyEpisode, signingOf, today } from "./clinic";

const secret = "12345678901234567890";
const step = (at: Date) => Math.floor(at.getTime() / 30_000);
const codeAt = (at: Date) => createOTP(secret).hotp(step(at));

/** As better-auth keeps it once it was confirmed. */
async function withDevice(actor: Actor): Promise<void> {
  process.env.BETTER_AUTH_SECRET ??= "a secret of the tests only, long enough for it";
  const db = await database();
  const { secretConfig } = await (await auth()).$context;
  const kept = await symmetricEncrypt({ key: secretConfig, data: secret });
  await db.twoFactor.create({ data: { id: actor.id, userId: actor.id, secret: kept, backupCodes: "", verified: true } });
  await db.user.update({ where: { id: actor.id }, data: { twoFactorEnabled: true } });
}

// RFC 6238, appendix B, SHA-1, secret "12345678901234567890"; its codes have eight digits, ours the last six of them.
test.each([
  ["1970-01-01T00:00:59Z", "94287082"],
  ["2005-03-18T01:58:29Z", "07081804"],
  ["2005-03-18T01:58:31Z", "14050471"],
  ["2009-02-13T23:31:30Z", "89005924"],
  ["2033-05-18T03:33:20Z", "69279037"],
  ["2603-10-11T11:33:20Z", "65353130"],
])("the codes of RFC 6238: %s", async (instant, eight) => {
  const now = new Date(instant);
  expect(await matchingStep(secret, eight.slice(2), { now, after: null })).toBe(step(now));
  expect(await matchingStep(secret, eight.slice(2), { now, after: step(now) })).toBeNull();
  const later = new Date(now.getTime() + 90_000);
  expect(await matchingStep(secret, eight.slice(2), { now: later, after: null })).toBeNull();
});

test("who has a second factor signs with its code, which signs once; who has none is not asked", async () => {
  const clinic = await openTestClinic();
  await withDevice(clinic.prosthetist);
  const { episodeId } = await readyEpisode(clinic);
  const signing = await signingOf(episodeId, releaseMeaning);
  await expect(sign(clinic.prosthetist, signing)).rejects.toMatchObject({
    fields: { passwordCode: expect.stringContaining("missing") },
  });
  await expect(sign(clinic.prosthetist, { ...signing, passwordCode: "000000" })).rejects.toMatchObject({
    fields: { passwordCode: expect.stringContaining("not a code") },
  });
  const code = await codeAt(today);
  const { signOffId } = await sign(clinic.prosthetist, { ...signing, passwordCode: `${code.slice(0, 3)} ${code.slice(3)}` });
  const { evidence } = await (await database()).signOff.findUniqueOrThrow({ where: { id: signOffId } });
  expect(JSON.parse(evidence)).toMatchObject({ provedBy: ["password", "code"] });

  const withdrawing = { signOffId, why: "wrong model", password, passwordCode: code };
  await expect(withdrawSignature(clinic.prosthetist, withdrawing)).rejects.toMatchObject({
    fields: { passwordCode: expect.stringContaining("not a code") },
  });
  await withdrawSignature(clinic.colleague, { signOffId, why: "wrong model", password });
});

test("a refused signature does not use the code up", async () => {
  const clinic = await openTestClinic();
  await withDevice(clinic.prosthetist);
  const { episodeId } = await readyEpisode(clinic);
  const signing = { ...(await signingOf(episodeId, releaseMeaning)), passwordCode: await codeAt(today) };
  await expect(sign(clinic.prosthetist, { ...signing, evidenceVersion: 0 })).rejects.toMatchObject({ name: "ChangedMeanwhile" });
  await sign(clinic.prosthetist, signing);
});

test("wrong codes end the tries as wrong passwords do", async () => {
  const clinic = await openTestClinic();
  await withDevice(clinic.prosthetist);
  const { episodeId } = await readyEpisode(clinic);
  const wrong = { ...(await signingOf(episodeId, releaseMeaning)), passwordCode: "000000" };
  for (let attempt = 0; attempt < 5; attempt += 1) await expect(sign(clinic.prosthetist, wrong)).rejects.toThrow();
  await expect(sign(clinic.prosthetist, { ...wrong, passwordCode: await codeAt(today) })).rejects.toMatchObject({
    fields: { password: expect.stringContaining("Too many") },
  });
});

test("it is taken away by its owner with a code, or by an administrator for a lost device, and both are on the trail", async () => {
  const clinic = await openTestClinic();
  const db = await database();
  await withDevice(clinic.prosthetist);
  expect(await seeSecondFactor(clinic.prosthetist)).toEqual({ state: "on" });
  await expect(endSecondFactor(clinic.prosthetist, { password })).rejects.toThrow();
  await endSecondFactor(clinic.prosthetist, { password, passwordCode: await codeAt(today) });
  expect(await seeSecondFactor(clinic.prosthetist)).toEqual({ state: "none" });

  await withDevice(clinic.colleague);
  const { id: userId, name, role, version } = await db.user.findUniqueOrThrow({ where: { id: clinic.colleague.id } });
  await changeAccount(clinic.administrator, { userId, version, name, role, active: "yes", withoutCode: "yes" });
  expect(await seeSecondFactor(clinic.colleague)).toEqual({ state: "none" });
  const said = await db.trailEntry.findMany({ where: { recordKind: "account" }, select: { action: true, after: true } });
  expect(said.map(({ action }) => action)).toEqual(["took away their second factor", "changed an account"]);
  expect(said[1]?.after).toContain('"secondFactor":"removed"');
});

test("one that was begun and never confirmed asks for nothing", async () => {
  const clinic = await openTestClinic();
  await withDevice(clinic.prosthetist);
  const db = await database();
  await db.twoFactor.updateMany({ data: { verified: false } });
  await db.user.updateMany({ data: { twoFactorEnabled: false } });
  const { episodeId } = await readyEpisode(clinic);
  await sign(clinic.prosthetist, await signingOf(episodeId, releaseMeaning));
});

import { readFileSync, statSync, writeFileSync } from "node:fs";
import { expect, onTestFinished, test } from "vitest";
import { type ReleaseFile, releaseFileText } from "@/lib/exchange/release-file";
import { verifyRelease } from "@/lib/exchange/verify-release";
import { openClinic } from "@/lib/records/accounts";
import { addAddendum } from "@/lib/records/add-addendum";
import { clinicPublicKeys } from "@/lib/records/clinic-signature";
import { askForCountersignatures, countersign } from "@/lib/records/countersign";
import { closeDatabase, database } from "@/lib/records/database";
import { deliverSocket } from "@/lib/records/deliver-socket";
import { releaseMeaning, trialMeaning } from "@/lib/records/meanings";
import { planWearing } from "@/lib/records/plan-wearing";
import { ChangedMeanwhile, InputRefused, Locked, NotAllowed } from "@/lib/records/refusals";
import { seeEpisode } from "@/lib/records/see-episode";
import { seeWorkshop } from "@/lib/records/see-workshop";
import { sign } from "@/lib/records/sign";
import { withdrawSignature } from "@/lib/records/withdraw-signature";
import { canonicalJson, sha256 } from "@/lib/trail/chain";
import { publicKeys, rotateKeys, signingKey } from "@/lib/trail/keys";
import { openTestClinic, password, readyEpisode, signingOf, today } from "./clinic";
import { freshDatabase } from "./fresh-database";
import { exported, withSignedRelease } from "./signed-release";

const wordsOf = async (file: ReleaseFile, keys = clinicPublicKeys()) => {
  const { verdict, findings } = await verifyRelease(file, keys);
  return { verdict, against: findings.filter(({ state }) => state === "not met").map(({ words }) => words) };
};

test("a release is signed with the clinic's key, and holds with nothing but its file and the public key", async () => {
  const { signOffId } = await withSignedRelease();
  const check = await verifyRelease(await exported(signOffId), clinicPublicKeys());
  expect(check.findings.filter(({ state }) => state !== "met")).toEqual([]);
  expect(check.verdict).toBe("holds");
  expect(check.about).toContain("“release for definitive fabrication”, signed by A Prosthetist");
  expect(check.about).toContain("Europe/Lisbon");
  expect(check.about).toContain("knows of no withdrawal");
});

test("without a key nobody can tell; with a stranger's key it does not hold", async () => {
  const { clinic, signOffId } = await withSignedRelease();
  const file = await exported(signOffId);
  expect((await verifyRelease(file, [])).verdict).toBe("cannot tell");
  const stranger = `${clinic.file}.stranger`;
  await signingKey(stranger, today);
  expect((await verifyRelease(file, publicKeys(stranger))).verdict).toBe("does not hold");
});

test("one digit altered anywhere is caught, whether or not the digest is put right as well", async () => {
  const { signOffId } = await withSignedRelease();
  const text = canonicalJson((await exported(signOffId)).evidence);
  const digits = [...text.matchAll(/\d/g)].map(({ index }) => index);
  // Every 37th digit of some thousands: dimensions, times, ratings, the digest before, limits.
  const tried = digits.filter((_, count) => count % 37 === 0);
  expect(tried.length).toBeGreaterThan(50);
  for (const at of tried) {
    const evidence = JSON.parse(`${text.slice(0, at)}${(Number(text[at]) + 1) % 10 || 1}${text.slice(at + 1)}`);
    const file = { ...(await exported(signOffId)), evidence };
    if (canonicalJson(evidence) === text) continue; // 1 became 1
    expect((await verifyRelease(file, clinicPublicKeys())).verdict).toBe("does not hold");
    const rehashed = { ...file, digest: sha256(canonicalJson(evidence)) };
    expect((await verifyRelease(rehashed, clinicPublicKeys())).verdict).toBe("does not hold");
  }
});

test("a signature taken off, or taken from another release, does not hold", async () => {
  const { clinic, signOffId, episodeId } = await withSignedRelease();
  const first = await exported(signOffId);
  expect((await wordsOf({ ...first, signature: null })).against).toEqual([expect.stringContaining("it was taken off")]);
  await withdrawSignature(clinic.prosthetist, { signOffId, why: "wrong model", password });
  const again = await sign(clinic.prosthetist, await signingOf(episodeId, releaseMeaning));
  const second = await exported(again.signOffId);
  expect((await wordsOf({ ...second, signature: first.signature })).verdict).toBe("does not hold");
  expect((await wordsOf(second)).verdict).toBe("holds");
});

test("a false assessment under a true signature is caught: the evidence is judged again", async () => {
  const { clinic, signOffId } = await withSignedRelease();
  const file = await exported(signOffId);
  const bent = structuredClone(file.evidence) as { bundle: { wearTrials: { events: { comfort?: number }[] }[] } };
  for (const event of bent.bundle.wearTrials[0]?.events ?? []) if (event.comfort !== undefined) event.comfort = 2;
  const { signDetached } = await import("@/lib/trail/jws");
  const evidence = bent as unknown as ReleaseFile["evidence"]; // the same object, with other ratings
  const text = canonicalJson(evidence);
  const signature = await signDetached(text, await signingKey(`${clinic.file}.keys`, today));
  expect(await wordsOf({ ...file, evidence, digest: sha256(text), signature })).toEqual({
    verdict: "does not hold",
    against: [expect.stringMatching(/evidence is “not ready”; signed was “ready”/)],
  });
});

test("the chain of signatures: each names the digest of the one before, its place, and the end of the trail", async () => {
  const { clinic, signOffId, episodeId } = await withSignedRelease();
  await withdrawSignature(clinic.prosthetist, { signOffId, why: "wrong model", password });
  const { signOffId: secondId } = await sign(clinic.prosthetist, await signingOf(episodeId, trialMeaning));
  const [first, second] = [await exported(signOffId), await exported(secondId)];
  expect(second.evidence).toMatchObject({ id: secondId, position: 2, previousDigest: first.digest, provedBy: ["password"] });
  const { trail } = second.evidence as { trail: { position: number; digest: string } };
  const entry = await (await database()).trailEntry.findUniqueOrThrow({ where: { position: trail.position } });
  expect(entry.digest).toBe(trail.digest);
});

test("a withdrawal is signed too, and makes itself heard wherever the file is checked", async () => {
  const { clinic, signOffId } = await withSignedRelease();
  await withdrawSignature(clinic.colleague, { signOffId, why: "the wrong model was poured", password });
  const file = await exported(signOffId);
  const check = await verifyRelease(file, clinicPublicKeys());
  expect(check.verdict).toBe("holds");
  expect(check.about).toMatch(/WITHDRAWN .* the wrong model was poured Make nothing from it/);
  const bent = {
    ...file,
    withdrawal: { signature: file.withdrawal?.signature ?? "", statement: { ...file.withdrawal?.statement, why: "no" } },
  };
  expect((await wordsOf(bent)).verdict).toBe("does not hold");
});

test("a signing request that is sent again signs nothing, not even after the withdrawal", async () => {
  const clinic = await openTestClinic();
  const { episodeId } = await readyEpisode(clinic);
  const request = await signingOf(episodeId, releaseMeaning);
  const { signOffId } = await sign(clinic.prosthetist, request);
  await expect(sign(clinic.prosthetist, request)).rejects.toThrow(ChangedMeanwhile);
  const { evidenceVersion } = await signingOf(episodeId, releaseMeaning);
  await expect(sign(clinic.prosthetist, { ...request, evidenceVersion })).rejects.toThrow("released already");
  await withdrawSignature(clinic.prosthetist, { signOffId, why: "wrong model", password });
  await expect(sign(clinic.prosthetist, request)).rejects.toThrow(ChangedMeanwhile);
  expect(await (await database()).signOff.count()).toBe(1);
});

test("two requests at the same moment sign once", async () => {
  const clinic = await openTestClinic();
  const { episodeId } = await readyEpisode(clinic);
  const request = await signingOf(episodeId, releaseMeaning);
  const both = await Promise.allSettled([sign(clinic.prosthetist, request), sign(clinic.colleague, request)]);
  expect(both.map(({ status }) => status).sort()).toEqual(["fulfilled", "rejected"]);
  expect(await (await database()).signOff.count()).toBe(1);
});

test("what the page did not show is not signed: a bundle that changed under an unchanged version, or limits that did", async () => {
  const clinic = await openTestClinic();
  const { episodeId } = await readyEpisode(clinic);
  const request = await signingOf(episodeId, releaseMeaning);
  // A wearer's mass is no record of the episode, and is part of what is signed all the same.
  await (await database()).wearer.updateMany({ data: { bodyMassKg: 99 } });
  await expect(sign(clinic.prosthetist, request)).rejects.toThrow("not what this page shows any more");
  const { changeLimit } = await import("@/lib/records/change-limit");
  const anew = await signingOf(episodeId, releaseMeaning);
  await changeLimit(clinic.administrator, { name: "fresh-days", value: 21, why: "our limbs change quickly" });
  await expect(sign(clinic.prosthetist, anew)).rejects.toThrow(ChangedMeanwhile);
  expect(await (await database()).signOff.count()).toBe(0);
});

test("with the clock set back nothing is signed, withdrawn or countersigned", async () => {
  const { clinic, signOffId, episodeId } = await withSignedRelease();
  clinic.setNow("2026-10-08T08:50:00Z");
  await expect(withdrawSignature(clinic.prosthetist, { signOffId, why: "x", password })).rejects.toThrow("clock was set back");
  clinic.setNow("2026-10-08T09:00:00Z");
  await withdrawSignature(clinic.prosthetist, { signOffId, why: "x", password });
  clinic.setNow("2026-10-07T09:00:00Z");
  await expect(sign(clinic.prosthetist, await signingOf(episodeId, releaseMeaning))).rejects.toThrow("clock was set back");
});

test("a signature that says it is older than its key, or younger than a key that was retired, does not hold", async () => {
  const { signOffId } = await withSignedRelease();
  const file = await exported(signOffId);
  const keys = clinicPublicKeys();
  const after = keys.map((key) => ({ ...key, from: "2026-10-09T00:00:00.000Z" }));
  const before = keys.map((key) => ({ ...key, from: "2026-10-01T00:00:00.000Z", until: "2026-10-02T00:00:00.000Z" }));
  for (const wrong of [after, before])
    expect((await wordsOf(file, wrong)).against).toEqual([expect.stringContaining("was not in use")]);
});

test("keys: readable by the server's user only; after a rotation the old public half still checks, the private is gone", async () => {
  const { clinic, signOffId, episodeId } = await withSignedRelease();
  const file = `${clinic.file}.keys`;
  expect(statSync(file).mode & 0o777).toBe(0o600);
  const old = JSON.parse(readFileSync(file, "utf8")).keys[0] as { d: string; kid: string };
  clinic.setNow("2026-10-08T10:00:00Z");
  const rotated = await rotateKeys(file, new Date("2026-10-08T10:00:00Z"));
  expect(statSync(file).mode & 0o777).toBe(0o600);
  expect(readFileSync(file, "utf8")).not.toContain(old.d);
  expect(publicKeys(file).map(({ kid }) => kid)).toEqual([rotated.kid, old.kid]);
  await withdrawSignature(clinic.prosthetist, { signOffId, why: "x", password });
  const again = await sign(clinic.prosthetist, await signingOf(episodeId, releaseMeaning));
  expect((await wordsOf(await exported(signOffId))).verdict).toBe("holds");
  const check = await verifyRelease(await exported(again.signOffId), clinicPublicKeys());
  expect(check).toMatchObject({ verdict: "holds" });
  expect(check.findings.map(({ words }) => words).join()).toContain(rotated.kid);
});

test("a clinic's first run makes its key, so that the public half can be given out before anything is signed", async () => {
  const { databaseUrl, file } = freshDatabase();
  await closeDatabase();
  process.env.DATABASE_URL = databaseUrl;
  onTestFinished(closeDatabase);
  await openClinic({
    ...{ clinicName: "A clinic", timeZone: "Europe/Lisbon", name: "First", email: "first@example.test", password, invented: "" },
  });
  expect(publicKeys(`${file}.keys`)).toHaveLength(1);
  expect(statSync(`${file}.keys`).mode & 0o777).toBe(0o600);
});

test("two processes that make the first key at the same time end up with one", async () => {
  const clinic = await openTestClinic();
  const file = `${clinic.file}.keys`;
  const made = await Promise.all([1, 2, 3].map(() => signingKey(file, today)));
  expect(new Set(made.map(({ kid }) => kid)).size).toBe(1);
});

test("a key file that was cut short signs nothing, and is not overwritten", async () => {
  const clinic = await openTestClinic();
  const { episodeId } = await readyEpisode(clinic);
  writeFileSync(`${clinic.file}.keys`, "{", { mode: 0o600 });
  await expect(sign(clinic.prosthetist, await signingOf(episodeId, releaseMeaning))).rejects.toThrow();
  expect(readFileSync(`${clinic.file}.keys`, "utf8")).toBe("{");
  expect(await (await database()).signOff.count()).toBe(0);
});

test("where the clinic's rules ask for it, a release is in force only once a second prosthetist has signed", async () => {
  const clinic = await openTestClinic();
  await expect(askForCountersignatures(clinic.prosthetist, { asked: "yes" })).rejects.toThrow(NotAllowed);
  await askForCountersignatures(clinic.administrator, { asked: "yes" });
  const { episodeId, socketId } = await readyEpisode(clinic);
  const { signOffId } = await sign(clinic.prosthetist, await signingOf(episodeId, releaseMeaning));
  const db = await database();
  const stateOf = async () => (await db.checkSocket.findUniqueOrThrow({ where: { id: socketId } })).state;
  const stage = async () => (await seeEpisode(clinic.prosthetist, episodeId)).episode.stage;

  expect([await stateOf(), await stage()]).toEqual(["fitted", "awaiting sign-off"]);
  expect((await seeEpisode(clinic.prosthetist, episodeId)).next).toMatchObject({ step: "sign", who: "prosthetist" });
  expect((await seeWorkshop(clinic.technician, null)).releases).toEqual([]);
  expect((await wordsOf(await exported(signOffId))).against).toEqual([expect.stringContaining("not in force")]);
  await expect(deliverSocket(clinic.assistant, { episodeId, at: today, confirmed: ["not measured"] })).rejects.toThrow(Locked);
  await expect(planWearing(clinic.prosthetist, { signOffId, startOn: "2026-10-09" })).rejects.toThrow();

  await expect(countersign(clinic.assistant, { signOffId, password })).rejects.toThrow(NotAllowed);
  await expect(countersign(clinic.prosthetist, { signOffId, password })).rejects.toThrow("You signed this yourself");
  await expect(countersign(clinic.colleague, { signOffId, password: "no" })).rejects.toThrow(InputRefused);
  await countersign(clinic.colleague, { signOffId, password });
  await expect(countersign(clinic.colleague, { signOffId, password })).rejects.toThrow("countersigned this already");
  expect([await stateOf(), await stage()]).toEqual(["released", "released"]);
  expect((await seeWorkshop(clinic.technician, null)).releases).toHaveLength(1);
  expect((await wordsOf(await exported(signOffId))).verdict).toBe("holds");

  const file = await exported(signOffId);
  expect((await wordsOf({ ...file, countersignature: null })).against).toEqual([expect.stringContaining("not in force")]);
});

test("what is put right under a signature is an addendum: signed, and nothing else changes", async () => {
  const { clinic, signOffId } = await withSignedRelease();
  const { evidence } = await exported(signOffId);
  await addAddendum(clinic.colleague, { signOffId, words: "The wall is 4 mm, not 3 mm." });
  await expect(addAddendum(clinic.technician, { signOffId, words: "x" })).rejects.toThrow(NotAllowed);
  const file = await exported(signOffId);
  expect(file.evidence).toEqual(evidence);
  expect((await wordsOf(file)).verdict).toBe("holds");
  const [addendum] = file.addenda;
  const bent = {
    ...file,
    addenda: [{ signature: addendum?.signature ?? "", statement: { ...addendum?.statement, words: "The wall is 3 mm." } }],
  };
  expect((await wordsOf(bent)).verdict).toBe("does not hold");
});

test("what was signed before there were keys is not taken for proven", async () => {
  const { signOffId } = await withSignedRelease();
  const { evidence } = await exported(signOffId);
  const { id: _id, position: _position, trail: _trail, provedBy: _proved, ...old } = evidence as Record<string, unknown>;
  const text = canonicalJson({ ...old, format: "fitting-evidence/1" });
  const kept = { evidence: text, digest: sha256(text), signature: null, countersignature: null, addenda: [], withdrawal: null };
  const check = await verifyRelease(JSON.parse(releaseFileText(kept)), clinicPublicKeys());
  expect(check.verdict).toBe("cannot tell");
});

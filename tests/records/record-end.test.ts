/** What someone with the database's file could do to the record, done for real, and whether the check says so. */
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { addWearer } from "@/lib/records/add-wearer";
import { anchorTrail } from "@/lib/records/anchor-trail";
import { closeDatabase, database } from "@/lib/records/database";
import { locks } from "@/lib/records/lock-findings";
import { seeWearer } from "@/lib/records/see-wearers";
import { sign } from "@/lib/records/sign";
import { withdrawSignature } from "@/lib/records/withdraw-signature";
import { readAnchors } from "@/lib/trail/anchors";
import { headsBeside } from "@/lib/trail/beside-database";
import { sha256 } from "@/lib/trail/chain";
import { openTestClinic, password, readyEpisode, signingOf } from "./clinic";
import { check, kept, recompute, tamper, words } from "./kept-record";
import { withSignedRelease } from "./signed-release";

test("a record that nobody touched holds, in words", async () => {
  const clinic = await kept();
  expect(await words(clinic, "met")).toEqual([
    "The chain holds over 8 entries: each carries the digest of the one before.",
    expect.stringMatching(/^2 ends of the chain that were kept apart are found in it; the latest is entry 8/),
    `All ${locks.length} locks of the store are in place.`,
  ]);
  expect(await words(clinic, "unknown")).toEqual([]);
});

test("a name that SQLite's own functions read otherwise holds all the same", async () => {
  const clinic = await kept();
  const { id } = await (await database()).wearer.findFirstOrThrow();
  await seeWearer({ ...clinic.prosthetist, name: "A\0Prosthetist \u007f 😀" }, id);
  expect(await check(clinic)).toMatchObject({ holds: true, entries: 9 });
});

test("an entry that was changed", async () => {
  const clinic = await kept();
  await tamper(clinic, (connection) => connection.exec("UPDATE TrailEntry SET actorName = 'Somebody Else' WHERE position = 3"));
  expect(await check(clinic)).toMatchObject({ holds: false, position: 3 });
  expect(await words(clinic, "not met")).toEqual(["The chain breaks at entry 3: entry 3 was changed after it was written."]);
});

test("a time that was written in another form", async () => {
  const clinic = await kept();
  await tamper(clinic, (connection) =>
    connection.exec("UPDATE TrailEntry SET at = replace(at, '+00:00', 'Z') WHERE position = 3"),
  );
  expect(await words(clinic, "not met")).toEqual([expect.stringContaining("the time of entry 3 was changed")]);
});

test("an entry that was changed, and every digest after it made anew: the ends that were kept apart tell", async () => {
  const clinic = await kept();
  await tamper(clinic, (connection) => {
    connection.exec("UPDATE TrailEntry SET actorName = 'Somebody Else' WHERE position = 3");
    recompute(connection, 3);
  });
  expect(await check(clinic)).toMatchObject({ holds: false });
  expect(await words(clinic, "met")).toEqual([expect.stringContaining("The chain holds over 8 entries")]);
  expect(await words(clinic, "not met")).toEqual([
    expect.stringMatching(/ended with entry 4 .*another entry stands there now/),
    expect.stringMatching(/ended with entry 8 .*another entry stands there now/),
  ]);
});

test("an entry that was taken out of the middle", async () => {
  const clinic = await kept();
  await tamper(clinic, (connection) => connection.exec("DELETE FROM TrailEntry WHERE position = 5"));
  expect(await words(clinic, "not met")).toEqual(["The chain breaks at entry 5: entry 5 is missing; the next one found is 6."]);
});

test("entries that were taken away at the end, also where others were written after them", async () => {
  const clinic = await kept();
  await tamper(clinic, (connection) => connection.exec("DELETE FROM TrailEntry WHERE position > 6"));
  expect(await words(clinic, "not met")).toEqual([
    expect.stringMatching(/ended with entry 8 .*it ends with entry 6 now. Entries were taken away at its end/),
  ]);
  const { id: wearerId } = await (await database()).wearer.findFirstOrThrow();
  for (let reading = 0; reading < 3; reading++) await seeWearer(clinic.colleague, wearerId);
  expect(await words(clinic, "not met")).toEqual([expect.stringMatching(/ended with entry 8 .*another entry stands there now/)]);
});

test("every entry taken away", async () => {
  const clinic = await kept();
  await tamper(clinic, (connection) => connection.exec("DELETE FROM TrailEntry"));
  expect((await words(clinic, "not met"))[0]).toContain("the record has no entry now");
});

test("two entries that changed places", async () => {
  const clinic = await kept();
  await tamper(clinic, (connection) =>
    connection.exec(`UPDATE TrailEntry SET position = -1 WHERE position = 3; UPDATE TrailEntry SET position = 3 WHERE position = 5;
      UPDATE TrailEntry SET position = 5 WHERE position = -1`),
  );
  expect(await words(clinic, "not met")).toEqual([expect.stringContaining("entry 3 does not follow the one before it")]);
});

test("the ends that were kept apart taken away: not known, and never met", async () => {
  const clinic = await kept();
  await tamper(clinic, () => rmSync(headsBeside(clinic.file)));
  const { findings } = await check(clinic);
  // Opening the store keeps its end as it finds it; what was kept before is gone.
  expect(findings.some(({ words }) => words.includes("2 ends"))).toBe(false);
  rmSync(headsBeside(clinic.file));
  expect(await words(clinic, "unknown")).toEqual([
    "No separate record of the chain’s end was found (clinic.db.heads).",
    expect.stringContaining("locks of the store are missing"),
  ]);
});

test("an end in the file of ends that was changed, and one that cannot be read", async () => {
  const clinic = await kept();
  const file = headsBeside(clinic.file);
  writeFileSync(file, readFileSync(file, "utf8").replace(/"digest":"./, '"digest":"x'));
  writeFileSync(file, "no JSON\n", { flag: "a" });
  expect(await words(clinic, "not met")).toEqual([expect.stringContaining("The record was written anew")]);
  expect(await words(clinic, "unknown")).toEqual(["Line 3 of clinic.db.heads cannot be read."]);
});

test("the end of the record and the ends that were kept apart, both taken away: a signature tells", async () => {
  const clinic = await openTestClinic();
  const { episodeId } = await readyEpisode(clinic);
  await sign(clinic.prosthetist, await signingOf(episodeId, "wear trial accepted"));
  expect(await words(clinic, "met")).toContain("1 signature that names an end of the chain names one that it has.");
  await tamper(clinic, (connection) => {
    connection.exec("DELETE FROM TrailEntry WHERE position > (SELECT max(position) - 4 FROM TrailEntry)");
    rmSync(headsBeside(clinic.file), { force: true });
  });
  expect(await check(clinic)).toMatchObject({ holds: false });
  expect(await words(clinic, "not met")).toEqual([
    expect.stringMatching(/^Signature 1, of 2026-10-08 .* names entry \d+ as the chain’s end: it ends with entry \d+ now/),
  ]);
});

test("a clock that was set back is told, and the chain still holds", async () => {
  const clinic = await openTestClinic();
  const { wearerId } = await addWearer(clinic.assistant, { clinicNumber: "T-1", name: "One", birthOn: "1984-06-30" });
  clinic.setNow("2026-10-08T08:58:30Z");
  await seeWearer(clinic.prosthetist, wearerId);
  await anchorTrail();
  expect(await words(clinic, "unknown")).toEqual([]);
  clinic.setNow("2026-10-08T08:50:00Z");
  await seeWearer(clinic.prosthetist, wearerId);
  expect(await words(clinic, "unknown")).toEqual([
    "The clock was set back at entry 3: from 2026-10-08 08:58:30 UTC to 2026-10-08 08:50:00 UTC.",
  ]);
  expect(await check(clinic)).toMatchObject({ holds: true });
});

test("the end is kept apart when the store is opened, and once a day at most where the record is only checked", async () => {
  const clinic = await openTestClinic();
  const kept = () => readAnchors(clinic.file).anchors.map(({ position }) => position);
  const { wearerId } = await addWearer(clinic.assistant, { clinicNumber: "T-1", name: "One", birthOn: "1984-06-30" });
  expect(existsSync(headsBeside(clinic.file))).toBe(false);
  await closeDatabase();
  await seeWearer(clinic.prosthetist, wearerId);
  expect(kept()).toEqual([1]);
  await check(clinic);
  expect(kept()).toEqual([1]);
  clinic.setNow("2026-10-09T09:00:01Z");
  await check(clinic);
  await check(clinic);
  expect(kept()).toEqual([1, 2]);
});

test("where the file of ends cannot be written, nothing else fails", async () => {
  const clinic = await openTestClinic();
  await addWearer(clinic.assistant, { clinicNumber: "T-1", name: "One", birthOn: "1984-06-30" });
  // A folder stands in its place; rights would not keep out a superuser.
  mkdirSync(headsBeside(clinic.file));
  await expect(anchorTrail()).resolves.toBeUndefined();
  expect(await addWearer(clinic.assistant, { clinicNumber: "T-2", name: "Two", birthOn: "1984-06-30" })).toBeTruthy();
  rmSync(headsBeside(clinic.file), { recursive: true });
  await anchorTrail();
  expect(readAnchors(clinic.file).anchors).toMatchObject([{ position: 2 }]);
});

const signedTwice = async () => {
  const signed = await withSignedRelease();
  const { clinic, signOffId, episodeId } = signed;
  await withdrawSignature(clinic.prosthetist, { signOffId, why: "wrong model", password });
  await sign(clinic.prosthetist, await signingOf(episodeId, "wear trial accepted"));
  expect(await words(clinic, "met")).toContain("The 2 signatures follow each other and are as they were made.");
  return signed;
};

test("a signature's evidence that was changed in the file, with and without its digest made anew", async () => {
  const { clinic } = await signedTwice();
  await tamper(clinic, (connection) =>
    connection.exec("UPDATE SignOff SET evidence = replace(evidence, '212.8', '212.9') WHERE position = 1"),
  );
  expect(await words(clinic, "not met")).toEqual([
    "Signature 1: its evidence is not the one that its digest was made of.",
    "Signature 1 was not made with a key of this clinic over the evidence that stands there.",
  ]);
  await tamper(clinic, (connection) => {
    const evidence = String(connection.prepare("SELECT evidence FROM SignOff WHERE position = 1").pluck().get());
    connection.prepare("UPDATE SignOff SET digest = ? WHERE position = 1").run(sha256(evidence));
  });
  expect(await words(clinic, "not met")).toEqual([
    "Signature 1 was not made with a key of this clinic over the evidence that stands there.",
    "Signature 2 does not follow the one before it.",
  ]);
});

test("signatures that changed places, and one that was taken out", async () => {
  const { clinic } = await signedTwice();
  await tamper(clinic, (connection) => {
    const [one, two] = connection.prepare("SELECT signature FROM SignOff ORDER BY position").pluck().all();
    connection.prepare("UPDATE SignOff SET signature = CASE position WHEN 1 THEN ? ELSE ? END").run(two, one);
  });
  expect(await words(clinic, "not met")).toHaveLength(2);
  await tamper(clinic, (connection) => {
    connection.pragma("foreign_keys = OFF");
    connection.exec("DELETE FROM SignOff WHERE position = 1");
  });
  expect(await words(clinic, "not met")).toContain("Signature 1 is missing.");
});

import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { addWearer } from "@/lib/records/add-wearer";
import { changeWearer } from "@/lib/records/change-wearer";
import { database } from "@/lib/records/database";
import { exportRecord, jsonLine } from "@/lib/records/export-record";
import { openEpisode } from "@/lib/records/open-episode";
import { InputRefused, NotAllowed } from "@/lib/records/refusals";
import { seeRecord, seeRecordChoices } from "@/lib/records/see-record";
import { seeWearer } from "@/lib/records/see-wearers";
import { episodeOf, openTestClinic, type TestClinic } from "./clinic";

/** Two wearers; one is changed late on a day of the clinic's calendar that has begun nowhere in UTC yet. */
async function recorded() {
  const clinic = await openTestClinic();
  const one = await addWearer(clinic.assistant, { clinicNumber: "T-1", name: "Wearer One", birthOn: "1984-06-30" });
  const two = await addWearer(clinic.prosthetist, { clinicNumber: "T-2", name: "Wearer Two", birthOn: "1984-06-30" });
  const { episodeId } = await openEpisode(clinic.prosthetist, episodeOf(clinic, one.wearerId));
  // 9 October, 00:30 in Lisbon.
  clinic.setNow("2026-10-08T23:30:00Z");
  await changeWearer(clinic.colleague, {
    wearerId: one.wearerId,
    version: 1,
    clinicNumber: "T-1",
    name: "Wearer One",
    birthOn: "1984-06-30",
    bodyMassKg: "76",
  });
  return { clinic, one: one.wearerId, two: two.wearerId, episodeId };
}

const found = async (clinic: TestClinic, search: Record<string, unknown>) =>
  (await seeRecord(clinic.administrator, search)).entries.map(({ position }) => position);

test("by person, by record, by kind, by words of what was done or written", async () => {
  const { clinic, one, episodeId } = await recorded();
  expect(await found(clinic, {})).toEqual([4, 3, 2, 1]);
  expect(await found(clinic, { who: "Another" })).toEqual([4]);
  expect(await found(clinic, { who: clinic.prosthetist.id, record: "wearer" })).toEqual([2]);
  expect(await found(clinic, { record: episodeId })).toEqual([3]);
  expect(await found(clinic, { record: one.slice(0, 8) })).toEqual([4, 1]);
  expect(await found(clinic, { find: "opened" })).toEqual([3]);
  expect(await found(clinic, { find: "76" })).toContain(4);
});

test("by days of the clinic's calendar, both counted in", async () => {
  const { clinic } = await recorded();
  expect(await found(clinic, { from: "2026-10-09" })).toEqual([4]);
  expect(await found(clinic, { to: "2026-10-08" })).toEqual([3, 2, 1]);
  expect(await found(clinic, { from: "2026-10-08", to: "2026-10-09" })).toEqual([4, 3, 2, 1]);
  await expect(seeRecord(clinic.administrator, { from: "2026-10-09", to: "2026-10-08" })).rejects.toMatchObject({
    fields: { to: "The last day lies before the first." },
  });
  await expect(seeRecord(clinic.administrator, { from: "2026-02-30" })).rejects.toThrow(InputRefused);
});

test.each(["Wearer One", "T-1", "an id"])(
  "by wearer, as %s: with what is of an episode, and the search is a reading",
  async (as) => {
    const { clinic, one } = await recorded();
    const wearer = as === "an id" ? one : as;
    expect(await found(clinic, { wearer })).toEqual([4, 3, 1]);
    expect(await found(clinic, {})).toEqual([4, 3, 2, 1]);
    const { entries } = await seeRecord(clinic.administrator, { reads: "yes" });
    expect(entries[0]).toMatchObject({
      actorName: "An Administrator",
      action: "looked for a wearer in the record: 3 found",
      wearerId: one,
    });
  },
);

test("a search that finds a name in what was written is a reading; one that finds none there is not", async () => {
  const { clinic } = await recorded();
  await found(clinic, { find: "opened" });
  await found(clinic, { find: "Wearer Two" });
  const { entries } = await seeRecord(clinic.administrator, { reads: "yes", find: "looked for" });
  expect(entries.map(({ action }) => action)).toEqual(["looked for words in the record: 1 found"]);
});

test("a wearer whom nobody knows", async () => {
  const { clinic } = await recorded();
  expect(await seeRecord(clinic.administrator, { wearer: "nobody" })).toMatchObject({ count: 0, wearerIds: [] });
});

test("too many wearers at once are not looked for", async () => {
  const { clinic } = await recorded();
  const { addedById, addedAt } = await (await database()).wearer.findFirstOrThrow();
  const many = Array.from({ length: 51 }, (_, index) => `M-${index}`);
  await (await database()).wearer.createMany({
    data: many.map((id) => ({ id, clinicNumber: id, name: `Many ${id}`, addedById, addedAt })),
  });
  await expect(seeRecord(clinic.administrator, { wearer: "Many" })).rejects.toMatchObject({
    fields: { wearer: expect.stringContaining("More than 50") },
  });
  expect(await seeRecord(clinic.administrator, { wearer: "Many M-7" })).toMatchObject({ wearerIds: ["M-7"] });
});

test("readings are shown when they are asked for, page by page", async () => {
  const { clinic, two } = await recorded();
  for (let reading = 0; reading < 60; reading++) await seeWearer(clinic.assistant, two);
  expect(await found(clinic, { who: "An Assistant" })).toEqual([1]);
  const second = await seeRecord(clinic.administrator, { who: "An Assistant", reads: "yes", page: "2" });
  expect(second).toMatchObject({ count: 61, pages: 2 });
  expect(second.entries).toHaveLength(11);
});

test("prosthetists and administrators see the record; nobody else, and no wearer by a link", async () => {
  const { clinic } = await recorded();
  const wearer = { id: "link", name: "the wearer, by own link", role: "wearer", onlyTrial: "a trial" } as const;
  for (const read of [seeRecord, exportRecord] as const) {
    for (const actor of [clinic.assistant, clinic.technician, wearer]) await expect(read(actor, {})).rejects.toThrow(NotAllowed);
    for (const actor of [clinic.prosthetist, clinic.administrator]) await expect(read(actor, {})).resolves.toBeTruthy();
  }
  await expect(seeRecordChoices(clinic.technician, null)).rejects.toThrow(NotAllowed);
  expect(await seeRecordChoices(clinic.prosthetist, null)).toMatchObject({
    people: expect.arrayContaining(["A Prosthetist", "the wearer, by own link"]),
    kinds: expect.arrayContaining(["episode", "wearer"]),
  });
});

test("an export holds what was looked for, checks with SHA-256 alone, and is on the trail", async () => {
  const { clinic, one } = await recorded();
  const { pages, count } = await exportRecord(clinic.administrator, { wearer: "T-1" });
  const lines: string[] = [];
  for await (const page of pages) lines.push(...page.map(jsonLine));
  expect(count).toBe(3);
  expect(lines).toHaveLength(3);
  for (const line of lines) {
    // What `cut -b86-`, without the last brace, hands to any SHA-256 tool.
    const hashed = Buffer.from(line).subarray(85).toString().replace(/\}\n$/, "");
    const { digest, entry } = JSON.parse(line);
    expect(createHash("sha256").update(hashed).digest("hex")).toBe(digest);
    const stored = await (await database()).trailEntry.findUniqueOrThrow({ where: { position: entry.position } });
    expect(stored).toMatchObject({ digest, actorName: entry.actorName, after: entry.after });
  }
  const { entries } = await seeRecord(clinic.administrator, {});
  expect(entries[0]).toMatchObject({ action: "exported the record: 3 entries", recordKind: "record", wearerId: one });
});

import { randomUUID } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { beforeEach, describe, expect, test, vi } from "vitest";
import { POST as openRoute } from "@/app/own/open/route";
import { POST as eventsRoute } from "@/app/trials/[trial]/events/route";
import type { Actor } from "@/lib/access/actor";
import { actorOfRequest } from "@/lib/access/actor-of-request";
import { may, permissions } from "@/lib/access/roles";
import { digestOfSecret } from "@/lib/access/secrets";
import { countTry, forgetTries } from "@/lib/access/tries-by-address";
import { addAccount, changeAccount } from "@/lib/records/accounts";
import { changeClinicPhone } from "@/lib/records/clinic-phone";
import { database } from "@/lib/records/database";
import { makeWearerLink, withdrawWearerLink } from "@/lib/records/make-wearer-link";
import { LinkNotOpened, openWearerLink } from "@/lib/records/open-wearer-link";
import { planWearTrial } from "@/lib/records/plan-wear-trial";
import { receiveTrialEvents } from "@/lib/records/receive-trial-events";
import { lookAtSkin, recordWearTrial } from "@/lib/records/record-wear-trial";
import { InputRefused, Locked, NotAllowed, NotFound } from "@/lib/records/refusals";
import { seeWearerLink } from "@/lib/records/see-wearer-link";
import { sign } from "@/lib/records/sign";
import { calmTrial, evenMarks, minutesAfter, openTestClinic, password, readyEpisode, signingOf, today } from "./clinic";

/** The year in which the wearer of `readyEpisode` was born. */
const birthYear = "1984";
const from = "192.0.2.1";

beforeEach(forgetTries);

/** When each answer that was held back would have come, in milliseconds of `performance.now`. Nobody waits for it here. */
const heldUntil = vi.hoisted((): number[] => []);
vi.mock("node:timers/promises", async (original) => ({
  ...(await original<typeof import("node:timers/promises")>()),
  setTimeout: async (ms: number) => void heldUntil.push(performance.now() + ms),
}));

async function withTrial(until: "planned" | "worn" | "looked" = "planned") {
  const clinic = await openTestClinic();
  const ready = await readyEpisode(clinic, { until });
  const db = await database();
  const make = (days?: number) => makeWearerLink(clinic.prosthetist, { trialId: ready.trialId, days });
  const open = (token: string, year: unknown = birthYear, address = from) =>
    openWearerLink({ token, birthYear: year, from: address });
  return { clinic, db, make, open, ...ready };
}

const request = (pass: string) =>
  new Request("http://clinic.test/", { method: "POST", headers: { authorization: `Bearer ${pass}` } });

async function actorOf(pass: string): Promise<Actor> {
  const actor = await actorOfRequest(request(pass));
  if (!actor) throw new Error("this pass should be let in");
  return actor;
}

/** What a wearer's device is, once it was let in. */
async function withDevice() {
  const opened = await withTrial();
  const link = await opened.make();
  const { pass } = await opened.open(link.token);
  return { ...opened, link, pass, wearer: await actorOf(pass) };
}

const day = (number: number) => new Date(today.getTime() + number * 24 * 3600_000).toISOString();

describe("a wearer's own link", () => {
  test("is made, opened with the year of birth, and opens its trial and no other", async () => {
    const { db, clinic, trialId, socketId, link, pass, wearer } = await withDevice();
    expect(Buffer.from(link.token, "base64url")).toHaveLength(32);
    expect(link.expiresAt).toEqual(new Date(day(7)));
    expect(wearer).toMatchObject({ id: link.linkId, role: "wearer", onlyTrial: trialId, linkState: "open" });
    expect(await actorOfRequest(request(pass.slice(1)))).toBeNull();
    expect(await actorOfRequest(request(link.token))).toBeNull();

    const { received } = await receiveTrialEvents(wearer, {
      ...{ trialId, sentAt: today },
      events: [{ id: randomUUID(), kind: "begun", at: minutesAfter(day(0), -30) }],
    });
    expect(received).toMatchObject([{ became: "stored" }]);
    expect(await db.trialEvent.findFirstOrThrow({ where: { trialId } })).toMatchObject({
      ...{ recordedById: link.linkId, reportedBy: "wearer" },
    });

    const plan = { socketId, minutes: 20, intervalMin: 5, loadKg: 0.68, loadDistanceMm: 220, activities: "writing" };
    const other = await planWearTrial(clinic.assistant, plan);
    const events = calmTrial(minutesAfter(day(0), -60)).map((event) => ({ ...event, id: randomUUID() }));
    await expect(recordWearTrial(wearer, { trialId: other.trialId, events })).rejects.toThrow(NotAllowed);
    await expect(receiveTrialEvents(wearer, { trialId: other.trialId, sentAt: today, events })).rejects.toThrow(NotAllowed);
    const look = { at: today, minutesAfterDoffing: 1, marks: evenMarks("clear") };
    await expect(lookAtSkin(wearer, { trialId: other.trialId, ...look })).rejects.toThrow(NotAllowed);
    expect(await db.trialEvent.count({ where: { trialId: other.trialId } })).toBe(0);
  });

  test("lets the wearer look at the skin of its trial", async () => {
    const { db, trialId, wearer } = await withDevice();
    const begin = minutesAfter(day(0), -60);
    await recordWearTrial(wearer, { trialId, events: calmTrial(begin) });
    await lookAtSkin(wearer, { trialId, at: minutesAfter(begin, 22), minutesAfterDoffing: 1, marks: evenMarks("clear") });
    expect(await db.skinInspection.findFirstOrThrow()).toMatchObject({ trialId, byName: "the wearer, by own link" });
  });

  test("is made by a prosthetist, for 1 to 14 days, for a trial that is planned or running and under no signature", async () => {
    const { clinic, trialId, make } = await withTrial("looked");
    await expect(make()).rejects.toThrow(InputRefused);
    const { id: episodeId } = await (await database()).episode.findFirstOrThrow();
    await sign(clinic.prosthetist, await signingOf(episodeId, "wear trial accepted"));
    await expect(make()).rejects.toThrow(Locked);
    for (const who of [clinic.assistant, clinic.technician, clinic.administrator])
      await expect(makeWearerLink(who, { trialId })).rejects.toThrow(NotAllowed);
    await expect(makeWearerLink(clinic.prosthetist, { trialId: "no such trial" })).rejects.toThrow(NotFound);
  });

  test("days other than 1 to 14 are refused", async () => {
    const { make } = await withTrial();
    for (const days of [0, 15, 1.5, -1]) await expect(make(days)).rejects.toThrow(InputRefused);
    expect((await make(14)).expiresAt).toEqual(new Date(day(14)));
  });

  test("needs a year of birth on record, and an episode that was not struck out", async () => {
    const { db, wearerId, episodeId, make, open } = await withTrial();
    const { token } = await make();
    await db.episode.update({ where: { id: episodeId }, data: { struckOutAt: today } });
    await expect(open(token)).rejects.toThrow(LinkNotOpened);
    await expect(make()).rejects.toThrow(NotFound);
    await db.episode.update({ where: { id: episodeId }, data: { struckOutAt: null } });
    await db.wearer.update({ where: { id: wearerId }, data: { birthOn: null } });
    await expect(make()).rejects.toThrow(InputRefused);
    await expect(open(token, "null")).rejects.toThrow(LinkNotOpened);
    await expect(open(token, "")).rejects.toThrow(LinkNotOpened);
  });

  test("takes ten wrong years, whatever address they come from, and then opens no more", async () => {
    const { db, clinic, trialId, make, open } = await withTrial();
    const { token, linkId } = await make();
    for (let year = 1950; year < 1960; year += 1)
      await expect(open(token, String(year), `192.0.2.${year - 1900}`)).rejects.toThrow(LinkNotOpened);
    await expect(open(token, birthYear, "198.51.100.1")).rejects.toThrow(LinkNotOpened);
    expect(await db.wearerPass.count()).toBe(0);
    const tries = await db.trailEntry.findMany({ where: { recordId: linkId, action: { contains: "refused" } } });
    expect(tries).toHaveLength(10);
    expect(tries.at(-1)?.action).toMatch(/10 of 10: it opens no more/);
    expect(await seeWearerLink(clinic.assistant, trialId)).toMatchObject({ isGuessedAt: true, failures: 11, openings: [] });
  });

  test("a device that was let in stays so when others guess the year", async () => {
    const { link, pass, open } = await withDevice();
    for (let year = 1950; year < 1960; year += 1) await expect(open(link.token, year, `a${year}`)).rejects.toThrow(LinkNotOpened);
    expect(await actorOf(pass)).toMatchObject({ linkState: "open" });
  });

  test("one address has ten tries in a quarter of an hour, also for links that there are not", async () => {
    const { clinic, make, open } = await withTrial();
    const { token } = await make();
    const forged = digestOfSecret("forged").slice(0, 43);
    await Promise.all(Array.from({ length: 10 }, () => expect(open(forged)).rejects.toThrow(LinkNotOpened)));
    await expect(open(token)).rejects.toThrow(LinkNotOpened);
    expect(await open(token, birthYear, "198.51.100.1")).toHaveProperty("pass");
    clinic.setNow(minutesAfter(today.toISOString(), 16));
    expect(await open(token)).toHaveProperty("pass");
  });

  test("tries are remembered of so many addresses that they cannot fill the memory", () => {
    for (let time = 0; time < 10; time += 1) expect(countTry(from, today)).toBe(true);
    expect(countTry(from, today)).toBe(false);
    for (let other = 0; other < 4999; other += 1) countTry(`other ${other}`, today);
    expect(countTry(from, today)).toBe(false);
    for (let other = 0; other < 5000; other += 1) countTry(`another ${other}`, today);
    expect(countTry(from, today)).toBe(true);
  });

  test("what succeeds does not count against an address", async () => {
    const { make, open } = await withTrial();
    const { token } = await make();
    for (let time = 0; time < 11; time += 1) expect(await open(token)).toHaveProperty("pass");
  });

  test("ends by itself; a device that was let in may send for 7 more days", async () => {
    const { clinic, trialId, make, open } = await withTrial();
    const { token } = await make(2);
    const { pass } = await open(token);
    clinic.setNow(day(2));
    await expect(open(token)).rejects.toThrow(LinkNotOpened);
    expect(await seeWearerLink(clinic.assistant, trialId)).toMatchObject({ state: "expired" });
    const late = await actorOf(pass);
    expect(late.linkState).toBe("expired");
    const begun = { id: randomUUID(), kind: "begun", at: minutesAfter(day(1), 1) };
    const { received } = await receiveTrialEvents(late, { trialId, sentAt: day(2), events: [begun] });
    expect(received).toMatchObject([{ became: "stored" }]);
    clinic.setNow(minutesAfter(day(9), -1));
    expect(await actorOfRequest(request(pass))).not.toBeNull();
    clinic.setNow(day(9));
    expect(await actorOfRequest(request(pass))).toBeNull();
  });

  test("a new link ends the one before", async () => {
    const { clinic, trialId, make, open } = await withTrial();
    const first = await make();
    const second = await make();
    await expect(open(first.token)).rejects.toThrow(LinkNotOpened);
    expect(await open(second.token)).toMatchObject({ trialId });
    expect(await seeWearerLink(clinic.assistant, trialId)).toMatchObject({ id: second.linkId, state: "open" });
  });

  test("what is sent under a withdrawn link is set aside as it came; a stop sign is stored", async () => {
    const { db, clinic, trialId, link, pass } = await withDevice();
    await withdrawWearerLink(clinic.prosthetist, { linkId: link.linkId });
    const wearer = await actorOf(pass);
    expect(wearer.linkState).toBe("withdrawn");
    const events = [
      ...calmTrial(minutesAfter(day(0), -60)).map((event) => ({ ...event, id: randomUUID() })),
      { id: randomUUID(), kind: "stop-sign", sign: "numbness", at: minutesAfter(day(0), -45), reportedBy: "clinician" },
    ];
    const { received } = await receiveTrialEvents(wearer, { trialId, sentAt: today, events });
    expect(received.slice(0, -1).every(({ became, why }) => became === "set aside" && why === "The link was withdrawn.")).toBe(
      true,
    );
    expect(received.at(-1)).toMatchObject({ became: "stored" });
    expect(await db.trialEvent.findMany()).toMatchObject([{ kind: "stop-sign", reportedBy: "wearer" }]);
    expect(await db.setAsideEvent.count()).toBe(events.length - 1);
    expect((await db.setAsideEvent.findFirstOrThrow({ where: { id: events[1]?.id ?? "" } })).event).toMatchObject({ comfort: 8 });
    const look = { at: today, minutesAfterDoffing: 1, marks: evenMarks("clear") };
    await expect(lookAtSkin(wearer, { trialId, ...look })).rejects.toThrow("The link was withdrawn.");
    await expect(recordWearTrial(wearer, { trialId, events: calmTrial() })).rejects.toThrow(InputRefused);
  });

  test("withdrawing twice, by whoever may, leaves the first name and one entry", async () => {
    const { db, clinic, link } = await withDevice();
    await expect(withdrawWearerLink(clinic.assistant, { linkId: link.linkId })).rejects.toThrow(NotAllowed);
    await withdrawWearerLink(clinic.prosthetist, { linkId: link.linkId });
    await withdrawWearerLink(clinic.colleague, { linkId: link.linkId });
    expect(await db.wearerLink.findFirstOrThrow()).toMatchObject({ withdrawnByName: clinic.prosthetist.name });
    expect(await db.trailEntry.count({ where: { action: "withdrew a wearer's own link" } })).toBe(1);
  });

  test("by the link a carer may speak, and nobody as a clinician", async () => {
    const { db, trialId, wearer } = await withDevice();
    const checkIn = (reportedBy?: string) => ({
      ...{ id: randomUUID(), kind: "check-in", at: minutesAfter(day(0), -10), comfort: 8, pain: 0, exertion: 3 },
      ...(reportedBy ? { reportedBy } : {}),
    });
    const { received } = await receiveTrialEvents(wearer, {
      ...{ trialId, sentAt: today },
      events: [checkIn(), checkIn("carer"), checkIn("clinician"), checkIn("a passer-by")],
    });
    expect(received.map(({ became }) => became)).toEqual(["stored", "stored", "set aside", "set aside"]);
    expect(received[2]?.why).toMatch(/nobody speaks as a clinician/);
    expect((await db.trialEvent.findMany()).map(({ reportedBy }) => reportedBy).sort()).toEqual(["carer", "wearer"]);
  });

  test("the store and the trail hold digests, and nothing of the token, the pass or the year", async () => {
    const { db, clinic, link, pass, open } = await withDevice();
    await expect(open(link.token, "1951")).rejects.toThrow(LinkNotOpened);
    expect(await db.wearerLink.findFirstOrThrow()).toMatchObject({ tokenDigest: digestOfSecret(link.token) });
    expect(await db.wearerPass.findFirstOrThrow()).toMatchObject({ secretDigest: digestOfSecret(pass) });
    const entries = await db.trailEntry.findMany({ where: { recordKind: "wearer's own link" } });
    expect(entries.map(({ action, actorName, actorRole }) => [action, actorName, actorRole])).toEqual([
      ["made a wearer's own link", clinic.prosthetist.name, "prosthetist"],
      ["opened a wearer's own link", "the wearer, by own link", "wearer"],
      ["a try to open a wearer's own link was refused, 1 of 10", "the wearer, by own link", "wearer"],
    ]);
    const told = JSON.stringify(entries);
    for (const secret of [link.token, digestOfSecret(link.token), pass, digestOfSecret(pass), birthYear, "1951"])
      expect(told).not.toContain(secret);
    await db.$executeRawUnsafe("PRAGMA wal_checkpoint(TRUNCATE)");
    const file = readFileSync(clinic.file);
    expect(file.includes(digestOfSecret(link.token))).toBe(true);
    for (const secret of [link.token, pass]) expect(file.includes(secret)).toBe(false);
  });

  test("making, opening and refusing leave the evidence of the episode as it is", async () => {
    const { db, episodeId, make, open } = await withTrial();
    const before = await db.episode.findUniqueOrThrow({ where: { id: episodeId } });
    const { token } = await make();
    await open(token);
    await expect(open(token, "1951")).rejects.toThrow(LinkNotOpened);
    expect((await db.episode.findUniqueOrThrow({ where: { id: episodeId } })).evidenceVersion).toBe(before.evidenceVersion);
  });
});

describe("over the network", () => {
  const post = (body: string, address = from) =>
    openRoute(new Request("http://clinic.test/own/open", { method: "POST", body, headers: { "x-forwarded-for": address } }));
  const trying = (token: unknown, year: unknown = birthYear) => JSON.stringify({ token, birthYear: year });

  test("there is one answer to everything that fails, and none comes sooner than the others", async () => {
    const { clinic, make } = await withTrial();
    const withdrawn = await make();
    await withdrawWearerLink(clinic.prosthetist, { linkId: withdrawn.linkId });
    const { token } = await make();
    const bodies = [
      trying(token, "1951"),
      trying(token, "84"),
      trying(token, null),
      trying(withdrawn.token),
      trying(digestOfSecret("forged").slice(0, 43)),
      trying("short"),
      trying(17),
      "[]",
      "no JSON",
      JSON.stringify({ token, birthYear, more: "x".repeat(2000) }),
      trying(token), // right, and one too many from this address
    ];
    const answers = [];
    for (const body of bodies) {
      heldUntil.length = 0;
      const since = performance.now();
      const answer = await post(body);
      answers.push({
        status: answer.status,
        said: await answer.text(),
        headers: [...answer.headers].sort(),
        heldFor: heldUntil.map((until) => (until - since >= 250 ? "long enough" : `${until - since} ms`)),
      });
    }
    expect(new Set(answers.map((answer) => JSON.stringify(answer))).size).toBe(1);
    expect(answers[0]).toMatchObject({
      status: 404,
      said: JSON.stringify({
        error: "This link cannot be opened. Check the year of birth, or ask your clinic for a new link.",
      }),
      heldFor: ["long enough"],
    });
    expect(answers[0]?.headers).toContainEqual(["cache-control", "no-store"]);
  });

  test("the right year brings a pass, with which events are sent", async () => {
    const { clinic, trialId, make } = await withTrial();
    const { token } = await make();
    const answer = await post(trying(token, 1984));
    expect(answer.status).toBe(200);
    expect(answer.headers.get("cache-control")).toBe("no-store");
    const { pass, ...rest } = await answer.json();
    expect(rest).toEqual({ trialId });
    const send = (trial: string, bearer: string) =>
      eventsRoute(
        new Request("http://clinic.test/", {
          method: "POST",
          headers: { authorization: `Bearer ${bearer}` },
          body: JSON.stringify({ sentAt: today, events: [{ id: randomUUID(), kind: "begun", at: minutesAfter(day(0), -5) }] }),
        }),
        { params: Promise.resolve({ trial }) },
      );
    expect((await send(trialId, pass)).status).toBe(200);
    expect((await send("another-trial", pass)).status).toBe(403);
    expect((await send(trialId, "forged")).status).toBe(401);
    expect((await send(trialId, "")).status).toBe(401);
    clinic.setNow(day(14));
    const over = await send(trialId, pass);
    expect(over.status).toBe(401);
    expect((await over.json()).error).toMatch(/stays on the device/);
  });
});

describe("the role of a wearer", () => {
  test("may record a wear trial and look at the skin, of one trial, and nothing else", () => {
    const wearer = { role: "wearer", onlyTrial: "a trial" } as const;
    const theirs = permissions.flatMap(([permission]) => (may(wearer, permission) ? [permission] : []));
    expect(theirs).toEqual(["record a wear trial", "look at the skin"]);
    expect(permissions.filter(([permission]) => may({ role: "wearer" }, permission))).toEqual([]);
  });

  test("no account can have it", async () => {
    const { administrator, assistant } = await openTestClinic();
    const account = { name: "A Wearer", email: "wearer@example.test", role: "wearer", password };
    await expect(addAccount(administrator, account)).rejects.toThrow(InputRefused);
    const change = { userId: assistant.id, version: 1, name: assistant.name, role: "wearer", active: true };
    await expect(changeAccount(administrator, change)).rejects.toThrow(InputRefused);
  });

  test("every command and query refuses it, except those of its own trial", async () => {
    const { wearer, trialId } = await withDevice();
    const all = await everyWayIn();
    expect(all.length).toBeGreaterThan(45);
    const open = new Set<string>();
    for (const { name, call } of all) {
      const refused = await call({ ...wearer, onlyTrial: undefined }, { trialId }).catch((error: unknown) => error);
      expect(refused, `${name} without a trial`).toBeInstanceOf(NotAllowed);
      // Commands are given an input, queries what they ask for.
      for (const asked of [{ trialId }, trialId]) {
        const answer = await call(wearer, asked).catch((error: unknown) => error);
        if (!(answer instanceof NotAllowed)) open.add(name);
      }
    }
    expect([...open].sort()).toEqual([
      "episodeOfLiveTrial",
      "lookAtSkin",
      "receiveTrialEvents",
      "receiveTrialLook",
      "recordWearTrial",
      "seeLiveTrial",
    ]);
  });
});

type WayIn = (actor: Actor, asked: unknown) => Promise<unknown>;

/** Whatever lib/records exports that takes an actor: found in the source, so that a new one cannot be forgotten. */
async function everyWayIn(): Promise<{ name: string; call: WayIn }[]> {
  const folder = path.resolve(import.meta.dirname, "../../lib/records");
  const found = readdirSync(folder).map(async (file) => {
    const source = readFileSync(path.join(folder, file), "utf8");
    const names = [
      ...source.matchAll(/export const (\w+) = (?:command|quickCommand|query)\(|export async function (\w+)\(actor: Actor[,)]/g),
    ];
    if (names.length === 0) return [];
    const exported: Record<string, WayIn> = await import(`../../lib/records/${file.replace(/\.ts$/, "")}.ts`);
    return names.map(([, made, written]) => {
      const name = made ?? written ?? "";
      const call = exported[name];
      if (!call) throw new Error(`${file} exports no ${name}`);
      return { name, call: async (actor: Actor, asked: unknown) => call(actor, asked) };
    });
  });
  return (await Promise.all(found)).flat();
}

test("an administrator changes the clinic's telephone number", async () => {
  const { administrator, prosthetist } = await openTestClinic();
  const db = await database();
  await changeClinicPhone(administrator, { phone: "+00 555 0199" });
  expect(await db.clinic.findFirstOrThrow()).toMatchObject({ phone: "+00 555 0199" });
  await expect(changeClinicPhone(administrator, { phone: "ask at the desk" })).rejects.toThrow(InputRefused);
  await expect(changeClinicPhone(prosthetist, { phone: "+00 555 0100" })).rejects.toThrow(NotAllowed);
  await changeClinicPhone(administrator, { phone: "" });
  expect(await db.clinic.findFirstOrThrow()).toMatchObject({ phone: null });
});

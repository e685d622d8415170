/** The store holds what the stories say on paper, on other days and on machines in other time zones. */
import { afterEach, expect, test } from "vitest";
import { database } from "@/lib/records/database";
import { outcomesInStore } from "@/prisma/invented-clinic";
import { noonOf } from "@/prisma/invented-clinic/calendar";
import { boatBuilder } from "@/prisma/invented-clinic/stories/boat-builder";
import { roofer } from "@/prisma/invented-clinic/stories/transtibial-signed";
import { outcomesOnPaper } from "../stories/tellings";
import { expectAsOnPaper, loadInventedForTest } from "./invented-store";

const zone = process.env.TZ;
afterEach(() => {
  if (zone === undefined) delete process.env.TZ;
  else process.env.TZ = zone;
});

// The third day on which the store is loaded is that of invented-clinic.test.ts.
test.each([
  ["2028-02-29", "Pacific/Auckland", -780],
  ["2028-03-26", "America/Chicago", 300],
])("loaded on %s, on a machine in %s", { timeout: 240_000 }, async (day, timeZone, offsetMinutes) => {
  process.env.TZ = timeZone;
  const today = noonOf(day);
  expect(today.getTimezoneOffset()).toBe(offsetMinutes);
  await loadInventedForTest({ today });
  await expectAsOnPaper(today);
  expect(await outcomesInStore()).toEqual(outcomesOnPaper(noonOf("2026-10-08")));
});

test("loaded again on the same day, it is the same to the last digest", async () => {
  const load = async () => {
    const { remove } = await loadInventedForTest({ today: noonOf("2027-01-02"), told: [boatBuilder, roofer] });
    const db = await database();
    const trail = await db.trailEntry.findMany({ orderBy: { position: "asc" }, select: { digest: true } });
    const episodes = await db.episode.findMany({ orderBy: { id: "asc" } });
    await remove();
    return { trail, episodes };
  };
  const first = await load();
  expect(first.trail.length).toBeGreaterThan(40);
  expect(await load()).toEqual(first);
});

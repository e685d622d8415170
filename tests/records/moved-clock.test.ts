/** The program's time may be moved for the invented clinic, and for no other. */
import { afterEach, beforeEach, expect, inject, onTestFinished, test, vi } from "vitest";
import { makeDatabase } from "./fresh-database";

const hour = 3_600_000;
const variable = "FITTING_LEDGER_CLOCK_OFFSET_MS";

beforeEach(() => {
  vi.resetModules();
  process.env[variable] = String(hour);
});
afterEach(() => {
  delete process.env[variable];
});

/** The program as a server that begins with that variable has it, on a copy of a database. */
async function serverOn(template: string) {
  const made = makeDatabase(template);
  process.env.DATABASE_URL = made.databaseUrl;
  const { closeDatabase, database } = await import("@/lib/records/database");
  onTestFinished(async () => {
    await closeDatabase().catch(() => undefined);
    made.remove();
  });
  return database;
}

const opening = {
  clinicName: "Lock Street Clinic",
  timeZone: "Europe/Lisbon",
  phone: "+00 555 0123",
  name: "Ada Brook",
  email: "ada@lock.example",
  password: "a long enough password",
};

test("a store that is not invented does not open under a moved clock", async () => {
  const database = await serverOn(inject("openedClinic"));
  await expect(database()).rejects.toThrow("FITTING_LEDGER_CLOCK_OFFSET_MS moves the clock, and this store is not invented");
});

test("nor does anybody open a clinic of their own under it; an invented one is opened, at the moved time", async () => {
  const database = await serverOn(inject("migratedTemplate"));
  const { openClinic } = await import("@/lib/records/accounts");
  await expect(openClinic(opening)).rejects.toThrow("only an invented clinic may");
  const before = Date.now() + hour;
  await openClinic({ ...opening, invented: "yes" });
  const { openedAt } = await (await database()).clinic.findFirstOrThrow();
  expect(openedAt.getTime()).toBeGreaterThanOrEqual(before);
  expect(openedAt.getTime()).toBeLessThanOrEqual(Date.now() + hour);
});

test("an offset that is no number is refused", async () => {
  process.env[variable] = "tomorrow";
  await expect(import("@/lib/records/clock")).rejects.toThrow("a number of milliseconds");
});

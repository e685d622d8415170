import Database from "better-sqlite3";
import { describe, expect, test } from "vitest";
import { clientAndConnection, database } from "@/lib/records/database";
import { locks } from "@/lib/records/lock-findings";
import { releaseMeaning, trialMeaning } from "@/lib/records/meanings";
import { sign } from "@/lib/records/sign";
import { specifySocket } from "@/lib/records/specify-socket";
import { withdrawSignature } from "@/lib/records/withdraw-signature";
import { openTestClinic, password, readyEpisode, signingOf, stations } from "./clinic";

test("the locks of a store are just those that its record is checked for", async () => {
  await openTestClinic();
  const { connection } = await clientAndConnection();
  const made = connection.prepare("SELECT name FROM sqlite_master WHERE type = 'trigger'").pluck().all();
  expect(made.sort()).toEqual([...locks].sort());
});

/** Plain SQL on the program's own connection, past every command. */
async function run(sql: string): Promise<number> {
  const { connection } = await clientAndConnection();
  return connection.prepare(sql).run().changes;
}

async function signedFor(meaning: string) {
  const clinic = await openTestClinic();
  const episode = await readyEpisode(clinic);
  const { signOffId } = await sign(clinic.prosthetist, await signingOf(episode.episodeId, meaning));
  return { clinic, ...episode, signOffId };
}

const onlyAdded = {
  TrailEntry: "actorName = 'nobody'",
  SignOff: "evidence = '{}'",
  LimbMeasurement: "stations = '[]'",
  Fitting: "comfort = 10",
  TrialEvent: "comfort = 10",
  SkinInspection: "minutesAfterDoffing = 0",
  SkinMark: "strength = 'faint'",
  SocketStateChange: "byName = 'nobody'",
  CautionAcknowledgement: "byName = 'nobody'",
};

describe("plain SQL changes nothing that is only ever added", () => {
  test.each(Object.entries(onlyAdded))("%s", async (table, change) => {
    await signedFor(releaseMeaning);
    await expect(run(`UPDATE "${table}" SET ${change}`)).rejects.toThrow(/^locked: /);
    await expect(run(`DELETE FROM "${table}"`)).rejects.toThrow(/^locked: /);
    const { connection } = await clientAndConnection();
    expect(connection.prepare(`SELECT COUNT(*) AS n FROM "${table}"`).get()).not.toMatchObject({ n: 0 });
  });

  test("a withdrawal, and a replacing insert in place of an update", async () => {
    const { clinic, signOffId } = await signedFor(releaseMeaning);
    await withdrawSignature(clinic.prosthetist, { signOffId, why: "wrong model", password });
    await expect(run("UPDATE Withdrawal SET why = 'none'")).rejects.toThrow(/^locked: /);
    await expect(run("DELETE FROM Withdrawal")).rejects.toThrow(/^locked: /);
    await expect(run("INSERT OR REPLACE INTO Withdrawal SELECT * FROM Withdrawal")).rejects.toThrow(/^locked: /);
    await expect(run("INSERT OR REPLACE INTO SignOff SELECT * FROM SignOff")).rejects.toThrow(/^locked: /);
    await expect(run("REPLACE INTO LimbMeasurement SELECT * FROM LimbMeasurement")).rejects.toThrow(/^locked: /);
  });
});

test("nor does another program that opens the file, for what is signed and for the trail", async () => {
  const { clinic } = await signedFor(releaseMeaning);
  const other = new Database(clinic.file);
  for (const table of ["SignOff", "TrailEntry", "GateAcceptance"]) {
    const whole = other.prepare(`SELECT COUNT(*) FROM "${table}"`).pluck();
    const before = whole.get();
    for (const sql of [
      `DELETE FROM "${table}"`,
      `UPDATE "${table}" SET byName = 'x'`,
      `REPLACE INTO "${table}" SELECT * FROM "${table}"`,
    ])
      if (before !== 0)
        expect(() => other.prepare(sql.replace("byName", table === "TrailEntry" ? "action" : "byName")).run()).toThrow(
          /^locked: /,
        );
    expect(whole.get()).toBe(before);
  }
  other.close();
});

describe("under a signature plain SQL does not change what it covers", () => {
  const covered = {
    CheckSocket: "stations = '[]'",
    Adjustment: "amount = 0",
    WearTrial: "minutes = 1",
  };

  test.each(Object.entries(covered))("%s", async (table, change) => {
    await signedFor(trialMeaning);
    await expect(run(`UPDATE "${table}" SET ${change}`)).rejects.toThrow("locked: a signature covers this");
    await expect(run(`DELETE FROM "${table}"`)).rejects.toThrow(/^locked: /);
  });

  test("the episode itself, once released", async () => {
    const { episodeId } = await signedFor(releaseMeaning);
    await expect(run("UPDATE Episode SET limbLengthMm = 1")).rejects.toThrow("locked: a signature covers this");
    // What follows from the records, and what happens to the episode afterwards, goes on.
    expect(await run(`UPDATE Episode SET goals = 'to row' WHERE id = '${episodeId}'`)).toBe(1);
  });

  const added = {
    LimbMeasurement: "id",
    CheckSocket: "id, number",
    Fitting: "id",
    WearTrial: "id",
    TrialEvent: "id",
    SkinInspection: "id",
  };

  test.each(Object.entries(added))("nothing is added to a released episode: %s", async (table, differing) => {
    await signedFor(releaseMeaning);
    const { connection } = await clientAndConnection();
    const columns = (connection.prepare(`PRAGMA table_info("${table}")`).all() as { name: string }[]).map(({ name }) => name); // as SQLite gives it
    const copied = columns.map((name) => (differing.split(", ").includes(name) ? (name === "id" ? "'new'" : "99") : `"${name}"`));
    const insert = `INSERT INTO "${table}" SELECT ${copied.join(", ")} FROM "${table}" LIMIT 1`;
    await expect(run(insert)).rejects.toThrow("locked: this episode is released");
  });

  test("a withdrawal opens it again, and the next socket is specified as before", async () => {
    const { clinic, episodeId, socketId, signOffId } = await signedFor(releaseMeaning);
    await withdrawSignature(clinic.prosthetist, { signOffId, why: "wrong model", password });
    expect(await run("UPDATE CheckSocket SET trimLines = 'lower'")).toBe(2);
    await specifySocket(clinic.prosthetist, {
      episodeId,
      derivedFromId: socketId,
      stations: stations([170, 182, 197, 212, 231]),
      adjustments: [{ kind: "other", reason: "a new model" }],
    });
    expect(await (await database()).checkSocket.count()).toBe(3);
  });
});

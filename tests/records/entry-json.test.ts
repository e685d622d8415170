import { mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import Connection from "better-sqlite3";
import canonicalize from "canonicalize";
import fc from "fast-check";
import { expect, onTestFinished, test } from "vitest";
import { keepAnchor, readAnchors } from "@/lib/trail/anchors";
import { headsBeside } from "@/lib/trail/beside-database";
import { beginning, type ChainedEntry, entryJson } from "@/lib/trail/chain";
import { entryJsonSql, hashedTime } from "@/lib/trail/stored-entry";

// The pieces that JSON writes in a way of its own, beside whatever else can stand in well-formed text.
const text = fc.oneof(
  fc.string({ unit: "grapheme" }),
  fc.string({ unit: "binary" }),
  fc
    .array(
      fc.constantFrom('"', "\\", "/", "\b", "\f", "\n", "\r", "\t", "\u0001", "\u001f", "\u007f", "\u2028", "’", "é", "😀", "'"),
    )
    .map((pieces) => pieces.join("")),
);
const maybe = fc.option(text);
const at = "2026-10-05T10:00:00.000Z";
const entries: fc.Arbitrary<ChainedEntry> = fc.record({
  position: fc.integer({ min: 1, max: 2 ** 31 }),
  at: fc.constant(at),
  actorId: text,
  actorName: text,
  actorRole: text,
  action: text,
  recordKind: text,
  recordId: text,
  wearerId: maybe,
  episodeId: maybe,
  before: maybe,
  after: maybe,
  previousDigest: fc.constant(beginning),
});

test("what is hashed of an entry is its canonical JSON, whatever stands in it", () => {
  fc.assert(
    fc.property(entries, (entry) => {
      expect(entryJson(entry)).toBe(canonicalize(entry));
    }),
  );
});

test("the store's own way to the same text gives the same text", () => {
  const connection = new Connection(":memory:");
  onTestFinished(() => void connection.close());
  connection.exec(`CREATE TABLE TrailEntry (position INTEGER PRIMARY KEY, at, actorId TEXT, actorName TEXT, actorRole TEXT, action TEXT,
    recordKind TEXT, recordId TEXT, wearerId TEXT, episodeId TEXT, before TEXT, after TEXT, previousDigest TEXT)`);
  const insert = connection.prepare(`INSERT INTO TrailEntry VALUES (@position, @at, @actorId, @actorName, @actorRole, @action,
    @recordKind, @recordId, @wearerId, @episodeId, @before, @after, @previousDigest)`);
  const read = connection.prepare(`SELECT ${entryJsonSql} FROM TrailEntry`).pluck();
  // A text with a NUL in it ends there for SQLite's own functions; such an entry goes the slow way.
  const withoutNul = entries.filter((entry) => !Object.values(entry).some((value) => String(value).includes("\0")));
  fc.assert(
    fc.property(withoutNul, (entry) => {
      connection.exec("DELETE FROM TrailEntry");
      insert.run({ ...entry, at: at.replace("Z", "+00:00") });
      expect(read.get()).toBe(entryJson(entry));
    }),
  );
});

test("a time in any other form than the store's is none", () => {
  expect(hashedTime("2026-10-05T10:00:00.000+00:00")).toBe(at);
  for (const other of [
    at,
    "2026-10-05T10:00:00+00:00",
    "2026-10-05 10:00:00.000+00:00",
    "2026-10-05T11:00:00.000+01:00",
    "1759658400000",
    "",
  ])
    expect(hashedTime(other)).toBeNull();
});

test("ends that are kept apart are only ever added, for this user alone; a line cut short loses only itself", () => {
  const folder = mkdtempSync(path.join(tmpdir(), "fitting-ledger-test-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const file = path.join(folder, "clinic.db");
  expect(readAnchors(file)).toMatchObject({ found: false, anchors: [] });
  const first = { position: 3, digest: "a".repeat(64), at };
  keepAnchor(file, first);
  expect(statSync(headsBeside(file)).mode & 0o777).toBe(0o600);
  writeFileSync(headsBeside(file), '{"at":"2026-10-0', { flag: "a" });
  const second = { position: 7, digest: "b".repeat(64), at };
  keepAnchor(file, second);
  expect(readAnchors(file)).toMatchObject({ found: true, anchors: [first, second], unreadable: [2] });
});

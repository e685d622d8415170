import { expect, test } from "vitest";
import { changedFields } from "@/app/record/changed-fields";

const zone = "Europe/Lisbon";
const json = JSON.stringify;

test("only what differs is told, in words, times on the clinic's clock", () => {
  const before = json({ bodyMassKg: 74, name: "One", since: "2026-10-05T13:12:00.000Z", occupation: null });
  const after = json({ bodyMassKg: 76, name: "One", since: "2026-10-06T13:12:00.000Z", occupation: "gardener" });
  expect(changedFields({ before, after }, zone)).toEqual([
    { field: "body mass kg", before: "74", after: "76" },
    { field: "since", before: "5\u00a0Oct 2026, 14:12", after: "6\u00a0Oct 2026, 14:12" },
    { field: "occupation", before: "nothing", after: "gardener" },
  ]);
});

test("of rows, the row and its field; what was not noted on one side is not taken for nothing", () => {
  const before = json({ stations: [{ distanceMm: 0, circumferenceMm: 176 }], marks: [] });
  const after = json({
    stations: [
      { distanceMm: 0, circumferenceMm: 175 },
      { distanceMm: 40, circumferenceMm: 188 },
    ],
    marks: [],
    worn: true,
  });
  expect(changedFields({ before, after }, zone)).toEqual([
    { field: "stations, 1, circumference mm", before: "176", after: "175" },
    { field: "stations, 2, distance mm", before: undefined, after: "40" },
    { field: "stations, 2, circumference mm", before: undefined, after: "188" },
    { field: "worn", before: undefined, after: "yes" },
  ]);
});

test("an entry that made something has no before", () => {
  expect(changedFields({ before: null, after: json({ why: "moved away" }) }, zone)).toEqual([
    { field: "why", before: undefined, after: "moved away" },
  ]);
  expect(changedFields({ before: null, after: json("plain") }, zone)).toEqual([
    { field: "value", before: undefined, after: "plain" },
  ]);
});

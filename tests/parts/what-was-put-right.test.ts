import { expect, test } from "vitest";
import { numbersOfMarks } from "@/app/_parts/mark-numbers";
import { type FittingVersion, whatWasPutRight } from "@/app/fittings/[fitting]/what-was-put-right";
import type { SkinMark } from "@/lib/fit";
import { mark as plainMark } from "../fit/marks";

const mark = (id: string, found: Partial<SkinMark> = {}): SkinMark => plainMark({ id, angleDeg: 90, ...found });

const look = (minutesAfterDoffing: number, ...marks: SkinMark[]) => ({
  id: "look",
  at: "2026-10-05T09:30:00Z",
  minutesAfterDoffing,
  marks,
});

const version: FittingVersion = {
  at: new Date("2026-10-05T09:30:00Z"),
  place: "clinic",
  whoWasThere: null,
  measuredBy: null,
  reported: [],
  checks: { seating: "met" },
  pulls: [{ loadN: 22.2411080763025, displacementMm: 4 }],
  motion: [{ joint: "elbow-flexion", withoutDeg: 138, withDeg: 131 }],
  comfort: 8,
  pain: null,
  words: null,
  note: null,
  firstLook: look(2, mark("a"), mark("b", { strength: "deep", blanches: "no" }), mark("c")),
};

const around = {
  level: "transtibial",
  timeZone: "America/New_York",
  numbers: numbersOfMarks([{ recordedAt: new Date(0), marks: ["a", "b", "c", "d"].map((markId) => ({ markId })) }]),
} as const;

const changes = (change: Partial<FittingVersion>) => whatWasPutRight(version, { ...version, ...change }, around);

test("nothing is told where nothing is different", () => expect(changes({})).toEqual([]));

test("an answer that was left out counts as not done, and is told by its question", () => {
  expect(changes({ checks: { seating: "concern", rotation: "met" } })).toEqual([
    "The limb is seated fully: met → concern",
    "The socket does not turn on the limb: not done → met",
  ]);
  expect(changes({ checks: {} })).toEqual(["The limb is seated fully: met → not done"]);
});

test("figures, ratings and words", () => {
  expect(
    changes({
      at: new Date("2026-10-05T09:45:00Z"),
      place: "home",
      measuredBy: "her daughter",
      reported: ["skin"],
      pulls: [{ loadN: 22.2411080763025, displacementMm: 4.4 }],
      motion: [],
      comfort: 7.5,
      pain: 0,
      note: "Rang later",
    }),
  ).toEqual([
    expect.stringMatching(/^When: .*5:30.* → .*5:45/),
    "Where: in the clinic → at home",
    "Who measured: nothing → her daughter",
    "Told, not seen: none → skin",
    "Pulls: 4 mm at 22.24 N → 4.4 mm at 22.24 N",
    "Motion, elbow flexion: 131° with, 138° without → nothing",
    "Comfort: 8 → 7.5",
    "Pain: not asked → 0",
    "Note: nothing → Rang later",
  ]);
});

test("a forbidding mark that was taken out is named with its number and what was found", () => {
  expect(changes({ firstLook: look(2, mark("d"), mark("a", { angleDeg: 100 }), mark("c")) })).toEqual([
    "Mark 1: 85\u00a0mm from the end, 90° → 85\u00a0mm from the end, 100°",
    "Mark 2 taken out: deep, does not blanch; 85\u00a0mm from the end, 90°; 18 × 14\u00a0mm; not seen to fade",
    "Mark 4 added: clear, blanches; 85\u00a0mm from the end, 90°; 18 × 14\u00a0mm; not seen to fade",
  ]);
  expect(changes({ firstLook: undefined })[0]).toBe("Skin: looked at 2 minutes after doffing → not looked at");
  expect(changes({ firstLook: look(3, ...(version.firstLook?.marks ?? [])) })).toEqual([
    "Skin: looked at 2 minutes after doffing → looked at 3 minutes after doffing",
  ]);
});

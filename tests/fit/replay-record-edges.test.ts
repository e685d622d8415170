/** What was felt in a wear trial, its minutes, its plan and its record, reading by reading, at the edges. */
import { describe, expect, it } from "vitest";
import type { TrialEvent, TrialPlan } from "@/lib/fit/bundle";
import { defaultLimits, limitsWith } from "@/lib/fit/limits";
import { replayWearTrial } from "@/lib/fit/replay-wear-trial";
import { trialLimits, trialLimitsOf, verdictOf, verdicts } from "@/lib/fit/replay-wear-trial-verdict";
import { begun, checkIn, corrected, goodTrial, goodTrialBut, minute, paused, plan } from "./trial-events";

const replay = (events: readonly TrialEvent[], changed: Partial<TrialPlan> = {}, asOf?: string) =>
  replayWearTrial({ ...plan, ...changed }, events, asOf);
const reading = (about: string, events: readonly TrialEvent[], changed: Partial<TrialPlan> = {}, asOf?: string) =>
  replay(events, changed, asOf).reasons.find((reason) => reason.about === about);
// 20 minutes, a check-in every 5, gaps up to 1.5 intervals: common practice, no source.
describe("minutes, gaps and the plan", () => {
  it("ask for the longer of the plan and 20 minutes", () => {
    const asked = { unit: "min", source: "trial-length" };
    expect(reading("worn", goodTrial)).toMatchObject({
      ...asked,
      value: 20.5,
      limit: 20,
      limitText: expect.stringContaining("20 min"),
      why: expect.stringMatching(/20\.5 of 20 min planned; 20 min is the least/),
    });
    expect(reading("worn", goodTrial, { minutes: 20.5 })).toMatchObject({ limit: 20.5, state: "met" });
    expect(reading("worn", goodTrial, { minutes: 21 })).toMatchObject({
      ...asked,
      limit: 21,
      state: "not met",
      allows: "incomplete",
    });
    expect(reading("worn", goodTrial, { minutes: 10 })).toMatchObject({ limit: 20, state: "met" });
  });

  it("are unknown before the end, and say whether it was planned, ran or paused", () => {
    expect(reading("worn", [])).toMatchObject({
      state: "unknown",
      allows: "incomplete",
      limit: 20,
      why: expect.stringMatching(/not begun/),
    });
    expect(reading("worn", [begun()], {}, minute(30))).toMatchObject({
      state: "unknown",
      value: 30,
      why: expect.stringMatching(/is running\. Worn 30 of 20/),
    });
    expect(reading("worn", [begun(), paused(25)])).toMatchObject({
      state: "unknown",
      allows: "incomplete",
      why: expect.stringMatching(/is paused\./),
    });
    expect(reading("gaps", [])).toMatchObject({
      state: "unknown",
      allows: "incomplete",
      unit: "min",
      limit: 7.5,
      why: expect.stringMatching(/not begun/),
    });
  });

  it("let a gap pass up to one and a half intervals", () => {
    expect(reading("gaps", goodTrial)).toMatchObject({
      value: 5,
      unit: "min",
      limit: 7.5,
      limitText: expect.stringContaining("7.5 min"),
      state: "met",
      allows: "passed",
      source: "trial-check-ins",
      why: expect.stringContaining(" 5 min"),
    });
    expect(reading("gaps", goodTrial, { intervalMin: 3 })).toMatchObject({
      limit: 4.5,
      state: "not met",
      allows: "passed with findings",
      value: 5,
    });
  });

  it("find a plan that asks more seldom than every 5 minutes", () => {
    const asked = { unit: "min", limit: 5, limitText: expect.stringContaining("5 min"), source: "trial-check-ins" };
    expect(reading("interval", goodTrial)).toMatchObject({
      ...asked,
      value: 5,
      state: "met",
      allows: "passed",
      why: expect.stringContaining("every 5 min"),
    });
    expect(reading("interval", goodTrial, { intervalMin: 5.5 })).toMatchObject({
      ...asked,
      value: 5.5,
      state: "not met",
      allows: "passed with findings",
      why: expect.stringContaining("every 5.5 min"),
    });
  });
});

describe("the record", () => {
  const asked = { unit: "problems", source: "trial-record" };
  const soft = (right: Parameters<typeof corrected>[2], said: Parameters<typeof checkIn>[1]) =>
    reading("record", [...goodTrialBut(checkIn(10, said)), corrected(11, "check10", right)]);

  it("is met where nothing is amiss, and else says what", () => {
    expect(reading("record", goodTrial)).toMatchObject({
      ...asked,
      value: 0,
      state: "met",
      allows: "passed",
      why: expect.stringMatching(/in order/),
    });
    const twice = [...goodTrial, begun(3, "again"), checkIn(40)];
    expect(reading("record", twice)).toMatchObject({
      ...asked,
      value: 2,
      state: "unknown",
      allows: "passed with findings",
      why: expect.stringMatching(/begun twice .*\. The check-in check40 was made after/),
    });
    expect(reading("record", [...goodTrial, checkIn(10, { pain: 0 })])).toMatchObject({
      ...asked,
      state: "unknown",
      allows: "incomplete",
      why: expect.stringContaining("check10"),
    });
  });

  it("is close where a check-in was put right and now sounds better, in any of comfort, pain and what was felt", () => {
    const softened = {
      ...asked,
      value: 0,
      state: "close",
      allows: "passed with findings",
      why: expect.stringMatching(/check-in check10 was put right/),
    };
    expect(soft({ comfort: 9 }, { comfort: 8 })).toMatchObject(softened);
    expect(soft({ pain: 0 }, { pain: 1 })).toMatchObject(softened);
    expect(soft({ feelings: [] }, { feelings: [{ kind: "heat" }] })).toMatchObject(softened);
    expect(soft({ feelings: [{ kind: "cold" }] }, { feelings: [{ kind: "heat" }, { kind: "cold" }] })).toMatchObject(softened);
  });

  it("is in order where what was put right now sounds the same or worse, and where only exertion changed", () => {
    const rights: Parameters<typeof corrected>[2][] = [
      { comfort: 8 },
      { comfort: 7 },
      { pain: 0 },
      { pain: 2 },
      { exertion: 0 },
      { feelings: [{ kind: "heat" }] },
    ];
    for (const right of rights) expect(soft(right, {})?.state).toBe("met");
  });

  it("keeps what was first said through several corrections, and what a correction leaves out", () => {
    const felt = [{ kind: "heat" as const }];
    const [, said] = replay([
      ...goodTrialBut(checkIn(10, { comfort: 6, pain: 2, exertion: 4, feelings: felt })),
      corrected(11, "check10", { comfort: 7 }),
      corrected(12, "check10", { pain: 1, exertion: 5 }),
    ]).checkIns;
    expect(said).toMatchObject({
      comfort: 7,
      pain: 1,
      exertion: 5,
      feelings: felt,
      asFirstSaid: { comfort: 6, pain: 2, exertion: 4, feelings: felt },
    });
  });

  it("lets a correction that was made too early, or is dated after now, only make it worse", () => {
    const worse = { comfort: 5, pain: 1, exertion: 6, feelings: [{ kind: "heat" as const }, { kind: "cold" as const }] };
    const first = { comfort: 5, pain: 1, exertion: 3, feelings: [{ kind: "heat" as const }] };
    const events = (minutes: number) => [
      ...goodTrialBut(checkIn(10, first)),
      corrected(minutes, "check10", { comfort: 9, pain: 0, exertion: 6, feelings: [{ kind: "cold" }] }),
    ];
    const early = replay(events(9));
    expect(early.checkIns[1]).toMatchObject(worse);
    expect(early.problems).toEqual([
      { eventId: "put-right9", why: expect.stringMatching(/put-right9 was made before the check-in check10/) },
    ]);
    expect(replay(events(30), {}, minute(25)).checkIns[1]).toMatchObject(worse);
    expect(replay(events(10)).checkIns[1]).toMatchObject({ comfort: 9, pain: 0 });
    expect(replay([...goodTrial, corrected(9, "check10", { exertion: 9 })]).checkIns[1]).toMatchObject({
      comfort: 8,
      pain: 1,
      exertion: 9,
    });
  });

  it("names a correction of what is no check-in", () => {
    expect(replay([...goodTrial, corrected(11, "begun", { pain: 9 })]).problems).toEqual([
      {
        eventId: "put-right11",
        why: expect.stringMatching(/correction put-right11 is of begun, which is no check-in; it counts where it is bad/),
      },
    ]);
  });
});

it("the worst reading decides the verdict, of none it is passed, and the limits are those of the clinic", () => {
  for (const [index, allows] of verdicts.entries())
    expect(
      verdictOf(
        verdicts.slice(0, index + 1).map((each) => ({ about: "pain", state: "met", why: "", source: "plain", allows: each })),
      ),
    ).toBe(allows);
  expect(verdictOf([])).toBe("passed");
  expect(trialLimitsOf(defaultLimits)).toEqual(trialLimits);
  expect(trialLimits).toEqual({
    minutes: 20,
    intervalMin: 5,
    gapFactor: 1.5,
    comfortLast: 7,
    comfortNever: 5,
    painMost: 3,
    painForbids: 7,
    trendP: 0.05,
  });
  expect(trialLimitsOf(limitsWith({ "comfort-last-least": 9 })).comfortLast).toBe(9);
});

it.each<[string, () => unknown, RegExp]>([
  [
    "an event of no known kind",
    () => replay([{ ...begun(), kind: "worn" } as unknown as TrialEvent]),
    /^events\[0\]\.kind: .*begun, check-in, .*corrected/,
  ], // as a caller without types may give it
  ["a comfort below 0", () => replay([checkIn(5, { comfort: -0.1 })]), /^events\[0\]\.comfort: .*0…10/],
  ["an exertion above 10", () => replay([begun(), checkIn(5, { exertion: 10.1 })]), /^events\[1\]\.exertion: .*0…10/],
  [
    "a check-in without a pain",
    () => replay([{ ...checkIn(5), pain: undefined } as unknown as TrialEvent]),
    /^events\[0\]\.pain/,
  ], // as a caller without types may give it
  ["a comfort that is text", () => replay([{ ...checkIn(5), comfort: "8" } as unknown as TrialEvent]), /^events\[0\]\.comfort/], // as a caller without types may give it
  ["a plan of no minutes", () => replay([], { minutes: -1 }), /^plan\.minutes: .*more than 0 minutes/],
  ["a plan of endless minutes", () => replay([], { minutes: Number.POSITIVE_INFINITY }), /^plan\.minutes/],
  ["a now without an offset", () => replay([], {}, "2026-10-05T10:00:00"), /^asOf: /],
])("refuses %s", (_, run, message) => expect(run).toThrow(message));

it("takes 0 and 10 for ratings, and a correction that leaves all of them out", () => {
  const extremes = [
    begun(),
    checkIn(5, { comfort: 0, pain: 10, exertion: 10 }),
    checkIn(10, { comfort: 10, pain: 0, exertion: 0 }),
    corrected(11, "check10", {}),
  ];
  expect(replay(extremes)).toMatchObject({
    problems: [],
    series: { pain: { worst: 10 }, comfort: { worst: 0 }, exertion: { worst: 10, last: 0 } },
  });
});

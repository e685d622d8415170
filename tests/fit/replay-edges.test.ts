/** The clock and the record of a wear trial at their edges: what counts as within it, what is a problem, which version holds. */
import { describe, expect, it } from "vitest";
import type { TrialEvent } from "@/lib/fit/bundle";
import { replayWearTrial } from "@/lib/fit/replay-wear-trial";
import { begun, checkIn, doffed, ended, goodTrial, minute, paused, plan, resumed, stopSign } from "./trial-events";

const replay = (events: readonly TrialEvent[], asOf?: string) => replayWearTrial(plan, events, asOf);
const problemsOf = (events: readonly TrialEvent[], asOf?: string) => replay(events, asOf).problems;
const checkInsOf = (events: readonly TrialEvent[], asOf?: string) =>
  replay(events, asOf).checkIns.map(({ id, during }) => [id, during]);

describe("what is within a trial", () => {
  it("a check-in in a pause is, and ends no gap: none was awaited", () => {
    const events = [begun(), checkIn(5), paused(6), checkIn(20), resumed(30), checkIn(36), ended(40)];
    expect(replay(events)).toMatchObject({ largestGapMinutes: 6, wornMinutes: 16, problems: [] });
    expect(checkInsOf(events)).toContainEqual(["check20", true]);
  });

  it("a check-in at the minute of the beginning or of the end is, whatever its id; one just outside is not", () => {
    const at = (minutes: number, id: string): TrialEvent => ({ ...checkIn(minutes), id });
    const events = [begun(0, "m"), at(0, "a"), at(-0.1, "b"), at(10, "c"), ended(20, "m-end"), at(20, "z"), at(20.1, "y")];
    expect(checkInsOf(events)).toEqual([
      ["b", false],
      ["a", true],
      ["c", true],
      ["z", true],
      ["y", false],
    ]);
    expect(problemsOf(events)).toEqual([
      { eventId: "b", why: expect.stringMatching(/check-in b was made before the trial had begun; it counts where it is bad/) },
      { eventId: "y", why: expect.stringMatching(/check-in y was made after the trial was over/) },
    ]);
  });

  it("a check-in of a trial that never began is before it", () => {
    expect(checkInsOf([checkIn(5)])).toEqual([["check5", false]]);
    expect(problemsOf([checkIn(5)])[0]?.why).toContain("before the trial had begun");
  });

  it("a check-in after now is not, and is no problem of its own beside being dated later", () => {
    const events = [begun(), checkIn(5), checkIn(10), checkIn(15)];
    expect(checkInsOf(events, minute(10))).toEqual([
      ["check5", true],
      ["check10", true],
      ["check15", false],
    ]);
    expect(problemsOf(events, minute(10))).toEqual([
      { eventId: "check15", why: expect.stringMatching(/^1 event is dated after 2026-10-05T10:10:00/) },
    ]);
    expect(problemsOf(events, minute(8))).toEqual([
      { eventId: "check10", why: expect.stringMatching(/^2 events are dated after/) },
    ]);
    expect(replay(events, minute(10))).toMatchObject({ wornMinutes: 10, largestGapMinutes: 5, nextCheckInDueAt: minute(15) });
  });

  it("gives the minutes worn at each check-in, pauses left out", () => {
    const trial = replay([begun(), checkIn(5), paused(6), resumed(16), checkIn(20), ended(30)]);
    expect(trial.checkIns.map(({ wornMinutes }) => wornMinutes)).toEqual([5, 10]);
    expect(trial.minutesToGo).toBe(0);
  });

  it("runs on to now without a later event, and not past its end", () => {
    expect(replay([begun(), checkIn(5)]).wornMinutes).toBe(5);
    expect(replay(goodTrial, minute(600))).toMatchObject({ wornMinutes: 20.5, largestGapMinutes: 5 });
    expect(replay([begun()], minute(3))).toMatchObject({
      wornMinutes: 3,
      largestGapMinutes: 3,
      minutesToGo: 17,
      nextCheckInDueAt: minute(5),
    });
  });

  it("keeps who reported a check-in, and nothing where nobody said", () => {
    const { reportedBy: _, ...unsaid } = checkIn(10);
    const [said, bare] = replay([begun(), checkIn(5), unsaid]).checkIns;
    expect(said?.reportedBy).toBe("wearer");
    expect(bare && "reportedBy" in bare).toBe(false);
  });
});

describe("a stop sign", () => {
  it("ends wearing where it comes, in a pause too", () => {
    expect(replay([begun(), checkIn(5), paused(6), stopSign(9)])).toMatchObject({
      state: "stopped",
      wornMinutes: 6,
      endedAt: minute(9),
      problems: [],
    });
    expect(replay([begun(), checkIn(5), stopSign(9)])).toMatchObject({
      largestGapMinutes: 5,
      nextCheckInDueAt: null,
      wornMinutes: 9,
    });
  });

  it("keeps its minute of wearing, its note and its time as recorded", () => {
    const noted = { ...stopSign(7, "cold"), note: "Fingers blue" };
    expect(replay([begun(), noted, stopSign(8)]).stopSigns).toEqual([
      { id: "stop7", at: minute(7), sign: "cold", wornMinutes: 7, note: "Fingers blue" },
      { id: "stop8", at: minute(8), sign: "numbness", wornMinutes: 7 },
    ]);
  });

  it("is a problem of the record before the beginning and after the end, and counts; at the very end it is none", () => {
    expect(problemsOf([stopSign(-2), ...goodTrial])).toContainEqual({
      eventId: "stop-2",
      why: expect.stringMatching(/stop sign stop-2 came before the trial had begun; it counts/),
    });
    expect(problemsOf([...goodTrial, stopSign(30)])).toEqual([
      { eventId: "stop30", why: expect.stringMatching(/came after the trial had ended; it counts/) },
    ]);
    expect(problemsOf([...goodTrial, stopSign(20.5)])).toEqual([]);
    // After another stop sign the trial was stopped, not ended.
    expect(problemsOf([begun(), stopSign(4), stopSign(9)])).toEqual([]);
  });

  it("dated after now stops the trial, counts no minute more and is no end of wearing that anybody saw", () => {
    expect(replay([begun(), checkIn(5), stopSign(15)], minute(8))).toMatchObject({
      state: "stopped",
      wornMinutes: 5,
      endedAt: null,
    });
    expect(problemsOf([begun(), stopSign(15)], minute(8))).toHaveLength(1);
    expect(problemsOf([stopSign(15)], minute(8))).toHaveLength(1);
    expect(problemsOf([...goodTrial, stopSign(35)], minute(30))).toHaveLength(1);
  });
});

describe("what cannot have been", () => {
  it.each<[string, TrialEvent[], RegExp]>([
    [
      "paused before it began",
      [paused(-1), ...goodTrial],
      /paused while it was planned \(event pause-1\); the clock takes no notice/,
    ],
    ["paused in a pause", [begun(), paused(5), paused(8)], /paused while it was paused \(event pause8\)/],
    ["paused after the end", [...goodTrial, paused(30)], /paused while it was ended/],
    ["paused after a stop", [begun(), stopSign(4), paused(5)], /paused while it was stopped/],
    ["resumed while it ran", [begun(), resumed(5)], /resumed while it was running, not paused \(event resume5\)/],
    ["begun twice", [begun(), begun(3, "again")], /begun twice \(event again\)/],
    ["begun in a pause", [begun(), paused(2), begun(3, "again")], /begun twice \(event again\)/],
    ["begun after the end", [...goodTrial, begun(30, "again")], /begun after it was over \(event again\)/],
    ["ended without having begun", [ended(20)], /ended without having begun \(event ended\)/],
    ["ended twice", [begun(), ended(20), ended(25, "again")], /ended after it was over \(event again\)/],
    ["ended after it was doffed", [begun(), doffed(20), ended(25)], /ended after it was over \(event ended\)/],
    ["ended after it was stopped and doffed", [begun(), stopSign(4), doffed(5), ended(9)], /ended after it was over/],
    ["doffed twice", [...goodTrial, doffed(40, "again")], /doffed twice \(event again\)/],
    ["doffed without having begun", [doffed(20)], /doffed without the trial having begun \(event doffed\)/],
  ])("is one problem that names the event: %s", (_, events, why) => {
    const problems = problemsOf(events);
    expect(problems).toEqual([{ eventId: expect.any(String), why: expect.stringMatching(why) }]);
    expect(problems[0]?.why).toContain(problems[0]?.eventId ?? "an event");
  });

  it.each<[string, TrialEvent[], string | null]>([
    ["ended after a stop sign", [begun(), stopSign(4), ended(5)], null],
    ["ended at the minute of doffing", [begun(), doffed(20, "a"), ended(20, "b")], minute(20)],
    ["doffed after a stop sign", [begun(), stopSign(4), doffed(5)], minute(5)],
    ["doffed in a pause", [begun(), paused(4), doffed(5)], minute(5)],
    ["ended in a pause", [begun(), paused(4), ended(5)], null],
    ["ended after a stop sign at the minute of doffing", [begun(), stopSign(4), doffed(5, "a"), ended(5, "b")], minute(5)],
  ])("contradicts nothing: %s", (_, events, doffedAt) => {
    expect(replay(events)).toMatchObject({ problems: [], doffedAt });
  });

  it("leaves the state and the minutes as they were", () => {
    expect(replay([begun(), paused(5), paused(8), begun(9, "again")])).toMatchObject({
      state: "paused",
      wornMinutes: 5,
      beganAt: minute(0),
    });
    expect(replay([begun(), stopSign(4), doffed(6)])).toMatchObject({
      state: "stopped",
      endedAt: minute(4),
      doffedAt: minute(6),
    });
    expect(replay([...goodTrial, doffed(40, "again")]).doffedAt).toBe(minute(21));
    expect(replay([doffed(20)])).toMatchObject({ state: "ended", endedAt: minute(20), beganAt: null, largestGapMinutes: null });
  });
});

it("a trial of thousands of events, one of them a century early, loses none of them", () => {
  const many = Array.from({ length: 5000 }, (_, index) => ({
    ...checkIn(0),
    id: `c${index}`,
    at: new Date(Date.UTC(2026, 9, 5, 10) + index * 1000 + 1).toISOString(),
  }));
  const early = { ...checkIn(0, { pain: 6 }), id: "early", at: "1901-01-01T00:00:00Z" };
  const trial = replay([...many.toReversed(), early, begun()]);
  expect(trial.checkIns).toHaveLength(5001);
  expect(trial.checkIns.slice(0, 3).map(({ id }) => id)).toEqual(["early", "c0", "c1"]);
  expect(trial.checkIns.at(-1)?.id).toBe("c4999");
});

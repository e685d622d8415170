import { describe, expect, it } from "vitest";
import type { TrialEvent } from "@/lib/fit/bundle";
import { FitInputError } from "@/lib/fit/errors";
import { replayWearTrial } from "@/lib/fit/replay-wear-trial";
import {
  begun,
  checkIn,
  corrected,
  doffed,
  ended,
  goodTrial,
  goodTrialBut,
  minute,
  paused,
  plan,
  resumed,
  stopSign,
} from "./trial-events";

const replay = (events: readonly TrialEvent[], asOf?: string) => replayWearTrial(plan, events, asOf);
const reason = (events: readonly TrialEvent[], about: string) => replay(events).reasons.find((one) => one.about === about);

describe("the clock of a wear trial", () => {
  it("counts 20.5 minutes in a trial of 20 with four check-ins and passes it", () => {
    expect(replay(goodTrial)).toMatchObject({
      state: "ended",
      verdict: "passed",
      wornMinutes: 20.5,
      minutesToGo: 0,
      nextCheckInDueAt: null,
      largestGapMinutes: 5,
      beganAt: "2026-10-05T10:00:00.000Z",
      endedAt: "2026-10-05T10:20:30.000Z",
      doffedAt: "2026-10-05T10:21:00.000Z",
      problems: [],
    });
  });

  it("is planned before anything happened", () => {
    expect(replay([])).toMatchObject({
      state: "planned",
      verdict: "incomplete",
      wornMinutes: 0,
      minutesToGo: 20,
      largestGapMinutes: null,
      nextCheckInDueAt: null,
    });
  });

  it("runs until now, and says when the next check-in is due", () => {
    expect(replay([begun(), checkIn(5)], minute(8))).toMatchObject({
      state: "running",
      verdict: "incomplete",
      wornMinutes: 8,
      minutesToGo: 12,
      nextCheckInDueAt: minute(10),
      largestGapMinutes: 5,
    });
  });

  it("counts a check-in that is overdue as a gap although nobody came yet", () => {
    expect(replay([begun(), checkIn(5)], minute(16)).largestGapMinutes).toBe(11);
  });

  it("leaves pauses out of the minutes and out of the gaps", () => {
    const trial = replay([begun(), checkIn(5), paused(6), resumed(36), checkIn(41), checkIn(46), checkIn(50), ended(50)]);
    expect(trial).toMatchObject({ wornMinutes: 20, largestGapMinutes: 5, verdict: "passed" });
  });

  it("awaits no check-in in a pause", () => {
    expect(replay([begun(), paused(4)], minute(60))).toMatchObject({
      state: "paused",
      wornMinutes: 4,
      nextCheckInDueAt: null,
      largestGapMinutes: 4,
    });
  });

  it("ends when the socket is doffed although nobody ended it", () => {
    const trial = replay([begun(), checkIn(5), checkIn(10), checkIn(15), checkIn(20), doffed(21)]);
    expect(trial).toMatchObject({
      state: "ended",
      wornMinutes: 21,
      verdict: "passed",
      endedAt: minute(21),
      doffedAt: minute(21),
    });
  });

  it("compares times of any offset", () => {
    const trial = replay([
      { ...begun(), at: "2026-10-06T00:00:00+14:00" },
      { ...checkIn(5), at: "2026-10-04T22:05:00-12:00" },
      { ...checkIn(10), at: "2026-10-05T15:40:00+05:30" },
      { ...checkIn(15), at: "2026-10-05T10:15Z" },
      { ...checkIn(20), at: "2026-10-05T10:20:00.000+00:00" },
      ended(20),
    ]);
    expect(trial).toMatchObject({ wornMinutes: 20, largestGapMinutes: 5, verdict: "passed", problems: [] });
  });

  it("takes a check-in of the same minute as the beginning or the end as within, whatever its id", () => {
    const trial = replay([
      begun(0, "z"),
      { ...checkIn(0), id: "a" },
      checkIn(5),
      checkIn(10),
      checkIn(15),
      ended(20, "a-end"),
      { ...checkIn(20), id: "b" },
      doffed(20, "a-doff"),
    ]);
    expect(trial.problems).toEqual([]);
    expect(trial.series.comfort.points.map(({ wornMinutes }) => wornMinutes)).toEqual([0, 5, 10, 15, 20]);
  });
});

describe("verdict of a wear trial", () => {
  it.each([0, 3, 20.25, 20.5, 25, -5])("is stopped by a stop sign at minute %d, whatever else is good", (minutes) => {
    const trial = replay([...goodTrial, stopSign(minutes)]);
    expect(trial).toMatchObject({ state: "stopped", verdict: "stopped" });
    expect(trial.reasons.find(({ about }) => about === "stop-signs")?.state).toBe("forbids");
  });

  it("stops the minutes at the stop sign", () => {
    expect(replay([begun(), checkIn(5), stopSign(7), doffed(9)])).toMatchObject({
      wornMinutes: 7,
      endedAt: minute(7),
      doffedAt: minute(9),
      problems: [],
    });
  });

  it("keeps a stop sign that somebody tried to put right", () => {
    const trial = replay([...goodTrial, stopSign(12), corrected(13, "stop12", { pain: 0 })]);
    expect(trial.verdict).toBe("stopped");
    expect(trial.problems.some(({ eventId }) => eventId === "put-right13")).toBe(true);
  });

  it("is not passed from pain 4 on, and forbids from 7 on", () => {
    // Cut points 4 and 7 of the 0–10 scale: common practice.
    expect(replay(goodTrialBut(checkIn(10, { pain: 3 }))).verdict).toBe("passed");
    expect(replay(goodTrialBut(checkIn(10, { pain: 3.5 }))).verdict).toBe("not passed");
    expect(reason(goodTrialBut(checkIn(10, { pain: 4 })), "pain")?.state).toBe("not met");
    expect(reason(goodTrialBut(checkIn(10, { pain: 7 })), "pain")?.state).toBe("forbids");
    expect(replay([begun(), checkIn(5, { pain: 7 })], minute(6)).verdict).toBe("not passed");
  });

  it("is not passed with comfort below 7 at the last or below 5 at any check-in (clinic settings)", () => {
    expect(replay(goodTrialBut(checkIn(20, { comfort: 7 }))).verdict).toBe("passed");
    expect(replay(goodTrialBut(checkIn(20, { comfort: 6 }))).verdict).toBe("not passed");
    expect(replay(goodTrialBut(checkIn(5, { comfort: 5 }))).verdict).toBe("passed");
    expect(replay(goodTrialBut(checkIn(5, { comfort: 4 }))).verdict).toBe("not passed");
  });

  it("is not passed with a rise of pain that chance hardly makes: 0, 1, 2, 3 has p = 1/24", () => {
    const rising = goodTrialBut(checkIn(5), checkIn(10, { pain: 1 }), checkIn(15, { pain: 2 }), checkIn(20, { pain: 3 }));
    const { series, verdict } = replay(rising);
    expect(series.pain.pRise).toBeCloseTo(1 / 24, 12);
    expect(series.pain.slopePerMinute).toBeCloseTo(0.2, 12);
    expect(verdict).toBe("not passed");
  });

  it("is not passed with a fall of comfort that chance hardly makes", () => {
    const falling = goodTrialBut(
      checkIn(5, { comfort: 10 }),
      checkIn(10, { comfort: 9 }),
      checkIn(15, { comfort: 8 }),
      checkIn(20, { comfort: 7 }),
    );
    expect(replay(falling).series.comfort.pFall).toBeCloseTo(1 / 24, 12);
    expect(replay(falling).verdict).toBe("not passed");
  });

  it("is not failed by exertion alone: tiredness is expected", () => {
    const tired = [5, 10, 15, 20].map((at, index) =>
      checkIn(at, { exertion: 7 + index, feelings: [{ kind: "muscle-fatigue" }] }),
    );
    expect(replay(goodTrialBut(...tired)).verdict).toBe("passed");
  });

  it("is incomplete where it was too short, still runs, or nobody asked", () => {
    expect(replay([begun(), checkIn(5), checkIn(10), checkIn(15), ended(19.9)]).verdict).toBe("incomplete");
    expect(replay([begun(), ended(20)]).verdict).toBe("incomplete");
    expect(
      replay(
        goodTrial.filter(({ kind }) => kind !== "ended" && kind !== "doffed"),
        minute(30),
      ).verdict,
    ).toBe("incomplete");
    expect(
      replayWearTrial({ ...plan, minutes: 10 }, [begun(), ...[2, 4, 6, 8, 10].map((at) => checkIn(at)), ended(10)]).verdict,
    ).toBe("incomplete");
    expect(replayWearTrial({ ...plan, minutes: 30 }, goodTrial).verdict).toBe("incomplete");
  });

  it("is passed with findings where a gap was longer than one and a half intervals", () => {
    const sparse = [begun(), checkIn(5), checkIn(10), checkIn(12), checkIn(20), ended(20.5)];
    expect(reason(sparse, "gaps")).toMatchObject({ state: "not met", value: 8, limit: 7.5 });
    expect(replay(sparse).verdict).toBe("passed with findings");
    const justSo = [begun(), checkIn(5), checkIn(10), checkIn(12.5), checkIn(20), ended(20.5)];
    expect(replay(justSo)).toMatchObject({ largestGapMinutes: 7.5, verdict: "passed" });
  });

  it("names what was felt and where as a finding", () => {
    const pinched = goodTrialBut(
      checkIn(10, { feelings: [{ kind: "pinching", aspect: "anterior", third: "proximal" }] }),
      checkIn(15, { feelings: [{ kind: "pinching", aspect: "anterior", third: "proximal" }, { kind: "heat" }] }),
    );
    const trial = replay(pinched);
    expect(trial.verdict).toBe("passed with findings");
    expect(trial.feelings).toEqual([
      { kind: "pinching", aspect: "anterior", third: "proximal", times: 2, firstWornMinutes: 10, lastWornMinutes: 15 },
      { kind: "heat", times: 1, firstWornMinutes: 15, lastWornMinutes: 15 },
    ]);
    expect(reason(pinched, "feelings")?.why).toBe("Felt: pinching anterior proximal (2×), heat (1×).");
  });

  it("is not passed where numbness stayed from one check-in to the next", () => {
    const numb = { feelings: [{ kind: "numbness" as const }] };
    expect(replay(goodTrialBut(checkIn(10, numb))).verdict).toBe("passed with findings");
    expect(replay(goodTrialBut(checkIn(10, numb), checkIn(15, numb))).verdict).toBe("not passed");
  });

  it("is not plainly passed with too few check-ins to see a trend, or a plan that asks too seldom", () => {
    const three = [begun(), checkIn(6), checkIn(12), checkIn(18), ended(20)];
    expect(replay(three).verdict).toBe("passed with findings");
    expect(replayWearTrial({ ...plan, intervalMin: 10 }, goodTrial).verdict).toBe("passed with findings");
  });
});

describe("corrections", () => {
  it("put a check-in right, keep what was first said, and are a finding where they soften it", () => {
    const trial = replay([...goodTrialBut(checkIn(10, { pain: 8 })), corrected(11, "check10", { pain: 1 })]);
    expect(trial.series.pain.worst).toBe(1);
    expect(trial.checkIns[1]).toMatchObject({ pain: 1, asFirstSaid: { pain: 8, comfort: 8 } });
    expect(trial.verdict).toBe("passed with findings");
    expect(trial.problems).toEqual([]);
  });

  it("follow each other in the order in which they were made", () => {
    const events = [...goodTrial, corrected(12, "check10", { pain: 2 }), corrected(13, "check10", { pain: 3 })];
    expect(replay(events).series.pain.worst).toBe(3);
    expect(replay(events.toReversed()).series.pain.worst).toBe(3);
  });

  it("count where they make it worse", () => {
    expect(replay([...goodTrial, corrected(30, "check10", { pain: 9 })]).verdict).toBe("not passed");
    expect(replay([...goodTrial, corrected(30, "check10", { pain: 2, comfort: 7 })]).verdict).toBe("passed");
  });

  it("of nothing, or from before the check-in, make nothing better", () => {
    const stray = replay([...goodTrial, corrected(11, "nobody", { pain: 9 })]);
    expect(stray.series.pain.worst).toBe(9);
    expect(stray.verdict).toBe("not passed");
    const early = replay([...goodTrialBut(checkIn(10, { pain: 8 })), corrected(9, "check10", { pain: 1 })]);
    expect(early.series.pain.worst).toBe(8);
    expect(early.problems).toHaveLength(1);
  });
});

describe("sequences that cannot have been", () => {
  it.each<[string, TrialEvent[], Partial<ReturnType<typeof replayWearTrial>>]>([
    ["begun twice", [begun(), begun(3, "again"), ...goodTrial.slice(1)], { wornMinutes: 20.5, verdict: "passed with findings" }],
    ["resumed without a pause", [...goodTrial, resumed(7)], { wornMinutes: 20.5, verdict: "passed with findings" }],
    [
      "paused twice",
      [begun(), checkIn(4), paused(5), paused(8), resumed(10), ended(20)],
      { wornMinutes: 15, verdict: "incomplete" },
    ],
    ["paused before it began", [paused(-1), ...goodTrial], { wornMinutes: 20.5, verdict: "passed with findings" }],
    ["ended twice", [...goodTrial, ended(40, "again")], { wornMinutes: 20.5, verdict: "passed with findings" }],
    ["doffed twice", [...goodTrial, doffed(40, "again")], { wornMinutes: 20.5, verdict: "passed with findings" }],
    [
      "begun after the end",
      [...goodTrial, begun(60, "again")],
      { state: "ended", wornMinutes: 20.5, verdict: "passed with findings" },
    ],
    ["ended without having begun", [ended(20)], { state: "ended", wornMinutes: 0, verdict: "incomplete" }],
    ["doffed without having begun", [doffed(20)], { state: "ended", wornMinutes: 0, verdict: "incomplete" }],
    ["begun only after its end", [ended(1), begun(2)], { state: "ended", wornMinutes: 0, verdict: "incomplete" }],
    ["resumed after the end", [...goodTrial, resumed(22)], { state: "ended", wornMinutes: 20.5 }],
  ])("%s: a problem, and never a throw", (_what, events, expected) => {
    const trial = replay(events);
    expect(trial.problems.length).toBeGreaterThan(0);
    expect(trial).toMatchObject(expected);
  });

  it("a bad check-in outside the trial counts, a good one does not", () => {
    expect(replay([...goodTrial, checkIn(30, { pain: 8 })])).toMatchObject({
      verdict: "not passed",
      series: { pain: { worst: 8, last: 8 } },
    });
    expect(replay([checkIn(-4, { comfort: 2 }), ...goodTrial]).verdict).toBe("not passed");
    const sour = goodTrialBut(checkIn(20, { comfort: 6 }));
    expect(replay([...sour, checkIn(30, { comfort: 10 })])).toMatchObject({
      verdict: "not passed",
      series: { comfort: { last: 6 } },
    });
  });

  it("good answers given only outside the trial leave it incomplete", () => {
    const trial = replay([begun(), ended(20), checkIn(25), checkIn(26), checkIn(27), checkIn(28)]);
    expect(trial.verdict).toBe("incomplete");
    expect(trial.reasons.filter(({ state }) => state === "unknown").map(({ about }) => about)).toEqual(
      expect.arrayContaining(["pain", "comfort", "feelings", "pain-trend", "comfort-trend"]),
    );
  });

  it("one check-in shows no course", () => {
    expect(replay([begun(), checkIn(7), ended(14), ended(20, "again")]).verdict).toBe("incomplete");
    expect(replayWearTrial({ ...plan, intervalMin: 30 }, [begun(), checkIn(10), ended(20)]).verdict).toBe("incomplete");
  });

  it("what is dated after now adds nothing good", () => {
    const trial = replay(goodTrial, minute(12));
    expect(trial).toMatchObject({ state: "running", wornMinutes: 12, nextCheckInDueAt: minute(15), verdict: "incomplete" });
    expect(trial.problems).toHaveLength(1);
    expect(replay([...goodTrial, stopSign(18)], minute(12)).verdict).toBe("stopped");
    expect(replay([...goodTrial, checkIn(18, { pain: 9 })], minute(12)).series.pain.worst).toBe(9);
    const bad = goodTrialBut(checkIn(10, { pain: 8 }));
    expect(replay([...bad, corrected(15, "check10", { pain: 0 })], minute(12)).series.pain.worst).toBe(8);
  });

  it("everything at one instant gives no minute and no NaN", () => {
    const trial = replay(goodTrial.map((event) => ({ ...event, at: minute(0) })));
    expect(trial.wornMinutes).toBe(0);
    expect(trial.verdict).toBe("incomplete");
    expect(trial.series.comfort.slopePerMinute).toBeNull();
    expect(JSON.stringify(trial)).not.toContain("NaN");
  });
});

describe("repeated ids", () => {
  it("count once, also where the instant is written with another offset", () => {
    const trial = replay([...goodTrial, ...goodTrial, { ...checkIn(5), at: "2026-10-05T12:05:00+02:00" }]);
    expect(trial.checkIns).toHaveLength(4);
    expect(trial).toMatchObject({ problems: [], verdict: "passed" });
  });

  it("with other contents are a problem, leave the trial incomplete at best, and the worst of them counts", () => {
    const events = [...goodTrial, checkIn(5, { pain: 2, comfort: 9, feelings: [{ kind: "heat" }] })];
    const trial = replay(events);
    expect(trial.checkIns).toHaveLength(4);
    expect(trial.checkIns[0]).toMatchObject({ comfort: 8, pain: 2, feelings: [{ kind: "heat" }] });
    expect(trial).toMatchObject({ verdict: "incomplete", problems: [{ eventId: "check5" }] });
    expect(JSON.stringify(replay(events.toReversed()))).toBe(JSON.stringify(trial));
  });

  it("do not stand in for an event whose id only looks like theirs", () => {
    const trial = replay([
      ...goodTrial,
      checkIn(5, { pain: 2 }),
      { ...checkIn(12), id: "check5#0" },
      { ...checkIn(13, { pain: 3 }), id: "check5#1" },
    ]);
    expect(trial.checkIns.map(({ id }) => id)).toEqual(["check5", "check10", "check5#0", "check5#1", "check15", "check20"]);
  });

  it("cannot hide a stop sign, lengthen the trial, or hide a bad check-in behind an end", () => {
    expect(replay([...goodTrial, { ...stopSign(10), id: "check10" }]).verdict).toBe("stopped");
    expect(replay([...goodTrial, { ...ended(15), id: "ended" }]).wornMinutes).toBe(15);
    expect(replay([...goodTrial, begun(6)]).wornMinutes).toBe(14.5);
    expect(replay([...goodTrial, checkIn(20, { pain: 9 }), { ...ended(20), id: "check20" }]).verdict).toBe("not passed");
  });
});

describe("input that is no trial", () => {
  it("is refused with the path of the field", () => {
    expect(() => replay([begun(), { ...checkIn(5), pain: 11 }])).toThrow("events[1].pain: expected a rating of 0…10");
    expect(() => replay([{ ...begun(), at: "2026-10-05T10:00:00" }])).toThrow(
      "events[0].at: expected an instant with its offset",
    );
    expect(() => replay([{ ...begun(), at: "yesterday" }])).toThrow(FitInputError);
    expect(() => replay([], "now")).toThrow("asOf");
    expect(() => replayWearTrial({ ...plan, minutes: 0 }, [])).toThrow("plan.minutes");
    expect(() => replayWearTrial({ ...plan, intervalMin: Number.NaN }, [])).toThrow("plan.intervalMin");
    expect(() => replayWearTrial({ ...plan, intervalMin: Number.POSITIVE_INFINITY }, [begun()])).toThrow("plan.intervalMin");
    expect(() => replay([corrected(1, "check5", { comfort: Number.NaN })])).toThrow("events[0].comfort");
  });
});

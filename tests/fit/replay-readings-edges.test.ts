/** What a wear trial shows of pain, comfort and their course, reading by reading, at the edges. */
import { describe, expect, it } from "vitest";
import type { TrialEvent, TrialPlan } from "@/lib/fit/bundle";
import { replayWearTrial } from "@/lib/fit/replay-wear-trial";
import { begun, checkIn, corrected, ended, goodTrial, goodTrialBut, plan, stopSign } from "./trial-events";

const replay = (events: readonly TrialEvent[], changed: Partial<TrialPlan> = {}, asOf?: string) =>
  replayWearTrial({ ...plan, ...changed }, events, asOf);
const reading = (about: string, events: readonly TrialEvent[], changed: Partial<TrialPlan> = {}, asOf?: string) =>
  replay(events, changed, asOf).reasons.find((reason) => reason.about === about);
const comforts = (...values: readonly number[]) =>
  goodTrialBut(...values.map((comfort, index) => checkIn(5 * (index + 1), { comfort })));
const pains = (...values: readonly number[]) => goodTrialBut(...values.map((pain, index) => checkIn(5 * (index + 1), { pain })));

describe("the readings of a trial", () => {
  it("are ten, in one order, and each has a state, a sentence and a source", () => {
    const { reasons } = replay(goodTrial);
    expect(reasons.map(({ about }) => about)).toEqual([
      "stop-signs",
      "pain",
      "comfort",
      "pain-trend",
      "comfort-trend",
      "feelings",
      "worn",
      "gaps",
      "interval",
      "record",
    ]);
    for (const { state, allows, why, source } of reasons) {
      expect([state, allows]).toEqual(["met", "passed"]);
      expect(why).toMatch(/\.$/);
      expect(source).not.toBe("");
    }
  });

  it("name stop signs with the minutes worn", () => {
    const asked = { unit: "stop signs", limit: 0, limitText: "none", source: "stop-signs" };
    expect(reading("stop-signs", goodTrial)).toMatchObject({ ...asked, value: 0, why: "No stop sign." });
    expect(reading("stop-signs", [begun(), stopSign(7.125, "wearer-asks"), stopSign(9, "cold")])).toMatchObject({
      ...asked,
      value: 2,
      state: "forbids",
      allows: "stopped",
      why: expect.stringMatching(/: wearer asks after 7\.13 min worn, cold after 7\.13 min worn\./),
    });
  });

  // Cut points 4 and 7: common practice, no source.
  it("hold the highest pain against 3 and 7", () => {
    const asked = { unit: "of 10", limit: 3, limitText: expect.stringContaining("3"), source: "pain-cut-points" };
    expect(reading("pain", pains(0, 3, 1, 0))).toMatchObject({
      ...asked,
      value: 3,
      state: "met",
      allows: "passed",
      why: expect.stringMatching(/pain 3 of 10/),
    });
    expect(reading("pain", pains(0, 3.1, 1, 0))).toMatchObject({ ...asked, value: 3.1, state: "not met", allows: "not passed" });
    expect(reading("pain", pains(0, 6.9, 1, 0))?.state).toBe("not met");
    expect(reading("pain", pains(0, 7, 1, 0))).toMatchObject({
      ...asked,
      value: 7,
      state: "forbids",
      allows: "not passed",
      why: expect.stringMatching(/pain 7 of 10/),
    });
  });

  it("know nothing of pain and comfort where nobody asked during the trial", () => {
    for (const events of [
      [begun(), ended(20)],
      [begun(), ended(20), checkIn(30)],
    ]) {
      expect(reading("pain", events)).toMatchObject({
        state: "unknown",
        allows: "incomplete",
        limit: 3,
        why: expect.stringMatching(/nobody asked about pain/i),
      });
      expect(reading("comfort", events)).toMatchObject({
        state: "unknown",
        allows: "incomplete",
        limit: 7,
        why: expect.stringMatching(/nobody asked about comfort/i),
      });
      for (const about of ["pain", "comfort"]) expect(reading(about, events)?.value).toBeUndefined();
    }
  });

  // Last ≥ 7 and none < 5: clinic settings. SE 1.0 of the socket comfort score: Hafner et al. 2022, from memory.
  it("hold the last comfort against 7 and the lowest against 5", () => {
    const asked = {
      unit: "of 10",
      standardError: 1,
      limit: 7,
      limitText: expect.stringMatching(/7.*5/),
      source: "comfort-limits",
    };
    expect(reading("comfort", comforts(5, 8, 8, 7))).toMatchObject({
      ...asked,
      value: 7,
      state: "met",
      allows: "passed",
      why: expect.stringMatching(/last 7, lowest 5/),
    });
    expect(reading("comfort", comforts(8, 8, 8, 6.9))).toMatchObject({
      ...asked,
      value: 6.9,
      state: "not met",
      allows: "not passed",
    });
    expect(reading("comfort", comforts(8, 4.9, 8, 8))).toMatchObject({
      ...asked,
      value: 8,
      state: "not met",
      why: expect.stringMatching(/last 8, lowest 4\.9/),
    });
  });

  it("take what was said outside the trial only where it is worse", () => {
    const outside = [
      ...goodTrialBut(checkIn(20, { comfort: 8, pain: 1, exertion: 3 })),
      checkIn(30, { comfort: 7, pain: 2, exertion: 5 }),
      checkIn(40, { comfort: 10, pain: 0, exertion: 0 }),
    ];
    const { series } = replay(outside);
    expect(series.comfort).toMatchObject({ last: 7, worst: 7 });
    expect(series.pain).toMatchObject({ last: 2, worst: 2 });
    expect(series.exertion).toMatchObject({ last: 5, worst: 5 });
    expect(series.comfort.points).toHaveLength(4);
    const stray = replay([...goodTrial, corrected(11, "nobody", { comfort: 6 })]);
    expect(stray.series.comfort).toMatchObject({ last: 6, worst: 6 });
    expect(stray.series.pain).toMatchObject({ last: 0, worst: 1 });
    expect(replay([]).series.comfort).toMatchObject({
      last: null,
      worst: null,
      points: [],
      slopePerMinute: null,
      pRise: null,
      pFall: null,
    });
  });
});

// One-sided Mann–Kendall, exact: four values in strict order have p = 1/24, three 1/6.
describe("the course of pain and comfort", () => {
  const asked = { unit: "p", limit: 0.05, limitText: expect.stringContaining("0.05"), source: "mann-kendall" };

  it("is not met by a rise of pain or a fall of comfort that chance hardly makes", () => {
    expect(reading("pain-trend", pains(0, 1, 2, 3))).toMatchObject({
      ...asked,
      state: "not met",
      allows: "not passed",
      value: expect.closeTo(1 / 24, 9),
      why: expect.stringMatching(/^A rise of pain .* p = 0\.042/),
    });
    expect(reading("comfort-trend", comforts(10, 9, 8, 7))).toMatchObject({
      ...asked,
      state: "not met",
      value: expect.closeTo(1 / 24, 9),
      why: expect.stringMatching(/^A fall of comfort/),
    });
  });

  it("is met by the other direction, and says the chance", () => {
    expect(reading("pain-trend", pains(3, 2, 1, 0))).toMatchObject({
      ...asked,
      state: "met",
      allows: "passed",
      value: expect.closeTo(1, 9),
      why: expect.stringMatching(/^No rise of pain .* p = 1\.000/),
    });
    expect(reading("comfort-trend", comforts(7, 8, 9, 10))).toMatchObject({
      ...asked,
      state: "met",
      why: expect.stringMatching(/^No fall of comfort/),
    });
  });

  it("cannot be told from three check-ins, and from one there is none at all", () => {
    const three = [begun(), checkIn(6), checkIn(12), checkIn(18), ended(20)];
    expect(reading("pain-trend", three)).toMatchObject({
      ...asked,
      state: "unknown",
      allows: "passed with findings",
      why: expect.stringMatching(/^3 check-ins .* rise of pain/),
    });
    expect(reading("comfort-trend", three)?.why).toMatch(/fall of comfort/);
    expect(reading("pain-trend", [begun(), checkIn(6), checkIn(9)])?.allows).toBe("passed with findings");
    expect(reading("pain-trend", [begun(), checkIn(6)])).toMatchObject({
      allows: "incomplete",
      why: expect.stringMatching(/^1 check-in /),
    });
    expect(reading("pain-trend", three)?.value).toBeUndefined();
  });

  it("has a slope from two moments on, of the check-ins during the trial (Theil–Sen)", () => {
    // (5, 1) (10, 2) (15, 2) (20, 4): 0.2 a minute.
    expect(
      replay([begun(), ...[1, 2, 2, 4].map((pain, index) => checkIn(5 * (index + 1), { pain }))]).series.pain.slopePerMinute,
    ).toBeCloseTo(0.2, 12);
    expect(replay([begun(), checkIn(5), { ...checkIn(5), id: "b" }]).series.pain.slopePerMinute).toBeNull();
    expect(replay([begun(), checkIn(5), checkIn(10)]).series.pain).toMatchObject({ slopePerMinute: 0, pRise: 1, pFall: 1 });
  });
});

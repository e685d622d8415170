/** The gates about a wear trial's load, time, check-ins and stop signs at their edges, and what they say. */
import { describe, expect, it } from "vitest";
import type { Bundle, TrialEvent } from "@/lib/fit";
import { acceptance, changed, checkInsOf, gateOf, readyBundle, trialOf } from "./ready-bundle";
import { planned, since, withEvents, without } from "./trial-changes";

// 0.68 kg (1.5 lb) standing for the device: common practice, no source. Ratio 0.90 to 1.10: clinic setting.
describe("trial-load", () => {
  it("gives the trial's moment as a share of the device's", () => {
    expect(gateOf(readyBundle(), "trial-load")).toMatchObject({ state: "met", value: 1, unit: "×", source: "clinic-setting" });
    const far = gateOf(planned({ loadDistanceMm: 300 }), "trial-load");
    expect(far).toMatchObject({ state: "not met", value: expect.closeTo(300 / 220, 5) });
  });

  it("is unknown without a trial on an upper limb, and does not apply to a lower one, with a trial or without", () => {
    const none = (level: Bundle["episode"]["level"], count: number) =>
      gateOf(
        changed((bundle) => {
          bundle.episode.level = level;
          for (const fitting of bundle.fittings) fitting.checks = {};
          bundle.wearTrials.splice(count);
        }),
        "trial-load",
      );
    expect(none("transradial", 0)).toMatchObject({
      state: "unknown",
      source: "plain",
      why: expect.stringMatching(/no wear trial of socket 2/i),
    });
    for (const count of [0, 1])
      expect(none("transtibial", count)).toMatchObject({ state: "met", why: expect.stringMatching(/does not apply/i) });
  });

  it("may be accepted from the beginning of the trial on, not before", () => {
    const accepted = (at: string) =>
      gateOf(
        changed((bundle) => {
          trialOf(bundle).plan.loadDistanceMm = 300;
          bundle.acceptances = [acceptance("trial-load", at)];
        }),
        "trial-load",
      ).accepted;
    expect(accepted("2026-10-05T09:59:59Z")).toBeUndefined();
    expect(accepted("2026-10-05T10:00:00Z")).toBeDefined();
  });
});

// At least 20 minutes: common practice, no source.
describe("worn-long-enough", () => {
  const asked = { unit: "min", source: "trial-length" };

  it("gives the minutes worn and planned, against the longer of the plan and the least", () => {
    const found = gateOf(readyBundle(), "worn-long-enough");
    expect(found).toMatchObject({ ...asked, state: "met", value: 20.5, limit: 20, limitText: expect.stringContaining("20 min") });
    expect(found.why).toMatch(/20\.5 min of 20 planned; 20 is the least/);
    expect(gateOf(planned({ minutes: 20.5 }), "worn-long-enough")).toMatchObject({ state: "met", limit: 20.5 });
    expect(gateOf(planned({ minutes: 20.6 }), "worn-long-enough")).toMatchObject({ state: "not met", limit: 20.6, value: 20.5 });
    const short = gateOf(planned({ minutes: 19 }), "worn-long-enough");
    expect(short).toMatchObject({ ...asked, state: "not met", limit: 20, why: expect.stringContaining("of 19 planned") });
  });

  it("is unknown where the record contradicts itself, and says so", () => {
    const twice = gateOf(withEvents({ ...checkInsOf(readyBundle())[0], pain: 1 } as TrialEvent), "worn-long-enough"); // the first check-in, said otherwise
    expect(twice).toMatchObject({ ...asked, state: "unknown", value: 20.5, why: expect.stringMatching(/contradicts itself/) });
    expect(twice.why).toContain("20.5 min");
    // Begun twice is a problem of the record too, but no contradiction about the minutes.
    expect(gateOf(withEvents({ id: "again", at: "2026-10-05T10:03:00Z", kind: "begun" }), "worn-long-enough").state).toBe("met");
  });
});

// A check-in every 5 minutes, 1.5 intervals let pass: common practice, no source. At most every 30 minutes: clinic setting.
describe("checked-often-enough", () => {
  it("gives the longest gap against one and a half intervals", () => {
    const found = gateOf(readyBundle(), "checked-often-enough");
    expect(found).toMatchObject({
      state: "met",
      value: 5,
      unit: "min",
      limit: 7.5,
      source: "trial-check-ins",
      limitText: expect.stringContaining("7.5 min"),
    });
    expect(found.why).toMatch(/ 5 min, planned every 5 min/);
    const dense = gateOf(planned({ intervalMin: 3 }), "checked-often-enough");
    expect(dense).toMatchObject({ state: "not met", value: 5, limit: 4.5, why: expect.stringContaining("every 3 min") });
  });

  it("is not met by a plan that asks more seldom than every 30 minutes, however small the gaps", () => {
    expect(gateOf(planned({ intervalMin: 30 }), "checked-often-enough").state).toBe("met");
    const sparse = gateOf(planned({ intervalMin: 31 }), "checked-often-enough");
    expect(sparse).toMatchObject({ state: "not met", value: 5, unit: "min", limit: 46.5, source: "clinic-setting" });
    expect(sparse.why).toMatch(/every 31 min; at most 30/);
  });

  it("is unknown where the record does not say when the trial began", () => {
    const found = gateOf(without("begun"), "checked-often-enough");
    expect(found).toMatchObject({
      state: "unknown",
      unit: "min",
      limit: 7.5,
      source: "trial-check-ins",
      why: expect.stringMatching(/when the trial began/),
    });
    expect(found.value).toBeUndefined();
  });

  it("may be accepted once wearing has ended, not before", () => {
    const accepted = (at: string) => {
      const bundle = planned({ intervalMin: 3 });
      bundle.acceptances = [acceptance("checked-often-enough", at)];
      return gateOf(bundle, "checked-often-enough").accepted;
    };
    expect(accepted("2026-10-05T10:20:29Z")).toBeUndefined();
    expect(accepted("2026-10-05T10:20:30Z")).toBeDefined();
  });
});

describe("no-stop-sign", () => {
  const asked = { unit: "stop signs", limit: 0, limitText: "none", source: "stop-signs" };
  const sign = (id: string, at: string, what: "numbness" | "broken-skin"): TrialEvent => ({
    id,
    at,
    kind: "stop-sign",
    sign: what,
  });

  it("names each sign and after how many minutes of wearing it came", () => {
    const found = gateOf(
      withEvents(sign("s", "2026-10-05T10:12:00Z", "broken-skin"), sign("t", "2026-10-05T10:13:00Z", "numbness")),
      "no-stop-sign",
    );
    expect(found).toMatchObject({
      ...asked,
      state: "forbids",
      value: 2,
      why: expect.stringMatching(/: broken skin after 12 min worn, numbness after 12 min worn\./),
    });
    expect(gateOf(readyBundle(), "no-stop-sign")).toMatchObject({ ...asked, state: "met", value: 0, why: "No stop sign." });
  });

  it("is not met by numbness that stays, in the trial or in one begun since, and says what was felt", () => {
    const now = gateOf(since({ feelings: [{ kind: "numbness" }] }), "no-stop-sign");
    expect(now).toMatchObject({
      ...asked,
      state: "not met",
      value: 0,
      why: expect.stringMatching(/No stop sign was recorded, but .*numbness/i),
    });
    expect(gateOf(since({ feelings: [{ kind: "heat" }] }), "no-stop-sign").state).toBe("met");
  });

  it("says that an earlier trial of the socket was stopped, and why", () => {
    const bundle = changed((changing) => {
      changing.wearTrials.push({
        ...structuredClone(trialOf(changing)),
        id: "wt0",
        inspections: [],
        events: [
          { id: "x", at: "2026-10-05T08:00:00Z", kind: "begun" },
          sign("y", "2026-10-05T08:03:00Z", "broken-skin"),
          sign("z", "2026-10-05T08:04:00Z", "numbness"),
        ],
      });
    });
    expect(gateOf(bundle, "no-stop-sign")).toMatchObject({
      ...asked,
      state: "met",
      value: 0,
      why: expect.stringMatching(/earlier trial .* broken skin, numbness\./i),
    });
  });
});

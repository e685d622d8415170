/** The gates about what the wearer said in a trial at their edges, and what they say. */
import { describe, expect, it } from "vitest";
import { assessReadiness, type Bundle, limitsWith, type TrialEvent } from "@/lib/fit";
import { changed, checkInsOf, gateOf, readyBundle, trialOf } from "./ready-bundle";
import { putRight, rated, since, without } from "./trial-changes";

// Socket comfort score, Hanspal et al., Disabil Rehabil 2003;25:1278–80; last ≥ 7 and none < 5: clinic settings.
describe("comfort", () => {
  const asked = { unit: "of 10", limit: 7, source: "comfort-limits", limitText: expect.stringMatching(/7.*5/) };

  it("gives the last and the lowest", () => {
    const found = gateOf(rated("comfort", 8, 6, 9, 7), "comfort");
    expect(found).toMatchObject({ ...asked, state: "met", value: 7, why: expect.stringMatching(/last 7 of 10, lowest 6/) });
    expect(gateOf(rated("comfort", 8, 8, 8, 6), "comfort")).toMatchObject({ ...asked, state: "not met", value: 6 });
    expect(gateOf(rated("comfort", 8, 4, 8, 8), "comfort")).toMatchObject({
      state: "not met",
      value: 8,
      why: expect.stringContaining("lowest 4"),
    });
  });

  it("is unknown where nobody asked in the trial, also where somebody did after it", () => {
    const unasked = gateOf(without("check-in"), "comfort");
    expect(unasked).toMatchObject({ ...asked, state: "unknown", why: expect.stringMatching(/nobody asked/i) });
    const after = without("check-in");
    trialOf(after).events.push({
      id: "late",
      at: "2026-10-05T10:40:00Z",
      kind: "check-in",
      comfort: 9,
      pain: 0,
      exertion: 0,
      feelings: [],
    });
    expect(gateOf(after, "comfort").state).toBe("unknown");
  });

  it("is not met by a comfort below 5 in a trial begun since, and by 5 it is", () => {
    const found = gateOf(since({ comfort: 4 }), "comfort");
    expect(found).toMatchObject({
      ...asked,
      state: "not met",
      value: 8,
      why: expect.stringMatching(/But 4 in a trial that has not ended/),
    });
    expect(gateOf(since({ comfort: 5 }), "comfort").state).toBe("met");
  });

  it("is close where a comfort below 5 was put right, and not where it was 5", () => {
    const found = gateOf(putRight({ comfort: 4 }, { comfort: 8 }), "comfort");
    expect(found).toMatchObject({ ...asked, state: "close", value: 8, why: expect.stringMatching(/comfort of 4 was put right/) });
    expect(gateOf(putRight({ comfort: 5 }, { comfort: 8 }), "comfort")).toMatchObject({ ...asked, state: "met" });
  });

  it("goes by the clinic's own limits", () => {
    const own = (limits: Record<string, number>, bundle: Bundle) =>
      assessReadiness(bundle, limitsWith(limits)).gates.find(({ id }) => id === "comfort")?.state;
    expect(own({ "comfort-last-least": 9 }, readyBundle())).toBe("not met");
    expect(own({ "comfort-never-below": 6.5 }, rated("comfort", 8, 6, 8, 8))).toBe("not met");
  });
});

// 0–10 numeric scale; cut points 4 and 7: common practice, no source.
describe("pain", () => {
  const asked = { unit: "of 10", limit: 3, source: "pain-cut-points", limitText: expect.stringContaining("3") };

  it("gives the highest, and where it was", () => {
    expect(gateOf(rated("pain", 0, 3, 1, 0), "pain")).toMatchObject({
      ...asked,
      state: "met",
      value: 3,
      why: expect.stringMatching(/ 3 of 10, in the trial/),
    });
    const bad = gateOf(rated("pain", 0, 3.5, 1, 0), "pain");
    expect(bad).toMatchObject({ ...asked, state: "not met", value: 3.5 });
    expect(gateOf(rated("pain", 0, 7, 1, 0), "pain")).toMatchObject({
      ...asked,
      state: "forbids",
      value: 7,
      why: expect.stringMatching(/ 7 of 10.*From 7 it forbids/),
    });
  });

  it("takes the worst of the trial and of one begun since", () => {
    const now = gateOf(since({ pain: 5 }), "pain");
    expect(now).toMatchObject({
      ...asked,
      state: "not met",
      value: 5,
      why: expect.stringMatching(/ 5 of 10, in a trial that has not ended/),
    });
    const before = gateOf(
      since({ pain: 2 }, (bundle) => void Object.assign(checkInsOf(bundle)[0] ?? {}, { pain: 6 })),
      "pain",
    );
    expect(before).toMatchObject({ state: "not met", value: 6, why: expect.stringContaining("in the trial") });
  });

  it("is unknown where nobody asked in the trial, and without a trial, unless somebody hurts now", () => {
    expect(gateOf(without("check-in"), "pain")).toMatchObject({
      ...asked,
      state: "unknown",
      why: expect.stringMatching(/nobody asked about pain in the trial/i),
    });
    const first = (pain: number) => since({ pain }, (bundle) => void bundle.wearTrials.shift());
    expect(gateOf(first(2), "pain")).toMatchObject({
      state: "unknown",
      source: "plain",
      why: expect.stringMatching(/no wear trial/i),
    });
    expect(gateOf(first(4), "pain")).toMatchObject({ state: "not met", value: 4 });
    expect(gateOf(first(7), "pain").state).toBe("forbids");
  });

  it("is unknown where somebody asked only after the end, unless the answer was bad", () => {
    const askedLate = (pain: number) => {
      const bundle = without("check-in");
      trialOf(bundle).events.push({
        id: "late",
        at: "2026-10-05T10:40:00Z",
        kind: "check-in",
        comfort: 9,
        pain,
        exertion: 0,
        feelings: [],
      });
      return gateOf(bundle, "pain");
    };
    expect(askedLate(2)).toMatchObject({ ...asked, state: "unknown" });
    expect(askedLate(2).value).toBeUndefined();
    expect(askedLate(4)).toMatchObject({ ...asked, state: "not met", value: 4 });
  });

  it("is unknown where only a trial begun since was asked about", () => {
    const found = gateOf(
      since({ pain: 1 }, (bundle) => {
        const [trial] = bundle.wearTrials;
        if (trial) trial.events = trial.events.filter(({ kind }) => kind !== "check-in");
      }),
      "pain",
    );
    expect(found.state).toBe("unknown");
    expect(found.value).toBeUndefined();
  });

  it("is close where a pain above 3 was put right, and not where it was 3", () => {
    const found = gateOf(putRight({ pain: 4 }, { pain: 1 }), "pain");
    expect(found).toMatchObject({ ...asked, state: "close", value: 1, why: expect.stringMatching(/pain of 4 was put right/) });
    expect(gateOf(putRight({ pain: 3 }, { pain: 1 }), "pain")).toMatchObject({ ...asked, state: "met", value: 1 });
  });
});

// One-sided Mann–Kendall, exact: four values in strict order have p = 1/24.
describe("trend", () => {
  const asked = { unit: "p", limit: 0.05, source: "mann-kendall", limitText: expect.stringContaining("0.05") };

  it("gives the smaller of the two chances, and both in words", () => {
    const rising = gateOf(rated("pain", 0, 1, 2, 3), "trend");
    expect(rising).toMatchObject({ ...asked, state: "not met", value: expect.closeTo(1 / 24, 9) });
    expect(rising.why).toMatch(/pain p = 0\.042, fall of comfort p = 1, from 4 check-ins/);
    const falling = gateOf(rated("comfort", 10, 9, 8, 7), "trend");
    expect(falling.why).toMatch(/comfort p = 0\.042/);
    // A rise of comfort and a fall of pain are no such trends.
    expect(gateOf(rated("comfort", 7, 8, 9, 10), "trend").state).toBe("met");
  });

  it("is unknown with one check-in, and says how many there were", () => {
    const one = changed((bundle) => {
      trialOf(bundle).events = trialOf(bundle).events.filter(({ id, kind }) => kind !== "check-in" || id === "e10");
    });
    const found = gateOf(one, "trend");
    expect(found).toMatchObject({ ...asked, state: "unknown", why: expect.stringMatching(/^1 check-in: no trend/) });
    expect(found.value).toBeUndefined();
  });

  it("writes a very small chance as below 0.001, never as 0", () => {
    const long = changed((bundle) => {
      const minutes = Array.from({ length: 8 }, (_, index) => index);
      trialOf(bundle).events.push(
        ...minutes.map(
          (minute): TrialEvent => ({
            id: `m${minute}`,
            at: `2026-10-05T10:0${minute}:30Z`,
            kind: "check-in",
            comfort: 8,
            pain: minute / 4,
            exertion: 2,
            feelings: [],
          }),
        ),
      );
      for (const [index, event] of checkInsOf(bundle).entries())
        if (index < 4) event.pain = event.id === "e5" ? 1.1 : 2 + index / 4;
    });
    const found = gateOf(long, "trend");
    expect(found.state).toBe("not met");
    expect(found.why).toContain("pain p below 0.001");
  });
});

import { describe, expect, it } from "vitest";
import { limitsWith, motion, motionRule, type Pull, suspension, suspensionRule, trialLoad } from "@/lib/fit";

const device = { massKg: 0.68, centreOfMassMm: 220 };
const pullsOf = (...pairs: readonly (readonly [number, number])[]): Pull[] =>
  pairs.map(([loadN, displacementMm]) => ({ loadN, displacementMm }));

describe("trialLoad", () => {
  it("is 1.36364 of the device's moment for 0.68 kg at 300 mm against 0.68 kg at 220 mm (300/220), and not met", () => {
    const load = trialLoad({ loadKg: 0.68, loadDistanceMm: 300 }, device);
    expect(load.value).toBeCloseTo(1.36364, 5);
    expect(load.state).toBe("not met");
    expect(load.matchingMassKg).toBeCloseTo((0.68 * 220) / 300, 9);
    expect(load.matchingDistanceMm).toBeCloseTo(220, 9);
  });

  it("has the moment m·g·L: 0.68 kg at 220 mm → 1.467075 N·m (g = 9.80665 m/s², CGPM 1901)", () => {
    expect(trialLoad({ loadKg: 0.68, loadDistanceMm: 220 }, device)).toMatchObject({ state: "met", value: 1 });
    expect(trialLoad({ loadKg: 0.68, loadDistanceMm: 220 }, device).trialMomentNm).toBeCloseTo(1.467075, 6);
  });

  it.each([
    [0.9, "met"],
    [1.1, "met"],
    [0.899, "not met"],
    [1.101, "not met"],
  ])("at %s of the device's moment is %s (0.90 to 1.10, clinic setting)", (ratio, state) => {
    expect(trialLoad({ loadKg: 0.68 * ratio, loadDistanceMm: 220 }, device).state).toBe(state);
  });

  it("does not apply to a lower limb, is not met without a load, and unknown without a device", () => {
    expect(trialLoad({}, undefined, { level: "transtibial" })).toMatchObject({
      applies: false,
      state: "met",
      why: expect.stringMatching(/does not apply/i),
    });
    expect(trialLoad({}, device, { level: "transradial" }).state).toBe("not met");
    expect(trialLoad({ loadKg: 0, loadDistanceMm: 220 }, device).state).toBe("not met");
    expect(trialLoad({ loadKg: 0.68 }, device).state).toBe("not met");
    expect(trialLoad({ loadKg: 0.68, loadDistanceMm: 220 }, undefined).state).toBe("unknown");
  });

  it("refuses what cannot be weighed", () => {
    expect(() => trialLoad({ loadKg: -1, loadDistanceMm: 220 }, device)).toThrow("plan.loadKg");
    expect(() => trialLoad({ loadKg: 1, loadDistanceMm: Number.NaN }, device)).toThrow("plan.loadDistanceMm");
    expect(() => trialLoad({ loadKg: 1, loadDistanceMm: 1 }, { massKg: 0, centreOfMassMm: 1 })).toThrow("device.massKg");
  });
});

describe("suspension", () => {
  const harness = { loadN: 222, limitMm: 25 };

  it("is slack 0.52215 mm, 0.0441627 mm/N and 10.3263 mm at 222 N for pulls (22, 1.5) (45, 2.5) (90, 4.5) (least squares by hand)", () => {
    const reading = suspension(pullsOf([22, 1.5], [45, 2.5], [90, 4.5]), harness);
    expect(reading.slackMm).toBeCloseTo(0.52215, 5);
    expect(reading.complianceMmPerN).toBeCloseTo(0.0441627, 7);
    expect(reading.value).toBeCloseTo(10.3263, 4);
    expect(reading.state).toBe("met");
  });

  it("tells nothing from no pull, or from one pull at another load", () => {
    expect(suspension([], harness).state).toBe("unknown");
    expect(suspension(pullsOf([90, 4]), harness).state).toBe("unknown");
    expect(suspension(pullsOf([90, 4], [90, 5]), harness).state).toBe("unknown");
    expect(suspension(pullsOf([222, 4]), harness)).toMatchObject({ state: "met", value: 4, standardError: 2 });
    expect(suspension(pullsOf([222, 24]), harness).state).toBe("close");
    expect(suspension(pullsOf([222, 4], [222, 26]), harness)).toMatchObject({ state: "not met", value: 26 });
  });

  it("is close within 1.645 standard errors of its limit, and met at it by nothing but rounding", () => {
    const scattered = pullsOf([22, 5], [34, 8.5], [45, 9.5]);
    expect(suspension(scattered, { loadN: 45, limitMm: 10.5 }).state).toBe("close");
    expect(suspension(scattered, { loadN: 45, limitMm: 20 }).state).toBe("met");
    expect(suspension(pullsOf([10, 0.1], [20, 0.2], [30, 0.3]), { loadN: 30, limitMm: 0.3 }).state).not.toBe("not met");
  });

  it("has the standard error of the fitted value, by the textbook formula s·√(1/n + (x₀ − x̄)²/Sxx)", () => {
    // Residuals of (0, 1) (10, 1) (20, 4): line 0.5 + 0.15·x, residuals 0.5, −1, 0.5, so s² = 1.5; x̄ = 10, Sxx = 200.
    const reading = suspension(pullsOf([0, 1], [10, 1], [20, 4]), { loadN: 30, limitMm: 25 });
    expect(reading.value).toBeCloseTo(5, 9);
    expect(reading.standardError).toBeCloseTo(Math.sqrt(1.5) * Math.sqrt(1 / 3 + 400 / 200), 9);
  });

  it("a slip at a gentle pull is never undone by the line that it tilts", () => {
    const rule = { loadN: 45, limitMm: 10 };
    expect(suspension(pullsOf([22, 1], [34, 5], [45, 9]), rule).state).not.toBe("not met");
    const slipped = suspension(pullsOf([22, 15], [34, 5], [45, 9]), rule);
    expect(slipped.value).toBeLessThan(10);
    expect(slipped).toMatchObject({ state: "not met", why: expect.stringContaining("15 mm at no more than that load") });
  });

  it("uses the first rule that fits", () => {
    const rule = (
      level: Parameters<typeof suspensionRule>[0]["level"],
      kind: Parameters<typeof suspensionRule>[0]["suspension"],
      bodyMassKg?: number,
    ) => suspensionRule({ level, suspension: kind, ...(bodyMassKg === undefined ? {} : { bodyMassKg }) });
    // Transradial Body-Powered Standards: 25 mm at 222 N or one third of body weight, whichever is less.
    expect(rule("transradial", "harness")).toMatchObject({ loadN: 222, limitMm: 25, source: "body-powered-standards" });
    expect(rule("transradial", "harness", 74)).toMatchObject({ loadN: 222 });
    expect(rule("transhumeral", "harness", 30).loadN).toBeCloseTo((30 * 9.80665) / 3, 9);
    // PMC4208197: 6 mm at 90 N.
    expect(rule("transtibial", "vacuum")).toMatchObject({ loadN: 90, limitMm: 6, source: "vacuum-pistoning" });
    expect(rule("transradial", "self-suspending")).toMatchObject({ loadN: 45, limitMm: 10, source: "suspension-setting" });
    expect(rule("transfemoral", "harness")).toMatchObject({ loadN: 90, limitMm: 10, source: "suspension-setting" });
    expect(suspensionRule({ level: "transtibial", suspension: "pin" }, limitsWith({ "lower-displacement-mm": 8 })).limitMm).toBe(
      8,
    );
  });

  it("does not promise what happens at the rule's load from pulls that were all far gentler", () => {
    const rule = suspensionRule({ level: "transradial", suspension: "self-suspending" });
    expect(suspension(pullsOf([1, 0], [2, 0], [3, 0]), rule).state).toBe("unknown");
    expect(suspension(pullsOf([3, 0], [6, 0.2], [9, 0.4]), rule).state).toBe("met");
  });

  it("refuses loads and displacements that cannot be", () => {
    expect(() => suspension(pullsOf([-1, 0]), harness)).toThrow("pulls[0].loadN");
    expect(() => suspension(pullsOf([1, Number.NaN]), harness)).toThrow("pulls[0].displacementMm");
    expect(() => suspension([], { loadN: 0, limitMm: 1 })).toThrow("rule.loadN");
  });
});

describe("motion", () => {
  it.each([
    [10, "close"],
    [10.1, "not met"],
    [3, "met"],
    [4, "close"],
  ])(
    "%s° of elbow flexion lost is %s (at most 10°, Transradial Body-Powered Standards; SE √2·3°, from memory)",
    (lostDeg, state) => {
      expect(motion(140, 140 - lostDeg, motionRule("elbow-flexion", { level: "transradial", suspension: "harness" })).state).toBe(
        state,
      );
    },
  );

  it.each([
    [105, "close"],
    [104.9, "not met"],
    [110, "met"],
  ])(
    "a self-suspended transradial socket that keeps %s° is %s, whatever it takes (at least 105°, the same source)",
    (withDeg, state) => {
      expect(
        motion(150, withDeg, motionRule("elbow-flexion", { level: "transradial", suspension: "self-suspending" })).state,
      ).toBe(state);
    },
  );

  it("lets any other joint lose 15° (clinic setting), and says what is lost", () => {
    const rule = motionRule("knee-flexion", { level: "transtibial", suspension: "pin" });
    expect(motion(130, 115, rule)).toMatchObject({ state: "close", lostDeg: 15, value: 15 });
    expect(motion(130, 114, rule).state).toBe("not met");
    expect(motion(130, 132, rule)).toMatchObject({ state: "met", lostDeg: -2 });
  });

  it("refuses an angle that no joint has", () => {
    expect(() => motion(400, 10, { judges: "lost", limitDeg: 10 })).toThrow("withoutDeg");
    expect(() => motion(40, Number.NaN, { judges: "lost", limitDeg: 10 })).toThrow("withDeg");
  });
});

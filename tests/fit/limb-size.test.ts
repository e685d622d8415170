import { describe, expect, it } from "vitest";
import {
  defaultLimits,
  type FitInputError,
  hasSettled,
  type LimbMeasurement,
  limbChange,
  limbVolume,
  limitsWith,
  type Station,
  volumeBetween,
} from "@/lib/fit";

const stationsOf = (...pairs: readonly (readonly [number, number])[]): Station[] =>
  pairs.map(([distanceMm, circumferenceMm]) => ({ distanceMm, circumferenceMm }));
const limb = stationsOf([0, 180], [40, 190], [80, 205], [120, 220], [160, 240]);
const thinner = limb.map(({ distanceMm, circumferenceMm }) => ({ distanceMm, circumferenceMm: circumferenceMm - 2 }));
const tape = { circumferenceSdMm: 1.5 };
const round = (radiusMm: number) => 2 * Math.PI * radiusMm;

describe("limbVolume", () => {
  it("is 545.477 mL for the worked example, ± 3.6888 mL, detecting 10.225 mL (worked by hand from V = Σ h/12π·(C₁² + C₁C₂ + C₂²))", () => {
    const { volumeMl, standardErrorMl, detectableChangeMl } = limbVolume(limb, tape);
    expect(volumeMl).toBeCloseTo(545.477, 3);
    expect(standardErrorMl).toBeCloseTo(3.6888, 4);
    expect(detectableChangeMl).toBeCloseTo(10.225, 3);
  });

  it("is exact for a cylinder (πr²h) and a cone frustum (πh/3·(r₁² + r₁r₂ + r₂²))", () => {
    expect(limbVolume(stationsOf([0, round(30)], [100, round(30)]), tape).volumeMl).toBeCloseTo((Math.PI * 900 * 100) / 1000, 9);
    const frustum = (Math.PI * 80 * (20 ** 2 + 20 * 45 + 45 ** 2)) / 3000;
    expect(limbVolume(stationsOf([10, round(20)], [90, round(45)]), tape).volumeMl).toBeCloseTo(frustum, 9);
  });

  it("is within 0.03 % of a hemisphere of 50 mm (2/3·πr³) in 64 slices", () => {
    const slices = Array.from({ length: 65 }, (_, index): readonly [number, number] => {
      const heightMm = (50 * index) / 64;
      return [heightMm, Math.max(1e-6, round(Math.sqrt(2500 - heightMm ** 2)))];
    });
    const exact = ((2 / 3) * Math.PI * 50 ** 3) / 1000;
    expect(Math.abs(limbVolume(stationsOf(...slices), tape).volumeMl / exact - 1)).toBeLessThan(0.0003);
  });

  it("adds the rounded end as a segment of a sphere: a = 28.648 mm, h = 20 mm → 29.972 mL (πh(3a² + h²)/6)", () => {
    const without = limbVolume(limb, tape).volumeMl;
    expect(limbVolume(limb, { ...tape, capHeightMm: 20 }).volumeMl - without).toBeCloseTo(29.972, 3);
    const atTheOtherEnd = (Math.PI * 20 * (3 * (240 / (2 * Math.PI)) ** 2 + 400)) / 6000;
    expect(limbVolume(limb, { ...tape, capHeightMm: 20, capAt: "last" }).volumeMl - without).toBeCloseTo(atTheOtherEnd, 6);
  });

  it("propagates its error as moving each circumference by itself does (numerical derivative)", () => {
    const options = { ...tape, capHeightMm: 20 };
    const slopes = limb.map((_, moved) => {
      const nudged = limb.map((station, index) =>
        index === moved ? { ...station, circumferenceMm: station.circumferenceMm + 1e-4 } : station,
      );
      return (limbVolume(nudged, options).volumeMl - limbVolume(limb, options).volumeMl) / 1e-4;
    });
    expect(limbVolume(limb, options).standardErrorMl).toBeCloseTo(1.5 * Math.hypot(...slopes), 4);
  });

  it.each([
    ["stations", stationsOf([0, 180])],
    ["stations[1].distanceMm", stationsOf([0, 180], [0, 190])],
    ["stations[1].circumferenceMm", stationsOf([0, 180], [40, -1])],
    ["stations[0].circumferenceMm", stationsOf([0, Number.NaN], [40, 190])],
    ["stations[1].distanceMm", stationsOf([0, 180], [Number.POSITIVE_INFINITY, 190])],
  ])("says that %s is wrong", (path, stations) => {
    expect(() => limbVolume(stations, tape)).toThrowError(expect.objectContaining({ path }) as FitInputError);
  });

  it("refuses an error or a rounded end that cannot be", () => {
    expect(() => limbVolume(limb, { circumferenceSdMm: -1 })).toThrow("circumferenceSdMm");
    expect(() => limbVolume(limb, { ...tape, capHeightMm: Number.NaN })).toThrow("capHeightMm");
  });
});

describe("volumeBetween", () => {
  it("adds up: the parts of a limb are the whole, wherever it is cut", () => {
    const whole = limbVolume(limb, tape).volumeMl;
    for (const cutMm of [1, 40, 57.3, 120, 159.9])
      expect(volumeBetween(limb, 0, cutMm) + volumeBetween(limb, cutMm, 160)).toBeCloseTo(whole, 9);
  });

  it("does not reach beyond what was measured", () => {
    expect(() => volumeBetween(limb, -1, 100)).toThrow("fromMm");
    expect(() => volumeBetween(limb, 0, 161)).toThrow("toMm");
    expect(() => volumeBetween(limb, 80, 80)).toThrow("toMm");
  });
});

describe("limbChange", () => {
  it("is −1.916 % ± 0.952 %, 90 % interval −3.482 to −0.351, settled, with all circumferences 2 mm less (535.024 mL; worked by hand)", () => {
    const change = limbChange(limb, thinner, tape);
    expect(change.laterMl).toBeCloseTo(535.024, 3);
    expect(change.percent).toBeCloseTo(-1.916, 3);
    expect(change.standardErrorPercent).toBeCloseTo(0.952, 3);
    expect(change.low90).toBeCloseTo(-3.482, 3);
    expect(change.high90).toBeCloseTo(-0.351, 3);
    expect(change.state).toBe("settled");
  });

  it("compares over what both cover, whether or not they share levels", () => {
    const cylinder = stationsOf([0, 200], [160, 200]);
    const otherLevels = stationsOf([-20, 200], [33, 200], [90, 200]);
    expect(limbChange(cylinder, otherLevels, tape)).toMatchObject({ fromMm: 0, toMm: 90 });
    expect(limbChange(cylinder, otherLevels, tape).percent).toBeCloseTo(0, 9);
    expect(() => limbChange(cylinder, stationsOf([200, 200], [300, 200]), tape)).toThrow("later");
  });

  it("tells settled from changing from what cannot be told", () => {
    const scaled = (percent: number) =>
      limb.map((station) => ({ ...station, circumferenceMm: station.circumferenceMm * Math.sqrt(1 + percent / 100) }));
    expect(limbChange(limb, scaled(-8), tape).state).toBe("changing");
    expect(limbChange(limb, scaled(8), tape).state).toBe("changing");
    expect(limbChange(limb, scaled(0), tape).state).toBe("settled");
    expect(limbChange(limb, scaled(1), { circumferenceSdMm: 6 }).state).toBe("cannot tell");
  });
});

describe("hasSettled", () => {
  const at = (id: string, day: string, stations: Station[], more: Partial<LimbMeasurement> = {}): LimbMeasurement => ({
    id,
    at: `${day}T09:00:00Z`,
    method: "tape",
    stations,
    ...more,
  });

  it("holds the latest against the latest that is at least 14 days older", () => {
    const settling = hasSettled(
      [at("c", "2026-09-28", thinner), at("a", "2026-08-01", limb), at("b", "2026-09-20", limb), at("z", "2026-09-14", thinner)],
      defaultLimits,
    );
    expect(settling).toMatchObject({ state: "settled", compared: { earlierId: "z", laterId: "c" } });
  });

  it("cannot tell from one measurement, or from two of the same fortnight", () => {
    expect(hasSettled([at("a", "2026-09-20", limb)]).state).toBe("cannot tell");
    expect(hasSettled([at("a", "2026-09-20", limb), at("b", "2026-10-03", limb)]).state).toBe("cannot tell");
    expect(
      hasSettled([at("a", "2026-09-20", limb), at("b", "2026-10-03", limb)], limitsWith({ "settled-apart-days": 13 })).state,
    ).toBe("settled");
  });

  it("cannot tell where the two cover too little of the same length", () => {
    const settling = hasSettled([at("a", "2026-08-01", limb), at("b", "2026-09-01", stationsOf([100, 210], [160, 240]))]);
    expect(settling.state).toBe("cannot tell");
    expect(settling.why).toContain("too little of the same length");
  });

  it("warns of a limb measured soon after doffing (Paternò 2021: 30 min on average, from memory) and at another time of day", () => {
    const early = at("a", "2026-08-01", limb, { minutesSinceDoffing: 5 });
    const evening = { ...at("b", "2026-09-01", limb), at: "2026-09-01T18:00:00Z" };
    expect(hasSettled([early, evening]).warnings).toEqual([
      expect.stringContaining("5 min after doffing"),
      expect.stringContaining("different times of day"),
    ]);
    expect(hasSettled([at("a", "2026-08-01", limb), at("b", "2026-09-01", limb)]).warnings).toEqual([]);
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  fitByLevel,
  interquartileRangeOf,
  limbVolume,
  limitsWith,
  madeAsSpecified,
  type Station,
  socketCouple,
  tapeErrorFromRepeats,
} from "@/lib/fit";
import { runs } from "./runs";

const stationsOf = (...pairs: readonly (readonly [number, number])[]): Station[] =>
  pairs.map(([distanceMm, circumferenceMm]) => ({ distanceMm, circumferenceMm }));
const limb = stationsOf([0, 180], [40, 190], [80, 205], [120, 220], [160, 240]);

describe("the clinic's own tape error", () => {
  // Bland & Altman, BMJ 1996;312:1654, give the method with peak flow; here the arithmetic by hand: differences 1, −2, 0 → √(5/6).
  it("is √(Σd²/2n): differences of 1, 2 and 0 mm give √(5/6) = 0.9129 mm", () => {
    expect(
      tapeErrorFromRepeats([
        [200, 201],
        [210, 208],
        [250, 250],
      ]).fromRepeatsMm,
    ).toBeCloseTo(Math.sqrt(5 / 6), 12);
  });

  it("is the within-subject standard deviation of a one-way analysis of variance with two readings each", () => {
    const pairs = Array.from({ length: 12 }, (_, index) => [200 + 3 * index, 200 + 3 * index + ((index * 7) % 5) - 2] as const);
    const within = pairs.reduce((sum, [a, b]) => sum + (a - (a + b) / 2) ** 2 + (b - (a + b) / 2) ** 2, 0) / pairs.length;
    const found = tapeErrorFromRepeats(pairs);
    expect(found.value).toBeCloseTo(Math.sqrt(within), 12);
    expect(found).toMatchObject({ state: "met", source: "bland-altman-1996", circumferenceSdMm: found.value });
  });

  it("stands from ten pairs on; until then the setting does, whatever the pairs say", () => {
    const pairs = (count: number) => Array.from({ length: count }, () => ({ firstMm: 200, secondMm: 206 }));
    expect(tapeErrorFromRepeats(pairs(9))).toMatchObject({ circumferenceSdMm: 1.5, state: "unknown", pairs: 9 });
    expect(tapeErrorFromRepeats(pairs(10)).circumferenceSdMm).toBeCloseTo(6 / Math.SQRT2, 12);
    expect(tapeErrorFromRepeats([], limitsWith({ "tape-error-mm": 2 }))).toMatchObject({
      circumferenceSdMm: 2,
      state: "unknown",
    });
    expect(limbVolume(limb, tapeErrorFromRepeats(pairs(3)))).toEqual(limbVolume(limb, { circumferenceSdMm: 1.5 }));
  });

  it("refuses what is no circumference", () => {
    expect(() =>
      tapeErrorFromRepeats([
        [200, 201],
        [0, 200],
      ]),
    ).toThrow("pairs[1][0]");
    expect(() => tapeErrorFromRepeats([[200, Number.NaN]])).toThrow("pairs[0][1]");
  });
});

describe("the socket against the limb", () => {
  it("compresses by 100·(C_limb − C_socket)/C_limb at each level of either, by straight lines between", () => {
    const { levels, fromMm, toMm } = fitByLevel(limb, stationsOf([20, 180], [100, 205], [180, 240]));
    expect([fromMm, toMm]).toEqual([20, 160]);
    expect(levels.map(({ distanceMm }) => distanceMm)).toEqual([20, 40, 80, 100, 120, 160]);
    // At 20 mm the limb is 185 by hand, the socket 180.
    expect(levels[0]).toMatchObject({ limbMm: 185, socketMm: 180 });
    expect(levels[0]?.compressionPercent).toBeCloseTo((100 * 5) / 185, 12);
    // At 40 mm the socket is 180 + 25/4.
    expect(levels[1]?.socketMm).toBeCloseTo(186.25, 12);
  });

  it("a socket of the same shape has the ratio of its areas: 3 % less round is 0.9409 of the volume", () => {
    const tighter = limb.map((station) => ({ ...station, circumferenceMm: 0.97 * station.circumferenceMm }));
    const { levels, volumeRatio } = fitByLevel(limb, tighter);
    expect(volumeRatio).toBeCloseTo(0.9409, 12);
    for (const { compressionPercent } of levels) expect(compressionPercent).toBeCloseTo(3, 12);
  });

  it("has the error that moving the limb's circumference shows (numerical derivative)", () => {
    const socket = limb.map((station) => ({ ...station, circumferenceMm: station.circumferenceMm - 6 }));
    const at = (nudgeMm: number) =>
      fitByLevel(stationsOf([0, 180 + nudgeMm], [40, 190], [80, 205], [120, 220], [160, 240]), socket).levels[0]
        ?.compressionPercent ?? 0;
    const slope = (at(1e-4) - at(-1e-4)) / 2e-4;
    expect(fitByLevel(limb, socket, { circumferenceSdMm: 1.5 }).levels[0]?.standardErrorPercent).toBeCloseTo(1.5 * slope, 6);
  });

  it("says what it cannot compare", () => {
    expect(() => fitByLevel(limb, stationsOf([200, 180], [240, 190]))).toThrow("socketStations");
    expect(() => fitByLevel(limb, limb, { circumferenceSdMm: Number.NaN })).toThrow("circumferenceSdMm");
  });
});

describe("made as specified", () => {
  const scan = (radiusAt: (angleDeg: number, distanceMm: number) => number) =>
    [0, 40, 80].flatMap((distanceMm) =>
      Array.from({ length: 36 }, (_, index) => ({
        distanceMm,
        angleDeg: 10 * index,
        radiusMm: radiusAt(10 * index, distanceMm),
      })),
    );
  const specified = scan(() => 35);

  // Sanders JE, Severance MR, Allyn KJ. J Rehabil Res Dev 2012;49(4):567–582: all 13 of 33 sockets with a mean radial error
  // above 0.25 mm were unacceptable; of the rest, those with an interquartile range above 0.40 mm needed modification.
  it.each([
    [0.25, "met"],
    [0.26, "not met"],
    [-0.26, "not met"],
  ])("a mean radial error of %s mm is %s", (errorMm, state) => {
    const { meanRadialError, interquartileRange } = madeAsSpecified(
      specified,
      scan(() => 35 + errorMm),
    );
    expect(meanRadialError.value).toBeCloseTo(errorMm, 9);
    expect(meanRadialError.state).toBe(state);
    expect(interquartileRange.value).toBeCloseTo(0, 9);
  });

  it("a socket of the right size and the wrong shape is caught by the interquartile range", () => {
    const oval = (mm: number) =>
      madeAsSpecified(
        specified,
        scan((angleDeg) => 35 + mm * Math.cos((2 * angleDeg * Math.PI) / 180)),
      );
    expect(oval(0.5).meanRadialError).toMatchObject({ state: "met" });
    expect(oval(0.5).interquartileRange).toMatchObject({ state: "not met" });
    expect(oval(0.5).state).toBe("not met");
    expect(oval(0.1)).toMatchObject({ state: "met", caution: null });
  });

  it("a tape cannot show that a socket is right, and says so with its error: 1.5 mm round is 0.239 mm of radius", () => {
    const taped = madeAsSpecified(limb, limb);
    expect(taped).toMatchObject({ state: "unknown", meanRadialError: { value: 0, state: "unknown" } });
    expect(taped.meanRadialError.standardError).toBeCloseTo(1.5 / (2 * Math.PI) / Math.sqrt(5), 12);
    expect(taped.caution).toContain("0.24 mm");
  });

  it("a tape does show a socket that is far off", () => {
    const wider = limb.map((station) => ({ ...station, circumferenceMm: station.circumferenceMm + 4 }));
    const { state, meanRadialError } = madeAsSpecified(limb, wider);
    expect(meanRadialError.value).toBeCloseTo(4 / (2 * Math.PI), 12);
    expect(state).toBe("not met");
  });

  it("compares only points that both have, and refuses what cannot be compared", () => {
    const part = specified.slice(0, 5).map((point) => ({ ...point, angleDeg: point.angleDeg + 360 }));
    expect(madeAsSpecified(specified, part).differences).toHaveLength(5);
    expect(() => madeAsSpecified(specified, limb)).toThrow("made");
    expect(() =>
      madeAsSpecified(
        specified,
        scan(() => Number.NaN),
      ),
    ).toThrow("radiusMm");
    expect(() => madeAsSpecified(specified, [{ distanceMm: 7, angleDeg: 0, radiusMm: 30 }])).toThrow("made");
    expect(() => madeAsSpecified(limb, stationsOf([200, 200], [240, 200]))).toThrow("made");
  });

  it("takes quartiles as R does by default: quantile(c(1, 2, 3, 4, 10), c(.25, .75)) is 2 and 4 (definition 7 of Hyndman & Fan, by hand)", () => {
    expect(interquartileRangeOf([10, 1, 4, 2, 3])).toBe(2);
    expect(interquartileRangeOf([1, 2, 3, 4])).toBeCloseTo(1.5, 12);
    expect(interquartileRangeOf([7])).toBe(0);
    expect(() => interquartileRangeOf([])).toThrow("values");
  });
});

describe("the socket's couple", () => {
  it("bears 0.68 kg at 220 mm between 20 and 120 mm with 13.33704 N distal and 6.66852 N proximal, 1.467075 N·m (statics by hand)", () => {
    const { proximalN, distalN, momentNm, caution } = socketCouple({
      loadN: 0.68 * 9.80665,
      loadDistanceMm: 220,
      proximalMm: 20,
      distalMm: 120,
    });
    expect(distalN).toBeCloseTo(13.33704, 5);
    expect(proximalN).toBeCloseTo(6.66852, 5);
    expect(momentNm).toBeCloseTo(1.467075, 6);
    expect(caution).toContain("no pressure");
  });

  it("is in balance: forces and moments add up to nothing", () => {
    const lengths = fc.record({
      loadN: fc.double({ min: 0, max: 500, noNaN: true }),
      loadDistanceMm: fc.double({ min: 0, max: 900, noNaN: true }),
      proximalMm: fc.double({ min: 0, max: 300, noNaN: true }),
      betweenMm: fc.double({ min: 1.01, max: 300, noNaN: true }),
    });
    fc.assert(
      fc.property(lengths, ({ betweenMm, ...load }) => {
        const lever = { ...load, distalMm: load.proximalMm + betweenMm };
        const { proximalN, distalN } = socketCouple(lever);
        expect(distalN - proximalN).toBeCloseTo(load.loadN, 6);
        expect(distalN * lever.distalMm - proximalN * lever.proximalMm).toBeCloseTo(load.loadN * load.loadDistanceMm, 3);
      }),
      runs(),
    );
  });

  it("refuses contacts that are no lever", () => {
    const lever = { loadN: 6, loadDistanceMm: 220, proximalMm: 120, distalMm: 120 };
    expect(() => socketCouple(lever)).toThrow("distalMm");
    expect(() => socketCouple({ ...lever, loadN: Number.NaN })).toThrow("loadN");
    expect(() => socketCouple({ ...lever, proximalMm: -1 })).toThrow("proximalMm");
  });
});

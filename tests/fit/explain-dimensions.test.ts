import { describe, expect, it } from "vitest";
import { explainDimensions, proposeDimensions, type Station } from "@/lib/fit";

const stationsOf = (...pairs: readonly (readonly [number, number])[]): Station[] =>
  pairs.map(([distanceMm, circumferenceMm]) => ({ distanceMm, circumferenceMm }));
const socket = stationsOf([0, 180], [40, 190], [80, 205], [120, 220], [160, 240]);
const lengths = (stations: readonly Station[]) => stations.map(({ circumferenceMm }) => circumferenceMm);

describe("proposeDimensions", () => {
  it("a relief 3 mm deep adds 2.356 mm (a·π/4, raised cosine over a quarter turn), a build-up takes as much", () => {
    const relief = proposeDimensions(stationsOf([0, 200]), [{ kind: "relief", aspect: "anterior", amount: 3, unit: "mm" }]);
    expect(relief[0]?.circumferenceMm).toBeCloseTo(202.356, 3);
    const buildUp = proposeDimensions(stationsOf([0, 200]), [{ kind: "build-up", aspect: "anterior", amount: 3, unit: "mm" }]);
    expect(buildUp[0]?.circumferenceMm).toBeCloseTo(197.644, 3);
  });

  it("agrees with the arc length of a circle that bulges by a raised cosine, to first order", () => {
    const [radiusMm, depthMm, steps] = [200 / (2 * Math.PI), 0.01, 100_000];
    const radiusAt = (angle: number) =>
      radiusMm + (Math.abs(angle) < Math.PI / 4 ? (depthMm / 2) * (1 + Math.cos(4 * angle)) : 0);
    let arcMm = 0;
    for (let step = 0; step < steps; step++) {
      const [a, b] = [step, step + 1].map((count) => -Math.PI + (2 * Math.PI * count) / steps);
      if (a === undefined || b === undefined) continue;
      arcMm += Math.hypot(
        radiusAt(b) * Math.cos(b) - radiusAt(a) * Math.cos(a),
        radiusAt(b) * Math.sin(b) - radiusAt(a) * Math.sin(a),
      );
    }
    const [proposed] = lengths(
      proposeDimensions(stationsOf([0, 200]), [{ kind: "relief", aspect: "medial", amount: depthMm, unit: "mm" }]),
    );
    expect((proposed ?? 0) - 200).toBeCloseTo(arcMm - 200, 4);
  });

  it("a volume of 2 % more scales circumferences by 1.009950 (√1.02)", () => {
    const more = lengths(proposeDimensions(socket, [{ kind: "volume", amount: 2, unit: "percent" }]));
    for (const [index, mm] of more.entries()) expect(mm / (socket[index]?.circumferenceMm ?? 1)).toBeCloseTo(1.00995, 6);
  });

  it("acts in the third that is named, from whichever end the distances run", () => {
    const relief = { kind: "relief", aspect: "anterior", third: "distal", amount: 4, unit: "mm" } as const;
    const changedAt = (stations: readonly Station[]) =>
      stations
        .filter(({ circumferenceMm }, index) => circumferenceMm !== socket[index]?.circumferenceMm)
        .map(({ distanceMm }) => distanceMm);
    expect(changedAt(proposeDimensions(socket, [relief]))).toEqual([0, 40]);
    expect(changedAt(proposeDimensions(socket, [relief], { stationsFrom: "proximal landmark" }))).toEqual([120, 160]);
    expect(changedAt(proposeDimensions(socket, [relief], { limbLengthMm: 300 }))).toEqual([0, 40, 80]);
  });

  it("what moves an edge, a strap or the alignment changes no circumference", () => {
    const others = (["trim", "flare", "length", "closure", "suspension", "alignment", "other"] as const).map((kind) => ({
      kind,
      amount: 5,
      unit: "mm" as const,
    }));
    expect(proposeDimensions(socket, others)).toEqual(socket);
    expect(proposeDimensions(socket, [{ kind: "volume", amount: 5, unit: "mm" }, { kind: "relief" }])).toEqual(socket);
  });

  it("refuses to leave nothing, and amounts without a number", () => {
    expect(() => proposeDimensions(socket, [{ kind: "volume", amount: -100, unit: "percent" }])).toThrow("adjustments");
    expect(() => proposeDimensions(socket, [{ kind: "relief", amount: Number.NaN, unit: "mm" }])).toThrow(
      "adjustments[0].amount",
    );
  });
});

describe("explainDimensions", () => {
  it("finds nothing where the next socket is what the adjustments make of it", () => {
    const adjustments = [
      { kind: "volume", amount: -2, unit: "percent" },
      { kind: "relief", aspect: "lateral", third: "middle", amount: 3, unit: "mm" },
    ] as const;
    const levels = explainDimensions(socket, proposeDimensions(socket, adjustments), adjustments);
    expect(levels.map(({ distanceMm }) => distanceMm)).toEqual([0, 40, 80, 120, 160]);
    for (const { differenceMm, unexplained } of levels) {
      expect(differenceMm).toBeCloseTo(0, 9);
      expect(unexplained).toBe(false);
    }
  });

  it.each([
    [2, false],
    [2.01, true],
    [-2.01, true],
  ])("%s mm that no adjustment says: unexplained is %s (over 2 mm, clinic setting)", (differenceMm, unexplained) => {
    const next = socket.map((station) =>
      station.distanceMm === 80 ? { ...station, circumferenceMm: station.circumferenceMm + differenceMm } : station,
    );
    expect(explainDimensions(socket, next, []).map((level) => level.unexplained)).toEqual([
      false,
      false,
      unexplained,
      false,
      false,
    ]);
  });

  it("judges a change between levels too, by straight lines", () => {
    const levels = explainDimensions(stationsOf([0, 200], [100, 220]), stationsOf([0, 200], [50, 216], [100, 220]), []);
    expect(levels[1]).toMatchObject({ distanceMm: 50, expectedMm: 210, actualMm: 216, unexplained: true });
  });

  it("leaves out levels that have nothing to be compared with", () => {
    expect(
      explainDimensions(socket, stationsOf([40, 190], [80, 205], [200, 250]), []).map(({ distanceMm }) => distanceMm),
    ).not.toContain(200);
    expect(explainDimensions(socket, stationsOf([200, 240], [240, 250]), [])).toEqual([]);
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { limbChange, limbVolume, type Station, volumeBetween } from "@/lib/fit";
import { runs } from "./runs";

const tape = { circumferenceSdMm: 1.5 };
const volumeOf = (stations: readonly Station[]) => limbVolume(stations, tape).volumeMl;

/** Two to nine rings, 1 to 80 mm apart. */
const limb = fc
  .array(
    fc.record({ apartMm: fc.integer({ min: 1, max: 80 }), circumferenceMm: fc.double({ min: 60, max: 700, noNaN: true }) }),
    {
      minLength: 2,
      maxLength: 9,
    },
  )
  .map((rings) => {
    let distanceMm = 0;
    return rings.map(({ apartMm, circumferenceMm }): Station => {
      distanceMm += apartMm;
      return { distanceMm, circumferenceMm };
    });
  });
const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });
const ends = (stations: readonly Station[]) => [stations[0]?.distanceMm ?? 0, stations.at(-1)?.distanceMm ?? 0] as const;

describe("volume of any limb", () => {
  it("grows with any circumference", () => {
    fc.assert(
      fc.property(limb, fc.nat(8), fc.double({ min: 0.1, max: 50, noNaN: true }), (stations, which, byMm) => {
        const moved = which % stations.length;
        const wider = stations.map((station, index) =>
          index === moved ? { ...station, circumferenceMm: station.circumferenceMm + byMm } : station,
        );
        expect(volumeOf(wider)).toBeGreaterThan(volumeOf(stations));
      }),
      runs(),
    );
  });

  it("does not depend on where a straight frustum is cut: a ring on the straight line between two adds nothing", () => {
    fc.assert(
      fc.property(limb, fc.nat(7), share, (stations, which, at) => {
        const index = which % (stations.length - 1);
        const [lower, upper] = [stations[index], stations[index + 1]];
        if (!lower || !upper) throw new Error("no two rings");
        const between: Station = {
          distanceMm: lower.distanceMm + at * (upper.distanceMm - lower.distanceMm),
          circumferenceMm: lower.circumferenceMm + at * (upper.circumferenceMm - lower.circumferenceMm),
        };
        const cut = [...stations.slice(0, index + 1), between, ...stations.slice(index + 1)];
        expect(volumeOf(cut) / volumeOf(stations)).toBeCloseTo(1, 9);
      }),
      runs(),
    );
  });

  it("splits at any point into parts that add up", () => {
    fc.assert(
      fc.property(limb, share, (stations, at) => {
        const [fromMm, toMm] = ends(stations);
        const cutMm = fromMm + at * (toMm - fromMm);
        const parts = volumeBetween(stations, fromMm, cutMm) + volumeBetween(stations, cutMm, toMm);
        expect(parts / volumeOf(stations)).toBeCloseTo(1, 9);
      }),
      runs(),
    );
  });

  // An independent way: the area C²/4π of 4,000 slices, by the midpoint rule.
  it("is what numerical integration of the area gives", () => {
    fc.assert(
      fc.property(limb, (stations) => {
        const [fromMm, toMm] = ends(stations);
        const slices = 4000;
        const stepMm = (toMm - fromMm) / slices;
        let mm3 = 0;
        for (let slice = 0; slice < slices; slice++) {
          const atMm = fromMm + (slice + 0.5) * stepMm;
          const upper = stations.findIndex(({ distanceMm }) => distanceMm >= atMm);
          const [below, above] = [stations[upper - 1], stations[upper]];
          if (!below || !above) throw new Error("a slice outside the limb");
          const part = (atMm - below.distanceMm) / (above.distanceMm - below.distanceMm);
          mm3 += (stepMm * (below.circumferenceMm * (1 - part) + above.circumferenceMm * part) ** 2) / (4 * Math.PI);
        }
        expect(mm3 / 1000 / volumeOf(stations)).toBeCloseTo(1, 3);
      }),
      runs(),
    );
  });

  it("scales as the square of the circumferences and with the length", () => {
    fc.assert(
      fc.property(limb, fc.double({ min: 0.5, max: 2, noNaN: true }), (stations, factor) => {
        const rounder = stations.map((station) => ({ ...station, circumferenceMm: factor * station.circumferenceMm }));
        const longer = stations.map((station) => ({ ...station, distanceMm: factor * station.distanceMm }));
        expect(volumeOf(rounder) / volumeOf(stations)).toBeCloseTo(factor ** 2, 9);
        expect(volumeOf(longer) / volumeOf(stations)).toBeCloseTo(factor, 9);
      }),
      runs(),
    );
  });

  it("a change has the sign of its circumferences, and its interval holds it", () => {
    fc.assert(
      fc.property(limb, fc.double({ min: -20, max: 20, noNaN: true }), (stations, percent) => {
        const later = stations.map((station) => ({
          ...station,
          circumferenceMm: station.circumferenceMm * Math.sqrt(1 + percent / 100),
        }));
        const change = limbChange(stations, later, tape);
        expect(change.percent).toBeCloseTo(percent, 6);
        expect(change.low90).toBeLessThan(change.percent);
        expect(change.high90).toBeGreaterThan(change.percent);
      }),
      runs(),
    );
  });
});

describe("volume in closed form", () => {
  const round = (radiusMm: number) => 2 * Math.PI * radiusMm;

  it("a cylinder is πr²h, a cone frustum πh/3·(r₁² + r₁r₂ + r₂²), whatever their size", () => {
    const size = fc.double({ min: 10, max: 110, noNaN: true });
    fc.assert(
      fc.property(size, size, fc.double({ min: 1, max: 400, noNaN: true }), (r1, r2, heightMm) => {
        const stations = [
          { distanceMm: 0, circumferenceMm: round(r1) },
          { distanceMm: heightMm, circumferenceMm: round(r2) },
        ];
        const frustum = (Math.PI * heightMm * (r1 * r1 + r1 * r2 + r2 * r2)) / 3000;
        expect(volumeOf(stations) / frustum).toBeCloseTo(1, 9);
      }),
      runs(),
    );
  });

  it("a rounded end of half a sphere is 2/3·πr³: cap of height r on a ring of radius r", () => {
    const ring = [
      { distanceMm: 0, circumferenceMm: round(45) },
      { distanceMm: 10, circumferenceMm: round(45) },
    ];
    const cap = limbVolume(ring, { ...tape, capHeightMm: 45 }).volumeMl - limbVolume(ring, tape).volumeMl;
    expect(cap).toBeCloseTo(((2 / 3) * Math.PI * 45 ** 3) / 1000, 6);
  });
});

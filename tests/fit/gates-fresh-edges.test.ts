/** Whether the limb is still the one that the socket was made for, and its size where a mark is, at the edges. */
import { describe, expect, it } from "vitest";
import type { Bundle } from "@/lib/fit";
import { circumferenceAt } from "@/lib/fit/stations";
import { andMeasured, type Measurement, measured } from "./limb-changes";
import { look, mark } from "./marks";
import { changed, gateOf, readyBundle, socketOf, trialOf } from "./ready-bundle";

// The trial ended at most 28 days ago: clinic setting. A volume within 1.96·√2 of its standard error is no difference (methods of limb size).
describe("fresh", () => {
  const asked = { unit: "days", limit: 28, source: "clinic-setting", limitText: expect.stringContaining("28 days") };
  const later = "2026-10-07T09:00:00Z";
  const since = (percent: number, change: (bundle: Bundle, last: Measurement) => void = () => {}) =>
    gateOf(
      changed((bundle) => change(bundle, andMeasured(bundle, later, percent))),
      "fresh",
    );

  it("counts the days since wearing ended, and says that the limb was not measured since", () => {
    const found = gateOf(readyBundle(), "fresh", "2026-10-08T10:20:30Z");
    expect(found).toMatchObject({ ...asked, state: "met", value: 3 });
    expect(found.why).toMatch(/ended 3 days ago\. The limb was not measured since/);
    const old = gateOf(readyBundle(), "fresh", "2026-11-03T10:20:30Z");
    expect(old).toMatchObject({ ...asked, state: "not met", value: 29, why: expect.stringMatching(/ended 29 days ago\.$/) });
    expect(gateOf(readyBundle(), "fresh", "2026-10-06T10:20:30Z").why).toContain("1 day ago");
  });

  it("says by how much the limb differs, and how much the tape can miss", () => {
    // The frusta of the second measurement hold 532.7 mL, of which 4 % are 21.3 and 1 % is 5.3.
    const smaller = since(-4);
    expect(smaller).toMatchObject({ ...asked, state: "not met" });
    expect(smaller.why).toMatch(/differs by −21 mL \(−4 %\): more than the 10 mL/);
    const larger = since(4);
    expect(larger).toMatchObject({ state: "not met", why: expect.stringMatching(/differs by 21 mL \(4 %\): more than/) });
    expect(since(1)).toMatchObject({
      ...asked,
      state: "met",
      why: expect.stringMatching(/differs by 5 mL \(1 %\): within the 10 mL/),
    });
  });

  it("is unknown where the newest measurement covers less than half of the same length", () => {
    const short = (levels: number) => since(-4, (_, last) => void last.stations.splice(levels));
    expect(short(2)).toMatchObject({ ...asked, state: "unknown", why: expect.stringMatching(/covers too little/) });
    // 80 of 160 mm are half.
    expect(short(3).why).not.toMatch(/covers too little/);
  });

  it("is met where the socket was made from the newest measurement of all, though it is not from before the trial", () => {
    const made = gateOf(
      changed((bundle) => {
        measured(bundle, 0).at = "2026-10-05T10:00:00Z";
        measured(bundle, 1).at = "2026-10-05T10:00:00Z";
      }),
      "fresh",
    );
    expect(made).toMatchObject({ state: "met", why: expect.stringMatching(/not measured since the measurement/) });
  });

  it("compares with the measurement that the socket was made from, not with the last one before the trial", () => {
    const crept = changed((bundle) => {
      for (const station of measured(bundle, 1).stations) station.circumferenceMm *= Math.sqrt(0.96);
      socketOf(bundle).limbMeasurementId = "lm1";
    });
    expect(gateOf(crept, "fresh").state).toBe("not met");
    const unsaid = changed((bundle) => {
      for (const station of measured(bundle, 1).stations) station.circumferenceMm *= Math.sqrt(0.96);
      delete socketOf(bundle).limbMeasurementId;
    });
    expect(gateOf(unsaid, "fresh")).toMatchObject({ state: "met", why: expect.stringMatching(/not measured since the trial/) });
  });

  it("takes a measurement at the very beginning of the trial for one from before it", () => {
    const atOnce = changed((bundle) => {
      for (const socket of bundle.sockets) delete socket.limbMeasurementId;
      bundle.limbMeasurements.shift();
      measured(bundle, 0).at = "2026-10-05T10:00:00Z";
    });
    expect(gateOf(atOnce, "fresh").state).toBe("met");
  });

  it("is unknown where the limb was measured only after the trial, and met where it never was", () => {
    const onlyAfter = changed((bundle) => {
      bundle.limbMeasurements.shift();
      measured(bundle, 0).at = later;
      delete bundle.sockets[0]?.limbMeasurementId;
    });
    expect(gateOf(onlyAfter, "fresh")).toMatchObject({
      ...asked,
      state: "unknown",
      why: expect.stringMatching(/not before the trial/),
    });
    const never = changed((bundle) => {
      bundle.limbMeasurements = [];
      for (const socket of bundle.sockets) delete socket.limbMeasurementId;
    });
    expect(gateOf(never, "fresh")).toMatchObject({ ...asked, state: "met", why: expect.stringMatching(/not measured since/) });
  });
});

describe("the limb's circumference where a mark is", () => {
  /** Places in which a mark 35 degrees round and 30 mm wide counts: two on a thin limb, one on a thick one. */
  const places = (change: (bundle: Bundle) => void, distanceFromEndMm = 150) =>
    gateOf(
      changed((bundle) => {
        trialOf(bundle).inspections = [look(1, mark({ angleDeg: 35, widthMm: 30, distanceFromEndMm }))];
        measured(bundle, 1).stations = [20, 60].map((distanceMm, index) => ({
          distanceMm,
          circumferenceMm: index === 0 ? 150 : 450,
        }));
        change(bundle);
      }),
      "marks-even",
    ).why.match(/(?:anterior|lateral) \w+/g);

  it("runs from the end that the stations are measured from, and is that of the last station beyond them", () => {
    expect(places(() => {}, 5)).toBeNull();
    expect(places(() => {}, 25)).toEqual(["anterior distal", "lateral distal"]);
    expect(places(() => {}, 150)).toEqual(["anterior proximal"]);
    const fromAbove = (bundle: Bundle) => {
      bundle.episode.stationsFrom = "proximal landmark";
    };
    expect(places(fromAbove, 150)).toEqual(["anterior proximal", "lateral proximal"]);
    expect(places(fromAbove, 100)).toEqual(["anterior middle"]);
  });

  it("is that of the newest measurement, up to its last station", () => {
    const thin = (bundle: Bundle) => {
      andMeasured(bundle, "2026-10-07T09:00:00Z").stations = [20, 60, 140].map((distanceMm) => ({
        distanceMm,
        circumferenceMm: 150,
      }));
    };
    expect(places(thin, 150)).toEqual(["anterior proximal", "lateral proximal"]);
    const thickAbove = (bundle: Bundle) => {
      andMeasured(bundle, "2026-10-07T09:00:00Z").stations = [20, 60, 140].map((distanceMm) => ({
        distanceMm,
        circumferenceMm: distanceMm === 140 ? 450 : 150,
      }));
    };
    expect(places(thickAbove, 150)).toEqual(["anterior proximal"]);
  });

  it("is drawn in straight lines between stations", () => {
    expect(circumferenceAt(measured(readyBundle(), 1).stations, 20)).toBeCloseTo((175.5 + 187.5) / 2, 12);
  });
});

import { describe, expect, it } from "vitest";
import { type Bundle, limbBetweenSockets, parseBundle, seriesOf } from "@/lib/fit";
import { readyBundle } from "./ready-bundle";

/** The limb as measured on a day, every circumference shifted by so many mm. */
function measuredOn(bundle: Bundle, id: string, at: string, shiftMm: number): void {
  const [first] = bundle.limbMeasurements;
  if (!first) throw new Error("the ready bundle has a measurement");
  bundle.limbMeasurements.push({
    ...first,
    id,
    at,
    stations: first.stations.map(({ distanceMm, circumferenceMm }) => ({
      distanceMm,
      circumferenceMm: circumferenceMm + shiftMm,
    })),
  });
}

const fittedAt = (bundle: Bundle, socketId: string): string => {
  const fitting = bundle.fittings.findLast((one) => one.socketId === socketId);
  if (!fitting) throw new Error(`the ready bundle has a fitting of ${socketId}`);
  return fitting.at;
};

/** Two measurements, each at the moment of a fitting, and none else. */
function measuredAtBoth(shiftMm: number): Bundle {
  const bundle = readyBundle();
  const kept = bundle.limbMeasurements.length;
  measuredOn(bundle, "near one", fittedAt(bundle, "so1"), 0);
  measuredOn(bundle, "near two", fittedAt(bundle, "so2"), shiftMm);
  bundle.limbMeasurements.splice(0, kept);
  for (const socket of bundle.sockets) delete socket.limbMeasurementId;
  return bundle;
}

describe("the limb between the wearing of two sockets", () => {
  it("has changed where its volume differs by more than the tape can miss", () => {
    const between = limbBetweenSockets(measuredAtBoth(-6), "so1", "so2");
    expect(between).toMatchObject({ state: "changed", earlierId: "near one", laterId: "near two" });
    expect(between.why).toMatch(/changed detectably between sockets 1 and 2: −\d/);
  });

  // docs/methods/limb-size.md: 2 mm off every circumference is −1.916 % with a standard error of 0.952 %, and 1.96 of those are 1.87 %:
  // on the example's levels it is just beyond the tape, half of it is not.
  it.each([
    [-1, "no detectable change"],
    [1, "no detectable change"],
    [-4, "changed"],
    [4, "changed"],
  ])("a shift of %s mm all along is: %s", (shiftMm, state) => {
    expect(limbBetweenSockets(measuredAtBoth(shiftMm), "so1", "so2").state).toBe(state);
  });

  it("is not known where one measurement is the nearest to both", () => {
    const bundle = measuredAtBoth(0);
    bundle.limbMeasurements.pop();
    expect(limbBetweenSockets(bundle, "so1", "so2").why).toBe(
      "The limb was not measured between the two, so nobody knows if it changed.",
    );
  });

  it("is not known where a socket was never worn, or nobody measured in the days about it", () => {
    const never = measuredAtBoth(0);
    never.fittings = never.fittings.filter(({ socketId }) => socketId !== "so1");
    expect(limbBetweenSockets(never, "so1", "so2")).toMatchObject({
      state: "not known",
      why: "The limb was not measured within 30 days of socket 1 being worn.",
    });
    const bundle = measuredAtBoth(0);
    bundle.limbMeasurements = bundle.limbMeasurements.map((one) => ({ ...one, at: "2020-01-01T08:00:00Z" }));
    expect(limbBetweenSockets(bundle, "so1", "so2").why).toBe(
      "The limb was not measured within 30 days of socket 1 and socket 2 being worn.",
    );
  });

  it("is not known where the two measurements have too little length in common", () => {
    const bundle = measuredAtBoth(0);
    const later = bundle.limbMeasurements[1];
    if (later) later.stations = later.stations.map((one) => ({ ...one, distanceMm: one.distanceMm + 150 }));
    expect(limbBetweenSockets(bundle, "so1", "so2").state).toBe("not known");
  });

  it("refuses an id that no socket has", () => {
    expect(() => limbBetweenSockets(readyBundle(), "so1", "so9")).toThrow("no socket has the id so9");
  });
});

describe("a whole series", () => {
  it("has a step for each socket that was made from another, with what came of each adjustment", () => {
    const { findings, steps } = seriesOf(readyBundle());
    expect(findings.map(({ number }) => number)).toEqual([1, 2]);
    expect(steps.map(({ fromNumber, toNumber, effects }) => [fromNumber, toNumber, effects.map(({ effect }) => effect)])).toEqual(
      [[1, 2, ["worked"]]],
    );
  });

  it("leads from the socket that one was made from, and not from the one before it in number", () => {
    const bundle = readyBundle();
    const [, second] = bundle.sockets;
    if (!second) throw new Error("the ready bundle has two sockets");
    bundle.sockets.push({ ...second, id: "so3", number: 3, derivedFrom: "so1", adjustments: [] });
    expect(seriesOf(parseBundle(bundle)).steps.map(({ fromNumber, toNumber }) => [fromNumber, toNumber])).toEqual([
      [1, 2],
      [1, 3],
    ]);
  });

  it("has no step to a socket that nobody says what it was made from", () => {
    const bundle = readyBundle();
    for (const socket of bundle.sockets) delete socket.derivedFrom;
    expect(seriesOf(bundle).steps).toEqual([]);
  });
});

import { describe, expect, it } from "vitest";
import { inputRange, judgeInput, levels, type Quantity, sources } from "@/lib/fit";
import { readyBundle } from "./ready-bundle";

const quantities: readonly Quantity[] = [
  "stationDistanceMm",
  "minutesSinceDoffing",
  "capHeightMm",
  "socketLengthMm",
  "wallMm",
  "bodyMassKg",
  "pullLoadN",
  "displacementMm",
  "angleDeg",
  "markSizeMm",
  "fadedAtMin",
  "minutesAfterDoffing",
  "trialMinutes",
  "trialIntervalMin",
  "limbLengthMm",
  "circumferenceMm",
  "deviceMassKg",
  "centreOfMassMm",
  "trialLoadKg",
  "loadDistanceMm",
];

describe("what a form takes (common practice, no source)", () => {
  it("is wider than what is usual, at every level", () => {
    for (const level of levels)
      for (const quantity of quantities) {
        const { taken, usual, source, unit } = inputRange(quantity, level);
        expect(taken[0]).toBeLessThanOrEqual(usual[0]);
        expect(usual[0]).toBeLessThan(usual[1]);
        expect(usual[1]).toBeLessThanOrEqual(taken[1]);
        expect(sources).toHaveProperty(source);
        expect(unit).not.toBe("");
      }
  });

  it("asks about the unusual, refuses what cannot be, both ends included", () => {
    expect(judgeInput("circumferenceMm", 400, "transradial")).toBe("usual");
    expect(judgeInput("circumferenceMm", 400.1, "transradial")).toBe("unusual");
    expect(judgeInput("circumferenceMm", 600, "transradial")).toBe("unusual");
    expect(judgeInput("circumferenceMm", 600.1, "transradial")).toBe("refused");
    expect(judgeInput("circumferenceMm", Number.NaN, "transradial")).toBe("refused");
    expect(judgeInput("deviceMassKg", 5, "transradial")).toBe("unusual");
    expect(judgeInput("deviceMassKg", 5, "transfemoral")).toBe("usual");
  });

  it("asks nothing about the example", () => {
    const { episode, limbMeasurements, sockets } = readyBundle();
    const lengths = [...limbMeasurements, ...sockets]
      .flatMap(({ stations }) => stations)
      .map(({ circumferenceMm }) => circumferenceMm);
    expect(
      lengths.map((mm) => judgeInput("circumferenceMm", mm, episode.level)).filter((standing) => standing !== "usual"),
    ).toEqual([]);
    expect(judgeInput("limbLengthMm", episode.limbLengthMm, episode.level)).toBe("usual");
  });
});

/** The gates about the limb at their edges, and what they say. */
import { describe, expect, it } from "vitest";
import type { Bundle } from "@/lib/fit";
import { andMeasured, measured } from "./limb-changes";
import { acceptance, changed, gateOf, readyBundle, socketOf } from "./ready-bundle";

// Within 30 days before the trial: clinic setting.
describe("limb-measured", () => {
  const asked = { unit: "days", limit: 30, source: "clinic-setting", limitText: expect.stringContaining("30 days") };
  const measuredAt = (at: string) =>
    changed((bundle) => {
      bundle.limbMeasurements.shift();
      delete bundle.sockets[0]?.limbMeasurementId;
      measured(bundle, 0).at = at;
    });

  it("counts the days from the last measurement to the beginning of the trial", () => {
    const week = gateOf(measuredAt("2026-09-28T10:00:00Z"), "limb-measured");
    expect(week).toMatchObject({ ...asked, state: "met", value: 7, why: expect.stringMatching(/ 7 days before the wear trial/) });
    expect(gateOf(measuredAt("2026-10-04T10:00:00Z"), "limb-measured").why).toContain("1 day before");
  });

  it("is met at 30 days to the minute, and unknown a minute later", () => {
    expect(gateOf(measuredAt("2026-09-05T10:00:00Z"), "limb-measured")).toMatchObject({ state: "met", value: 30 });
    const old = gateOf(measuredAt("2026-09-05T09:59:00Z"), "limb-measured");
    expect(old).toMatchObject({ ...asked, state: "unknown", why: expect.stringMatching(/30 days before/) });
    expect(old.value).toBeGreaterThan(30);
  });

  it("takes a measurement at the very beginning of the trial, and none from after it", () => {
    expect(gateOf(measuredAt("2026-10-05T10:00:00Z"), "limb-measured")).toMatchObject({ state: "met", value: 0 });
    const after = gateOf(measuredAt("2026-10-05T10:00:01Z"), "limb-measured");
    expect(after).toMatchObject({ ...asked, state: "unknown", why: expect.stringMatching(/not measured before the wear trial/) });
    expect(after.value).toBeUndefined();
  });

  it("takes the latest of several before the trial", () => {
    const bundle = changed((changing) => void andMeasured(changing, "2026-10-07T09:00:00Z"));
    expect(gateOf(bundle, "limb-measured").value).toBeCloseTo(7 + 1 / 24, 9);
  });

  it("counts up to now where there is no trial, and says so", () => {
    const bundle = measuredAt("2026-10-05T09:00:00Z");
    bundle.wearTrials = [];
    expect(gateOf(bundle, "limb-measured")).toMatchObject({ state: "met", value: 3, why: expect.stringMatching(/ 3 days ago/) });
    bundle.limbMeasurements = [];
    delete socketOf(bundle).limbMeasurementId;
    delete bundle.sockets[0]?.limbMeasurementId;
    expect(gateOf(bundle, "limb-measured")).toMatchObject({
      state: "unknown",
      why: expect.stringMatching(/has not been measured/),
    });
  });
});

// Settled: the 90 % interval of the change lies inside ±5 %, two one-sided tests (5 % is about one sock: Jarl 2003).
describe("limb-settled", () => {
  const asked = { unit: "%", limit: 5, source: "jarl-2003", limitText: expect.stringMatching(/90 % .* ±5 %/) };

  it("gives the change of volume with its standard error, and what speaks for it besides", () => {
    const found = gateOf(readyBundle(), "limb-settled");
    expect(found).toMatchObject({ ...asked, state: "met", standardError: expect.closeTo(0.97, 1) });
    // Every circumference 0.5 mm less of about 205 mm: by first order −2 · 0.5/205 = −0.49 %.
    expect(found.value).toBeCloseTo(-0.49, 1);
    expect(found.why).toMatch(/in 28 days.* More than 18 months since limb loss/);
  });

  it("says as well what makes the measurements less sure", () => {
    const hasty = changed((bundle) => {
      measured(bundle, 1).minutesSinceDoffing = 12;
    });
    expect(gateOf(hasty, "limb-settled").why).toContain("12 min after doffing");
  });

  it("is not met while it changes, and unknown where nobody can tell", () => {
    const changing = changed((bundle) => {
      for (const station of measured(bundle, 0).stations) station.circumferenceMm *= Math.sqrt(1.08);
    });
    expect(gateOf(changing, "limb-settled")).toMatchObject({ ...asked, state: "not met" });
    const once = changed((bundle) => {
      bundle.limbMeasurements.shift();
      delete bundle.sockets[0]?.limbMeasurementId;
    });
    const unknown = gateOf(once, "limb-settled");
    expect(unknown).toMatchObject({ state: "unknown", source: "clinic-setting" });
    expect([unknown.value, unknown.limit, unknown.unit, unknown.standardError]).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });

  it("is met for a congenital difference in an adult by common practice, and by the measurements where they say it", () => {
    const born = (birthOn: string | undefined, cause: Bundle["episode"]["cause"], percent: number) =>
      gateOf(
        changed((bundle) => {
          Object.assign(bundle.episode, { cause, birthOn });
          for (const station of measured(bundle, 0).stations) station.circumferenceMm *= Math.sqrt(1 + percent / 100);
        }),
        "limb-settled",
      );
    expect(born("1990-01-01", "congenital", 8)).toMatchObject({
      state: "met",
      source: "common-practice",
      value: expect.any(Number),
    });
    expect(born("1990-01-01", "congenital", 0)).toMatchObject({ state: "met", source: "jarl-2003" });
    expect(born("1990-01-01", "trauma", 8).state).toBe("not met");
    expect(born("2015-01-01", "congenital", 8).state).toBe("not met");
    expect(born(undefined, "congenital", 8).state).toBe("not met");
  });

  it("may be accepted by whoever has seen the latest measurement, not before it", () => {
    const accepted = (at: string, measurements: number) =>
      gateOf(
        changed((bundle) => {
          bundle.limbMeasurements = measurements === 0 ? [] : bundle.limbMeasurements.slice(1);
          for (const socket of bundle.sockets) delete socket.limbMeasurementId;
          bundle.acceptances = [acceptance("limb-settled", at)];
        }),
        "limb-settled",
      ).accepted;
    expect(accepted("2026-09-28T08:59:59Z", 1)).toBeUndefined();
    expect(accepted("2026-09-28T09:00:00Z", 1)).toBeDefined();
    expect(accepted("2026-01-01T09:00:00Z", 0)).toBeDefined();
  });
});

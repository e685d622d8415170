import { describe, expect, it } from "vitest";
import { cautionKinds, nextWearStep, wearSchedule } from "@/lib/fit";

const told = (request: Parameters<typeof wearSchedule>[0]) =>
  wearSchedule(request).steps.map(({ from, minutes, sessions }) => `${from} ${sessions} × ${minutes ?? "all day"}`);

// Clinic leaflets: common practice, no source.
describe("the wear schedule", () => {
  it("builds up from 30 minutes three times a day over 45, 60, 90, 120 and 150 to all day from the seventh", () => {
    expect(told({ start: "2026-12-28", cautions: [] })).toEqual([
      "2026-12-28 3 × 30",
      "2026-12-29 3 × 45",
      "2026-12-30 3 × 60",
      "2026-12-31 3 × 90",
      "2027-01-01 3 × 120",
      "2027-01-02 3 × 150",
      "2027-01-03 1 × all day",
    ]);
  });

  it.each(["reduced-feeling", "fragile-skin", "poor-circulation"] as const)(
    "%s halves the start and doubles the days",
    (kind) => {
      const { steps, gentle, allDayFrom } = wearSchedule({ start: "2026-12-01", cautions: [{ kind }] });
      expect(gentle).toBe(true);
      expect(steps[0]).toMatchObject({ minutes: 15, from: "2026-12-01", until: "2026-12-02", days: 2 });
      expect(steps.at(-1)).toMatchObject({ minutes: null, day: 13, from: "2026-12-13" });
      expect(allDayFrom).toBe("2026-12-13");
      expect(wearSchedule({ start: "2026-12-01", cautions: [kind] })).toEqual(
        wearSchedule({ start: "2026-12-01", cautions: [{ kind }] }),
      );
    },
  );

  it("no step more than doubles the one before, and other cautions change nothing", () => {
    for (const kind of cautionKinds) {
      const minutes = wearSchedule({ start: "2026-12-01", cautions: [kind] }).steps.flatMap((step) => step.minutes ?? []);
      minutes.slice(1).forEach((later, index) => {
        expect(later).toBeGreaterThan(minutes[index] ?? 0);
        expect(later).toBeLessThanOrEqual(2 * (minutes[index] ?? 0));
      });
    }
    expect(wearSchedule({ start: "2026-12-01", cautions: ["allergy"] }).gentle).toBe(false);
  });

  it("goes by the calendar, through a leap day and the change of the clocks", () => {
    expect(told({ start: "2028-02-27" })[2]).toContain("2028-02-29");
    expect(
      told({ start: "2026-03-28" })
        .slice(0, 3)
        .map((day) => day.slice(0, 10)),
    ).toEqual(["2026-03-28", "2026-03-29", "2026-03-30"]);
  });

  it("begins for who wears a socket already at the longest step that they wear without marks", () => {
    expect(told({ start: "2026-12-01", from: 100 })[0]).toBe("2026-12-01 3 × 90");
    expect(told({ start: "2026-12-01", from: 10 })[0]).toBe("2026-12-01 3 × 30");
    expect(told({ start: "2026-12-01", from: 600 })).toEqual(["2026-12-01 3 × 150", "2026-12-02 1 × all day"]);
  });

  it("says when to stop, and that it is no prescription", () => {
    const { stopWhen, caution, source } = wearSchedule({ start: "2026-12-01" });
    expect(stopWhen.join(" ")).toMatch(/broken.*call.*physician/s);
    expect(caution).toContain("prosthetist changes it");
    expect(source).toBe("wear-schedule");
  });

  it.each([
    [{ start: "2026-02-30" }, "start"],
    [{ start: "01/12/2026" }, "start"],
    [{ start: "2026-12-01", from: 0 }, "from"],
    [{ start: "2026-12-01", from: Number.NaN }, "from"],
    [{ start: "2026-12-01", cautions: ["headache" as "allergy"] }, "cautions[0]"],
  ])("refuses %j", (request, path) => {
    expect(() => wearSchedule(request)).toThrow(path);
  });
});

describe("after a step", () => {
  it.each([
    [{ rednessGoneMin: 20, hurts: false, stopSign: false }, "next step"],
    [{ rednessGoneMin: 0, hurts: false, stopSign: false }, "next step"],
    [{ rednessGoneMin: 21, hurts: false, stopSign: false }, "stay or go back one"],
    [{ rednessGoneMin: null, hurts: false, stopSign: false }, "stay or go back one"],
    [{ rednessGoneMin: 5, hurts: true, stopSign: false }, "stay or go back one"],
    [{ rednessGoneMin: 5, hurts: false, stopSign: true }, "stop and call"],
  ] as const)("%j is followed by: %s", (found, next) => {
    expect(nextWearStep(found)).toBe(next);
  });

  it("refuses a time that is none", () => {
    expect(() => nextWearStep({ rednessGoneMin: -1, hurts: false, stopSign: false })).toThrow("rednessGoneMin");
  });
});

/** The gate about how evenly marks are spread, at its edges, and what it says. */
import { describe, expect, it } from "vitest";
import type { Bundle, SkinMark } from "@/lib/fit";
import { look, mark } from "./marks";
import { changed, gateOf, lookOf, markOf, trialOf } from "./ready-bundle";

/** The ready bundle with these looks at the skin after its trial. */
const looks = (...after: ReturnType<typeof look>[]): Bundle =>
  changed((bundle) => {
    trialOf(bundle).inspections = after;
  });
const nobodyLooked = looks();
const fourMarks = (each: Partial<SkinMark>) =>
  [0, 90, 180, 270].map((angleDeg) => mark({ id: `m${angleDeg}`, angleDeg, ...each }));

// Marks of even strength round the whole limb are what one wants: common practice, no source.
describe("marks-even", () => {
  const asked = { unit: "grade", limit: 2, source: "even-marks", limitText: expect.stringMatching(/no grade above 2/) };
  const clearMarks = looks(look(1, ...fourMarks({ strength: "clear" })), look(8, ...fourMarks({ strength: "none" })));

  it("gives the highest grade at the first look, and says that no place stands out", () => {
    expect(gateOf(clearMarks, "marks-even")).toMatchObject({ ...asked, state: "met", value: 2 });
    expect(gateOf(clearMarks, "marks-even").why).toMatch(/highest grade is 2; no place stands out/);
  });

  it("is about the first look only: what got worse later is for the other gates", () => {
    const later = looks(look(1, ...fourMarks({})), look(4, mark({ id: "m0", strength: "deep" })));
    expect(gateOf(later, "marks-even")).toMatchObject({ state: "met", value: 2 });
  });

  it("says that there was no mark at the first look", () => {
    expect(gateOf(looks(look(1)), "marks-even")).toMatchObject({
      ...asked,
      state: "met",
      value: 0,
      why: expect.stringMatching(/no mark at the first look/i),
    });
  });

  it("is not met where the grade is 3 though no place stands out", () => {
    const deep = gateOf(looks(look(1, ...fourMarks({ strength: "deep" }))), "marks-even");
    expect(deep).toMatchObject({
      ...asked,
      state: "not met",
      value: 3,
      why: expect.stringMatching(/grade is 3; no place stands out/),
    });
  });

  it("names each place that stands out, though no grade is above 2", () => {
    const two = gateOf(looks(look(1, mark({ id: "a", angleDeg: 0 }), mark({ id: "b", angleDeg: 180 }))), "marks-even");
    expect(two).toMatchObject({ ...asked, state: "not met", value: 2 });
    expect(two.why).toMatch(/stand out: anterior middle, posterior middle/);
  });

  it("grades the marks by the minute of the look: what is there at 20 minutes is at least 3", () => {
    expect(gateOf(looks(look(20, ...fourMarks({ strength: "faint" }))), "marks-even").value).toBe(3);
  });

  it("puts the marks where the limb's own circumference has them", () => {
    // 30 mm are 60 degrees of 180 mm, and 27 of 400: about 35 degrees, more than a fifth lies beyond 45 only on the thin limb.
    const wide = (circumferenceMm: number) =>
      changed((bundle) => {
        for (const station of bundle.limbMeasurements[1]?.stations ?? []) station.circumferenceMm = circumferenceMm;
        trialOf(bundle).inspections = [look(1, mark({ angleDeg: 35, widthMm: 30 }))];
      });
    expect(gateOf(wide(180), "marks-even").why).toMatch(/anterior middle, lateral middle/);
    expect(gateOf(wide(400), "marks-even").why).toMatch(/stand out: anterior middle\./);
  });

  it("is unknown where nobody looked, against the same limit", () => {
    expect(gateOf(nobodyLooked, "marks-even")).toMatchObject({
      ...asked,
      state: "unknown",
      why: expect.stringMatching(/nobody looked/i),
    });
  });

  it("was found when the skin was looked at, so that no acceptance from before counts", () => {
    const accepted = (at: string) =>
      gateOf(
        changed((bundle) => {
          lookOf(bundle, 0).at = "2026-10-05T10:22:00Z";
          markOf(bundle, 0).strength = "deep";
          bundle.acceptances = [{ gate: "marks-even", by: "A. Prosthetist", at, why: "Judged on the limb" }];
        }),
        "marks-even",
      ).accepted;
    expect(accepted("2026-10-05T10:21:59Z")).toBeUndefined();
    expect(accepted("2026-10-05T10:22:00Z")).toMatchObject({ by: "A. Prosthetist" });
  });
});

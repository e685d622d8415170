/** The table of what practitioners consider. Its content is common practice, no source; what is checked here is that it is whole and safe. */
import { describe, expect, it } from "vitest";
import {
  type Consideration,
  consider,
  considerations,
  considerEach,
  type Finding,
  type FindingKind,
  findingKinds,
  findingPlaces,
  forbiddingFindings,
} from "@/lib/fit/consider";
import { isWithin, levelsOfPlace } from "@/lib/fit/consider-places";
import { FitInputError } from "@/lib/fit/errors";
import { sources } from "@/lib/fit/sources";
import {
  adjustmentKinds,
  checksOf,
  feelingKinds,
  isUpperLimb,
  levels,
  lowerLimbChecks,
  stopSigns,
  upperLimbChecks,
} from "@/lib/fit/words";

const prefix = "Reason to stop and call the physician: ";
const ids = (finding: Finding) => consider(finding).map(({ id }) => id);
const kindsOf = ({ kind, alsoFor }: Consideration): FindingKind[] => [kind, ...alsoFor];

describe("the table", () => {
  it("has at least 50 rows with distinct ids, at least 18 of them for each limb", () => {
    expect(considerations.length).toBeGreaterThanOrEqual(50);
    expect(new Set(considerations.map(({ id }) => id)).size).toBe(considerations.length);
    for (const limb of ["upper", "lower"] as const)
      expect(considerations.filter((row) => row.limb === limb).length).toBeGreaterThanOrEqual(18);
  });

  it("knows every feeling, check and stop sign of the records", () => {
    expect(findingKinds).toEqual(expect.arrayContaining([...feelingKinds, ...upperLimbChecks, ...lowerLimbChecks, ...stopSigns]));
  });

  it.each(levels)("leaves nothing that can be found at %s without a row", (level) => {
    for (const kind of [...findingKinds, ...checksOf(level)]) {
      const rows = consider({ kind, level });
      expect(rows.length, kind).toBeGreaterThanOrEqual(1);
      for (const row of rows) {
        expect(kindsOf(row)).toContain(kind);
        expect([isUpperLimb(level) ? "upper" : "lower", "any"]).toContain(row.limb);
        if (row.levels) expect(row.levels).toContain(level);
      }
    }
  });

  it("has a row about every place that has a name, and none about a level that lacks the place", () => {
    for (const place of findingPlaces)
      expect(
        considerations.some((row) => row.place === place),
        place,
      ).toBe(true);
    for (const { id, place, levels: of = [] } of considerations)
      if (place) for (const level of of) expect(levelsOfPlace(place), id).toContain(level);
  });

  it.each(considerations)("$id says what is weighed, what to beware of and when to stop, as common practice", (row) => {
    expect(row.weigh.length).toBeGreaterThanOrEqual(1);
    expect(row.cautions.length).toBeGreaterThanOrEqual(1);
    expect(row.stopWhen.startsWith(prefix)).toBe(true);
    expect(row.stopWhen.length).toBeGreaterThan(prefix.length + 20);
    expect(row.source).toBe("common-practice");
    expect(new Set(kindsOf(row)).size).toBe(kindsOf(row).length);
    for (const { kind } of row.adjustments) expect(adjustmentKinds).toContain(kind);
  });

  it("rests on a source that says it has none", () => {
    expect(sources["common-practice"]).toMatchObject({ kind: "common practice", citation: expect.stringContaining("no source") });
  });
});

describe("what forbids", () => {
  // Stop signs and forbidding findings: methods of this ledger; stage 1 and deep-tissue injury after NPIAP 2016.
  const forbids: readonly FindingKind[] = [
    ...stopSigns,
    "purple-mark",
    "non-blanching",
    "swelling",
    "spreading-redness",
    "severe-pain",
    "circulation",
    "feeling",
  ];

  it("is every stop sign, injured skin, numbness, cold, colour, swelling and severe pain", () => {
    expect([...forbiddingFindings].sort()).toEqual([...forbids].sort());
  });

  it.each(forbids)("%s offers no adjustment anywhere, says why, and leads with the reason to stop", (kind) => {
    for (const level of levels)
      for (const place of [undefined, ...findingPlaces.filter((name) => levelsOfPlace(name).includes(level))]) {
        const rows = consider({ kind, level, ...(place ? { place } : {}) });
        expect(rows.length).toBeGreaterThanOrEqual(1);
        for (const row of rows) {
          expect(row).toMatchObject({ forbids: true, adjustments: [] });
          expect(row.cautions[0]).toMatch(/^No adjustment is offered/);
          expect(row.cautions[0]).toMatch(/[,:;]| before | until | while /);
        }
      }
  });

  it("never shares a row with what does not forbid", () => {
    for (const row of considerations)
      for (const kind of kindsOf(row)) expect(forbids.includes(kind), `${row.id} ${kind}`).toBe(row.forbids);
  });

  it("stands first among several findings, and each row once", () => {
    const level = "transtibial";
    const rows = considerEach([
      { kind: "rotation", level },
      { kind: "numbness", level },
      { kind: "rotation", level },
    ]);
    expect(rows.map(({ id }) => id)).toEqual(["any-numbness", "any-rotation"]);
    expect(considerEach([])).toEqual([]);
  });
});

describe("the order", () => {
  it("is place before level, level before limb, limb before any", () => {
    expect(ids({ kind: "pinching", level: "transradial", place: "fold of the elbow" })).toEqual([
      "upper-elbow-fold-pinch",
      "any-pinching",
    ]);
    expect(ids({ kind: "rotation", level: "transfemoral" })).toEqual(["lower-transfemoral-rotation", "any-rotation"]);
    expect(ids({ kind: "muscle-fatigue", level: "transhumeral" })).toEqual(["upper-muscle-fatigue", "any-muscle-fatigue"]);
    expect(ids({ kind: "deep-mark", level: "transtibial", place: "tibial crest" })).toEqual([
      "lower-tibial-crest",
      "any-bony-point",
      "any-deep-mark",
    ]);
  });

  it("never puts a wider place before a nearer one", () => {
    for (const place of findingPlaces)
      for (const level of levelsOfPlace(place))
        for (const kind of findingKinds) {
          const nearness = consider({ kind, level, place }).map((row) =>
            row.place === place ? 2 : row.place && isWithin(place, row.place) ? 1 : row.place ? -1 : 0,
          );
          expect(nearness).not.toContain(-1);
          expect(nearness).toEqual([...nearness].sort((a, b) => b - a));
        }
  });

  it("takes a spot on the limb map for the places that it may be, and guesses none that was not said", () => {
    const kind = "deep-mark";
    const level = "transtibial";
    expect(ids({ kind, level, aspect: "lateral", third: "proximal" })).toEqual([
      "lower-fibular-head",
      "lower-condyles-transtibial",
      "any-brim-mark",
      "any-bony-point",
      "any-deep-mark",
    ]);
    expect(ids({ kind, level, aspect: "lateral", third: "middle" })).toEqual(["any-deep-mark"]);
    expect(ids({ kind, level })).toEqual(["any-deep-mark"]);
    expect(ids({ kind: "pressure", level, third: "distal" })).toEqual(["any-end-pressure", "any-pressure"]);
  });

  it("knows the same bone at another level as another place", () => {
    const at = (level: Finding["level"] & string) => ids({ kind: "pressure", level, place: "epicondyles" })[0];
    expect(at("transradial")).toBe("upper-epicondyles-hold");
    expect(at("elbow disarticulation")).toBe("upper-elbow-disarticulation-condyles");
  });

  it("lets the limb follow from the place, and says only what goes for any limb where nothing else is known", () => {
    expect(ids({ kind: "pinching", place: "fold of the elbow" })[0]).toBe("upper-elbow-fold-pinch");
    expect(consider({ kind: "rotation" }).every(({ limb }) => limb === "any")).toBe(true);
    expect(ids({ kind: "too-long", limb: "lower" })).toEqual(["lower-too-long", "any-length"]);
  });
});

describe("what cannot be looked up", () => {
  it.each([
    [{ kind: "itching" }, "finding.kind"],
    [{ kind: "" }, "finding.kind"],
    [{ kind: "toString" }, "finding.kind"],
    [{ kind: undefined }, "finding.kind"],
    [{ kind: "pain", level: "elbow" }, "finding.level"],
    [{ kind: "pain", limb: "left" }, "finding.limb"],
    [{ kind: "pain", limb: "lower", level: "transradial" }, "finding.limb"],
    [{ kind: "pain", aspect: "front" }, "finding.aspect"],
    [{ kind: "pain", third: "upper" }, "finding.third"],
    [{ kind: "pain", place: "ear" }, "finding.place"],
    [{ kind: "pain", place: "constructor" }, "finding.place"],
    [{ kind: "pain", level: "transradial", place: "back of the knee" }, "finding.place"],
    [{ kind: "pain", limb: "upper", place: "back of the knee" }, "finding.place"],
  ])("%j is refused at %s", (finding, path) => {
    // What comes from outside is not held by the types.
    const call = () => consider(finding as unknown as Finding);
    expect(call).toThrow(FitInputError);
    expect(call).toThrow(path);
  });
});

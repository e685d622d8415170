/** The table of what practitioners consider. Its content is common practice, no source; what is checked here is that it is whole and safe. */
import { describe, expect, it } from "vitest";
import { couldHaveChanged } from "@/lib/fit/adjustment-reach";
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
  type AdjustmentKind,
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
const kindsOf = ({ kind, alsoFor = [] }: Consideration): FindingKind[] => [kind, ...alsoFor];
const textsOf = ({ adjustments, weigh, cautions, stopWhen }: Consideration): string[] => [
  ...adjustments.map(({ what }) => what),
  ...weigh,
  ...cautions,
  stopWhen,
];
const sentencesOf = (text: string): string[] => text.replace(prefix, "").split(/(?<=\.)\s+/);

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

describe("the words", () => {
  const bareVerbs =
    /^(?:add|adjust|aim|allow|apply|ask|avoid|begin|build(?!-up)|call|carry|change|check|choose|close|compare|consider|cut|decide|do|doff|don|don't|draw|ensure|examine|feel|fill|find|fit|fix|flare|follow|give|grind|hold|increase|inspect|keep|leave|lengthen|let|limit|loosen|look|lower|make|mark|massage|measure|move|note|open|pad|place|press|provide|put|raise|record|reduce|refer|reline|relieve|remember|remove|repeat|replace|rotate|seal|see|send|set|shift|shorten|stop|support|take|tell|test|tighten|tilt|treat|trim|try|turn|use|wait|warn|watch|wear|weigh|widen|wrap|write)\b/i;
  const orders =
    /\b(?:must|always|never|should|shall|ought|have to|has to be (?:done|made)|you|your|please|mandatory|required)\b/i;
  const startsAsOrder = (text: string): boolean =>
    text
      .replace(prefix, "")
      .split(/(?<=[.:;])\s+/)
      .some((part) => bareVerbs.test(part.trim()));

  it("are caught where they order", () => {
    for (const order of ["Flare the brim.", "The brim presses; trim it.", "Where it hurts: relieve it."])
      expect(startsAsOrder(order), order).toBe(true);
    expect(startsAsOrder("A flare at that brim is considered.")).toBe(false);
    expect(orders.test("The brim must be lowered.")).toBe(true);
  });

  it.each(considerations)("$id orders nothing", (row) => {
    for (const text of [row.finding, ...textsOf(row)]) {
      expect(startsAsOrder(text), text).toBe(false);
      expect(text).not.toMatch(orders);
    }
    for (const { what } of row.adjustments) expect(what).toMatch(/\b(?:is|are) considered\b/);
  });

  it.each(considerations)("$id ends its sentences with a full stop, and its heading without", (row) => {
    for (const text of textsOf(row)) expect(text).toMatch(/^[A-Z].*[^.\s]\.$/s);
    expect(row.finding).toMatch(/^[A-Z][^.]*[^.\s]$/);
  });

  it.each(considerations)("$id names no product, no dose, and nobody by their limb loss", (row) => {
    for (const text of [row.finding, ...textsOf(row)].flatMap(sentencesOf)) {
      // A name is a word with a capital that does not begin the sentence.
      expect(
        text
          .slice(1)
          .match(/\b[A-Z]\w*/g)
          ?.filter((word) => word !== "Achilles") ?? [],
      ).toEqual([]);
      expect(text).not.toMatch(/\b(?:stump|amputee|mg|tablets?|dose|gel)s?\b/i);
    }
  });

  it("does not say the same sentence twice", () => {
    const sentences = considerations.flatMap(textsOf).flatMap(sentencesOf);
    const twice = sentences.filter((one, index) => sentences.indexOf(one) !== index);
    expect(twice).toEqual([]);
    expect(sentences.length).toBeGreaterThan(500);
  });
});

describe("an adjustment that is considered", () => {
  const asAdjustment = (kind: AdjustmentKind) => ({ id: "a", kind, reason: "r" });
  const measureOf = (kind: FindingKind) =>
    kind === "displacement" ? "displacement" : /-mark$|^late-fading$/.test(kind) ? "marks" : null;

  // A check that an adjustment says it answers is judged whatever its kind; marks and displacement are judged by kind too.
  it("for marks or displacement is of a kind that is held to be able to change them", () => {
    const strays = considerations
      // What a harness does to the other axilla is on no limb map.
      .filter(({ place }) => place !== "harness axilla")
      .flatMap((row) =>
        kindsOf(row).flatMap((kind) => {
          const of = measureOf(kind);
          return row.adjustments
            .filter(({ kind: made }) => of && !couldHaveChanged(asAdjustment(made), { measure: { of }, place: {} }))
            .map(({ kind: made }) => `${row.id}: ${made} for ${kind}`);
        }),
      );
    expect(strays).toEqual([]);
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

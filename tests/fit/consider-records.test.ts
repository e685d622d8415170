/** From the records to the table: nothing that was recorded is left without a row, and nothing is softened on the way. */
import { describe, expect, it } from "vitest";
import { consider, considerEach } from "@/lib/fit/consider";
import {
  findingOfCheck,
  findingOfDisplacement,
  findingOfFeeling,
  findingOfMotion,
  findingOfPain,
  findingOfStopSign,
  findingsOfMark,
} from "@/lib/fit/consider-records";
import { defaultLimits, limitValue } from "@/lib/fit/limits";
import { checksOf, feelingKinds, levels, stopSigns, strengths } from "@/lib/fit/words";
import { mark } from "./marks";

const level = "transtibial";
const look = { level, limbLengthMm: 150 } as const;

describe("what the records hold", () => {
  it.each(levels)("leads to a row at %s: every feeling, check, stop sign, pain, displacement and motion", (at) => {
    for (const kind of feelingKinds)
      for (const went of [false, true])
        expect(consider(findingOfFeeling({ kind, aspect: "medial", third: "distal" }, at, { went }))).not.toEqual([]);
    for (const key of checksOf(at)) expect(consider(findingOfCheck(key, at))).not.toEqual([]);
    for (const sign of stopSigns) expect(consider(findingOfStopSign(sign, at))[0]?.forbids).toBe(true);
    expect(consider(findingOfDisplacement(at))).not.toEqual([]);
    for (const joint of ["elbow-flexion", "forearm-rotation", "shoulder-flexion", "knee-flexion", "hip-extension", "jaw-opening"])
      expect(consider(findingOfMotion(joint, at))).not.toEqual([]);
    for (const pain of [1, 6.9, 7, 10]) {
      const finding = findingOfPain(pain, at);
      expect(finding && consider(finding).length).toBeGreaterThan(0);
    }
  });

  it("of a feeling of numbness or tingling forbids until it is written down that it went; cold forbids either way", () => {
    const forbids = (kind: (typeof feelingKinds)[number], went: boolean) =>
      consider(findingOfFeeling({ kind }, level, { went })).every((row) => row.forbids);
    expect([forbids("numbness", false), forbids("tingling", false), forbids("cold", false), forbids("cold", true)]).toEqual([
      true,
      true,
      true,
      true,
    ]);
    expect(forbids("numbness", true)).toBe(false);
  });

  // Cut point 7 on the 0–10 scale: common practice, no source.
  it("of pain is severe from the limit at which pain forbids", () => {
    const forbidsFrom = limitValue(defaultLimits, "pain-forbids");
    expect(findingOfPain(0, level)).toBeNull();
    expect(findingOfPain(forbidsFrom - 0.1, level)?.kind).toBe("pain");
    expect(findingOfPain(forbidsFrom, level)?.kind).toBe("severe-pain");
    for (const bad of [-1, 11, Number.NaN]) expect(() => findingOfPain(bad, level)).toThrow("pain");
  });

  it("of motion has the joint for a place where the level has it", () => {
    expect(findingOfMotion("elbow-flexion", "transradial").place).toBe("elbow");
    expect(findingOfMotion("elbow-flexion", "transtibial").place).toBeUndefined();
    expect(findingOfMotion("distal end-flexion", "transtibial")).toMatchObject({ kind: "loss-of-motion" });
    expect(consider(findingOfMotion("forearm-rotation", "wrist disarticulation"))[0]?.id).toBe("upper-forearm-rotation-limited");
  });
});

describe("a mark", () => {
  it("is looked up as all that it is, where it is", () => {
    const found = findingsOfMark(
      mark({ strength: "clear", firm: true, painful: true, warm: true, angleDeg: 90, distanceFromEndMm: 130, fadedAtMin: 8 }),
      look,
    );
    expect(found.map(({ kind }) => kind)).toEqual(["clear-mark", "firm-mark", "painful-mark", "warm-mark"]);
    for (const finding of found) expect(finding).toMatchObject({ aspect: "lateral", third: "proximal" });
    expect(considerEach(found)[0]?.id).toBe("lower-fibular-head");
  });

  it.each(strengths.filter((strength) => strength !== "none"))("of strength %s leads to a row at every level", (strength) => {
    for (const at of levels)
      expect(considerEach(findingsOfMark(mark({ strength }), { level: at, limbLengthMm: 150 }))).not.toEqual([]);
  });

  it("on dark skin that shows nothing is still one that is firm, warm or painful", () => {
    const seen = { strength: "none", fadedAtMin: 5 } as const;
    expect(findingsOfMark(mark(seen), look)).toEqual([]);
    for (const sign of ["firm", "warm", "painful"] as const)
      expect(findingsOfMark(mark({ ...seen, [sign]: true }), look)[0]?.kind).toBe(`${sign}-mark`);
  });

  it.each([
    [{ broken: true }, "broken-skin"],
    [{ strength: "purple" }, "purple-mark"],
    [{ blanches: "no", fadedAtMin: null }, "non-blanching"],
    [{ blanches: "no", fadedAtMin: 45 }, "non-blanching"],
  ] as const)("%j is looked up as that alone, however firm it is, so that no relief is offered", (bad, kind) => {
    const found = findingsOfMark(mark({ strength: "deep", firm: true, painful: true, ...bad }), look);
    expect(new Set(found.map((finding) => finding.kind))).toEqual(new Set([kind]));
    expect(considerEach(found).flatMap(({ adjustments }) => adjustments)).toEqual([]);
  });

  it("that did not blanch and was gone within 20 minutes is deep; seen at 20 minutes or later it forbids", () => {
    const faded = mark({ strength: "clear", blanches: "no", fadedAtMin: 12 });
    expect(findingsOfMark(faded, look).map(({ kind }) => kind)).toEqual(["deep-mark"]);
    expect(findingsOfMark(faded, { ...look, lookedAtMin: 20 }).map(({ kind }) => kind)).toEqual(["non-blanching"]);
  });

  // Fading within 20 minutes: clinic leaflets, common practice, no source.
  it("is late after 20 minutes, and at a look at 20 minutes", () => {
    const kinds = (fadedAtMin: number | null, lookedAtMin?: number) =>
      findingsOfMark(mark({ strength: "faint", fadedAtMin }), {
        ...look,
        ...(lookedAtMin === undefined ? {} : { lookedAtMin }),
      }).map(({ kind }) => kind);
    expect(kinds(20)).not.toContain("late-fading");
    expect(kinds(21)).toContain("late-fading");
    expect(kinds(null, 19)).not.toContain("late-fading");
    expect(kinds(null, 20)).toContain("late-fading");
  });

  it("at the end of the limb is at the distal end, and where a place is named it is there", () => {
    expect(findingsOfMark(mark({ distanceFromEndMm: 0, heightMm: 10, fadedAtMin: 3 }), look)[0]?.place).toBe("distal end");
    expect(findingsOfMark(mark({ fadedAtMin: 3 }), { ...look, place: "scar" })[0]).toMatchObject({ place: "scar" });
  });
});

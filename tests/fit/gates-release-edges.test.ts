/** The gates about what is carried and what must have been read, at their edges, and what they say. */
import { describe, expect, it } from "vitest";
import { assessReadiness, type Bundle, limitsWith, type SkinMark } from "@/lib/fit";
import { look, mark } from "./marks";
import { changed, fittingOf, gateOf, markOf, readyBundle, trialOf } from "./ready-bundle";

type Carried = Bundle["carried"][number];

const relief: Omit<Carried, "id"> = {
  kind: "relief",
  aspect: "anterior",
  third: "proximal",
  amount: 2,
  unit: "mm",
  reason: "A little room",
};
const carrying = (...adjustments: readonly Partial<Carried>[]) =>
  changed((bundle) => {
    bundle.carried = adjustments.map((adjustment, index) => ({ id: `c${index}`, ...relief, ...adjustment }));
  });

// At most three adjustments, each ≤ 3 mm, ≤ 1 % of volume, ≤ 10 mm of trim: clinic settings, common practice, no source.
describe("open-adjustments", () => {
  const gate = (...adjustments: readonly Partial<Carried>[]) => gateOf(carrying(...adjustments), "open-adjustments");
  const asked = { unit: "adjustments", limit: 3, source: "carry-limits", limitText: expect.stringContaining("at most 3") };

  it("is met where nothing is carried, and where what is carried is within its limits", () => {
    expect(gate()).toMatchObject({ ...asked, state: "met", value: 0, why: expect.stringMatching(/nothing is carried/i) });
    expect(gate({})).toMatchObject({ ...asked, state: "met", value: 1, why: expect.stringMatching(/^1 adjustment carried/) });
    expect(gate({}, {}, {})).toMatchObject({ state: "met", value: 3, why: expect.stringMatching(/^3 adjustments carried/) });
  });

  it.each<[string, Partial<Carried>, RegExp]>([
    ["a relief", { amount: 3.25 }, /relief anterior proximal: 3\.25 mm is more than 3/],
    ["a build-up, whichever its sign", { kind: "build-up", amount: -4 }, /build-up anterior proximal: 4 mm is more than 3/],
    ["volume", { kind: "volume", amount: -2, unit: "percent" }, /volume anterior proximal: 2 % is more than 1/],
    ["a trim", { kind: "trim", amount: 12 }, /trim anterior proximal: 12 mm is more than 10/],
    [
      "an adjustment without a place",
      { kind: "length", amount: 5, aspect: undefined, third: undefined },
      /length: 5 mm is more than 3/,
    ],
    ["an angle", { kind: "alignment", amount: -2, unit: "deg" }, /alignment anterior proximal: 2° has no limit/],
    ["a share that is not of the volume", { amount: 1, unit: "percent" }, /1 % has no limit/],
    ["volume in mm", { kind: "volume", amount: 1, unit: "mm" }, /1 mm has no limit/],
    ["one without an amount", { amount: undefined }, /relief anterior proximal: no amount is given/],
    ["one without a unit", { unit: undefined }, /no amount is given/],
    ["one without a reason", { reason: "  " }, /no reason is given/],
  ])("names %s that is too much, by how much, and asks for another check socket", (_, adjustment, why) => {
    const found = gate({ ...adjustment });
    expect(found).toMatchObject({ ...asked, state: "not met", value: 1, why: expect.stringMatching(why) });
    expect(found.why).toMatch(/another check socket/i);
  });

  it("says that four are too many, and names no other fault where there is none", () => {
    const found = gate({}, {}, {}, {});
    expect(found).toMatchObject({ ...asked, state: "not met", value: 4 });
    expect(found.why).toMatch(/^4 adjustments are carried\. Make another check socket/);
  });

  it("names every fault, each with its place", () => {
    const found = gate({ amount: 4 }, {}, { kind: "trim", aspect: "medial", amount: 11 });
    expect(found.why).toMatch(/^relief anterior proximal: 4 mm [^;]*; trim medial proximal: 11 mm [^;]*\. Make another/);
  });

  it("lets the clinic's own limits decide", () => {
    const limits = limitsWith({ "carry-mm": 1, "carry-most": 5 });
    const found = assessReadiness(carrying({}), limits).gates.find(({ id }) => id === "open-adjustments");
    expect(found).toMatchObject({ state: "not met", limit: 5, why: expect.stringContaining("2 mm is more than 1") });
  });
});

describe("an adjustment on a sore place", () => {
  const sore = (adjustment: Partial<Carried>, worse: Partial<SkinMark> = { strength: "deep" }) => {
    const bundle = carrying(adjustment);
    Object.assign(markOf(bundle, 0), worse);
    return gateOf(bundle, "open-adjustments");
  };
  const middle = { aspect: "anterior", third: "middle" } as const;

  it("is refused, and the place and the grade are named", () => {
    expect(sore(middle).why).toMatch(/^relief anterior middle: on a mark of grade 3 \(anterior middle\)/);
    expect(sore(middle, { broken: true }).why).toMatch(/on a mark of grade 4/);
    expect(sore(middle, { strength: "clear" }).state).toBe("met");
  });

  it("may touch the place by its third alone or its aspect alone, and does not where either differs", () => {
    const states = (
      [
        [{ aspect: undefined, third: "middle" }, "not met"],
        [{ aspect: "anterior", third: undefined }, "not met"],
        [{ aspect: "anterior", third: "proximal" }, "met"],
        [{ aspect: "lateral", third: "middle" }, "met"],
        [{ aspect: "lateral", third: undefined }, "met"],
        [{ aspect: undefined, third: "distal" }, "met"],
      ] as const
    ).map(([place, state]) => [sore(place).state, state]);
    for (const [found, expected] of states) expect(found).toBe(expected);
  });

  it("is refused where it answers the sore mark itself, wherever it is made, and not where it answers another mark", () => {
    const elsewhere = { aspect: "posterior", third: "distal" } as const;
    expect(sore({ ...elsewhere, answers: "mark:mk0" }).state).toBe("not met");
    expect(sore({ ...elsewhere, answers: "mark:mk90" }).state).toBe("met");
    expect(sore({ ...elsewhere, answers: "pain" }).state).toBe("met");
  });

  it("may be on the distal end, which every aspect's distal third borders", () => {
    const endSore = (place: Pick<Carried, "aspect" | "third">) => sore(place, { distanceFromEndMm: 3, strength: "deep" });
    expect(endSore({ aspect: "medial", third: "distal" })).toMatchObject({
      state: "not met",
      why: expect.stringContaining("(distal end)"),
    });
    expect(endSore({ aspect: undefined, third: "distal" }).state).toBe("not met");
    expect(endSore({ aspect: "medial", third: "proximal" }).state).toBe("met");
  });

  it("is refused for what any look showed: the last of the trial, or one at the fitting", () => {
    const deep = mark({ strength: "deep" });
    const second = carrying(middle);
    trialOf(second).inspections.push(look(12, deep));
    expect(gateOf(second, "open-adjustments").state).toBe("not met");
    const fitted = carrying(middle);
    fittingOf(fitted).inspections = [look(2, deep)];
    expect(gateOf(fitted, "open-adjustments").state).toBe("not met");
    const before = carrying(middle);
    before.fittings[0]?.inspections.push(look(2, deep));
    expect(gateOf(before, "open-adjustments").state).toBe("met");
  });

  it("is judged without a trial and without a fitting too", () => {
    const bare = carrying(middle);
    Object.assign(bare, { wearTrials: [], fittings: [] });
    expect(gateOf(bare, "open-adjustments")).toMatchObject({ state: "met", value: 1 });
  });

  it("is told its amount first: who carries too much on a sore place makes another socket anyway", () => {
    expect(sore({ ...middle, amount: 4 }).why).toContain("4 mm is more than 3");
  });
});

// A caution is read by a prosthetist before release: common practice, no source.
describe("cautions-reviewed", () => {
  type Caution = Bundle["episode"]["cautions"][number];
  const gate = (...cautions: Caution[]) =>
    gateOf(
      changed((bundle) => {
        bundle.episode.cautions = cautions;
      }),
      "cautions-reviewed",
    );
  const asked = { unit: "cautions", limit: 0, limitText: "none unread", source: "plain" };
  const read = { acknowledgedBy: "A. Prosthetist", acknowledgedAt: "2026-10-08T09:00:00Z" };

  it("is met where every caution was read by then, or none is recorded, and says which", () => {
    expect(gateOf(readyBundle(), "cautions-reviewed").why).toMatch(/^1 caution read/);
    expect(gate({ kind: "swelling", ...read }, { kind: "allergy", ...read })).toMatchObject({
      ...asked,
      state: "met",
      value: 0,
      why: expect.stringMatching(/^2 cautions read/),
    });
    expect(gate()).toMatchObject({ ...asked, state: "met", value: 0, why: expect.stringMatching(/no caution/i) });
  });

  it("names those that nobody has read, and only those", () => {
    const found = gate({ kind: "swelling" }, { kind: "allergy", ...read }, { kind: "fragile-skin", acknowledgedBy: "  " });
    expect(found).toMatchObject({ ...asked, state: "not met", value: 2 });
    expect(found.why).toMatch(/: swelling, fragile skin\.$/);
  });

  it("counts a reading at the very moment, not one just after, and one whose time nobody wrote", () => {
    expect(gate({ kind: "swelling", ...read }).state).toBe("met");
    expect(gate({ kind: "swelling", ...read, acknowledgedAt: "2026-10-08T09:00:01Z" }).state).toBe("not met");
    expect(gate({ kind: "swelling", acknowledgedBy: "A. Prosthetist" }).state).toBe("met");
    expect(gate({ kind: "swelling", acknowledgedAt: read.acknowledgedAt }).state).toBe("not met");
  });
});

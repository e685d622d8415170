import { describe, expect, it } from "vitest";
import {
  type AdjustmentOutcome,
  type Effect,
  fewestJudged,
  type KindRecord,
  outcomesOfAdjustments,
  parseBundle,
  recordOfKind,
  seriesOf,
} from "@/lib/fit";
import { readyBundle, socketOf } from "./ready-bundle";

const outcome = (effect: Effect, more: Partial<AdjustmentOutcome> = {}): AdjustmentOutcome => ({
  ...{ adjustmentId: "a1", kind: "relief", effect, together: false, elsewhere: false, limb: "no detectable change" },
  ...more,
});
const times = (count: number, effect: Effect, more: Partial<AdjustmentOutcome> = {}) =>
  Array.from({ length: count }, () => outcome(effect, more));

function counted(outcomes: readonly AdjustmentOutcome[]): KindRecord {
  const record = recordOfKind(outcomes);
  if (record.withheld !== null) throw new Error(`no count: ${record.withheld}`);
  return record;
}

describe("the outcomes of a series", () => {
  it("are those of the adjustments of each step, with the limb of that step", () => {
    const series = seriesOf(readyBundle());
    expect(outcomesOfAdjustments(series)).toEqual([
      {
        adjustmentId: "ad1",
        kind: "volume",
        effect: "worked",
        together: false,
        elsewhere: false,
        limb: series.steps[0]?.limb.state,
      },
    ]);
  });

  it("say what was made together with others that could have acted on the same", () => {
    const bundle = readyBundle();
    socketOf(bundle).adjustments.push({ id: "closer", kind: "closure", reason: "It slipped", answers: "displacement" });
    const found = outcomesOfAdjustments(seriesOf(parseBundle(bundle)));
    expect(found.map(({ kind, effect, together }) => [kind, effect, together])).toEqual([
      ["volume", "worked", true],
      ["closure", "worked", true],
    ]);
  });

  it("are none where no socket was made from another", () => {
    const bundle = readyBundle();
    for (const socket of bundle.sockets) delete socket.derivedFrom;
    expect(outcomesOfAdjustments(seriesOf(bundle))).toEqual([]);
  });

  it("say where a mark was much harder elsewhere, also of what was not measured itself", () => {
    const { steps } = seriesOf(readyBundle());
    const side = { place: "anterior middle", gradeBefore: 0, gradeAfter: 3 };
    const withMark = steps.map((step) => ({
      ...step,
      effects: step.effects.map((effect) => ({ ...effect, effect: "not measured" as const, sideEffects: [side] })),
    }));
    expect(outcomesOfAdjustments({ steps: withMark })).toMatchObject([{ effect: "not measured", elsewhere: true }]);
  });

  it("take the limb's state from the step as it is", () => {
    const { steps } = seriesOf(readyBundle());
    for (const state of ["changed", "no detectable change", "not known"] as const)
      expect(outcomesOfAdjustments({ steps: steps.map((step) => ({ ...step, limb: { ...step.limb, state } })) })).toMatchObject([
        { limb: state },
      ]);
  });
});

describe("the record of a kind", () => {
  // By hand: of 10, two were not measured. 8 were judged: 6 worked, 1 did not change, 1 was worse.
  // 6/8: z = 1.96, z² = 3.8416; (0.75 + 3.8416/16 ± 1.96·√(0.75·0.25/8 + 3.8416/256))/(1 + 3.8416/8) = (0.9901 ± 0.3842)/1.4802.
  it("counts by hand", () => {
    const record = counted([
      ...times(5, "worked"),
      outcome("worked", { together: true }),
      outcome("no detectable change", { limb: "changed" }),
      outcome("worse", { limb: "not known", together: true, elsewhere: true }),
      ...times(2, "not measured", { limb: "changed", together: true, elsewhere: true }),
    ]);
    expect(record).toMatchObject({
      judged: 8,
      worked: { count: 6, share: 0.75 },
      noDetectableChange: 1,
      worse: { count: 1, share: 0.125 },
      notMeasured: 2,
      together: 2,
      limbChanged: 1,
      limbNotKnown: 1,
      elsewhere: 3,
    });
    expect(record.worked.low).toBeCloseTo((0.9901 - 0.3842) / 1.4802, 3);
    expect(record.worked.high).toBeCloseTo((0.9901 + 0.3842) / 1.4802, 3);
  });

  it.each([
    // Newcombe, Stat Med 1998;17:857, table I, method 3: 15 of 148, 81 of 263, none of 20.
    [15, 148, 0.0624, 0.1605],
    [81, 263, 0.2553, 0.3662],
    [0, 20, 0, 0.1611],
  ])("gives both shares the published interval: %i of %i", (x, n, low, high) => {
    const worked = counted([...times(x, "worked"), ...times(n - x, "worse"), ...times(7, "not measured")]).worked;
    expect([worked.low.toFixed(4), worked.high.toFixed(4)]).toEqual([low.toFixed(4), high.toFixed(4)]);
    const worse = counted([...times(x, "worse"), ...times(n - x, "no detectable change"), ...times(7, "not measured")]).worse;
    expect([worse.low.toFixed(4), worse.high.toFixed(4)]).toEqual([low.toFixed(4), high.toFixed(4)]);
  });

  it("never lets what was not measured pass, and never counts it as a failure", () => {
    const without = counted([...times(4, "worked"), outcome("worse")]);
    const withMany = counted([...times(4, "worked"), outcome("worse"), ...times(40, "not measured")]);
    expect(withMany).toEqual({ ...without, notMeasured: 40 });
  });

  it("withholds every count below five that were judged, however many were not measured", () => {
    expect(fewestJudged).toBe(5);
    for (const outcomes of [[], times(4, "worked"), [...times(4, "worse"), ...times(30, "not measured")]])
      expect(recordOfKind(outcomes)).toEqual({ withheld: "fewer than five were judged" });
    expect(counted(times(5, "worked")).worked).toMatchObject({ count: 5, share: 1, high: 1 });
  });

  it("judged is the sum of what it names", () => {
    const { judged, worked, noDetectableChange, worse } = counted([
      ...times(3, "worked"),
      ...times(2, "no detectable change"),
      ...times(4, "worse"),
      outcome("not measured"),
    ]);
    expect(worked.count + noDetectableChange + worse.count).toBe(judged);
  });
});

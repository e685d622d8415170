/** What holds for every bundle: a worse finding never improves the decision, and nothing is ever judged by halves. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  acceptableGates,
  assessReadiness,
  type Bundle,
  type CheckAnswer,
  type Decision,
  decisions,
  gateIds,
  nextStep,
  parseBundle,
  replayWearTrial,
  stopSigns,
  strengths,
  upperLimbChecks,
} from "@/lib/fit";
import { acceptance, changed, checkInsOf, fittingOf, lookOf, stateOf, trialOf } from "./ready-bundle";
import { runs } from "./runs";

type Change = (bundle: Bundle) => void;

const rank = (decision: Decision): number => decisions.indexOf(decision);
const gapOf = (bundle: Bundle): number => replayWearTrial(trialOf(bundle).plan, trialOf(bundle).events).largestGapMinutes ?? 0;
const judged = (bundle: Bundle): Decision => assessReadiness(bundle).decision;

const rating = fc.integer({ min: 0, max: 10 });
const mostly = <T>(usual: T, other: fc.Arbitrary<T>) =>
  fc.oneof({ weight: 9, arbitrary: fc.constant(usual) }, { weight: 1, arbitrary: other });
const answers: readonly CheckAnswer[] = ["met", "concern", "not done", "not met"];

/** Of a check that was done, from the best to the worst. */
const found: readonly CheckAnswer[] = ["met", "concern", "not met"];

/** Findings as they come: most of them good, so that every decision is reached. */
const anyFindings = fc.record({
  comfort: mostly([8, 8, 9, 8], fc.array(rating, { minLength: 4, maxLength: 4 })),
  pain: mostly([0, 1, 0, 2], fc.array(rating, { minLength: 4, maxLength: 4 })),
  check: mostly<readonly [(typeof upperLimbChecks)[number], CheckAnswer]>(
    ["donning", "met"],
    fc.tuple(fc.constantFrom(...upperLimbChecks), fc.constantFrom(...answers)),
  ),
  displacementsMm: mostly([1.6, 2.1, 2.7], fc.array(fc.double({ min: 0, max: 14, noNaN: true }), { minLength: 3, maxLength: 3 })),
  motion: fc.record({ withoutDeg: fc.integer({ min: 120, max: 150 }), withDeg: mostly(131, fc.integer({ min: 80, max: 150 })) }),
  endedMinutes: mostly(20.5, fc.double({ min: 16, max: 30, noNaN: true })),
  checkInMinutes: mostly(
    [5, 10, 15, 20],
    fc
      .uniqueArray(fc.integer({ min: 1, max: 20 }), { minLength: 4, maxLength: 4 })
      .map((minutes) => minutes.sort((a, b) => a - b)),
  ),
  secondLookMinutes: mostly(8, fc.integer({ min: 6, max: 40 })),
  strengths: fc.array(mostly<(typeof strengths)[number]>("clear", fc.constantFrom(...strengths)), { minLength: 4, maxLength: 4 }),
  blanches: mostly<"yes" | "no" | "not tested">("yes", fc.constantFrom("no", "not tested")),
  fadedAtMin: mostly<number | null>(8, fc.option(fc.integer({ min: 6, max: 30 }))),
  loadKg: mostly(0.68, fc.double({ min: 0.2, max: 2, noNaN: true })),
  accepted: fc.subarray([...acceptableGates]),
  answered: fc.boolean(),
  caution: mostly("A. Prosthetist", fc.constant(" ")),
});

const minuteOf = (minutes: number): string => new Date(Date.UTC(2026, 9, 5, 10) + minutes * 60_000).toISOString();

function withFindings(given: typeof anyFindings extends fc.Arbitrary<infer Given> ? Given : never): Bundle {
  return changed((bundle) => {
    const trial = trialOf(bundle);
    for (const [index, event] of checkInsOf(bundle).entries())
      Object.assign(event, {
        comfort: given.comfort[index],
        pain: given.pain[index],
        at: minuteOf(given.checkInMinutes[index] ?? 0),
      });
    trial.events = trial.events.map((event) =>
      event.kind === "ended"
        ? { ...event, at: minuteOf(given.endedMinutes) }
        : event.kind === "doffed"
          ? { ...event, at: minuteOf(given.endedMinutes + 0.5) }
          : event,
    );
    trial.plan.loadKg = given.loadKg;
    const fitting = fittingOf(bundle);
    fitting.checks[given.check[0]] = given.check[1];
    fitting.pulls = fitting.pulls.map((pull, index) => ({ ...pull, displacementMm: given.displacementsMm[index] ?? 0 }));
    fitting.motion = [{ joint: "elbow-flexion", ...given.motion }];
    lookOf(bundle, 1).minutesAfterDoffing = given.secondLookMinutes;
    for (const [index, mark] of lookOf(bundle, 0).marks.entries())
      Object.assign(mark, { strength: given.strengths[index], blanches: given.blanches, fadedAtMin: given.fadedAtMin });
    for (const mark of lookOf(bundle, 1).marks) mark.fadedAtMin = given.fadedAtMin;
    bundle.acceptances = given.accepted.map((gate) => acceptance(gate));
    if (given.answered)
      bundle.carried = [
        {
          id: "c",
          kind: "relief",
          aspect: "anterior",
          third: "proximal",
          amount: 1,
          unit: "mm",
          reason: "A little room",
          answers: `check:${given.check[0]}`,
        },
      ];
    for (const caution of bundle.episode.cautions) caution.acknowledgedBy = given.caution;
  });
}

const anyBundle = anyFindings.map(withFindings);

/** One finding made worse; each says what it does to a bundle. */
const worsenings: Readonly<Record<string, fc.Arbitrary<Change>>> = {
  "a lower comfort": fc
    .record({ at: fc.nat(3), to: fc.double({ min: 0, max: 10, noNaN: true }) })
    .map(({ at, to }) => (bundle: Bundle) => {
      const event = checkInsOf(bundle)[at];
      if (event) event.comfort = Math.min(event.comfort, to);
    }),
  "a higher pain": fc
    .record({ at: fc.nat(3), to: fc.double({ min: 0, max: 10, noNaN: true }) })
    .map(({ at, to }) => (bundle: Bundle) => {
      const event = checkInsOf(bundle)[at];
      if (event) event.pain = Math.max(event.pain, to);
    }),
  "a stop sign": fc
    .record({ sign: fc.constantFrom(...stopSigns), minutes: fc.double({ min: -10, max: 5000, noNaN: true }) })
    .map(({ sign, minutes }) => (bundle: Bundle) => {
      trialOf(bundle).events.push({ id: "sign", at: minuteOf(minutes), kind: "stop-sign", sign });
    }),
  "a worse check": fc
    .record({ key: fc.constantFrom(...upperLimbChecks), answer: fc.constantFrom(...found) })
    .map(({ key, answer }) => (bundle: Bundle) => {
      const before = fittingOf(bundle).checks[key] ?? "not done";
      // What was not done can turn out either way; only what was not met is surely worse.
      fittingOf(bundle).checks[key] =
        before === "not done" ? "not met" : (found[Math.max(found.indexOf(before), found.indexOf(answer))] ?? "not met");
    }),
  "larger displacements": fc
    .record({ factor: fc.double({ min: 1, max: 4, noNaN: true }), moreMm: fc.double({ min: 0, max: 10, noNaN: true }) })
    .map(({ factor, moreMm }) => (bundle: Bundle) => {
      for (const pull of fittingOf(bundle).pulls) pull.displacementMm = pull.displacementMm * factor + moreMm;
    }),
  "a larger displacement at the hardest pull": fc.double({ min: 0, max: 10, noNaN: true }).map((moreMm) => (bundle: Bundle) => {
    for (const pull of fittingOf(bundle).pulls.slice(-1)) pull.displacementMm += moreMm;
  }),
  "more motion lost": fc
    .record({ lessDeg: fc.integer({ min: 0, max: 60 }), moreDeg: fc.integer({ min: 0, max: 30 }) })
    .map(({ lessDeg, moreDeg }) => (bundle: Bundle) => {
      for (const motion of fittingOf(bundle).motion)
        Object.assign(motion, { withDeg: motion.withDeg - lessDeg, withoutDeg: motion.withoutDeg + moreDeg });
    }),
  "fewer minutes": fc.double({ min: 0, max: 15, noNaN: true }).map((fewer) => (bundle: Bundle) => {
    trialOf(bundle).events = trialOf(bundle).events.map((event) =>
      event.kind === "ended" || event.kind === "doffed"
        ? { ...event, at: new Date(Date.parse(event.at) - fewer * 60_000).toISOString() }
        : event,
    );
  }),
  "a mark that is broken, purple or does not blanch": fc
    .record({
      look: fc.nat(1),
      mark: fc.nat(3),
      finding: fc.constantFrom({ broken: true }, { strength: "purple" as const }, { blanches: "no" as const }),
    })
    .map(
      ({ look, mark, finding }) =>
        (bundle: Bundle) =>
          void Object.assign(lookOf(bundle, look).marks[mark] ?? {}, finding),
    ),
};

describe("a worse finding never improves the decision", () => {
  it.each(Object.entries(worsenings))("%s", (name, worsening) => {
    fc.assert(
      fc.property(anyBundle, worsening, (bundle, worsen) => {
        const worse = structuredClone(bundle);
        worsen(worse);
        // The trend is a test of order: a worse value early on can hide it. Nothing else may be hidden.
        // Whoever ends a trial sooner leaves less time unwatched: that is better, not worse. A stop sign is worse all the same.
        fc.pre(name === "a stop sign" || gapOf(worse) >= gapOf(bundle));
        fc.pre(stateOf(bundle, "trend") !== "not met" || stateOf(worse, "trend") === "not met");
        expect(rank(judged(worse))).toBeLessThanOrEqual(rank(judged(bundle)));
      }),
      runs(),
    );
  });

  it("a longer gap", () => {
    fc.assert(
      fc.property(anyBundle, fc.nat(3), fc.double({ min: 0.01, max: 0.99, noNaN: true }), (bundle, at, share) => {
        const worse = structuredClone(bundle);
        const events = checkInsOf(worse);
        const moved = events[at];
        if (!moved) return;
        // To anywhere between its neighbours, so that the order of what was said stays.
        const beforeMs = Date.parse(events[at - 1]?.at ?? minuteOf(0));
        const afterMs = Date.parse(events[at + 1]?.at ?? minuteOf(16));
        moved.at = new Date(beforeMs + share * (afterMs - beforeMs)).toISOString();
        if (afterMs <= beforeMs || gapOf(worse) < gapOf(bundle)) return;
        expect(rank(judged(worse))).toBeLessThanOrEqual(rank(judged(bundle)));
      }),
      runs(),
    );
  });

  it("no high value early on hides a rise from the gates of comfort and pain", () => {
    // Whole ratings of four check-ins: in strict order and yet within the limits of pain there is one series, 0 1 2 3.
    fc.assert(
      fc.property(fc.array(rating, { minLength: 4, maxLength: 4 }), fc.nat(3), rating, (pains, at, to) => {
        const pained = (values: readonly number[]) =>
          changed((bundle) => {
            for (const [index, event] of checkInsOf(bundle).entries()) event.pain = values[index] ?? 0;
          });
        fc.pre(pains.join() !== "0,1,2,3");
        expect(rank(judged(pained(pains.map((pain, index) => (index === at ? Math.max(pain, to) : pain)))))).toBeLessThanOrEqual(
          rank(judged(pained(pains))),
        );
      }),
      runs(),
    );
  });
});

describe("every assessment", () => {
  it("has every gate in order, finite numbers, and the decision that follows from its gates", () => {
    fc.assert(
      fc.property(anyBundle, (bundle) => {
        const assessment = assessReadiness(bundle);
        expect(assessment.gates.map(({ id }) => id)).toEqual(gateIds);
        expect(JSON.stringify(assessment)).not.toMatch(/NaN|Infinity|undefined/);
        expect(JSON.parse(JSON.stringify(assessment))).toEqual(assessment);
        const open = assessment.gates.filter(({ accepted }) => accepted === undefined).map(({ state }) => state);
        const worst = (["forbids", "not met", "unknown"] as const).find((state) => open.includes(state));
        const expected = { forbids: "must not be released", "not met": "not ready", unknown: "not enough evidence" } as const;
        if (worst) expect(assessment.decision).toBe(expected[worst]);
        else
          expect(assessment.decision).toBe(
            open.length < gateIds.length || bundle.carried.length > 0 ? "ready with conditions" : "ready",
          );
        for (const { id, accepted, state } of assessment.gates)
          if (accepted)
            expect([acceptableGates.some((gate) => gate === id), state === "not met" || state === "unknown"]).toEqual([
              true,
              true,
            ]);
        expect(assessment.next.length > 0).toBe(!assessment.decision.startsWith("ready"));
        expect(nextStep(bundle, assessment).step).not.toBeNull();
      }),
      runs(),
    );
  });

  it("reaches every decision with these findings, so that the properties are not about one", () => {
    const reached = new Set(fc.sample(anyBundle, { numRuns: 600, seed: 20261008 }).map(judged));
    expect([...reached].sort()).toEqual([...decisions].sort());
  });

  it("is the same whatever the order of the records", () => {
    fc.assert(
      fc.property(anyBundle, fc.boolean(), (bundle, turned) => {
        const other = structuredClone(bundle);
        for (const list of [
          other.limbMeasurements,
          other.sockets,
          other.fittings,
          other.acceptances,
          trialOf(other).inspections,
          trialOf(other).events,
        ])
          if (turned) list.reverse();
        const { gates, decision, sentence } = assessReadiness(bundle);
        expect(assessReadiness(other)).toMatchObject({ decision, sentence, gates });
      }),
      runs(),
    );
  });
});

/** Evidence that may be missing; each takes a piece of it away. What a look shows stays as it was seen. */
const removals: Readonly<Record<string, fc.Arbitrary<Change>>> = {
  "an answer to a check": fc
    .constantFrom(...upperLimbChecks)
    .map((key) => (bundle: Bundle) => void delete fittingOf(bundle).checks[key]),
  "a pull": fc.nat(2).map((at) => (bundle: Bundle) => void fittingOf(bundle).pulls.splice(at, 1)),
  "the motion of a joint": fc.constant((bundle: Bundle) => {
    fittingOf(bundle).motion = [];
  }),
  "a fitting": fc.nat(1).map((at) => (bundle: Bundle) => void bundle.fittings.splice(at, 1)),
  "a limb measurement that no socket was made from": fc.constant((bundle: Bundle) => {
    for (const socket of bundle.sockets) delete socket.limbMeasurementId;
    bundle.limbMeasurements.pop();
  }),
  "a look at the skin": fc.nat(1).map((at) => (bundle: Bundle) => void trialOf(bundle).inspections.splice(at, 1)),
  "an event of the trial": fc.nat(6).map((at) => (bundle: Bundle) => void trialOf(bundle).events.splice(at, 1)),
  "the wear trial": fc.constant((bundle: Bundle) => {
    bundle.wearTrials = [];
  }),
  "the device": fc.constant((bundle: Bundle) => void delete bundle.episode.device),
  "who read a caution": fc.constant((bundle: Bundle) => {
    for (const caution of bundle.episode.cautions) delete caution.acknowledgedBy;
  }),
};

describe("unknown never becomes met by removing evidence", () => {
  it.each(Object.entries(removals))("%s", (_, removal) => {
    fc.assert(
      fc.property(anyBundle, removal, (bundle, remove) => {
        const less = structuredClone(bundle);
        remove(less);
        const [before, after] = [assessReadiness(bundle), assessReadiness(less)];
        before.gates.forEach((gate, index) => {
          if (gate.state === "unknown") expect([gate.id, after.gates[index]?.state]).not.toEqual([gate.id, "met"]);
        });
        if (before.decision === "not enough evidence") expect(after.decision).not.toMatch(/^ready/);
      }),
      runs(),
    );
  });
});

describe("what forbids, forbids", () => {
  const forbidding: Readonly<Record<string, fc.Arbitrary<Change>>> = {
    "a stop sign": fc.constantFrom(...stopSigns).chain((sign) =>
      fc.double({ min: -10, max: 5000, noNaN: true }).map((minutes) => (bundle: Bundle) => {
        trialOf(bundle).events.push({ id: "sign", at: minuteOf(minutes), kind: "stop-sign", sign });
      }),
    ),
    "broken skin": fc.record({ look: fc.nat(1), mark: fc.nat(3) }).map(({ look, mark }) => (bundle: Bundle) => {
      Object.assign(lookOf(bundle, look).marks[mark] ?? {}, { broken: true });
    }),
    "a purple mark": fc.record({ look: fc.nat(1), mark: fc.nat(3) }).map(({ look, mark }) => (bundle: Bundle) => {
      Object.assign(lookOf(bundle, look).marks[mark] ?? {}, { strength: "purple" });
    }),
  };

  it.each(Object.entries(forbidding))("%s, whatever else was found and accepted", (_, finding) => {
    fc.assert(
      fc.property(anyBundle, finding, (bundle, find) => {
        find(bundle);
        expect(judged(bundle)).toBe("must not be released");
      }),
      runs(),
    );
  });
});

it("a bundle written as JSON and read again is the same bundle", () => {
  fc.assert(
    fc.property(anyBundle, (bundle) => {
      const text = JSON.stringify(parseBundle(bundle));
      const again = parseBundle(JSON.parse(text));
      expect(again).toEqual(bundle);
      expect(JSON.stringify(again)).toBe(text);
    }),
    runs(),
  );
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { TrialEvent } from "@/lib/fit/bundle";
import { replayWearTrial } from "@/lib/fit/replay-wear-trial";
import { verdicts } from "@/lib/fit/replay-wear-trial-verdict";
import { aspects, feelingKinds, stopSigns, thirds } from "@/lib/fit/words";
import { runs } from "./runs";
import { goodTrial, minute, plan } from "./trial-events";

const id = fc.integer({ min: 0, max: 25 }).map((number) => `e${number}`);
const at = fc
  .oneof(fc.integer({ min: -3, max: 45 }), fc.double({ min: 0, max: 40, noNaN: true }))
  .chain((minutes) =>
    fc.constantFrom(minute(minutes), minute(minutes + 840).replace("Z", "+14:00"), minute(minutes - 210).replace("Z", "-03:30")),
  );
const rating = fc.integer({ min: 0, max: 10 });
const feeling = fc.record(
  { kind: fc.constantFrom(...feelingKinds), aspect: fc.constantFrom(...aspects), third: fc.constantFrom(...thirds) },
  { requiredKeys: ["kind"] },
);
const feelings = fc.array(feeling, { maxLength: 3 });
const ratings = { comfort: rating, pain: rating, exertion: rating, feelings };
const plainEvent = fc.record({ id, at, kind: fc.constantFrom("begun", "paused", "resumed", "ended", "doffed") });
const checkIn = fc.record({ id, at, kind: fc.constant("check-in"), ...ratings });
const correction = fc.record(
  { id, at, kind: fc.constant("corrected"), corrects: id, ...ratings },
  { requiredKeys: ["id", "at", "kind", "corrects"] },
);
const stopSign = fc.record({ id, at, kind: fc.constant("stop-sign"), sign: fc.constantFrom(...stopSigns) });

const events = (...arbitraries: fc.Arbitrary<TrialEvent>[]): fc.Arbitrary<TrialEvent[]> =>
  fc.oneof(
    fc.array(fc.oneof(...arbitraries), { maxLength: 30 }),
    fc.array(fc.oneof(...arbitraries), { maxLength: 4 }).map((some) => [...goodTrial, ...some]),
  );
const unstopped = events(plainEvent, checkIn, correction);
const anything = events(plainEvent, checkIn, checkIn, correction, stopSign);
const asOf = fc.option(at, { nil: undefined });
const replayed = (some: readonly TrialEvent[], until: string | undefined) => JSON.stringify(replayWearTrial(plan, some, until));

describe("whatever is recorded of a wear trial", () => {
  it("the order of arrival and repeats change nothing", () => {
    const shuffled = anything.chain((some) =>
      fc.tuple(fc.constant(some), fc.shuffledSubarray([...some, ...some], { minLength: 2 * some.length })),
    );
    fc.assert(
      fc.property(shuffled, asOf, ([some, twice], until) => {
        expect(replayed(twice, until)).toBe(replayed(some, until));
      }),
      runs(),
    );
  });

  it("there is a verdict, no throw, no NaN, and the numbers hang together", () => {
    fc.assert(
      fc.property(anything, asOf, (some, until) => {
        const trial = replayWearTrial(plan, some, until);
        expect(verdicts).toContain(trial.verdict);
        expect(JSON.stringify(trial)).not.toContain("NaN");
        for (const value of [trial.wornMinutes, trial.minutesToGo, trial.largestGapMinutes ?? 0])
          expect(Number.isFinite(value) && value >= 0).toBe(true);
        expect(trial.nextCheckInDueAt === null).toBe(trial.state !== "running");
        if (trial.verdict.startsWith("passed")) expect(trial).toMatchObject({ state: "ended", stopSigns: [] });
      }),
      runs(),
    );
  });

  it("a stop sign anywhere stops it, and nothing takes that back", () => {
    fc.assert(
      fc.property(unstopped, stopSign, asOf, (some, sign, until) => {
        expect(replayWearTrial(plan, [...some, sign], until)).toMatchObject({ state: "stopped", verdict: "stopped" });
      }),
      runs(),
    );
  });

  it("a check-in with pain of 7 or more, not put right, is never passed", () => {
    fc.assert(
      fc.property(anything, checkIn, asOf, (some, said, until) => {
        const hurting: TrialEvent = { ...said, id: "hurts", pain: 7 + (said.pain % 4) };
        expect(["not passed", "stopped"]).toContain(replayWearTrial(plan, [...some, hurting], until).verdict);
      }),
      runs(),
    );
  });

  it("worse ratings at a check-in never make a better verdict", () => {
    const rank = (some: readonly TrialEvent[], until: string | undefined) =>
      verdicts.indexOf(replayWearTrial(plan, some, until).verdict);
    const worsened = anything.chain((some) => fc.tuple(fc.constant(some), fc.nat(Math.max(0, some.length - 1)), rating, rating));
    fc.assert(
      fc.property(worsened, asOf, ([some, index, comfort, pain], until) => {
        const said = some[index];
        fc.pre(said?.kind === "check-in" && said.comfort >= comfort && said.pain <= pain);
        if (said?.kind !== "check-in") return;
        // A worse early value can make a trend look flatter; what is worst and last never looks better.
        const worse = some.map((event): TrialEvent => (event === said ? { ...said, comfort, pain } : event));
        const [before, after] = [replayWearTrial(plan, some, until).series, replayWearTrial(plan, worse, until).series];
        expect(after.pain.worst ?? 0).toBeGreaterThanOrEqual(before.pain.worst ?? 0);
        expect(after.comfort.worst ?? 0).toBeLessThanOrEqual(before.comfort.worst ?? 0);
        expect(after.comfort.last ?? 0).toBeLessThanOrEqual(before.comfort.last ?? 0);
        if (pain >= 7 && before.pain.worst !== null && (after.pain.worst ?? 0) >= 7)
          expect(rank(worse, until)).toBeGreaterThanOrEqual(verdicts.indexOf("not passed"));
      }),
      runs(),
    );
  });
});

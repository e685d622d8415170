/** An event whose time cannot have been so proves nothing good, and what it says that is bad still counts. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assessReadiness, type TrialEvent } from "@/lib/fit";
import { replayWearTrial } from "@/lib/fit/replay-wear-trial";
import { verdicts } from "@/lib/fit/replay-wear-trial-verdict";
import { changed, readyBundle, trialOf } from "./ready-bundle";
import { runs } from "./runs";
import { checkIn, corrected, goodTrial, minute, paused, plan, resumed, stopSign } from "./trial-events";

const misdated = (event: TrialEvent): TrialEvent => ({ ...event, misdated: true });
const trial = (...events: readonly TrialEvent[]) => replayWearTrial(plan, events);

describe("a misdated event", () => {
  it("begins nothing and ends nothing", () => {
    expect(trial(...goodTrial.map(misdated))).toMatchObject({ state: "planned", wornMinutes: 0, verdict: "incomplete" });
    const unended = goodTrial.filter(({ kind }) => kind !== "doffed");
    expect(trial(...unended.map((event) => (event.kind === "ended" ? misdated(event) : event))).state).toBe("running");
  });

  it("closes no gap", () => {
    const told = trial(...goodTrial.map((event) => (event.id === "check10" ? misdated(event) : event)));
    expect(told.largestGapMinutes).toBe(10);
  });

  it.each([
    ["pain", checkIn(-9000, { pain: 8 }), "not passed"],
    ["comfort", checkIn(9000, { comfort: 4 }), "not passed"],
    ["a stop sign", stopSign(-9000), "stopped"],
    ["pain in a correction", corrected(9000, "check10", { pain: 9 }), "not passed"],
  ])("counts where it is bad: %s", (_what, event, verdict) => {
    expect(trial(...goodTrial, misdated(event)).verdict).toBe(verdict);
  });

  it("does not take back what was bad by a correction", () => {
    const events = [...goodTrial, checkIn(12, { pain: 6 }), misdated(corrected(30, "check12", { pain: 0 }))];
    expect(trial(...events).verdict).toBe("not passed");
  });

  it("is told as a problem, once for all of them", () => {
    const why = (...events: TrialEvent[]) => trial(...goodTrial, ...events).problems.map((problem) => problem.why);
    expect(why(misdated(paused(900)))).toContainEqual(expect.stringMatching(/^1 event is dated when it cannot have been/));
    expect(why(misdated(paused(900)), misdated(resumed(901)))).toContainEqual(expect.stringMatching(/^2 events are dated when/));
    // As of an instant before it, it is not told a second time as being in the future.
    const { problems } = replayWearTrial(plan, [...goodTrial, misdated(paused(900))], minute(60));
    expect(problems.filter((problem) => problem.why.includes("dated"))).toHaveLength(1);
  });

  it("hides nothing that is bad, and lets no trial pass without a finding", () => {
    const some = fc.subarray([...goodTrial, checkIn(7, { pain: 4 }), paused(12), resumed(13), stopSign(17)]);
    const marked = some.chain((events) =>
      fc.tuple(fc.constant(events), fc.array(fc.boolean(), { minLength: 11, maxLength: 11 })),
    );
    fc.assert(
      fc.property(marked, ([events, wrong]) => {
        const after = trial(...events.map((event, index) => (wrong[index] ? misdated(event) : event)));
        const before = trial(...events);
        expect(after.series.pain.worst ?? 0).toBe(before.series.pain.worst ?? 0);
        expect(after.stopSigns.length).toBe(before.stopSigns.length);
        if (events.some((_, index) => wrong[index])) expect(verdicts.indexOf(after.verdict)).toBeGreaterThanOrEqual(1);
      }),
      runs(300),
    );
  });
});

describe("in an assessment", () => {
  it("a stop sign of no believable time is not taken for one of an earlier trial", () => {
    const judged = (at: string, wrong: boolean) =>
      assessReadiness(
        changed((bundle) => {
          const sign: TrialEvent = { id: "stop", at, kind: "stop-sign", sign: "numbness", ...(wrong ? { misdated: true } : {}) };
          bundle.wearTrials.push({ ...structuredClone(trialOf(bundle)), id: "wt2", inspections: [], events: [sign] });
        }),
      );
    expect(assessReadiness(readyBundle()).decision).toBe("ready");
    for (const at of ["1990-01-01T00:00:00Z", "2999-01-01T00:00:00Z"])
      expect(judged(at, true).gates.find(({ id }) => id === "no-stop-sign")?.state).toBe("forbids");
  });

  it("a trial without any event has no beginning", () => {
    const empty = changed((bundle) => {
      bundle.wearTrials.push({ ...structuredClone(trialOf(bundle)), id: "wt2", inspections: [], events: [] });
    });
    expect(assessReadiness(empty).decision).toBe(assessReadiness(readyBundle()).decision);
  });
});

/** What was felt in a wear trial: what stays, what is expected, and where it was. */
import { describe, expect, it } from "vitest";
import type { TrialEvent, TrialPlan } from "@/lib/fit/bundle";
import { replayWearTrial } from "@/lib/fit/replay-wear-trial";
import { begun, checkIn, ended, goodTrialBut, plan } from "./trial-events";

const replay = (events: readonly TrialEvent[], changed: Partial<TrialPlan> = {}, asOf?: string) =>
  replayWearTrial({ ...plan, ...changed }, events, asOf);
const reading = (about: string, events: readonly TrialEvent[], changed: Partial<TrialPlan> = {}, asOf?: string) =>
  replay(events, changed, asOf).reasons.find((reason) => reason.about === about);
describe("what was felt", () => {
  const felt = (
    ...at: readonly (readonly [minutes: number, kind: "numbness" | "tingling" | "cold" | "heat" | "muscle-fatigue"])[]
  ) => goodTrialBut(...at.map(([minutes, kind]) => checkIn(minutes, { feelings: [{ kind }] })));

  it.each(["numbness", "tingling", "cold"] as const)(
    "%s at two check-ins running is not met, at two apart it is a finding",
    (kind) => {
      expect(reading("feelings", felt([10, kind], [15, kind]))).toMatchObject({
        state: "not met",
        allows: "not passed",
        source: "stop-signs",
        why: expect.stringMatching(new RegExp(`^${kind} at two`)),
      });
      expect(reading("feelings", felt([10, kind], [20, kind]))).toMatchObject({
        state: "close",
        allows: "passed with findings",
        why: expect.stringContaining(`${kind} (2×)`),
      });
    },
  );

  it("heat at two check-ins running is a finding, tiredness is none, and a different feeling does not stay", () => {
    expect(reading("feelings", felt([10, "heat"], [15, "heat"]))).toMatchObject({ state: "close", why: "Felt: heat (2×)." });
    expect(reading("feelings", felt([10, "muscle-fatigue"]))).toMatchObject({
      state: "met",
      allows: "passed",
      source: "stop-signs",
      why: expect.stringMatching(/expected/),
    });
    expect(reading("feelings", felt([10, "cold"], [15, "numbness"]))?.state).toBe("close");
  });

  it("is unknown where nobody asked during the trial, but counts where it was said outside", () => {
    expect(reading("feelings", [begun(), ended(20), checkIn(30)])).toMatchObject({
      state: "unknown",
      allows: "incomplete",
      why: expect.stringMatching(/nobody asked/i),
    });
    expect(reading("feelings", [begun(), ended(20), checkIn(30, { feelings: [{ kind: "heat" }] })])?.state).toBe("close");
  });

  it("is counted by kind and place, once a check-in, with the first and the last minute", () => {
    const trial = replay(
      goodTrialBut(
        checkIn(5, {
          feelings: [
            { kind: "rubbing", aspect: "medial" },
            { kind: "rubbing", aspect: "medial" },
            { kind: "rubbing", third: "middle" },
          ],
        }),
        checkIn(15, { feelings: [{ kind: "rubbing", aspect: "medial" }] }),
      ),
    );
    expect(trial.feelings).toEqual([
      { kind: "rubbing", aspect: "medial", times: 2, firstWornMinutes: 5, lastWornMinutes: 15 },
      { kind: "rubbing", third: "middle", times: 1, firstWornMinutes: 5, lastWornMinutes: 5 },
    ]);
    expect(trial.reasons.find(({ about }) => about === "feelings")?.why).toBe("Felt: rubbing medial (2×), rubbing middle (1×).");
  });
});

/** Which version of an event holds where one id carries several contents. */
import { describe, expect, it } from "vitest";
import type { TrialEvent } from "@/lib/fit/bundle";
import { replayWearTrial } from "@/lib/fit/replay-wear-trial";
import {
  begun,
  checkIn,
  corrected,
  doffed,
  ended,
  goodTrial,
  goodTrialBut,
  minute,
  paused,
  plan,
  resumed,
  stopSign,
} from "./trial-events";

const replay = (events: readonly TrialEvent[], asOf?: string) => replayWearTrial(plan, events, asOf);
const problemsOf = (events: readonly TrialEvent[], asOf?: string) => replay(events, asOf).problems;

describe("one id with several contents", () => {
  const twice = (...versions: readonly TrialEvent[]) => versions.map((event) => ({ ...event, id: "x" }) as TrialEvent); // only the id is changed

  it("is named with how many there were, in the order of the ids", () => {
    const events = [...goodTrial, checkIn(10, { pain: 2 }), checkIn(10, { pain: 3 }), checkIn(15, { pain: 2 })];
    const expected = [
      { eventId: "check10", why: expect.stringMatching(/event check10 was sent with 3 different contents; the worst counts/) },
      { eventId: "check15", why: expect.stringMatching(/with 2 different contents/) },
    ];
    expect(problemsOf(events)).toEqual(expected);
    expect(problemsOf(events.toReversed())).toEqual(expected);
  });

  it("is no contradiction where only a note, the reporter, the order of the fields or the offset differ", () => {
    const { kind, ...rest } = checkIn(10);
    const same: TrialEvent[] = [
      { ...checkIn(10), note: "Sat down" },
      { ...checkIn(10), reportedBy: "carer" },
      { ...rest, kind },
      { ...checkIn(10), at: "2026-10-05T12:10:00+02:00" },
    ];
    expect(replay([...goodTrialBut(checkIn(10)), ...same])).toMatchObject({ problems: [], verdict: "passed" });
    expect(problemsOf([...goodTrialBut(checkIn(10)), checkIn(10, { feelings: [{ kind: "heat" }] })])).toHaveLength(1);
  });

  it("takes the worst of every rating and all that was felt, once, at the earliest of the times", () => {
    const [said] = replay([
      begun(),
      ...twice(
        checkIn(6, { comfort: 5, pain: 2, exertion: 3, feelings: [{ kind: "heat" }, { kind: "cold" }] }),
        checkIn(5, { comfort: 8, pain: 4, exertion: 7, feelings: [{ kind: "heat" }] }),
      ),
    ]).checkIns;
    expect(said).toMatchObject({ comfort: 5, pain: 4, exertion: 7, wornMinutes: 5, at: minute(5) });
    expect(said?.feelings.map(({ kind }) => kind).toSorted()).toEqual(["cold", "heat"]);
  });

  it.each<[string, TrialEvent[], object]>([
    ["a stop sign outweighs all", twice(doffed(9), stopSign(12), ended(3)), { state: "stopped", wornMinutes: 12 }],
    ["doffed outweighs ended", twice(ended(9), doffed(12)), { doffedAt: minute(12), wornMinutes: 12 }],
    ["ended outweighs paused", twice(paused(9), ended(12)), { state: "ended", wornMinutes: 12 }],
    ["paused outweighs a check-in", twice(checkIn(9), paused(12)), { state: "paused", wornMinutes: 12 }],
    ["a check-in outweighs resumed", [paused(4), ...twice(resumed(8), checkIn(12))], { state: "paused", wornMinutes: 4 }],
    ["the earlier end holds", twice(ended(12), ended(9)), { wornMinutes: 9 }],
    ["the later resumption holds", [paused(4), ...twice(resumed(6), resumed(8)), ended(20)], { wornMinutes: 16 }],
  ])("keeps the time of what leaves less wearing: %s", (_, events, expected) => {
    for (const order of [events, events.toReversed()]) expect(replay([begun(), ...order])).toMatchObject(expected);
  });

  it("keeps what is bad beside the version that holds the time, where it closes no gap", () => {
    const trial = replay([begun(), ...twice(ended(20), checkIn(10, { pain: 9 }), stopSign(15))]);
    expect(trial).toMatchObject({ state: "stopped", wornMinutes: 15, largestGapMinutes: 15 });
    expect(trial.checkIns).toMatchObject([{ pain: 9, during: false }]);
    expect(trial.stopSigns).toHaveLength(1);
  });

  it("holds corrections that contradict each other to what is worse", () => {
    const trial = replay([
      ...goodTrialBut(checkIn(10, { pain: 2 })),
      ...twice(corrected(11, "check10", { pain: 0 }), corrected(11, "check10", { pain: 3 })),
    ]);
    expect(trial.series.pain.worst).toBe(3);
    expect(trial.verdict).toBe("incomplete");
  });
});

import { describe, expect, it } from "vitest";
import { type Bundle, limitsWith, nextStep, type SocketState } from "@/lib/fit";
import { changed, checkInsOf, fittingOf, lookOf, markOf, readyBundle, socketOf, trialOf } from "./ready-bundle";

const stepOf = (change: (bundle: Bundle) => void) => nextStep(changed(change));
const signed =
  (meaning: "wear trial accepted" | "release for definitive fabrication", more: { at?: string; withdrawnAt?: string } = {}) =>
  (bundle: Bundle) => {
    bundle.signOffs = [
      ...(bundle.signOffs ?? []),
      {
        id: `sg${bundle.signOffs?.length ?? 0}`,
        socketId: "so2",
        meaning,
        by: "A. Prosthetist",
        at: "2026-10-07T09:00:00Z",
        ...more,
      },
    ];
  };
const inState = (state: SocketState, stateSince: string) => (bundle: Bundle) => {
  Object.assign(socketOf(bundle), { state, stateSince });
  bundle.fittings.pop();
  bundle.wearTrials = [];
};

describe("the next step", () => {
  it("measures a limb that nobody measured, then plans a socket", () => {
    const empty = (bundle: Bundle) => Object.assign(bundle, { sockets: [], fittings: [], wearTrials: [], limbMeasurements: [] });
    expect(stepOf(empty)).toMatchObject({ step: "measure", who: "assistant", dueOn: "2026-10-08" });
    const measured = (bundle: Bundle) => {
      const { limbMeasurements } = readyBundle();
      empty(bundle);
      bundle.limbMeasurements = limbMeasurements;
    };
    expect(stepOf(measured)).toMatchObject({ step: "plan a socket", who: "prosthetist", dueOn: "2026-10-03" });
    expect(
      stepOf((bundle) => {
        measured(bundle);
        bundle.asOf = "2026-12-01T09:00:00Z";
      }),
    ).toMatchObject({ step: "measure", dueOn: "2026-10-28" });
  });

  it.each([
    ["planned", "make", "technician", "2026-10-08"],
    ["being made", "send", "technician", "2026-10-08"],
    ["sent", "fit", "prosthetist", "2026-10-08"],
    ["at hand", "fit", "prosthetist", "2026-10-08"],
    ["retired", "plan a socket", "prosthetist", "2026-10-06"],
  ] as const)("of a socket that is %s since 1 October is to %s it", (state, step, who, dueOn) => {
    expect(stepOf(inState(state, "2026-10-01T10:00:00Z"))).toMatchObject({ step, who, dueOn });
  });

  it("fits a socket that came back after its last fitting, and one that nobody fitted", () => {
    expect(
      stepOf((bundle) => {
        Object.assign(socketOf(bundle), { state: "at hand", stateSince: "2026-10-06T08:00:00Z" });
      }),
    ).toMatchObject({ step: "fit", dueOn: "2026-10-13" });
    expect(
      stepOf((bundle) => {
        Object.assign(socketOf(bundle), { state: "at hand", stateSince: "2026-10-05T08:00:00Z" });
      }).step,
    ).toBe("sign");
    expect(
      stepOf((bundle) => {
        bundle.fittings.pop();
        bundle.wearTrials = [];
      }).step,
    ).toBe("fit");
  });

  it("begins a trial of a socket that fits, and alters one that does not", () => {
    const untried = (bundle: Bundle) => {
      bundle.wearTrials = [];
    };
    expect(stepOf(untried)).toMatchObject({ step: "begin trial", dueOn: "2026-10-12" });
    expect(
      stepOf((bundle) => {
        untried(bundle);
        fittingOf(bundle).checks.rotation = "not met";
      }),
    ).toMatchObject({ step: "alter or remake", why: expect.stringContaining("rotation") });
    expect(
      stepOf((bundle) => {
        untried(bundle);
        fittingOf(bundle).pulls = [];
      }),
    ).toMatchObject({ step: "fit" });
    expect(
      stepOf((bundle) => {
        untried(bundle);
        trialOf(readyBundle());
        bundle.asOf = "2026-11-08T09:00:00Z";
      }),
    ).toMatchObject({ step: "measure" });
  });

  it("finishes a trial that is worn", () => {
    const running = stepOf((bundle) => {
      trialOf(bundle).events = trialOf(bundle).events.slice(0, 3);
      bundle.asOf = "2026-10-05T10:12:00Z";
    });
    expect(running).toMatchObject({ step: "finish trial", who: "assistant", why: "A wear trial of socket 2 is running." });
  });

  it("looks at the skin again while it still tells, and repeats the trial afterwards", () => {
    const unlooked = (asOf: string) => (bundle: Bundle) => {
      trialOf(bundle).inspections.pop();
      for (const mark of lookOf(bundle, 0).marks) mark.fadedAtMin = null;
      bundle.asOf = asOf;
    };
    expect(stepOf(unlooked("2026-10-05T10:30:00Z"))).toMatchObject({ step: "inspect", who: "assistant", dueOn: "2026-10-05" });
    expect(stepOf(unlooked("2026-10-06T10:30:00Z")).step).toBe("begin trial");
  });

  it("alters or remakes what forbids, and what falls short in the trial", () => {
    expect(
      stepOf((bundle) => {
        markOf(bundle, 0).broken = true;
      }),
    ).toMatchObject({ step: "alter or remake", why: expect.stringContaining("Must not be released") });
    expect(
      stepOf((bundle) => {
        for (const event of checkInsOf(bundle)) event.comfort = 5;
      }).step,
    ).toBe("alter or remake");
    expect(
      stepOf((bundle) => {
        trialOf(bundle).plan.minutes = 60;
      }).step,
    ).toBe("begin trial");
  });

  it("signs what is ready, or what a prosthetist has to read; what may be accepted is still asked for", () => {
    expect(nextStep(readyBundle())).toEqual({
      step: "sign",
      who: "prosthetist",
      dueOn: "2026-10-08",
      why: "Ready: every check is met.",
    });
    expect(
      stepOf((bundle) => {
        trialOf(bundle).plan.loadKg = 1;
      }),
    ).toMatchObject({ step: "begin trial", why: expect.stringContaining("would match") });
    expect(stepOf((bundle) => void bundle.episode.cautions.push({ kind: "allergy" }))).toMatchObject({
      step: "sign",
      why: expect.stringContaining("allergy"),
    });
  });

  it("releases what was accepted since the trial, and delivers what was released", () => {
    expect(stepOf(signed("wear trial accepted"))).toMatchObject({ step: "release", dueOn: "2026-10-10" });
    expect(stepOf(signed("wear trial accepted", { at: "2026-10-01T09:00:00Z" })).step).toBe("sign");
    expect(stepOf(signed("wear trial accepted", { withdrawnAt: "2026-10-07T10:00:00Z" })).step).toBe("sign");
    expect(stepOf(signed("release for definitive fabrication"))).toMatchObject({ step: "deliver", dueOn: "2026-11-04" });
    expect(stepOf(signed("release for definitive fabrication", { withdrawnAt: "2026-10-07T10:00:00Z" })).step).toBe("sign");
    expect(
      stepOf((bundle) => {
        signed("release for definitive fabrication")(bundle);
        bundle.deliveredAt = "2026-10-08T08:00:00Z";
      }),
    ).toMatchObject({ step: null, who: null, dueOn: null });
    expect(
      stepOf((bundle) => {
        signed("release for definitive fabrication")(bundle);
        bundle.deliveredAt = "2026-10-09T08:00:00Z";
      }).step,
    ).toBe("deliver");
  });

  it("releases nothing that is no longer ready, whoever accepted it before", () => {
    expect(
      stepOf((bundle) => {
        signed("wear trial accepted")(bundle);
        bundle.asOf = "2026-12-01T09:00:00Z";
      }).step,
    ).toBe("begin trial");
  });

  it("is due by the clinic's own days, on the day in the clinic's zone", () => {
    const planned = changed(inState("planned", "2026-10-01T23:30:00Z"));
    expect(nextStep(planned).dueOn).toBe("2026-10-09");
    expect(nextStep({ ...planned, clinic: { timeZone: "UTC" } }).dueOn).toBe("2026-10-08");
    expect(nextStep(planned, undefined, limitsWith({ "make-days": 3 })).dueOn).toBe("2026-10-05");
    expect(() => nextStep({ ...planned, clinic: { timeZone: "Lisbon" } })).toThrow("clinic.timeZone");
  });
});

/** The decision over all gates: order, acceptances, the instant it is made for, what would change it. */
import { describe, expect, it } from "vitest";
import { acceptableGates, assessReadiness, type Bundle, FitInputError, type GateId, gateIds } from "@/lib/fit";
import {
  acceptance,
  changed,
  checkInsOf,
  decisionOf,
  fittingOf,
  gateOf,
  lookOf,
  markOf,
  readyBundle,
  socketOf,
  stateOf,
  trialOf,
} from "./ready-bundle";

const unevenMarks = (bundle: Bundle) => {
  markOf(bundle, 0).strength = "deep";
};
const longGap = (bundle: Bundle) => {
  trialOf(bundle).events = trialOf(bundle).events.filter(({ id }) => id !== "e10");
};
const heavyLoad = (bundle: Bundle) => {
  trialOf(bundle).plan.loadKg = 1;
};
const oneMeasurement = (bundle: Bundle) => {
  bundle.limbMeasurements.shift();
  delete bundle.sockets[0]?.limbMeasurementId;
};
const noReason = (bundle: Bundle) => {
  for (const adjustment of socketOf(bundle).adjustments) adjustment.reason = "";
};
const stopSign = (bundle: Bundle) =>
  void trialOf(bundle).events.push({ id: "s", at: "2026-10-05T10:12:00Z", kind: "stop-sign", sign: "cold" });
const lowComfort = (bundle: Bundle) => {
  for (const event of checkInsOf(bundle)) event.comfort = 6;
};
const noPulls = (bundle: Bundle) => {
  fittingOf(bundle).pulls = [];
};
const smallRelief = (bundle: Bundle) => {
  bundle.carried = [
    { id: "c", kind: "relief", aspect: "anterior", third: "proximal", amount: 2, unit: "mm", reason: "A little room" },
  ];
};
const all = (...changes: readonly ((bundle: Bundle) => void)[]) =>
  changed((bundle) => {
    for (const change of changes) change(bundle);
  });

describe("the decision", () => {
  it.each([
    ["forbids before all else", [stopSign, lowComfort, noPulls, smallRelief], "must not be released"],
    ["not met before unknown", [lowComfort, noPulls, smallRelief], "not ready"],
    ["unknown before conditions", [noPulls, smallRelief], "not enough evidence"],
    ["a carried adjustment is a condition", [smallRelief], "ready with conditions"],
    ["nothing open, nothing carried", [], "ready"],
  ] as const)("%s", (_, changes, decision) => expect(decisionOf(all(...changes))).toBe(decision));

  it("says what is open in a sentence, and names what is close to its limit", () => {
    expect(assessReadiness(all(lowComfort, heavyLoad, noPulls)).sentence).toBe(
      "Not ready: two checks are not met and one check is unknown.",
    );
    expect(assessReadiness(all(stopSign)).sentence).toBe("Must not be released: forbidden by a stop sign.");
    const close = changed((bundle) => {
      fittingOf(bundle).motion = [{ joint: "elbow-flexion", withoutDeg: 138, withDeg: 107 }];
    });
    expect(assessReadiness(close)).toMatchObject({
      decision: "ready",
      sentence: "Ready: every check is met. Close to the limit: motion.",
    });
    expect(assessReadiness(all(smallRelief)).sentence).toBe(
      "Ready with conditions: one adjustment is carried into the definitive socket.",
    );
  });

  it("never depends on the index: one that is zero changes nothing", () => {
    // A socket that keeps 110° passes its gate and loses 28° of 138°, of which the index makes nothing.
    const bundle = changed((changing) => {
      fittingOf(changing).motion = [{ joint: "elbow-flexion", withoutDeg: 138, withDeg: 110 }];
    });
    expect(assessReadiness(bundle)).toMatchObject({ decision: "ready", index: { value: 0, low90: 0 } });
  });

  it("has an index from the evidence of the gates: the geometric mean of 0.8, 0.75, 0.7326, 0.8, 0.65 and 1", () => {
    const { index } = assessReadiness(readyBundle());
    // Least squares through (22, 1.6) (34, 2.1) (45, 2.7) by hand: mean 2.13333, slope 12.6333/264.667, 11.3333 N further.
    const displacementMm = 2.13333 + (12.6333 / 264.667) * 11.3333;
    expect(index.components.find(({ id }) => id === "displacement")?.value).toBeCloseTo(displacementMm, 4);
    expect(index.value).toBeCloseTo((0.8 * 0.75 * (1 - displacementMm / 10) * 0.8 * 0.65) ** (1 / 6), 5);
    expect(index.missing).toEqual([]);
    expect(assessReadiness(all(noPulls)).index).toMatchObject({ missing: ["displacement under load"] });
    expect(assessReadiness(all(noPulls)).index.value).toBeUndefined();
  });
});

describe("acceptances", () => {
  it.each([
    ["limb-settled", oneMeasurement],
    ["socket-described", noReason],
    ["trial-load", heavyLoad],
    ["checked-often-enough", longGap],
    ["marks-even", unevenMarks],
  ] as const)("%s may be accepted with a reason", (gate, change) => {
    expect(["not ready", "not enough evidence"]).toContain(decisionOf(all(change)));
    const bundle = all(change, (changing) => void changing.acceptances.push(acceptance(gate)));
    expect(decisionOf(bundle)).toBe("ready with conditions");
    expect(gateOf(bundle, gate).accepted).toEqual({
      by: "A. Prosthetist",
      at: "2026-10-08T08:00:00Z",
      why: "Seen and judged on the limb",
    });
  });

  it("count for no other gate", () => {
    const others = gateIds.filter((id) => !(acceptableGates as readonly GateId[]).includes(id));
    const broken = all(lowComfort, noPulls, (bundle) => {
      fittingOf(bundle).motion = [];
      fittingOf(bundle).checks.seating = "not met";
      bundle.asOf = "2026-12-01T00:00:00Z";
      trialOf(bundle).inspections = [];
      bundle.episode.cautions.push({ kind: "swelling" });
      bundle.acceptances = others.map((gate) => acceptance(gate));
    });
    const { gates, decision } = assessReadiness(broken);
    expect(decision).toBe("not ready");
    expect(gates.filter(({ accepted }) => accepted !== undefined)).toEqual([]);
  });

  it("never count against what forbids, nor on a gate that is met", () => {
    const everything = (bundle: Bundle) => {
      bundle.acceptances = gateIds.map((gate) => acceptance(gate));
    };
    expect(decisionOf(all(stopSign, everything))).toBe("must not be released");
    const met = assessReadiness(all(everything));
    expect(met.decision).toBe("ready");
    expect(met.gates.some(({ accepted }) => accepted !== undefined)).toBe(false);
  });

  it.each([
    ["dated after the decision", acceptance("marks-even", "2026-10-08T09:00:01Z")],
    ["dated before the marks were seen", acceptance("marks-even", "2026-10-05T10:21:00Z")],
    ["by nobody", { ...acceptance("marks-even"), by: " " }],
    ["without a reason", { ...acceptance("marks-even"), why: "\n" }],
    ["of another gate", acceptance("trial-load")],
  ])("do not count %s", (_, given) => {
    expect(decisionOf(all(unevenMarks, (bundle) => void bundle.acceptances.push(given)))).toBe("not ready");
  });

  it("of a socket before it was tried do not count for it", () => {
    const accepted = (at: string) =>
      decisionOf(all(noReason, (bundle) => void bundle.acceptances.push(acceptance("socket-described", at))));
    expect(accepted("2026-10-05T09:59:59Z")).toBe("not ready");
    expect(accepted("2026-10-05T10:00:00Z")).toBe("ready with conditions");
  });

  it("the latest that counts is named", () => {
    const bundle = all(
      unevenMarks,
      (changing) =>
        void changing.acceptances.push(
          { ...acceptance("marks-even", "2026-10-07T08:00:00Z"), by: "B" },
          { ...acceptance("marks-even", "2026-10-06T08:00:00Z"), by: "A" },
        ),
    );
    expect(gateOf(bundle, "marks-even").accepted?.by).toBe("B");
  });
});

describe("the subject", () => {
  it("is the socket with the highest number, wherever it stands, or the one that is named", () => {
    const bundle = changed((changing) => void changing.sockets.reverse());
    expect(assessReadiness(bundle).subject).toMatchObject({ socketId: "so2", trialId: "wt1", fittingId: "fi2" });
    const first = assessReadiness(bundle, undefined, undefined, { socketId: "so1" });
    expect(first).toMatchObject({ decision: "not ready", subject: { socketId: "so1", number: 1, fittingId: "fi1" } });
    expect(first.subject).not.toHaveProperty("trialId");
    expect(() => assessReadiness(bundle, undefined, undefined, { socketId: "so9" })).toThrow(
      new FitInputError("socketId", "no socket has the id so9"),
    );
  });

  it("is not ready by the trial of another socket", () => {
    const bundle = changed(
      (changing) =>
        void changing.sockets.push({
          ...structuredClone(socketOf(changing)),
          id: "so3",
          number: 3,
          derivedFrom: "so2",
          adjustments: [],
        }),
    );
    expect(assessReadiness(bundle)).toMatchObject({ decision: "not enough evidence", subject: { socketId: "so3" } });
  });

  it("is judged by its latest trial that ended, in whatever order the trials stand", () => {
    const again = changed((changing) => {
      const earlier = structuredClone(trialOf(changing));
      changing.wearTrials.push({
        ...earlier,
        id: "wt0",
        inspections: [],
        events: [
          { id: "b", at: "2026-10-04T10:00:00Z", kind: "begun" },
          { id: "s", at: "2026-10-04T10:05:00Z", kind: "stop-sign", sign: "wearer-asks" },
        ],
      });
    });
    expect(assessReadiness(again)).toMatchObject({ decision: "ready", subject: { trialId: "wt1" } });
    const worse = changed((changing) => {
      changing.wearTrials.unshift({
        ...structuredClone(trialOf(changing)),
        id: "wt2",
        inspections: [],
        events: [
          { id: "b", at: "2026-10-06T10:00:00Z", kind: "begun" },
          { id: "s", at: "2026-10-06T10:05:00Z", kind: "stop-sign", sign: "wearer-asks" },
        ],
      });
    });
    expect(assessReadiness(worse)).toMatchObject({ decision: "must not be released", subject: { trialId: "wt2" } });
  });

  it("is judged by its latest fitting", () => {
    const bundle = changed(
      (changing) =>
        void changing.fittings.unshift({
          ...structuredClone(fittingOf(changing)),
          id: "fi3",
          at: "2026-10-06T09:00:00Z",
          pulls: [{ loadN: 45, displacementMm: 14 }],
        }),
    );
    expect(assessReadiness(bundle).subject?.fittingId).toBe("fi3");
    expect(stateOf(bundle, "suspension")).toBe("not met");
  });
});

describe("the instant", () => {
  it("makes evidence old: ready until 28 days after the trial, and it says until when", () => {
    const bundle = readyBundle();
    expect(assessReadiness(bundle).staleOn).toBe("2026-11-02T10:20:30.000Z");
    expect(decisionOf(bundle, "2026-11-02T10:20:30Z")).toBe("ready");
    expect(decisionOf(bundle, "2026-11-02T10:20:31Z")).toBe("not ready");
    expect(decisionOf(bundle, "2026-11-02T11:20:31+01:00")).toBe("not ready");
    expect(assessReadiness(bundle, undefined, "2026-11-02T10:20:31Z").staleOn).toBeNull();
  });

  it("leaves out what had not yet happened", () => {
    expect(decisionOf(readyBundle(), "2026-10-05T10:10:00Z")).toBe("not enough evidence");
    expect(decisionOf(readyBundle(), "2026-09-15T00:00:00Z")).toBe("not enough evidence");
    expect(stateOf(readyBundle(), "skin-inspected", "2026-10-05T10:25:00Z")).toBe("unknown");
  });

  it("hides nothing that forbids behind a date to come", () => {
    expect(decisionOf(all(stopSign), "2026-10-05T10:11:00Z")).toBe("must not be released");
  });

  it.each(["yesterday", "2026-10-08", "2026-10-08T09:00:00", "2026-02-30T09:00:00Z", ""])("is refused as %j", (asOf) => {
    expect(() => assessReadiness(readyBundle(), undefined, asOf)).toThrow("asOf");
  });

  it("tells when a child with a limb difference comes of age", () => {
    const bundle = all(oneMeasurement, (changing) =>
      Object.assign(changing.episode, { cause: "congenital", birthOn: "2008-10-20" }),
    );
    expect(assessReadiness(bundle).staleOn).toBe("2026-10-20T00:00:00.000Z");
  });
});

describe("what would change the decision", () => {
  it("asks for one thing where one thing settles all that is open", () => {
    const bundle = changed((changing) => {
      changing.wearTrials = [];
    });
    expect(assessReadiness(bundle).next).toEqual([
      { gate: "trial-load", action: "Run a wear trial", why: "No wear trial of socket 2 has ended." },
    ]);
  });

  it("asks for a look at the skin while it still tells, and for another trial afterwards", () => {
    const unlooked = changed((changing) => {
      lookOf(changing, 1).marks = [];
      lookOf(changing, 1).minutesAfterDoffing = 12;
      for (const mark of lookOf(changing, 0).marks) mark.fadedAtMin = null;
    });
    const [soon] = assessReadiness(unlooked, undefined, "2026-10-05T10:40:00Z").next;
    expect(soon).toMatchObject({
      gate: "skin-inspected",
      action: "Inspect the skin again",
      why: expect.stringContaining("no look after 12 min"),
    });
    expect(assessReadiness(unlooked).next[0]?.action).toContain("Run another wear trial");
  });

  it("does not ask for another trial of a socket that has to be made again", () => {
    const actions = assessReadiness(all(lowComfort, heavyLoad)).next.map(({ action }) => action);
    expect(actions).toEqual(["Make another check socket"]);
  });

  it("asks first for what forbids, and asks for nothing where the socket is ready", () => {
    const [first] = assessReadiness(
      changed((bundle) => {
        markOf(bundle, 0).broken = true;
      }),
    ).next;
    expect(first).toMatchObject({ gate: "skin-intact", action: expect.stringContaining("Call the physician") });
    expect(assessReadiness(all(smallRelief)).next).toEqual([]);
  });

  it("says where a prosthetist may accept what is open", () => {
    expect(assessReadiness(all(heavyLoad)).next[0]?.why).toContain("may accept it with a reason");
    expect(assessReadiness(all(lowComfort)).next[0]?.why).not.toContain("accept");
  });

  it("names an open gate in every decision that is not ready", () => {
    for (const bundle of [all(stopSign), all(lowComfort), all(noPulls), all(oneMeasurement), all(longGap), all(noReason)]) {
      const { next, gates } = assessReadiness(bundle);
      expect(next.length).toBeGreaterThan(0);
      for (const { gate, action } of next) {
        expect(action.length).toBeGreaterThan(5);
        expect(["not met", "unknown", "forbids"]).toContain(gates.find(({ id }) => id === gate)?.state);
      }
    }
  });
});

describe("what cannot be judged", () => {
  it("is refused with its path: a bundle is checked, whoever made it", () => {
    const negative = changed((bundle) => {
      for (const station of bundle.limbMeasurements[0]?.stations ?? []) station.circumferenceMm = -1;
    });
    expect(() => assessReadiness(negative)).toThrow("limbMeasurements[0].stations[0].circumferenceMm");
    const offScale = changed((bundle) => {
      for (const event of checkInsOf(bundle)) event.pain = 11;
    });
    expect(() => assessReadiness(offScale)).toThrow("wearTrials[0].events[1].pain");
  });
});

/** Each gate in each of its states, one finding away from a socket that is ready. */
import { describe, expect, it } from "vitest";
import { assessReadiness, type Bundle, type CheckKey, checksOf, type GateId, gateIds, type ReadingState } from "@/lib/fit";
import {
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

type Case = readonly [finding: string, state: ReadingState, change: (bundle: Bundle) => void];

/** Everything but the gates named stays as it was. */
function onlyThese(bundle: Bundle, ids: readonly GateId[]) {
  return assessReadiness(bundle)
    .gates.filter(({ id, state }) => !ids.includes(id) && state !== "met" && state !== "close")
    .map(({ id }) => id);
}

const gateCases = (id: GateId, cases: readonly Case[], alsoOpen: readonly GateId[] = []) =>
  describe(id, () => {
    it.each(cases)("%s: %s", (_, state, change) => {
      const bundle = changed(change);
      expect(stateOf(bundle, id)).toBe(state);
      expect(onlyThese(bundle, [id, ...alsoOpen])).toEqual([]);
    });
  });

const shiftDays = (bundle: Bundle, days: number) => {
  const trial = trialOf(bundle);
  const later = (at: string) => new Date(Date.parse(at) + days * 86_400_000).toISOString();
  trial.events = trial.events.map((event) => ({ ...event, at: later(event.at) }));
  trial.inspections = trial.inspections.map((look) => ({ ...look, at: later(look.at) }));
  bundle.asOf = later(bundle.asOf);
};
const rate = (bundle: Bundle, scale: "comfort" | "pain", values: readonly number[]) => {
  for (const [index, event] of checkInsOf(bundle).entries()) event[scale] = values[index] ?? event[scale];
};
const eventAt = (bundle: Bundle, id: string, at: string) => {
  trialOf(bundle).events = trialOf(bundle).events.map((event) => (event.id === id ? { ...event, at } : event));
};
const dropEvents = (bundle: Bundle, ...ids: string[]) => {
  trialOf(bundle).events = trialOf(bundle).events.filter(({ id }) => !ids.includes(id));
};
const dropLook = (bundle: Bundle, index: number) => void trialOf(bundle).inspections.splice(index, 1);
const allMarks = (bundle: Bundle) => trialOf(bundle).inspections.flatMap(({ marks }) => marks);
const scaleLimb = (bundle: Bundle, percent: number, at: string) => {
  const last = bundle.limbMeasurements[1];
  if (!last) throw new Error("no second measurement");
  bundle.limbMeasurements.push({
    ...structuredClone(last),
    id: `lm${bundle.limbMeasurements.length + 1}`,
    at,
    stations: last.stations.map((station) => ({
      ...station,
      circumferenceMm: station.circumferenceMm * Math.sqrt(1 + percent / 100),
    })),
  });
};

it("the example is ready: every gate met, in the order of the method", () => {
  const assessment = assessReadiness(readyBundle());
  expect(assessment).toMatchObject({
    decision: "ready",
    sentence: "Ready: every check is met.",
    next: [],
    subject: { socketId: "so2", number: 2, trialId: "wt1", fittingId: "fi2" },
  });
  expect(assessment.gates.map(({ id }) => id)).toEqual(gateIds);
  expect(new Set(assessment.gates.map(({ state }) => state))).toEqual(new Set(["met"]));
  expect(JSON.parse(JSON.stringify(assessment))).toEqual(assessment);
});

gateCases(
  "limb-measured",
  [
    ["30 days before the trial", "met", (bundle) => shiftDays(bundle, 22.95)],
    ["31 days before", "unknown", (bundle) => shiftDays(bundle, 24)],
    [
      "only after the trial",
      "unknown",
      (bundle) => {
        for (const measurement of bundle.limbMeasurements)
          measurement.at = measurement.at.replace(/^2026-0\d-\d\d/, "2026-10-06");
      },
    ],
    [
      "never",
      "unknown",
      (bundle) => {
        bundle.limbMeasurements = [];
        socketOf(bundle).limbMeasurementId = undefined;
        delete bundle.sockets[0]?.limbMeasurementId;
      },
    ],
  ],
  ["limb-settled", "fresh"],
);

gateCases("limb-settled", [
  [
    "one measurement",
    "unknown",
    (bundle) => {
      bundle.limbMeasurements.shift();
      delete bundle.sockets[0]?.limbMeasurementId;
    },
  ],
  [
    "8 % less",
    "not met",
    (bundle) => {
      for (const station of bundle.limbMeasurements[0]?.stations ?? []) station.circumferenceMm *= Math.sqrt(1.08);
    },
  ],
  [
    "congenital and 18 today",
    "met",
    (bundle) => {
      bundle.limbMeasurements.shift();
      delete bundle.sockets[0]?.limbMeasurementId;
      Object.assign(bundle.episode, { cause: "congenital", birthOn: "2008-10-08" });
    },
  ],
  [
    "congenital and 18 tomorrow",
    "unknown",
    (bundle) => {
      bundle.limbMeasurements.shift();
      delete bundle.sockets[0]?.limbMeasurementId;
      Object.assign(bundle.episode, { cause: "congenital", birthOn: "2008-10-09" });
    },
  ],
  [
    "an adult after an injury",
    "unknown",
    (bundle) => {
      bundle.limbMeasurements.shift();
      delete bundle.sockets[0]?.limbMeasurementId;
      bundle.episode.birthOn = "1950-01-01";
    },
  ],
]);

gateCases("socket-described", [
  [
    "no dimensions",
    "not met",
    (bundle) => {
      socketOf(bundle).stations = [];
    },
  ],
  [
    "an adjustment without a reason",
    "not met",
    (bundle) => {
      for (const adjustment of socketOf(bundle).adjustments) adjustment.reason = "  ";
    },
  ],
  [
    "a level 2.5 mm off",
    "not met",
    (bundle) => {
      for (const station of socketOf(bundle).stations.slice(2, 3)) station.circumferenceMm += 2.5;
    },
  ],
  [
    "a level 1.5 mm off",
    "met",
    (bundle) => {
      for (const station of socketOf(bundle).stations.slice(2, 3)) station.circumferenceMm += 1.5;
    },
  ],
  [
    "the adjustment left out",
    "met",
    (bundle) => {
      socketOf(bundle).adjustments = [];
      for (const station of socketOf(bundle).stations) station.circumferenceMm += 1;
    },
  ],
  [
    "a level that the socket before lacks: what both cover is compared",
    "met",
    (bundle) => {
      socketOf(bundle).stations.push({ distanceMm: 200, circumferenceMm: 250 });
    },
  ],
  [
    "the same, with a length that says why",
    "met",
    (bundle) => {
      socketOf(bundle).stations.push({ distanceMm: 200, circumferenceMm: 250 });
      socketOf(bundle).adjustments.push({ id: "x", kind: "length", amount: 40, unit: "mm", reason: "A higher brim" });
    },
  ],
  [
    "not said what it comes from, with adjustments",
    "not met",
    (bundle) => {
      delete socketOf(bundle).derivedFrom;
      for (const station of socketOf(bundle).stations) station.circumferenceMm += 10;
    },
  ],
  [
    "made anew from the limb",
    "met",
    (bundle) => {
      delete socketOf(bundle).derivedFrom;
      socketOf(bundle).adjustments = [];
      for (const station of socketOf(bundle).stations) station.circumferenceMm += 10;
    },
  ],
]);

const check = (key: CheckKey, answer: "met" | "concern" | "not met" | "not done") => (bundle: Bundle) => {
  fittingOf(bundle).checks[key] = answer;
};
gateCases("checks-done", [
  ["one not met", "not met", check("rotation", "not met")],
  ["one not done", "unknown", check("rotation", "not done")],
  [
    "one left out",
    "unknown",
    (bundle) => {
      delete fittingOf(bundle).checks.rotation;
    },
  ],
  ["a concern that nothing answers", "not met", check("rotation", "concern")],
  [
    "a concern that a carried adjustment answers",
    "met",
    (bundle) => {
      check("rotation", "concern")(bundle);
      bundle.carried = [
        {
          id: "c",
          kind: "build-up",
          aspect: "medial",
          third: "proximal",
          amount: 2,
          unit: "mm",
          reason: "It turns a little",
          answers: "check:rotation",
        },
      ];
    },
  ],
  [
    "not met, which no carried adjustment answers",
    "not met",
    (bundle) => {
      check("rotation", "not met")(bundle);
      bundle.carried = [
        {
          id: "c",
          kind: "build-up",
          aspect: "medial",
          third: "proximal",
          amount: 2,
          unit: "mm",
          reason: "It turns",
          answers: "check:rotation",
        },
      ];
    },
  ],
  [
    "one not met and one not done",
    "not met",
    (bundle) => {
      check("rotation", "not met")(bundle);
      check("feeling", "not done")(bundle);
    },
  ],
]);

const pulls =
  (...pairs: readonly (readonly [number, number])[]) =>
  (bundle: Bundle) => {
    fittingOf(bundle).pulls = pairs.map(([loadN, displacementMm]) => ({ loadN, displacementMm }));
  };
gateCases("suspension", [
  ["no pull", "unknown", pulls()],
  ["one pull at another load", "unknown", pulls([30, 2])],
  ["one pull at 45 N", "met", pulls([45, 2])],
  ["too far", "not met", pulls([22, 6], [34, 9], [45, 12])],
  ["close to 10 mm", "close", pulls([22, 5], [34, 8.4], [45, 9.6])],
]);

const angles = (joint: string, withoutDeg: number, withDeg: number) => (bundle: Bundle) => {
  fittingOf(bundle).motion = [{ joint, withoutDeg, withDeg }];
};
gateCases("motion", [
  [
    "not measured",
    "unknown",
    (bundle) => {
      fittingOf(bundle).motion = [];
    },
  ],
  ["another joint than the elbow", "unknown", angles("forearm-rotation", 150, 149)],
  ["104° kept", "not met", angles("elbow-flexion", 140, 104)],
  ["106° kept", "close", angles("elbow-flexion", 140, 106)],
  [
    "one joint of two not met",
    "not met",
    (bundle) => {
      fittingOf(bundle).motion.push({ joint: "forearm-rotation", withoutDeg: 150, withDeg: 120 });
    },
  ],
]);

gateCases("trial-load", [
  [
    "36 % too much",
    "not met",
    (bundle) => {
      trialOf(bundle).plan.loadDistanceMm = 300;
    },
  ],
  [
    "none given",
    "not met",
    (bundle) => {
      delete trialOf(bundle).plan.loadKg;
    },
  ],
  [
    "a device that nobody weighed",
    "unknown",
    (bundle) => {
      delete bundle.episode.device;
    },
  ],
]);

gateCases("worn-long-enough", [
  [
    "19 min 59 s",
    "not met",
    (bundle) => {
      for (const id of ["e20", "e21"]) eventAt(bundle, id, "2026-10-05T10:19:59Z");
    },
  ],
  [
    "as planned, but planned for 15 min",
    "not met",
    (bundle) => {
      trialOf(bundle).plan.minutes = 15;
    },
  ],
  [
    "less than planned",
    "not met",
    (bundle) => {
      trialOf(bundle).plan.minutes = 30;
    },
  ],
]);

gateCases("checked-often-enough", [
  ["10 min without a check-in", "not met", (bundle) => dropEvents(bundle, "e10")],
  ["7.5 min without", "met", (bundle) => eventAt(bundle, "e10", "2026-10-05T10:07:30Z")],
  [
    "10 min of pause, and no gap",
    "met",
    (bundle) => {
      dropEvents(bundle, "e10");
      trialOf(bundle).plan.minutes = 20;
      trialOf(bundle).events.push(
        { id: "p", at: "2026-10-05T10:06:00Z", kind: "paused" },
        { id: "r", at: "2026-10-05T10:06:20Z", kind: "resumed" },
        { id: "x", at: "2026-10-05T10:11:00Z", kind: "check-in", comfort: 8, pain: 0, exertion: 2, feelings: [] },
      );
    },
  ],
  [
    "a plan that asks only every 40 min",
    "not met",
    (bundle) => {
      trialOf(bundle).plan.intervalMin = 40;
    },
  ],
]);

gateCases("comfort", [
  ["last 6", "not met", (bundle) => rate(bundle, "comfort", [8, 8, 8, 6])],
  ["last 7", "met", (bundle) => rate(bundle, "comfort", [8, 8, 8, 7])],
  ["once 4", "not met", (bundle) => rate(bundle, "comfort", [4, 8, 8, 8])],
  ["once 5", "met", (bundle) => rate(bundle, "comfort", [5, 8, 8, 8])],
]);

gateCases("pain", [
  ["3", "met", (bundle) => rate(bundle, "pain", [3, 0, 0, 0])],
  ["4", "not met", (bundle) => rate(bundle, "pain", [0, 4, 0, 0])],
  ["6.9", "not met", (bundle) => rate(bundle, "pain", [0, 6.9, 0, 0])],
  ["7", "forbids", (bundle) => rate(bundle, "pain", [0, 7, 0, 0])],
  [
    "5 at the fitting: the gate is about the trial",
    "met",
    (bundle) => {
      fittingOf(bundle).pain = 5;
    },
  ],
  [
    "8 in a later trial that nobody ended",
    "forbids",
    (bundle) => {
      bundle.wearTrials.push({
        ...structuredClone(trialOf(bundle)),
        id: "wt2",
        inspections: [],
        events: [
          { id: "b", at: "2026-10-06T10:00:00Z", kind: "begun" },
          { id: "c", at: "2026-10-06T10:05:00Z", kind: "check-in", comfort: 8, pain: 8, exertion: 1, feelings: [] },
        ],
      });
    },
  ],
]);

gateCases("trend", [
  // Exact Kendall: four values in strict order have a chance of 1/24 = 0.042.
  ["pain 0, 1, 2, 3", "not met", (bundle) => rate(bundle, "pain", [0, 1, 2, 3])],
  ["comfort 10, 9, 8, 7", "not met", (bundle) => rate(bundle, "comfort", [10, 9, 8, 7])],
  ["pain 0, 2, 1, 3", "met", (bundle) => rate(bundle, "pain", [0, 2, 1, 3])],
]);

gateCases("no-stop-sign", [
  [
    "tingling at two check-ins running",
    "not met",
    (bundle) => {
      for (const event of checkInsOf(bundle).slice(1, 3)) event.feelings = [{ kind: "tingling" }];
    },
  ],
  [
    "tingling once",
    "met",
    (bundle) => {
      for (const event of checkInsOf(bundle).slice(1, 2)) event.feelings = [{ kind: "tingling" }];
    },
  ],
  [
    "a stop sign after the end",
    "forbids",
    (bundle) => {
      trialOf(bundle).events.push({ id: "s", at: "2026-10-05T10:25:00Z", kind: "stop-sign", sign: "numbness" });
    },
  ],
]);

it("a stop sign during the trial ends it and forbids", () => {
  const bundle = changed(
    (changing) =>
      void trialOf(changing).events.push({ id: "s", at: "2026-10-05T10:12:00Z", kind: "stop-sign", sign: "dizziness" }),
  );
  expect(stateOf(bundle, "no-stop-sign")).toBe("forbids");
  expect(stateOf(bundle, "worn-long-enough")).toBe("not met");
  expect(decisionOf(bundle)).toBe("must not be released");
});

gateCases(
  "skin-inspected",
  [
    [
      "first look after 6 min",
      "unknown",
      (bundle) => {
        lookOf(bundle, 0).minutesAfterDoffing = 6;
      },
    ],
    ["no second look, whatever was written about fading", "unknown", (bundle) => dropLook(bundle, 1)],
    [
      "a second look that mentions no mark",
      "unknown",
      (bundle) => {
        lookOf(bundle, 1).marks = [];
      },
    ],
    [
      "no mark at the first look",
      "met",
      (bundle) => {
        lookOf(bundle, 0).marks = [];
        dropLook(bundle, 1);
      },
    ],
  ],
  ["marks-fade"],
);

it("a look at 20 minutes is the last that is asked for, whatever it shows", () => {
  const bundle = changed((changing) => {
    lookOf(changing, 1).minutesAfterDoffing = 20;
    for (const mark of allMarks(changing)) Object.assign(mark, { strength: "clear", fadedAtMin: null });
  });
  expect(stateOf(bundle, "skin-inspected")).toBe("met");
  // What is still there at 20 minutes fades after them.
  expect(stateOf(bundle, "marks-fade")).toBe("not met");
  expect(decisionOf(bundle)).toBe("not ready");
});

it("a look whose own times say that it was later than its minutes claim is taken as the later", () => {
  const bundle = changed((changing) => {
    lookOf(changing, 1).at = "2026-10-05T10:51:00Z";
    for (const mark of lookOf(changing, 1).marks) Object.assign(mark, { strength: "clear", blanches: "no", fadedAtMin: null });
  });
  expect(lookOf(bundle, 1).minutesAfterDoffing).toBe(8);
  expect(stateOf(bundle, "skin-intact")).toBe("forbids");
});

describe("skin-intact (NPIAP 2016: purple is suspected deep injury; persistent redness that does not blanch is stage 1)", () => {
  it.each<Case>([
    [
      "broken at the first look",
      "forbids",
      (bundle) => {
        markOf(bundle, 0).broken = true;
      },
    ],
    [
      "purple at the second look",
      "forbids",
      (bundle) => {
        markOf(bundle, 1).strength = "purple";
      },
    ],
    [
      "not blanching at 20 min",
      "forbids",
      (bundle) => {
        lookOf(bundle, 1).minutesAfterDoffing = 20;
        Object.assign(markOf(bundle, 1), { strength: "faint", blanches: "no" });
      },
    ],
    [
      "not blanching at 20 min on skin that shows no redness",
      "forbids",
      (bundle) => {
        lookOf(bundle, 1).minutesAfterDoffing = 21;
        markOf(bundle, 1).blanches = "no";
      },
    ],
    [
      "not blanching at 1 min",
      "met",
      (bundle) => {
        markOf(bundle, 0).blanches = "no";
      },
    ],
    [
      "broken at a fitting of this socket",
      "forbids",
      (bundle) => {
        fittingOf(bundle).inspections.push({ ...structuredClone(lookOf(bundle, 0)), id: "f" });
        for (const look of fittingOf(bundle).inspections) for (const mark of look.marks) mark.broken = true;
      },
    ],
    [
      "broken at a fitting of the socket before",
      "met",
      (bundle) => {
        const before = bundle.fittings[0];
        before?.inspections.push({ ...structuredClone(lookOf(bundle, 0)), id: "f" });
        for (const mark of before?.inspections[0]?.marks ?? []) mark.broken = true;
      },
    ],
    [
      "broken at a look dated next year",
      "forbids",
      (bundle) => {
        trialOf(bundle).inspections.push({
          ...structuredClone(lookOf(bundle, 0)),
          id: "f",
          at: "2027-10-05T10:30:00Z",
          marks: [{ ...markOf(bundle, 0), broken: true }],
        });
      },
    ],
    [
      "nobody looked",
      "unknown",
      (bundle) => {
        trialOf(bundle).inspections = [];
      },
    ],
  ])("%s: %s", (_, state, change) => {
    const bundle = changed(change);
    expect(stateOf(bundle, "skin-intact")).toBe(state);
    if (state === "forbids") expect(decisionOf(bundle)).toBe("must not be released");
    if (state === "forbids") expect(gateOf(bundle, "skin-intact").why).toContain("Call the physician");
  });
});

describe("marks-fade", () => {
  it.each<Case>([
    [
      "one at 21 min",
      "not met",
      (bundle) => {
        for (const look of [0, 1]) markOf(bundle, look).fadedAtMin = 21;
      },
    ],
    [
      "one that nobody saw go",
      "unknown",
      (bundle) => {
        lookOf(bundle, 1).marks.shift();
        markOf(bundle, 0).fadedAtMin = null;
      },
    ],
    [
      "still there at a look after 25 min",
      "not met",
      (bundle) => {
        lookOf(bundle, 1).minutesAfterDoffing = 25;
        markOf(bundle, 1).strength = "faint";
      },
    ],
    [
      "nobody looked",
      "unknown",
      (bundle) => {
        trialOf(bundle).inspections = [];
      },
    ],
    [
      "no mark",
      "met",
      (bundle) => {
        lookOf(bundle, 0).marks = [];
        dropLook(bundle, 1);
      },
    ],
    [
      "a first look after an hour, with nothing left to see",
      "unknown",
      (bundle) => {
        lookOf(bundle, 0).marks = [];
        lookOf(bundle, 0).minutesAfterDoffing = 60;
        dropLook(bundle, 1);
      },
    ],
  ])("%s: %s", (_, state, change) => expect(stateOf(changed(change), "marks-fade")).toBe(state));
});

gateCases("marks-even", [
  [
    "one mark that is deep",
    "not met",
    (bundle) => {
      markOf(bundle, 0).strength = "deep";
    },
  ],
  [
    "one clear mark alone",
    "not met",
    (bundle) => {
      for (const look of [0, 1]) lookOf(bundle, look).marks.splice(1);
    },
  ],
  [
    "two faint marks",
    "met",
    (bundle) => {
      for (const look of [0, 1]) lookOf(bundle, look).marks.splice(2);
      for (const look of [0]) for (const mark of lookOf(bundle, look).marks) mark.strength = "faint";
    },
  ],
  [
    "a clear mark that is painful",
    "not met",
    (bundle) => {
      markOf(bundle, 0).painful = true;
    },
  ],
]);

const carry =
  (...adjustments: readonly Partial<Bundle["carried"][number]>[]) =>
  (bundle: Bundle) => {
    bundle.carried = adjustments.map((adjustment, index) => ({
      id: `c${index}`,
      kind: "relief",
      aspect: "anterior",
      third: "proximal",
      amount: 2,
      unit: "mm",
      reason: "A little room",
      ...adjustment,
    }));
  };
gateCases("open-adjustments", [
  ["a relief of 3 mm", "met", carry({ amount: 3 })],
  ["a relief of 3.1 mm", "not met", carry({ amount: 3.1 })],
  ["a build-up of −3.1 mm", "not met", carry({ kind: "build-up", amount: -3.1 })],
  ["1 % of volume", "met", carry({ kind: "volume", amount: -1, unit: "percent" })],
  ["1.1 % of volume", "not met", carry({ kind: "volume", amount: -1.1, unit: "percent" })],
  ["volume in mm", "not met", carry({ kind: "volume", amount: 1, unit: "mm" })],
  ["a trim of 10 mm", "met", carry({ kind: "trim", amount: 10 })],
  ["a trim of 11 mm", "not met", carry({ kind: "trim", amount: 11 })],
  ["three", "met", carry({}, {}, {})],
  ["four", "not met", carry({}, {}, {}, {})],
  ["without an amount", "not met", carry({ amount: undefined })],
  ["without a reason", "not met", carry({ reason: " " })],
]);

it("nothing is carried onto a mark of grade 3, nor by an adjustment without a place, nor one that answers it", () => {
  const deep = (bundle: Bundle) => {
    markOf(bundle, 0).strength = "deep";
  };
  const stateWith = (adjustment: Partial<Bundle["carried"][number]>) =>
    stateOf(
      changed((bundle) => {
        deep(bundle);
        carry(adjustment)(bundle);
      }),
      "open-adjustments",
    );
  expect(stateWith({ aspect: "anterior", third: "middle" })).toBe("not met");
  expect(stateWith({ aspect: "anterior", third: undefined })).toBe("not met");
  expect(stateWith({ aspect: undefined, third: undefined })).toBe("not met");
  expect(stateWith({ aspect: "posterior", third: "distal", answers: "mark:mk0" })).toBe("not met");
  expect(stateWith({ aspect: "posterior", third: "middle" })).toBe("met");
});

gateCases("cautions-reviewed", [
  ["one that nobody read", "not met", (bundle) => void bundle.episode.cautions.push({ kind: "fragile-skin" })],
  [
    "one read by a blank",
    "not met",
    (bundle) => void bundle.episode.cautions.push({ kind: "fragile-skin", acknowledgedBy: " " }),
  ],
  [
    "one read tomorrow",
    "not met",
    (bundle) => {
      for (const caution of bundle.episode.cautions) caution.acknowledgedAt = "2026-10-09T09:00:00Z";
    },
  ],
  [
    "none",
    "met",
    (bundle) => {
      bundle.episode.cautions = [];
    },
  ],
]);

gateCases(
  "fresh",
  [
    [
      "28 days",
      "met",
      (bundle) => {
        bundle.asOf = "2026-11-02T10:20:30Z";
      },
    ],
    [
      "28 days and a second",
      "not met",
      (bundle) => {
        bundle.asOf = "2026-11-02T10:20:31Z";
      },
    ],
    ["a limb 4 % smaller since", "not met", (bundle) => scaleLimb(bundle, -4, "2026-10-07T09:00:00Z")],
    ["a limb 0.5 % smaller since", "met", (bundle) => scaleLimb(bundle, -0.5, "2026-10-07T09:00:00Z")],
    [
      "a limb measured since along a fifth of the length",
      "unknown",
      (bundle) => {
        scaleLimb(bundle, 0, "2026-10-07T09:00:00Z");
        bundle.limbMeasurements[2]?.stations.splice(2);
      },
    ],
    [
      "a limb 4 % smaller since, and not said what the socket was made from",
      "not met",
      (bundle) => {
        scaleLimb(bundle, -4, "2026-10-07T09:00:00Z");
        socketOf(bundle).limbMeasurementId = undefined;
      },
    ],
  ],
  ["limb-settled", "socket-described"],
);

describe("gates about what is not there", () => {
  it("are unknown about the trial where none has ended", () => {
    const about: GateId[] = [
      "trial-load",
      "worn-long-enough",
      "checked-often-enough",
      "comfort",
      "pain",
      "trend",
      "no-stop-sign",
      "skin-inspected",
      "skin-intact",
      "marks-fade",
      "marks-even",
      "fresh",
    ];
    for (const change of [
      (bundle: Bundle) => {
        bundle.wearTrials = [];
      },
      (bundle: Bundle) => dropEvents(bundle, "e21", "e22"),
    ]) {
      const gates = assessReadiness(changed(change)).gates;
      expect(gates.filter(({ state }) => state === "unknown").map(({ id }) => id)).toEqual(about);
    }
  });

  it("are unknown about the fitting where there is none", () => {
    const bundle = changed((changing) => void changing.fittings.pop());
    expect(
      assessReadiness(bundle)
        .gates.filter(({ state }) => state === "unknown")
        .map(({ id }) => id),
    ).toEqual(["checks-done", "suspension", "motion"]);
  });

  it("do not apply: the trial's load on a lower limb", () => {
    const bundle = changed((changing) => {
      changing.episode.level = "transtibial";
      for (const fitting of changing.fittings)
        fitting.checks = Object.fromEntries(checksOf("transtibial").map((key) => [key, "met"]));
      fittingOf(changing).motion = [{ joint: "knee-flexion", withoutDeg: 130, withDeg: 125 }];
      fittingOf(changing).pulls.push({ loadN: 90, displacementMm: 4 });
      delete changing.episode.device;
      delete trialOf(changing).plan.loadKg;
    });
    expect(gateOf(bundle, "trial-load")).toMatchObject({ state: "met", why: expect.stringMatching(/does not apply/i) });
    expect(decisionOf(bundle)).toBe("ready");
  });

  it("leave an empty episode without enough evidence, and without a subject", () => {
    const bundle = changed((changing) =>
      Object.assign(changing, { limbMeasurements: [], sockets: [], fittings: [], wearTrials: [] }),
    );
    const assessment = assessReadiness(bundle);
    expect(assessment.decision).toBe("not enough evidence");
    expect(assessment.subject).toBeUndefined();
    expect(assessment.gates.filter(({ state }) => state === "met").map(({ id }) => id)).toEqual([
      "open-adjustments",
      "cautions-reviewed",
    ]);
    expect(assessment.index.value).toBeUndefined();
  });
});

it("a look from before the trial began says nothing of it, unless it shows an injury", () => {
  const early = (bundle: Bundle) => {
    for (const look of trialOf(bundle).inspections) look.at = "2026-10-04T10:22:00Z";
  };
  expect(stateOf(changed(early), "skin-inspected")).toBe("unknown");
  expect(stateOf(changed(early), "marks-fade")).toBe("unknown");
  const hurt = changed((bundle) => {
    early(bundle);
    markOf(bundle, 0).broken = true;
  });
  expect(decisionOf(hurt)).toBe("must not be released");
});

it("a socket said to be made from a measurement after its trial does not make a changed limb look the same", () => {
  const renamed = changed((bundle) => {
    scaleLimb(bundle, -8, "2026-10-07T09:00:00Z");
    socketOf(bundle).limbMeasurementId = "lm3";
  });
  expect(stateOf(renamed, "fresh")).toBe("not met");
});

describe("a trial that was begun since and is still worn", () => {
  const since = (said: { comfort?: number; pain?: number; feelings?: { kind: "numbness" }[] }) =>
    changed((bundle) => {
      const checkIn = (id: string, at: string) => ({
        id,
        at,
        kind: "check-in" as const,
        comfort: 8,
        pain: 0,
        exertion: 1,
        feelings: [],
        ...said,
      });
      bundle.wearTrials.push({
        ...structuredClone(trialOf(bundle)),
        id: "wt2",
        inspections: [],
        events: [
          { id: "a", at: "2026-10-08T08:00:00Z", kind: "begun" },
          checkIn("b", "2026-10-08T08:05:00Z"),
          checkIn("c", "2026-10-08T08:10:00Z"),
        ],
      });
    });

  it("lets nobody sign by the one before while it goes badly", () => {
    expect(decisionOf(since({}))).toBe("ready");
    expect(stateOf(since({ comfort: 4 }), "comfort")).toBe("not met");
    expect(stateOf(since({ pain: 4 }), "pain")).toBe("not met");
    expect(stateOf(since({ pain: 7 }), "pain")).toBe("forbids");
    expect(stateOf(since({ feelings: [{ kind: "numbness" }] }), "no-stop-sign")).toBe("not met");
  });
});

it("a bad rating that was put right afterwards is close: whoever signs reads it", () => {
  const putRight = (first: { comfort?: number; pain?: number }, right: { comfort?: number; pain?: number }) =>
    changed((bundle) => {
      for (const event of checkInsOf(bundle).slice(1, 2)) Object.assign(event, first);
      trialOf(bundle).events.push({ id: "k", at: "2026-10-05T11:00:00Z", kind: "corrected", corrects: "e10", ...right });
    });
  expect(gateOf(putRight({ pain: 8 }, { pain: 0 }), "pain")).toMatchObject({
    state: "close",
    why: expect.stringContaining("A pain of 8 was put right"),
  });
  expect(gateOf(putRight({ comfort: 3 }, { comfort: 8 }), "comfort")).toMatchObject({ state: "close" });
  expect(stateOf(putRight({ pain: 2 }, { pain: 1 }), "pain")).toBe("met");
  expect(stateOf(putRight({ pain: 0 }, { pain: 8 }), "pain")).toBe("forbids");
});

describe("what was told at a fitting and not seen", () => {
  it("is judged alike, and says so where it counts", () => {
    const told = changed((bundle) => {
      fittingOf(bundle).reported = ["checks", "pulls", "motion"];
    });
    for (const id of ["checks-done", "suspension", "motion"] as const) {
      expect(gateOf(told, id).why).toContain("Told at the fitting, not seen.");
      expect(gateOf(told, id)).toMatchObject({ state: stateOf(readyBundle(), id) });
      expect(gateOf(readyBundle(), id).why).not.toContain("Told");
    }
  });
});

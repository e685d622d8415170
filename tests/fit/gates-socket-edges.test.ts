/** The gates about the socket and its latest fitting at their edges, and what they say. */
import { describe, expect, it } from "vitest";
import { assessReadiness, type Bundle, type CheckKey, limitsWith } from "@/lib/fit";
import { acceptance, changed, fittingOf, gateOf, readyBundle, socketOf } from "./ready-bundle";

type Change = (bundle: Bundle) => void;
type Adjustment = Bundle["carried"][number];

const noSocket: Change = (bundle) => Object.assign(bundle, { sockets: [], fittings: [], wearTrials: [] });
const notFitted: Change = (bundle) => void bundle.fittings.pop();
const gateAfter = (id: Parameters<typeof gateOf>[1], ...changes: readonly Change[]) =>
  gateOf(
    changed((bundle) => {
      for (const change of changes) change(bundle);
    }),
    id,
  );
const remadeBy =
  (mm: number): Change =>
  (bundle) => {
    for (const station of socketOf(bundle).stations) station.circumferenceMm += mm;
  };

// Differences over 2 mm are unexplained: clinic setting. A volume change of v % scales circumferences by √(1 + v/100).
describe("socket-described", () => {
  const asked = { unit: "mm", limit: 2, source: "clinic-setting", limitText: expect.stringContaining("2 mm") };
  const gate = (...changes: readonly Change[]) => gateAfter("socket-described", ...changes);

  it("gives the greatest difference that the adjustments leave, in either direction", () => {
    const found = gate();
    expect(found).toMatchObject({ ...asked, state: "met", why: expect.stringMatching(/From socket 1 to 2 .* within 0 mm/) });
    const [narrower, wider] = [-1.5, 1.5].map((mm) =>
      gate((bundle) => {
        for (const station of socketOf(bundle).stations.slice(2, 3)) station.circumferenceMm += mm;
      }),
    );
    expect(narrower).toMatchObject({
      state: "met",
      value: expect.closeTo(1.5, 1),
      why: expect.stringContaining("within 1.5 mm"),
    });
    expect(wider).toMatchObject({ state: "met", value: expect.closeTo(1.5, 1) });
  });

  it("names each level that is not explained, with its difference and distance", () => {
    const found = gate((bundle) => {
      for (const station of socketOf(bundle).stations.slice(1, 3)) station.circumferenceMm += 4;
    });
    expect(found).toMatchObject({ ...asked, state: "not met", value: expect.closeTo(4, 1) });
    expect(found.why).toMatch(/From socket 1 to 2 .*: 4 mm at 40 mm, 4 mm at 80 mm\.$/);
  });

  it("asks for two levels at least: a single ring describes no socket", () => {
    const levels = (count: number) => gate((bundle) => void socketOf(bundle).stations.splice(count));
    expect(levels(1)).toMatchObject({
      ...asked,
      state: "not met",
      why: expect.stringMatching(/Socket 2 has no dimensions: fewer than 2 levels/),
    });
    expect(levels(2)).toMatchObject({ state: "met", why: expect.stringContaining("every level") });
  });

  it("asks for a reason with every adjustment, and counts those without", () => {
    const bare = (reason: string): Adjustment => ({ id: `x${reason.length}`, kind: "flare", amount: 1, unit: "mm", reason });
    const found = gate((bundle) => void socketOf(bundle).adjustments.push(bare(""), bare("  ")));
    expect(found).toMatchObject({
      ...asked,
      state: "not met",
      why: expect.stringMatching(/^2 adjustments of socket 2 without a reason/),
    });
    expect(gate((bundle) => void socketOf(bundle).adjustments.push(bare(""))).why).toMatch(/^1 adjustment of/);
  });

  it("is unknown without a socket, and met by a first socket that was derived from none", () => {
    expect(gate(noSocket)).toMatchObject({ state: "unknown", source: "plain", why: expect.stringMatching(/no check socket/i) });
    const first = gate((bundle) => {
      bundle.sockets.shift();
      bundle.fittings.shift();
      delete socketOf({ ...bundle, sockets: [...bundle.sockets, ...bundle.sockets] }).derivedFrom;
    });
    expect(first).toMatchObject({
      ...asked,
      state: "met",
      why: expect.stringMatching(/Socket 2 is described, and was not derived/),
    });
    expect(first.value).toBeUndefined();
  });

  it("is not met where the two sockets have no level in common", () => {
    const found = gate((bundle) => {
      for (const station of socketOf(bundle).stations) station.distanceMm += 400;
    });
    expect(found).toMatchObject({ ...asked, state: "not met", why: expect.stringMatching(/From socket 1 to 2 no level/) });
    expect(found.value).toBeUndefined();
  });

  it("follows the socket that is named as the origin, else the one before in number, whatever the order in the file", () => {
    const third: Change = (bundle) => {
      const before = socketOf(bundle);
      before.number = 3;
      bundle.sockets.push({
        ...structuredClone(before),
        id: "so9",
        number: 2,
        adjustments: [],
        stations: before.stations.map((station) => ({ ...station, circumferenceMm: station.circumferenceMm + 30 })),
      });
      bundle.sockets.reverse();
      const [, last] = bundle.sockets;
      if (last) delete last.derivedFrom;
    };
    // Without a name, from socket 2, which is 30 mm wider.
    expect(gate(third)).toMatchObject({ state: "not met", why: expect.stringContaining("From socket 2 to 3") });
    const named: Change = (bundle) => {
      third(bundle);
      for (const socket of bundle.sockets) if (socket.number === 3) socket.derivedFrom = "so1";
    };
    expect(gate(named)).toMatchObject({ state: "met", why: expect.stringContaining("From socket 1 to 3") });
  });

  it("looks for an adjustment's third from the end that distances run from, and goes by the clinic's own limit", () => {
    // A relief of 3 mm widens by 3π/4 = 2.36 mm: at the levels of the proximal third, 120 and 160 of 170 mm from the distal end.
    const relieved =
      (stationsFrom: Bundle["episode"]["stationsFrom"]): Change =>
      (bundle) => {
        bundle.episode.stationsFrom = stationsFrom;
        const { stations, adjustments } = socketOf(bundle);
        adjustments.push({ id: "r", kind: "relief", third: "proximal", amount: 3, unit: "mm", reason: "Room" });
        for (const station of stations.slice(3)) station.circumferenceMm += (3 * Math.PI) / 4;
      };
    expect(gate(relieved("distal end")).state).toBe("met");
    expect(gate(relieved("proximal landmark")).state).toBe("not met");
    const bundle = changed(remadeBy(3));
    const own = assessReadiness(bundle, limitsWith({ "unexplained-mm": 4 })).gates.find(({ id }) => id === "socket-described");
    expect(own).toMatchObject({ state: "met", limit: 4 });
  });

  it("takes a socket for made anew only where it names its measurement and no adjustment", () => {
    const unnamed: Change = (bundle) => void delete socketOf(bundle).derivedFrom;
    const unadjusted: Change = (bundle) => {
      socketOf(bundle).adjustments = [];
    };
    const unmeasured: Change = (bundle) => void delete socketOf(bundle).limbMeasurementId;
    expect(gate(unnamed, unadjusted, remadeBy(10)).state).toBe("met");
    expect(gate(unnamed, remadeBy(10)).state).toBe("not met");
    expect(gate(unnamed, unadjusted, unmeasured, remadeBy(10)).state).toBe("not met");
    expect(gate(unadjusted, remadeBy(10)).state).toBe("not met");
  });

  it("may be accepted once this socket was tried, or at any time before it was", () => {
    const accepted = (at: string, ...changes: readonly Change[]) =>
      gate(remadeBy(10), (bundle) => void bundle.acceptances.push(acceptance("socket-described", at)), ...changes).accepted;
    expect(accepted("2026-10-05T09:59:59Z")).toBeUndefined();
    expect(accepted("2026-10-05T10:00:00Z")).toBeDefined();
    const untried: Change = (bundle) => {
      bundle.wearTrials = [];
    };
    expect(accepted("2026-10-05T09:59:59Z", untried)).toBeDefined();
  });
});

// The checks of an upper limb: the ICRC check-out's questions for the lower limb in our own words; the rest common practice, no source.
describe("checks-done", () => {
  const asked = { unit: "checks", limit: 11, limitText: "all 11", source: "common-practice" };
  const answered = (
    answers: Partial<Record<CheckKey, "met" | "concern" | "not met" | "not done">>,
    carried: readonly CheckKey[] = [],
  ) =>
    gateAfter("checks-done", (bundle) => {
      Object.assign(fittingOf(bundle).checks, answers);
      bundle.carried = carried.map((key) => ({
        id: key,
        kind: "trim",
        aspect: "medial",
        third: "proximal",
        amount: 2,
        unit: "mm",
        reason: "A little",
        answers: `check:${key}`,
      }));
    });

  it("says that all are met, of an upper limb eleven, of a lower limb fourteen", () => {
    expect(answered({})).toMatchObject({ ...asked, state: "met", value: 11, why: expect.stringMatching(/^All 11 checks/) });
    const lower = gateAfter("checks-done", (bundle) => {
      bundle.episode.level = "transfemoral";
      for (const fitting of bundle.fittings) fitting.checks = {};
    });
    expect(lower).toMatchObject({ state: "unknown", limit: 14, value: 0, why: expect.stringContaining("comfort walking") });
  });

  it("names what was not met, what is a concern, what was not done and what is answered, and counts what is met", () => {
    const found = answered(
      { rotation: "not met", "trim-lines": "not met", feeling: "concern", seating: "not done", "bony-relief": "concern" },
      ["bony-relief"],
    );
    expect(found).toMatchObject({ ...asked, state: "not met", value: 7 });
    expect(found.why).toMatch(
      /Not met: rotation, trim lines\. Concern.*: feeling\. Not done: seating\. Answered.*: bony relief\.$/,
    );
  });

  it("is not met by a concern alone, unknown by one not done alone, met by a concern that is answered", () => {
    expect(answered({ feeling: "concern" })).toMatchObject({
      state: "not met",
      value: 10,
      why: expect.stringMatching(/^Concern.*: feeling\.$/),
    });
    expect(answered({ feeling: "not done" })).toMatchObject({ state: "unknown", value: 10, why: "Not done: feeling." });
    expect(answered({ feeling: "concern" }, ["feeling"])).toMatchObject({
      state: "met",
      value: 11,
      why: expect.stringMatching(/^Answered.*: feeling\.$/),
    });
    expect(answered({ feeling: "concern" }, ["rotation"]).state).toBe("not met");
  });

  it("is not met where one concern is answered and another is not", () => {
    expect(answered({ feeling: "concern", rotation: "concern" }, ["feeling"])).toMatchObject({ state: "not met", value: 10 });
  });

  it("names nothing as answered that was met anyway", () => {
    expect(answered({}, ["feeling"]).why).toMatch(/^All 11 checks/);
  });
});

describe("what was not fitted is unknown", () => {
  it.each(["checks-done", "suspension", "motion"] as const)("%s names the socket, or says that there is none", (id) => {
    const unfitted = gateAfter(id, notFitted);
    expect(unfitted).toMatchObject({
      state: "unknown",
      source: "plain",
      why: expect.stringMatching(/Socket 2 has not been fitted/),
    });
    expect(gateAfter(id, noSocket)).toMatchObject({
      state: "unknown",
      source: "plain",
      why: expect.stringMatching(/no check socket/i),
    });
  });

  it.each([
    ["checks-done", "checks"],
    ["suspension", "pulls"],
    ["motion", "motion"],
  ] as const)("%s says that it was told and not seen where that part was, and only that part", (id, part) => {
    const told = (...reported: readonly ("checks" | "pulls" | "motion" | "skin")[]) =>
      gateAfter(id, (bundle) => {
        fittingOf(bundle).reported = [...reported];
      });
    expect(told(part).why).toBe(`${gateOf(readyBundle(), id).why} Told at the fitting, not seen.`);
    const others = (["checks", "pulls", "motion", "skin"] as const).filter((other) => other !== part);
    expect(told(...others).why).toBe(gateOf(readyBundle(), id).why);
  });
});

import { describe, expect, it } from "vitest";
import { type Bundle, findingsOfSocket, type LimbSpan, limbWords, parseBundle, seriesOf, trendsOf } from "@/lib/fit";
import { readyBundle, trialOf } from "./ready-bundle";

const trends = (bundle: Bundle, asOf?: string) => {
  const as = asOf === undefined ? {} : { asOf };
  return trendsOf(bundle, seriesOf(bundle, as), as);
};

/** The limb as first measured, every circumference shifted by so many mm, at the moment when a socket was last worn. */
function measuredWith(bundle: Bundle, shifts: Readonly<Record<string, number>>): Bundle {
  const [first] = bundle.limbMeasurements;
  if (!first) throw new Error("the ready bundle has a measurement");
  for (const socket of bundle.sockets) delete socket.limbMeasurementId;
  bundle.limbMeasurements = trends(bundle).sockets.map(({ socketId, atMs }) => ({
    ...first,
    id: `at ${socketId}`,
    at: new Date(atMs).toISOString(),
    stations: first.stations.map(({ distanceMm, circumferenceMm }) => ({
      distanceMm,
      circumferenceMm: circumferenceMm + (shifts[socketId] ?? 0),
    })),
  }));
  return bundle;
}

/** A third socket, made from the second and fitted a month after it. */
function withThird(bundle: Bundle, derivedFrom = "so2"): Bundle {
  const [, second] = bundle.sockets;
  const fitting = bundle.fittings.at(-1);
  if (!second || !fitting) throw new Error("the ready bundle has two sockets and two fittings");
  bundle.sockets.push({ ...second, id: "so3", number: 3, derivedFrom, adjustments: [] });
  bundle.fittings.push({ ...fitting, id: "fi3", socketId: "so3", at: "2026-11-02T09:00:00Z", inspections: [] });
  bundle.asOf = "2026-11-10T09:00:00Z";
  return parseBundle(bundle);
}

describe("the points of a series over time", () => {
  it("stand at the date when a socket was last worn, with what was found with it", () => {
    const bundle = readyBundle();
    const { sockets, neverWorn } = trends(bundle);
    const found = findingsOfSocket(bundle, "so2");
    expect(neverWorn).toEqual([]);
    expect(sockets.map(({ number }) => number)).toEqual([1, 2]);
    const begun = trialOf(bundle).events.find(({ kind }) => kind === "begun");
    expect(sockets[1]).toMatchObject({
      atMs: Date.parse(begun?.at ?? ""),
      comfortAtFitting: found.fitting?.comfort,
      comfortInTrial: found.trial?.comfort,
      displacement: found.displacement,
      index: { value: found.index?.value, low90: found.index?.low90, high90: found.index?.high90 },
      stopSigns: 0,
    });
  });

  it("leave out what was not measured, and do not make it zero", () => {
    const bundle = readyBundle();
    for (const fitting of bundle.fittings) {
      delete fitting.comfort;
      fitting.pulls = [];
      fitting.inspections = [];
    }
    bundle.wearTrials = [];
    for (const socket of trends(bundle).sockets)
      expect(Object.keys(socket).sort()).toEqual(["atMs", "number", "socketId", "stopSigns"]);
  });

  it("have none for a socket that was never worn, which is named", () => {
    const bundle = readyBundle();
    bundle.fittings = bundle.fittings.filter(({ socketId }) => socketId !== "so1");
    const { sockets, neverWorn, spans } = trends(bundle);
    expect(sockets.map(({ number }) => number)).toEqual([2]);
    expect(neverWorn).toEqual([1]);
    expect(spans).toEqual([]);
  });

  it("have none for what was worn after the day that is asked about", () => {
    const bundle = readyBundle();
    const first = bundle.fittings.find(({ socketId }) => socketId === "so1");
    expect(trends(bundle, first?.at).neverWorn).toEqual([2]);
  });

  it("have none at all before the first socket", () => {
    const bundle = readyBundle();
    bundle.sockets = [];
    bundle.fittings = [];
    bundle.wearTrials = [];
    expect(trends(bundle)).toEqual({ sockets: [], neverWorn: [], spans: [] });
  });

  it("take the harder of the marks at the fitting and after the trial", () => {
    const bundle = readyBundle();
    const fitting = bundle.fittings.find(({ socketId }) => socketId === "so2");
    const look = trialOf(bundle).inspections[0];
    const mark = look?.marks[0];
    if (!fitting || !look || !mark) throw new Error("the ready bundle has a fitting, and a look with a mark");
    const before = trends(bundle).sockets[1]?.hardestMark;
    fitting.inspections = [
      { ...look, id: "look at fitting", at: fitting.at, marks: [{ ...mark, id: "hard", strength: "purple" }] },
    ];
    expect(trends(bundle).sockets[1]?.hardestMark).toEqual({ grade: 4, after: "fitting" });
    expect(before?.grade).toBeLessThan(4);
  });

  it("tell of the stop signs of a trial", () => {
    const bundle = readyBundle();
    const { events } = trialOf(bundle);
    const ended = events.findIndex(({ kind }) => kind === "ended");
    const at = events[ended]?.at ?? "";
    events.splice(ended, 0, { id: "stop", at, kind: "stop-sign", sign: "cold" });
    expect(trends(bundle).sockets[1]?.stopSigns).toBe(1);
  });

  it("stand in the order in which the sockets were last worn, so that no line runs backwards", () => {
    const bundle = withThird(readyBundle());
    const again = bundle.fittings.find(({ socketId }) => socketId === "so1");
    if (!again) throw new Error("socket 1 was fitted");
    bundle.fittings.push({ ...again, id: "again", at: "2026-11-05T09:00:00Z", inspections: [] });
    expect(trends(bundle).sockets.map(({ number }) => number)).toEqual([2, 3, 1]);
  });
});

describe("the limb beneath a series", () => {
  it("has changed between two sockets where the step between them says so", () => {
    const bundle = measuredWith(readyBundle(), { so2: -6 });
    const [span, ...more] = trends(bundle).spans;
    expect(more).toEqual([]);
    expect(span).toMatchObject({ fromNumber: 1, toNumber: 2, limb: { state: "changed" } });
    expect(span?.limb).toEqual(seriesOf(bundle).steps[0]?.limb);
  });

  it("is asked about between neighbours too that were not made one from the other, and over the whole series", () => {
    const bundle = measuredWith(withThird(readyBundle(), "so1"), { so2: -6, so3: -6 });
    const { spans, whole } = trends(bundle);
    expect(spans.map(({ fromNumber, toNumber, limb }) => [fromNumber, toNumber, limb.state])).toEqual([
      [1, 2, "changed"],
      [1, 3, "changed"],
      [2, 3, "no detectable change"],
    ]);
    expect(whole).toBeUndefined();
    expect(trends(measuredWith(withThird(readyBundle()), { so2: -6, so3: -6 })).whole).toMatchObject({
      fromNumber: 1,
      toNumber: 3,
      limb: { state: "changed" },
    });
  });

  // 1 mm all along is less than the tape can miss, and 2 mm just more (docs/methods/limb-size.md).
  it("may creep: changed over the whole, though between no two sockets", () => {
    const found = trends(measuredWith(withThird(readyBundle()), { so2: -1, so3: -2 }));
    expect(found.spans.map(({ limb }) => limb.state)).toEqual(["no detectable change", "no detectable change"]);
    expect(found.whole?.limb.state).toBe("changed");
    expect(limbWords(found).found).toMatch(/never changed by more than the tape can miss/);
    expect(limbWords(found).inAll).toMatch(/^From socket 1 to socket 3 it changed in all by −\d/);
  });

  it("is asked about in the order of wearing, also where a socket was worn again after the one that was made from it", () => {
    const bundle = readyBundle();
    const again = bundle.fittings.find(({ socketId }) => socketId === "so1");
    if (!again) throw new Error("socket 1 was fitted");
    const asOf = "2026-11-10T09:00:00Z";
    bundle.asOf = asOf;
    bundle.fittings.push({ ...again, id: "again", at: "2026-11-05T09:00:00Z", inspections: [] });
    const [span] = trends(measuredWith(bundle, { so1: -6 })).spans;
    expect(span).toMatchObject({ fromNumber: 2, toNumber: 1, limb: { state: "changed" } });
    expect(span?.limb.percent).toBeLessThan(0);
  });
});

const span = (fromNumber: number, toNumber: number, limb: Partial<LimbSpan["limb"]>): LimbSpan => ({
  fromNumber,
  toNumber,
  fromMs: fromNumber,
  toMs: toNumber,
  limb: { state: "not known", why: "Nobody measured.", source: "plain", ...limb },
});
const shrank = { state: "changed", percent: -7.14, standardErrorPercent: 1.9 } as const;
const stayed = { state: "no detectable change", percent: 0.2, standardErrorPercent: 1.9 } as const;
const doing = "What came of the adjustments there may be the limb’s doing.";

describe("what is said of the limb", () => {
  it("names the one place where it changed", () => {
    expect(limbWords({ spans: [span(4, 5, shrank)] })).toEqual({
      found: `Between sockets 4 and 5 the limb changed detectably: −7.1 % ± 1.9 % of its volume. ${doing}`,
      unknown: [],
    });
  });

  it("names all where it changed, where it did not, and where nobody knows with the reason", () => {
    expect(
      limbWords({ spans: [span(1, 2, shrank), span(2, 3, shrank), span(3, 4, stayed), span(4, 5, {}), span(5, 6, {})] }),
    ).toEqual({
      found: `The limb changed detectably between sockets 1 and 2 (−7.1 % ± 1.9 % of its volume), and 2 and 3 (−7.1 % ± 1.9 % of its volume). ${doing}`,
      unchanged: "Between sockets 3 and 4 it did not change by more than the tape can miss.",
      unknown: ["Between sockets 4 and 5, and 5 and 6 it is not known whether the limb changed. Nobody measured."],
    });
  });

  it("never says that it did not change where nobody knows of some", () => {
    expect(limbWords({ spans: [span(1, 2, stayed), span(2, 3, stayed)] }).found).toBe(
      "From one socket worn to the next, the limb never changed by more than the tape can miss.",
    );
    expect(limbWords({ spans: [span(1, 2, stayed), span(2, 3, {})] }).found).toBe(
      "Between sockets 1 and 2 the limb did not change by more than the tape can miss.",
    );
    expect(limbWords({ spans: [span(1, 2, {})] }).found).toBeUndefined();
  });

  it("has nothing to say of a single socket", () => {
    expect(limbWords({ spans: [] })).toEqual({ unknown: [] });
  });
});

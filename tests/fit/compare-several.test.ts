/** The long series of a bundle of its own: socket 4 was made from socket 2, socket 3 was left. */
import { describe, expect, it } from "vitest";
import {
  type Bundle,
  betweenSockets,
  compareSeveral,
  compareSockets,
  dimensionsBeside,
  findingsOfSocket,
  howTried,
  parseBundle,
  seriesOf,
  skinOccasion,
  trendsOf,
  triedOtherwise,
} from "@/lib/fit";
import { changed, readyBundle } from "./ready-bundle";

/** The ready bundle with two more sockets: one made from the second and never worn, and another made from the second as well. */
const branched = (): Bundle =>
  parseBundle(
    changed((bundle) => {
      const second = bundle.sockets[1];
      if (!second) throw new Error("the ready bundle has two sockets");
      bundle.sockets.push(
        { ...second, id: "so3", number: 3, derivedFrom: "so2", adjustments: [], state: "planned" },
        { ...second, id: "so4", number: 4, derivedFrom: "so2", adjustments: [], state: "planned" },
      );
    }),
  );

const ofBundle = (bundle: Bundle, ...ids: string[]) => ids.map((socketId) => ({ bundle, socketId }));
const rowOf = (compared: ReturnType<typeof compareSeveral>, id: string) => {
  const row = compared.rows.find((one) => one.id === id);
  if (!row) throw new Error(`no row ${id} among ${compared.rows.map((one) => one.id).join(", ")}`);
  return row;
};

describe("two to four sockets beside each other", () => {
  it("of two say what `compareSockets` says of them", () => {
    const bundle = readyBundle();
    const compared = compareSeveral(ofBundle(bundle, "so1", "so2"));
    const pair = compareSockets(findingsOfSocket(bundle, "so1"), findingsOfSocket(bundle, "so2"));
    for (const row of pair.filter(({ id }) => !/^(hardest-mark|longest-fade|evenness)/.test(id)))
      expect(rowOf(compared, row.id).cells[1]?.against).toEqual({ column: 0, row });
    expect(compared.rows.filter(({ standing }) => standing === "differs").map(({ id }) => id)).toEqual([
      "pain-fitting",
      "comfort-fitting",
      "displacement",
      "check:suspension",
    ]);
  });

  it("stand in the order of making, however they were asked for", () => {
    const numbers = (...ids: string[]) =>
      compareSeveral(ofBundle(branched(), ...ids)).columns.map(({ findings }) => findings.number);
    expect(numbers("so2", "so1")).toEqual([1, 2]);
    expect(numbers("so4", "so1", "so2")).toEqual([1, 2, 4]);
  });

  it("are each held against the one before, or against the first", () => {
    const held = (against: "before" | "first") =>
      rowOf(compareSeveral(ofBundle(branched(), "so1", "so2", "so3"), { against }), "displacement").cells.map(
        (cell) => cell.against?.column,
      );
    expect(held("before")).toEqual([undefined, 0, 1]);
    expect(held("first")).toEqual([undefined, 0, 0]);
  });

  it("of which one was never worn say so, and compare the others", () => {
    const compared = compareSeveral(ofBundle(branched(), "so1", "so2", "so3"));
    const [first, second, third] = rowOf(compared, "displacement").cells;
    expect(first?.measured?.value).toBeCloseTo(13.77, 2);
    expect(second?.against?.row.outcome).toBe("better");
    expect(third).toMatchObject({ against: { row: { outcome: "not measured", why: "Not measured with the second socket." } } });
    expect(third).not.toHaveProperty("measured");
    expect(howTried(branched(), "so3")).toEqual({ socketId: "so3" });
  });

  it("keep the stop signs of a trial that another has followed", () => {
    const bundle = changed(({ wearTrials: [trial], wearTrials }) => {
      if (!trial) throw new Error("the ready bundle has a trial");
      wearTrials.unshift({
        ...trial,
        id: "an earlier trial",
        events: [
          { id: "b0", at: "2026-10-04T10:00:00Z", kind: "begun" },
          { id: "s0", at: "2026-10-04T10:07:00Z", kind: "stop-sign", sign: "numbness" },
        ],
        inspections: [],
      });
    });
    expect(findingsOfSocket(bundle, "so2")).toMatchObject({ trial: { stopSigns: 0 }, stoppedBefore: ["numbness"] });
    expect(findingsOfSocket(readyBundle(), "so2")).not.toHaveProperty("stoppedBefore");
    expect(trendsOf(bundle, seriesOf(bundle)).sockets.map(({ stopSigns }) => stopSigns)).toEqual([0, 1]);
  });

  it("of another episode are shown and not compared", () => {
    const other = changed((bundle) => {
      bundle.episode = { ...bundle.episode, id: "another" };
    });
    const compared = compareSeveral([...ofBundle(readyBundle(), "so1"), { bundle: other, socketId: "so2" }]);
    expect(rowOf(compared, "displacement").cells).toMatchObject([{ measured: {} }, { measured: {} }]);
    expect(compared.rows.flatMap(({ cells }) => cells.flatMap(({ against }) => against ?? []))).toEqual([]);
    expect(compared.rows.every(({ standing }) => standing === "not compared")).toBe(true);
  });

  it("have the skin of each occasion in a row of its own", () => {
    const compared = compareSeveral(ofBundle(readyBundle(), "so1", "so2"));
    const ids = compared.rows.map(({ id }) => id);
    for (const skin of ["hardest-mark", "longest-fade", "evenness-around"])
      expect(ids).toEqual(expect.arrayContaining([`${skin}-fitting`, `${skin}-trial`]));
    const trial = rowOf(compared, "hardest-mark-trial").cells[1]?.against?.row;
    expect(trial).toMatchObject({ outcome: "not measured", why: "The skin was not looked at after the trial with socket 1." });
  });

  it("take the occasion that the most of them have, and a trial before a fitting", () => {
    const columns = compareSeveral(ofBundle(readyBundle(), "so1", "so2")).columns;
    const skin = columns[1]?.findings.trial?.skin;
    if (!skin) throw new Error("the skin of the ready bundle was looked at after the trial");
    const column = (findings: object) => ({ episodeId: "e", findings: { socketId: "s", number: 1, ...findings } });
    const [fitted, tried] = [column({ fitting: { skin } }), column({ trial: { stopSigns: 0, feelings: [], skin } })];
    expect(skinOccasion([fitted, fitted, tried])).toBe("fitting");
    expect(skinOccasion([fitted, tried])).toBe("trial");
    expect(skinOccasion([column({}), column({})])).toBe("trial");
  });

  it("are two, three or four, and each once", () => {
    const bundle = branched();
    expect(() => compareSeveral(ofBundle(bundle, "so1"))).toThrow("expected 2 to 4 sockets");
    expect(() => compareSeveral(ofBundle(bundle, "so1", "so2", "so3", "so4", "so1"))).toThrow("expected 2 to 4 sockets");
    expect(() => compareSeveral(ofBundle(bundle, "so1", "so1"))).toThrow("each socket once");
    expect(() => compareSeveral(ofBundle(bundle, "so1", "none"))).toThrow("no socket has the id none");
    expect(compareSeveral(ofBundle(bundle, "so1", "so2", "so3", "so4")).columns).toHaveLength(4);
  });
});

describe("how one socket came from another", () => {
  const between = (earlier: string, later: string) => {
    const { relation, originNumber, steps, otherSteps } = betweenSockets(seriesOf(branched()), earlier, later);
    return {
      relation,
      originNumber,
      to: steps.map(({ toNumber }) => toNumber),
      other: otherSteps.map(({ toNumber }) => toNumber),
    };
  };

  it("over all that lie between", () => {
    expect(between("so1", "so2")).toMatchObject({ relation: "made from it", to: [2], other: [] });
    expect(between("so1", "so4")).toMatchObject({ relation: "made from it", to: [2, 4], other: [] });
  });

  it("or both from another", () => {
    expect(between("so3", "so4")).toEqual({ relation: "branch", originNumber: 2, to: [4], other: [3] });
  });

  it("or not at all", () => {
    const bundle = branched();
    for (const socket of bundle.sockets) if (socket.id === "so4") delete socket.derivedFrom;
    expect(betweenSockets(seriesOf(bundle), "so1", "so4")).toEqual({ relation: "apart", steps: [], otherSteps: [] });
    expect(() => betweenSockets(seriesOf(bundle), "so1", "none")).toThrow("no socket of the series has the id none");
  });
});

describe("inside dimensions beside each other", () => {
  it("are taken on a straight line where a socket has no level, and say so", () => {
    const bundle = changed(({ sockets: [, second] }) => {
      if (second)
        second.stations = [
          { distanceMm: 20, circumferenceMm: 190 },
          { distanceMm: 60, circumferenceMm: 210 },
          { distanceMm: 140, circumferenceMm: 230 },
        ];
    });
    const beside = dimensionsBeside(bundle, ["so1", "so2"]);
    // Halfway between 190 mm at 20 and 210 mm at 60.
    const at40 = beside.levels.find(({ distanceMm }) => distanceMm === 40)?.sockets[1];
    expect(at40).toMatchObject({ circumferenceMm: 200, interpolated: true });
    expect(beside.levels.find(({ distanceMm }) => distanceMm === 0)?.sockets[1]).toEqual({ interpolated: false });
    expect(beside.notes).toContain(
      "They are not specified at the same levels: what lies between two levels of a socket is taken on a straight line.",
    );
  });

  it("give the compression of the limb as it was when the socket was worn", () => {
    const bundle = readyBundle();
    const beside = dimensionsBeside(bundle, ["so1", "so2"]);
    const [level] = beside.levels;
    const limb = beside.columns[1]?.limb?.stations[0]?.circumferenceMm ?? Number.NaN;
    const socket = level?.sockets[1]?.circumferenceMm ?? Number.NaN;
    expect(level?.sockets[1]?.compressionPercent).toBeCloseTo((100 * (limb - socket)) / limb, 9);
    expect(beside.notes).toEqual([]);
  });

  it("say where the limb was not measured, a socket never worn, or no dimension recorded", () => {
    const bundle = branched();
    bundle.limbMeasurements = [];
    for (const socket of bundle.sockets) {
      delete socket.limbMeasurementId;
      if (socket.id === "so3") socket.stations = [];
    }
    const { notes, levels } = dimensionsBeside(bundle, ["so1", "so3", "so4"]);
    expect(notes).toEqual([
      "No inside dimensions of socket 3 are recorded.",
      "The limb was not measured within 30 days of socket 1 being worn: its compression of the limb is not known.",
      "Socket 4 names no measurement that it was made from and was never worn: its compression of the limb is not known.",
    ]);
    expect(levels[0]?.sockets[0]).not.toHaveProperty("compressionPercent");
  });
});

describe("how sockets were tried", () => {
  const worn = (socketId: string, wornMinutes: number, loadKg?: number) => ({
    socketId,
    trial: {
      id: `trial of ${socketId}`,
      beganAt: "2026-10-05T10:00:00Z",
      wornMinutes,
      plannedMinutes: 20,
      ...(loadKg === undefined ? {} : { loadKg }),
    },
  });

  it("is told where the trials were not alike", () => {
    expect(triedOtherwise([worn("a", 20, 0.68), worn("b", 12, 0.68)])).toBe(
      "The trials were not alike: worn for 12 to 20 minutes. Fewer and fainter marks may come from that.",
    );
    expect(triedOtherwise([worn("a", 20, 0.68), worn("b", 21, 0.5)])).toBe(
      "The trials were not alike: with other loads. Fewer and fainter marks may come from that.",
    );
  });

  it("and not where they were, or where there is one", () => {
    expect(triedOtherwise([worn("a", 20, 0.68), worn("b", 21, 0.68)])).toBeUndefined();
    expect(triedOtherwise([worn("a", 20), { socketId: "b" }])).toBeUndefined();
  });
});

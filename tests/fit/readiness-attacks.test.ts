/** Ways in which a record could dress as ready what is not; each was tried from outside, and is closed. */
import { describe, expect, it } from "vitest";
import { assessReadiness, mapMarks, replayWearTrial } from "@/lib/fit";
import { mark } from "./marks";
import { changed, decisionOf, fittingOf, gateOf, lookOf, stateOf, trialOf } from "./ready-bundle";
import { checkIn, corrected, goodTrialBut, plan } from "./trial-events";

const at = (minutes: number) => new Date(Date.UTC(2026, 9, 5, 10) + minutes * 60_000).toISOString();

describe("it does not become ready", () => {
  it("by looks at the skin that were made while the socket was worn", () => {
    const bundle = changed((given) => {
      trialOf(given).inspections = [{ id: "early", at: at(5), minutesAfterDoffing: 2, marks: [] }];
    });
    expect(stateOf(bundle, "skin-inspected")).toBe("unknown");
    expect(decisionOf(bundle)).toBe("not enough evidence");
  });

  it("by leaving out when the socket was doffed, so that a look while it was worn came near the end", () => {
    const worn = changed((given) => {
      const trial = trialOf(given);
      const last = trial.events.filter(({ kind }) => kind === "check-in").at(-1)?.at ?? "";
      // A look at the last check-in; less than six minutes before the end, and more before the doffing.
      for (const event of trial.events) {
        if (event.kind === "ended") event.at = new Date(Date.parse(last) + 5.8 * 60_000).toISOString();
        if (event.kind === "doffed") event.at = new Date(Date.parse(last) + 6.3 * 60_000).toISOString();
      }
      trial.inspections = [{ id: "early", at: last, minutesAfterDoffing: 1, marks: [] }];
    });
    const withoutDoffing = structuredClone(worn);
    trialOf(withoutDoffing).events = trialOf(worn).events.filter(({ kind }) => kind !== "doffed");
    expect(stateOf(withoutDoffing, "skin-inspected")).toBe(stateOf(worn, "skin-inspected"));
  });

  it("by such a look before the one that shows a deep mark", () => {
    const bundle = changed((given) => {
      lookOf(given, 0).marks.push(mark({ id: "deep", strength: "deep", fadedAtMin: 10 }));
      trialOf(given).inspections.unshift({ id: "early", at: at(5), minutesAfterDoffing: 0, marks: [] });
    });
    expect(stateOf(bundle, "marks-even")).toBe("not met");
  });

  it.each([
    ["that nobody wrote down as begun", "2026-10-06T10:00:00Z", false],
    ["that is dated after the moment of judgement", "2026-10-30T10:00:00Z", true],
    ["that began before the one that judges, and was never ended", "2026-10-04T10:00:00Z", true],
  ])("where pain of 9 was said in another trial %s", (_, begin, isBegun) => {
    const bundle = changed((given) => {
      const bad = checkIn(0, { comfort: 0, pain: 9 });
      given.wearTrials.push({
        id: "other",
        socketId: trialOf(given).socketId,
        plan,
        events: [
          ...(isBegun ? [{ id: "b2", at: begin, kind: "begun" } as const] : []),
          { ...bad, id: "c2", at: begin.replace("10:00", "10:05") },
        ],
        inspections: [],
      });
    });
    expect(stateOf(bundle, "pain")).toBe("forbids");
    expect(stateOf(bundle, "comfort")).toBe("not met");
    expect(decisionOf(bundle)).toBe("must not be released");
  });

  it("by the order of two fittings of one instant in the file", () => {
    const decisions = [false, true].map((turned) => {
      const bundle = changed((given) => {
        const fitting = fittingOf(given);
        given.fittings.push({ ...fitting, id: "same-time", checks: { ...fitting.checks, circulation: "not met" } });
        if (turned) given.fittings.reverse();
      });
      return decisionOf(bundle);
    });
    expect(decisions[0]).toBe(decisions[1]);
  });

  it("by putting a rating right twice: what was once said stays in sight", () => {
    const events = goodTrialBut(checkIn(10, { pain: 0 }));
    const twice = [...events, corrected(30, "check10", { pain: 9 }), corrected(31, "check10", { pain: 0 })];
    expect(replayWearTrial(plan, twice).verdict).toBe("passed with findings");
    const bundle = changed((given) => {
      trialOf(given).events = twice;
    });
    expect(gateOf(bundle, "pain")).toMatchObject({ state: "close", why: expect.stringContaining("A pain of 9 was put right") });
  });

  it("by a birth in the far future, which makes nobody an adult", () => {
    const bundle = changed((given) => {
      given.episode.cause = "congenital";
      given.episode.birthOn = "9982-01-01";
      // No two measurements far enough apart to show that the limb has settled.
      for (const measured of given.limbMeasurements) measured.at = "2026-09-28T09:00:00Z";
    });
    expect(stateOf(bundle, "limb-settled")).toBe("unknown");
  });
});

describe("a sentence says no more than was judged", () => {
  it("names the levels that both sockets have, where one has more", () => {
    const bundle = changed((given) => {
      given.sockets[1]?.stations.push({ distanceMm: 200, circumferenceMm: 600 });
    });
    expect(gateOf(bundle, "socket-described").why).toContain("the 5 levels that both have, of 6, within");
  });
});

describe("a file that keeps to the schema", () => {
  it("is judged in no time, however absurd: a mark a thousand times as wide as the limb is round lies all round it", () => {
    const wide = mark({ widthMm: 1000, heightMm: 10, angleDeg: 90 });
    const cells = mapMarks([wide], 170, { circumferenceMm: 1e-6 }).filter(({ grade }) => grade > 0);
    expect(cells.map(({ aspect }) => aspect)).toEqual(["anterior", "lateral", "posterior", "medial"]);
    expect(mapMarks([{ ...wide, widthMm: 18, angleDeg: 90 + 360e6 }], 170)).toEqual(mapMarks([{ ...wide, widthMm: 18 }], 170));
    const bundle = changed((given) => {
      for (const station of given.limbMeasurements.flatMap(({ stations }) => stations)) station.circumferenceMm = 1e-6;
    });
    expect(assessReadiness(bundle).gates).toHaveLength(20);
  });
});

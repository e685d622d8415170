import { describe, expect, it } from "vitest";
import { assessReadiness, defaultLimits, limitsOfVersion, limitsWith, limitValue } from "@/lib/fit";
import rules1 from "./fit-rules-1.json";
import { readyBundle } from "./ready-bundle";

describe("the rules of an earlier day", () => {
  it("keep the values that they had: who changes one gives the rules a new version and writes the old value down", () => {
    const then = Object.fromEntries(limitsOfVersion("fit-rules/1").list.map(({ id, value }) => [id, value]));
    expect(then).toEqual(rules1);
  });

  it("explain an assessment by the limits that it was made with, whatever the clinic has set since", () => {
    const ofThen = limitsWith({ "comfort-last-least": 9, "fresh-days": 21 });
    const then = assessReadiness(readyBundle(), ofThen);
    expect(then.rulesVersion).toBe("fit-rules/1; comfort-last-least 9; fresh-days 21");
    expect(assessReadiness(readyBundle(), limitsOfVersion(then.rulesVersion))).toEqual(then);
    expect(assessReadiness(readyBundle(), defaultLimits).decision).not.toBe(then.decision);
  });

  it("keep a setting that no clinic may choose any more", () => {
    expect(limitValue(limitsOfVersion("fit-rules/1; fresh-days 400"), "fresh-days")).toBe(400);
    expect(() => limitsWith({ "fresh-days": 400 })).toThrow("fresh-days");
  });

  it("today's limits name rules that are kept", () => {
    expect(limitsOfVersion(defaultLimits.version)).toEqual(defaultLimits);
  });

  it.each([
    "",
    "fit-rules/0",
    "toString",
    "fit-rules/1; nonsense 3",
    "fit-rules/1; fresh-days",
    "fit-rules/1; fresh-days x",
    "fit-rules/1; fresh-days 1 2",
  ])("are not made up from %j", (version) => {
    expect(() => limitsOfVersion(version)).toThrow("rulesVersion");
  });
});

import { describe, expect, it } from "vitest";
import { assessReadiness, defaultLimits, limitById, limitsWith, limitValue, sources } from "@/lib/fit";
import { decisionOf, readyBundle } from "./ready-bundle";

describe("limits", () => {
  it("have a source each, lie within their range, and only a clinic setting has one to be set within", () => {
    for (const limit of defaultLimits.list) {
      expect(sources).toHaveProperty(limit.source);
      expect(limit.value).toBeGreaterThanOrEqual(limit.low);
      expect(limit.value).toBeLessThanOrEqual(limit.high);
      if (limit.kind !== "clinic setting") expect([limit.low, limit.high]).toEqual([limit.value, limit.value]);
    }
    expect(new Set(defaultLimits.list.map(({ id }) => id)).size).toBe(defaultLimits.list.length);
  });

  it("take a clinic's own setting, and say so in their version", () => {
    const own = limitsWith({ "fresh-days": 14, "comfort-last-least": 8 });
    expect(limitValue(own, "fresh-days")).toBe(14);
    expect(limitValue(own, "limb-measured-days")).toBe(30);
    expect(own.version).toBe("fit-rules/1; comfort-last-least 8; fresh-days 14");
    expect(limitsWith({}).version).toBe(defaultLimits.version);
    expect(limitValue(defaultLimits, "fresh-days")).toBe(28);
  });

  it.each([
    ["pain-most", 5, "common practice"],
    ["settled-percent", 7, "published"],
    ["comfort-error", 0, "from memory"],
    ["fresh-days", 365, "expected 7 to 42 days"],
    ["fresh-days", Number.NaN, "expected 7 to 42 days"],
    ["pain", 3, "no such limit"],
  ])("do not take %s = %s", (id, value, why) => {
    expect(() => limitsWith({ [id]: value })).toThrow(why);
  });

  it("do not let one limit pass its partner", () => {
    expect(() => limitsWith({ "comfort-never-below": 8 })).toThrow("comfort-never-below");
    expect(limitsWith({ "comfort-never-below": 8, "comfort-last-least": 8 }).list).toHaveLength(defaultLimits.list.length);
  });

  it("decide: the same evidence by another limit is another decision, which names its rules", () => {
    const stricter = limitsWith({ "comfort-last-least": 9 });
    expect(decisionOf(readyBundle())).toBe("ready");
    expect(assessReadiness(readyBundle(), stricter)).toMatchObject({
      decision: "not ready",
      rulesVersion: "fit-rules/1; comfort-last-least 9",
    });
  });

  it("are found by id", () => {
    expect(limitById(defaultLimits, "upper-displacement-mm")).toMatchObject({ value: 10, unit: "mm", kind: "clinic setting" });
    expect(limitById(defaultLimits, "toString")).toBeUndefined();
  });
});

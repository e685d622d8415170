import { expect, test } from "vitest";
import { looksStand } from "@/app/live/_device/looks-due";
import type { SkinMark } from "@/lib/fit/bundle";
import { look, mark as markOf } from "../fit/marks";

const mark = (id: string, changed: Partial<SkinMark> = {}) => markOf({ id, ...changed });

test("looks are due at 0, 5, 10 and 20 minutes; a little early counts, too early does not", () => {
  expect(looksStand([])).toEqual({ now: "due", atMinute: 0 });
  expect(looksStand([look(0.5, mark("a"))])).toEqual({ now: "due", atMinute: 5 });
  expect(looksStand([look(0, mark("a")), look(3, mark("a"))])).toEqual({ now: "due", atMinute: 5 });
  expect(looksStand([look(0, mark("a")), look(4.2, mark("a"))])).toEqual({ now: "due", atMinute: 10 });
  // Nobody looked before: what was missed is missed.
  expect(looksStand([look(11, mark("a"))])).toEqual({ now: "due", atMinute: 20 });
  expect(looksStand([look(0, mark("a")), look(20, mark("a"))])).toEqual({ now: "late" });
});

test("it is over when nothing is left to see, and not when a mark was only left out", () => {
  expect(looksStand([look(0)])).toEqual({ now: "gone" });
  expect(looksStand([look(0, mark("a")), look(5, mark("a", { strength: "none", blanches: "not tested" }))])).toEqual({
    now: "gone",
  });
  expect(looksStand([look(0, mark("a"), mark("b")), look(5, mark("a", { strength: "none" }))])).toEqual({
    now: "due",
    atMinute: 10,
  });
  expect(looksStand([look(0, mark("a")), look(5, mark("a", { strength: "none", firm: true }))])).toEqual({
    now: "due",
    atMinute: 10,
  });
});

test("broken, purple, or not pale under a finger at 20 minutes: somebody is called, whatever is seen later", () => {
  const gone = mark("a", { strength: "none", blanches: "not tested" });
  expect(looksStand([look(0, mark("a", { broken: true })), look(5, gone)]).now).toBe("call");
  expect(looksStand([look(0, mark("a", { strength: "purple" })), look(5, gone)]).now).toBe("call");
  expect(looksStand([look(0, mark("a", { blanches: "no" }))])).toEqual({ now: "due", atMinute: 5 });
  expect(looksStand([look(20, mark("a", { blanches: "no" }))]).now).toBe("call");
  // What is worse and seen later is not hidden behind what was seen first.
  const worse = looksStand([look(0, mark("a", { broken: true })), look(5, mark("a", { strength: "purple" }))]);
  expect(worse).toEqual({ now: "call", why: "The skin is broken or blistered. The skin is purple or black in a place." });
});

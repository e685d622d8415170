import { expect, test } from "vitest";
import { asTypedIn } from "@/app/fittings/[fitting]/correct/as-typed";
import { fromUnit } from "@/lib/fit/units";

test("a value stands in its field as it was typed, in whichever unit, and comes back the same", () => {
  // NIST SP 811: 1 lbf = 4.4482216152605 N, 1 in = 25.4 mm.
  expect(asTypedIn(5 * 4.4482216152605, "lbf", "N")).toBe("5");
  expect(asTypedIn(fromUnit(3.125, "in"), "in", "mm")).toBe("3.125");
  expect(asTypedIn(12, "in", "mm")).toBe("12 mm");
  expect(asTypedIn(22, "lbf", "N")).toBe("22 N");
  expect(asTypedIn(2.7, "mm", "mm")).toBe("2.7");
  expect(asTypedIn(1 / 3, "mm", "mm")).toBe(String(1 / 3));
});

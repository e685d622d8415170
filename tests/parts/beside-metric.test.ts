import { expect, test } from "vitest";
import { withOwnUnits } from "@/app/_parts/beside-metric";

const imperial = { length: "in", mass: "lb", force: "lbf" } as const;

// 1 in = 25.4 mm, 1 lb = 0.45359237 kg, 1 lbf = 4.4482216152605 N: NIST SP 811 (2008), appendix B.8.
test.each([
  ["up to 90 N, show slack", "up to 90 N (20.2 lbf), show slack"],
  ["A displacement is between 0 and 200 mm.", "A displacement is between 0 and 200 mm (0 and 7.87 in)."],
  ["1.6 ± 2.0 mm at 90 N", "1.6 ± 2.0 mm (0.06 ± 0.08 in) at 90 N (20.2 lbf)"],
  ["trim −3 mm", "trim −3 mm (−0.12 in)"],
  ["8,5 kg", "8,5 kg (18.74 lb)"],
])("%s", (metric, both) => {
  expect(withOwnUnits(metric, imperial)).toBe(both);
});

test.each(["0.2 mm/N", "12 mm (0.47 in)", "a 20 minute trial", "3 N·m", "20 Newfoundlanders", "no figure in mm"])(
  "%s stays",
  (words) => {
    expect(withOwnUnits(words, imperial)).toBe(words);
  },
);

test("who has chosen metric units reads what is written", () => {
  expect(withOwnUnits("up to 90 N", { length: "mm", mass: "kg", force: "N" })).toBe("up to 90 N");
});

/** How much of a disc lies in a rectangle, for rectangles of every kind. */
import { describe, expect, it } from "vitest";
import { discInRectangle } from "@/lib/fit/disc-in-rectangle";

describe("part of a disc in a rectangle", () => {
  /** By strips of the disc, as independent of the formula as can be. */
  function byStrips({ left, right, bottom, top }: { left: number; right: number; bottom: number; top: number }): number {
    const strips = 5_000;
    let area = 0;
    for (let strip = 0; strip < strips; strip++) {
      const x = -1 + (2 * strip + 1) / strips;
      if (x <= left || x >= right) continue;
      const half = Math.sqrt(1 - x * x);
      area += Math.max(0, Math.min(half, top) - Math.max(-half, bottom)) * (2 / strips);
    }
    return area / Math.PI;
  }
  const cuts = [Number.NEGATIVE_INFINITY, -1, -0.8, -0.3, 0, 0.25, 0.7, 1, 1.4];
  const pairs = cuts.flatMap((from) => cuts.filter((to) => to > from).map((to) => [from, to] as const));

  it("is what the sum of strips gives, for rectangles of every kind", () => {
    for (const [left, right] of pairs)
      for (const [bottom, top] of pairs.filter((_, index) => index % 3 === 0)) {
        const rectangle = { left, right, bottom, top };
        expect(Math.abs(discInRectangle(rectangle) - byStrips(rectangle)), JSON.stringify(rectangle)).toBeLessThan(1e-3);
      }
  });

  it("is nothing where the rectangle is empty or turned round", () => {
    const whole = { left: -1, right: 1, bottom: -1, top: 1 };
    expect(discInRectangle(whole)).toBeCloseTo(1, 12);
    for (const turned of [
      { left: 1, right: -1 },
      { bottom: 1, top: -1 },
      { left: 0, right: 0 },
      { bottom: 0.5, top: 0.5 },
    ])
      expect(discInRectangle({ ...whole, ...turned })).toBe(0);
    // Turned round twice it is still none.
    expect(discInRectangle({ left: 1, right: -1, bottom: 1, top: -1 })).toBe(0);
  });
});

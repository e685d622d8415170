import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { expect, test } from "vitest";
import { inShort, stateShown } from "@/app/_parts/motion-field";
import { pullsInWords } from "@/app/_parts/pulls-field";
import { PullsPicture, ticksTo } from "@/app/_parts/pulls-picture";
import { motion, type Pull, suspension } from "@/lib/fit";

const rule = { loadN: 45, limitMm: 10 };
const pullsOf = (...pairs: [number, number][]): Pull[] => pairs.map(([loadN, displacementMm]) => ({ loadN, displacementMm }));
const pictureOf = (pulls: Pull[]) =>
  renderToStaticMarkup(createElement(PullsPicture, { pulls, rule, reading: suspension(pulls, rule) }));
/** Without the ticks, each of which ends in `h4`. */
const pathsOf = (svg: string) => (svg.match(/<path/g)?.length ?? 0) - (svg.match(/h4"/g)?.length ?? 0);
/** Slope by hand: loads about their mean +13.3, −11.7, −1.7; the products sum to −63, so the line falls. */
const falling = pullsOf([45, 1], [20, 3], [30, 25]);
/** 0.1 mm a newton from 0.5 mm, by hand. */
const rising = pullsOf([10, 1.5], [20, 2.5], [45, 5]);

test("less displaced under more load gives no slack and no give in words", () => {
  const words = pullsInWords(falling, suspension(falling, rule));
  expect(words).toContain("Less displaced under more load: 1.0 mm at 45 N, 25.0 mm at 30 N.");
  expect(words).toContain("Pull again.");
  expect(words).not.toMatch(/Slack|−/);
  expect(pullsInWords(rising, suspension(rising, rule))).toContain("Slack 0.5 mm, then 1.00 mm for every 10 N.");
});

test("a falling line is said also where no pull is less than the one before it", () => {
  // Means at the loads: 6 mm at 10 N, 4 mm at 20 N.
  const pulls = pullsOf([10, 9], [10, 3], [20, 4]);
  expect(pullsInWords(pulls, suspension(pulls, rule))).toContain("would fall");
});

test("no line and no error bar are drawn where the line falls; the pulls are, and the axis has its figures", () => {
  const [drawn, withLine] = [pictureOf(falling), pictureOf(rising)];
  expect(drawn.match(/<circle/g)).toHaveLength(3);
  // The axis, the limit and the rule's load; with a line, it and its error as well.
  expect([pathsOf(drawn), pathsOf(withLine)]).toEqual([3, 5]);
  expect(drawn).toContain("No line: it would fall.");
  expect(drawn).toContain(">20</text>");
});

test.each([
  [30, [0, 10, 20, 30]],
  [12, [0, 5, 10]],
  [3, [0, 1, 2, 3]],
  [0.5, [0, 0.1, 0.2, 0.3, 0.4, 0.5]],
  [240, [0, 50, 100, 150, 200]],
])("the figures of an axis up to %s", (most, figures) => {
  expect(ticksTo(most)).toEqual(figures);
});

test("a gain of motion is doubtful and never shown as met; what fails still fails", () => {
  const lost = { judges: "lost", limitDeg: 10 } as const;
  const kept = { judges: "kept", limitDeg: 120 } as const;
  const gained = motion(138, 150, lost);
  expect([stateShown(gained), inShort(gained)]).toEqual(["unknown", "12° gained: doubtful"]);
  expect([stateShown(motion(138, 138, lost)), stateShown(motion(138, 131, lost))]).toEqual(["met", "close"]);
  expect(stateShown(motion(80, 90, kept))).toBe("not met");
  expect(inShort(motion(130, 140, kept))).toContain("10° gained: doubtful");
});

/** What every page must be, checked in the page as it stands. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { expect, type Page } from "@playwright/test";
import type { AxeResults, RunOptions } from "axe-core";

const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Rules of WCAG 2.2 A and AA, and what axe takes for good practice. Only what is wrong is put together: a quarter of the time. */
const options: RunOptions = {
  runOnly: { type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] },
  reporter: "no-passes",
};

/** @param where told where something is wrong: an address, a colour scheme */
export async function expectNoViolations(page: Page, where = ""): Promise<void> {
  await page.evaluate(axeSource);
  const violations = await page.evaluate(async (asked) => {
    const { axe } = globalThis as unknown as { axe: { run: (options: RunOptions) => Promise<AxeResults> } }; // put there by the line before
    return (await axe.run(asked)).violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`);
  }, options);
  expect(violations, where).toEqual([]);
}

export async function expectNothingWiderThanTheWindow(page: Page, where = ""): Promise<void> {
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(overflow, `${where} is wider than the window`).toBeLessThanOrEqual(0);
}

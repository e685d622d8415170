// @ts-check
// What `npm test` runs: the quick and telling first, and side by side what leaves a core free.
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { ensureBuilt, ensureClient } from "./build.mjs";
import { browserFile, root } from "./environment.mjs";
import { ensurePackages } from "./packages.mjs";
import { isInstalled, lastLines, run, runScript, stopChildren } from "./run.mjs";
import { explain, secondsSince, step } from "./say.mjs";
import { Stop } from "./stop.mjs";
import { installSystemPackages, mayInstall } from "./system-packages.mjs";

const tally = { passed: 0, failed: 0 };

/** @type {{ title: string, seconds: number, beside: boolean }[]} what ran, and for how long */
const spent = [];

/**
 * @param {{ all: boolean }} manner all: with what is slow and rare, too
 * @returns {Promise<number>} exit code
 */
export async function runChecks({ all }) {
  const begun = performance.now();
  const reports = mkdtempSync(path.join(tmpdir(), "fitting-ledger-reports-"));
  if (all) Object.assign(process.env, { FITTING_LEDGER_TEST_ALL: "yes", FIT_RUNS: process.env.FIT_RUNS ?? "1000" });
  try {
    await runAll(reports);
  } catch (error) {
    // A step that broke before it could count anything is a failure all the same.
    if (tally.failed === 0) tally.failed = 1;
    stopChildren("SIGTERM");
    explain(error);
  } finally {
    rmSync(reports, { recursive: true, force: true });
  }
  sayWhereTheTimeWent(performance.now() - begun);
  console.log(`${tally.passed} passed, ${tally.failed} failed`);
  return tally.failed === 0 ? 0 : 1;
}

/** @param {string} reports a folder for the counts */
async function runAll(reports) {
  console.log("Checking Fitting Ledger\n");
  await timed("Packages", ensurePackages);
  await timed("Browser", ensureBrowser);
  await timed("Database client", () => step("Database client", ensureClient));
  await check("Types of routes", () => runScript("next", ["typegen"]), "Next could not read the routes in app/.");
  // What needs a core for itself, beside what leaves one free. The first that fails ends all.
  await Promise.all([testUnits(path.join(reports, "units.json")), checkSources()]);
  await testFaults(path.join(reports, "faults.json"));
  await testScreens(path.join(reports, "screens.json"));
}

/** One after the other, beside the unit tests. */
async function checkSources() {
  await check(
    "Style",
    () => runScript("biome", ["check", "--error-on-warnings"]),
    "npx biome check --write mends most of it.",
    true,
  );
  const arrows = () => runScript("depcruise", arrowWords());
  await check("Arrows", arrows, "tests/arrows.mjs says which folder may know which, and why.", true);
  await check("Types", () => runScript("tsc", ["--noEmit"]), "npx tsc --noEmit shows them all.", true);
  await check("Site", buildAsCheck, "npx next build shows it again.", true);
}

/**
 * @template Result
 * @param {string} title
 * @param {() => Promise<Result>} work
 * @param {boolean} [beside] others ran at the same time
 */
async function timed(title, work, beside = false) {
  const begun = performance.now();
  try {
    return await work();
  } finally {
    spent.push({ title, seconds: (performance.now() - begun) / 1000, beside });
  }
}

/** @param {number} tookMs */
function sayWhereTheTimeWent(tookMs) {
  console.log("\nWhere the time went (with + : beside others):");
  for (const { title, seconds, beside } of spent.toSorted((a, b) => b.seconds - a.seconds))
    if (seconds >= 1) console.log(`  ${seconds.toFixed(0).padStart(5)} s ${beside ? "+" : " "} ${title}`);
  console.log(`All of it took ${(tookMs / 1000).toFixed(0)} s.`);
}

/**
 * The browser, and the type that pages are laid out with until their own has come.
 *
 * @throws {Stop} where there is no browser and none can be installed
 */
async function ensureBrowser() {
  const isThere = existsSync(browserFile);
  const hasType = isInstalled("fc-list") && (await run("fc-list", [])).output.includes("Liberation");
  const missing = [...(isThere ? [] : ["chromium-headless-shell"]), ...(hasType ? [] : ["fonts-liberation", "fontconfig"])];
  if (!isThere && (process.env.CHROMIUM !== undefined || !mayInstall()))
    throw new Stop(
      `There is no browser at ${browserFile}.`,
      "Install Chromium (on Debian, as root: apt-get install -y chromium-headless-shell), or name one: CHROMIUM=/path/to/chromium npm test",
    );
  if (missing.length === 0 || !mayInstall()) return;
  await step("Chromium and its type, by apt-get", async () => {
    await installSystemPackages(missing);
    return "installed";
  });
}

/**
 * One check that passes or fails as a whole.
 *
 * @param {string} title
 * @param {() => Promise<import("./run.mjs").Ended>} work
 * @param {string} remedy
 * @param {boolean} [beside] others run at the same time
 */
async function check(title, work, remedy, beside = false) {
  const inOrder = async () => {
    const { code, output } = await work();
    if (code !== 0) {
      tally.failed += 1;
      throw new Stop(`${title}: not in order.\n${lastLines(output, 60)}`, remedy);
    }
    tally.passed += 1;
    return "in order";
  };
  await timed(title, () => step(title, inOrder, { beside }), beside);
}

function arrowWords() {
  return [
    "--config",
    "tests/arrows.mjs",
    ...["app", "lib", "prisma", "proxy.ts", "tests"].filter((name) => existsSync(path.join(root, name))),
  ];
}

async function buildAsCheck() {
  try {
    return { code: 0, output: await ensureBuilt() };
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    return { code: 1, output: error.message };
  }
}

/** @param {string} report where vitest writes its counts */
const vitestWords = (report) => [
  "run",
  "--config",
  "tests/vitest.config.ts",
  "--reporter=default",
  "--reporter=json",
  `--outputFile.json=${report}`,
];

/** @param {string} report */
async function testUnits(report) {
  const tests = () => runScript("vitest", vitestWords(report), { live: true });
  await testsWithCounts("Science, store and exchange", report, tests, countedByVitest, true);
}

/** @param {string} report */
async function testFaults(report) {
  const tests = () => runScript("vitest", [...vitestWords(report), "--mode", "faults"], { live: true });
  await testsWithCounts("A server that is killed", report, tests, countedByVitest);
}

/** @param {{ numPassedTests: number, numFailedTests: number }} report */
const countedByVitest = (report) => ({ passed: report.numPassedTests, failed: report.numFailedTests });

/** @param {string} report where Playwright writes its counts */
async function testScreens(report) {
  const manner = { live: true, env: { PLAYWRIGHT_JSON_OUTPUT_FILE: report, CHROMIUM: browserFile } };
  const words = ["test", "--config", "tests/playwright.config.ts"];
  await testsWithCounts("Screens, in a browser", report, () => runScript("playwright", words, manner), countedByPlaywright);
}

/** @param {{ stats: { expected: number, unexpected: number, flaky: number } }} report */
const countedByPlaywright = ({ stats }) => ({ passed: stats.expected, failed: stats.unexpected + stats.flaky });

/**
 * @template Report
 * @param {string} title
 * @param {string} report the file that the program under `work` writes
 * @param {() => Promise<import("./run.mjs").Ended>} work
 * @param {(report: Report) => { passed: number, failed: number }} read
 * @param {boolean} [beside] others run at the same time
 */
async function testsWithCounts(title, report, work, read, beside = false) {
  console.log(`  ${title}:`);
  const begun = performance.now();
  const { code } = await timed(title, work, beside);
  const counted = existsSync(report) ? read(JSON.parse(readFileSync(report, "utf8"))) : { passed: 0, failed: 0 };
  tally.passed += counted.passed;
  tally.failed += counted.failed;
  if (code !== 0) {
    // A file that could not even be loaded has no tests to count.
    if (counted.failed === 0) tally.failed += 1;
    throw new Stop(`${title}: not in order (${secondsSince(begun)}).`, "The lines above name each test that failed, and where.");
  }
  console.log(`  ${title}: ${counted.passed} in order (${secondsSince(begun)})`);
}

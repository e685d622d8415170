/**
 * The page of an episode and that of its trends, with twelve sockets and three hundred marks: when the largest thing on
 * it is painted, how far anything moves while it loads, and how long the server takes against a series of three.
 */
import type { Browser, Page } from "@playwright/test";
import { type Bundle, seriesOf } from "@/lib/fit";
import { closeDatabase, database } from "@/lib/records/database";
import { episodeAsOf } from "@/lib/records/see-episode";
import { onInventedClinic, signIn } from "./invented-clinic";
import { addSeries, marksOfSocket } from "./long-series";
import { percentile } from "./typing";

const sockets = { long: 12, short: 3 };
const loads = 5;
const pairs = 40;
const firstRuns = 8;
const bar = { paintMs: 1000, shift: 0.02, ratio: 2, seriesMs: 30 };

declare global {
  interface Window {
    loading: { paintMs: number; shift: number };
  }
}

/** Runs in the page before it loads. */
function watchLoading() {
  window.loading = { paintMs: 0, shift: 0 };
  new PerformanceObserver((list) => {
    for (const { startTime } of list.getEntries()) window.loading.paintMs = startTime;
  }).observe({ type: "largest-contentful-paint", buffered: true });
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries())
      if ("value" in entry && typeof entry.value === "number") window.loading.shift += entry.value;
  }).observe({ type: "layout-shift", buffered: true });
}

const median = (values: readonly number[]): number => percentile(values, 0.5);

interface Addresses {
  long: string;
  short: string;
}

/** On a device that has seen the site before, and on one that has nothing of it yet but is signed in. */
async function loadedWithinBars(browser: Browser, page: Page, name: string, { long }: Addresses): Promise<boolean[]> {
  const again: Window["loading"][] = [];
  const first: Window["loading"][] = [];
  const { origin } = new URL(page.url());
  for (let load = 0; load < loads; load++) {
    again.push(await loading(page, origin + long));
    const context = await browser.newContext({
      storageState: await page.context().storageState(),
      viewport: page.viewportSize(),
    });
    const fresh = await context.newPage();
    await fresh.addInitScript(watchLoading);
    first.push(await loading(fresh, origin + long));
    await context.close();
  }
  return [
    withinLoading(`${name}, seen before`, again),
    withinLoading(`${name}, on a device that has nothing of the site yet`, first),
  ];
}

async function loading(page: Page, address: string): Promise<Window["loading"]> {
  await page.goto(address, { waitUntil: "networkidle" });
  await page.waitForTimeout(500);
  return page.evaluate(() => window.loading);
}

function withinLoading(name: string, found: readonly Window["loading"][]): boolean {
  const paintMs = median(found.map((load) => load.paintMs));
  const shift = Math.max(...found.map((load) => load.shift));
  const within = paintMs > 0 && paintMs < bar.paintMs && shift < bar.shift;
  console.log(
    `${name}, ${sockets.long} sockets and ${sockets.long * marksOfSocket} marks: largest paint after ${paintMs.toFixed(0)} ms (median of ${found.length}; bar ${bar.paintMs} ms), layout shift at most ${shift.toFixed(4)} (bar ${bar.shift}): ${within ? "within" : "misses"}`,
  );
  return within;
}

async function servedWithinBar(page: Page, name: string, { long, short }: Addresses): Promise<boolean> {
  const timed = async (address: string) => {
    const from = performance.now();
    const answer = await page.request.get(address);
    await answer.body();
    if (!answer.ok()) throw new Error(`${address} answered ${answer.status()}`);
    return performance.now() - from;
  };
  const found: { long: number; short: number }[] = [];
  for (let pair = 0; pair < firstRuns + pairs; pair++) {
    // In turn, so that neither always comes first.
    const [first, second] = pair % 2 === 0 ? [short, long] : [long, short];
    const [one, other] = [await timed(first), await timed(second)];
    if (pair >= firstRuns) found.push(pair % 2 === 0 ? { short: one, long: other } : { long: one, short: other });
  }
  const ratio = median(found.map((pair) => pair.long / pair.short));
  const within = ratio <= bar.ratio;
  console.log(
    `${name}, the server's answer: ${median(found.map((pair) => pair.long)).toFixed(0)} ms with ${sockets.long} sockets against ${median(found.map((pair) => pair.short)).toFixed(0)} ms with ${sockets.short} = ${ratio.toFixed(2)} × (median of ${pairs} pairs; bar ${bar.ratio} ×): ${within ? "within" : "misses"}`,
  );
  return within;
}

/** The science alone, of bundles read anew for each time. */
async function seriesWithinBar(file: string, ids: Addresses): Promise<boolean> {
  const [long, short] = [await bundleText(file, ids.long), await bundleText(file, ids.short)];
  const timed = (text: string) => {
    const bundle: Bundle = JSON.parse(text);
    const from = performance.now();
    seriesOf(bundle);
    return performance.now() - from;
  };
  const cold = timed(long);
  const found = Array.from({ length: firstRuns + pairs }, () => ({ short: timed(short), long: timed(long) })).slice(firstRuns);
  const longMs = median(found.map((pair) => pair.long));
  const shortMs = median(found.map((pair) => pair.short));
  const within = longMs <= bar.seriesMs;
  console.log(
    `seriesOf: ${longMs.toFixed(1)} ms with ${sockets.long} sockets (the first time ${cold.toFixed(0)} ms; bar ${bar.seriesMs} ms), ${shortMs.toFixed(1)} ms with ${sockets.short} = ${(longMs / shortMs).toFixed(1)} ×: ${within ? "within" : "misses"}`,
  );
  return within;
}

async function bundleText(file: string, episodeId: string): Promise<string> {
  process.env.DATABASE_URL = `file:${file}`;
  try {
    return JSON.stringify((await episodeAsOf(await database(), episodeId, new Date())).bundle);
  } finally {
    await closeDatabase();
  }
}

export const seriesWithinBars = () =>
  onInventedClinic(async (browser, { address, file }) => {
    const ids = { long: await addSeries(file, sockets.long), short: await addSeries(file, sockets.short) };
    const held = [await seriesWithinBar(file, ids)];
    const page = await browser.newPage({ baseURL: address, viewport: { width: 1440, height: 900 } });
    await signIn(page);
    await page.addInitScript(watchLoading);
    for (const [name, end] of [
      ["The page of an episode", ""],
      ["The page of its trends", "/trends"],
    ] as const) {
      const of = { long: `/episodes/${ids.long}${end}`, short: `/episodes/${ids.short}${end}` };
      held.push(await servedWithinBar(page, name, of), ...(await loadedWithinBars(browser, page, name, of)));
    }
    return held;
  });

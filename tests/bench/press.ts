/**
 * The live trial with no network, on a processor slowed down four times: from the press on "Save this check-in" to the
 * paint that says so, and to the word that it is kept on the device. And the script of its page, compressed.
 */
import { gzipSync } from "node:zlib";
import type { Page } from "@playwright/test";
import Database from "better-sqlite3";
import { onInventedClinic, signIn } from "./invented-clinic";
import { percentile } from "./typing";

/** As fast as this machine, and as slow as a cheap phone. */
const slowdowns = [1, 4];
const presses = 40;
const bar = { feedbackMs: 100, scriptBytes: 120_000 };

declare global {
  interface Window {
    /** When the button was pressed last, and what the status lines said before. */
    press: { atMs: number; said: string; kept: string };
    saidMs: number[];
    keptMs: number[];
  }
}

/** Runs in the page: from the press on the button until the status lines have changed and are painted. */
function watchPresses() {
  window.press = { atMs: 0, said: "", kept: "" };
  window.saidMs = [];
  window.keptMs = [];
  new MutationObserver(() => {
    const text = document.body.textContent;
    const now = { said: text.match(/Check-in \d+ saved/)?.[0] ?? "", kept: text.match(/device: \d+ to send/)?.[0] ?? "" };
    const { press } = window;
    for (const what of ["said", "kept"] as const) {
      if (press.atMs === 0 || now[what] === "" || now[what] === press[what]) continue;
      press[what] = now[what];
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => window[`${what}Ms`].push(performance.now() - press.atMs);
        port2.postMessage(null);
      });
    }
  }).observe(document.body, { subtree: true, childList: true, characterData: true });
  addEventListener(
    "click",
    ({ timeStamp, target }) => {
      if (target instanceof HTMLElement && target.textContent === "Save this check-in") window.press.atMs = timeStamp;
    },
    { capture: true },
  );
}

async function checkIn(page: Page) {
  for (const [question, figure] of [
    [/How comfortable/, "8"],
    [/How much does it hurt/, "1"],
    [/How hard/, "3"],
  ] as const)
    await page.getByRole("group", { name: question }).getByText(figure, { exact: true }).click();
  const wearer = page.getByRole("radio", { name: "the wearer" });
  if (!(await wearer.isChecked())) await wearer.check();
  await page.getByRole("button", { name: "Save this check-in" }).click();
  await page.waitForTimeout(150);
}

async function pressAtRate(page: Page, rate: number, slow: (rate: number) => Promise<unknown>): Promise<boolean> {
  await page.evaluate(() => {
    window.saidMs = [];
    window.keptMs = [];
  });
  await slow(rate);
  for (let press = 0; press < presses; press++) await checkIn(page);
  await slow(1);
  const [said, kept] = await page.evaluate(() => [window.saidMs, window.keptMs] as const);
  const saidMs = percentile(said, 0.95);
  const holds = said.length === presses && saidMs < bar.feedbackMs;
  console.log(
    `A check-in with no network at ${rate} × slow-down: said to be saved within ${percentile(said, 0.5).toFixed(0)} ms (median), ${saidMs.toFixed(0)} ms (95 % of ${said.length}; bar ${bar.feedbackMs} ms), counted as to send within ${percentile(kept, 0.95).toFixed(0)} ms: ${holds ? "within" : "misses"}`,
  );
  return holds;
}

export const pressWithinBar = () =>
  onInventedClinic(async (browser, { address, file }) => {
    const page = await browser.newPage({ baseURL: address, viewport: { width: 390, height: 780 } });
    await signIn(page);
    await page.goto(`/live/trial#${runningTrial(file)}`);
    await page.getByRole("button", { name: "Save this check-in" }).waitFor();
    const script = await page.locator("script[src]").getAttribute("src");
    const bytes = gzipSync(await (await page.request.get(script ?? "")).body()).length;
    await page.context().setOffline(true);
    await page.evaluate(watchPresses);
    const cpu = await page.context().newCDPSession(page);
    const within = bytes <= bar.scriptBytes;
    console.log(`The live screen's script: ${(bytes / 1000).toFixed(1)} kB gzipped (bar ${bar.scriptBytes / 1000} kB)`);
    const held: boolean[] = [];
    for (const rate of slowdowns)
      held.push(await pressAtRate(page, rate, (of) => cpu.send("Emulation.setCPUThrottlingRate", { rate: of })));
    return within && held.every(Boolean);
  });

function runningTrial(file: string): string {
  const database = new Database(file, { readonly: true });
  const row = database.prepare("SELECT id FROM WearTrial WHERE state = 'running'").get();
  database.close();
  return (row as { id: string }).id; // better-sqlite3 types a row as unknown
}

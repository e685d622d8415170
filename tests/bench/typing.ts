/**
 * Recording a fitting with thirty marks, against the same form while it is empty, on a processor slowed down four times:
 * the time from a key or a movement of the pointer to the next paint.
 */
import type { Page } from "@playwright/test";
import Database from "better-sqlite3";
import { onInventedClinic, signIn } from "./invented-clinic";

const slowdown = 4;
const marks = 30;
const keys = 120;
const moves = 120;
const bar = { p95Ms: 50, ratio: 2 };

declare global {
  interface Window {
    paintedAfter: number[];
  }
}

/** Runs in the page: the milliseconds from each event to the first task after the frame that shows what came of it. */
function watchPaints() {
  window.paintedAfter = [];
  for (const kind of ["keydown", "pointermove"])
    addEventListener(
      kind,
      ({ timeStamp }) =>
        requestAnimationFrame(() => {
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = () => window.paintedAfter.push(performance.now() - timeStamp);
          port2.postMessage(null);
        }),
      { capture: true },
    );
}

/** What the events of an action took. */
async function timed(page: Page, act: () => Promise<void>): Promise<number[]> {
  await page.evaluate(() => {
    window.paintedAfter = [];
  });
  await act();
  await page.waitForTimeout(300);
  return page.evaluate(() => window.paintedAfter);
}

async function typeInto(page: Page, name: string) {
  await page.getByRole("textbox", { name }).first().click();
  for (let key = 0; key < keys; key++) {
    await page.keyboard.press(key % 2 === 0 ? "Digit8" : "Backspace");
    await page.waitForTimeout(80);
  }
}

/** Draws a mark, from a free place of the map to and fro. */
async function drag(page: Page) {
  const box = await page.getByRole("group", { name: "Map of the marks" }).boundingBox();
  if (!box) throw new Error("the map is on the page");
  const [x, y] = [box.x + box.width * 0.62, box.y + box.height * 0.12];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let move = 0; move < moves; move++)
    await page.mouse.move(x + 24 + 20 * Math.sin(move / 10), y + 24 + 20 * Math.cos(move / 7));
  await page.mouse.up();
}

async function addMark(page: Page, number: number) {
  await page.getByRole("button", { name: "Add a mark" }).click();
  const place = { "from the end": (number * 37) % 160, angle: (number * 67) % 360, width: 14, height: 9 };
  for (const [name, value] of Object.entries(place)) await page.getByRole("textbox", { name }).fill(String(value));
  await page.getByRole("group", { name: "strength" }).getByRole("radio", { name: "clear" }).check({ force: true });
}

export const percentile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.ceil(share * values.length) - 1] ?? Number.NaN;

function within(what: string, full: readonly number[], empty: readonly number[]): boolean {
  const [own, base] = [percentile(full, 0.95), percentile(empty, 0.95)];
  const holds = own < bar.p95Ms && own <= bar.ratio * base;
  console.log(
    `${what} with ${marks} marks, to the next paint at ${slowdown} × slow-down: 95 % within ${own.toFixed(0)} ms of ${full.length} (bar ${bar.p95Ms} ms), empty form ${base.toFixed(0)} ms = ${(own / base).toFixed(2)} × (bar ${bar.ratio} ×): ${holds ? "within" : "misses"}`,
  );
  return holds;
}

export const typingWithinBar = () =>
  onInventedClinic(async (browser, { address, file }) => {
    const page = await browser.newPage({ baseURL: address, viewport: { width: 1440, height: 1600 } });
    await signIn(page);
    await page.goto(`/sockets/${socketToSign(file)}/fitting`);
    await page.evaluate(watchPaints);
    const cpu = await page.context().newCDPSession(page);
    const slow = (rate: number) => cpu.send("Emulation.setCPUThrottlingRate", { rate });
    await page.getByRole("group", { name: "Map of the marks" }).scrollIntoViewIfNeeded();

    await slow(slowdown);
    const emptyKeys = await timed(page, () => typeInto(page, "In the wearer’s own words"));
    const emptyDrag = await timed(page, () => drag(page));
    await slow(1);
    // The one that was drawn is the first.
    for (let number = 2; number <= marks; number++) await addMark(page, number);
    await slow(slowdown);
    const fullKeys = await timed(page, () => typeInto(page, "from the end"));
    const fullDrag = await timed(page, () => drag(page));
    return [within("Typing", fullKeys, emptyKeys), within("Drawing a mark", fullDrag, emptyDrag)].every(Boolean);
  });

function socketToSign(file: string): string {
  const database = new Database(file, { readonly: true });
  const row = database.prepare("SELECT subjectSocketId AS socket FROM Episode WHERE nextStep = 'sign'").get();
  database.close();
  return (row as { socket: string }).socket; // better-sqlite3 types a row as unknown
}

import { createServer, request } from "node:http";
import type { AddressInfo } from "node:net";
import { setTimeout as wait } from "node:timers/promises";
import type { Page } from "@playwright/test";
import { expect, test } from "./clinic";
import { signedInState } from "./prepared";
import { stored } from "./stored";

/** The browser draws what it has before the rest comes. */
const waitMs = 1200;

/** A network that hands on a page in two pieces, cut so many tags after the limb map begins. */
async function inPieces(address: string, tags: number) {
  const { port: behind } = new URL(address);
  const server = createServer((asked, answer) => {
    const headers = { ...asked.headers, "accept-encoding": "identity" };
    const passed = request({ host: "127.0.0.1", port: behind, path: asked.url, method: asked.method, headers }, async (from) => {
      const parts: Buffer[] = [];
      for await (const part of from) parts.push(part);
      const body = Buffer.concat(parts);
      const isPage = from.headers["content-type"]?.includes("text/html") ?? false;
      const { "content-length": _, ...kept } = from.headers;
      answer.writeHead(from.statusCode ?? 500, kept);
      const at = isPage ? placeOfCut(body, tags) : 0;
      answer.write(body.subarray(0, at));
      if (isPage) await wait(waitMs);
      answer.write(body.subarray(at));
      answer.end();
    });
    asked.pipe(passed);
  });
  await new Promise<void>((done) => server.listen(0, done));
  return {
    address: `http://localhost:${(server.address() as AddressInfo).port}`, // a server that listens has a port
    close: () => new Promise((done) => server.close(done)),
  };
}

function placeOfCut(body: Buffer, tags: number): number {
  const text = body.toString("latin1");
  const map = text.search(/<svg[^>]*(?:aria-label="Map of the marks"|class="[^"]*_map)/);
  return [...text.slice(map).matchAll(/</g)].map(({ index }) => map + index)[tags] ?? map;
}

/** What of the page has a box to be drawn in, by tag and class. */
const drawn = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll("main :is(svg, button, fieldset, table, li, figure, p)")]
      .filter((element) => element.checkVisibility())
      .map((element) => `${element.tagName} ${element.getAttribute("class") ?? ""}`),
  );

for (const [what, sql, path] of [
  ["the form of a fitting", "SELECT subjectSocketId AS id FROM Episode WHERE nextStep = 'sign'", "/sockets/ID/fitting"],
  ["a fitting", "SELECT fittingId AS id FROM SkinInspection WHERE fittingId IS NOT NULL", "/fittings/ID"],
] as const)
  test(`${what} that comes in pieces over a slow network is drawn whole`, async ({ browser, page, clinic }) => {
    test.setTimeout(120_000);
    const address = path.replace("ID", String(stored(clinic.file, sql).id));
    await page.setViewportSize({ width: 360, height: 780 });
    await page.goto(address);
    await page.waitForLoadState("networkidle");
    const whole = await drawn(page);
    await Promise.all(
      [8, 12, 16, 20, 24, 28, 32, 36].map(async (tags) => {
        const network = await inPieces(clinic.address, tags);
        // Nothing is on the device yet: styles and scripts come over the same network.
        const context = await browser.newContext({
          storageState: signedInState("prosthetist"),
          viewport: { width: 360, height: 780 },
        });
        const first = await context.newPage();
        await first.goto(network.address + address);
        await first.waitForLoadState("networkidle");
        expect(await drawn(first), `cut ${tags} tags after the map began`).toEqual(whole);
        await context.close();
        await network.close();
      }),
    );
  });

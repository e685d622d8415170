import { createServer, request } from "node:http";
import type { AddressInfo } from "node:net";
import { setTimeout as wait } from "node:timers/promises";
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
  const map = text.indexOf('aria-label="Map of the marks"');
  return [...text.slice(map).matchAll(/</g)].map(({ index }) => map + index)[tags] ?? map;
}

// Chromium left out what stood in a size container, the drawing or the list: of ten such pages, four at a time, three or four.
test("a form that comes in pieces over a slow network has its limb map, and its list of marks", async ({ browser, clinic }) => {
  test.setTimeout(120_000);
  const { id } = stored(
    clinic.file,
    `SELECT trialId AS id FROM SkinInspection JOIN SkinMark ON inspectionId = SkinInspection.id
     WHERE strength <> 'none' GROUP BY SkinInspection.id HAVING count(*) = 4 ORDER BY SkinInspection.at DESC`,
  );
  const isMapDrawn = async (tags: number): Promise<boolean> => {
    const network = await inPieces(clinic.address, tags);
    // Nothing is on the device yet: styles and scripts come over the same network.
    const context = await browser.newContext({
      storageState: signedInState("prosthetist"),
      viewport: { width: 360, height: 780 },
    });
    const page = await context.newPage();
    await page.goto(`${network.address}/trials/${id}/look`);
    await wait(200);
    const isShown = (what: string) =>
      page
        .locator(what)
        .first()
        .evaluate((element) => element.checkVisibility());
    const isDrawn = (await isShown('svg[aria-label="Map of the marks"]')) && (await isShown("fieldset ol > li"));
    await context.close();
    await network.close();
    return isDrawn;
  };
  const abreast = async (cuts: readonly number[]) => {
    for (const tags of cuts) expect(await isMapDrawn(tags), `cut ${tags} tags after the map began`).toBe(true);
  };
  const more = process.env.FITTING_LEDGER_TEST_ALL
    ? [
        [8, 28, 120],
        [12, 32, 160],
        [20, 40, 200],
        [24, 44, 240],
      ]
    : [];
  await Promise.all([[16, 200], [36], ...more].map(abreast));
});

/** The PDF of a release sheet, as the server gives it: the first one of a server that has just started, asked for
 * from the sheet's page, and the ones after it. */
import Database from "better-sqlite3";
import { onInventedClinic, signIn } from "./invented-clinic";
import { percentile } from "./typing";

const barMs = 1500;
const later = 20;

export const sheetWithinBar = (): Promise<boolean[]> =>
  onInventedClinic(async (browser, { address, file }) => {
    const page = await browser.newPage({ baseURL: address });
    await signIn(page);
    const database = new Database(file, { readonly: true });
    const ids = database
      .prepare("SELECT id FROM SignOff WHERE meaning = 'release for definitive fabrication' ORDER BY length(evidence) DESC")
      .pluck()
      .all()
      .map(String);
    database.close();
    const timed = async (id: string | undefined) => {
      const begun = performance.now();
      const answer = await page.request.get(`/releases/${id}/sheet.pdf`);
      const pdf = await answer.body();
      if (!answer.ok() || !pdf.subarray(0, 5).equals(Buffer.from("%PDF-"))) throw new Error(`no PDF: ${answer.status()}`);
      return performance.now() - begun;
    };
    // As a person comes to it: the sheet's page first, and the press on PDF a moment later.
    await page.goto(`/releases/${ids[0]}`, { waitUntil: "networkidle" });
    const first = await timed(ids[0]);
    const times: number[] = [];
    for (let count = 0; count < later; count += 1) times.push(await timed(ids[count % ids.length]));
    const slowest = Math.max(first, ...times);
    const within = slowest < barMs;
    console.log(
      `the PDF of a release sheet, through the server: the first ${first.toFixed(0)} ms, then ${percentile(times, 0.5).toFixed(0)} ms (median of ${later}), at most ${slowest.toFixed(0)} ms (bar ${barMs} ms): ${within ? "within" : "misses"}`,
    );
    return [within];
  });

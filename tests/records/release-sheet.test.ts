import { writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { releaseSheetPdf } from "@/app/releases/[release]/pdf/sheet-pdf";
import { sheetWords } from "@/app/releases/[release]/sheet-words";
import { addAddendum } from "@/lib/records/add-addendum";
import { addWearer } from "@/lib/records/add-wearer";
import { carryAdjustment } from "@/lib/records/carry-adjustment";
import { database } from "@/lib/records/database";
import { releaseMeaning, trialMeaning } from "@/lib/records/meanings";
import { definitiveStations } from "@/lib/records/released";
import { seeRelease } from "@/lib/records/see-release";
import { sign } from "@/lib/records/sign";
import { withdrawSignature } from "@/lib/records/withdraw-signature";
import { readPdf } from "../pdf-text";
import { openTestClinic, password, readyEpisode, signingOf, type TestClinic } from "./clinic";

/** To look at: FITTING_LEDGER_PDFS=FOLDER keeps what is made. */
const kept = process.env.FITTING_LEDGER_PDFS;

async function pdfOf(clinic: TestClinic, signOffId: string, paper: "a4" | "letter" = "a4", name = "sheet") {
  const settings = await (await database()).clinic.findUniqueOrThrow({ where: { id: 1 } });
  const pdf = await releaseSheetPdf(await seeRelease(clinic.technician, signOffId), settings, paper);
  if (kept) writeFileSync(`${kept}/${name}-${paper}.pdf`, pdf);
  return readPdf(pdf);
}

const secret = "she cried when it was taken off";

async function withCarried() {
  const clinic = await openTestClinic();
  const { episodeId, socketId } = await readyEpisode(clinic);
  for (const [kind, aspect, third, amount] of [
    ["relief", "lateral", "distal", 2],
    ["build-up", "posterior", "proximal", 1.5],
    ["trim", "anterior", "proximal", 4],
  ] as const)
    await carryAdjustment(clinic.prosthetist, { socketId, kind, aspect, third, amount, unit: "mm", reason: secret });
  const { signOffId } = await sign(clinic.prosthetist, {
    ...(await signingOf(episodeId, releaseMeaning)),
    definitiveMaterial: "carbon fibre laminate, acrylic resin",
  });
  return { clinic, signOffId, episodeId };
}

describe("the release sheet as a PDF", () => {
  test("says what is on record: dimensions, adjustments, material, signature, digest", async () => {
    const { clinic, signOffId } = await withCarried();
    const signOff = await (await database()).signOff.findUniqueOrThrow({ where: { id: signOffId } });
    const { text, pages, title, language, fonts, size } = await pdfOf(clinic, signOffId, "a4", "carried");
    const dimensions = definitiveStations(signOff.evidence);
    expect(dimensions).toHaveLength(5);
    for (const { distanceMm, circumferenceMm } of dimensions)
      expect(text).toMatch(new RegExp(`\\b${distanceMm} [\\d.]+ [\\d.]+ ${circumferenceMm.toFixed(1).replace(".", "\\.")}`));
    for (const said of [
      "Release for definitive fabrication",
      "Socket 2 of T-1, left transradial",
      "Signed 8 Oct 2026, 10:00 (Europe/Lisbon)",
      "1. relief 2 mm, lateral, distal third",
      "2. build-up 1.5 mm, posterior, proximal third",
      "3. trim 4 mm, anterior, proximal third",
      "Left limb seen from the front, unrolled from the posterior midline: lateral is on the right.",
      "carbon fibre laminate, acrylic resin",
      "clear copolyester",
      "self-suspending",
      "0.68 kg",
      "not recorded: ask before making",
      "Reduced feeling: the wearer may not notice an edge.",
      "Follow local rules and the makers’ instructions.",
      "0.25 mm",
      "A Prosthetist, prosthetist",
      "I have examined the evidence and release this socket for definitive fabrication.",
      "a licensed prosthetist decides",
    ])
      expect(text).toContain(said);
    expect(text.replaceAll(" ", "")).toContain(signOff.digest);
    expect({ pages, title, language, size }).toEqual({
      pages: 1,
      title: "Release for definitive fabrication: Socket 2 of T-1, left transradial",
      language: "en",
      size: { width: 595, height: 842 },
    });
    expect(fonts.length).toBeGreaterThan(0);
    expect(fonts.filter(({ embedded }) => !embedded)).toEqual([]);
    expect((await pdfOf(clinic, signOffId, "letter", "carried")).size).toEqual({ width: 612, height: 792 });
  });

  test("the same words as the page, in the same order; neither says a reason to the bench", async () => {
    const { clinic, signOffId } = await withCarried();
    await withdrawSignature(clinic.prosthetist, { signOffId, why: secret, password });
    const seen = await seeRelease(clinic.technician, signOffId);
    const page = sheetWords(seen, { clinic: { name: "Test clinic", invented: false, phone: null }, withReasons: false });
    expect(JSON.stringify(page)).not.toContain(secret);
    const { text } = await pdfOf(clinic, signOffId, "a4", "withdrawn");
    expect(text).not.toContain(secret);
    const inOrder = [
      ...page.stops.map(({ words }) => words),
      page.title,
      page.socket,
      ...page.carried.map(({ words }) => words),
      ...page.makeFrom.map(({ how }) => how),
      ...page.cautions,
      ...page.onReturn,
      ...page.signature,
      page.digest,
    ];
    let from = 0;
    for (const said of inOrder) {
      const at = text.indexOf(said.replaceAll(/\s+/g, " "), from);
      expect(at, said).toBeGreaterThanOrEqual(from);
      from = at;
    }
    // A clinician reads them on the page.
    expect(JSON.stringify(sheetWords(seen, { clinic: null, withReasons: true }))).toContain(secret);
  });

  test("a withdrawn one says so first, and across the page", async () => {
    const { clinic, signOffId } = await withCarried();
    await withdrawSignature(clinic.colleague, { signOffId, why: "the wrong model was poured", password });
    const { text } = await pdfOf(clinic, signOffId);
    expect(text).toMatch(/^Withdrawn\. Another Prosthetist, 8 Oct 2026, 10:00\. Do not make anything from this sheet\./);
    expect(text.match(/Withdrawn/g)).toHaveLength(2);
  });

  test("an accepted trial is no release: nothing to make from it", async () => {
    const clinic = await openTestClinic();
    const { episodeId } = await readyEpisode(clinic);
    const { signOffId } = await sign(clinic.prosthetist, await signingOf(episodeId, trialMeaning));
    const { text } = await pdfOf(clinic, signOffId);
    expect(text).toContain("This is no release.");
    expect(text).not.toContain("Inside dimensions");
  });

  test("with everything on it, it is two pages at the most, on either paper", async () => {
    const { clinic, signOffId } = await withCarried();
    for (let count = 0; count < 4; count += 1)
      await addAddendum(clinic.colleague, { signOffId, words: "The wall is 4 mm, not 3 mm; ".repeat(30).slice(0, 900) });
    const { digest } = await (await database()).signOff.findUniqueOrThrow({ where: { id: signOffId } });
    for (const paper of ["a4", "letter"] as const) {
      const { pages, text } = await pdfOf(clinic, signOffId, paper, "long");
      expect(pages).toBeLessThanOrEqual(2);
      expect(text).toContain("Scan to see whether this sheet stands.");
      const foot = `Socket 2 of T-1, left transradial · ${digest.slice(0, 8)} ${digest.slice(8, 16)} · page`;
      for (let page = 1; page <= pages; page += 1) expect(text).toContain(`${foot} ${page} of ${pages}`);
    }
  });

  test("a sign that the typeface lacks is written out or named, never left out", async () => {
    const { clinic, signOffId } = await withCarried();
    await addAddendum(clinic.colleague, { signOffId, words: "Wall ≥ 4 mm ± 0.5, ≤ 37 °C, 2 × 3 µm → brim; 😀 中." });
    const { text } = await pdfOf(clinic, signOffId, "a4", "signs");
    // The sign of micro and the Greek letter are one glyph.
    expect(text.replace("μ", "µ")).toContain("Wall at least 4 mm ± 0.5, at most 37 °C, 2 × 3 µm to brim; [U+1F600] [U+4E2D].");
  });

  test("names in the letters of other alphabets are set, not boxes", async () => {
    const clinic = await openTestClinic();
    await addWearer(clinic.assistant, { clinicNumber: "X", name: "unused" });
    const { episodeId } = await readyEpisode(clinic);
    const signer = { ...clinic.prosthetist, name: "Łucja Dvořáková Ελένη Иван" };
    const { signOffId } = await sign(signer, await signingOf(episodeId, releaseMeaning));
    expect((await pdfOf(clinic, signOffId, "a4", "letters")).text).toContain("Łucja Dvořáková Ελένη Иван, prosthetist");
  });
});

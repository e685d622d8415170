import { writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { wearSchedulePdf } from "@/app/releases/[release]/pdf/wearing-pdf";
import { wearingDays } from "@/app/releases/[release]/wearing/wearing-days";
import { wearingWords } from "@/app/releases/[release]/wearing/wearing-words";
import { planWearing } from "@/lib/records/plan-wearing";
import { NotFound } from "@/lib/records/refusals";
import { seeWearing } from "@/lib/records/see-after-release";
import { withdrawSignature } from "@/lib/records/withdraw-signature";
import { readPdf } from "../pdf-text";
import { password } from "./clinic";
import { withSignedRelease } from "./signed-release";

/** To look at: FITTING_LEDGER_PDFS=FOLDER keeps what is made. */
const kept = process.env.FITTING_LEDGER_PDFS;

/** As slowly as `wearSchedule` goes for reduced feeling, and the longest list that is told day by day. */
const slow = [15, 23, 30, 45, 60, 90, 120].map((minutes) => ({ days: 2, minutes, sessions: 3 }));
const fast = [{ days: 1, minutes: 15, sessions: 3 }];

async function pdfs(steps: object[], words: string) {
  const { clinic, signOffId } = await withSignedRelease();
  const plan = { signOffId, version: 0, startOn: "2026-10-09", steps: [...steps, { days: 1, sessions: 1 }] };
  const asked = Array.from(steps, (_, index) => `${index}`);
  await planWearing(clinic.prosthetist, { ...plan, words, call: "Test clinic, +00 555 0100", confirmed: asked });
  const seen = await seeWearing(clinic.assistant, signOffId);
  const read = async (paper: "a4" | "letter", name = `wearing-${steps.length}`) => {
    const pdf = await wearSchedulePdf(await seeWearing(clinic.assistant, signOffId), paper);
    if (kept) writeFileSync(`${kept}/${name}-${paper}.pdf`, pdf);
    return readPdf(pdf);
  };
  return { clinic, signOffId, seen, read };
}

test.each([
  ["the shortest", fast, ""],
  ["the longest", slow, "Wear the thin sock. ".repeat(8)],
])(
  "%s schedule is one page on either paper, with every day, what to look at, when to stop and whom to call",
  async (_, steps, words) => {
    const { seen, read } = await pdfs(steps, words);
    for (const paper of ["a4", "letter"] as const) {
      const { text, pages, title, language, fonts, size } = await read(paper);
      expect(pages).toBe(1);
      expect(title).toBe("Getting used to your new socket: Wearer One");
      expect(language).toBe("en");
      expect(size.width).toBe(paper === "a4" ? 595 : 612);
      expect(fonts.filter(({ embedded }) => !embedded)).toEqual([]);
      if (!seen.plan) throw new Error("it was planned");
      for (const { when, howLong } of wearingDays(seen.plan))
        expect(text).toContain(`${when.replaceAll("\u00a0", " ")} ${howLong}`);
      for (const said of [...wearingWords.stops, ...wearingWords.steps.map((step) => step.words), wearingWords.follow])
        expect(text).toContain(said);
      expect(text).toContain("Friday 9 October");
      expect(text).toContain("Call: Test clinic, +00 555 0100");
      for (const side of ["front", "back", "inside", "outside"]) expect(text).toContain(side);
      expect(text).toContain(words.trim());
    }
  },
);

test("under a withdrawn release it says not to wear the socket; where nothing is planned there is none", async () => {
  const { clinic, signOffId, read } = await pdfs(fast, "");
  await withdrawSignature(clinic.prosthetist, { signOffId, why: "wrong model", password });
  expect((await read("a4", "wearing-withdrawn")).text).toMatch(
    /^Withdrawn\. Do not wear the socket by this page\. Ask the clinic\./,
  );
  const other = await withSignedRelease();
  await expect(wearSchedulePdf(await seeWearing(other.clinic.assistant, other.signOffId), "a4")).rejects.toThrow(NotFound);
});

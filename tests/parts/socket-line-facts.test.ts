/** The socket line and the choices of an adjustment show what lib/fit found, and nothing that a page worked out by itself. */
import { expect, test } from "vitest";
import { feelingWords } from "@/app/_parts/skin-words";
import { beadsOf } from "@/app/episodes/[episode]/series";
import { choicesOfFindings } from "@/app/episodes/findings";
import { type Bundle, findingsOfSocket, seriesOf } from "@/lib/fit";
import { changed, checkInsOf, fittingOf, lookOf, markOf, trialOf } from "../fit/ready-bundle";

function beadOf(bundle: Bundle) {
  const sockets = bundle.sockets.map(({ state = "planned" }) => ({ state, neededOn: null }));
  return beadsOf({ bundle, sockets, series: seriesOf(bundle), today: "2026-10-08" }).at(-1);
}

const choicesOf = (bundle: Bundle) =>
  choicesOfFindings(findingsOfSocket(bundle, trialOf(bundle).socketId), bundle.episode.level).map(({ label }) => label);

const lasting = (bundle: Bundle) => {
  lookOf(bundle, 1).minutesAfterDoffing = 26;
  lookOf(bundle, 1).at = new Date(Date.parse(lookOf(bundle, 0).at) + 25 * 60_000).toISOString();
  const seen = { strength: "faint", firm: false, painful: false, blanches: "yes", fadedAtMin: null } as const;
  for (const look of [0, 1]) Object.assign(markOf(bundle, look), seen);
};

test("a comfort that was put right shows as it was put right", () => {
  const bundle = changed((one) => {
    const last = checkInsOf(one).at(-1);
    if (!last) throw new Error("the ready bundle has check-ins");
    trialOf(one).events.push({ id: "put right", kind: "corrected", corrects: last.id, at: last.at, comfort: 3 });
  });
  expect(beadOf(bundle)?.comfort).toBe(3);
});

test("a faint mark that is still there 26 minutes after doffing shows as the grade that this gives", () => {
  const bundle = changed(lasting);
  expect(beadOf(bundle)?.hardestMark).toBe("deep or firm");
  expect(choicesOf(bundle)[0]).toMatch(/^mark grade 3,/);
});

test("broken skin of an earlier fitting stays on the line after a calm trial", () => {
  const bundle = changed((one) => {
    const [look] = fittingOf(one).inspections;
    const mark = { ...markOf(one, 0), id: "open", broken: true };
    if (look) look.marks.push(mark);
    else fittingOf(one).inspections.push({ id: "look", at: fittingOf(one).at, minutesAfterDoffing: 2, marks: [mark] });
  });
  expect(beadOf(bundle)?.hardestMark).toBe("broken or purple");
  expect(choicesOf(bundle)).toContainEqual(expect.stringMatching(/^mark grade 4,/));
});

test("what was said at a check-in that was put right is no choice any more", () => {
  const bundle = changed((one) => {
    const last = checkInsOf(one).at(-1);
    if (!last) throw new Error("the ready bundle has check-ins");
    last.feelings = [{ kind: "pinching" }];
    trialOf(one).events.push({
      id: "put right",
      kind: "corrected",
      corrects: last.id,
      at: last.at,
      feelings: [{ kind: "heat" }],
    });
  });
  expect(choicesOf(bundle)).toContain(`felt: ${feelingWords.heat}`);
  expect(choicesOf(bundle)).not.toContain(`felt: ${feelingWords.pinching}`);
});

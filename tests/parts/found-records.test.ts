/** From when and from which record a finding is, which mark it is, and what a later look settles. */
import { expect, test } from "vitest";
import { choicesOfFindings } from "@/app/episodes/findings";
import { foundWith } from "@/app/episodes/found";
import { numbersOfEpisode } from "@/app/episodes/mark-numbers-of-episode";
import { type Bundle, defaultLimits, findingsOfSocket, type Inspection, type SkinMark } from "@/lib/fit";
import { mark } from "../fit/marks";
import { changed, fittingOf, gateOf, markOf, trialOf } from "../fit/ready-bundle";

const foundOf = (bundle: Bundle) => foundWith(bundle, "so2", defaultLimits);
const one = (bundle: Bundle, id: string) => foundOf(bundle).find((found) => found.id === id);

const red = (found: Partial<SkinMark> = {}): SkinMark => mark({ blanches: "no", ...found });
const look = (minutesAfterDoffing: number, ...marks: SkinMark[]): Inspection => ({
  id: `look ${minutesAfterDoffing}`,
  at: new Date(Date.parse("2026-10-06T09:30:00Z") + minutesAfterDoffing * 60_000).toISOString(),
  minutesAfterDoffing,
  marks,
});
/** A fitting the day after the trial, with these looks. */
const fittedAgain = (looks: Inspection[], rest: Partial<Bundle["fittings"][number]> = {}) =>
  changed((bundle) => {
    bundle.fittings.push({
      ...structuredClone(fittingOf(bundle)),
      id: "again",
      at: "2026-10-06T09:30:00Z",
      inspections: looks,
      ...rest,
    });
  });

test("a finding says which record it is from, in the clinic's time, and that a fitting came after it", () => {
  // The trial began at 10:00 UTC; Lisbon is an hour ahead until 25 October.
  const pain = one(fittedAgain([], { pain: undefined }), "pain");
  expect(pain?.from).toEqual([
    {
      record: "Wear trial of 5\u00a0Oct 2026, 11:00, before the latest fitting",
      href: "/trials/wt1",
      words: "Pain 1 of 10",
    },
  ]);
});

test("what two records found stands once, as the heavier, and what the other said stands beside it", () => {
  const pain = one(fittedAgain([], { pain: 3 }), "pain");
  expect(pain?.words).toBe("Pain 3 of 10");
  expect(pain?.from.map(({ record, words }) => [record, words])).toEqual([
    ["Fitting of 6\u00a0Oct 2026, 10:30", "Pain 3 of 10"],
    ["Wear trial of 5\u00a0Oct 2026, 11:00, before the latest fitting", "Pain 1 of 10"],
  ]);
  const older = one(fittedAgain([], { pain: 1 }), "pain");
  expect(older?.from[0]?.record, "of equals the newest is told").toBe("Fitting of 6\u00a0Oct 2026, 10:30");
});

test("what forbade in an older fitting is told as that fitting's", () => {
  const bundle = fittedAgain([]);
  fittingOf(bundle).pain = 9;
  const pain = one(bundle, "pain");
  expect(pain).toMatchObject({ forbids: true, words: "Pain 9 of 10" });
  expect(pain?.from[0]?.record).toBe("Fitting of 5\u00a0Oct 2026, 10:30, before the latest fitting and the latest wear trial");
});

test("marks that are alike are told apart by number, place and size", () => {
  const bundle = fittedAgain([
    look(
      2,
      red({ blanches: "yes", distanceFromEndMm: 150 }),
      red({ id: "n", blanches: "yes", distanceFromEndMm: 160, widthMm: 9 }),
    ),
  ]);
  const words = foundOf(bundle).flatMap(({ id, words }) =>
    id === "mark:m" || id === "mark:n" ? [words.replaceAll("\u00a0", " ")] : [],
  );
  expect(words).toEqual([
    "Mark 1, grade 2, anterior, proximal third, 150 mm from the end, 0°, 18 × 14 mm: clear, blanches",
    "Mark 2, grade 2, anterior, proximal third, 160 mm from the end, 0°, 9 × 14 mm: clear, blanches",
  ]);
});

test("a mark has the number that it has on the page of its fitting, also where a correction took one out before it", () => {
  const rows = (ids: string[], recorded: string) => [
    { recordedAt: new Date(recorded), marks: ids.map((markId) => ({ markId })) },
  ];
  const fittings = [
    { id: "first", correctsId: null, looks: rows(["gone", "m"], "2026-10-06T09:40:00Z") },
    { id: "again", correctsId: "first", looks: rows(["m"], "2026-10-06T09:50:00Z") },
  ];
  const numbers = numbersOfEpisode({ fittings });
  const found = foundWith(fittedAgain([look(2, red())]), "so2", defaultLimits, numbers);
  expect(found.find(({ id }) => id === "mark:m")?.words).toMatch(/^Mark 2, /);
  expect(numbers(trialOf(fittedAgain([]))).get(markOf(fittedAgain([]), 0).id)).toBe(1);
});

test("a check is named by the words of the form, and orders nothing", () => {
  const bundle = fittedAgain([], { checks: { rotation: "not met", "bony-relief": "concern" } });
  expect(one(bundle, "check:rotation")?.words).toBe("The socket does not turn on the limb: not met");
  expect(choicesOfFindings(findingsOfSocket(bundle, "so2"), bundle.episode.level).map(({ label }) => label)).toContain(
    "Bony places are free of pressure: concern",
  );
  expect(foundOf(bundle).some(({ words }) => words.startsWith("Check "))).toBe(false);
});

// Redness that stays and does not blanch is a stage 1 pressure injury: NPIAP 2016, from memory. Fading within 20
// minutes: clinics' leaflets, common practice, no source.
test("a mark that does not blanch at an early look forbids, offers nothing, and names the look that may show otherwise", () => {
  const bundle = fittedAgain([look(2, red())]);
  expect(one(bundle, "mark:m")).toMatchObject({
    forbids: true,
    early: { seenAtMin: 2, untilMin: 20, href: "/fittings/again/look" },
  });
  expect(one(bundle, "mark:m")?.considered.flatMap(({ offers }) => offers)).toEqual([]);
  expect(gateOf(bundle, "skin-intact").state).not.toBe("forbids");
});

test.each<[string, Inspection[]]>([
  ["gone at 20 minutes", [look(2, red()), look(20, red({ strength: "none", blanches: "not tested" }))]],
  ["blanching at 20 minutes", [look(2, red()), look(20, red({ blanches: "yes" }))]],
  ["blanching at 10 minutes", [look(2, red()), look(10, red({ blanches: "yes" }))]],
])("seen %s, it forbids no more, and both looks are told", (_, looks) => {
  const found = one(fittedAgain(looks), "mark:m");
  expect(found?.forbids).toBe(false);
  expect(found?.early).toBeUndefined();
  expect(found?.words).toMatch(/does not blanch; (gone|blanches) \d+ min after doffing$/);
});

test.each<[string, Inspection[], boolean]>([
  ["blanching was not tested again at 10 minutes", [look(2, red()), look(10, red({ blanches: "not tested" }))], true],
  ["the look at 10 minutes does not mention it", [look(2, red()), look(10)], true],
  ["it still does not blanch at 10 minutes", [look(2, red()), look(10, red())], true],
  ["the look at 20 minutes does not mention it", [look(2, red()), look(20)], false],
  ["it still does not blanch at 20 minutes", [look(2, red()), look(20, red())], false],
  ["it is gone only at 25 minutes", [look(2, red()), look(25, red({ strength: "none", blanches: "not tested" }))], false],
  ["it blanches at 10 and does not at 15 minutes", [look(2, red()), look(10, red({ blanches: "yes" })), look(15, red())], true],
  ["it blanches at 10 and does not at 25 minutes", [look(2, red()), look(10, red({ blanches: "yes" })), look(25, red())], false],
  ["it is broken too", [look(2, red({ broken: true })), look(20, red({ strength: "none", blanches: "not tested" }))], false],
  ["it had faded only after 45 minutes", [look(2, red({ fadedAtMin: 45 })), look(10, red({ blanches: "yes" }))], false],
])("it forbids still where %s", (_, looks, mayLookAgain) => {
  const found = one(fittedAgain(looks), "mark:m");
  expect(found?.forbids).toBe(true);
  expect(found?.considered.flatMap(({ offers }) => offers)).toEqual([]);
  expect(found?.early !== undefined).toBe(mayLookAgain);
});

test("nobody looks again at what was left before a newer fitting: it forbids outright", () => {
  const bundle = changed((each) => {
    fittingOf(each).inspections = [look(2, red())];
  });
  const found = one(bundle, "mark:m");
  expect(found?.forbids).toBe(true);
  expect(found?.early).toBeUndefined();
});

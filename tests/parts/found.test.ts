import { expect, test } from "vitest";
import { foundWith, offersNamed } from "@/app/episodes/found";
import { type Bundle, defaultLimits } from "@/lib/fit";
import { changed, checkInsOf, fittingOf, lookOf, markOf, readyBundle, trialOf } from "../fit/ready-bundle";

const foundOf = (bundle: Bundle, socketId = "so2") => foundWith(bundle, socketId, defaultLimits);
const ids = (bundle: Bundle, socketId?: string) => foundOf(bundle, socketId).map(({ id }) => id);
const offersOf = (bundle: Bundle, id: string) =>
  foundOf(bundle)
    .filter((found) => found.id === id)
    .flatMap(({ considered }) => considered.flatMap(({ offers }) => offers));

test("a socket with a failed check, a large displacement and little comfort: each is found, with what answers it", () => {
  const found = foundOf(readyBundle(), "so1");
  expect(found.map(({ id }) => id)).toEqual(["check:suspension", "pain", "displacement", "comfort"]);
  const offers = found.find(({ id }) => id === "displacement")?.considered.flatMap(({ offers: each }) => each) ?? [];
  expect(offers.length).toBeGreaterThan(0);
  expect(offers.every(({ answers }) => answers === "displacement")).toBe(true);
});

test("a mark is looked up as the look saw it that grades it highest, and a relief is offered where it lies", () => {
  const bundle = changed((each) => {
    markOf(each, 0).firm = true;
  });
  const relief = offersOf(bundle, "mark:mk0").find(({ kind }) => kind === "relief");
  expect(relief).toMatchObject({ unit: "mm", aspect: "anterior", third: "middle", answers: "mark:mk0" });
  const headings = foundOf(bundle).flatMap(({ id, considered }) =>
    id === "mark:mk0" ? considered.map(({ id: row }) => row) : [],
  );
  expect(headings).toContain("any-firm-mark");
  expect(headings).not.toContain("any-faint-mark");
});

test("a mark that a fitting and a trial both saw stands once, as the stronger of the two", () => {
  const bundle = changed((each) => {
    const look = structuredClone(lookOf(each, 0));
    look.id = "at the fitting";
    look.marks = [{ ...markOf(each, 0), strength: "faint" }];
    fittingOf(each).inspections = [look];
  });
  const mark = foundOf(bundle).filter(({ id }) => id === "mark:mk0");
  expect(mark).toHaveLength(1);
  expect(mark[0]?.words).toMatch(/^Mark 1, grade 2/);
  expect(mark[0]?.considered.map(({ id }) => id)).not.toContain("any-faint-mark");
});

test("a build-up is often made across from the mark: its place is left to be chosen, so that none lands on the sore spot", () => {
  const bundle = changed((each) => {
    markOf(each, 0).strength = "deep";
  });
  const buildUps = offersOf(bundle, "mark:mk0").filter(({ kind }) => kind === "build-up");
  expect(buildUps.length).toBeGreaterThan(0);
  expect(buildUps.every(({ aspect, third }) => aspect === undefined && third === undefined)).toBe(true);
});

test.each<[string, (bundle: Bundle) => void]>([
  ["mark:mk0", (bundle) => void Object.assign(markOf(bundle, 0), { broken: true })],
  ["mark:mk0", (bundle) => void Object.assign(markOf(bundle, 1), { strength: "purple" })],
  ["feeling:numbness", (bundle) => void checkInsOf(bundle)[1]?.feelings.push({ kind: "numbness" })],
  ["check:circulation", (bundle) => void Object.assign(fittingOf(bundle).checks, { circulation: "concern" })],
  ["pain", (bundle) => void Object.assign(fittingOf(bundle), { pain: 8 })],
  [
    "stop:cold",
    (bundle) => void trialOf(bundle).events.push({ id: "x", at: "2026-10-05T10:12:00Z", kind: "stop-sign", sign: "cold" }),
  ],
])("%s that forbids stands first, offers nothing, and says when to stop", (id, change) => {
  const [first] = foundOf(changed(change));
  expect(first).toMatchObject({ id, forbids: true });
  expect(first?.considered.length).toBeGreaterThan(0);
  expect(first?.considered.flatMap(({ offers }) => offers)).toEqual([]);
  expect(first?.considered.every(({ stopWhen }) => stopWhen.startsWith("Reason to stop"))).toBe(true);
});

test("what forbade at an earlier trial or fitting is not undone by a later good one; what was only a concern is", () => {
  const bundle = changed((each) => {
    const earlier = structuredClone(fittingOf(each));
    Object.assign(earlier, { id: "earlier", at: "2026-10-01T09:00:00Z", pain: 9, checks: { rotation: "not met" } });
    each.fittings.push(earlier);
  });
  expect(ids(bundle)[0]).toBe("pain");
  expect(foundOf(bundle)[0]?.forbids).toBe(true);
  expect(ids(bundle)).not.toContain("check:rotation");
});

test("nothing is made up: a socket without fitting or trial has no findings", () => {
  const bundle = changed((each) => {
    each.fittings = [];
    each.wearTrials = [];
  });
  expect(foundOf(bundle)).toEqual([]);
});

test("an address names offers by their ids; unknown ids name nothing", () => {
  const bundle = changed((each) => {
    lookOf(each, 0).marks.splice(1);
    markOf(each, 0).firm = true;
  });
  const found = foundOf(bundle);
  const offers = found.flatMap(({ considered }) => considered.flatMap((row) => row.offers));
  expect(new Set(offers.map(({ id }) => id)).size).toBe(offers.length);
  expect(offersNamed(found, [offers[0]?.id ?? "", "mark:other~row~0"])).toEqual(offers.slice(0, 1));
});

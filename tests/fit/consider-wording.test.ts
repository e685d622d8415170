/** How the table of considerations is worded: it suggests, and orders nothing but to stop. Common practice, no source. */
import { describe, expect, it } from "vitest";
import { couldHaveChanged } from "@/lib/fit/adjustment-reach";
import { type Consideration, considerations, type FindingKind } from "@/lib/fit/consider";
import type { AdjustmentKind } from "@/lib/fit/words";

const prefix = "Reason to stop and call the physician: ";
const textsOf = ({ adjustments, weigh, cautions, stopWhen }: Consideration): string[] => [
  ...adjustments.map(({ what }) => what),
  ...weigh,
  ...cautions,
  stopWhen,
];
const sentencesOf = (text: string): string[] => text.replace(prefix, "").split(/(?<=\.)\s+/);

describe("the words", () => {
  const bareVerbs =
    /^(?:add|adjust|aim|allow|apply|ask|avoid|begin|build(?!-up)|call|carry|change|check|choose|close|compare|consider|cut|decide|do|doff|don|don't|draw|ensure|examine|feel|fill|find|fit|fix|flare|follow|give|grind|hold|increase|inspect|keep|leave|lengthen|let|limit|loosen|look|lower|make|mark|massage|measure|move|note|open|pad|place|press|provide|put|raise|record|reduce|refer|reline|relieve|remember|remove|repeat|replace|rotate|seal|see|send|set|shift|shorten|stop|support|take|tell|test|tighten|tilt|treat|trim|try|turn|use|wait|warn|watch|wear|weigh|widen|wrap|write)\b/i;
  const orders =
    /\b(?:must|always|never|should|shall|ought|have to|has to be (?:done|made)|you|your|please|mandatory|required)\b/i;
  const startsAsOrder = (text: string): boolean =>
    text
      .replace(prefix, "")
      .split(/(?<=[.:;])\s+/)
      .some((part) => bareVerbs.test(part.trim()));

  it("are caught where they order", () => {
    for (const order of ["Flare the brim.", "The brim presses; trim it.", "Where it hurts: relieve it."])
      expect(startsAsOrder(order), order).toBe(true);
    expect(startsAsOrder("A flare at that brim is considered.")).toBe(false);
    expect(orders.test("The brim must be lowered.")).toBe(true);
  });

  it.each(considerations)("$id orders nothing", (row) => {
    for (const text of [row.finding, ...textsOf(row)]) {
      expect(startsAsOrder(text), text).toBe(false);
      expect(text).not.toMatch(orders);
    }
    for (const { what } of row.adjustments) expect(what).toMatch(/\b(?:is|are) considered\b/);
  });

  it.each(considerations)("$id ends its sentences with a full stop, and its heading without", (row) => {
    for (const text of textsOf(row)) expect(text).toMatch(/^[A-Z].*[^.\s]\.$/s);
    expect(row.finding).toMatch(/^[A-Z][^.]*[^.\s]$/);
  });

  it.each(considerations)("$id names no product, no dose, and nobody by their limb loss", (row) => {
    for (const text of [row.finding, ...textsOf(row)].flatMap(sentencesOf)) {
      // A name is a word with a capital that does not begin the sentence.
      expect(
        text
          .slice(1)
          .match(/\b[A-Z]\w*/g)
          ?.filter((word) => word !== "Achilles") ?? [],
      ).toEqual([]);
      expect(text).not.toMatch(/\b(?:stump|amputee|mg|tablets?|dose|gel)s?\b/i);
    }
  });

  it("does not say the same sentence twice", () => {
    const sentences = considerations.flatMap(textsOf).flatMap(sentencesOf);
    const twice = sentences.filter((one, index) => sentences.indexOf(one) !== index);
    expect(twice).toEqual([]);
    expect(sentences.length).toBeGreaterThan(500);
  });
});

describe("an adjustment that is considered", () => {
  const asAdjustment = (kind: AdjustmentKind) => ({ id: "a", kind, reason: "r" });
  const measureOf = (kind: FindingKind) =>
    kind === "displacement" ? "displacement" : /-mark$|^late-fading$/.test(kind) ? "marks" : null;

  // A check that an adjustment says it answers is judged whatever its kind; marks and displacement are judged by kind too.
  it("for marks or displacement is of a kind that is held to be able to change them", () => {
    const strays = considerations
      // What a harness does to the other axilla is on no limb map.
      .filter(({ place }) => place !== "harness axilla")
      .flatMap((row) =>
        [row.kind, ...row.alsoFor].flatMap((kind) => {
          const of = measureOf(kind);
          return row.adjustments
            .filter(({ kind: made }) => of && !couldHaveChanged(asAdjustment(made), { measure: { of }, place: {} }))
            .map(({ kind: made }) => `${row.id}: ${made} for ${kind}`);
        }),
      );
    expect(strays).toEqual([]);
  });
});

/** From what was found, and where, to what practitioners consider. It suggests and never orders; it forbids what forbids. */
import { considerAny } from "./consider-any";
import { considerLower } from "./consider-lower";
import { type FindingPlace, findingPlaces, isFindingPlace, isWithin, levelsOfPlace, placesAt } from "./consider-places";
import type { Consideration, ConsiderRow } from "./consider-row";
import { considerUpper } from "./consider-upper";
import { type FindingKind, findingKinds, isForbidding } from "./consider-words";
import { FitInputError } from "./errors";
import { type Aspect, aspects, isUpperLimb, type Level, levels, type Third, thirds } from "./words";

export { type FindingPlace, findingPlaces } from "./consider-places";
export type { Consideration } from "./consider-row";
export { type FindingKind, findingKinds, forbiddingFindings } from "./consider-words";

export interface Finding {
  kind: FindingKind;
  /** Follows from the level, or from a place that only one limb has. */
  limb?: "upper" | "lower";
  level?: Level;
  place?: FindingPlace;
  /** Where there is no name for the place; not looked at where there is one. */
  aspect?: Aspect;
  third?: Third;
}

const completed =
  (limb: Consideration["limb"]) =>
  ({ alsoFor = [], ...row }: ConsiderRow): Consideration => ({
    ...row,
    // A list that rows share may name a row's own kind too.
    alsoFor: alsoFor.filter((kind) => kind !== row.kind),
    limb,
    forbids: isForbidding(row.kind),
    stopWhen: `Reason to stop and call the physician: ${row.stopWhen}`,
    source: "common-practice",
  });

/** The whole table. */
export const considerations: readonly Consideration[] = [
  ...considerUpper.map(completed("upper")),
  ...considerLower.map(completed("lower")),
  ...considerAny.map(completed("any")),
];

/**
 * What practitioners consider for a finding, the most particular first: a row for its very place, then one for a kind of
 * place that it is (a brim, a bony point, a nerve), then one for a place that the spot on the limb map may be, then
 * those for no place; among equals a row for its level, then one for its limb, then one for any limb; then a row about
 * that finding before one that covers it as well.
 *
 * A row for a place, a level or a limb is left out where the finding does not say it. What forbids (see
 * `forbiddingFindings`) has rows without any adjustment, and the reason to stop leads. Every row is common practice with
 * no source: it is read by a prosthetist, who decides.
 *
 * @returns one row or more, of every kind at every level
 * @throws FitInputError at `finding.kind`, `finding.limb`, `finding.level`, `finding.place`, `finding.aspect` or
 *   `finding.third` where it is not one of the words; at `finding.limb` where the level is of the other limb; and at
 *   `finding.place` where that level or limb has no such place: a place that was mistaken would hide the row that matters
 * @source common-practice
 *
 * @example
 * consider({ kind: "firm-mark", level: "transtibial", place: "fibular head" }).slice(0, 3).map(({ id }) => id)
 * // => ["lower-fibular-head", "any-bony-point", "any-firm-mark"]
 *
 * @example
 * consider({ kind: "broken-skin", level: "transradial" }).flatMap(({ adjustments }) => adjustments)
 * // => []
 */
export function consider(finding: Finding): Consideration[] {
  checkWords(finding);
  const limb = limbOf(finding);
  return considerations
    .flatMap((row, index) => {
      const { kind, alsoFor } = row;
      if (kind !== finding.kind && !alsoFor.includes(finding.kind)) return [];
      const place = placeRank(row, finding);
      const scope = scopeRank(row, finding, limb);
      if (place === null || scope === null) return [];
      return [{ row, order: [-place, -scope, kind === finding.kind ? 0 : 1, index] }];
    })
    .sort((a, b) => byOrder(a.order, b.order))
    .map(({ row }) => row);
}

/** Rows of several findings, each row once: those that forbid first, then in the order of the findings. */
export function considerEach(findings: readonly Finding[]): Consideration[] {
  const rows = [...new Set(findings.flatMap(consider))];
  return [...rows.filter(({ forbids }) => forbids), ...rows.filter(({ forbids }) => !forbids)];
}

/** How nearly the row's place is the finding's; null where the row is about another place. */
function placeRank({ place }: Consideration, finding: Finding): number | null {
  if (place === undefined) return 0;
  if (finding.place !== undefined) return finding.place === place ? 4 : isWithin(finding.place, place) ? 3 : null;
  if (finding.level === undefined) return null;
  const possible = placesAt(finding.level, finding);
  return possible.includes(place) ? 2 : possible.some((name) => isWithin(name, place)) ? 1 : null;
}

/** How nearly the row's level or limb is the finding's; null where the row is about another one. */
function scopeRank(row: Consideration, { level }: Finding, limb: "upper" | "lower" | undefined): number | null {
  if (row.limb !== "any" && row.limb !== limb) return null;
  // A place by its name is at certain levels only, so a row about it is as near as one that lists its levels.
  if (row.levels === undefined) return row.limb === "any" ? 0 : row.place === undefined ? 1 : 2;
  return level !== undefined && row.levels.includes(level) ? 2 : null;
}

const byOrder = (a: readonly number[], b: readonly number[]): number => {
  const first = a.findIndex((rank, index) => rank !== b[index]);
  return (a[first] ?? 0) - (b[first] ?? 0);
};

const limbOfLevel = (level: Level): "upper" | "lower" => (isUpperLimb(level) ? "upper" : "lower");

function limbOf({ limb, level, place }: Finding): "upper" | "lower" | undefined {
  if (level !== undefined) return limbOfLevel(level);
  if (limb !== undefined || place === undefined) return limb;
  const limbs = new Set(levelsOfPlace(place).map(limbOfLevel));
  return limbs.size === 1 ? [...limbs][0] : undefined;
}

/** Findings come from records and from outside the compiler's reach. */
function checkWords({ kind, limb, level, place, aspect, third }: Finding): void {
  checkWord("kind", kind, findingKinds);
  if (level !== undefined) checkWord("level", level, levels);
  if (limb !== undefined) {
    checkWord("limb", limb, ["upper", "lower"]);
    if (level !== undefined && limb !== limbOfLevel(level))
      throw new FitInputError("finding.limb", `expected ${limbOfLevel(level)}, as the level is ${level}`);
  }
  if (aspect !== undefined) checkWord("aspect", aspect, aspects);
  if (third !== undefined) checkWord("third", third, thirds);
  if (place === undefined) return;
  if (!isFindingPlace(place)) throw new FitInputError("finding.place", `expected one of ${findingPlaces.join(", ")}`);
  const placed = levelsOfPlace(place);
  if (level !== undefined && !placed.includes(level))
    throw new FitInputError("finding.place", `expected a place of the level ${level}, found ${place}`);
  if (limb !== undefined && !placed.some((one) => limbOfLevel(one) === limb))
    throw new FitInputError("finding.place", `expected a place of the ${limb} limb, found ${place}`);
}

function checkWord(field: string, word: string, words: readonly string[]): void {
  if (!words.includes(word)) throw new FitInputError(`finding.${field}`, `expected one of ${words.join(", ")}`);
}

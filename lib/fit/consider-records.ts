/** From what the records hold (feelings, checks, stop signs, marks, pain, motion, displacement) to findings that can be looked up. */
import type { SkinMark } from "./bundle";
import type { Finding } from "./consider";
import { type FindingPlace, isFindingPlace, levelsOfPlace } from "./consider-places";
import { type FindingKind, isForbidding } from "./consider-words";
import { FitInputError } from "./errors";
import { defaultLimits, type Limits, limitValue } from "./limits";
import { isThere } from "./skin-marks-grade";
import { mapMarks } from "./skin-marks-map";
import type { Aspect, CheckKey, FeelingKind, Level, StopSign, Third } from "./words";

/**
 * What was felt at a check-in. Numbness, tingling and cold stay what forbids: a check-in does not say that they went.
 *
 * @param went somebody wrote down that it was gone after doffing; of cold this changes nothing
 *
 * @example
 * findingOfFeeling({ kind: "numbness", aspect: "lateral", third: "proximal" }, "transtibial", { went: true }).kind
 * // => "passing-numbness"
 */
export function findingOfFeeling(
  { kind, aspect, third }: { kind: FeelingKind; aspect?: Aspect | undefined; third?: Third | undefined },
  level: Level,
  { went = false }: { went?: boolean } = {},
): Finding {
  const passed = went && (kind === "numbness" || kind === "tingling");
  return { kind: passed ? `passing-${kind}` : kind, level, ...(aspect ? { aspect } : {}), ...(third ? { third } : {}) };
}

/** A check that was a concern or not met. */
export const findingOfCheck = (key: CheckKey, level: Level): Finding => ({ kind: key, level });

export const findingOfStopSign = (sign: StopSign, level: Level): Finding => ({ kind: sign, level });

export const findingOfDisplacement = (level: Level): Finding => ({ kind: "displacement", level });

/**
 * Pain from 0 to 10; null where there is none. From the limit at which pain forbids it is severe.
 *
 * @throws FitInputError where the rating is not from 0 to 10
 */
export function findingOfPain(pain: number, level: Level, limits: Limits = defaultLimits): Finding | null {
  if (!(pain >= 0 && pain <= 10)) throw new FitInputError("pain", "expected a rating from 0 to 10");
  if (pain === 0) return null;
  return { kind: pain >= limitValue(limits, "pain-forbids") ? "severe-pain" : "pain", level };
}

/** Motion lost of a joint, named by its movement as `elbow-flexion`; without a place where the level has no such joint. */
export function findingOfMotion(joint: string, level: Level): Finding {
  const [name = ""] = joint.split("-");
  const hasPlace = isFindingPlace(name) && levelsOfPlace(name).includes(level);
  return { kind: "loss-of-motion", level, ...(hasPlace ? { place: name } : {}) };
}

export interface MarkLook {
  level: Level;
  limbLengthMm: number;
  /** Minutes after doffing of the look that the mark is from. */
  lookedAtMin?: number;
  /** Where someone has named the place. */
  place?: FindingPlace;
}

/**
 * What a mark is to be looked up as, in every cell of the limb map where it counts. Where anything about it forbids, that
 * alone is given, so that no relief is offered for the firmness of a mark that is also broken. Nothing to see and
 * nothing to feel gives nothing.
 *
 * A mark that does not blanch forbids unless it had faded within the time that marks are given; then it counts as deep.
 *
 * @throws FitInputError where the mark or the length cannot be, as `mapMarks` says
 * @source mark-grade
 *
 * @example
 * findingsOfMark({ id: "m", distanceFromEndMm: 130, angleDeg: 90, widthMm: 18, heightMm: 14, strength: "deep", blanches: "yes", firm: true, warm: false, painful: false, broken: false, fadedAtMin: 8 }, { level: "transtibial", limbLengthMm: 150 })
 * // => [{ kind: "deep-mark", level: "transtibial", aspect: "lateral", third: "proximal" }, { kind: "firm-mark", level: "transtibial", aspect: "lateral", third: "proximal" }]
 */
export function findingsOfMark(
  mark: SkinMark,
  { level, limbLengthMm, lookedAtMin, place }: MarkLook,
  limits: Limits = defaultLimits,
): Finding[] {
  if (!isThere(mark)) return [];
  const kinds = kindsOfMark(mark, limitValue(limits, "fade-minutes"), lookedAtMin);
  if (place !== undefined) return kinds.map((kind) => ({ kind, level, place }));
  // Where it lies does not depend on how strong it is; a mark of grade 0 would be in no cell.
  const cells = mapMarks([{ ...mark, strength: "deep" }], limbLengthMm).filter(({ grade }) => grade > 0);
  return kinds.flatMap((kind) =>
    cells.map(
      ({ aspect, third }): Finding => (aspect && third ? { kind, level, aspect, third } : { kind, level, place: "distal end" }),
    ),
  );
}

function kindsOfMark(mark: SkinMark, fadeMin: number, lookedAtMin: number | undefined): FindingKind[] {
  const { strength, blanches, fadedAtMin, firm, painful, warm, broken } = mark;
  const isLate = (fadedAtMin !== null && fadedAtMin > fadeMin) || (lookedAtMin !== undefined && lookedAtMin >= fadeMin);
  const fadedInTime = fadedAtMin !== null && !isLate;
  const noBlanch = blanches === "no";
  const all: [FindingKind, boolean][] = [
    ["broken-skin", broken],
    ["purple-mark", strength === "purple"],
    ["non-blanching", noBlanch && !fadedInTime],
    ["late-fading", isLate],
    ["deep-mark", strength === "deep" || (noBlanch && fadedInTime)],
    ["clear-mark", strength === "clear" && !noBlanch],
    ["faint-mark", strength === "faint" && !noBlanch],
    ["firm-mark", firm],
    ["painful-mark", painful],
    ["warm-mark", warm],
  ];
  const kinds = all.filter(([, found]) => found).map(([kind]) => kind);
  const forbidding = kinds.filter(isForbidding);
  return forbidding.length > 0 ? forbidding : kinds;
}

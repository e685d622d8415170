/** What an adjustment was meant to answer, where it acts, and what else it could have changed. */
import type { Adjustment } from "./bundle";
import type { MarkCell } from "./skin-marks-map";
import { type AdjustmentKind, adjustmentKinds, type CheckKey } from "./words";

/** What an adjustment is judged on. `marks` are those in the places where it acts. */
export type AnsweredMeasure =
  | { of: "marks" | "pain" | "displacement" }
  | { of: "mark"; markId: string }
  | { of: "feeling"; kind: string }
  | { of: "check"; key: string }
  | { of: "motion"; joint: string };

type Placed = Pick<Adjustment, "aspect" | "third">;

/**
 * What it answers; where it does not say, a suspension is judged on displacement, and what shapes a named place on the
 * marks there. Null where nothing follows.
 */
export function answeredMeasure({ answers, kind, aspect, third }: Adjustment): AnsweredMeasure | null {
  if (answers === undefined) {
    if (kind === "suspension") return { of: "displacement" };
    const shapesPlace = ["relief", "build-up", "trim", "flare"].includes(kind) && (aspect ?? third) !== undefined;
    return shapesPlace ? { of: "marks" } : null;
  }
  if (answers === "pain" || answers === "displacement") return { of: answers };
  const [of, ...rest] = answers.split(":");
  const what = rest.join(":");
  switch (of) {
    case "mark":
      return { of, markId: what };
    case "feeling":
      return { of, kind: what };
    case "check":
      return { of, key: what };
    case "motion":
      return { of, joint: what };
    default:
      return null;
  }
}

/** Whether an adjustment acts on a cell. Without an aspect it acts all round, without a third all along; the end is distal. */
export const actsOnCell = ({ aspect, third }: Placed, cell: Pick<MarkCell, "aspect" | "third">): boolean =>
  (aspect === undefined || cell.aspect === undefined || cell.aspect === aspect) &&
  (third === undefined || third === (cell.third ?? "distal"));

/** Two places that may be one: what is not named may be anywhere. */
export const mayMeet = (one: Placed, other: Placed): boolean =>
  (one.aspect === undefined || other.aspect === undefined || one.aspect === other.aspect) &&
  (one.third === undefined || other.third === undefined || one.third === other.third);

/** Common practice, no source: what each kind of adjustment commonly changes. */
const reach: Readonly<Record<AdjustmentKind, readonly AnsweredMeasure["of"][]>> = {
  relief: ["mark", "marks", "pain", "feeling"],
  "build-up": ["mark", "marks", "pain", "feeling", "displacement"],
  trim: ["mark", "marks", "pain", "feeling", "motion"],
  flare: ["mark", "marks", "pain", "feeling", "motion"],
  volume: ["mark", "marks", "pain", "feeling", "displacement"],
  length: ["mark", "marks", "pain", "feeling", "displacement"],
  closure: ["mark", "marks", "pain", "feeling", "displacement"],
  suspension: ["pain", "feeling", "displacement"],
  alignment: ["mark", "marks", "pain", "feeling", "motion"],
  other: ["mark", "marks", "pain", "feeling", "displacement", "motion"],
};

const shaping: readonly AdjustmentKind[] = ["relief", "build-up", "trim", "flare", "volume", "closure", "length", "other"];
const holding: readonly AdjustmentKind[] = ["volume", "closure", "suspension", "build-up", "length", "other"];
const edges: readonly AdjustmentKind[] = ["trim", "flare", "relief", "length", "other"];

const reachOfCheck: Readonly<Record<CheckKey, readonly AdjustmentKind[]>> = {
  donning: ["volume", "closure", "suspension", "trim", "flare", "length", "other"],
  seating: shaping,
  "end-contact": holding,
  "total-contact": [...shaping, "suspension"],
  suspension: holding,
  rotation: [...holding, "trim"],
  "trim-lines": edges,
  sitting: [...edges, "alignment"],
  "bony-relief": ["relief", "build-up", "volume", "trim", "flare", "alignment", "other"],
  circulation: shaping,
  feeling: shaping,
  length: ["length", "alignment", "other"],
  "comfort-at-rest": adjustmentKinds,
  "comfort-under-load": adjustmentKinds,
  "comfort-standing": adjustmentKinds,
  "comfort-walking": adjustmentKinds,
};

/** Whether an adjustment made for something else could have changed a measure too, in the places that the measure is about. */
export function couldHaveChanged(other: Adjustment, { measure, place }: { measure: AnsweredMeasure; place: Placed }): boolean {
  if (measure.of === "check")
    return (
      other.answers === `check:${measure.key}` || (reachOfCheck[measure.key as CheckKey] ?? adjustmentKinds).includes(other.kind)
    ); // A key of another level is any check's.
  const local = measure.of === "mark" || measure.of === "marks" || measure.of === "feeling";
  return reach[other.kind].includes(measure.of) && (!local || mayMeet(other, place));
}

/** The shape of what practitioners consider. */
import type { FindingPlace } from "./consider-places";
import type { FindingKind } from "./consider-words";
import type { AdjustmentKind, Level } from "./words";

export interface Consideration {
  id: string;
  kind: FindingKind;
  /** Findings that the row covers as well. They forbid where `kind` forbids, and only there. */
  alsoFor: readonly FindingKind[];
  limb: "upper" | "lower" | "any";
  /** Missing: every level of the limb that has the place. */
  levels?: readonly Level[];
  place?: FindingPlace;
  /** What was found, as a heading. */
  finding: string;
  /** Nothing here is offered before the reason to stop; empty where the finding forbids, or where nothing is to be changed. */
  adjustments: readonly { kind: AdjustmentKind; what: string }[];
  /** What practitioners weigh. */
  weigh: readonly string[];
  cautions: readonly string[];
  /** When to stop, and whom to call. */
  stopWhen: string;
  /** The socket is off and the physician is asked first; the stop leads, and there is no adjustment. */
  forbids: boolean;
  source: "common-practice";
}

/** A row as it is written down; `stopWhen` holds the reason alone. What all rows share is added in `consider.ts`. */
export type ConsiderRow = Omit<Consideration, "limb" | "alsoFor" | "forbids" | "source"> &
  Partial<Pick<Consideration, "alsoFor">>;

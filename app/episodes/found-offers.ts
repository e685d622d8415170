/** From a finding of the records to what practitioners consider for it, ready to be taken up. */
import {
  type Adjustment,
  type AdjustmentKind,
  type Consideration,
  considerEach,
  type Finding,
  forbiddingFindings,
} from "@/lib/fit";

/** A considered adjustment, ready to be taken up: its amount and its reason are left to whoever decides. */
export interface Offer {
  id: string;
  kind: AdjustmentKind;
  what: string;
  unit?: Adjustment["unit"];
  aspect?: Adjustment["aspect"];
  third?: Adjustment["third"];
  answers?: string;
}

export interface Considered {
  id: string;
  heading: string;
  offers: Offer[];
  weigh: string[];
  cautions: string[];
  stopWhen: string;
}

interface LookedUp {
  id: string;
  answers?: string | undefined;
  findings: readonly Finding[];
}

export const isForbidding = ({ findings }: Pick<LookedUp, "findings">): boolean =>
  findings.some(({ kind }) => forbiddingFindings.includes(kind));

/** Of what forbids only what says so; nothing is offered for it. */
export function consideredFor(found: LookedUp): Considered[] {
  const { findings } = found;
  const forbids = isForbidding(found);
  const place = findings.find(({ aspect, third, place }) => aspect ?? third ?? place);
  const rows = considerEach(forbids ? findings.filter(({ kind }) => forbiddingFindings.includes(kind)) : findings);
  return rows.map((row) => ({
    id: row.id,
    heading: row.finding,
    offers: forbids ? [] : offersOf(row, found, place),
    weigh: [...row.weigh],
    cautions: [...row.cautions],
    stopWhen: row.stopWhen,
  }));
}

const usualUnit: Partial<Record<AdjustmentKind, Adjustment["unit"]>> = {
  relief: "mm",
  "build-up": "mm",
  trim: "mm",
  flare: "mm",
  length: "mm",
  volume: "percent",
  alignment: "deg",
};

/** These are made where the finding is; a build-up or a volume is often made elsewhere, so its place is left to be chosen. */
const madeThere: readonly AdjustmentKind[] = ["relief", "trim", "flare"];

function offersOf({ id: rowId, adjustments }: Consideration, { id, answers }: LookedUp, place: Finding | undefined): Offer[] {
  return adjustments.map(({ kind, what }, index) => {
    const there = madeThere.includes(kind) ? place : undefined;
    const third = there?.place === "distal end" ? "distal" : there?.third;
    const unit = usualUnit[kind];
    return {
      id: `${id}~${rowId}~${index}`,
      kind,
      what,
      ...(unit ? { unit } : {}),
      ...(there?.aspect ? { aspect: there.aspect } : {}),
      ...(third ? { third } : {}),
      ...(answers ? { answers } : {}),
    };
  });
}

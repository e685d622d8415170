/** What a row of adjustments begins with: nothing, an adjustment that is there already, or one that was taken up. */
import type { FormValues } from "@/app/_parts/form-state";
import type { Adjustment } from "@/lib/fit/bundle";
import type { Offer } from "./found-offers";

export interface AdjustmentRow {
  row: number;
  first: Readonly<Record<string, string>>;
  /** What practitioners consider, where the row was taken up from it. */
  considered?: string;
  /** Taken up just now: what is still to be typed gets the focus. */
  isNew?: boolean;
}

const asText = (value: string | number | undefined): string => (value === undefined ? "" : String(value));

export const firstOfAdjustment = ({
  kind,
  amount,
  unit,
  aspect,
  third,
  reason,
  answers,
}: Adjustment): Record<string, string> => ({
  kind,
  amount: asText(amount),
  unit: asText(unit),
  aspect: asText(aspect),
  third: asText(third),
  reason,
  answers: asText(answers),
});

/** Amount and reason are left to whoever decides. */
export const firstOfOffer = ({ kind, unit, aspect, third, answers }: Offer): Record<string, string> => ({
  kind,
  unit: asText(unit),
  aspect: asText(aspect),
  third: asText(third),
  answers: asText(answers),
});

/** Nothing was typed or chosen in it. */
export const isFreeRow = ({ row, first }: AdjustmentRow, typed: FormValues): boolean =>
  Object.values(first).every((value) => value === "") &&
  Object.entries(typed).every(([name, value]) => !name.startsWith(`adjustments.${row}.`) || String(value).trim() === "");

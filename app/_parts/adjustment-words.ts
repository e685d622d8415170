import type { Adjustment } from "@/lib/fit/bundle";
import { formatNumber } from "./numbers";

const unitWords = { mm: "mm", percent: "%", deg: "°" } as const;

interface AdjustmentShown {
  kind: string;
  aspect?: string | null | undefined;
  third?: string | null | undefined;
  amount?: number | null | undefined;
  unit?: string | null | undefined;
}

/**
 * An adjustment in a line: kind, amount, place.
 *
 * @example adjustmentWords({ kind: "relief", amount: 2, unit: "mm", aspect: "lateral", third: "distal" }) // => "relief 2 mm, lateral, distal third"
 */
export function adjustmentWords({ kind, amount, unit, aspect, third }: AdjustmentShown | Adjustment): string {
  const sign = unit && unit in unitWords ? unitWords[unit as keyof typeof unitWords] : ""; // the units of a bundle, checked on their way in
  const size = amount === null || amount === undefined ? "" : ` ${formatNumber(amount, Number.isInteger(amount) ? 0 : 1)}${sign === "°" ? "" : "\u00a0"}${sign}`;
  return [`${kind}${size}`, aspect, third && `${third} third`].filter(Boolean).join(", ");
}

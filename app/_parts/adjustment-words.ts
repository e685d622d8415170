import type { Adjustment } from "@/lib/fit/bundle";
import { formatAmount } from "./numbers";

type Described = { [Part in "kind" | "amount" | "unit" | "aspect" | "third"]?: Adjustment[Part] | null | undefined };

/**
 * An adjustment in one line, as it is said at the bench.
 *
 * @example adjustmentWords({ kind: "relief", amount: 2, unit: "mm", aspect: "lateral", third: "distal" }) // => "relief 2 mm, lateral, distal third"
 */
export function adjustmentWords({ kind, amount, unit, aspect, third }: Described): string {
  const size = amount === null || amount === undefined ? "" : ` ${formatAmount(amount, unit ?? "")}`;
  return [`${kind ?? "other"}${size}`, aspect, third && `${third} third`].filter(Boolean).join(", ");
}

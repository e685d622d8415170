import { wordOptions } from "@/app/_parts/word-options";
import { adjustmentKinds, adjustmentUnits, aspects, thirds } from "@/lib/fit/words";

/** What an adjustment is made of: where, what, how much, why, and the finding that it answers. */
export const adjustmentFields = [
  { name: "kind", label: "kind", kind: "select", options: wordOptions(adjustmentKinds) },
  { name: "amount", label: "amount", kind: "number", optional: true },
  {
    name: "unit",
    label: "unit",
    kind: "select",
    options: adjustmentUnits.map((unit) => ({ value: unit, label: unit })),
    optional: true,
    empty: "none",
  },
  { name: "aspect", label: "aspect", kind: "select", options: wordOptions(aspects), optional: true, empty: "all round" },
  { name: "third", label: "third", kind: "select", options: wordOptions(thirds), optional: true, empty: "whole length" },
  { name: "reason", label: "reason", kind: "text", size: 36 },
] as const;

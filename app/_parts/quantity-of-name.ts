import type { MeasuredQuantity } from "@/lib/fit/units";

const endings: readonly (readonly [RegExp, MeasuredQuantity])[] = [
  [/Mm$/, "length"],
  [/Kg$/, "mass"],
  [/[a-z]N$/, "force"],
];

/** Names of fields say what they hold: `circumferenceMm`, `massKg`, `loadN`. Nothing where there is but one unit. */
export const quantityOfName = (name: string): MeasuredQuantity | undefined => endings.find(([ending]) => ending.test(name))?.[1];

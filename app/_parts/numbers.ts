/**
 * Numbers for the eye: a true minus sign, a space before the unit that does not break, and no more digits than the
 * error of the value carries. What is judged and stored is never rounded; only what is shown.
 */

const space = "\u00a0";
const minus = "−";

/** Units as `lib/fit` writes them, and as people read them. */
const unitSigns: Record<string, string> = { deg: "°", degrees: "°", percent: "%", minutes: "min", days: "days" };
const usualDigits: Record<string, number> = { mm: 1, mL: 0, N: 0, "°": 0, "%": 1, min: 0, kg: 2, N·m: 2, days: 0, "mm/N": 3 };

export interface Quantity {
  value: number;
  unit?: string | undefined;
  /** One standard error, in the unit of the value. */
  standardError?: number | undefined;
}

/** @example formatNumber(-6.08, 1) // => "−6.1" */
export function formatNumber(value: number, digits: number): string {
  const rounded = Math.abs(value).toFixed(digits);
  return value < 0 && Number(rounded) !== 0 ? minus + rounded : rounded;
}

/**
 * A value with its error, if it has one, and its unit.
 *
 * @example formatQuantity({ value: 2.71, standardError: 0.42, unit: "mm" }) // => "2.7 ± 0.4 mm"
 * @example formatQuantity({ value: 7, standardError: 4.24, unit: "deg" }) // => "7 ± 4°"
 */
export function formatQuantity({ value, unit = "", standardError: given = 0 }: Quantity): string {
  // Points that lie on a line leave an error that is only the rounding of binary fractions: none.
  const standardError = given > 1e-9 * Math.max(1, Math.abs(value)) ? given : undefined;
  const sign = unitSigns[unit] ?? unit;
  const digits = digitsOf({ value, sign, standardError });
  const number = formatNumber(value, digits);
  const error = standardError ? `${space}±${space}${formatNumber(standardError, digits)}` : "";
  return `${number}${error}${beforeUnit(sign)}`;
}

/**
 * An amount that someone chose, with the digits that they gave it.
 *
 * @example formatAmount(-2, "percent") // => "−2 %"
 */
export function formatAmount(value: number, unit = ""): string {
  const digits = Math.min(3, (String(value).split(".")[1] ?? "").length);
  return formatNumber(value, digits) + beforeUnit(unitSigns[unit] ?? unit);
}

/** @example formatChange({ value: 3.4, unit: "mm" }) // => "+3.4 mm" */
export const formatChange = (change: Quantity): string => (change.value > 0 ? "+" : "") + formatQuantity(change);

/** @example counted(1, "minute") // => "1 minute" */
export const counted = (count: number, thing: string): string =>
  `${formatNumber(count, Number.isInteger(count) ? 0 : 1)} ${thing}${count === 1 ? "" : "s"}`;

function beforeUnit(sign: string): string {
  if (sign === "") return "";
  return sign === "°" ? sign : space + sign;
}

/** A whole number stays whole; an error decides how many digits mean something; else the unit does. */
function digitsOf({ value, sign, standardError }: { value: number; sign: string; standardError: number | undefined }): number {
  if (standardError) return Math.min(4, Math.max(0, -Math.floor(Math.log10(standardError))));
  const usual = usualDigits[sign];
  if (usual === 0) return Number.isInteger(Math.round(value * 10) / 10) ? 0 : 1;
  return usual ?? (Number.isInteger(value) ? 0 : 2);
}

/**
 * Inches, pounds and pounds-force beside the millimetres, kilograms and newtons that everything is kept in. Read
 * exactly: a decimal number is multiplied as it was written, and only the product is rounded, once, to the nearest
 * number that the machine can hold. Shown exactly: only the eye's decimals are rounded.
 */
import { FitInputError } from "./errors";

export const quantities = ["length", "mass", "force"] as const;
export type MeasuredQuantity = (typeof quantities)[number];

/** As written behind a number. The first of each quantity is the one that is kept. */
export const unitsOf = { length: ["mm", "in"], mass: ["kg", "lb"], force: ["N", "lbf"] } as const;
export type Unit = (typeof unitsOf)[MeasuredQuantity][number];

/** So many of the kept unit are one, as written in the source: exact by definition. */
const factors: Readonly<Record<Unit, string>> = {
  mm: "1",
  in: "25.4",
  kg: "1",
  lb: "0.45359237",
  N: "1",
  lbf: "4.4482216152605",
};

/** How a person may write each unit. */
const spellings: Readonly<Record<string, Unit>> = {
  mm: "mm",
  in: "in",
  inch: "in",
  inches: "in",
  '"': "in",
  "″": "in",
  kg: "kg",
  lb: "lb",
  lbs: "lb",
  n: "N",
  lbf: "lbf",
};

/** More decimals than any tape or scale has: a longer number is a slip. */
const mostCharacters = 30;
const decimal = /^(?<sign>[-−+]?)(?<whole>\d*)(?:[.,](?<part>\d*))?$/;
const fraction = /^(?:(?<whole>\d+)[ -])?(?<over>\d+)\/(?<under>\d+)$/;
const withUnit = /^(?<number>[-−+]?[\d.,/ -]*[\d.,])\s*(?<unit>[a-z"″]*)$/i;

export interface ReadQuantity {
  /** In mm, kg or N. */
  value: number;
  /** As it was written, or the one that was understood. */
  unit: Unit;
}

/**
 * Reads a length, mass or force as a person writes it: "7.25 in", "7 1/4", "184,2 mm". A comma or a point is the decimal
 * mark; a fraction is read in inches and pounds, as tapes are marked.
 *
 * @param text a number, with or without its unit
 * @param as the quantity, and the unit that is meant where none is written
 * @returns in mm, kg or N
 * @throws FitInputError where it is no number, or its unit is of another quantity
 * @source nist-sp-811
 *
 * @example
 * readQuantity("7 1/4 in", { quantity: "length", unit: "mm" }).value
 * // => 184.15
 */
export function readQuantity(text: string, as: { quantity: MeasuredQuantity; unit: Unit }): ReadQuantity {
  const written = text.trim();
  const { number, unit: suffix = "" } = withUnit.exec(written)?.groups ?? {};
  if (number === undefined || written.length > mostCharacters)
    throw new FitInputError("text", `expected a number, as 184.2 ${as.unit}`);
  const unit = suffix === "" ? as.unit : spellings[suffix.toLowerCase()];
  const possible: readonly Unit[] = unitsOf[as.quantity];
  if (unit === undefined || !possible.includes(unit))
    throw new FitInputError("text", `expected ${possible.join(" or ")} behind the number, not ${suffix || as.unit}`);
  const value = productOf(exactly(number.trim(), unit), exactly(factors[unit], unit));
  if (!Number.isFinite(value)) throw new FitInputError("text", `expected a number, as 184.2 ${as.unit}`);
  return { value, unit };
}

/**
 * A value that is kept in mm, kg or N, in another unit of the same quantity, not rounded.
 *
 * @throws FitInputError where the value is not finite
 * @source nist-sp-811
 *
 * @example
 * inUnit(63.5, "in")
 * // => 2.5
 */
export function inUnit(value: number, unit: Unit): number {
  if (!Number.isFinite(value)) throw new FitInputError("value", "expected a finite number");
  return value / Number(factors[unit]);
}

/** The same in the kept unit. */
export function fromUnit(value: number, unit: Unit): number {
  if (!Number.isFinite(value)) throw new FitInputError("value", "expected a finite number");
  const { top, under } = exactly(String(value).includes("e") ? value.toFixed(20) : String(value), unit);
  return productOf({ top, under }, exactly(factors[unit], unit));
}

/** What a tape, a scale or a spring balance can be read to. */
const decimalsShown: Readonly<Record<Unit, number>> = { mm: 1, in: 2, kg: 2, lb: 2, N: 0, lbf: 1 };

/**
 * For the eye: rounded, with its unit. What is kept is not.
 *
 * @example
 * showQuantity(184.15, "in")
 * // => "7.25 in"
 */
export function showQuantity(value: number, unit: Unit, decimals: number = decimalsShown[unit]): string {
  const rounded = Number(inUnit(value, unit).toFixed(decimals));
  return `${String(rounded === 0 ? 0 : rounded).replace("-", "−")} ${unit}`;
}

/** A number as a fraction of whole numbers, as it was written. */
interface Exact {
  top: bigint;
  under: bigint;
}

function exactly(number: string, unit: Unit): Exact {
  const parts = fraction.exec(number)?.groups;
  if (parts && (unit === "in" || unit === "lb")) {
    const [whole, over, under] = [BigInt(parts.whole ?? 0), BigInt(parts.over ?? 0), BigInt(parts.under ?? 0)];
    if (under === 0n) throw new FitInputError("text", "expected a fraction of something, not of 0");
    return { top: whole * under + over, under };
  }
  const digits = decimal.exec(number)?.groups;
  const { sign = "", whole = "", part = "" } = digits ?? {};
  if (!digits || whole + part === "")
    throw new FitInputError("text", "expected one number, with a point or a comma as its decimal mark");
  const top = BigInt(whole + part);
  return { top: sign === "-" || sign === "−" ? -top : top, under: 10n ** BigInt(part.length) };
}

/** The nearest number to the exact product: the fraction is written out to more digits than a number holds. */
function productOf(a: Exact, b: Exact): number {
  const [top, under] = [a.top * b.top, a.under * b.under];
  const scaled = (top * 10n ** 40n) / under;
  return Number(`${scaled}e-40`);
}

/**
 * Fields as people fill them in: text from a form or plain values from a script, one schema for both.
 * Every message says what to do, in the words of the field.
 */
import { z } from "zod";
import { FitInputError, type MeasuredQuantity, readQuantity, unitsOf } from "@/lib/fit";

export const blankToNothing = (value: unknown): unknown => (typeof value === "string" && value.trim() === "" ? undefined : value);

/** Reads "182,5" and "−3" as a person means them; leaves anything that is no number for the schema to refuse. */
export function readNumber(value: unknown): unknown {
  if (typeof value !== "string") return value ?? undefined;
  const text = value.trim().replace("−", "-").replace(",", ".");
  if (text === "") return undefined;
  return /^[-+]?\d+(?:\.\d+)?$/.test(text) ? Number(text) : value;
}

const quantityOf: Readonly<Record<string, MeasuredQuantity>> = { mm: "length", kg: "mass", N: "force" };
/** Written behind a number that has no other unit: "131°", "20 min". */
const plainUnits: Readonly<Record<string, RegExp>> = { "°": /\s*(?:°|deg)$/, "%": /\s*%$/, min: /\s*min(?:utes)?$/ };

/** Reads "7 1/4 in" as 184.15 mm and "131°" as 131; leaves what it cannot read for the schema to refuse. */
function readAmount(value: unknown, unit: string): unknown {
  if (typeof value !== "string" || value.trim() === "") return readNumber(value);
  const quantity = quantityOf[unit];
  if (quantity === undefined) return readNumber(value.trim().replace(plainUnits[unit] ?? "", ""));
  try {
    return readQuantity(value, { quantity, unit: unitsOf[quantity][0] }).value;
  } catch (error) {
    if (error instanceof FitInputError) return value;
    throw error;
  }
}

interface Range {
  unit?: string;
  min: number;
  max: number;
  /** How the refusal begins: "A circumference". */
  what: string;
}

const ranged = ({ unit = "", min, max, what }: Range) => {
  const between = `${what} is between ${min} and ${max}${unit && ` ${unit}`}.`;
  return z
    .number({
      error: ({ input }) => (input === undefined ? `${what} is missing.` : `Give a number${unit && ` in ${unit}`}.`),
    })
    .min(min, between)
    .max(max, between);
};

const reader =
  ({ unit = "" }: Range) =>
  (value: unknown) =>
    readAmount(value, unit);
export const amount = (range: Range) => z.preprocess(reader(range), ranged(range));
export const maybeAmount = (range: Range) => z.preprocess(reader(range), ranged(range).optional());

export const rating = (what: string) => amount({ min: 0, max: 10, what });
export const maybeRating = (what: string) => maybeAmount({ min: 0, max: 10, what });

export const text = (what: string, max = 200) =>
  z.preprocess(
    blankToNothing,
    z
      .string({ error: `${what} is missing.` })
      .trim()
      .max(max, `${what}: at most ${max} characters.`),
  );
export const maybeText = (what: string, max = 4000) =>
  z.preprocess(
    blankToNothing,
    z
      .string({ error: `${what}: give text.` })
      .trim()
      .max(max, `${what}: at most ${max} characters.`)
      .optional(),
  );

export const choice = <const T extends readonly string[]>(what: string, words: T) =>
  z.preprocess(
    blankToNothing,
    z.enum(words, { error: ({ input }) => (input === undefined ? `Choose ${what}.` : `Choose one of: ${words.join(", ")}.`) }),
  );
export const maybeChoice = <const T extends readonly string[]>(words: T) =>
  z.preprocess(blankToNothing, z.enum(words, { error: `Choose one of: ${words.join(", ")}.` }).optional());

export const id = (what: string) => text(what, 120);
export const maybeId = z.preprocess(blankToNothing, z.string().max(120).optional());

/** The id that a form brings for the record it makes, so that sending it twice makes one. */
export const newRecordId = z.preprocess(
  blankToNothing,
  z.uuid({ error: "This form has no valid id. Load the page again." }).optional(),
);

const date = (what: string) => z.iso.date({ error: `${what} is no date of the calendar.` });
export const day = (what: string) => z.preprocess(blankToNothing, z.string({ error: `${what} is missing.` }).pipe(date(what)));
export const maybeDay = (what: string) => z.preprocess(blankToNothing, date(what).optional());

/** An instant: ISO 8601 with an offset, or a Date. Local times of forms are turned into this before they come here. */
export const instant = (what: string) =>
  z.preprocess(
    (value) => (value instanceof Date ? value.toISOString() : blankToNothing(value)),
    z
      .string({ error: `${what} is missing.` })
      .pipe(z.iso.datetime({ offset: true, error: `${what} is no date and time of the calendar.` }))
      .transform((value) => new Date(value)),
  );
export const maybeInstant = (what: string) =>
  z.preprocess(
    (value) => (value instanceof Date ? value.toISOString() : blankToNothing(value)),
    z.iso
      .datetime({ offset: true, error: `${what} is no date and time of the calendar.` })
      .transform((value) => new Date(value))
      .optional(),
  );

export const yes = z.preprocess((value) => value === true || value === "on" || value === "yes", z.boolean());

export const version = z.preprocess(readNumber, z.number({ error: "This form has no version. Load the page again." }).int());

/** Rows of a form; a row with nothing in it was left free and is dropped. */
export const rows = <T extends z.ZodType>(row: T, most = 200) =>
  z.preprocess(
    (value) => (Array.isArray(value) ? value.filter((entry) => !isEmptyRow(entry)) : (value ?? [])),
    z.array(row).max(most, `At most ${most} rows.`),
  );

const isEmptyRow = (entry: unknown): boolean =>
  entry === null ||
  entry === undefined ||
  (typeof entry === "object" &&
    Object.values(entry).every((value) => value === undefined || (typeof value === "string" && value.trim() === "")));

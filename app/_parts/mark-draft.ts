/** A skin mark as it is being written down: the text of its fields, and what can be said and drawn of it so far. */
import type { SkinMark } from "@/lib/fit/bundle";
import { FitInputError } from "@/lib/fit/errors";
import { gradeMark, type MarkGrade } from "@/lib/fit/skin-marks-grade";
import { inUnit, readQuantity, type unitsOf } from "@/lib/fit/units";
import { blanchings, type Strength, strengths } from "@/lib/fit/words";
import type { FormValues } from "./form-state";
import type { LimbPlace } from "./limb-map-geometry";
import type { PlacedMark } from "./limb-map-marks";
import type { markFields } from "./mark-fields";

export type MarkFieldName = (typeof markFields)[number]["name"];
export type DraftValues = Readonly<Partial<Record<MarkFieldName | "markId", string>>>;

/** Lengths are typed in the unit that the person has chosen; everything else has one unit. */
export type LengthUnit = (typeof unitsOf.length)[number];

export interface Draft {
  /** The number in the names of its fields, `look.marks.3.angleDeg`: its own for as long as the form stands. */
  row: number;
  values: DraftValues;
}

/** A mark without a size is drawn at this one, with an outline that asks. */
export const provisionalMm = 12;

/** What came back from the last try or a kept draft goes before what the page gives. */
export function draftsFrom(name: string, values: FormValues, first: readonly DraftValues[]): Draft[] {
  if (Object.keys(values).length === 0) return first.map((row, index) => ({ row: index, values: row }));
  const rows = new Map<number, Record<string, string>>();
  for (const [key, value] of Object.entries(values)) {
    if (!key.startsWith(`${name}.`)) continue;
    const [row = "", field = ""] = key.slice(name.length + 1).split(".");
    if (!/^\d+$/.test(row)) continue;
    const one = rows.get(Number(row)) ?? {};
    rows.set(Number(row), one);
    one[field] = (Array.isArray(value) ? value[0] : value) ?? "";
  }
  return [...rows]
    .sort(([a], [b]) => a - b)
    .map(([row, typed]) => ({ row, values: typed }))
    .filter(({ values: typed }) => !isBlank(typed));
}

/**
 * The number of each draft: a mark that was seen before keeps its own, and new ones take the next in their order.
 *
 * @example numbersOfDrafts([{ row: 0, values: { markId: "b" } }, { row: 1, values: {} }], new Map([["b", 2]])) // => [2, 3]
 */
export function numbersOfDrafts(drafts: readonly Draft[], known: ReadonlyMap<string, number>): number[] {
  let next = Math.max(0, ...known.values());
  return drafts.map(({ values }) => {
    const own = known.get(values.markId ?? "");
    if (own !== undefined) return own;
    next += 1;
    return next;
  });
}

/** Nothing is typed: the id that travels along does not count. Such a row is left out when the form is sent. */
export const isBlank = (values: DraftValues): boolean =>
  Object.entries(values).every(([name, value]) => name === "markId" || value.trim() === "");

/** Reads "8,5" as the server does; undefined where nothing is typed, NaN where it is no number. */
export function typedNumber(text = ""): number | undefined {
  const plain = text
    .trim()
    .replace(/\s*(?:°|deg|min(?:utes)?)$/, "")
    .replace("−", "-")
    .replace(",", ".");
  if (plain === "") return undefined;
  return /^[-+]?\d+(?:\.\d+)?$/.test(plain) ? Number(plain) : Number.NaN;
}

/** In mm: "88" in the person's unit, "3 1/2 in", "88 mm". */
export function typedLength(text = "", unit: LengthUnit = "mm"): number | undefined {
  if (text.trim() === "") return undefined;
  try {
    return readQuantity(text, { quantity: "length", unit }).value;
  } catch (error) {
    if (error instanceof FitInputError) return Number.NaN;
    throw error;
  }
}

/** What the hand or the keys make, as text for a field: whole mm, or hundredths of an inch. */
export const lengthText = (lengthMm: number, unit: LengthUnit): string =>
  unit === "mm" ? String(Math.round(lengthMm)) : String(Number(inUnit(lengthMm, unit).toFixed(2)));

export function placeOfDraft({ distanceFromEndMm, angleDeg }: DraftValues, unit: LengthUnit): LimbPlace | undefined {
  const [distance, angle] = [typedLength(distanceFromEndMm, unit), typedNumber(angleDeg)];
  return isNumber(distance) && isNumber(angle) ? { distanceFromEndMm: distance, angleDeg: angle } : undefined;
}

export interface DrawnDraft extends PlacedMark {
  row: number;
  number: number;
  grade: MarkGrade | null;
  /** Both width and height are known. */
  sized: boolean;
}

interface Drawing {
  number: number;
  unit: LengthUnit;
  /** The top of the map. */
  reachMm: number;
  lookedAtMin?: number | undefined;
}

/** As the map draws it; undefined where it has no place on the map yet. */
export function drawnDraft({ row, values }: Draft, { number, unit, reachMm, lookedAtMin }: Drawing): DrawnDraft | undefined {
  const place = placeOfDraft(values, unit);
  if (!place || place.distanceFromEndMm < 0 || place.distanceFromEndMm > reachMm) return undefined;
  const [widthMm, heightMm] = [sizeOf(values.widthMm, unit), sizeOf(values.heightMm, unit)];
  return {
    id: String(row),
    row,
    number,
    ...place,
    widthMm: widthMm ?? provisionalMm,
    heightMm: heightMm ?? provisionalMm,
    grade: gradeSoFar(values, lookedAtMin),
    sized: widthMm !== undefined && heightMm !== undefined,
  };
}

function sizeOf(text: string | undefined, unit: LengthUnit): number | undefined {
  const size = typedLength(text, unit);
  return isNumber(size) && size > 0 && size <= 500 ? size : undefined;
}

/** The grade by what is answered so far; null as long as nobody said how strong the mark is. It can only rise. */
export function gradeSoFar(values: DraftValues, lookedAtMin: number | undefined): MarkGrade | null {
  const strength = strengths.find((word): word is Strength => word === values.strength);
  if (!strength) return null;
  const fadedAtMin = typedNumber(values.fadedAtMin);
  return gradeMark(
    {
      id: "draft",
      ...{ distanceFromEndMm: 0, angleDeg: 0, widthMm: 1, heightMm: 1 },
      strength,
      blanches: blanchings.find((word) => word === values.blanches) ?? "not tested",
      ...signsOf(values),
      fadedAtMin: isNumber(fadedAtMin) && fadedAtMin >= 0 ? fadedAtMin : null,
    },
    lookedAtMin,
  );
}

export const signsOf = (values: DraftValues): Pick<SkinMark, "firm" | "warm" | "painful" | "broken"> => ({
  firm: values.firm === "yes",
  warm: values.warm === "yes",
  painful: values.painful === "yes",
  broken: values.broken === "yes",
});

export const isNumber = (value: number | undefined): value is number => value !== undefined && Number.isFinite(value);

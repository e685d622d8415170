/** What is to be said of a mark while it is being typed. The server judges again; its limits are the same. */
import type { FormState } from "./form-state";
import { type MapGeometry, mapReachMm } from "./limb-map-geometry";
import {
  type Draft,
  type DraftValues,
  isNumber,
  type LengthUnit,
  type MarkFieldName,
  typedLength,
  typedNumber,
} from "./mark-draft";
import { markFields } from "./mark-fields";
import { formatNumber } from "./numbers";

const needed = [
  ["distanceFromEndMm", "distance from the end"],
  ["angleDeg", "angle"],
  ["widthMm", "width"],
  ["heightMm", "height"],
  ["strength", "strength"],
  ["blanches", "blanching"],
] as const satisfies readonly (readonly [MarkFieldName, string])[];

/** The words of what has to be answered before the mark can be saved. */
export const missingOf = (values: DraftValues): string[] =>
  needed.filter(([name]) => (values[name] ?? "").trim() === "").map(([, words]) => words);

/** By field, for what is typed; nothing for what is not typed yet. */
export function complaintsOf(
  values: DraftValues,
  { limbLengthMm, circumferenceAt }: Pick<MapGeometry, "limbLengthMm" | "circumferenceAt">,
  unit: LengthUnit,
): Complaints {
  const said: Complaints = {};
  const distance = typedLength(values.distanceFromEndMm, unit);
  const most = mapReachMm(limbLengthMm, Number.POSITIVE_INFINITY);
  if (distance !== undefined) {
    if (Number.isNaN(distance)) said.distanceFromEndMm = `Give a number in ${unit}.`;
    else if (distance < 0) said.distanceFromEndMm = "Count from the distal end upwards: 0 mm or more.";
    else if (distance > most)
      said.distanceFromEndMm = `This residual limb is ${formatNumber(limbLengthMm, 0)} mm long: the mark would lie off it.`;
  }
  const angle = typedNumber(values.angleDeg);
  if (angle !== undefined && !(angle >= 0 && angle <= 360)) said.angleDeg = "An angle is from 0 to 360°.";
  for (const name of ["widthMm", "heightMm"] as const) {
    const size = typedLength(values[name], unit);
    if (size !== undefined && !(size >= 1 && size <= 500)) said[name] = "A size is from 1 to 500 mm.";
  }
  const width = typedLength(values.widthMm, unit);
  const around = isNumber(distance) ? circumferenceAt(distance) : undefined;
  if (isNumber(width) && around !== undefined && width > around && said.widthMm === undefined)
    said.widthMm = `The limb is only ${formatNumber(around, 0)} mm around there.`;
  const faded = typedNumber(values.fadedAtMin);
  if (faded !== undefined && !(faded >= 0 && faded <= 10_000)) said.fadedAtMin = "Give minutes after doffing, or leave it free.";
  return said;
}

export type SaidField = MarkFieldName | "markId";
type Complaints = Partial<Record<MarkFieldName, string>>;

/** The server's word for a field, as long as what it refused still stands there; else what is to be said while typing. */
export function saidOf(
  { row, values }: Draft,
  {
    name,
    form: { errors, values: sent },
    complaints,
  }: { name: string; form: Pick<FormState, "errors" | "values">; complaints: Complaints },
): Map<SaidField, string> {
  const said = new Map<SaidField, string>();
  for (const field of [...markFields.map((one) => one.name), "markId"] as const) {
    const key = `${name}.${row}.${field}`;
    const [refused, before] = [errors[key], sent[key]];
    const stands = (Array.isArray(before) ? before[0] : (before ?? "")) === (values[field] ?? "");
    const words = refused !== undefined && stands ? refused : field === "markId" ? undefined : complaints[field];
    if (words !== undefined) said.set(field, words);
  }
  return said;
}

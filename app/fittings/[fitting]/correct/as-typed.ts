/** A fitting as it would stand in the fields of its form. */
import type { FormValues } from "@/app/_parts/form-state";
import type { FittingRecord } from "@/lib/fit";
import { fromUnit, inUnit, type Unit } from "@/lib/fit/units";
import type { EpisodeWhole } from "@/lib/records/bundle-of";
import type { UnitsOfPerson } from "@/lib/records/units";

type Fitting = EpisodeWhole["fittings"][number];

export function asTyped(fitting: Fitting, units: UnitsOfPerson): FormValues {
  const mm = (value: number) => asTypedIn(value, units.length, "mm");
  const newtons = (value: number) => asTypedIn(value, units.force, "N");
  const { checks, pulls, motion, reported } = fitting as unknown as Pick<
    FittingRecord,
    "checks" | "pulls" | "motion" | "reported"
  >; // the JSON columns, as the command wrote them
  const first = fitting.looks.find(({ recordedAt }) => recordedAt.getTime() === fitting.recordedAt.getTime());
  const text = (value: string | number | null): string => (value === null ? "" : String(value));
  const fields: [string, string][] = [
    ["place", fitting.place],
    ["whoWasThere", text(fitting.whoWasThere)],
    ["measuredBy", text(fitting.measuredBy)],
    ["comfort", text(fitting.comfort)],
    ["pain", text(fitting.pain)],
    ["words", text(fitting.words)],
    ["note", text(fitting.note)],
    ...(reported ?? []).map((part): [string, string] => [`told.${part}`, "yes"]),
    ...Object.entries(checks).map(([key, answer]): [string, string] => [`checks.${key}`, answer]),
    ...pulls.flatMap(({ loadN, displacementMm }, row): [string, string][] => [
      [`pulls.${row}.loadN`, newtons(loadN)],
      [`pulls.${row}.displacementMm`, mm(displacementMm)],
    ]),
    ...motion.flatMap(({ joint, withoutDeg, withDeg }, row): [string, string][] => [
      [`motion.${row}.jointId`, joint],
      [`motion.${row}.withoutDeg`, String(withoutDeg)],
      [`motion.${row}.withDeg`, String(withDeg)],
    ]),
  ];
  return Object.fromEntries([...fields, ...(first ? lookFields(first, mm) : [])]);
}

/**
 * A length or a force as it was typed in the person's unit; with the unit in which it is kept where it was typed in that,
 * so that nothing drifts by being shown.
 */
export function asTypedIn(value: number, unit: Unit, kept: "mm" | "N"): string {
  const typed = Number(inUnit(value, unit).toFixed(5));
  if (Math.abs(fromUnit(typed, unit) - value) <= 1e-9 * Math.max(1, Math.abs(value))) return String(typed);
  return unit === kept ? String(value) : `${value} ${kept}`;
}

function lookFields({ minutesAfterDoffing, marks }: Fitting["looks"][number], mm: (value: number) => string): [string, string][] {
  const yes = (name: string, ticked: boolean): [string, string][] => (ticked ? [[name, "yes"]] : []);
  return [
    ["look.minutesAfterDoffing", String(minutesAfterDoffing)],
    ...yes("look.noMarks", marks.length === 0),
    ...marks.flatMap((mark, row): [string, string][] => {
      const name = `look.marks.${row}`;
      return [
        [`${name}.markId`, mark.markId],
        [`${name}.distanceFromEndMm`, mm(mark.distanceFromEndMm)],
        [`${name}.angleDeg`, String(mark.angleDeg)],
        [`${name}.widthMm`, mm(mark.widthMm)],
        [`${name}.heightMm`, mm(mark.heightMm)],
        [`${name}.strength`, mark.strength],
        [`${name}.blanches`, mark.blanches],
        ...yes(`${name}.firm`, mark.firm),
        ...yes(`${name}.warm`, mark.warm),
        ...yes(`${name}.painful`, mark.painful),
        ...yes(`${name}.broken`, mark.broken),
        ...(mark.fadedAtMin === null ? [] : [[`${name}.fadedAtMin`, String(mark.fadedAtMin)] as [string, string]]),
      ];
    }),
  ];
}

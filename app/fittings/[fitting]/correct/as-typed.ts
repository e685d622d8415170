/** A fitting as it would stand in the fields of its form. */
import type { FormValues } from "@/app/_parts/form-state";
import type { FittingRecord } from "@/lib/fit";
import type { EpisodeWhole } from "@/lib/records/bundle-of";
import type { UnitsOfPerson } from "@/lib/records/units";

type Fitting = EpisodeWhole["fittings"][number];

export function asTyped(fitting: Fitting, units: UnitsOfPerson): FormValues {
  // Who types in inches or pounds reads the kept value with its unit: nothing drifts by being shown.
  const mm = (value: number) => (units.length === "mm" ? String(value) : `${value} mm`);
  const newtons = (value: number) => (units.force === "N" ? String(value) : `${value} N`);
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

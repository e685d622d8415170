import { unitsOf } from "@/lib/fit/units";
import { SelectField } from "./fields";

interface UnitFieldsProps {
  first: { lengthUnit: string | null; massUnit: string | null; forceUnit: string | null };
  /** What a free choice means; without it one has to be chosen. */
  empty?: string;
}

const words: Readonly<Record<string, string>> = {
  mm: "millimetres",
  in: "inches",
  kg: "kilograms",
  lb: "pounds",
  N: "newtons",
  lbf: "pounds-force",
};

const optionsOf = (units: readonly string[]) => units.map((unit) => ({ value: unit, label: words[unit] ?? unit }));

/** Which units are typed and read. */
export const UnitFields = ({ first, empty }: UnitFieldsProps) => (
  <>
    <SelectField
      name="lengthUnit"
      label="Lengths"
      options={optionsOf(unitsOf.length)}
      first={first.lengthUnit ?? ""}
      empty={empty}
    />
    <SelectField name="massUnit" label="Masses" options={optionsOf(unitsOf.mass)} first={first.massUnit ?? ""} empty={empty} />
    <SelectField name="forceUnit" label="Forces" options={optionsOf(unitsOf.force)} first={first.forceUnit ?? ""} empty={empty} />
  </>
);

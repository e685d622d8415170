import { DateField, NumberField, SelectField, TextField } from "@/app/_parts/fields";
import { wordOptions } from "@/app/_parts/word-options";

interface WearerValues {
  clinicNumber: string;
  name: string;
  birthOn: string | null;
  heightMm: number | null;
  bodyMassKg: number | null;
  handedness: string | null;
  occupation: string | null;
}

export const wearerLabels = {
  clinicNumber: "Clinic number",
  name: "Name",
  birthOn: "Born",
  heightMm: "Body height",
  bodyMassKg: "Body mass",
  handedness: "Hand used most",
  occupation: "What the wearer does",
};

/** What is known of a person, as a new wearer and a changed one fill it in. */
export function WearerFields({ first }: { first?: WearerValues }) {
  const text = (value: string | number | null | undefined) =>
    value === null || value === undefined ? {} : { first: String(value) };
  return (
    <>
      <TextField name="name" label={wearerLabels.name} {...text(first?.name)} />
      <TextField
        name="clinicNumber"
        label={wearerLabels.clinicNumber}
        size={14}
        {...text(first?.clinicNumber)}
        hint="Stands on orders and sheets in place of the name."
      />
      <DateField name="birthOn" label={wearerLabels.birthOn} optional {...text(first?.birthOn)} />
      <NumberField
        name="bodyMassKg"
        label={wearerLabels.bodyMassKg}
        unit="kg"
        optional
        {...text(first?.bodyMassKg)}
        hint="A limit of suspension depends on it."
      />
      <NumberField name="heightMm" label={wearerLabels.heightMm} unit="mm" optional {...text(first?.heightMm)} />
      <SelectField
        name="handedness"
        label={wearerLabels.handedness}
        optional
        options={wordOptions(["right", "left", "both", "not said"])}
        {...text(first?.handedness)}
      />
      <TextField name="occupation" label={wearerLabels.occupation} optional {...text(first?.occupation)} />
    </>
  );
}

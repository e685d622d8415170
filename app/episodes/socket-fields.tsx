import { CheckBox, DateField, NumberField, SelectField, TextArea, TextField } from "@/app/_parts/fields";
import { Rows } from "@/app/_parts/rows";
import { wordOptions } from "@/app/_parts/word-options";
import { type Adjustment, adjustmentKinds, adjustmentUnits, aspects, type Station, suspensions, thirds } from "@/lib/fit";

/** What an adjustment is made of: where, what, how much, why, and the finding that it answers. */
export const adjustmentFields = [
  { name: "kind", label: "kind", kind: "select", options: wordOptions(adjustmentKinds) },
  { name: "amount", label: "amount", kind: "number", optional: true },
  {
    name: "unit",
    label: "unit",
    kind: "select",
    options: adjustmentUnits.map((unit) => ({ value: unit, label: unit })),
    optional: true,
    empty: "none",
  },
  { name: "aspect", label: "aspect", kind: "select", options: wordOptions(aspects), optional: true, empty: "all round" },
  { name: "third", label: "third", kind: "select", options: wordOptions(thirds), optional: true, empty: "whole length" },
  { name: "reason", label: "reason", kind: "text", size: 36 },
] as const;

export interface Finding {
  value: string;
  label: string;
}

interface SocketFieldsProps {
  first: {
    stations: readonly Station[];
    adjustments: readonly Adjustment[];
    derivedFromId?: string | undefined;
    limbMeasurementId?: string | undefined;
    lengthMm?: number | null | undefined;
    material?: string | null | undefined;
    wallMm?: number | null | undefined;
    suspension?: string | null | undefined;
    trimLines?: string | null | undefined;
    benchNote?: string | null | undefined;
    neededOn?: string | null | undefined;
  };
  sockets: readonly { id: string; number: number }[];
  measurements: readonly { id: string; label: string }[];
  findings: readonly Finding[];
  stationsFrom: string;
}

const asText = (value: string | number | null | undefined): string =>
  value === null || value === undefined ? "" : String(value);

/** What a check socket is to be, and every adjustment that separates it from the one it comes from. */
export function SocketFields({ first, sockets, measurements, findings, stationsFrom }: SocketFieldsProps) {
  return (
    <>
      {sockets.length > 0 && (
        <SelectField
          name="derivedFromId"
          label="Derived from"
          empty="no earlier socket"
          options={sockets.map(({ id, number }) => ({ value: id, label: `socket ${number}` }))}
          first={first.derivedFromId ?? ""}
        />
      )}
      <Rows
        name="adjustments"
        label={sockets.length > 0 ? "Adjustments to the socket before" : "Adjustments to the plain shape"}
        hint="Each with its reason and, where it has one, the finding that it answers. Minus takes away: volume −2 percent, trim −3 mm."
        one="adjustment"
        fields={[
          ...adjustmentFields,
          { name: "answers", label: "answers", kind: "select", options: findings, optional: true, empty: "no single finding" },
        ]}
        first={first.adjustments.map((adjustment) => ({
          kind: adjustment.kind,
          amount: asText(adjustment.amount),
          unit: asText(adjustment.unit),
          aspect: asText(adjustment.aspect),
          third: asText(adjustment.third),
          reason: adjustment.reason,
          answers: asText(adjustment.answers),
        }))}
        blank={sockets.length > 0 ? 2 : 0}
      />
      {sockets.length > 0 && (
        <CheckBox
          name="workOut"
          label="Work the inside circumferences out from the adjustments"
          hint="From the socket it is derived from; what stands below is then not used. Volume, relief and build-up change them; trim lines and flares do not."
        />
      )}
      <Rows
        name="stations"
        label="Inside circumferences"
        one="level"
        hint={`Distances from the ${stationsFrom}, going up.`}
        fields={[
          { name: "distanceMm", label: "distance", kind: "number", unit: "mm" },
          { name: "circumferenceMm", label: "inside circumference", kind: "number", unit: "mm" },
        ]}
        first={first.stations.map(({ distanceMm, circumferenceMm }) => ({
          distanceMm: String(distanceMm),
          circumferenceMm: String(Math.round(circumferenceMm * 10) / 10),
        }))}
        blank={first.stations.length > 0 ? 0 : 5}
      />
      <SelectField
        name="limbMeasurementId"
        label="Made to the limb as measured"
        empty="no measurement"
        options={measurements.map(({ id, label }) => ({ value: id, label }))}
        first={first.limbMeasurementId ?? ""}
        hint="If the limb changes detectably after it, the evidence goes stale."
      />
      <TextField name="material" label="Material" optional first={asText(first.material)} />
      <NumberField name="wallMm" label="Wall" unit="mm" optional first={asText(first.wallMm)} />
      <NumberField name="lengthMm" label="Length" unit="mm" optional first={asText(first.lengthMm)} />
      <SelectField
        name="suspension"
        label="Suspension"
        empty="as planned for the device"
        options={wordOptions(suspensions)}
        optional
        first={asText(first.suspension)}
      />
      <TextArea name="trimLines" label="Trim lines" optional rows={2} first={asText(first.trimLines)} />
      <TextArea
        name="benchNote"
        label="Note for the bench"
        optional
        rows={2}
        hint="The technician reads this. No clinical words here."
        first={asText(first.benchNote)}
      />
      <DateField name="neededOn" label="Needed on" optional first={asText(first.neededOn)} />
    </>
  );
}

import { DateField, NumberField, SelectField, TextArea, TextField } from "@/app/_parts/fields";
import { wordOptions } from "@/app/_parts/word-options";
import { suspensions } from "@/lib/fit";
import { SocketDesign } from "./socket-design";
import type { SocketDesignProps } from "./use-socket-design";

interface SocketFieldsProps extends Omit<SocketDesignProps, "first"> {
  first: SocketDesignProps["first"] & {
    lengthMm?: number | null | undefined;
    material?: string | null | undefined;
    wallMm?: number | null | undefined;
    suspension?: string | null | undefined;
    trimLines?: string | null | undefined;
    benchNote?: string | null | undefined;
    neededOn?: string | null | undefined;
  };
}

const asText = (value: string | number | null | undefined): string =>
  value === null || value === undefined ? "" : String(value);

/** What a check socket is to be, and every adjustment that separates it from the one it comes from. */
export function SocketFields({ first, ...design }: SocketFieldsProps) {
  const { stations, adjustments, derivedFromId, limbMeasurementId } = first;
  return (
    <>
      <SocketDesign {...design} first={{ stations, adjustments, derivedFromId, limbMeasurementId }} />
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

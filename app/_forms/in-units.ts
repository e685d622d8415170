/** A number that a person typed without a unit is in the unit that they chose: here it gets it. */
import type { FormValues } from "@/app/_parts/form-state";
import { quantityOfName } from "@/app/_parts/quantity-of-name";
import type { UnitsOfPerson } from "@/lib/records/units";

const bareNumber = /^[-−+]?[\d.,]+(?:[ -]?\d+\/\d+)?$/;
const kept: readonly string[] = ["mm", "kg", "N"];

export function inUnits(values: FormValues, units: UnitsOfPerson): FormValues {
  return Object.fromEntries(
    Object.entries(values).map(([name, value]) => {
      const quantity = quantityOfName(name);
      const unit = quantity && units[quantity];
      const isBare = typeof value === "string" && (bareNumber.test(value.trim()) || /^\d+\/\d+$/.test(value.trim()));
      return [name, unit && !kept.includes(unit) && isBare ? `${value.trim()} ${unit}` : value];
    }),
  );
}

"use client";

import { createContext, type ReactNode, useContext } from "react";
import { FitInputError } from "@/lib/fit/errors";
import { inUnit, type MeasuredQuantity, readQuantity, showQuantity, type Unit, unitsOf } from "@/lib/fit/units";
import { type UnitsChosen, withOwnUnits } from "./beside-metric";
import { quantityOfName } from "./quantity-of-name";

const Context = createContext<UnitsChosen>({ length: "mm", mass: "kg", force: "N" });

/** The units that the person who looks at the page has chosen. */
export const UnitsProvider = ({ units, children }: { units: UnitsChosen; children: ReactNode }) => (
  <Context value={units}>{children}</Context>
);

/** Writes the figures of a sentence in the person's own units behind the metric ones. */
export function useOwnUnits(): (sentence: string) => string {
  const units = useContext(Context);
  return (sentence) => withOwnUnits(sentence, units);
}

/** How a field is shown and read whose name says a length, a mass or a force; nothing for others, which have one unit. */
export function useFieldUnit(name: string) {
  const units = useContext(Context);
  const quantity = quantityOfName(name);
  if (!quantity) return undefined;
  const unit = units[quantity];
  const [kept, other] = unitsOf[quantity];
  return {
    unit,
    /** What a field holds that begins with a kept value. Nothing drifts: what is no short number in the unit keeps its own. */
    first: (value: string): string => firstIn(value, { quantity, unit }),
    /** What was typed in the kept unit; nothing where it is no number. */
    read: (typed: string): number | undefined => readTyped(typed, { quantity, unit }),
    /** What was typed in the other unit, for the eye. */
    beside: (typed: string): string => {
      const value = readTyped(typed, { quantity, unit });
      if (value === undefined) return "";
      const isOther = typed.trim().endsWith(other) || (unit === other && !typed.trim().endsWith(kept));
      return showQuantity(value, isOther ? kept : other);
    },
  };
}

function readTyped(typed: string, as: { quantity: MeasuredQuantity; unit: Unit }): number | undefined {
  if (typed.trim() === "") return undefined;
  try {
    return readQuantity(typed, as).value;
  } catch (error) {
    if (error instanceof FitInputError) return undefined;
    throw error;
  }
}

const mostDecimals = 3;

function firstIn(value: string, as: { quantity: MeasuredQuantity; unit: Unit }): string {
  const [amount, [kept]] = [Number(value), unitsOf[as.quantity]];
  if (value.trim() === "" || !Number.isFinite(amount) || kept === as.unit) return value;
  const short = String(Number(inUnit(amount, as.unit).toFixed(mostDecimals)));
  return readTyped(short, as) === amount ? short : `${value} ${kept}`;
}

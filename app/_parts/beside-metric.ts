/** What the tool says is metric; who has chosen other units reads the figure in those behind it. */
import { type MeasuredQuantity, quantities, showQuantity, type Unit, unitsOf } from "@/lib/fit/units";

export type UnitsChosen = Readonly<Record<MeasuredQuantity, Unit>>;

const number = String.raw`[-−+]?\d+(?:[.,]\d+)?`;
/** "12 mm", "0 and 200 mm", "1.6 ± 2 mm", with any kind of space; not "0.2 mm/N", and nothing that has its other unit already. */
const figures = new RegExp(
  String.raw`(?<![\d.,])(${number})(?:(\sand\s|\sto\s|\s±\s|–)(${number}))?\s(mm|kg|N)(?![\w/·])(?!\s\()`,
  "g",
);

/**
 * @example withOwnUnits("A displacement is between 0 and 200 mm.", { length: "in", mass: "kg", force: "N" })
 * // => "A displacement is between 0 and 200 mm (0 and 7.87 in)."
 */
export function withOwnUnits(sentence: string, units: UnitsChosen): string {
  return sentence.replace(figures, (said: string, first: string, between = "", second: string | undefined, kept: string) => {
    const quantity = quantities.find((one) => unitsOf[one][0] === kept);
    const unit = quantity && units[quantity];
    if (!unit || unit === kept) return said;
    const shown = (text: string) => showQuantity(Number(text.replace("−", "-").replace(",", ".")), unit);
    if (second === undefined) return `${said} (${shown(first)})`;
    return `${said} (${shown(first).replace(` ${unit}`, "")}${between}${shown(second)})`;
  });
}

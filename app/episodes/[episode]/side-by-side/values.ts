/** A measure of one socket in words, and what came of it against another. */
import { formatAmount, formatChange, formatNumber, formatQuantity } from "@/app/_parts/numbers";
import type { ComparedCell, ComparedRow, ComparisonRow, SkinFindings, SocketFindings } from "@/lib/fit";

/** Units that stand behind a number; the others say themselves what they are. */
const shownUnits = ["mm", "°", "min"];
const unitShown = (unit: string): string => (shownUnits.includes(unit) ? unit : "");

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** "Last comfort of the trial, of 10", "Displacement under load" */
export const measureWords = ({ measure, unit }: Pick<ComparedRow, "measure" | "unit">): string =>
  `${capital(measure)}${unit === "of 10" ? ", 0–10" : ""}`;

/** Undefined where it was not measured. */
export function valueWords(row: ComparedRow, cell: ComparedCell, findings: SocketFindings): string | undefined {
  const { measured, answer } = cell;
  if (row.id.startsWith("check:")) return answer;
  const skin = row.id.endsWith("-trial")
    ? findings.trial?.skin
    : row.id.endsWith("-fitting")
      ? findings.fitting?.skin
      : undefined;
  if (row.id.startsWith("longest-fade") && skin) {
    const { lowMin, highMin } = skin.longestFade;
    return highMin === null
      ? `not seen to fade by ${formatNumber(lowMin, 0)}\u00a0min`
      : `by ${formatNumber(highMin, 0)}\u00a0min`;
  }
  if (!measured) return undefined;
  if (row.id.startsWith("hardest-mark") && skin) return hardestWords(measured.value, skin.cells);
  if (row.id === "displacement" && findings.displacement)
    return `${formatQuantity({ ...measured, unit: "mm" })} at ${formatQuantity({ value: findings.displacement.atN, unit: "N" })}`;
  return formatQuantity({ ...measured, unit: unitShown(row.unit) });
}

/** "grade 3, lateral distal": where there are more than two, only how many. */
function hardestWords(grade: number, cells: SkinFindings["cells"]): string {
  if (grade === 0) return "no mark";
  const names = cells.filter((cell) => cell.grade === grade).map(({ name }) => name);
  return `grade ${grade}, ${names.length <= 2 ? names.join(" and ") : `${names.length} places`}`;
}

/** "better by 3.4 mm" */
export function outcomeWords({ outcome, difference, unit, id }: ComparisonRow): string {
  if (outcome === "within measuring error") return difference === 0 ? "no difference" : outcome;
  if (outcome === "not measured" || difference === undefined || id.startsWith("check:")) return outcome;
  return `${outcome} by ${amountWords(Math.abs(difference), unit)}`;
}

function amountWords(amount: number, unit: string): string {
  if (unit === "grade") return `${amount} ${amount === 1 ? "grade" : "grades"}`;
  if (unit === "of 10") return `${formatQuantity({ value: amount })} ${amount === 1 ? "point" : "points"}`;
  return formatQuantity({ value: amount, unit: unitShown(unit) });
}

/** "−3.4 ± 0.9 mm; counts from 1.8 mm": the difference with its error, and from where on it is more than that. */
export function differenceWords({ outcome, difference, standardError, detectable, unit, id }: ComparisonRow): string | undefined {
  if (outcome === "not measured" || difference === undefined || difference === 0 || id.startsWith("check:")) return undefined;
  const shown = unitShown(unit);
  // One digit more than it takes to tell it from the difference says nothing.
  const least = detectable === undefined ? undefined : Number(detectable.toPrecision(2));
  const from = least === undefined ? "" : `; counts from ${formatAmount(least, shown)}`;
  return `${formatChange({ value: difference, standardError, unit: shown })}${from}`;
}

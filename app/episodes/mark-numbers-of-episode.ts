/** Marks bear the numbers that they have on the page of their fitting or trial. */
import { numbersOfMarks } from "@/app/_parts/mark-numbers";
import { type Inspection, trackMarks } from "@/lib/fit";

/** From a fitting or a trial to the number of each of its marks. */
export type NumbersOf = (record: { id: string; inspections: readonly Inspection[] }) => ReadonlyMap<string, number>;

/** In the order in which the looks first saw them, as a trial numbers them. */
export const numbersInOrder: NumbersOf = ({ inspections }) =>
  new Map(trackMarks(inspections).map(({ id }, index) => [id, index + 1]));

interface FittingRow {
  id: string;
  correctsId: string | null;
  looks: Parameters<typeof numbersOfMarks>[0];
}

/** A fitting that was put right keeps the numbers of its older versions. */
export const numbersOfEpisode =
  ({ fittings }: { fittings: readonly FittingRow[] }): NumbersOf =>
  (record) => {
    const versions = versionsOf(record.id, fittings);
    return versions.length === 0 ? numbersInOrder(record) : numbersOfMarks(versions.flatMap(({ looks }) => looks));
  };

/** A fitting and those that it puts right. */
function versionsOf(id: string | null, fittings: readonly FittingRow[]): FittingRow[] {
  const row = fittings.find((fitting) => fitting.id === id);
  return row ? [row, ...versionsOf(row.correctsId, fittings)] : [];
}

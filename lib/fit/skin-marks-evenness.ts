/** How evenly the marks are spread over the limb. Even strength round the whole limb is what one wants: common practice. */

import { median } from "simple-statistics";
import { FitInputError } from "./errors";
import { defaultLimits, limitValue } from "./limits";
import type { MarkCell } from "./skin-marks-map";
import { pielou } from "./statistics/pielou";
import { aspects, thirds } from "./words";

export interface Evenness {
  /** Pielou's J over the four aspects, 0…1. */
  around: number;
  /** Pielou's J over the three thirds, 0…1. */
  along: number;
  /** Highest grade over the mean grade of the marked cells; null where nothing is marked. */
  peakToMean: number | null;
  /** Cells that stand out from the rest, the distal end among them. */
  standsOut: GradedCell[];
}

/** As much of a cell as evenness needs: the distal end has neither aspect nor third. */
export type GradedCell = Pick<MarkCell, "aspect" | "third" | "grade"> & Partial<Pick<MarkCell, "name" | "markIds">>;

/** From this many grades above what is usual on this limb a cell stands out. */
const standsOutBy = limitValue(defaultLimits, "stands-out-grades");
/** With fewer marked cells there is nothing usual, and a cell is held against no mark at all. */
const fewestForUsual = 3;

/**
 * Evenness of marks over the cells of a limb.
 *
 * *Around* adds the grades of each aspect's thirds, *along* those of each third's aspects; the distal end is in
 * neither. A wall without a mark is even: 1. A cell stands out where it is two grades or more above the median of the
 * marked wall cells, if three or more are marked, else above 0.
 *
 * @param cells of `mapMarks`
 * @throws FitInputError where a grade is not 0…4
 * @source pielou-1966
 *
 * @example
 * evenness([3, 1, 1, 1].map((grade, index) => ({ aspect: ["anterior", "lateral", "posterior", "medial"][index], third: "middle", grade }))).around
 * // => 0.89624
 */
export function evenness<Cell extends GradedCell>(cells: readonly Cell[]): Evenness & { standsOut: Cell[] } {
  cells.forEach(({ grade }, index) => {
    if (!(grade >= 0 && grade <= 4)) throw new FitInputError(`cells[${index}].grade`, "expected a grade of 0…4");
  });
  const marked = cells.filter(({ grade }) => grade > 0);
  const onWall = marked.filter(({ aspect, third }) => aspect !== undefined && third !== undefined).map(({ grade }) => grade);
  const usual = onWall.length >= fewestForUsual ? median(onWall) : 0;
  return {
    around: pielou(aspects.map((aspect) => gradesWhere(cells, "aspect", aspect))),
    along: pielou(thirds.map((third) => gradesWhere(cells, "third", third))),
    peakToMean: marked.length === 0 ? null : Math.max(...marked.map(({ grade }) => grade)) / (gradesOf(marked) / marked.length),
    standsOut: marked.filter(({ grade }) => grade >= usual + standsOutBy),
  };
}

const gradesOf = (cells: readonly GradedCell[]): number => cells.reduce((sum, { grade }) => sum + grade, 0);

const gradesWhere = (cells: readonly GradedCell[], where: "aspect" | "third", name: string): number =>
  cells.reduce((sum, cell) => (cell[where] === name ? sum + cell.grade : sum), 0);

/** Where the marks are: the limb's wall in twelve cells, four aspects by three thirds, and the distal end. */
import type { SkinMark } from "./bundle";
import { discInRectangle } from "./disc-in-rectangle";
import { FitInputError } from "./errors";
import { gradeMark, type MarkGrade } from "./skin-marks-grade";
import { type Aspect, aspects, type Third, thirds } from "./words";

export interface MarkCell {
  /** As "lateral middle", or "distal end". */
  name: string;
  /** Missing for the distal end, as is the third. */
  aspect?: Aspect;
  third?: Third;
  /** The highest grade of the marks in it; 0 where there is none. */
  grade: MarkGrade;
  markIds: string[];
}

export interface MapOptions {
  /** Circumference where the marks are, in mm: turns a mark's width into degrees. Or how it follows from the distance from the distal end. */
  circumferenceMm?: number | ((distanceFromEndMm: number) => number);
  /** Minutes after doffing of the look that the marks are from. */
  lookedAtMin?: number;
}

/** The limb is taken to be this round where nobody says: between a forearm and a lower leg. From memory. */
export const usualCircumferenceMm = 250;

/** Parts of a mark are told apart no finer than this, so that rounding moves no mark. */
const roundingShare = 1e-9;
/** A mark counts in every cell where at least this part of it lies. */
const countsFrom = 0.2 - roundingShare;
const mostTurns = 4;
/** The distal end is the last tenth of the length, and no more than this. */
const mostDistalEndMm = 20;

/**
 * Puts marks into cells. A mark is an ellipse on the unrolled limb, its width along the circumference, and counts in
 * every cell where 20 % of its area or more lies; where no cell has 20 % of it, in every cell that it touches, for
 * none is lost. A cell's grade is the highest in it.
 *
 * The distal end is the last 10 % of the length, at most 20 mm, all round; the distal third is what lies between it
 * and one third of the length. What reaches beyond either end of the limb belongs to the cell at that end. Angles run
 * from 0 anterior over 90 lateral, on either side; each aspect is the quarter turn about its middle.
 *
 * @param limbLengthMm length of the residual limb
 * @returns thirteen cells: proximal, middle, distal of each aspect, then the distal end
 * @throws FitInputError where a length is not positive or an angle no number
 * @source mark-grade
 *
 * @example
 * mapMarks([{ id: "m", distanceFromEndMm: 85, angleDeg: 45, widthMm: 18, heightMm: 14, strength: "clear", blanches: "yes", firm: false, warm: false, painful: false, broken: false, fadedAtMin: 8 }], 170).filter(({ grade }) => grade > 0).map(({ name }) => name)
 * // => ["anterior middle", "lateral middle"]
 */
export function mapMarks(marks: readonly SkinMark[], limbLengthMm: number, options: MapOptions = {}): MarkCell[] {
  if (!(limbLengthMm > 0 && Number.isFinite(limbLengthMm)))
    throw new FitInputError("limbLengthMm", "expected a length above 0 mm");
  const cells = emptyCells();
  marks.forEach((mark, index) => {
    checkShape(mark, index);
    const grade = gradeMark(mark, options.lookedAtMin);
    if (grade === 0) return;
    const shares = sharesOf(mark, limbLengthMm, circumferenceAt(mark, options));
    const counts = shares.some((share) => share >= countsFrom) ? countsFrom : roundingShare;
    cells.forEach((cell, place) => {
      if ((shares[place] ?? 0) < counts) return;
      if (grade > cell.grade) cell.grade = grade;
      cell.markIds.push(mark.id);
    });
  });
  return cells;
}

/** The cells of the wall, in their order. */
const wall = aspects.flatMap((aspect, quarter) =>
  thirds.map((third) => ({ name: `${aspect} ${third}`, aspect, third, middleDeg: 90 * quarter })),
);

function emptyCells(): MarkCell[] {
  const cells = wall.map(({ name, aspect, third }): MarkCell => ({ name, aspect, third, grade: 0, markIds: [] }));
  cells.push({ name: "distal end", grade: 0, markIds: [] });
  return cells;
}

function checkShape(mark: SkinMark, index: number): void {
  for (const size of ["widthMm", "heightMm"] as const)
    if (!(mark[size] > 0 && Number.isFinite(mark[size])))
      throw new FitInputError(`marks[${index}].${size}`, "expected a length above 0 mm");
  for (const place of ["distanceFromEndMm", "angleDeg"] as const)
    if (!Number.isFinite(mark[place])) throw new FitInputError(`marks[${index}].${place}`, "expected a number");
}

function circumferenceAt({ distanceFromEndMm }: SkinMark, { circumferenceMm = usualCircumferenceMm }: MapOptions): number {
  const found = typeof circumferenceMm === "number" ? circumferenceMm : circumferenceMm(distanceFromEndMm);
  if (!(found > 0 && Number.isFinite(found))) throw new FitInputError("circumferenceMm", "expected a length above 0 mm");
  return found;
}

/** A mark as a disc of radius 1. */
interface Disc {
  distanceMm: number;
  angleDeg: number;
  halfHeightMm: number;
  halfWidthMm: number;
  /** Length of a whole turn. */
  roundMm: number;
}

function discOf({ distanceFromEndMm, angleDeg: anyDeg, heightMm, widthMm }: SkinMark, circumferenceMm: number): Disc {
  const angleDeg = anyDeg % 360;
  // What is several times as wide as the limb is round lies all round it, however many times.
  const roundMm = Math.max(circumferenceMm, widthMm / mostTurns);
  return { distanceMm: distanceFromEndMm, angleDeg, halfHeightMm: heightMm / 2, halfWidthMm: widthMm / 2, roundMm };
}

const along = ({ distanceMm, halfHeightMm }: Disc, mm: number): number => (mm - distanceMm) / halfHeightMm;
const around = ({ angleDeg, roundMm, halfWidthMm }: Disc, deg: number): number =>
  (((deg - angleDeg) / 360) * roundMm) / halfWidthMm;

/** Most of the cells lie wholly beside a mark. */
const reachesInto = (from: number, to: number): boolean => from < 1 && to > -1;

type Band = readonly [fromMm: number, toMm: number];

/** What part of a mark lies in each cell, in the order of the cells. The parts add up to 1. */
function sharesOf(mark: SkinMark, limbLengthMm: number, circumferenceMm: number): number[] {
  const disc = discOf(mark, circumferenceMm);
  const endMm = Math.min(limbLengthMm / 10, mostDistalEndMm);
  const bands: Record<Third, Band> = {
    proximal: [(2 * limbLengthMm) / 3, Number.POSITIVE_INFINITY],
    middle: [limbLengthMm / 3, (2 * limbLengthMm) / 3],
    distal: [endMm, limbLengthMm / 3],
  };
  const shares = wall.map(({ middleDeg, third }) => shareInQuarter(disc, middleDeg, bands[third]));
  const [bottom, top] = [Number.NEGATIVE_INFINITY, along(disc, endMm)];
  shares.push(reachesInto(bottom, top) ? discInRectangle({ left: -1, right: 1, bottom, top }) : 0);
  return shares;
}

function shareInQuarter(disc: Disc, middleDeg: number, [fromMm, toMm]: Band): number {
  const bottom = along(disc, fromMm);
  const top = along(disc, toMm);
  let share = 0;
  if (!reachesInto(bottom, top)) return share;
  // A mark across the seam, or wider than the limb is round, lies in the same aspect on other turns too.
  const halfWidthDeg = (360 * disc.halfWidthMm) / disc.roundMm;
  const firstTurn = Math.ceil((disc.angleDeg - halfWidthDeg - middleDeg - 45) / 360);
  const lastTurn = Math.floor((disc.angleDeg + halfWidthDeg - middleDeg + 45) / 360);
  for (let turn = firstTurn; turn <= lastTurn; turn++) {
    const left = around(disc, middleDeg + 360 * turn - 45);
    const right = around(disc, middleDeg + 360 * turn + 45);
    share += discInRectangle({ left, right, bottom, top });
  }
  return share;
}

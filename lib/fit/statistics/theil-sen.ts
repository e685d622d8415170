/** A straight line through points that a few outliers do not pull away. */
import { median } from "simple-statistics";
import { FitInputError } from "../errors";

export interface Point {
  x: number;
  y: number;
}

export interface Line {
  slope: number;
  intercept: number;
}

/** Beyond this many points the slopes of all pairs cost too much time and memory: about two million of them. */
const mostForAllPairs = 2000;

/**
 * Theil–Sen line: the slope is the median of the slopes of all pairs of points with different x,
 * the intercept median(y) − slope · median(x).
 *
 * With more than 2,000 points the slopes are those of points half the series apart, in the order of x
 * (Theil's incomplete method), so that the time stays in proportion.
 *
 * @param points two or more with different x, in any order and any units
 * @returns slope in units of y per unit of x, intercept in units of y
 * @throws FitInputError where fewer than two points have different x, or a number or slope is not finite
 * @source theil-sen
 *
 * @example
 * theilSen([{ x: 5, y: 1 }, { x: 10, y: 2 }, { x: 15, y: 2 }, { x: 20, y: 4 }])
 * // => { slope: 0.2, intercept: -0.5 }
 */
export function theilSen(points: readonly Point[]): Line {
  points.forEach(({ x, y }, index) => {
    if (!Number.isFinite(x)) throw new FitInputError(`points[${index}].x`, "expected a finite number");
    if (!Number.isFinite(y)) throw new FitInputError(`points[${index}].y`, "expected a finite number");
  });
  const slopes = points.length > mostForAllPairs ? slopesHalfApart(points) : slopesOfAllPairs(points);
  if (slopes.length === 0) throw new FitInputError("points", "expected two or more points with different x");
  const slope = middle(slopes);
  if (!Number.isFinite(slope)) throw new FitInputError("points", "expected numbers whose slopes are finite");
  return { slope, intercept: median(points.map(({ y }) => y)) - slope * median(points.map(({ x }) => x)) };
}

function slopesOfAllPairs(points: readonly Point[]): Float64Array {
  const slopes = new Float64Array((points.length * (points.length - 1)) / 2);
  let count = 0;
  points.forEach((first, index) => {
    for (const second of points.slice(index + 1)) {
      if (second.x !== first.x) slopes[count++] = (second.y - first.y) / (second.x - first.x);
    }
  });
  return slopes.subarray(0, count);
}

function slopesHalfApart(points: readonly Point[]): Float64Array {
  const ordered = points.toSorted((a, b) => a.x - b.x || a.y - b.y);
  const half = Math.floor(ordered.length / 2);
  return Float64Array.from(
    ordered.slice(0, half).flatMap((first, index) => {
      const second = ordered[ordered.length - half + index];
      return second === undefined || second.x === first.x ? [] : [(second.y - first.y) / (second.x - first.x)];
    }),
  );
}

/** The median of numbers that may be put in order in place: a typed array sorts without a comparison function. */
function middle(numbers: Float64Array): number {
  numbers.sort();
  const upper = numbers[Math.floor(numbers.length / 2)] ?? 0;
  const lower = numbers[Math.ceil(numbers.length / 2) - 1] ?? 0;
  return lower + (upper - lower) / 2;
}

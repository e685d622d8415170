/** Does a series rise or fall more than chance would make it? Only the order of the values counts. */
import { errorFunction } from "simple-statistics";
import { FitInputError } from "../errors";

export interface Trend {
  /** Kendall's S: pairs that rise minus pairs that fall, in the order given. */
  s: number;
  /** One-sided: the chance of an S this high or higher where there is no trend. */
  pUp: number;
  /** One-sided: the chance of an S this low or lower where there is no trend. */
  pDown: number;
}

/** With ties, the exact distribution is used up to this many values. */
const mostTiedForExact = 8;
/** Without ties it is used up to this many: beyond, it costs time and differs from the approximation by less than 0.00002. */
const mostForExact = 300;

/**
 * Mann–Kendall test of a series in the order of time.
 *
 * Exact over the permutations of the values where none are tied or there are at most 8, else (and beyond 300 values)
 * the normal approximation with the corrections for ties and for continuity. Both chances include the S that was
 * found, so they add up to more than 1. A series that cannot have a trend (all values the same, one value, none)
 * has S = 0 and both chances 1.
 *
 * @param values in the order of time
 * @throws FitInputError where a value is not finite
 * @source mann-kendall
 *
 * @example
 * mannKendall([0, 1, 2, 3])
 * // => { s: 6, pUp: 0.041667, pDown: 1 }
 */
export function mannKendall(values: readonly number[]): Trend {
  values.forEach((value, index) => {
    if (!Number.isFinite(value)) throw new FitInputError(`values[${index}]`, "expected a finite number");
  });
  const ties = tieSizes(values);
  const tied = ties.some((size) => size > 1);
  const untiedPairs = pairsOf(values.length) - ties.reduce((sum, size) => sum + pairsOf(size), 0);
  if (untiedPairs === 0) return { s: 0, pUp: 1, pDown: 1 };
  const s = untiedPairs - 2 * fallingPairs(values);
  const exact = tied ? values.length <= mostTiedForExact : values.length <= mostForExact;
  return { s, ...(exact ? exactChances(s, untiedPairs, ties) : approximateChances(s, values.length, ties)) };
}

const pairsOf = (count: number): number => (count < 2 ? 0 : (count * (count - 1)) / 2);

function tieSizes(values: readonly number[]): number[] {
  const sizes = new Map<number, number>();
  for (const value of values) sizes.set(value, (sizes.get(value) ?? 0) + 1);
  return [...sizes.values()];
}

/** Pairs of which the later value is lower. A tree of counts by rank (Fenwick) keeps a long series quick. */
function fallingPairs(values: readonly number[]): number {
  const rankOf = new Map([...new Set(values)].sort((a, b) => a - b).map((value, index) => [value, index + 1]));
  const counts = new Int32Array(rankOf.size + 1);
  let falling = 0;
  values.forEach((value, earlier) => {
    const rank = rankOf.get(value) ?? 0;
    let notAbove = 0;
    for (let node = rank; node > 0; node -= node & -node) notAbove += counts[node] ?? 0;
    for (let node = rank; node < counts.length; node += node & -node) counts[node] = (counts[node] ?? 0) + 1;
    falling += earlier - notAbove;
  });
  return falling;
}

/**
 * The number of falling pairs in a random order of n values has the generating function [n]! / Π [tᵢ]!, where
 * [m]! = Π (1 + q + … + q^(k−1)) for k = 1…m and tᵢ are the sizes of the ties (MacMahon, from memory). S is the number of untied
 * pairs less twice the falling ones.
 */
function exactChances(s: number, untiedPairs: number, ties: readonly number[]): Omit<Trend, "s"> {
  const count = ties.reduce((sum, size) => sum + size, 0);
  let chances = Float64Array.of(1);
  for (let k = 2; k <= count; k++) chances = averageOverWindow(chances, k);
  for (const size of ties) for (let k = 2; k <= size; k++) chances = undoAverage(chances, k);
  const falling = (untiedPairs - s) / 2;
  return {
    pUp: Math.min(1, sumOf(chances, 0, falling + 1)),
    pDown: Math.min(1, sumOf(chances, falling, chances.length)),
  };
}

function sumOf(chances: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let falling = from; falling < to; falling++) sum += at(chances, falling);
  return sum;
}

/** One value more: as the k-th it can make 0…k−1 falling pairs, each as likely. */
function averageOverWindow(chances: Float64Array<ArrayBuffer>, k: number): Float64Array<ArrayBuffer> {
  const wider = new Float64Array(chances.length + k - 1);
  let window = 0;
  for (let falling = 0; falling < wider.length; falling++) {
    window += at(chances, falling) - at(chances, falling - k);
    wider[falling] = Math.max(0, window) / k;
  }
  return wider;
}

/** Takes back `averageOverWindow`: the orders of equal values among themselves make no difference. */
function undoAverage(chances: Float64Array<ArrayBuffer>, k: number): Float64Array<ArrayBuffer> {
  const narrower = new Float64Array(chances.length - k + 1);
  for (let falling = 0; falling < narrower.length; falling++) {
    const step = (at(chances, falling) - at(chances, falling - 1)) * k;
    narrower[falling] = Math.max(0, step + at(narrower, falling - k));
  }
  return narrower;
}

/** Nothing lies before the first or beyond the last. Asked first: looking there takes a hundred times as long. */
const at = (chances: Float64Array, place: number): number => (place >= 0 && place < chances.length ? (chances[place] ?? 0) : 0);

function approximateChances(s: number, count: number, ties: readonly number[]): Omit<Trend, "s"> {
  const term = (size: number) => size * (size - 1) * (2 * size + 5);
  const deviation = Math.sqrt((term(count) - ties.reduce((sum, size) => sum + term(size), 0)) / 18);
  if (deviation === 0) return { pUp: 1, pDown: 1 };
  return { pUp: upperTail((s - 1) / deviation), pDown: upperTail((-s - 1) / deviation) };
}

/** simple-statistics' error function is good to 0.00000012, which no decision here can feel. */
const upperTail = (z: number): number => Math.max(0, (1 - errorFunction(z / Math.SQRT2)) / 2);

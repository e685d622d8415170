/** How the errors of several inputs pass into a result that is computed from them, by moving one input at a time. */
import { FitInputError } from "./errors";

export interface UncertainInput {
  value: number;
  /** 0 where the input is exact. */
  standardError: number;
}

export interface PropagatedResult {
  value: number;
  /** Standard deviations downwards and upwards; they differ where the function bends. */
  down: number;
  up: number;
  low90: number;
  high90: number;
}

/** 90 % of a normal distribution lies within this many standard deviations. */
export const normal90 = 1.645;

/**
 * Kragten's numerical propagation: each input is moved by its standard error, both ways, one at a time; the changes
 * of the result downwards and upwards are each put together by root sum of squares. The 90 % interval is 1.645 of
 * them to either side. Inputs are taken as independent.
 *
 * @param inputs values with standard errors, in the order in which `f` takes them
 * @param f must be defined a standard error around each input; the values that it is given are its own only for that call
 * @throws FitInputError where a standard error is negative, or a value or result is not finite
 * @source kragten-1994
 *
 * @example
 * kragten([{ value: 10, standardError: 3 }, { value: 5, standardError: 4 }], ([a = 0, b = 0]) => a + b)
 * // => { value: 15, down: 5, up: 5, low90: 6.775, high90: 23.225 }
 */
export function kragten(inputs: readonly UncertainInput[], f: (values: readonly number[]) => number): PropagatedResult {
  inputs.forEach(({ value, standardError }, index) => {
    if (!Number.isFinite(value)) throw new FitInputError(`inputs[${index}].value`, "expected a finite number");
    if (!(standardError >= 0 && Number.isFinite(standardError)))
      throw new FitInputError(`inputs[${index}].standardError`, "expected a number of 0 or more");
  });
  const values = inputs.map(({ value }) => value);
  const value = finite(f(values));
  const downs: number[] = [];
  const ups: number[] = [];
  inputs.forEach(({ value: middle, standardError }, index) => {
    // What is exact is not moved, and changes nothing.
    if (standardError === 0) return;
    values[index] = middle + standardError;
    const above = finite(f(values)) - value;
    values[index] = middle - standardError;
    const below = finite(f(values)) - value;
    values[index] = middle;
    downs.push(Math.min(0, above, below));
    ups.push(Math.max(0, above, below));
  });
  const down = rootOfSquares(downs);
  const up = rootOfSquares(ups);
  return { value, down, up, low90: value - normal90 * down, high90: value + normal90 * up };
}

const rootOfSquares = (values: readonly number[]): number => Math.sqrt(values.reduce((sum, value) => sum + value * value, 0));

function finite(result: number): number {
  if (!Number.isFinite(result)) throw new FitInputError("f", "expected a finite result a standard error around each input");
  return result;
}

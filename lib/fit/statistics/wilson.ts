/** How sure a share is that was counted. */
import { FitInputError } from "../errors";

export interface ShareInterval {
  low: number;
  high: number;
}

const z95 = 1.959963984540054;

/**
 * Wilson's score interval of a share, 95 %, without correction for continuity:
 * (p + z²/2n ± z·√(p(1 − p)/n + z²/4n²)) / (1 + z²/n). Of nothing counted nothing is known: 0 to 1.
 *
 * @param x of which it was so, a whole number from 0 to n
 * @param n all of them, a whole number
 * @throws FitInputError where they are not
 * @source wilson
 *
 * @example
 * wilson(81, 263)
 * // => { low: 0.2553, high: 0.3662 }
 */
export function wilson(x: number, n: number): ShareInterval {
  if (!(Number.isInteger(n) && n >= 0)) throw new FitInputError("n", "expected a whole number of 0 or more");
  if (!(Number.isInteger(x) && x >= 0 && x <= n)) throw new FitInputError("x", `expected a whole number from 0 to ${n}`);
  if (n === 0) return { low: 0, high: 1 };
  const share = x / n;
  const z2 = z95 ** 2;
  const middle = share + z2 / (2 * n);
  const half = z95 * Math.sqrt((share * (1 - share)) / n + z2 / (4 * n * n));
  const whole = 1 + z2 / n;
  // At both ends the bound is exact, and the sum of fractions is not.
  return { low: x === 0 ? 0 : (middle - half) / whole, high: x === n ? 1 : (middle + half) / whole };
}

/** The chance that a standard normal variable lies above z. */

/** Beyond this the sum of the series loses digits, and the fraction has them. */
const farOut = 2.5;

/**
 * Upper tail of the normal distribution, for z of 0 or more, to about 14 digits: the Taylor series near 0 and Laplace's
 * continued fraction further out. simple-statistics' error function is good to 7 digits of 1, which leaves small
 * chances none.
 *
 * @source normal-tail
 *
 * @example
 * normalUpperTail(1.959963984540054)
 * // => 0.025
 */
export function normalUpperTail(z: number): number {
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  if (z < farOut) {
    let [term, sum] = [z, z];
    for (let k = 1; Math.abs(term) > 1e-18 * Math.abs(sum) && k < 200; k++) {
      term *= (z * z) / (2 * k + 1);
      sum += term;
    }
    return 0.5 - density * sum;
  }
  let fraction = 0;
  for (let k = 200; k >= 1; k--) fraction = k / (z + fraction);
  return density / (z + fraction);
}

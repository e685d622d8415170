/** As much of jStat as the tests hold the distributions against; the package has no types of its own. */
declare module "jstat" {
  export const jStat: { chisquare: { cdf(x: number, degreesOfFreedom: number): number } };
}

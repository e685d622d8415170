import { describe, expect, it } from "vitest";
import { mannKendall } from "@/lib/fit";

/**
 * Chances of an S this high or higher where there is no trend, n = 4…10: the exact table of Kendall (Rank correlation
 * methods), printed by R 4.2.2 from the numbers of orders with so many inversions. R's cor.test(method = "kendall",
 * exact = TRUE, alternative = "greater") has the same chance for one inversion, the second highest S of each row.
 */
const table: Readonly<Record<number, string>> = {
  4: "0=0.625 2=0.375 4=0.166667 6=0.0416667",
  5: "0=0.591667 2=0.408333 4=0.241667 6=0.116667 8=0.0416667 10=0.00833333",
  6: "1=0.5 3=0.359722 5=0.234722 7=0.136111 9=0.0680556 11=0.0277778 13=0.00833333 15=0.00138889",
  7: "1=0.5 3=0.38631 5=0.280952 7=0.190675 9=0.119444 11=0.0680556 13=0.0345238 15=0.0150794 17=0.00535714 19=0.00138889 21=0.000198413",
  8: "0=0.547569 2=0.452431 4=0.359772 6=0.274206 8=0.19938 10=0.13755 12=0.0894345 14=0.0543403 16=0.030506 18=0.0155754 20=0.00706845 22=0.00275298 24=0.000868056 26=0.000198413 28=2.48016e-05",
  9: "0=0.540272 2=0.459728 4=0.380707 6=0.306101 8=0.238354 10=0.179244 12=0.129759 14=0.0900904 16=0.0597195 18=0.0375882 20=0.0223076 22=0.0123705 24=0.00633267 26=0.00294312 28=0.00121252 30=0.000427138 32=0.000121252 34=2.48016e-05 36=2.75573e-06",
  10: "1=0.5 3=0.4309 5=0.363745 7=0.300327 9=0.242156 11=0.19036 13=0.145624 15=0.108187 17=0.0778709 19=0.0541567 21=0.0362751 23=0.0233113 25=0.0143047 27=0.00833306 29=0.00457424 31=0.00234347 33=0.00110643 35=0.000473159 37=0.000178847 39=5.75948e-05 41=1.4881e-05 43=2.75573e-06 45=2.75573e-07",
};

/** A series of 1…n whose S is this: values are moved forwards over as many smaller ones as must fall. */
function seriesWith(count: number, s: number): number[] {
  let falling = ((count * (count - 1)) / 2 - s) / 2;
  const series: number[] = [];
  for (let value = 1; value <= count; value++) {
    const over = Math.min(falling, series.length);
    series.splice(series.length - over, 0, value);
    falling -= over;
  }
  return series;
}

describe.each(Object.entries(table))("Kendall's exact table, n = %s", (count, row) => {
  it.each(row.split(" ").map((cell) => cell.split("=").map(Number)))("S of %s or more has the chance %s", (s = 0, chance = 0) => {
    const rising = mannKendall(seriesWith(Number(count), s));
    expect(rising.s).toBe(s);
    expect(rising.pUp / chance).toBeCloseTo(1, 5);
    expect(mannKendall(seriesWith(Number(count), s).map((value) => -value)).pDown).toBeCloseTo(rising.pUp, 12);
  });
});

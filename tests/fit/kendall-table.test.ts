import { describe, expect, it } from "vitest";
import { mannKendall } from "@/lib/fit";
import { seriesWith } from "./kendall-series";

/**
 * Chances of an S this high or higher where there is no trend. Three sources, each on its own, and a count over all orders.
 *
 * Printed: `data-raw/prob_mk_n.csv` of the open mannkendall code for R (with Collaud Coen M et al., Atmos Meas Tech 2020,
 * doi 10.5194/amt-2020-178). It names no source; that it is table A18 of Gilbert (Statistical methods for environmental
 * pollution monitoring, 1987), after Kendall's own, is from memory. Three decimals, or two digits that count. It has 78 for
 * .078 at n = 10 and S = 17, put right here, and .00019 at n = 8 and S = 26, where 8/8! is .000198.
 */
const printed: Readonly<Record<number, string>> = {
  4: "0=.625 2=.375 4=.167 6=.042",
  5: "0=.592 2=.408 4=.242 6=.117 8=.042 10=.0083",
  6: "1=.500 3=.360 5=.235 7=.136 9=.068 11=.028 13=.0083 15=.0014",
  7: "1=.500 3=.386 5=.281 7=.191 9=.119 11=.068 13=.035 15=.015 17=.0054 19=.0014 21=.00020",
  8: "0=.548 2=.452 4=.360 6=.274 8=.199 10=.138 12=.089 14=.054 16=.031 18=.016 20=.0071 22=.0028 24=.00087 26=.00019 28=.000025",
  9: "0=.540 2=.460 4=.381 6=.306 8=.238 10=.179 12=.130 14=.090 16=.060 18=.038 20=.022 22=.012 24=.0063 26=.0029 28=.0012 30=.00043 32=.00012 34=.000025 36=.0000028",
  10: "1=.500 3=.431 5=.364 7=.300 9=.242 11=.190 13=.146 15=.108 17=.078 19=.054 21=.036 23=.023 25=.014 27=.0083 29=.0046 31=.0023 33=.0011 35=.00047 37=.00018 39=.000058 41=.000015 43=.0000028 45=.00000028",
};

/** R 4.2.2: `cor.test(1:n, series, method = "kendall", exact = TRUE, alternative = "greater")$p.value`. */
const byR: Readonly<Record<number, string>> = {
  4: "0=0.625 2=0.375 4=0.166666666666667 6=0.0416666666666666",
  5: "0=0.591666666666667 2=0.408333333333333 4=0.241666666666667 6=0.116666666666667 8=0.0416666666666666 10=0.0083333333333333",
  6: "1=0.5 3=0.359722222222222 5=0.234722222222222 7=0.136111111111111 9=0.0680555555555555 11=0.0277777777777778 13=0.0083333333333333 15=0.00138888888888888",
  7: "1=0.5 3=0.386309523809524 5=0.280952380952381 7=0.190674603174603 9=0.119444444444444 11=0.0680555555555555 13=0.0345238095238095 15=0.015079365079365 17=0.00535714285714284 19=0.00138888888888888 21=0.000198412698412698",
  8: "0=0.547569444444444 2=0.452430555555556 4=0.359771825396825 6=0.274206349206349 8=0.19937996031746 10=0.137549603174603 12=0.0894345238095238 14=0.0543402777777777 16=0.0305059523809523 18=0.0155753968253968 20=0.00706845238095233 22=0.00275297619047621 24=0.00086805555555558 26=0.000198412698412698 28=2.48015873015595e-05",
  9: "0=0.540272266313933 2=0.459727733686067 4=0.380707120811287 6=0.30610119047619 8=0.238354276895944 10=0.179243827160494 12=0.129759149029982 14=0.0900903880070547 16=0.0597194664902998 18=0.0375881834215167 20=0.0223076499118166 22=0.0123704805996473 24=0.00633267195767195 26=0.00294312169312172 28=0.00121252204585542 30=0.00042713844797182 32=0.000121252204585587 34=2.48015873015595e-05 36=2.7557319224325e-06",
  10: "1=0.5 3=0.430900297619048 5=0.363744764109347 7=0.300326829805996 9=0.242156360229277 11=0.190359898589065 13=0.145624173280423 15=0.108186728395062 17=0.0778709215167549 19=0.054156746031746 21=0.0362750771604938 23=0.0233112874779542 25=0.0143047288359789 27=0.00833305776014104 29=0.0045742394179894 31=0.00234347442680771 33=0.00110642636684299 35=0.000473159171075821 37=0.000178847001763627 39=5.7594797178151e-05 41=1.48809523810023e-05 43=2.7557319224325e-06 45=2.75573192265455e-07",
};

/** OEIS A008302 (Mahonian numbers): of the orders of 1…n, how many have 0, 1, 2 … falling pairs. As far as printed there. */
const mahonian: Readonly<Record<number, string>> = {
  4: "1 3 5 6 5 3 1",
  5: "1 4 9 15 20 22 20 15 9 4 1",
  6: "1 5 14 29 49 71 90 101 101 90 71 49 29 14 5 1",
  7: "1 6 20 49 98 169 259 359 455 531 573 573 531 455 359 259 169 98 49 20 6 1",
  8: "1 7 27 76 174 343 602 961 1415 1940 2493 3017 3450 3736 3836 3736 3450 3017 2493 1940 1415 961 602 343 174 76 27 7 1",
  9: "1 8 35 111 285 628 1230 2191 3606 5545 8031 11021 14395 17957 21450 24584 27073 28675 29228 28675 27073 24584 21450 17957 14395 11021 8031 5545 3606 2191 1230 628 285 111 35 8 1",
};

const cellsOf = (row: string): { s: number; chance: number; digits: string }[] =>
  row.split(" ").map((cell) => {
    const [s = "", digits = ""] = cell.split("=");
    return { s: Number(s), chance: Number(digits), digits };
  });

/** How many orders of 1…n have so many falling pairs: every order is gone through, and its pairs counted. */
function fallingPairsOfAllOrders(count: number): number[] {
  const found = Array.from({ length: pairsOf(count) + 1 }, () => 0);
  // The values not yet placed are the bits of a number; the smaller ones among them come later, and so fall.
  const placeNext = (unplaced: number, falling: number): void => {
    if (unplaced === 0) found[falling] = (found[falling] ?? 0) + 1;
    for (let [rest, smaller] = [unplaced, 0]; rest > 0; rest &= rest - 1, smaller += 1)
      placeNext(unplaced & ~(rest & -rest), falling + smaller);
  };
  placeNext(2 ** count - 1, 0);
  return found;
}
const pairsOf = (count: number): number => (count * (count - 1)) / 2;
const sumOf = (numbers: readonly number[]): number => numbers.reduce((sum, one) => sum + one, 0);

describe.each([4, 5, 6, 7, 8, 9, 10])("Kendall's exact table, n = %i", (count) => {
  it("is the printed one, to the digits that are printed", () => {
    const cells = cellsOf(printed[count] ?? "");
    expect(cells).toHaveLength(Math.floor(pairsOf(count) / 2) + 1);
    for (const { s, chance, digits } of cells) {
      const { pUp } = mannKendall(seriesWith({ count, s }));
      const lastDigit = 10 ** -(digits.length - 1);
      const cutOff = count === 8 && s === 26;
      expect(Math.abs(pUp - chance), `S = ${s}`).toBeLessThanOrEqual(cutOff ? lastDigit : lastDigit / 2 + 1e-12);
    }
  });

  it("is that of R's cor.test", () => {
    const cells = cellsOf(byR[count] ?? "");
    expect(cells).toHaveLength(Math.floor(pairsOf(count) / 2) + 1);
    for (const { s, chance } of cells) {
      const trend = mannKendall(seriesWith({ count, s }));
      expect(trend.s).toBe(s);
      expect(trend.pUp, `S = ${s}`).toBeCloseTo(chance, 13);
      expect(trend.pUp / chance, `S = ${s}`).toBeCloseTo(1, 8);
    }
  });

  it("is what counting over all orders gives, for every S, rising and falling", () => {
    const orders = fallingPairsOfAllOrders(count);
    const all = sumOf(orders);
    orders.forEach((_, falling) => {
      const s = pairsOf(count) - 2 * falling;
      const trend = mannKendall(seriesWith({ count, s }));
      expect(trend.s).toBe(s);
      expect(trend.pUp, `S = ${s}`).toBeCloseTo(sumOf(orders.slice(0, falling + 1)) / all, 13);
      expect(trend.pDown, `S = ${s}`).toBeCloseTo(sumOf(orders.slice(falling)) / all, 13);
    });
  });
});

describe("the count over all orders", () => {
  it.each(Object.entries(mahonian))("is that of OEIS A008302 for n = %s", (count, row) => {
    expect(fallingPairsOfAllOrders(Number(count))).toEqual(row.split(" ").map(Number));
  });

  it("goes through each of the 10! orders of ten values", () => {
    expect(sumOf(fallingPairsOfAllOrders(10))).toBe(3_628_800);
  });
});

describe("the chances that a short wear trial can reach (in all the tables above)", () => {
  it.each([
    { count: 4, s: 6, pUp: 1 / 24 },
    { count: 5, s: 8, pUp: 5 / 120 },
    { count: 5, s: 10, pUp: 1 / 120 },
    { count: 6, s: 11, pUp: 0.02778 },
    { count: 7, s: 15, pUp: 0.01508 },
  ])("gives p = $pUp for n = $count and S = $s", ({ count, s, pUp }) => {
    const trend = mannKendall(seriesWith({ count, s }));
    expect(trend.s).toBe(s);
    expect(trend.pUp).toBeCloseTo(pUp, 5);
  });
});

import { describe, expect, test } from "vitest";
import { adjustmentWords } from "@/app/_parts/adjustment-words";
import { dayAndTimeAt, dayAt, daysBetween, dayWords, dueWords, longDay, shortDay, timeAt } from "@/app/_parts/dates";
import { formatAmount, formatChange, formatNumber, formatQuantity } from "@/app/_parts/numbers";

/** Spaces that do not break are compared as plain ones. */
const plain = (text: string) => text.replaceAll("\u00a0", " ");

describe("numbers for the eye", () => {
  test("a value carries no more digits than its error", () => {
    expect(plain(formatQuantity({ value: 2.7134, standardError: 0.42, unit: "mm" }))).toBe("2.7 ± 0.4 mm");
    expect(plain(formatQuantity({ value: 2.2, standardError: 4e-16, unit: "mm" }))).toBe("2.2 mm");
    expect(plain(formatQuantity({ value: 545.477, standardError: 3.6888, unit: "mL" }))).toBe("545 ± 4 mL");
    expect(plain(formatQuantity({ value: 0.04416, standardError: 0.0012, unit: "mm/N" }))).toBe("0.044 ± 0.001 mm/N");
  });

  test("degrees follow the number, every other unit stands a space away that does not break", () => {
    expect(formatQuantity({ value: 7, standardError: 4.24, unit: "deg" })).toBe("7\u00a0±\u00a04°");
    expect(formatQuantity({ value: 10, unit: "mm" })).toBe("10.0\u00a0mm");
  });

  test("a minute that is not whole keeps its half", () => {
    expect(plain(formatQuantity({ value: 7.5, unit: "min" }))).toBe("7.5 min");
    expect(plain(formatQuantity({ value: 9, unit: "min" }))).toBe("9 min");
  });

  test("minus is a minus sign, and what rounds to nothing has none", () => {
    expect(formatNumber(-6.08, 1)).toBe("−6.1");
    expect(formatNumber(-0.04, 1)).toBe("0.0");
  });

  test("a change says its direction", () => {
    expect(plain(formatChange({ value: 3.4, unit: "mm" }))).toBe("+3.4 mm");
    expect(plain(formatChange({ value: -1.916, unit: "percent" }))).toBe("−1.9 %");
  });

  test("an amount that someone chose is shown as it was given", () => {
    expect(plain(formatAmount(-2, "percent"))).toBe("−2 %");
    expect(plain(formatAmount(2.5, "mm"))).toBe("2.5 mm");
  });

  test("an adjustment is said as at the bench", () => {
    expect(plain(adjustmentWords({ kind: "relief", amount: 2, unit: "mm", aspect: "lateral", third: "distal" }))).toBe(
      "relief 2 mm, lateral, distal third",
    );
    expect(adjustmentWords({ kind: "closure", amount: null, aspect: null })).toBe("closure");
  });
});

describe("days and times", () => {
  test("days are written in British order", () => {
    expect(plain(shortDay("2026-09-05"))).toBe("5 Sep");
    expect(plain(longDay("2026-10-05"))).toBe("5 October 2026");
    expect(plain(dayWords("2026-11-25"))).toBe("Wednesday 25 November");
  });

  test("what is due says how late it is", () => {
    expect(dueWords("2026-10-05", "2026-10-05")).toBe("today");
    expect(dueWords("2026-10-03", "2026-10-05")).toBe("2 days late");
    expect(dueWords("2026-10-04", "2026-10-05")).toBe("1 day late");
    expect(dueWords("2026-10-08", "2026-10-05")).toBe("in 3 days");
  });

  test("days are counted over a change of the clocks", () => {
    // Clocks go back in Lisbon on 25 October 2026; days of the calendar do not care.
    expect(daysBetween("2026-10-24", "2026-10-26")).toBe(2);
  });

  test("an instant is shown in the clinic's zone, in summer and in winter", () => {
    expect(timeAt("2026-10-05T13:12:00Z", "Europe/Lisbon")).toBe("14:12");
    expect(timeAt("2026-12-05T13:12:00Z", "Europe/Lisbon")).toBe("13:12");
    expect(timeAt("2026-12-05T00:00:00Z", "Europe/Lisbon")).toBe("00:00");
    expect(dayAt("2026-10-05T23:30:00Z", "Europe/Lisbon")).toBe("2026-10-06");
    expect(plain(dayAndTimeAt("2026-10-05T13:12:00Z", "Europe/Lisbon"))).toBe("5 Oct 2026, 14:12");
  });
});

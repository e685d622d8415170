import { expect, test } from "vitest";
import { days, expectTheSameOn } from "./every-day";

test("the days hold 29 February, both changes of the clocks and the ends of thirteen months", () => {
  expect(days).toEqual(expect.arrayContaining(["2028-02-29", "2028-03-26", "2028-10-29", "2028-12-31"]));
});

expectTheSameOn(days.slice(0, 200));

import { expect, test } from "vitest";
import { noonOf } from "@/prisma/invented-clinic/calendar";
import { outcomesOnPaper } from "./tellings";

const atNoon = outcomesOnPaper(noonOf("2028-01-31"));

test("every episode that was not struck out is told", () => expect(atNoon.length).toBe(40));

test.each([
  "2028-01-31T23:55",
  "2028-02-01T00:05",
  "2028-02-05T23:55",
  "2028-02-06T00:05",
  "2028-03-26T00:55",
  "2028-03-26T02:05",
])("loaded at %s, every episode stands where it stands at noon", (at) => {
  expect(outcomesOnPaper(new Date(`${at}Z`))).toEqual(atNoon);
});

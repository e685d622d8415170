/** The invented clinic tells the same whatever day it is loaded on: no story sits on an edge that a weekend or the calendar moves. */
import { expect, test } from "vitest";
import { episodesOnPaper } from "@/prisma/invented-clinic";
import { calendarOf, noonOf } from "@/prisma/invented-clinic/calendar";
import { tellingOf } from "./tellings";

const dayMs = 86_400_000;

/** From before a change of the year to past the next: both changes of the clocks, every month's end and 29 February. */
const firstDay = "2027-12-20";
const days = Array.from({ length: 400 }, (_, index) => new Date(Date.parse(firstDay) + index * dayMs).toISOString().slice(0, 10));

const told = (today: Date) =>
  episodesOnPaper(calendarOf(today))
    .filter(({ struckOutAt }) => struckOutAt === null)
    .map((episode) => tellingOf(episode, today));

const first = told(noonOf(firstDay));

test("the days hold 29 February, both changes of the clocks and the ends of thirteen months", () => {
  expect(days).toEqual(expect.arrayContaining(["2028-02-29", "2028-03-26", "2028-10-29", "2028-12-31"]));
  expect(first.length).toBeGreaterThanOrEqual(40);
});

const months = [...new Set(days.map((day) => day.slice(0, 7)))];

// A test a month, so that a failure names the days.
test.each(months)("in %s every day tells what the first day told", (month) => {
  for (const day of days.filter((one) => one.startsWith(month))) expect(told(noonOf(day)), day).toEqual(first);
});

const outcomes = (today: Date) => told(today).map(({ outcome }) => outcome);

test.each(["2028-01-31T23:55", "2028-02-01T00:05", "2028-02-05T23:55", "2028-02-06T00:05", "2028-03-26T02:05"])(
  "at %s, whatever the hour of loading, every episode stands where it stood",
  (at) => expect(outcomes(new Date(`${at}Z`))).toEqual(first.map(({ outcome }) => outcome)),
);

import { expect, test } from "vitest";
import { wearingDays } from "@/app/releases/[release]/wearing/wearing-days";
import { wearSchedule } from "@/lib/fit";

const kept = (cautions: Parameters<typeof wearSchedule>[0]["cautions"]) =>
  wearSchedule({ start: "2027-02-26", cautions: cautions ?? [] }).steps.map(({ days, minutes, sessions }) => ({
    days: days ?? 1,
    minutes,
    sessions,
  }));
const said = (steps: ReturnType<typeof kept>) =>
  wearingDays({ startOn: "2027-02-26", steps }).map(({ when, howLong, times }) =>
    `${when}: ${howLong} × ${times}`.replaceAll("\u00a0", " "),
  );

// methods.md §8: 30 min × 3 on day 1, then 45, 60, 90, 120, 150, all day from day 7; across the end of a month.
test("a row a day, by the calendar", () => {
  expect(said(kept([]))).toEqual([
    "Friday 26 February: 30 minutes × 3",
    "Saturday 27 February: 45 minutes × 3",
    "Sunday 28 February: 60 minutes × 3",
    "Monday 1 March: 90 minutes × 3",
    "Tuesday 2 March: 120 minutes × 3",
    "Wednesday 3 March: 150 minutes × 3",
    "from Thursday 4 March: all day × 1",
  ]);
});

test("a gentle schedule has its thirteen days, a long one a row a step", () => {
  expect(said(kept(["fragile-skin"]))).toHaveLength(13);
  expect(
    said([
      { days: 10, minutes: 30, sessions: 2 },
      { days: 10, minutes: 60, sessions: 2 },
      { days: 1, minutes: null, sessions: 1 },
    ]),
  ).toEqual(["26 Feb to 7 Mar: 30 minutes × 2", "8 Mar to 17 Mar: 60 minutes × 2", "from Thursday 18 March: all day × 1"]);
});

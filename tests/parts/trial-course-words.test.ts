import { expect, test } from "vitest";
import { courseInWords } from "@/app/trials/[trial]/course-words";
import { replayWearTrial } from "@/lib/fit";

const minute = (minutes: number) => new Date(Date.UTC(2026, 9, 5, 10, minutes)).toISOString();

/** A trial with pain said every five minutes, and one value said before it began. */
function painOf(values: readonly number[], before?: number) {
  const checkIn = (id: string, at: string, pain: number) => ({
    ...{ id, at, pain, kind: "check-in" as const, comfort: 8, exertion: 2, feelings: [] },
  });
  const events = [
    { id: "begun", kind: "begun" as const, at: minute(0) },
    ...values.map((pain, index) => checkIn(`said ${index}`, minute(5 * (index + 1)), pain)),
    ...(before === undefined ? [] : [checkIn("before", minute(-5), before)]),
  ];
  const plan = { minutes: 60, intervalMin: 5, activities: [] };
  return replayWearTrial(plan, events, minute(5 * (values.length + 1))).series.pain;
}

test.each([
  ["nobody asked", [], "Pain was not said during the trial."],
  ["once", [2], "Pain was said once: 2."],
  ["the same throughout", [1, 1, 1, 1], "Pain stayed at 1."],
  ["to and fro", [1, 2, 1, 2, 1], "Pain stayed about the same, from 1 to 1."],
  ["two answers show no trend", [0, 2], "Pain rose from 0 to 2, by about 4.0 every 10 minutes worn; it may be chance."],
  // Five values that rise each time: one order of 5! = 120, so p = 1/120 = 0.008 (Kendall's exact distribution).
  ["five that rise", [0, 1, 2, 3, 4], "Pain rose from 0 to 4, by about 2.0 every 10 minutes worn (p 0.008)."],
  ["five that fall", [4, 3, 2, 1, 0], "Pain fell from 4 to 0, by about 2.0 every 10 minutes worn (p 0.008)."],
])("%s", (_name, values, words) => {
  expect(courseInWords("Pain", painOf(values), 0.05)).toBe(words);
});

test("worse words from outside the trial are not passed over", () => {
  expect(courseInWords("Pain", painOf([1, 1, 1], 6), 0.05)).toBe("Pain stayed at 1. Something worse was said outside the trial.");
});

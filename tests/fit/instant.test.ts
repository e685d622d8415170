import { expect, test } from "vitest";
import { FitInputError, instantMs } from "@/lib/fit";

// ISO 8601 calendar dates; leap years as in the Gregorian calendar.
test.each(["2026-02-30T10:00:00Z", "2026-02-29T10:00:00+02:00", "2026-04-31T10:00:00Z", "2026-10-00T10:00:00Z"])(
  "%s is no day",
  (at) => {
    expect(() => instantMs(at, "at")).toThrow(FitInputError);
  },
);

test.each([
  ["2028-02-29T23:30:00-01:00", "2028-03-01T00:30:00Z"],
  ["2026-12-31T23:59:59.5Z", "2026-12-31T23:59:59.500Z"],
  ["2026-10-31T00:10:00+14:00", "2026-10-30T10:10:00.000Z"],
])("%s is the same instant as %s", (one, other) => {
  expect(instantMs(one, "at")).toBe(instantMs(other, "at"));
});

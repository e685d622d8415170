/** 400 days in a row, each judged from the stories without a store, in two halves so that two cores share them. */
import { expect, test } from "vitest";
import { noonOf } from "@/prisma/invented-clinic/calendar";
import { tellingsOn } from "./tellings";

/** From before a change of the year to past the next: both changes of the clocks, every month's end and 29 February. */
const firstDay = "2027-12-20";
export const days: readonly string[] = Array.from({ length: 400 }, (_, index) =>
  new Date(Date.parse(firstDay) + index * 86_400_000).toISOString().slice(0, 10),
);

/** What a machine may be set to; the clinic's zone stays what it is. */
const machineZones = ["UTC", "America/Chicago", "Pacific/Auckland"] as const;

/** A test a month, so that a failure names the days, each on a machine in another zone. */
export function expectTheSameOn(half: readonly string[]): void {
  const first = tellingsOn(noonOf(firstDay));
  const months = [...new Set(half.map((day) => day.slice(0, 7)))].map((month, index) => ({
    month,
    zone: machineZones[index % machineZones.length] ?? "UTC",
  }));
  test.each(months)("in $month, on a machine in $zone, every day tells what the first day told", ({ month, zone }) => {
    const before = process.env.TZ;
    process.env.TZ = zone;
    try {
      expect(Intl.DateTimeFormat().resolvedOptions().timeZone).toBe(zone);
      for (const day of half.filter((one) => one.startsWith(month))) expect(tellingsOn(noonOf(day)), day).toEqual(first);
    } finally {
      if (before === undefined) delete process.env.TZ;
      else process.env.TZ = before;
    }
  });
}

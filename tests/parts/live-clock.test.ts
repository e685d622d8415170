import { expect, test } from "vitest";
import { TrialClock } from "@/app/live/_device/clock";

/** A device whose two clocks are moved by hand. */
function deviceAt(wallMs: number) {
  const hands = { wall: wallMs, steady: 0 };
  return {
    clocks: { wall: () => hands.wall, steady: () => hands.steady },
    pass: (ms: number) => {
      hands.wall += ms;
      hands.steady += ms;
    },
    setWall: (byMs: number) => {
      hands.wall += byMs;
    },
  };
}

const start = Date.parse("2026-10-05T10:00:00Z");
const minute = 60_000;

test("a clock that is set while the page is in sight changes nothing", () => {
  const device = deviceAt(start);
  const clock = new TrialClock(device.clocks);
  device.pass(5 * minute);
  for (const byMs of [120 * minute, -300 * minute]) {
    device.setWall(byMs);
    expect(clock.compare(false)).toBe(true);
    expect(clock.now()).toBe(start + 5 * minute);
  }
  // Set back while the page was out of sight: no time runs backwards.
  device.setWall(-10 * minute);
  clock.compare(true);
  expect(clock.now()).toBe(start + 5 * minute);
});

test("time that the device slept through has passed", () => {
  const device = deviceAt(start);
  const clock = new TrialClock(device.clocks);
  // The steady clock stands still in sleep.
  device.setWall(7 * minute);
  expect(clock.compare(true)).toBe(true);
  expect(clock.now()).toBe(start + 7 * minute);
  device.pass(1000);
  expect(clock.compare(false)).toBe(false);
});

test("the server puts the clock right, and what was stamped before is told on the scale of its stamp", () => {
  const device = deviceAt(start + 180 * minute);
  const clock = new TrialClock(device.clocks);
  const stamped = { at: clock.now(), correctedMs: clock.correctedMs };
  const asked = clock.steady();
  device.pass(400);
  clock.putRight(start + 200, asked);
  expect(clock.now()).toBe(start + 400);
  device.pass(minute);
  // So much after the stamp, whichever clock says so.
  expect(clock.nowAsOf(stamped.correctedMs) - stamped.at).toBe(minute + 400);
  // A small difference is the way of the message, not the clock.
  const before = clock.now();
  clock.putRight(before + 300, clock.steady());
  expect(clock.now()).toBe(before);
});

test("a page that opens again goes on where the last one was, never before", () => {
  const device = deviceAt(start);
  const first = new TrialClock(device.clocks);
  first.putRight(start + 90 * minute, first.steady());
  device.pass(3 * minute);
  const kept = first.kept();
  device.pass(2 * minute);
  expect(new TrialClock(device.clocks, kept).now()).toBe(start + 95 * minute);
  device.setWall(-60 * minute);
  const again = new TrialClock(device.clocks, kept);
  expect(again.now()).toBe(kept.lastMs);
  again.notBefore(kept.lastMs + minute);
  expect(again.now()).toBe(kept.lastMs + minute);
});

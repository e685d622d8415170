/** A mark of the skin that a test can change in what it is about. */
import type { Inspection, SkinMark } from "@/lib/fit/bundle";

export const mark = (changed: Partial<SkinMark> = {}): SkinMark => ({
  id: "m",
  distanceFromEndMm: 85,
  angleDeg: 0,
  widthMm: 18,
  heightMm: 14,
  strength: "clear",
  blanches: "yes",
  firm: false,
  warm: false,
  painful: false,
  broken: false,
  fadedAtMin: null,
  ...changed,
});

export const gone = (changed: Partial<SkinMark> = {}): SkinMark => mark({ strength: "none", ...changed });

export const look = (minutesAfterDoffing: number, ...marks: SkinMark[]): Inspection => ({
  id: `look${minutesAfterDoffing}`,
  at: new Date(Date.UTC(2026, 9, 5, 10, 21) + minutesAfterDoffing * 60_000).toISOString(),
  minutesAfterDoffing,
  marks,
});

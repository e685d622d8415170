import type { GateId } from "@/lib/fit/words";

/** Each gate of readiness as a person says it: what is true where it is met. */
export const gateWords: Record<GateId, string> = {
  "limb-measured": "Limb measured lately",
  "limb-settled": "Limb’s size settled",
  "socket-described": "Socket fully described",
  "checks-done": "Checks of the fitting done and met",
  suspension: "Suspension holds under load",
  motion: "Motion kept",
  "trial-load": "Trial load like the device’s",
  "worn-long-enough": "Worn long enough",
  "checked-often-enough": "Checked often enough",
  comfort: "Comfortable",
  pain: "Little or no pain",
  trend: "No turn for the worse while worn",
  "no-stop-sign": "No stop sign",
  "skin-inspected": "Skin looked at, and looked at again",
  "skin-intact": "Skin intact",
  "marks-fade": "Marks fade in time",
  "marks-even": "Marks even around the limb",
  "open-adjustments": "Adjustments small enough to carry over",
  "cautions-reviewed": "Cautions read by a prosthetist",
  fresh: "Evidence not stale",
};

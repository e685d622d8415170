/** How far an episode has come. */
import type { Bundle, NextStep } from "@/lib/fit";
import { releaseMeaning } from "./meanings";

export const stages = [
  "assessment",
  "check sockets",
  "wear trial",
  "awaiting sign-off",
  "released",
  "delivered",
  "on hold",
  "closed",
] as const;
export type Stage = (typeof stages)[number];

interface Course {
  closedAt: Date | null;
  onHoldAt: Date | null;
  deliveredAt: Date | null;
}

/** The stage follows from the records; only holding and closing are set by a person. */
export function stageOf(course: Course, bundle: Bundle, next: NextStep): Stage {
  if (course.closedAt) return "closed";
  if (course.onHoldAt) return "on hold";
  if (course.deliveredAt) return "delivered";
  const standing = (bundle.signOffs ?? []).filter(({ withdrawnAt }) => withdrawnAt === undefined);
  if (standing.some(({ meaning }) => meaning === releaseMeaning)) return "released";
  if (next.step === "sign" || next.step === "release") return "awaiting sign-off";
  if (next.step === "begin trial" || next.step === "finish trial" || next.step === "inspect") return "wear trial";
  return bundle.sockets.length > 0 ? "check sockets" : "assessment";
}

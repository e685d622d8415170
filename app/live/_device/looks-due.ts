/** When the skin is looked at after a trial: at 0, 5, 10 and 20 minutes, until the marks are gone or somebody must be called. */
import type { Inspection } from "@/lib/fit/bundle";

/** Minutes after doffing. That marks are gone within 20: clinic leaflets, common practice; the steps between: common practice, no source. */
export const lookMinutes = [0, 5, 10, 20] as const;

/** A look so much too early counts for its time all the same. */
const earlyMin = 1;

export type LooksStand =
  | { now: "due"; atMinute: number }
  | { now: "gone" }
  /** Broken, purple, or not paling under a finger after 20 minutes: a physician is called. */
  | { now: "call"; why: string }
  /** Still there at 20 minutes. */
  | { now: "late" };

/**
 * What is due after these looks.
 *
 * @example looksStand([]) // => { now: "due", atMinute: 0 }
 */
export function looksStand(looks: readonly Inspection[]): LooksStand {
  const why = [...new Set(looks.flatMap(injuriesIn))].join(" ");
  if (why !== "") return { now: "call", why };
  const last = looks.at(-1);
  if (last && lastSeen(looks).every(isGone)) return { now: "gone" };
  const seenUntil = last ? last.minutesAfterDoffing + earlyMin : Number.NEGATIVE_INFINITY;
  const next = lookMinutes.find((minute) => minute > seenUntil);
  return next === undefined ? { now: "late" } : { now: "due", atMinute: next };
}

type Mark = Inspection["marks"][number];

/** Each mark as it was when it was last mentioned: one that a later look leaves out was not seen gone. */
const lastSeen = (looks: readonly Inspection[]): Mark[] => [
  ...new Map(looks.flatMap(({ marks }) => marks.map((mark) => [mark.id, mark] as const))).values(),
];

const isGone = ({ strength, firm, warm, painful, blanches }: Mark): boolean =>
  strength === "none" && !firm && !warm && !painful && blanches !== "no";

function injuriesIn({ marks, minutesAfterDoffing }: Inspection): string[] {
  const stays = minutesAfterDoffing >= 20 && marks.some(({ blanches }) => blanches === "no");
  return [
    ...(marks.some(({ broken }) => broken) ? ["The skin is broken or blistered."] : []),
    ...(marks.some(({ strength }) => strength === "purple") ? ["The skin is purple or black in a place."] : []),
    ...(stays ? ["A mark does not go pale when it is pressed, 20 minutes after the socket came off."] : []),
  ];
}

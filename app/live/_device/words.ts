/** What is said to who runs a trial. One wording serves wearer, helper and clinician: short words, no terms of the trade. */
import type { StopSign } from "@/lib/fit/words";

/** As buttons: what is seen or said. */
export const stopWords: Record<StopSign, string> = {
  "broken-skin": "The skin is open or blistered",
  "sharp-pain": "Sharp pain",
  "rising-pain": "Pain that grows, 7 or more",
  numbness: "Part of the limb is numb and stays numb",
  tingling: "Tingling that stays",
  "colour-change": "The limb changes colour",
  cold: "The limb is cold",
  dizziness: "Dizzy or faint",
  "wearer-asks": "The wearer wants to stop",
};

/** Common practice, no source. */
export const whatToPrepare = (trial: {
  isUpperLimb: boolean;
  plan: { loadKg?: number | undefined; minutes: number };
}): string[] => [
  "A quiet place with a chair, good light and a mirror.",
  "Somebody else is near, and a phone to call with.",
  ...(trial.isUpperLimb
    ? [trial.plan.loadKg ? "The load is fixed where the plan says, and does not swing." : "What will be lifted or held."]
    : ["Something firm to hold on to. Shoes as usual. The floor is clear."]),
  "The skin was looked at just before, and nothing is open or sore. If something is, do not start: call the clinic.",
  "Liner, socks and anything worn inside are clean, dry and without folds.",
  `About ${Math.round(trial.plan.minutes) + 30} minutes: the trial, and half an hour for looking at the skin afterwards.`,
];

/** The ends of each scale: Hanspal 2003 for comfort, the numeric scale for pain, Borg's words for exertion. */
export const scales = {
  comfort: { label: "How comfortable is the socket?", ends: ["worst", "best imaginable"] },
  pain: { label: "How much does it hurt?", ends: ["no pain", "worst imaginable"] },
  exertion: { label: "How hard is it to carry on?", ends: ["nothing at all", "as hard as it gets"] },
} as const satisfies Record<string, { label: string; ends: readonly [string, string] }>;

/** Where on the limb, in plain words. Lateral is always the outer side. */
export const sideWords = { anterior: "front", lateral: "outer side", posterior: "back", medial: "inner side" } as const;
export const heightWords = {
  proximal: "near the top of the socket",
  middle: "in the middle",
  distal: "near the end of the limb",
} as const;

/** Words for what is seen on skin and said by wearers, as they stand on screens. */
import type { FeelingKind, StopSign, Strength } from "@/lib/fit/words";

export const gradeWords = ["no mark", "faint", "clear", "deep or firm", "broken, blistered or purple"] as const;

export const strengthWords: Record<Strength, string> = {
  none: "gone",
  faint: "faint",
  clear: "clear",
  deep: "deep",
  purple: "purple or maroon",
};

export const stopSignWords: Record<StopSign, string> = {
  "broken-skin": "skin broken or blistered",
  "sharp-pain": "sharp pain",
  "rising-pain": "pain rising to 7 or more",
  numbness: "numbness that stays",
  tingling: "tingling that stays",
  "colour-change": "colour change of the limb",
  cold: "the limb is cold",
  dizziness: "dizziness",
  "wearer-asks": "the wearer asks to stop",
};

export const feelingWords: Record<FeelingKind, string> = {
  pinching: "pinching",
  rubbing: "rubbing",
  pressure: "pressure",
  numbness: "numb",
  tingling: "tingling",
  heat: "hot",
  cold: "cold",
  slipping: "slipping",
  "muscle-fatigue": "tired muscle",
  other: "other",
};

export const whenToStop =
  "Stop at once for broken skin, sharp or rising pain, numbness or tingling that stays, a cold or discoloured limb, dizziness, or if the wearer asks. Then doff, look at the skin, and call a physician where the skin is broken, numb, cold or discoloured.";

/** Words for what wearers say and what ends a trial, as they stand on screens. */
import type { FeelingKind, StopSign } from "@/lib/fit/words";

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

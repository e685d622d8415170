import type { SkinMark } from "@/lib/fit/bundle";
import { blanchings, strengths } from "@/lib/fit/words";
import { strengthWords } from "./mark-words";
import { wordOptions } from "./word-options";

/** The fields of one skin mark, as a row of a look at the skin. */
export const markFields = [
  { name: "distanceFromEndMm", label: "from the end", kind: "number", unit: "mm" },
  { name: "angleDeg", label: "angle", kind: "number", unit: "°" },
  { name: "widthMm", label: "width", kind: "number", unit: "mm" },
  { name: "heightMm", label: "height", kind: "number", unit: "mm" },
  {
    name: "strength",
    label: "strength",
    kind: "select",
    options: strengths.map((strength) => ({ value: strength, label: strengthWords[strength] })),
  },
  { name: "blanches", label: "blanches", kind: "select", options: wordOptions(blanchings) },
  { name: "firm", label: "firm", kind: "tick" },
  { name: "warm", label: "warm", kind: "tick" },
  { name: "painful", label: "painful", kind: "tick" },
  { name: "broken", label: "broken or blistered", kind: "tick" },
  { name: "fadedAtMin", label: "gone at", kind: "number", unit: "min", optional: true },
] as const;

export const markHint =
  "Strength is against the wearer’s own skin; on dark skin redness may not show, so feel for firmness and warmth and ask about pain. Angle: 0 anterior, 90 lateral, 180 posterior, 270 medial, on either side. It blanches when it pales under a finger.";

/** A mark seen before, as a row to be answered anew: its place stays, what it looks like now is asked again. */
export const markSeenBefore = (mark: SkinMark): Record<string, string> => ({
  markId: mark.id,
  distanceFromEndMm: String(mark.distanceFromEndMm),
  angleDeg: String(mark.angleDeg),
  widthMm: String(mark.widthMm),
  heightMm: String(mark.heightMm),
  strength: "",
  blanches: "",
});

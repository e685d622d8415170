/**
 * The words that a bundle may use. Levels and aspects are ISO 8549 terms; the rest is the trade's plain English.
 */

export const upperLimbLevels = [
  "partial hand",
  "wrist disarticulation",
  "transradial",
  "elbow disarticulation",
  "transhumeral",
  "shoulder disarticulation",
] as const;

export const lowerLimbLevels = [
  "partial foot",
  "ankle disarticulation",
  "transtibial",
  "knee disarticulation",
  "transfemoral",
  "hip disarticulation",
] as const;

export const levels = [...upperLimbLevels, ...lowerLimbLevels] as const;
export type Level = (typeof levels)[number];

export const isUpperLimb = (level: Level): boolean => (upperLimbLevels as readonly Level[]).includes(level);

export const sides = ["left", "right"] as const;
export const causes = ["congenital", "trauma", "vascular", "tumour", "infection", "other"] as const;
export const suspensions = ["harness", "self-suspending", "pin", "suction", "vacuum", "strap", "other"] as const;
export type Suspension = (typeof suspensions)[number];

export const cautionKinds = [
  "reduced-feeling",
  "fragile-skin",
  "poor-circulation",
  "swelling",
  "infection",
  "bleeding-risk",
  "pregnancy",
  "allergy",
  "other",
] as const;
export type CautionKind = (typeof cautionKinds)[number];

export const aspects = ["anterior", "lateral", "posterior", "medial"] as const;
export type Aspect = (typeof aspects)[number];

export const thirds = ["proximal", "middle", "distal"] as const;
export type Third = (typeof thirds)[number];

export const adjustmentKinds = [
  "relief",
  "build-up",
  "trim",
  "flare",
  "volume",
  "length",
  "closure",
  "suspension",
  "alignment",
  "other",
] as const;
export type AdjustmentKind = (typeof adjustmentKinds)[number];

export const adjustmentUnits = ["mm", "percent", "deg"] as const;

export const socketStates = ["planned", "being made", "sent", "at hand", "fitted", "retired", "released"] as const;
export type SocketState = (typeof socketStates)[number];

export const checkAnswers = ["met", "concern", "not met", "not done"] as const;
export type CheckAnswer = (typeof checkAnswers)[number];

export const upperLimbChecks = [
  "donning",
  "seating",
  "total-contact",
  "suspension",
  "rotation",
  "trim-lines",
  "bony-relief",
  "circulation",
  "feeling",
  "comfort-at-rest",
  "comfort-under-load",
] as const;

export const lowerLimbChecks = [
  "donning",
  "seating",
  "end-contact",
  "total-contact",
  "suspension",
  "rotation",
  "trim-lines",
  "sitting",
  "bony-relief",
  "circulation",
  "feeling",
  "length",
  "comfort-standing",
  "comfort-walking",
] as const;

export type CheckKey = (typeof upperLimbChecks)[number] | (typeof lowerLimbChecks)[number];

/** The checks that a fitting of this level is made of, in the order of the work. */
export const checksOf = (level: Level): readonly CheckKey[] => (isUpperLimb(level) ? upperLimbChecks : lowerLimbChecks);

export const strengths = ["none", "faint", "clear", "deep", "purple"] as const;
export type Strength = (typeof strengths)[number];

export const blanchings = ["yes", "no", "not tested"] as const;

export const feelingKinds = [
  "pinching",
  "rubbing",
  "pressure",
  "numbness",
  "tingling",
  "heat",
  "cold",
  "slipping",
  "muscle-fatigue",
  "other",
] as const;
export type FeelingKind = (typeof feelingKinds)[number];

export const stopSigns = [
  "broken-skin",
  "sharp-pain",
  "rising-pain",
  "numbness",
  "tingling",
  "colour-change",
  "cold",
  "dizziness",
  "wearer-asks",
] as const;
export type StopSign = (typeof stopSigns)[number];

export const reporters = ["wearer", "carer", "clinician"] as const;
export const places = ["clinic", "home", "video"] as const;
/** Parts of a fitting that may be told by whoever was with the wearer, and were not seen by who writes them down. */
export const reportedParts = ["checks", "pulls", "motion", "skin"] as const;
export type ReportedPart = (typeof reportedParts)[number];

/** Every gate of readiness, in the order in which an assessment gives them. */
export const gateIds = [
  "limb-measured",
  "limb-settled",
  "socket-described",
  "checks-done",
  "suspension",
  "motion",
  "trial-load",
  "worn-long-enough",
  "checked-often-enough",
  "comfort",
  "pain",
  "trend",
  "no-stop-sign",
  "skin-inspected",
  "skin-intact",
  "marks-fade",
  "marks-even",
  "open-adjustments",
  "cautions-reviewed",
  "fresh",
] as const;
export type GateId = (typeof gateIds)[number];

/** Gates that a prosthetist may accept with a reason; no other acceptance counts. */
export const acceptableGates = [
  "limb-settled",
  "socket-described",
  "trial-load",
  "checked-often-enough",
  "marks-even",
] as const satisfies readonly GateId[];

/** Stands in the reason of a gate whose evidence a wearer or a helper told over video: judged alike, and said. */
export const toldNotSeen = "Told at the fitting, not seen.";

import { type CheckKey, isUpperLimb, type Level } from "@/lib/fit/words";

interface CheckQuestion {
  key: CheckKey;
  question: string;
  hint?: string;
}

/** The parts of a fitting in the order of the work, with the checks that are made in each. */
export interface FittingPart {
  title: string;
  checks: readonly CheckQuestion[];
}

const donning: CheckQuestion[] = [
  { key: "donning", question: "The wearer gets into it without help beyond what is planned" },
  { key: "seating", question: "The limb is seated fully", hint: "where the end should be, it is" },
];
const contact: CheckQuestion = {
  key: "total-contact",
  question: "Contact everywhere, no gaps",
  hint: "look through the wall, press at the edges",
};
const rotation: CheckQuestion = {
  key: "rotation",
  question: "The socket does not turn on the limb",
  hint: "twist gently both ways",
};
const bony: CheckQuestion = { key: "bony-relief", question: "Bony places are free of pressure" };
const trim: CheckQuestion = {
  key: "trim-lines",
  question: "Edges neither dig in nor gape",
  hint: "through the whole range of motion",
};
const circulation: CheckQuestion = {
  key: "circulation",
  question: "Colour and warmth of the limb are as they were before donning",
};
const feeling: CheckQuestion = { key: "feeling", question: "No numbness and no tingling" };

const upperParts: readonly FittingPart[] = [
  { title: "Donning", checks: donning },
  {
    title: "Lifting and pulling",
    checks: [
      { key: "suspension", question: "Suspension holds when the arm is lifted", hint: "a slight drop is acceptable" },
      rotation,
      contact,
      bony,
    ],
  },
  { title: "Moving", checks: [trim] },
  {
    title: "What the wearer says",
    checks: [
      { key: "comfort-at-rest", question: "Comfortable at rest" },
      { key: "comfort-under-load", question: "Comfortable with a load in the hand" },
      feeling,
    ],
  },
  { title: "Doffing and skin", checks: [circulation] },
];

const lowerParts: readonly FittingPart[] = [
  { title: "Donning", checks: donning },
  {
    title: "Standing",
    checks: [
      { key: "end-contact", question: "The end touches, and does not carry the weight", hint: "unless end bearing is planned" },
      contact,
      bony,
      { key: "length", question: "The length is right, hips level" },
      { key: "suspension", question: "Suspension holds when the leg is lifted", hint: "a slight drop is acceptable" },
      rotation,
    ],
  },
  { title: "Moving", checks: [{ key: "sitting", question: "Sitting is possible without pinching or lifting out" }, trim] },
  {
    title: "What the wearer says",
    checks: [
      { key: "comfort-standing", question: "Comfortable when standing" },
      { key: "comfort-walking", question: "Comfortable when walking" },
      feeling,
    ],
  },
  { title: "Doffing and skin", checks: [circulation] },
];

export const fittingParts = (level: Level): readonly FittingPart[] => (isUpperLimb(level) ? upperParts : lowerParts);

/** A check as the form asks it: what is true where it is met. */
export const checkWords = (key: string, level: Level): string =>
  fittingParts(level)
    .flatMap(({ checks }) => checks)
    .find((check) => check.key === key)?.question ?? key.replaceAll("-", " ");

/** Movements that are measured at a level, the most telling first. */
export const usualJoints = (level: Level): readonly string[] => {
  switch (level) {
    case "partial hand":
    case "wrist disarticulation":
      return ["wrist-flexion", "wrist-extension", "forearm-rotation", "elbow-flexion"];
    case "transradial":
    case "elbow disarticulation":
      return ["elbow-flexion", "elbow-extension", "forearm-rotation"];
    case "transhumeral":
    case "shoulder disarticulation":
      return ["shoulder-flexion", "shoulder-abduction"];
    case "partial foot":
    case "ankle disarticulation":
      return ["ankle-dorsiflexion", "knee-flexion"];
    case "transtibial":
      return ["knee-flexion", "knee-extension"];
    default:
      return ["hip-flexion", "hip-extension", "hip-abduction"];
  }
};

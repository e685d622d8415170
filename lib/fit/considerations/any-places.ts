/** Any limb: marks, pressure and pain by the kind of place where they are. */
import type { ConsiderRow } from "../consider-row";
import { pressedThere } from "../consider-words";

export const considerAnyPlaces: readonly ConsiderRow[] = [
  {
    id: "any-bony-point",
    kind: "deep-mark",
    alsoFor: [...pressedThere, "bony-relief"],
    place: "bony point",
    finding: "A mark or pressure at a bony point",
    adjustments: [
      {
        kind: "relief",
        what: "A relief centred on the bone as it lies under load, and not as it lay when the limb was cast or scanned, is considered.",
      },
      {
        kind: "build-up",
        what: "A build-up on the soft tissue on both sides of the bone is considered, so that it carries and the bone is bridged.",
      },
    ],
    weigh: [
      "Whether the relief that is there sits above, below or beside the bone tells whether the limb is too deep, too high or turned.",
      "Skin over bone that has been marked often is thin, and recovers last.",
    ],
    cautions: ["A relief with a steep border presses as a ring round the very point that it was to free."],
    stopWhen: "skin over the bone that is purple, open, or stays red under a finger at 20 minutes.",
  },
  {
    id: "any-brim-mark",
    kind: "firm-mark",
    alsoFor: [...pressedThere, "trim-lines"],
    place: "brim",
    finding: "A mark or pressure along the brim",
    adjustments: [
      { kind: "flare", what: "A flare at that part of the brim is considered where the wall above the mark turns in." },
      { kind: "trim", what: "A lower trim line is considered where the brim meets tissue that has nowhere to go." },
      { kind: "relief", what: "A relief just inside the brim is considered where the mark is a band and not a line." },
    ],
    weigh: [
      "A line all round is tightness, a line on one side is lean, a short line is an edge.",
      "The brim is looked at through the whole range of motion, and sitting as well as standing.",
    ],
    cautions: ["What the brim gives up in height is taken from stability and suspension, and is not put back easily."],
    stopWhen: "a brim line with numbness beyond it, a cold or dark limb below it, or skin that is cut by the edge.",
  },
  {
    id: "any-end-pressure",
    kind: "pressure",
    alsoFor: [...pressedThere, "end-contact"],
    place: "distal end",
    finding: "Pressure at the distal end",
    adjustments: [
      { kind: "volume", what: "Taking up volume proximally is considered where there is slack and the limb sinks onto its end." },
      {
        kind: "length",
        what: "More room below the end is considered where the limb is held well and the end touches all the same.",
      },
      { kind: "build-up", what: "A soft build-up under the end is considered where contact is wanted there and load is not." },
    ],
    weigh: [
      "A spot of soft clay or a sock thread through the end hole shows whether the end touches, hangs free or carries.",
      "Where the end is meant to bear, as after many disarticulations, pressure there is wanted, and its evenness is the question.",
      "An end that was fine at first and presses later has sunk, most often because the limb lost volume in the day.",
    ],
    cautions: [
      "Taking up volume proximally may choke a limb with poor circulation or swelling.",
      "An end that is freed altogether hangs without support and swells.",
    ],
    stopWhen: "an end that is purple, open, swollen, weeping or numb, or bone that is felt right under thin skin.",
  },
  {
    id: "any-scar",
    kind: "rubbing",
    alsoFor: pressedThere,
    place: "scar",
    finding: "A scar or grafted skin is rubbed or pressed",
    adjustments: [
      { kind: "other", what: "An interface that takes up shear is considered over the scar." },
      { kind: "relief", what: "A shallow relief with a wide border is considered where the scar stands proud." },
      { kind: "volume", what: "A closer fit above and below the scar is considered, so that it moves less." },
    ],
    weigh: [
      "A scar that sticks to bone is torn by shear more than by pressure; whether the skin glides is tried with a finger.",
      "Young scars and grafts bear little, and the time since healing is asked for.",
    ],
    cautions: ["Grafted skin often has no feeling, so the wearer does not notice what happens there."],
    stopWhen: "a scar that opens, weeps, changes colour or grows, or a graft that blisters.",
  },
  {
    id: "any-tendon",
    kind: "pressure",
    alsoFor: pressedThere,
    place: "tendon",
    finding: "A tendon is pressed when it tightens",
    adjustments: [
      { kind: "relief", what: "A channel for the tendon in its tight position is considered." },
      { kind: "flare", what: "A rounder edge where the tendon leaves the socket is considered." },
    ],
    weigh: ["The tendon is felt with the muscle working against the hand, for at rest it hides."],
    cautions: ["A channel made wide takes hold away from the section; rotation is looked at again after it."],
    stopWhen: "a tendon that creaks, is swollen or stays sore when the socket is off, or a sudden loss of strength.",
  },
  {
    id: "any-nerve",
    kind: "pressure",
    alsoFor: ["pain", "painful-mark", "passing-tingling", "passing-numbness"],
    place: "nerve",
    finding: "Pressure where a nerve lies near the surface",
    adjustments: [
      { kind: "relief", what: "A relief along the course of the nerve, longer than the sore spot, is considered." },
      { kind: "flare", what: "A softer edge at the crossing is considered." },
    ],
    weigh: [
      "Feeling and strength of what the nerve serves are written down before and after the trial.",
      "The wall or strap that presses may be on the other side of the limb and only push the nerve against bone.",
    ],
    cautions: ["A relief that ends the pain has not thereby ended the compression: feeling decides, and time."],
    stopWhen: "tingling or numbness that stays, or any weakness that is new.",
  },
];

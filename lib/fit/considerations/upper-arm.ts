/** Elbow disarticulation and transhumeral: the upper arm, its axilla and the harness. */
import type { ConsiderRow } from "../consider-row";
import { pressedThere } from "../consider-words";

export const considerUpperArm: readonly ConsiderRow[] = [
  {
    id: "upper-elbow-disarticulation-condyles",
    kind: "pressure",
    alsoFor: [...pressedThere, "bony-relief"],
    levels: ["elbow disarticulation"],
    place: "epicondyles",
    finding: "The epicondyles press in the wide end of the socket",
    adjustments: [
      {
        kind: "relief",
        what: "A relief for each epicondyle is considered, with the flat front and back of the bone left in contact.",
      },
      { kind: "build-up", what: "A closer fit just above the wide end is considered, so that it does not hang on its corners." },
    ],
    weigh: [
      "The same corners that suffer hold the socket on and keep it from turning; how much of each they give up is weighed.",
    ],
    cautions: ["The ulnar nerve lies close under the skin behind the inner epicondyle, and may end near it in a neuroma."],
    stopWhen: "skin over an epicondyle that is open or purple, or tingling when it is tapped.",
  },
  {
    id: "upper-elbow-disarticulation-donning",
    kind: "donning",
    alsoFor: ["too-tight", "not-seated", "seating"],
    levels: ["elbow disarticulation"],
    finding: "The wide end of the upper arm does not go in",
    adjustments: [
      { kind: "closure", what: "A front opening down to the wide end, laced or strapped once it is in, is considered." },
      { kind: "other", what: "A flexible inner socket in a frame with windows is considered, so that the wall gives way." },
    ],
    weigh: ["One hand has to open, enter and close it; the closure is tried by the wearer alone."],
    cautions: [
      "A strap that is pulled tight over a thin upper arm can press on the nerve that winds round the back of the bone.",
    ],
    stopWhen: "swelling above or below the closure, weakness in what is left to move, or numbness at the outer side.",
  },
  {
    id: "upper-axilla-brim",
    kind: "pressure",
    alsoFor: [...pressedThere, "pinching", "trim-lines"],
    place: "axilla",
    finding: "The inner brim presses or pinches in the axilla",
    adjustments: [
      { kind: "trim", what: "A lower inner brim is considered, high enough still to leave no roll of tissue over it." },
      { kind: "flare", what: "A broad, rounded inner edge is considered." },
      { kind: "relief", what: "Room for the tendons in front of and behind the axilla is considered." },
    ],
    weigh: [
      "It is judged with the arm hanging, held forward and pressed to the side, and sitting with the forearm on a table.",
      "A loose socket rides up into the axilla, so suspension and volume are looked at before the edge.",
    ],
    cautions: [
      "The vessels and nerves of the whole arm pass through the axilla; no load belongs there, whatever it would steady.",
    ],
    stopWhen: "tingling, numbness, weakness, or a cold or dark limb with the arm in any position.",
  },
  {
    id: "upper-axilla-nerve",
    kind: "numbness",
    alsoFor: ["tingling", "cold", "colour-change", "feeling", "circulation", "sharp-pain"],
    place: "axilla",
    finding: "Numbness, tingling, cold or colour change from pressure in the axilla",
    adjustments: [],
    weigh: [
      "Nerves and vessels are pressed together there; warmth, colour, feeling and, where there is one, the pulse below are compared with the other side.",
      "The area of numbness tells which nerve: the back of the limb another than its inner side.",
    ],
    cautions: ["No adjustment is offered: until the limb is warm and feels again, a lower brim is a question for later."],
    stopWhen:
      "anything of this kind that has not gone soon after doffing. A limb that stays cold, pale and painful is for the emergency services.",
  },
  {
    id: "upper-harness-axilla",
    kind: "pressure",
    alsoFor: [...pressedThere, "pinching", "low-comfort", "comfort-at-rest"],
    place: "harness axilla",
    finding: "The harness presses in the axilla of the other side",
    adjustments: [
      {
        kind: "suspension",
        what: "Another course of the straps, which carries on shoulder or chest and less in the axilla, is considered.",
      },
      { kind: "closure", what: "A somewhat longer loop, with the point where straps cross moved, is considered." },
      { kind: "other", what: "A wider, softer or lined loop is considered." },
    ],
    weigh: [
      "Whether it presses at rest (set too tight) or in use (too much force asked for) is told apart first.",
      "Friction in cable and terminal device is paid for in the axilla; the force needed at the strap is measured.",
    ],
    cautions: [
      "A loop that is let out may cost reach of the terminal device or suspension under load.",
      "The skin of an axilla is damp and slow to heal, and a pad makes it damper.",
    ],
    stopWhen: "tingling or numbness in the sound hand, a swollen arm, or a sore in the axilla.",
  },
  {
    id: "upper-harness-nerve",
    kind: "tingling",
    alsoFor: ["numbness", "cold", "colour-change", "feeling", "circulation"],
    place: "harness axilla",
    finding: "Tingling, numbness or cold in the sound arm from the harness",
    adjustments: [],
    weigh: [
      "It is the only hand with feeling that some wearers have, so a small loss there weighs more than any gain in control.",
      "How long it took to come and to go, and in which fingers, is written down.",
    ],
    cautions: [
      "No adjustment is offered until feeling is back; padding the loop would spread a pressure that the nerve has shown it cannot bear.",
    ],
    stopWhen:
      "tingling or numbness of the sound hand that stays after the harness is off, comes at night, or comes with weakness.",
  },
  {
    id: "upper-transhumeral-rotation",
    kind: "rotation",
    levels: ["transhumeral"],
    finding: "The socket turns on the upper arm",
    adjustments: [
      {
        kind: "other",
        what: "Wings in front of and behind the shoulder are considered, which hold against turning where the arm itself is round.",
      },
      { kind: "build-up", what: "Flatter front and rear walls are considered." },
      {
        kind: "suspension",
        what: "Straps that pull from two sides, or a suspension that grips the skin more evenly, are considered.",
      },
    ],
    weigh: [
      "The shorter and rounder the limb, the more of the hold comes from above the axilla.",
      "Turning inwards while the elbow is flexed under load shows more than a twist by the examiner's hand.",
    ],
    cautions: ["Wings press on the chest and the shoulder blade; forward reach and lying back are looked at again."],
    stopWhen: "wings that bruise, breath that is hindered, or tingling in the limb while turned.",
  },
  {
    id: "upper-transhumeral-gap",
    kind: "gapping",
    levels: ["transhumeral", "elbow disarticulation"],
    finding: "The brim gapes at the shoulder when the arm is lifted",
    adjustments: [
      {
        kind: "build-up",
        what: "A closer proximal section is considered, shaped with the arm held somewhat away from the body.",
      },
      { kind: "suspension", what: "A side strap that holds the outer wall to the shoulder is considered." },
      { kind: "trim", what: "A lower outer edge is considered where it only stands off and hinders." },
    ],
    weigh: [
      "The bone pushes the end of the socket up and the brim swings away; the mark of the bone's end is looked for at the same time.",
    ],
    cautions: ["A side strap that is tight pulls the inner brim up into the axilla."],
    stopWhen: "a bone end that is bruised, or tingling when the strap is tight.",
  },
  {
    id: "upper-humerus-end",
    kind: "pressure",
    alsoFor: [...pressedThere, "bony-relief", "comfort-under-load"],
    place: "humerus end",
    finding: "The end of the humerus presses on the wall",
    adjustments: [
      { kind: "build-up", what: "Contact along the shaft, on the side to which the arm pushes, is considered." },
      { kind: "relief", what: "A relief for the bone's end on the same side is considered." },
      { kind: "volume", what: "A closer distal third is considered where the bone travels before it moves the socket." },
    ],
    weigh: ["In front it comes from reaching, at the outer side from lifting sideways; the two are tried one by one under load."],
    cautions: ["In a growing child the bone may outgrow the skin at this end, and no relief keeps up with it."],
    stopWhen: "bone that is felt right under thin skin, a red warm point over it, or a bursa that swells.",
  },
];

/** Partial hand and wrist disarticulation, and the turning of the forearm. */
import type { ConsiderRow } from "../consider-row";
import { pressedThere } from "../consider-words";

export const considerUpperHand: readonly ConsiderRow[] = [
  {
    id: "upper-forearm-rotation-limited",
    kind: "loss-of-motion",
    place: "forearm",
    levels: ["partial hand", "wrist disarticulation", "transradial"],
    finding: "Forearm rotation is held by the socket",
    adjustments: [
      {
        kind: "trim",
        what: "A brim that ends well below the elbow is considered for a long limb, so that the two bones may turn.",
      },
      { kind: "flare", what: "A looser, wider proximal edge is considered where the brim grips both bones." },
      { kind: "other", what: "A rotating part at the wrist is considered where rotation of the limb cannot be freed." },
    ],
    weigh: [
      "How much active rotation the limb has without a socket is measured first; short forearms have little to carry over.",
      "A socket that reaches above the epicondyles holds rotation altogether.",
    ],
    cautions: [
      "A brim that is lowered for rotation gives up suspension from the elbow, and a harness or another hold takes its place.",
    ],
    stopWhen: "rotation that hurts at the wrist or the elbow, or a click with pain where the two bones meet.",
  },
  {
    id: "upper-forearm-turns-inside",
    kind: "rotation",
    levels: ["wrist disarticulation", "transradial"],
    finding: "The forearm turns inside the socket, and the terminal device is not carried along",
    adjustments: [
      { kind: "build-up", what: "A flatter distal section, shaped to the oval of the two bones, is considered." },
      { kind: "volume", what: "A closer fit in the distal third is considered, with the proximal part left free." },
      { kind: "closure", what: "A distal opening that closes over the flat of the bones is considered at wrist level." },
    ],
    weigh: [
      "Turning of limb and of terminal device are measured together; the difference is what is lost in between.",
      "The nearer to the wrist, the more rotation is there to carry, and the flatter the section that carries it.",
    ],
    cautions: [
      "A flattened section presses on the edges of both bones; their skin is looked at after turning against resistance.",
    ],
    stopWhen: "a sore along the edge of a bone, or tingling at the thumb side of the forearm.",
  },
  {
    id: "upper-styloids",
    kind: "deep-mark",
    alsoFor: [...pressedThere, "bony-relief"],
    place: "styloids",
    finding: "A mark or pressure at the styloids",
    adjustments: [
      { kind: "relief", what: "A relief for each styloid, as deep as it moves in rotation, is considered." },
      {
        kind: "build-up",
        what: "A closer fit just above them, front and back, is considered, so that the flat of the forearm carries.",
      },
    ],
    weigh: [
      "A limb that is pulled out by a load hangs on its styloids; suspension is looked at before the relief is made larger.",
      "Their place relative to the wall changes with rotation, and is marked in both ends of it.",
    ],
    cautions: ["A large relief takes away the hold over the wide end, which is what a wrist disarticulation has to offer."],
    stopWhen: "a styloid with open, purple or tight shiny skin, or a click with pain in rotation.",
  },
  {
    id: "upper-wrist-donning",
    kind: "donning",
    alsoFor: ["too-tight", "not-seated", "seating"],
    levels: ["wrist disarticulation"],
    finding: "The wide end does not pass the narrow part of the socket",
    adjustments: [
      { kind: "closure", what: "An opening over the narrow part, which closes once the end has passed, is considered." },
      { kind: "volume", what: "A wider narrow part, filled by a soft sleeve put on first, is considered." },
    ],
    weigh: ["Passing the end is tried with the skin dry, warm and in the evening, when it is at its largest."],
    cautions: [
      "Tissue is pinched where an opening closes; its edge is looked at after each wear.",
      "Each opening weakens the wall, and wrist-level sockets are thin to save length.",
    ],
    stopWhen: "an end that swells so that it cannot be taken out without force, or turns dark inside.",
  },
  {
    id: "upper-metacarpals",
    kind: "pressure",
    alsoFor: [...pressedThere, "bony-relief"],
    place: "metacarpal ends",
    finding: "Pressure on the ends of the metacarpals",
    adjustments: [
      { kind: "relief", what: "A relief at each bone end in the position of grasp is considered." },
      { kind: "length", what: "A little room beyond the ends is considered where the hand slides forward in use." },
      { kind: "build-up", what: "More support in the palm, away from scars, is considered." },
    ],
    weigh: ["The hand changes shape between open and closed, and a socket that fits one may pinch in the other."],
    cautions: ["Nerve ends and scars in the palm are common; a spot that shoots is no place for load."],
    stopWhen: "a shooting spot, a scar that opens, or fingers that remain turning cold, white or numb.",
  },
  {
    id: "upper-thumb-web",
    kind: "pinching",
    alsoFor: pressedThere,
    place: "thumb web",
    finding: "The thumb web is pinched or rubbed",
    adjustments: [
      { kind: "trim", what: "A deeper cut-out round the thumb is considered." },
      { kind: "flare", what: "A soft, rounded edge in the web is considered." },
    ],
    weigh: ["The web is judged with the thumb stretched out and pressed to the palm, wet and dry."],
    cautions: ["A wide cut-out lets the hand turn in the socket."],
    stopWhen: "a web that cracks or bleeds, or a thumb that tingles or turns white.",
  },
  {
    id: "upper-wrist-motion",
    kind: "loss-of-motion",
    place: "wrist",
    finding: "Wrist motion is lost with a partial-hand socket",
    adjustments: [
      { kind: "trim", what: "A proximal edge that ends short of the wrist crease is considered." },
      { kind: "flare", what: "An edge that turns out over the crease is considered." },
    ],
    weigh: ["A moving wrist is worth much to a hand without fingers, and is weighed against hold for heavy work."],
    cautions: [
      "At the front of the wrist median nerve and tendons lie close under the skin; a tight edge there presses on both.",
    ],
    stopWhen: "tingling in the remaining thumb or fingers, or a wrist that stays stiff or swollen without the socket.",
  },
];

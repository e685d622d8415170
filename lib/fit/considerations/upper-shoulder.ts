/** Transhumeral and shoulder disarticulation: shoulder and trunk. */
import type { ConsiderRow } from "../consider-row";
import { pressedThere } from "../consider-words";

export const considerUpperShoulder: readonly ConsiderRow[] = [
  {
    id: "upper-acromion",
    kind: "pressure",
    alsoFor: [...pressedThere, "bony-relief"],
    place: "acromion",
    finding: "A mark or pressure on the acromion",
    adjustments: [
      { kind: "relief", what: "A relief over the acromion, wide enough for a shrugged shoulder, is considered." },
      { kind: "trim", what: "An edge that passes clear of the bone is considered." },
      {
        kind: "build-up",
        what: "More bearing on the slope of muscle towards the neck is considered where the weight hangs on the bone.",
      },
    ],
    weigh: ["The bone rises and turns when the arm is lifted; the mark is compared with its place in both positions."],
    cautions: ["Weight moved from the bone to the slope beside the neck may press on nerves there."],
    stopWhen: "skin over the bone that is open or purple, or numbness over the shoulder or down the arm.",
  },
  {
    id: "upper-clavicle",
    kind: "pressure",
    alsoFor: [...pressedThere, "bony-relief"],
    place: "clavicle",
    finding: "A strap or edge presses on the clavicle",
    adjustments: [
      { kind: "relief", what: "A bridge over the clavicle, carried by the muscle above and below, is considered." },
      { kind: "other", what: "A strap that crosses nearer to the shoulder's end, or is wider, is considered." },
    ],
    weigh: ["An old fracture, a line under the skin or a pacemaker near the clavicle is asked about before anything crosses it."],
    cautions: ["Behind the middle of the clavicle lie the vessels and nerves of the arm, so a build-up does not belong there."],
    stopWhen: "tingling down an arm, a swollen arm, or pressure near an implanted device.",
  },
  {
    id: "upper-scapula",
    kind: "rubbing",
    alsoFor: [...pressedThere, "bony-relief"],
    place: "scapula",
    finding: "The socket or a strap rubs on the scapula",
    adjustments: [
      { kind: "relief", what: "Room for the spine of the scapula and for its travel is considered." },
      { kind: "trim", what: "A rear edge that stays on the flat of the bone or clears it is considered." },
      { kind: "other", what: "A cross of the harness that sits lower, between the blades, is considered." },
    ],
    weigh: ["The scapula is what works a cable; a wall that holds it still takes away the motion that was to be used."],
    cautions: ["A lower cross changes the pull of every strap: excursion is measured again."],
    stopWhen: "an open or purple place over the spine of the bone, or shoulder pain that stays at night.",
  },
  {
    id: "upper-shoulder-motion",
    kind: "loss-of-motion",
    place: "shoulder",
    finding: "Shoulder motion is lost to brim, wings or straps",
    adjustments: [
      { kind: "trim", what: "Shorter or lower wings, and an outer edge below the acromion, are considered." },
      { kind: "flare", what: "Edges that turn away from chest and shoulder blade are considered." },
      { kind: "other", what: "Longer straps or another crossing point are considered where the harness ends the motion." },
    ],
    weigh: [
      "Forward and sideways lifting are measured with the harness loosened and fastened, so that strap and edge are told apart.",
    ],
    cautions: ["The outer wall and the wings carry rotation and weight; each centimetre is tried with the line drawn first."],
    stopWhen: "a shoulder that is losing motion without the socket, or is painful at night.",
  },
  {
    id: "upper-shoulder-socket-unstable",
    kind: "slipping",
    alsoFor: ["displacement", "suspension", "rotation"],
    levels: ["shoulder disarticulation"],
    finding: "The shoulder socket shifts on the trunk",
    adjustments: [
      { kind: "suspension", what: "A chest strap with a second line of pull, placed lower, is considered." },
      { kind: "build-up", what: "Shaped contact below the clavicle's outer part and along the shoulder blade is considered." },
      { kind: "closure", what: "An elastic part in the chest strap is considered, so that breath does not loosen it." },
    ],
    weigh: [
      "The long lever of a whole arm tips the socket: one edge digs in and the opposite one lifts; both are watched while a load is lifted.",
    ],
    cautions: [
      "What steadies by squeezing the chest is paid for in breath, and more so in age, pregnancy or illness of the lungs.",
    ],
    stopWhen:
      "breathlessness, pain in the chest or palpitations. These are for the emergency services if they do not pass at once.",
  },
  {
    id: "upper-ribs",
    kind: "pressure",
    alsoFor: [...pressedThere, "heat", "low-comfort"],
    levels: ["shoulder disarticulation"],
    place: "ribs",
    finding: "The chest wall is pressed or overheated",
    adjustments: [
      { kind: "trim", what: "A smaller plate, or a frame with open areas, is considered." },
      { kind: "relief", what: "Room for the movement of the ribs with a deep breath is considered." },
      { kind: "flare", what: "Edges turned away from breast and ribs are considered, sitting and bending." },
    ],
    weigh: ["A deep breath, a cough and a bend forward are part of this fitting."],
    cautions: ["Soft tissue of the breast, scars and skin after radiation bear little pressure."],
    stopWhen: "a rib that hurts on breathing, breath that is short, or skin after radiation that changes.",
  },
];

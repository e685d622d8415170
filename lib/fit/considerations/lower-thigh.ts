/** Knee disarticulation, transfemoral and hip disarticulation: thigh and pelvis. */
import type { ConsiderRow } from "../consider-row";
import { pressedThere } from "../consider-words";

export const considerLowerThigh: readonly ConsiderRow[] = [
  {
    id: "lower-condyles-knee-disarticulation",
    kind: "pressure",
    alsoFor: [...pressedThere, "bony-relief"],
    levels: ["knee disarticulation"],
    place: "femoral condyles",
    finding: "The condyles are pressed in the end of the socket",
    adjustments: [
      { kind: "relief", what: "Room for the sides of each condyle is considered." },
      { kind: "build-up", what: "A shaped seat under the condyles, which spreads the weight over the whole end, is considered." },
      { kind: "volume", what: "A closer fit of the thigh is considered, so that it shares the weight." },
    ],
    weigh: [
      "End bearing is what this level has to offer; whether the end is sore from weight, or its sides from shape, is found first.",
    ],
    cautions: [
      "Skin brought over the end from the front or rear bears weight less well than the skin that was made for kneeling.",
    ],
    stopWhen: "an end that is open, purple or swollen, or a click with pain in the scar.",
  },
  {
    id: "lower-knee-disarticulation-sitting",
    kind: "length",
    alsoFor: ["sitting", "too-long"],
    levels: ["knee disarticulation"],
    finding: "The thigh is too long on sitting",
    adjustments: [
      { kind: "length", what: "The thinnest end that still bears weight is considered." },
      { kind: "alignment", what: "A knee whose axis lies beside or behind the end, or moves up on bending, is considered." },
    ],
    weigh: [
      "A knee that stands out by a few centimetres is common at this level, and is shown to the wearer before the socket is made.",
    ],
    cautions: ["A thinner end is a harder one, and what the skin bears is tried again."],
    stopWhen: "an end that gets sore after its pad was made thinner, or back pain from a tilted seat.",
  },
  {
    id: "lower-femur-end",
    kind: "pain",
    alsoFor: [...pressedThere, "bony-relief", "comfort-walking"],
    place: "femur end",
    finding: "Pain or a mark at the outer side of the femur's end",
    adjustments: [
      { kind: "build-up", what: "Even contact along the shaft on the outer wall, above the end, is considered." },
      { kind: "relief", what: "A relief for the end of the bone at the outer wall is considered." },
      {
        kind: "alignment",
        what: "More adduction of the socket is considered, where the hip allows it, so that the shaft is met and not its end.",
      },
    ],
    weigh: [
      "In mid-stance the muscles of the hip press the bone outwards: a wall that does not meet the shaft is met by its end.",
      "At the front it comes from swinging the limb forward, or from a hip that cannot extend as far as the socket asks.",
    ],
    cautions: ["A femur that has lost its adductor muscles drifts outwards in any socket."],
    stopWhen: "bone felt under thin skin, a lump that shoots, or a purple or open place.",
  },
  {
    id: "lower-transfemoral-bell-clapper",
    kind: "bell-clapper",
    levels: ["transfemoral"],
    finding: "The femur swings inside soft tissue",
    adjustments: [
      { kind: "volume", what: "A smaller volume, with tissue drawn fully in, is considered." },
      { kind: "build-up", what: "A long support along the outer and rear side of the shaft is considered." },
      { kind: "closure", what: "A wall that can be tightened over the middle third is considered." },
    ],
    weigh: [
      "The swing costs the first part of each step and shows as a late knee; it is seen from the side, with a hand on the wall.",
    ],
    cautions: ["Length and tissue set a limit: with a short femur in much soft tissue some swing remains."],
    stopWhen: "pain in the bone, a fall, or a hot swelling at its end.",
  },
  {
    id: "lower-trochanter",
    kind: "deep-mark",
    alsoFor: [...pressedThere, "bony-relief"],
    place: "greater trochanter",
    finding: "A mark over the greater trochanter",
    adjustments: [
      { kind: "relief", what: "A relief for the trochanter within the outer wall is considered." },
      { kind: "build-up", what: "Contact above and behind it, and along the shaft below, is considered." },
    ],
    weigh: [
      "A wall that only meets the trochanter leaves the shaft alone, and the outer brim is then all that holds the pelvis.",
    ],
    cautions: ["Lying on that side at night presses the same place."],
    stopWhen: "pain over the trochanter at night, a swelling, or skin that opens.",
  },
  {
    id: "lower-transfemoral-lateral-gap",
    kind: "gapping",
    levels: ["transfemoral", "knee disarticulation"],
    finding: "The outer brim gapes when weight is on it",
    adjustments: [
      { kind: "alignment", what: "A foot set further outwards, or more adduction of the socket, is considered." },
      { kind: "build-up", what: "A narrower section between inner and outer wall is considered." },
      { kind: "trim", what: "A higher outer wall that reaches above the trochanter is considered." },
    ],
    weigh: [
      "A lean of the trunk over the prosthesis may go with it, and the inner brim is marked at the same time.",
      "Weak hip muscles, a short limb or a sore inner brim bring the same picture with a good alignment.",
    ],
    cautions: [
      "Narrowing a socket whose inner brim hurts already makes the wearer lean more.",
      "A foot set too far outwards widens the gait and brings on a lean of its own.",
    ],
    stopWhen: "a sore or swollen groin, or a hip that hurts without the prosthesis.",
  },
  {
    id: "lower-transfemoral-rotation",
    kind: "rotation",
    levels: ["transfemoral", "knee disarticulation"],
    finding: "The socket turns on the thigh",
    adjustments: [
      { kind: "volume", what: "Taking up volume is considered where it turns both ways." },
      { kind: "build-up", what: "A shape that follows muscle and bone at the brim, and flatter walls, are considered." },
      { kind: "suspension", what: "A belt, or a hold that does not let the liner turn on the skin, is considered." },
    ],
    weigh: [
      "A foot that whips inwards or outwards may come from the knee's axis, or from donning in a turned position, with a socket that fits.",
      "How the foot points in the air, and how under load, is compared.",
    ],
    cautions: ["A belt that stops turning may pull the brim into the groin."],
    stopWhen: "twisted, blistered skin, or a knee that gives way because its axis is turned.",
  },
  {
    id: "lower-hip-motion",
    kind: "loss-of-motion",
    levels: ["knee disarticulation", "transfemoral"],
    place: "hip",
    finding: "Hip motion is lost to the brim, or short from a contracture",
    adjustments: [
      {
        kind: "trim",
        what: "A lower front edge is considered where it stops bending, a thinner rear edge where it stops stretching.",
      },
      { kind: "flare", what: "A front edge that turns away from the abdomen is considered." },
      {
        kind: "alignment",
        what: "Flexion of the socket equal to the contracture, and somewhat more, is considered, so that a step back is left.",
      },
    ],
    weigh: ["Extension without the socket is measured lying, with the other thigh held, for the lower back imitates a hip."],
    cautions: ["A contracture that is only accommodated may grow; therapy is thought of together with the socket."],
    stopWhen: "a hip that loses motion from visit to visit, hurts at night or in the groin.",
  },
  {
    id: "lower-iliac-crest",
    kind: "pressure",
    alsoFor: [...pressedThere, "bony-relief"],
    place: "iliac crest",
    finding: "The hold above the iliac crest hurts",
    adjustments: [
      { kind: "relief", what: "A relief for the crest, with the grip in the waist above it, is considered." },
      { kind: "closure", what: "A closure that the wearer can ease while sitting is considered." },
      { kind: "flare", what: "A softer upper edge against the waist is considered." },
    ],
    weigh: ["The waist changes with meals, with the time of the month and with weight; the hold is judged on more than one day."],
    cautions: ["What holds by a narrow waist presses on the abdomen: a stoma, a pregnancy or a hernia is asked about first."],
    stopWhen: "pain in the abdomen, a sore over the crest, or trouble with bladder or bowel that came with the socket.",
  },
  {
    id: "lower-iliac-spine",
    kind: "pressure",
    alsoFor: [...pressedThere, "sitting", "bony-relief"],
    place: "iliac spine",
    finding: "The front of the socket meets the iliac spine on bending or sitting",
    adjustments: [
      { kind: "trim", what: "A lower front edge is considered at the point." },
      { kind: "relief", what: "A relief for the spine is considered where the edge has to stay above it." },
      { kind: "flare", what: "An edge turned forwards is considered." },
    ],
    weigh: ["It is tried tying a shoe, on a low chair and in the car."],
    cautions: ["The skin nerve to the outer thigh passes close to the spine, so an edge that is only shifted may land on it."],
    stopWhen: "burning or numbness at the outer thigh that stays, or an open place on the spine.",
  },
  {
    id: "lower-hip-disarticulation-sitting",
    kind: "sitting",
    alsoFor: ["comfort-at-rest"],
    levels: ["hip disarticulation"],
    finding: "The wearer sits tilted or sore in a hip socket",
    adjustments: [
      { kind: "other", what: "A thinner base, or one that is softer, under the seat side is considered." },
      { kind: "trim", what: "Front and rear edges that let the pelvis roll are considered." },
      { kind: "alignment", what: "A hip joint set further forward and flatter is considered." },
    ],
    weigh: ["The thickness under one side tilts the pelvis, and a pad under the other side at home may be the simplest answer."],
    cautions: ["Sitting is many hours a day at this level, and skin under the seat bone is at risk without any walking."],
    stopWhen: "a place under the seat that is open, purple or does not blanch, or back pain with pain in the leg.",
  },
  {
    id: "lower-sacrum",
    kind: "deep-mark",
    alsoFor: [...pressedThere, "bony-relief"],
    place: "sacrum",
    finding: "A mark over the sacrum",
    adjustments: [
      { kind: "relief", what: "A relief over the ridge of the sacrum is considered." },
      { kind: "build-up", what: "Bearing on the muscle of the buttock on both sides is considered." },
    ],
    weigh: ["Chairs and beds press here too; hours without the socket are asked about."],
    cautions: ["Thin or elderly wearers, and those with reduced feeling, get pressure injuries here sooner than elsewhere."],
    stopWhen: "skin over the sacrum that is purple, open, or red under the finger at 20 minutes.",
  },
];

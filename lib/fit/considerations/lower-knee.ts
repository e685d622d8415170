/** Transtibial and ankle disarticulation: what lies at the knee. */
import type { ConsiderRow } from "../consider-row";
import { pressedThere } from "../consider-words";

export const considerLowerKnee: readonly ConsiderRow[] = [
  {
    id: "lower-patellar-tendon",
    kind: "pressure",
    alsoFor: pressedThere,
    place: "patellar tendon",
    finding: "Pressure at the bar over the patellar tendon",
    adjustments: [
      { kind: "relief", what: "A shallower and wider bar is considered." },
      { kind: "volume", what: "Less volume, or another sock, is considered where the limb sits too deep and hangs on the bar." },
      {
        kind: "build-up",
        what: "More bearing on the flare of the tibia and beside the crest is considered, so that the bar carries less.",
      },
    ],
    weigh: [
      "A mark on the patella itself says that the limb is too deep, one on the tubercle that it is too high.",
      "A rear wall that pushes the knee forward drives the tendon onto the bar.",
    ],
    cautions: ["A mark here is expected in a socket that is meant to bear on the tendon; how fast it fades decides."],
    stopWhen: "a tendon that is swollen or stays sore, a weak or giving knee, or broken skin at the bar.",
  },
  {
    id: "lower-patella",
    kind: "rubbing",
    alsoFor: [...pressedThere, "pinching", "trim-lines", "bony-relief"],
    levels: ["transtibial"],
    place: "patella",
    finding: "The front edge presses or rubs the patella",
    adjustments: [
      { kind: "trim", what: "A lower front edge is considered where the patella is not part of the suspension." },
      { kind: "relief", what: "Room for the patella as it travels is considered where the wall covers it." },
      { kind: "flare", what: "An edge that turns away from its lower tip is considered." },
    ],
    weigh: ["It is looked at while kneeling, sitting and climbing, for the patella moves by centimetres between them."],
    cautions: ["A hold above the patella that is loosened may end the suspension."],
    stopWhen: "a swelling in front of the knee, a locked knee, or skin over the patella that opens.",
  },
  {
    id: "lower-condyles-transtibial",
    kind: "pressure",
    alsoFor: [...pressedThere, "pinching", "bony-relief"],
    levels: ["transtibial"],
    place: "femoral condyles",
    finding: "The side walls press on the femoral condyles",
    adjustments: [
      { kind: "relief", what: "Room for the widest part of the knee is considered, with the hold kept above it." },
      { kind: "flare", what: "Side walls that spread a little more at the top are considered." },
      { kind: "trim", what: "Side walls that end lower are considered where they are not needed for hold or for a slack knee." },
    ],
    weigh: ["Suspension above the condyles is tried sitting: what holds a straight knee may pinch, or let go, on a bent one."],
    cautions: ["Side walls steady a knee whose ligaments are weak, and are not lowered for comfort alone."],
    stopWhen: "a knee that swells, or skin over a condyle that opens or turns purple.",
  },
  {
    id: "lower-popliteal-brim",
    kind: "sitting",
    alsoFor: [...pressedThere, "pinching", "trim-lines"],
    place: "back of the knee",
    finding: "The rear brim cuts into the back of the knee on sitting",
    adjustments: [
      { kind: "trim", what: "A lower rear brim is considered, tried with the knee at a right angle and beyond." },
      { kind: "flare", what: "A rear edge rolled outwards, with dips for the tendons, is considered." },
      {
        kind: "relief",
        what: "Less bulge of the rear wall just below the edge is considered where tissue is pushed up over it.",
      },
    ],
    weigh: [
      "Liner and sleeve bunch behind the knee as well, and are looked at with the socket off.",
      "Pain on sitting and pressure at the front on walking are one pair: the rear wall holds the limb onto the front.",
    ],
    cautions: [
      "A rear brim cut too low lets the limb slide back off its support in front, and sink.",
      "Artery, vein and tibial nerve run in the middle of the hollow; a build-up there can press on all three.",
    ],
    stopWhen: "a numb, cold or dark limb on sitting, a swelling behind the knee, or a painful calf.",
  },
  {
    id: "lower-hamstring-tendons",
    kind: "pressure",
    alsoFor: [...pressedThere, "pinching", "sitting", "trim-lines"],
    place: "hamstring tendons",
    finding: "The rear brim presses on the hamstring tendons",
    adjustments: [
      {
        kind: "relief",
        what: "A channel for each group of tendons, found with the knee bending against the hand, is considered.",
      },
      { kind: "trim", what: "Deeper dips in the rear edge are considered; the inner one commonly lies lower." },
      { kind: "flare", what: "An edge that is soft where tendons leave is considered." },
    ],
    weigh: ["The inner tendons reach lower on the leg than the outer one, so that a level edge is seldom right for both."],
    cautions: ["The nerve to the outer leg runs beside the outer tendon, and a channel's border may come to lie on it."],
    stopWhen: "a tendon that creaks or is swollen, or tingling along the outer side.",
  },
  {
    id: "lower-knee-motion",
    kind: "loss-of-motion",
    place: "knee",
    finding: "Knee motion is lost to the brim",
    adjustments: [
      {
        kind: "trim",
        what: "A lower rear brim for flexion, or a lower front edge where it stops a straight knee, is considered.",
      },
      { kind: "flare", what: "A rear edge rolled further out is considered." },
      { kind: "other", what: "A thinner sleeve or liner behind the knee is considered." },
    ],
    weigh: [
      "Flexion for a chair, a car, a bicycle or prayer differs by many degrees; what the wearer needs is the measure.",
      "A contracture is measured without the socket, and is met by alignment and therapy and not by trimming.",
    ],
    cautions: ["Full extension matters more for standing safely than the last degrees of flexion."],
    stopWhen: "a knee that has lost motion without the socket, is swollen, hot or locked.",
  },
];

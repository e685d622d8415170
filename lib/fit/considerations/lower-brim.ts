/** Knee disarticulation, transfemoral and hip disarticulation: what the brim meets at the pelvis. */
import type { ConsiderRow } from "../consider-row";
import { pressedThere } from "../consider-words";

export const considerLowerBrim: readonly ConsiderRow[] = [
  {
    id: "lower-ischium",
    kind: "pressure",
    alsoFor: [...pressedThere, "comfort-standing", "bony-relief"],
    place: "ischium",
    finding: "Pressure at the ischium",
    adjustments: [
      { kind: "relief", what: "A rounder, softer seat or inner wall where the bone rests is considered." },
      { kind: "volume", what: "Taking up volume is considered where the thigh has shrunk and the bone carries all." },
      {
        kind: "build-up",
        what: "More load on the muscles of the thigh, by shape and not by tightness at the brim, is considered.",
      },
    ],
    weigh: [
      "Where the bone is, in the socket, on the seat or beside it, is felt with a finger under load and after sitting down and rising.",
      "Where the bone is meant to sit on a seat, a socket too wide from front to back lets it slip inside; where it is meant to be inside, one too narrow keeps it out.",
    ],
    cautions: [
      "A bone that has slipped from where it was to be presses somewhere else tomorrow, so the position comes before the padding.",
    ],
    stopWhen: "skin at the seat that is open, purple or does not blanch, or pain that runs down the rear of the thigh.",
  },
  {
    id: "lower-pubis",
    kind: "pressure",
    alsoFor: [...pressedThere, "pinching", "bony-relief"],
    place: "pubis",
    finding: "The inner front brim presses on the pubis",
    adjustments: [
      { kind: "relief", what: "Room at the inner front corner is considered." },
      { kind: "trim", what: "A lower inner front edge is considered." },
      { kind: "volume", what: "A closer fit elsewhere is considered where a loose socket lets the pelvis sink onto the edge." },
    ],
    weigh: ["It is told apart from pressure on the ischium, further back, and on the long adductor tendon, further out."],
    cautions: ["A corner that is opened wide invites a roll of tissue."],
    stopWhen: "an open or bleeding place, trouble with passing water, or pain in the bone that stays.",
  },
  {
    id: "lower-perineum",
    kind: "pinching",
    alsoFor: [...pressedThere, "trim-lines"],
    place: "perineum",
    finding: "The inner brim pinches or rubs the perineum",
    adjustments: [
      { kind: "trim", what: "A lower inner brim is considered, once the limb is known to sit at its depth." },
      { kind: "flare", what: "A broad roll of the inner edge is considered." },
      { kind: "other", what: "A flexible inner edge in a stiffer frame is considered." },
    ],
    weigh: [
      "A limb that has sunk, or a pelvis that drops towards a gaping outer wall, brings the edge up; both are looked at first.",
      "Shame keeps wearers from naming this place, so it is asked about plainly and in private.",
    ],
    cautions: [
      "Skin here is damp, tears easily and becomes infected easily.",
      "A brim that is cut low gives way to a roll of tissue that hurts as much.",
    ],
    stopWhen: "a sore, a swelling or a boil in the fold, bleeding, or numbness of the saddle area.",
  },
  {
    id: "lower-saddle-numbness",
    kind: "numbness",
    alsoFor: ["tingling", "feeling"],
    place: "perineum",
    finding: "Numbness or tingling in the perineum",
    adjustments: [],
    weigh: [
      "Pressure of the inner brim on the nerves of the pelvic floor is one cause, and one in the back is another.",
      "Bladder, bowel and sexual function are asked about.",
    ],
    cautions: ["No adjustment is offered, because a cause in the spine does not wait for a trial of another edge."],
    stopWhen:
      "any numbness there that stays. With new trouble in passing or holding urine or stool, or weak legs, it is for the emergency services at once.",
  },
  {
    id: "lower-adductor-roll",
    kind: "brim-roll",
    alsoFor: ["pinching", "rubbing", "pain", "pressure"],
    place: "adductor area",
    finding: "A roll of tissue over the inner brim of the thigh",
    adjustments: [
      { kind: "volume", what: "More room at the inner proximal part is considered, so that all tissue goes in." },
      { kind: "trim", what: "A higher inner brim, as far as the perineum allows, is considered." },
      { kind: "flare", what: "A wider turn of the inner edge is considered for what remains outside." },
    ],
    weigh: [
      "Donning is watched: tissue is drawn in with a sleeve or cord, standing and leaning forward, before anything is cut.",
      "A roll that is there without the socket too was made by earlier ones.",
    ],
    cautions: ["A brim lowered because the roll hurts lets the roll grow."],
    stopWhen: "a roll that is sore in its fold, hard, infected or dark.",
  },
  {
    id: "lower-adductor-tendon",
    kind: "pressure",
    alsoFor: pressedThere,
    place: "adductor area",
    finding: "The long adductor tendon is pressed at the inner front corner",
    adjustments: [
      {
        kind: "relief",
        what: "A channel at the inner front corner, found with the thigh drawn inwards against the hand, is considered.",
      },
      { kind: "flare", what: "A rounder corner of the brim is considered." },
    ],
    weigh: ["A turned socket puts the channel beside the tendon; the line from channel to tendon is checked after walking."],
    cautions: ["The large vessels of the thigh lie just outwards of this tendon, so load is not moved there."],
    stopWhen: "a lump, a throbbing or a swelling in the groin, or a limb that turns cold or dark.",
  },
  {
    id: "lower-groin",
    kind: "sitting",
    alsoFor: [...pressedThere, "pinching", "trim-lines"],
    place: "groin",
    finding: "The front brim digs into the groin on sitting or bending",
    adjustments: [
      { kind: "trim", what: "A lower front brim is considered, tried on the lowest chair that is used." },
      { kind: "flare", what: "A front edge rolled forward is considered." },
      { kind: "relief", what: "Room for the fold of the abdomen just inside the edge is considered." },
    ],
    weigh: [
      "The front wall holds the ischium back in its place, so its height is weighed against what it does.",
      "A socket that rises on sitting is looked at for a rear wall that is too thick, or a hold that lets go.",
    ],
    cautions: ["Artery, vein and nerve of the thigh cross under this edge, and a firm bulge inside it presses on them."],
    stopWhen: "a cold, dark or swollen limb, a lump in the groin, or numbness at the front of the thigh.",
  },
  {
    id: "lower-thigh-skin-nerve",
    kind: "numbness",
    alsoFor: ["tingling", "feeling", "sharp-pain"],
    place: "groin",
    finding: "Numbness or burning at the front or outer thigh from the groin",
    adjustments: [],
    weigh: [
      "The skin nerve of the outer thigh passes under the ligament near the iliac spine, where brim, belt and weight of the abdomen press.",
      "Weakness of hip bending or knee stretching would point to a larger nerve.",
    ],
    cautions: [
      "No adjustment is offered while feeling is lost; a tight belt may be the cause, or may have nothing to do with it.",
    ],
    stopWhen: "numbness or burning that stays after doffing, or any weakness of the hip.",
  },
  {
    id: "lower-gluteal-brim",
    kind: "sitting",
    alsoFor: [...pressedThere, "pinching", "trim-lines"],
    place: "gluteal brim",
    finding: "The rear brim is sat on, or cuts into the buttock",
    adjustments: [
      { kind: "trim", what: "A thinner or lower rear wall is considered away from the bearing of the bone." },
      { kind: "flare", what: "A flat, wide rear edge is considered." },
      { kind: "other", what: "A flexible rear wall, with the stiff frame cut back, is considered." },
    ],
    weigh: ["A thick rear wall tilts the pelvis and rolls the thigh inwards; both are seen from behind on a hard chair."],
    cautions: ["A rear wall that is cut down lets the buttock roll over it, and may drop the ischium."],
    stopWhen: "a sore under the buttock, or pain and tingling down the rear of the thigh on sitting.",
  },
];

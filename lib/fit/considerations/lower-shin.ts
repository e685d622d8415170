/** Transtibial and ankle disarticulation: tibia and fibula. */
import type { ConsiderRow } from "../consider-row";
import { pressedThere } from "../consider-words";

export const considerLowerShin: readonly ConsiderRow[] = [
  {
    id: "lower-tibial-tubercle",
    kind: "deep-mark",
    alsoFor: [...pressedThere, "bony-relief", "not-seated"],
    place: "tibial tubercle",
    finding: "A mark on the tibial tubercle",
    adjustments: [
      {
        kind: "volume",
        what: "More room or fewer socks is considered first where the limb stands too high and meets the bar with the tubercle.",
      },
      { kind: "relief", what: "A relief for the tubercle is considered once the depth is right." },
    ],
    weigh: ["In an adolescent a sore tubercle may be a trouble of growth."],
    cautions: ["A relief cut for a limb that was not seated lies too high once it is."],
    stopWhen: "a tubercle that swells or hurts without the socket, or skin that opens there.",
  },
  {
    id: "lower-tibial-crest",
    kind: "deep-mark",
    alsoFor: [...pressedThere, "bony-relief"],
    place: "tibial crest",
    finding: "A mark along the tibial crest",
    adjustments: [
      { kind: "relief", what: "A narrow relief that follows the course of the crest is considered." },
      {
        kind: "build-up",
        what: "Contact on the muscle at its outer side and on the flat of bone at its inner side is considered.",
      },
    ],
    weigh: ["A mark beside the crest, parallel to it, says that the socket is turned and not that the relief is missing."],
    cautions: ["Skin over the shin is thin and slow to heal, above all in old age and poor circulation."],
    stopWhen: "an open, purple or non-blanching place on the shin.",
  },
  {
    id: "lower-tibia-end",
    kind: "pain",
    alsoFor: [...pressedThere, "bony-relief", "comfort-walking"],
    place: "tibia end",
    finding: "Pain or a mark at the front of the tibia's end",
    adjustments: [
      { kind: "relief", what: "A relief over the cut end, reaching down beyond it, is considered." },
      {
        kind: "build-up",
        what: "More support beside the crest and at the rear, at the level of the knee, is considered, so that the end is not the lever's end.",
      },
      { kind: "volume", what: "Taking up volume is considered where the limb has sunk and the bone stands below its relief." },
      {
        kind: "alignment",
        what: "A softer heel, or a foot set with less upward tilt, is considered where it hurts just after heel contact.",
      },
    ],
    weigh: [
      "When in the step it hurts is asked first: early points to heel and knee control, throughout to sinking or shape.",
      "Loose fit from front to back at the knee lets the end of the bone strike the front wall.",
    ],
    cautions: ["This is the place where bone lies nearest to skin and shear is greatest; a scar in front makes it worse."],
    stopWhen: "skin here that opens, turns purple or stays red, or bone that seems about to come through.",
  },
  {
    id: "lower-fibular-head",
    kind: "pressure",
    alsoFor: [...pressedThere, "bony-relief"],
    place: "fibular head",
    finding: "A mark or pressure at the fibular head",
    adjustments: [
      { kind: "relief", what: "A relief over the head and the neck below it is considered, with a soft border." },
      { kind: "build-up", what: "Bearing on the shaft of the fibula further down, with its end kept free, is considered." },
      {
        kind: "alignment",
        what: "A foot set less far outwards is considered, where marks at the upper outer and the lower inner wall come together.",
      },
    ],
    weigh: [
      "The common fibular nerve winds round the neck just below the head, so the border of a relief there presses on more than skin.",
      "A brim that is too tight across the knee marks this side and the inner flare together.",
    ],
    cautions: ["That the mark is fading is not enough: feeling on the outer side of the limb is tried as well."],
    stopWhen: "tingling or numbness along the outer side, weakness, or an open or purple place over the head.",
  },
  {
    id: "lower-fibular-nerve",
    kind: "numbness",
    alsoFor: ["tingling", "feeling", "sharp-pain", "severe-pain"],
    place: "fibular head",
    finding: "Numbness, tingling or shooting pain from the fibular head",
    adjustments: [],
    weigh: [
      "The common fibular nerve lies on bone at the neck of the fibula, and is compressed there more often than anywhere in the leg.",
      "Crossed legs, a tight sleeve or strap, and a night on the side are asked about as well as the socket.",
    ],
    cautions: ["No adjustment is offered: a wider relief may lower the pain and let the pressure on the nerve go on."],
    stopWhen: "numbness or tingling at the outer side of the limb that stays after doffing, or any weakness of muscles there.",
  },
  {
    id: "lower-fibular-nerve-passing",
    kind: "passing-numbness",
    alsoFor: ["passing-tingling"],
    place: "fibular head",
    finding: "Numbness at the outer side that went after doffing",
    adjustments: [
      {
        kind: "relief",
        what: "A relief round the neck of the fibula, open towards the rear where the nerve comes from, is considered.",
      },
      { kind: "trim", what: "An outer rear edge that stays clear of the nerve with the knee bent is considered." },
    ],
    weigh: ["Sitting long with the knee bent and walking are tried apart: the first points to the edge, the second to the wall."],
    cautions: ["After the change, feeling is tried again after an hour and not only after minutes."],
    stopWhen: "numbness that returns in spite of the change, or that is there at the next donning.",
  },
  {
    id: "lower-fibula-end",
    kind: "pressure",
    alsoFor: [...pressedThere, "bony-relief"],
    place: "fibula end",
    finding: "Pressure at the end of the fibula",
    adjustments: [
      { kind: "relief", what: "A relief at the outer distal wall is considered." },
      { kind: "build-up", what: "Contact along the shaft of the fibula above its end is considered." },
      {
        kind: "alignment",
        what: "A foot set less far inwards is considered, where outer distal and inner proximal marks come together.",
      },
    ],
    weigh: ["A fibula that moves when pressed from the side is steadied by even contact, and is not simply freed."],
    cautions: ["A fibula cut longer than the tibia bears badly, whatever the wall is like."],
    stopWhen: "a tender lump, a spot that shoots, or thin purple skin at its end.",
  },
  {
    id: "lower-medial-flare",
    kind: "deep-mark",
    alsoFor: pressedThere,
    place: "medial tibial flare",
    finding: "A strong mark on the flare at the inner side of the knee",
    adjustments: [
      { kind: "alignment", what: "A foot moved outwards is considered where the knee is thrust outwards in mid-stance." },
      { kind: "relief", what: "A softer upper border of the bearing area is considered." },
      { kind: "volume", what: "Fewer socks or more room across the knee is considered where the outer side is marked too." },
    ],
    weigh: [
      "The flare bears load well and is meant to: an even clear mark that fades is expected, a band at its upper edge is not.",
    ],
    cautions: ["Load taken off the flare is found again at the tendon, the crest or the end."],
    stopWhen: "a mark that does not blanch, or a knee that hurts inside or gives way sideways.",
  },
  {
    id: "lower-transtibial-lateral-gap",
    kind: "gapping",
    levels: ["transtibial", "ankle disarticulation"],
    finding: "The outer brim gapes in mid-stance",
    adjustments: [
      { kind: "alignment", what: "A foot moved outwards by some millimetres is considered." },
      { kind: "build-up", what: "A closer fit across the knee is considered where it gapes standing still as well." },
    ],
    weigh: [
      "A foot too far inwards tips the socket outwards: gap at the outer brim, pressure at the inner brim and the outer end.",
      "A knee with slack ligaments gapes in a straight alignment too, and a higher brim may be the answer.",
    ],
    cautions: ["A small outward thrust is common and is not abolished at the price of a gait with a wide base."],
    stopWhen: "a knee that gives way, swells or hurts inside.",
  },
];

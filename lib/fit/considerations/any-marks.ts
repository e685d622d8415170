/** Any limb: marks on the skin, by how they look. */
import type { ConsiderRow } from "../consider-row";

export const considerAnyMarks: readonly ConsiderRow[] = [
  {
    id: "any-faint-mark",
    kind: "faint-mark",
    finding: "A faint mark",
    adjustments: [],
    weigh: [
      "Faint marks of even strength all round are what total contact leaves behind, and nothing is changed for them.",
      "A faint mark alone, where no other is, is looked at again after a longer wear.",
    ],
    cautions: ["On dark skin a strong mark may look faint: firmness, warmth and tenderness are felt for as well."],
    stopWhen: "a faint mark that does not blanch, hurts, hardens or is still there hours later.",
  },
  {
    id: "any-clear-mark",
    kind: "clear-mark",
    finding: "A clear mark",
    adjustments: [
      { kind: "relief", what: "A slight relief is considered where the mark stands out from its surroundings." },
      {
        kind: "build-up",
        what: "A build-up on the other side of the section is considered where the limb leans against the mark.",
      },
    ],
    weigh: [
      "Where it lies decides: on muscle or tendon made for load it may be wanted, on bone or at an edge it is not.",
      "How fast it fades tells more than how strong it looked at doffing.",
    ],
    cautions: ["Each relief lets the limb shift a little, so a second mark may appear across from it."],
    stopWhen: "a clear mark that darkens between two looks, or does not blanch at 20 minutes.",
  },
  {
    id: "any-deep-mark",
    kind: "deep-mark",
    finding: "A deep mark",
    adjustments: [
      { kind: "relief", what: "A relief under the mark, smooth at its border, is considered before the socket is worn longer." },
      { kind: "build-up", what: "A build-up on tissue that bears load, beside the mark or across from it, is considered." },
      {
        kind: "volume",
        what: "More or fewer socks, or a change of volume, is considered where deep marks show at several levels.",
      },
    ],
    weigh: [
      "A mark with a sharp border comes from an edge or a crease, one with a soft border from a bony or tight place.",
      "The direction of load in the activity just done says which wall was pressed.",
    ],
    cautions: [
      "A deep mark under reduced feeling is taken as seriously as one that hurts.",
      "A change of this kind is proven by another wear trial, and is not carried into the definitive socket on trust.",
    ],
    stopWhen: "a deep mark that turns purple, does not blanch at 20 minutes, blisters or grows after doffing.",
  },
  {
    id: "any-firm-mark",
    kind: "firm-mark",
    finding: "A firm mark",
    adjustments: [
      { kind: "relief", what: "A relief as wide as the firm area is considered." },
      { kind: "volume", what: "More room at that level is considered where the firmness reaches round the limb." },
    ],
    weigh: [
      "Firmness means fluid or hard tissue under the skin; it is felt for with the limb warm and relaxed, and compared with the other side.",
      "Thickened skin from years of wearing feels firm too, and has been there at every look.",
    ],
    cautions: ["Where redness does not show, firmness may be the only sign of a pressure injury."],
    stopWhen: "firmness that is hot, painful, growing, or still there at the next day's look.",
  },
  {
    id: "any-painful-mark",
    kind: "painful-mark",
    finding: "A mark that hurts",
    adjustments: [
      { kind: "relief", what: "A relief is considered at the point of most pain, which may not be the middle of the mark." },
      { kind: "flare", what: "A turned-out edge is considered where the mark is a line." },
      { kind: "alignment", what: "A change of alignment is considered where the mark comes from one movement only." },
    ],
    weigh: [
      "The place is pressed lightly with the socket off: pain that is gone at once came from load, pain that stays from the tissue.",
      "A bursa, a spur, a neuroma and an inflamed hair all make a small mark that hurts much.",
    ],
    cautions: ["A soft patch over the spot thickens the wall there and may press more than before."],
    stopWhen: "a mark that goes on hurting without the socket, or hurts more on the next day.",
  },
  {
    id: "any-warm-mark",
    kind: "warm-mark",
    finding: "A warm mark",
    adjustments: [
      { kind: "relief", what: "A relief is considered where the warmth lies over bone and fades with the mark." },
      { kind: "volume", what: "Taking up slack is considered where warmth comes from rubbing." },
    ],
    weigh: [
      "Warmth is normal for minutes under a liner; it is compared with skin that was covered as well.",
      "On dark skin warmth stands in for redness and is tracked to the minute in the same way.",
    ],
    cautions: ["Warmth that was there before donning is not the socket's, and is asked about."],
    stopWhen: "warmth that spreads, stays, or comes with swelling, fever or a sore that is opening.",
  },
  {
    id: "any-late-fading",
    kind: "late-fading",
    finding: "A mark that fades late",
    adjustments: [
      { kind: "relief", what: "A relief at the place is considered before the next wear trial." },
      { kind: "volume", what: "A change of volume is considered where marks at all levels fade late." },
      { kind: "build-up", what: "More contact on neighbouring tissue that bears load is considered." },
    ],
    weigh: [
      "More than 20 minutes is late. When nobody saw it go, the last look at which it was there counts.",
      "Minutes worn and the load carried are set beside the fading time: the same socket fades later after a harder day.",
    ],
    cautions: ["Poor circulation and fragile skin make fading slow by themselves, and make it matter more."],
    stopWhen: "a mark that is there the next morning, does not blanch, or fades later after each wear.",
  },
  {
    id: "any-uneven-marks",
    kind: "uneven-marks",
    finding: "Marks are uneven round the limb or along it",
    adjustments: [
      {
        kind: "build-up",
        what: "Contact on the side without marks is considered first, where there is room between limb and wall.",
      },
      { kind: "relief", what: "A relief on the strong side is considered where contact is there all round." },
      {
        kind: "alignment",
        what: "An alignment that no longer tips the socket is considered where strong marks lie crosswise, one near the brim and one near the end.",
      },
    ],
    weigh: [
      "Crosswise marks tell of a lever, marks on one side of a shift, marks in a ring of one tight level.",
      "A socket donned with a turn leaves marks beside the places that were shaped for them.",
    ],
    cautions: ["Evenness is no aim where a place is unfit for load: a bony or scarred area stays lighter on purpose."],
    stopWhen: "one strong mark among weak ones that does not blanch at 20 minutes, or is firm and painful.",
  },
];

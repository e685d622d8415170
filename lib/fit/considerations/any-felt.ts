/** Any limb: what is felt, and pain and comfort as they are said. */
import type { ConsiderRow } from "../consider-row";

export const considerAnyFelt: readonly ConsiderRow[] = [
  {
    id: "any-pinching",
    kind: "pinching",
    finding: "The skin is pinched",
    adjustments: [
      { kind: "trim", what: "A trim line that ends clear of the fold of skin is considered." },
      { kind: "flare", what: "A wider, rounder edge is considered, so that skin slides over it and is not caught." },
      {
        kind: "volume",
        what: "More room just inside the edge is considered where the fold stands because the socket is tight there.",
      },
    ],
    weigh: [
      "At which angle of the joint the pinch begins, and between which two surfaces, is found first.",
      "Loose skin left outside on donning, or a wrinkled sock or liner, pinches in a socket that fits.",
    ],
    cautions: ["An edge that is lowered gives away holding surface: suspension and rotation are judged anew after it."],
    stopWhen: "a pinched fold that is blistered, bleeding, bruised or still numb after doffing.",
  },
  {
    id: "any-rubbing",
    kind: "rubbing",
    finding: "The socket rubs",
    adjustments: [
      {
        kind: "volume",
        what: "Taking up the volume that lets the limb move is considered before anything is done at the sore place.",
      },
      { kind: "suspension", what: "A firmer suspension is considered where the rubbing comes with every step or lift." },
      { kind: "other", what: "A smoother inner face, or another interface between skin and wall, is considered." },
    ],
    weigh: [
      "Rubbing is movement under pressure: pistoning, turning or an edge that sweeps over the skin.",
      "Sweat, a seam, a crease in the sock and residue of soap on a liner are looked for at the place.",
    ],
    cautions: ["A pad on the sore place adds pressure where the skin is weakest, above all on fragile skin."],
    stopWhen: "rubbed skin that blisters, weeps, bleeds or stays raw.",
  },
  {
    id: "any-pressure",
    kind: "pressure",
    finding: "Pressure is felt at one place",
    adjustments: [
      {
        kind: "relief",
        what: "A relief, kept as wide as the tender area and shallow at its border, is considered at the place.",
      },
      {
        kind: "build-up",
        what: "A build-up on tissue beside it that bears load well is considered, so that less load is left for the place.",
      },
      { kind: "volume", what: "A change of volume is considered where several places press at once." },
    ],
    weigh: [
      "How deep the limb sits comes first: one that sinks or stands proud meets the wall at places that were not shaped for it.",
      "Pressure at rest points to shape or volume, pressure only under load to alignment, sinking or a lever.",
    ],
    cautions: ["A relief lets a limb with swelling fill it, and load that is taken away there goes somewhere else."],
    stopWhen: "pressure with numbness, a colour that does not come back, or broken skin at the place.",
  },
  {
    id: "any-heat",
    kind: "heat",
    finding: "The limb is hot in the socket",
    adjustments: [
      {
        kind: "other",
        what: "An interface that takes up sweat or lets it escape, or a thinner or windowed outer wall, is considered.",
      },
      { kind: "volume", what: "Taking up slack is considered where the heat comes from friction." },
    ],
    weigh: [
      "Heat all over is mostly sweat and effort; heat at one spot is friction, pressure or inflammation until shown otherwise.",
      "Sweat lessens the hold of liners and suction, so displacement is measured when the limb is warm as well.",
    ],
    cautions: ["Damp skin breaks sooner, and powders or creams under a liner may change how it holds."],
    stopWhen: "heat at one place with redness, swelling, pain or fever, or a limb that is still hot long after doffing.",
  },
  {
    id: "any-slipping",
    kind: "slipping",
    alsoFor: ["suspension", "displacement"],
    finding: "The socket slips on the limb",
    adjustments: [
      { kind: "volume", what: "Taking up volume is considered where the limb has become smaller than the socket was made for." },
      { kind: "suspension", what: "Another suspension, or the same one set tighter, is considered." },
      {
        kind: "closure",
        what: "A closure that can be tightened during the day is considered where volume changes between morning and evening.",
      },
    ],
    weigh: [
      "Displacement at several stated loads tells slack, which a change of volume answers, from stretch, which the suspension answers.",
      "The limb's volume since the socket was made, the sock worn, sweat and how fully it was donned are compared first.",
    ],
    cautions: [
      "Taking up volume near the brim of a limb with poor circulation may hold back its blood.",
      "With reduced feeling a tighter suspension may do harm unnoticed.",
    ],
    stopWhen:
      "slip that has blistered the skin, or an end that swells, darkens or turns cold after the suspension was tightened.",
  },
  {
    id: "any-muscle-fatigue",
    kind: "muscle-fatigue",
    finding: "The wearer tires early",
    adjustments: [
      { kind: "suspension", what: "A suspension that spreads the weight of the prosthesis over more of the body is considered." },
      { kind: "alignment", what: "An alignment that asks less of the muscles is considered." },
      { kind: "other", what: "Less mass, or mass nearer to the body, is considered for the finished prosthesis." },
    ],
    weigh: [
      "Tiredness is expected in the first weeks and does not by itself speak against a socket.",
      "A socket that moves on the limb makes every motion cost more, so slip is looked for before weight is blamed.",
    ],
    cautions: ["A wearer who holds the prosthesis on by tensing muscles tires as well; the suspension then only seems to hold."],
    stopWhen: "tiredness with pain in the chest, breathlessness at rest, palpitations or a weakness that is new.",
  },
  {
    id: "any-other-feeling",
    kind: "other",
    finding: "Something is felt that has no name in the list",
    adjustments: [],
    weigh: [
      "The wearer's own words, the place and the moment are written down; a name often follows from them.",
      "Itching, burning and a sense that the absent part is squeezed are common and are not the same thing.",
    ],
    cautions: ["No adjustment follows from a feeling without a place, a time and a circumstance."],
    stopWhen: "a feeling that frightens the wearer, grows, or stays when the socket is off.",
  },
  {
    id: "any-passing-numbness",
    kind: "passing-numbness",
    alsoFor: ["passing-tingling"],
    finding: "Numbness or tingling that went away after doffing",
    adjustments: [
      { kind: "flare", what: "A softer turn of the edge is considered where it crosses the course of a nerve." },
      { kind: "trim", what: "An edge that ends above or below the crossing is considered." },
      { kind: "volume", what: "More room is considered where the whole section is tight." },
    ],
    weigh: [
      "The minutes until it began and until it was gone are the measure by which the next fitting is compared.",
      "The numb area seldom lies where the pressure is: the nerve is followed towards the body up to the edge or strap.",
    ],
    cautions: [
      "A relief over the numb area itself may hide a compression that goes on.",
      "Feeling is tested again after each change, with the same touch at the same places.",
    ],
    stopWhen: "numbness or tingling that comes back sooner, lasts longer than before, or does not go at all.",
  },
  {
    id: "any-pain",
    kind: "pain",
    finding: "Pain in the socket",
    adjustments: [
      { kind: "relief", what: "A relief is considered once one spot has been found that hurts under the finger as well." },
      {
        kind: "volume",
        what: "A change of volume is considered where the pain is spread out and the limb sits too deep or too high.",
      },
      { kind: "alignment", what: "A change of alignment is considered where it hurts only in one phase of a movement." },
    ],
    weigh: [
      "Pain of the limb itself, pain of the absent part and pain passed on from back, neck or joint are told apart first.",
      "A change of 2 points, or of nearly a third, is commonly taken for one that matters.",
    ],
    cautions: ["That there is no pain proves nothing where feeling is reduced; the skin is the witness then."],
    stopWhen: "pain of 7 or more out of 10, pain that stays after doffing, or pain with swelling, heat or loss of feeling.",
  },
  {
    id: "any-low-comfort",
    kind: "low-comfort",
    finding: "Comfort is rated low",
    adjustments: [
      {
        kind: "other",
        what: "An adjustment is considered only for what the wearer names when asked what would make it one point better.",
      },
    ],
    weigh: [
      "Comfort is a sum: heat, weight, noise, looks and worry count in it as well as pressure.",
      "A change of less than 2 points in one person is within the error of the score.",
    ],
    cautions: ["A rise of comfort on the day of a change is partly hope; it is asked again after hours of wearing."],
    stopWhen: "low comfort that turns out to be pain, loss of feeling or a skin that is marked and does not fade.",
  },
];

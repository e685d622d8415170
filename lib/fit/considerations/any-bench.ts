/** Any limb: what is seen and heard while the socket is worn, and what has changed since it was made. */
import type { ConsiderRow } from "../consider-row";

export const considerAnyBench: readonly ConsiderRow[] = [
  {
    id: "any-gapping",
    kind: "gapping",
    finding: "The brim gapes",
    adjustments: [
      { kind: "build-up", what: "A build-up inside the gaping wall is considered." },
      { kind: "alignment", what: "An alignment that no longer tips the socket is considered where it gapes only under load." },
      { kind: "trim", what: "A lower edge is considered where the gaping part holds nothing." },
    ],
    weigh: [
      "A gap opens across from where the socket leans, so the pressed side is looked at together with it.",
      "A gap at rest is shape or volume; a gap under load is a lever.",
    ],
    cautions: ["A gap that is padded while the lever stays raises the pressure at its other end."],
    stopWhen: "a pressed side that is numb, purple or broken.",
  },
  {
    id: "any-brim-roll",
    kind: "brim-roll",
    finding: "A roll of tissue stands over the brim",
    adjustments: [
      { kind: "volume", what: "More room at the brim is considered, so that the tissue goes inside." },
      { kind: "flare", what: "A wide flare is considered for tissue that cannot be brought inside." },
      { kind: "trim", what: "A higher edge that takes the roll in is considered." },
    ],
    weigh: [
      "How it was donned decides much: tissue that is left outside at first stays outside.",
      "A roll that grows over weeks tells of a brim that is too tight or of weight gained.",
    ],
    cautions: ["A roll is squeezed at its base, and the skin in its fold stays damp and breaks there."],
    stopWhen: "a roll with a sore or weeping fold, a hard lump in it, or skin that darkens.",
  },
  {
    id: "any-bell-clapper",
    kind: "bell-clapper",
    finding: "The bone swings in the socket like a clapper in a bell",
    adjustments: [
      { kind: "volume", what: "Taking up volume in the distal half is considered." },
      { kind: "build-up", what: "Build-ups along the shaft of the bone, on the sides to which it swings, are considered." },
      { kind: "other", what: "A stiffer interface is considered where soft material lets the bone travel." },
    ],
    weigh: [
      "The travel is seen through a clear wall, or felt by the wearer as a knock at both ends of a movement.",
      "Muscles that are not fixed at their ends, and tissue that has thinned, leave the bone free in any socket.",
    ],
    cautions: ["Build-ups that stop the swing press on bone if they reach its end."],
    stopWhen: "pain or a lump at the bone's end, or skin that thins or turns purple over it.",
  },
  {
    id: "any-air-noise",
    kind: "air-noise",
    finding: "Air is heard at the brim or the valve",
    adjustments: [
      { kind: "volume", what: "Taking up volume is considered where air is pumped in and out." },
      { kind: "suspension", what: "A seal at another level, or a look at valve and hose, is considered." },
      { kind: "closure", what: "A brim that closes more nearly is considered where it opens in one position." },
    ],
    weigh: [
      "The position in which it sounds shows where the seal opens.",
      "Hair, a fold in the liner, a hole in a sleeve and sweat break seals that were tight in the morning.",
    ],
    cautions: ["Strong suction over a gap draws fluid into the skin there."],
    stopWhen: "a sucked, swollen, blistered or dark patch where the air space is.",
  },
  {
    id: "any-piston-noise",
    kind: "piston-noise",
    finding: "A knock, click or suck is heard with each load and unload",
    adjustments: [
      { kind: "volume", what: "Less volume is considered where the limb moves up and down." },
      { kind: "suspension", what: "A suspension with less play is considered." },
      { kind: "other", what: "A look at bolts, lock and joints is considered before the socket is changed." },
    ],
    weigh: ["Displacement at two or three loads tells whether the limb moves in the socket, or a part outside it."],
    cautions: ["A noise that stops after a sock was added may stop for an hour only; the limb's volume is followed."],
    stopWhen: "a knock with pain in the bone, or a part that is loose enough to fail under load.",
  },
  {
    id: "any-too-loose",
    kind: "too-loose",
    finding: "Too loose, after the limb has lost volume",
    adjustments: [
      { kind: "volume", what: "Less volume all round is considered where the circumferences fell alike at all levels." },
      { kind: "build-up", what: "Build-ups where the limb has shrunk are considered where they did not." },
      { kind: "closure", what: "An adjustable closure is considered for a limb that still changes." },
    ],
    weigh: [
      "Whether the limb has settled is the first question: while it shrinks, socks are the cheaper answer.",
      "A loss within the day is told from a loss over weeks by measuring at the same hour.",
    ],
    cautions: [
      "Many socks round off what was shaped, and bony places lose their reliefs.",
      "A rapid loss of volume may be an illness or a change of medicine.",
    ],
    stopWhen: "a limb that loses volume quickly without a reason, or skin that has broken from slip.",
  },
  {
    id: "any-too-tight",
    kind: "too-tight",
    finding: "Too tight",
    adjustments: [
      { kind: "volume", what: "Fewer socks, then more room, is considered once swelling has been looked for." },
      { kind: "closure", what: "A closure that can be opened by the wearer is considered where the limb swells at times." },
    ],
    weigh: [
      "A limb that is tight in the morning and loose in the evening is full of fluid overnight; one that tightens in the day swells at work.",
      "Weight gained, a liner that is new, and a section made smaller than specified are told apart with the tape.",
    ],
    cautions: [
      "Making room for swelling before its cause is known lets it grow.",
      "A tight brim over a loose end is worse than tightness all along.",
    ],
    stopWhen: "tightness with swelling that is new, one-sided, hot or painful, or with a cold, numb or dark end.",
  },
  {
    id: "any-rash",
    kind: "rash",
    finding: "A rash, itching or spots where the skin is covered",
    adjustments: [
      {
        kind: "other",
        what: "Another interface material is considered, after the physician has seen a rash that follows the outline of the material.",
      },
    ],
    weigh: [
      "A rash with the outline of a liner speaks for the material, one in the folds for damp, spots at hairs for friction and closure of pores.",
      "What is new is asked: soap, liner, adhesive, cream, washing powder.",
    ],
    cautions: ["Creams tried at once may hide the pattern that would have told the cause, and may harm the liner."],
    stopWhen:
      "a rash that blisters, weeps, spreads beyond the socket or comes with fever. Swelling of the face or trouble with breathing is for the emergency services at once.",
  },
];

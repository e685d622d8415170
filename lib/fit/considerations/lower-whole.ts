/** Lower limb, whatever the level. */
import type { ConsiderRow } from "../consider-row";

export const considerLowerWhole: readonly ConsiderRow[] = [
  {
    id: "lower-choked-end",
    kind: "colour-change",
    alsoFor: ["circulation", "swelling", "cold"],
    place: "distal end",
    finding: "The end of the limb is dark, swollen or cold below a tight section",
    adjustments: [],
    weigh: [
      "A tight brim with an empty space at the end holds back blood and fluid: the end darkens, swells, and in time turns warty or weeps.",
      "Weight gained, many socks on a shrunken end, and a distal pad that has been lost all make this picture.",
    ],
    cautions: [
      "No adjustment is offered first: a pad put under a swollen end presses on tissue that is in trouble already.",
      "When the skin has recovered, room proximally and contact at the end belong together; one without the other brings it back.",
    ],
    stopWhen: "an end that is dark, hard, weeping, warty or cold, or whose swelling is not gone the next morning.",
  },
  {
    id: "lower-calf-or-thigh-swelling",
    kind: "swelling",
    finding: "A leg is swollen, on the side of the prosthesis or the other",
    adjustments: [],
    weigh: [
      "A clot in a vein may show in either leg, with or without pain, and more so after surgery, rest in bed, a long journey or with cancer.",
    ],
    cautions: ["No adjustment is offered, nor is the limb massaged or wrapped, until the physician has seen it."],
    stopWhen:
      "swelling of one leg, warmth, a heavy or painful calf or thigh. With breathlessness, pain in the chest or coughing of blood it is for the emergency services at once.",
  },
  {
    id: "lower-end-contact-lost",
    kind: "end-contact",
    alsoFor: ["total-contact"],
    finding: "Total contact is lost at the end",
    adjustments: [
      { kind: "build-up", what: "An end pad shaped to the limb under load is considered." },
      {
        kind: "volume",
        what: "More room proximally, or fewer socks, is considered where the limb does not come down to the end.",
      },
      { kind: "suspension", what: "A suspension with less stretch is considered where contact is lost in swing only." },
    ],
    weigh: [
      "Circumferences are compared with the socket level by level: a limb that shrank at the end only leaves a gap there.",
      "Contact in swing, in standing and on sitting are three questions.",
    ],
    cautions: ["An end pad that is too high lifts the limb and takes the bony places out of their reliefs."],
    stopWhen: "an end that is swollen, purple or dark, warty or weeping.",
  },
  {
    id: "lower-too-deep",
    kind: "too-deep",
    alsoFor: ["comfort-standing"],
    finding: "The limb sinks into the socket in the course of the day",
    adjustments: [
      { kind: "volume", what: "A sock more, taken along and added when it is felt, is considered for loss within the day." },
      {
        kind: "build-up",
        what: "Pads on the areas that bear load are considered where loss is lasting and not the same all round.",
      },
      { kind: "closure", what: "A wall that can be tightened is considered for a limb that changes much." },
    ],
    weigh: [
      "Hips that drop on that side, a loud step, and pressure at the end with loose sides belong together.",
      "Socks needed by noon and by evening are counted for a week.",
    ],
    cautions: ["With poor circulation or reduced feeling, what is taken up at the brim is kept to the least that holds."],
    stopWhen: "an end that is bruised, open or numb, or a limb that shrinks or swells quickly without a reason.",
  },
  {
    id: "lower-piston",
    kind: "displacement",
    alsoFor: ["slipping", "suspension", "piston-noise"],
    finding: "The socket drops in swing and is pushed up again in stance",
    adjustments: [
      { kind: "suspension", what: "A second hold, a shorter tether or a better seal is considered." },
      { kind: "volume", what: "Taking up volume is considered, above all where slack shows at the smallest load." },
      { kind: "closure", what: "A closure that grips above a wider part of the limb is considered." },
    ],
    weigh: [
      "Travel is marked on the skin or liner at the brim, loaded and hanging, and set beside the value under load.",
      "A toe that catches in swing may be a drop of the socket and not a long prosthesis.",
    ],
    cautions: ["A hold at the very end pulls on tissue there with every step; redness round the end is looked for."],
    stopWhen: "a stretched, sore or bleeding end, or a prosthesis that has come off and caused a fall.",
  },
  {
    id: "lower-air-noise",
    kind: "air-noise",
    finding: "Air is heard in stance, or on sitting down",
    adjustments: [
      { kind: "volume", what: "Taking up volume is considered where the limb pumps." },
      {
        kind: "suspension",
        what: "A look at valve, seal, sleeve and hose, one by one, is considered before the socket is changed.",
      },
      {
        kind: "closure",
        what: "An edge that follows the thigh more nearly on bending is considered where air enters on sitting.",
      },
    ],
    weigh: ["When it sounds tells: at heel contact air leaves, in swing it enters, on sitting the brim opens."],
    cautions: ["Noise embarrasses, and wearers walk carefully to avoid it; a trial with such steps proves little."],
    stopWhen: "skin sucked into a space, dark, blistered or with fluid under it.",
  },
  {
    id: "lower-donning-standing",
    kind: "donning",
    finding: "Donning does not succeed standing or sitting at home",
    adjustments: [
      { kind: "other", what: "A donning sleeve, a lubricant suited to the liner, or a stable seat with a handle is considered." },
      { kind: "suspension", what: "A hold that needs less strength in the hands is considered." },
      {
        kind: "volume",
        what: "A little more room at the narrowest level is considered where the limb stays short of its end every time.",
      },
    ],
    weigh: ["Balance on one leg, sight, and hands with arthritis or after a stroke decide which hold is possible at all."],
    cautions: ["A limb pushed in by standing on it hard may seem seated while tissue is folded at the end."],
    stopWhen: "a limb that no longer goes in after swelling, or a fall while donning.",
  },
  {
    id: "lower-too-long",
    kind: "too-long",
    alsoFor: ["length"],
    finding: "The prosthesis is too long",
    adjustments: [
      { kind: "length", what: "A shorter build outside the socket is considered, after depth in the socket is confirmed." },
      {
        kind: "alignment",
        what: "A knee set to bend more easily, or a foot less pointed down, is considered where it only acts long in swing.",
      },
    ],
    weigh: [
      "Iliac crests are compared standing with even weight, with blocks of known thickness.",
      "Rising on the sound toes, swinging the leg out and hitching the hip are signs of length, and of a stiff knee or slipping as well.",
    ],
    cautions: ["A limb that is not seated makes it long: what is cut off then is missing later."],
    stopWhen: "a fall from a caught toe, or pain in the back or the other hip that does not settle.",
  },
  {
    id: "lower-too-short",
    kind: "too-short",
    alsoFor: ["length"],
    finding: "The prosthesis is too short",
    adjustments: [
      { kind: "length", what: "A longer build is considered, in small steps and with the shoe that is worn." },
      {
        kind: "other",
        what: "A sole of known thickness under the shoe of the prosthesis is considered as a trial before parts are changed.",
      },
    ],
    weigh: [
      "A drop of the pelvis on that side, and a knee held bent on the other, are looked for from behind and from the side.",
      "Some wearers with a locked or stiff knee clear the ground better with a little less length, and it is left so on purpose.",
    ],
    cautions: ["A limb that has sunk makes a right length short; length added then is too much once volume is put right."],
    stopWhen: "new back pain, or pain in hip or knee of the other leg that stays.",
  },
  {
    id: "lower-standing",
    kind: "comfort-standing",
    finding: "Uncomfortable when standing",
    adjustments: [
      { kind: "volume", what: "A change of volume is considered where discomfort begins as soon as weight is on." },
      {
        kind: "alignment",
        what: "A shift of the foot under the socket is considered where the wearer has to hold the balance with muscle.",
      },
      { kind: "length", what: "A correction of length is considered where hips are not level." },
    ],
    weigh: ["Weight on each side is read from two scales, with eyes ahead; a limb that is spared is not yet comfortable."],
    cautions: ["Standing still is harder on skin than walking, for nothing is let go in between."],
    stopWhen: "throbbing, numbness, a dark limb, faintness, or pain of 7 or more out of 10.",
  },
  {
    id: "lower-walking",
    kind: "comfort-walking",
    finding: "Uncomfortable when walking",
    adjustments: [
      { kind: "alignment", what: "A single change of alignment at a time is considered, walked on before the next." },
      { kind: "suspension", what: "Less travel between swing and stance is considered." },
      { kind: "relief", what: "A relief is considered at the place and in the phase that the wearer names twice alike." },
    ],
    weigh: [
      "Phase of the step, place on the limb, ground and speed are written beside the complaint.",
      "A shoe with another heel changes alignment; it is the first question and the cheapest answer.",
    ],
    cautions: ["A socket that is changed and realigned on one day leaves nobody knowing which of the two helped."],
    stopWhen: "pain of 7 or more out of 10, a limp that worsens, a fall, or pain in the bone at each step.",
  },
  {
    id: "lower-muscle-fatigue",
    kind: "muscle-fatigue",
    finding: "Walking tires early",
    adjustments: [
      {
        kind: "alignment",
        what: "An alignment that makes standing need less muscle, and the step roll over more easily, is considered.",
      },
      { kind: "suspension", what: "A firmer hold is considered where the leg feels heavy in swing." },
      { kind: "length", what: "A correction of length is considered where the hip hitches or the sound heel rises." },
    ],
    weigh: [
      "Walking with a prosthesis costs more by itself, the more the higher the level; what the heart allows is asked before what the socket asks.",
    ],
    cautions: ["A heavy feeling is often movement in the socket and not mass."],
    stopWhen: "pain in the chest, breathlessness at rest, or cramp in the other calf that comes with each walk.",
  },
  {
    id: "lower-too-loose",
    kind: "too-loose",
    finding: "Too loose, and worn with many socks",
    adjustments: [
      { kind: "volume", what: "A smaller socket is considered once several socks are needed from the morning on." },
      { kind: "build-up", what: "Pads on areas that bear load are considered meanwhile." },
    ],
    weigh: [
      "A count of socks is a poor measure of volume, since they pack; circumferences over the common span are better.",
      "New wearers lose volume for months, and a check socket made early is known to be too large later.",
    ],
    cautions: ["Pads glued behind the knee or along the shin change the depth of the limb and the place of every relief."],
    stopWhen: "broken or blistered skin from movement, or weight loss that nobody can explain.",
  },
];

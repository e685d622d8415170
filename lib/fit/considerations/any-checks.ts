/** Any limb: checks of a fitting that were not met, and motion that is lost. */
import type { ConsiderRow } from "../consider-row";

export const considerAnyChecks: readonly ConsiderRow[] = [
  {
    id: "any-donning",
    kind: "donning",
    finding: "The socket is hard to don",
    adjustments: [
      { kind: "closure", what: "An opening that closes once the limb is in is considered." },
      {
        kind: "volume",
        what: "A little more room at the narrowest section is considered where the limb is held there on its way in.",
      },
      { kind: "other", what: "A donning sleeve, a cord through the end or a smoother inner face is considered." },
    ],
    weigh: [
      "Where the limb is held up is found first: at the brim, at a narrow section, or by air that cannot leave.",
      "What the wearer's hands, sight, balance and strength allow at home counts, and not what can be done in the clinic.",
    ],
    cautions: ["A socket that is made easy to don may come off as easily; suspension is measured again."],
    stopWhen: "a limb that went in yesterday and does not today, with swelling, pain or heat.",
  },
  {
    id: "any-not-seated",
    kind: "not-seated",
    alsoFor: ["seating"],
    finding: "The limb is not fully seated",
    adjustments: [
      { kind: "volume", what: "More room, or fewer socks, is considered where the limb stands off its end." },
      { kind: "relief", what: "A relief at the section that holds the limb up is considered." },
    ],
    weigh: [
      "A mark on the sock at the brim, or a look through a clear wall, shows how many millimetres are missing.",
      "A limb that swelled overnight, a liner put on with air in it and too many socks all leave it high.",
    ],
    cautions: [
      "Standing on a limb that is not seated loads bony points beside their reliefs and leaves the end without contact.",
    ],
    stopWhen: "a limb that cannot be seated because it is swollen, or an end that darkens in the empty space.",
  },
  {
    id: "any-too-deep",
    kind: "too-deep",
    finding: "The limb sits too deep",
    adjustments: [
      { kind: "volume", what: "Less volume, by socks for the day or in the wall for good, is considered." },
      {
        kind: "build-up",
        what: "Build-ups on tissue that bears load, higher on the limb, are considered so that the end is relieved.",
      },
    ],
    weigh: [
      "Bony points that press below their reliefs, an end that presses and a brim that stands too high go together.",
      "Loss of volume since the measurement is calculated before the socket is blamed.",
    ],
    cautions: [
      "Pads that lift the limb act at their own place only: a limb may be lifted and tight and still be loose elsewhere.",
    ],
    stopWhen: "an end that is bruised, purple or open from carrying the load.",
  },
  {
    id: "any-end-contact",
    kind: "end-contact",
    finding: "Contact at the end is not as planned",
    adjustments: [
      { kind: "build-up", what: "An end pad that meets the limb without lifting it is considered where contact is missing." },
      {
        kind: "volume",
        what: "More room proximally is considered where the limb does not reach the end, less where it rests on it.",
      },
      { kind: "length", what: "A change of depth is considered where volume is right and the end is not." },
    ],
    weigh: ["Contact is judged under load: an end that touches while sitting may hang free or carry when loaded."],
    cautions: ["An empty space at the end together with a tight section above it makes the end swell."],
    stopWhen: "an end that is swollen, dark, warty, weeping or hard.",
  },
  {
    id: "any-total-contact",
    kind: "total-contact",
    finding: "Contact is lost somewhere",
    adjustments: [
      { kind: "build-up", what: "A build-up at the gap is considered where the rest of the socket fits." },
      { kind: "volume", what: "Less volume is considered where gaps are found at several levels." },
      { kind: "relief", what: "A relief across from the gap is considered where the limb is pushed away from it." },
    ],
    weigh: [
      "Gaps are looked for under load and in motion, through a clear wall or with soft clay.",
      "Where contact is lost at the end only, tightness higher up is thought of first.",
    ],
    cautions: ["A gap that is filled while the limb is at its smallest is a pressure point when it is at its largest."],
    stopWhen: "skin in the gap that is swollen, dark, sucked full or sore.",
  },
  {
    id: "any-rotation",
    kind: "rotation",
    finding: "The socket turns on the limb",
    adjustments: [
      { kind: "build-up", what: "Build-ups that give the section a shape which is not round are considered." },
      { kind: "volume", what: "Taking up volume is considered where the socket turns both ways." },
      { kind: "suspension", what: "A suspension that holds against turning as well as against pulling is considered." },
    ],
    weigh: [
      "Turning in one direction only points to how it was donned, to alignment or to a strap that pulls to one side.",
      "Soft tissue turns round the bone by some degrees in any socket; bone and wall are compared, and not skin and wall.",
    ],
    cautions: ["A shape that grips against turning presses along narrow strips, which is hard on fragile skin."],
    stopWhen: "skin that is twisted into blisters or lines, or an artificial joint that turns so far that a fall is likely.",
  },
  {
    id: "any-trim-lines",
    kind: "trim-lines",
    finding: "A trim line is not right",
    adjustments: [
      { kind: "trim", what: "A trim line moved by a few millimetres at a time is considered." },
      { kind: "flare", what: "A wider turn of the edge is considered before height is given up." },
    ],
    weigh: [
      "Each edge is judged in the position that brings it nearest to the body: sitting, bending, reaching.",
      "The highest edge that does not hinder is compared with the lowest that still holds.",
    ],
    cautions: ["What is cut off a check socket cannot be tried again; a line drawn and worn for a while comes first."],
    stopWhen: "an edge that has cut the skin or pressed it purple.",
  },
  {
    id: "any-sitting",
    kind: "sitting",
    finding: "Sitting is troublesome with the prosthesis on",
    adjustments: [
      { kind: "trim", what: "A lower edge is considered at the part that touches seat, trunk or bent joint." },
      { kind: "flare", what: "A flatter, wider edge is considered where the body rests on it." },
    ],
    weigh: [
      "The wearer's own chairs, car and toilet are asked about; a clinic's chair is only one height.",
      "An edge between body and chair is felt through clothing, so it is tried in everyday clothes.",
    ],
    cautions: ["Shifting the socket each time on sitting down undoes a good donning, and the skin shows it later."],
    stopWhen: "numbness, a cold or dark limb, or a sore that comes with sitting.",
  },
  {
    id: "any-bony-relief",
    kind: "bony-relief",
    finding: "A bony place is not free of pressure",
    adjustments: [
      { kind: "relief", what: "A relief at the bony place is considered, with its border far enough away." },
      { kind: "build-up", what: "More load on firm soft tissue nearby is considered." },
      { kind: "volume", what: "A correction of depth by volume is considered where several bony places press." },
    ],
    weigh: ["The place is marked on the skin, transferred to the wall under load, and only then compared with the relief."],
    cautions: ["A thin limb has no soft tissue to take over the load, and there a relief only moves the trouble."],
    stopWhen: "thin skin over bone that is broken, purple or does not blanch at 20 minutes.",
  },
  {
    id: "any-length",
    kind: "length",
    alsoFor: ["too-long", "too-short"],
    finding: "The length is not right",
    adjustments: [
      { kind: "length", what: "A change of length outside the socket is considered, once the limb sits at its planned depth." },
      { kind: "alignment", what: "An alignment that changes the reach without a change of length is considered." },
    ],
    weigh: [
      "A limb that sits too deep or too high makes a right length look wrong.",
      "Habit, posture and the other limb's joints are looked at before millimetres are counted.",
    ],
    cautions: ["A growing child outgrows a length within months; a correction is noted with its date."],
    stopWhen: "new pain in back, hip, shoulder or neck that stays after the length was changed.",
  },
  {
    id: "any-comfort-at-rest",
    kind: "comfort-at-rest",
    finding: "Not comfortable at rest",
    adjustments: [
      { kind: "volume", what: "More room is considered where the limb feels held all round while nothing is asked of it." },
      { kind: "suspension", what: "A suspension that pulls less at rest is considered." },
    ],
    weigh: ["At rest only shape, volume and suspension press; load and lever are out of it."],
    cautions: ["Discomfort at rest that grows by the minute may be a limb that swells without room."],
    stopWhen: "discomfort at rest with throbbing, tingling, coldness or a change of colour.",
  },
  {
    id: "any-comfort-under-load",
    kind: "comfort-under-load",
    alsoFor: ["comfort-standing", "comfort-walking"],
    finding: "Not comfortable under load",
    adjustments: [
      { kind: "build-up", what: "More support on tissue that bears load is considered at the wall which the load presses on." },
      { kind: "relief", what: "A relief is considered at the two ends of the lever, where bone meets wall." },
      { kind: "alignment", what: "An alignment that shortens the lever is considered." },
    ],
    weigh: [
      "The load, its distance and its direction are written beside the complaint; without them two fittings cannot be compared.",
    ],
    cautions: ["Comfort that improves because the wearer loads less is no improvement."],
    stopWhen: "pain of 7 or more out of 10, or load that the wearer no longer dares to take.",
  },
  {
    id: "any-loss-of-motion",
    kind: "loss-of-motion",
    finding: "A joint moves less with the socket than without",
    adjustments: [
      { kind: "trim", what: "A lower edge is considered on the side towards which the joint bends." },
      { kind: "flare", what: "An edge that makes room for bunching tissue is considered." },
    ],
    weigh: [
      "Two readings differ by some degrees by themselves, so a small loss is measured again.",
      "Whether edge, tissue, liner, strap or pain ends the motion is asked and felt at the end of the range.",
    ],
    cautions: ["Motion is bought with holding surface, so suspension is measured after each cut."],
    stopWhen: "a joint that is locked, swollen, hot or has lost motion without the socket too.",
  },
];

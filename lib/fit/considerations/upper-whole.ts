/** Upper limb, whatever the level. */
import type { ConsiderRow } from "../consider-row";

export const considerUpperWhole: readonly ConsiderRow[] = [
  {
    id: "upper-harness-displacement",
    kind: "displacement",
    alsoFor: ["slipping", "suspension"],
    levels: ["wrist disarticulation", "transradial", "elbow disarticulation", "transhumeral"],
    finding: "The socket is pulled down on the limb under load",
    adjustments: [
      {
        kind: "suspension",
        what: "A harness that carries more on the shoulder, or is set shorter, is considered; so is more hold above the elbow where the socket suspends itself.",
      },
      { kind: "volume", what: "Taking up volume is considered where displacement is large with little load." },
      { kind: "closure", what: "A closure above the widest part of the limb is considered." },
    ],
    weigh: [
      "A slight drop on lifting is accepted; more than that is read at the rule's load from several pulls.",
      "A harness stretches and a wet liner slides, so both are pulled again at the end of the trial.",
    ],
    cautions: ["A harness set shorter moves the load to the other axilla, and may work the terminal device unasked."],
    stopWhen: "tingling in either arm after a tighter setting, or a limb that is dark or cold below the hold.",
  },
  {
    id: "upper-donning-one-hand",
    kind: "donning",
    finding: "Donning with one hand does not succeed",
    adjustments: [
      { kind: "closure", what: "A closure that one hand can work, with a ring or a long tab, is considered." },
      { kind: "suspension", what: "A harness that goes over the head already buckled is considered." },
      { kind: "other", what: "A pull-in sleeve, or a stand on the table that holds the socket, is considered." },
    ],
    weigh: ["The wearer's own hand, shoulder and sight are what there is; help at home is counted only where it comes each day."],
    cautions: ["A harness learned in the wrong order twists and presses; it is watched on video as well as in the clinic."],
    stopWhen: "a sound shoulder or hand that becomes painful from donning.",
  },
  {
    id: "upper-muscle-fatigue",
    kind: "muscle-fatigue",
    finding: "Arm, shoulder or neck tire under the prosthesis",
    adjustments: [
      { kind: "other", what: "Less mass at the far end, where it weighs most, is considered for the finished prosthesis." },
      { kind: "suspension", what: "A harness or hold that shares the weight with the trunk is considered." },
      { kind: "alignment", what: "Built-in flexion, or an arm that hangs nearer to the body, is considered." },
    ],
    weigh: ["Mass times distance from the joint is what the arm holds, so the place of the mass is looked at with its amount."],
    cautions: ["A shoulder raised to keep the prosthesis on tires the neck first; a look from behind shows it."],
    stopWhen: "pain from neck to arm with tingling, or a shoulder that hurts at night or loses motion.",
  },
  {
    id: "upper-under-load",
    kind: "comfort-under-load",
    finding: "Uncomfortable with a load in the hand",
    adjustments: [
      { kind: "build-up", what: "Longer bearing areas where the two ends of the lever press are considered." },
      { kind: "suspension", what: "More share of the load on the harness or above the elbow is considered." },
      { kind: "volume", what: "A closer fit near the brim is considered where the socket tips." },
    ],
    weigh: ["Hanging load pulls, held-out load tips: which of them is uncomfortable decides between suspension and wall."],
    cautions: ["A trial load that is lighter or nearer than the finished device makes the socket look better than it is."],
    stopWhen: "pain of 7 or more out of 10, or a load that leaves the limb numb, cold or dark.",
  },
  {
    id: "upper-length",
    kind: "length",
    alsoFor: ["too-long", "too-short"],
    finding: "The arm is too long or too short",
    adjustments: [
      {
        kind: "length",
        what: "A shorter build between socket and terminal device is considered for a long limb; a longer one where reach is missing.",
      },
      {
        kind: "alignment",
        what: "Some built-in flexion or a turned-in forearm is considered, which brings the terminal device to the midline.",
      },
    ],
    weigh: [
      "Elbow height and the tip of the terminal device are compared with the sound side, standing and at the table; with two limb differences, reach to mouth and body care decides.",
      "At wrist and elbow disarticulation some extra length is the price of the natural end.",
    ],
    cautions: ["Length added at the end adds to the moment as well, and the trial load is worked out anew."],
    stopWhen: "a shoulder that is held raised or dropped and aches without the prosthesis as well.",
  },
  {
    id: "upper-self-suspension-sweat",
    kind: "heat",
    levels: ["transradial", "transhumeral"],
    finding: "Heat and sweat loosen the hold of an arm socket",
    adjustments: [
      {
        kind: "other",
        what: "A thin sock that takes up sweat under the wall, or a vented part where no hold is needed, is considered.",
      },
      { kind: "suspension", what: "A light strap as a second hold is considered for hot or heavy work." },
    ],
    weigh: ["Displacement is measured cool and dry, and again after effort; the second value is the one that counts at work."],
    cautions: ["Skin electrodes read differently on wet skin, and may act unasked."],
    stopWhen: "a rash, a blister or skin that is white and soft from damp and does not dry.",
  },
];

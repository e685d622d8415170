/** Transradial and wrist disarticulation: what lies at the elbow, and what lies along the forearm. */
import type { ConsiderRow } from "../consider-row";
import { pressedThere } from "../consider-words";

export const considerUpperElbow: readonly ConsiderRow[] = [
  {
    id: "upper-elbow-fold-pinch",
    kind: "pinching",
    alsoFor: pressedThere,
    place: "fold of the elbow",
    finding: "Pinching in the fold of the elbow",
    adjustments: [
      { kind: "trim", what: "A lower front brim, hollowed for the biceps tendon, is considered." },
      { kind: "flare", what: "A rolled front edge is considered, so that bunching tissue slides over it." },
      {
        kind: "relief",
        what: "Room just inside the front brim is considered where tissue is trapped there and the height is needed.",
      },
    ],
    weigh: [
      "The angle at which it pinches is compared with the flexion that the wearer needs to reach mouth and buttons.",
      "A sleeve, liner or sock that bunches in the fold pinches as an edge does.",
    ],
    cautions: [
      "In a self-suspending socket the front brim works against the olecranon: a lower front may let the forearm drop out when the elbow straightens under load.",
    ],
    stopWhen:
      "skin in the fold that is cut or bruised, or tingling towards the end of the limb that begins when the elbow bends.",
  },
  {
    id: "upper-biceps-tendon",
    kind: "pressure",
    alsoFor: pressedThere,
    place: "biceps tendon",
    finding: "The biceps tendon is pressed by the front brim",
    adjustments: [
      { kind: "relief", what: "A channel for the tendon, found with the elbow bending against resistance, is considered." },
      { kind: "trim", what: "A notch in the front brim at the tendon is considered." },
    ],
    weigh: ["The pull of the tendon is greatest when lifting with a bent elbow, and that is the position to judge."],
    cautions: [
      "Artery and median nerve run just to the inner side of the tendon, so what is built up beside the channel presses on them.",
    ],
    stopWhen: "a cold or pale end, tingling, or a sudden loss of strength in bending the elbow.",
  },
  {
    id: "upper-elbow-flexion-limited",
    kind: "loss-of-motion",
    place: "elbow",
    finding: "Elbow flexion is limited by the front brim",
    adjustments: [
      { kind: "trim", what: "A lower front brim is considered, in steps, with the angle measured after each." },
      { kind: "flare", what: "A wider front edge for the tissue that bunches before it is considered." },
      {
        kind: "alignment",
        what: "Some flexion built in between socket and forearm is considered for a short limb that cannot be freed further.",
      },
    ],
    weigh: [
      "Whether brim meets upper arm, tissue fills the fold or a strap goes tight is seen from the side at the end of the range.",
      "A self-suspending socket costs some flexion by its nature; how much is left is judged by what the wearer reaches.",
    ],
    cautions: ["Built-in flexion moves the range and does not widen it: what is won at the mouth is lost on the table."],
    stopWhen: "an elbow that has lost motion without the socket too, locks, or is swollen.",
  },
  {
    id: "upper-elbow-extension-limited",
    kind: "loss-of-motion",
    place: "elbow",
    finding: "Elbow extension is held back by the rear brim",
    adjustments: [
      {
        kind: "trim",
        what: "A lower rear edge is considered where it meets the back of the upper arm before the elbow is straight.",
      },
      { kind: "flare", what: "A turned-out rear edge above the olecranon is considered." },
    ],
    weigh: ["A few degrees short of straight is commonly accepted where the hold above the olecranon carries the prosthesis."],
    cautions: ["Wearing an elbow bent for months may leave it stiff; extension without the socket is measured at each visit."],
    stopWhen: "an elbow that no longer straightens without the socket, or pain inside the joint.",
  },
  {
    id: "upper-olecranon",
    kind: "deep-mark",
    alsoFor: [...pressedThere, "bony-relief"],
    place: "olecranon",
    finding: "A mark or pressure at the olecranon",
    adjustments: [
      { kind: "relief", what: "A relief for the tip of the olecranon is considered." },
      { kind: "build-up", what: "More contact on the triceps above the tip, where the hold belongs, is considered." },
    ],
    weigh: [
      "The olecranon belongs to the ulna and stays where it is in the socket; in flexion the skin tightens over it, so that a bent elbow shows the pressure.",
      "Leaning on tables and chair arms adds pressure that no trial in the clinic shows.",
    ],
    cautions: ["A soft swelling over the tip may be a bursa; a relief gives it room and does not settle it."],
    stopWhen: "a swelling over the tip that is hot, red or growing, or skin that is open over it.",
  },
  {
    id: "upper-epicondyles-hold",
    kind: "pressure",
    alsoFor: [...pressedThere, "bony-relief"],
    levels: ["transradial", "wrist disarticulation"],
    place: "epicondyles",
    finding: "The epicondyles are pressed by the hold above them",
    adjustments: [
      { kind: "relief", what: "Reliefs for the tips themselves, with the grip kept above them, are considered." },
      { kind: "flare", what: "Wings of the brim with softer edges are considered." },
      { kind: "volume", what: "A somewhat wider section across the elbow is considered where both sides are marked." },
    ],
    weigh: [
      "The hold is wanted above the epicondyles and not on them, so the height of the mark decides between relief and width.",
      "Width across the elbow changes between straight and bent, and pressure is judged in both.",
    ],
    cautions: ["The ulnar nerve runs behind the inner one; what is shifted backwards there comes to lie on it."],
    stopWhen: "tingling in the little-finger side of the forearm, or skin over a tip that is purple or open.",
  },
  {
    id: "upper-ulnar-nerve",
    kind: "tingling",
    alsoFor: ["numbness", "sharp-pain", "severe-pain", "feeling"],
    place: "ulnar groove",
    finding: "Numbness, tingling or shooting pain from the inner side of the elbow",
    adjustments: [],
    weigh: [
      "The ulnar nerve lies on bone behind the inner epicondyle; brim, strap and hinge are checked against its course with the elbow bent.",
      "Where the little-finger side of the limb is left, touch and strength there are written down.",
    ],
    cautions: [
      "No adjustment is offered until the feeling is back: a relief that ends the shock may leave the nerve stretched or squeezed.",
    ],
    stopWhen: "tingling or numbness on the little-finger side that stays after doffing, or weakness of what hand there is.",
  },
  {
    id: "upper-ulnar-nerve-passing",
    kind: "passing-tingling",
    alsoFor: ["passing-numbness", "pressure", "pain"],
    place: "ulnar groove",
    finding: "Tingling from the inner side of the elbow that went after doffing",
    adjustments: [
      { kind: "relief", what: "A relief that follows the nerve behind the inner epicondyle, above and below it, is considered." },
      { kind: "trim", what: "A rear inner edge that stays clear of the groove in full flexion is considered." },
    ],
    weigh: [
      "Tingling that comes only with the elbow bent points to the edge or to stretch; tingling at any angle points to the wall.",
    ],
    cautions: ["Leaning the elbow on a hard surface does the same, and is asked about before the socket is changed."],
    stopWhen: "tingling that needs longer to go each time, wakes the wearer or turns into numbness.",
  },
  {
    id: "upper-ulnar-border",
    kind: "deep-mark",
    alsoFor: [...pressedThere, "bony-relief"],
    place: "ulnar border",
    finding: "A mark along the border of the ulna",
    adjustments: [
      { kind: "relief", what: "A long, shallow relief along the bare edge of the bone is considered." },
      { kind: "build-up", what: "Contact on the muscle on both sides of the edge is considered." },
    ],
    weigh: [
      "The edge is the underside of a forearm that rests on a table, so the mark may come from resting and not from lifting.",
    ],
    cautions: ["A relief along the whole edge lets the forearm turn more easily."],
    stopWhen: "skin along the edge that is open, purple or does not blanch at 20 minutes.",
  },
  {
    id: "upper-forearm-bone-ends",
    kind: "pressure",
    alsoFor: [...pressedThere, "comfort-under-load"],
    place: "forearm bone ends",
    finding: "Distal pressure under load, on the upper side of a level forearm",
    adjustments: [
      { kind: "build-up", what: "A longer bearing area along the upper side, ending short of the bone ends, is considered." },
      { kind: "relief", what: "A relief over the bone ends themselves is considered." },
      { kind: "volume", what: "Taking up volume near the elbow is considered where the socket tips because it is loose there." },
    ],
    weigh: [
      "A load held out tips the socket: the limb bears on its upper side near the end and on its underside near the elbow, and marks are looked for at both.",
      "A short limb has a short lever, so the same load presses it more.",
    ],
    cautions: [
      "Less load in the trial hides the finding; the moment of the trial load is compared with that of the planned device.",
    ],
    stopWhen: "a bone end that can be felt right under thin or purple skin, or pain that stays when the load is put down.",
  },
  {
    id: "upper-transradial-gap",
    kind: "gapping",
    levels: ["transradial", "wrist disarticulation"],
    finding: "The brim gapes at the elbow under load",
    adjustments: [
      { kind: "build-up", what: "More contact over the triceps and above the elbow is considered." },
      { kind: "closure", what: "A strap or closure across the opening is considered." },
      { kind: "trim", what: "A rear edge that reaches higher is considered in a self-suspending socket." },
    ],
    weigh: ["The gap is read at full flexion, straight, and with the load held out, for each opens another side."],
    cautions: ["A tighter brim here comes close to artery and nerves in the fold, and to the nerve behind the inner epicondyle."],
    stopWhen: "a gap that was closed and is followed by tingling, a cold limb or a dark end.",
  },
];

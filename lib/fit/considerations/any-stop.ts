/** Any limb: findings that forbid. No adjustment stands here; each row says why. */
import type { ConsiderRow } from "../consider-row";

export const considerAnyStop: readonly ConsiderRow[] = [
  {
    id: "any-broken-skin",
    kind: "broken-skin",
    finding: "Broken or blistered skin",
    adjustments: [],
    weigh: [
      "The socket stays off until a physician, or a nurse who looks after wounds, has judged the skin.",
      "Where the skin broke, how large the place is and what lies there (an edge, a seam, a bone, a scar) is written down, because the next socket is planned from it.",
      "Rubbing from slip, pressure on one point and damp skin are the causes weighed first, once the skin has healed.",
    ],
    cautions: [
      "No adjustment is offered here: tissue swells into a relief over an open place, and a pad presses on what is healing.",
      "With reduced feeling, diabetes or poor circulation a small wound is a serious one, whether or not it hurts.",
    ],
    stopWhen:
      "skin that is open, blistered or weeping, however small the place. Pus, a bad smell, spreading redness or fever makes it urgent on the same day.",
  },
  {
    id: "any-purple-mark",
    kind: "purple-mark",
    finding: "A purple or maroon mark",
    adjustments: [],
    weigh: [
      "Purple or maroon under whole skin is taken for suspected damage of the tissue below; it may open in the days that follow.",
      "The place is compared with the wearer's own skin in good light. On dark skin the colour may differ little, and firmness, softness, warmth, coolness or pain tell more.",
      "The cause is sought afterwards: bone against the wall, a hard edge, or weight carried where none was planned.",
    ],
    cautions: [
      "No adjustment is offered, because how deep the damage reaches shows only over days.",
      "In a wearer with a bleeding risk it may be a bruise; telling the two apart is for the physician, and the socket is off meanwhile.",
    ],
    stopWhen: "any purple or maroon area under the socket, with or without pain, and whether or not the skin is whole.",
  },
  {
    id: "any-non-blanching",
    kind: "non-blanching",
    finding: "A mark that does not blanch",
    adjustments: [],
    weigh: [
      "Redness that stays red under light pressure of a finger counts as not blanching until a later look shows otherwise.",
      "Still there at 20 minutes or later, on whole skin, it is taken for a stage 1 pressure injury.",
      "On dark skin blanching may not be visible: a difference in firmness, warmth or feeling from the skin around it is weighed instead.",
    ],
    cautions: [
      "No adjustment is offered while it lasts: a place that may be injured already is not made safe by another shape of the wall.",
      "A shorter time of wearing is no answer to it either, as long as the place has not recovered.",
    ],
    stopWhen: "a mark that does not blanch 20 minutes after doffing, or that grows, hardens or hurts at any time.",
  },
  {
    id: "any-numbness",
    kind: "numbness",
    alsoFor: ["feeling"],
    finding: "Numbness, or feeling in doubt",
    adjustments: [],
    weigh: [
      "With the socket off, the numb area is drawn on the limb map and the time until feeling returns is written down.",
      "As long as nobody has written down that feeling came back, it counts as numbness that stays.",
      "Feeling that was reduced before the socket, as after nerve injury or with diabetes, is compared with what was found at the opening of the episode.",
    ],
    cautions: [
      "No adjustment is offered: a relief over a numb area may hide the compression of a nerve that runs elsewhere.",
      "Where feeling is reduced, that nothing hurts is no proof that nothing is wrong.",
    ],
    stopWhen: "numbness that stays after doffing, spreads, returns sooner each time, or comes with weakness of a movement.",
  },
  {
    id: "any-tingling",
    kind: "tingling",
    finding: "Tingling under the socket or beyond it",
    adjustments: [],
    weigh: [
      "Tingling under pressure is often the first sign of a nerve that is being pressed, before numbness and weakness.",
      "A tingling that was known before as a sensation of the absent part of the limb is told apart by asking when and where it began.",
      "Which nerve supplies the area, and which edge, strap or tight band crosses it, is worked out before anything is changed.",
    ],
    cautions: [
      "No adjustment is offered until somebody has written down that the tingling went away without the socket.",
      "Wearing on to see whether it passes may turn a short compression into a lasting one.",
    ],
    stopWhen: "tingling that has not gone soon after doffing, becomes numbness, or comes with a weak or clumsy movement.",
  },
  {
    id: "any-cold",
    kind: "cold",
    finding: "The limb or its end is cold",
    adjustments: [],
    weigh: [
      "The limb is compared with the other side, with how it was before donning, and with the warmth of the room.",
      "A cold end below a tight brim or band points to blood that is held back; so does colour that is slow to return after a press of the finger.",
      "How long warmth takes to return without the socket is written down.",
    ],
    cautions: [
      "No adjustment is offered: in poor circulation a change that takes up volume higher on the limb can cut the supply further.",
      "A liner or sock for warmth may only cover the sign.",
    ],
    stopWhen:
      "cold with pale, grey or blue skin, with pain or loss of feeling, or cold that does not pass soon after doffing. A limb that turns cold, pale and painful at once is for the emergency services.",
  },
  {
    id: "any-colour-change",
    kind: "colour-change",
    alsoFor: ["circulation"],
    finding: "The colour of the limb has changed, or its circulation is in doubt",
    adjustments: [],
    weigh: [
      "Pale or grey skin points to too little blood coming in, dusky or dark red skin to blood that cannot leave; on dark skin warmth, the time that colour takes to return after a press and the look of the limb before donning tell more.",
      "The whole edge of the socket and every strap is looked at for a tight band above the change.",
      "A limb that darkens while it hangs down without a socket, too, has a trouble of its veins that the socket did not make.",
    ],
    cautions: [
      "No adjustment is offered, since what loosens one place may tighten another above it.",
      "That the colour came back at once is good news, yet no proof that an hour of wearing would be safe.",
    ],
    stopWhen: "pale, blue, dusky or mottled skin in the socket, or colour that does not return soon after doffing.",
  },
  {
    id: "any-swelling",
    kind: "swelling",
    finding: "The limb is swollen",
    adjustments: [],
    weigh: [
      "Where it is swollen tells much: only the end, the whole limb, both limbs, or one joint.",
      "Circumferences at the usual stations are taken again and compared over the common span, with the time since doffing beside them.",
      "Time without a socket or a compressing sock, heat, a long journey, pregnancy and illness of the heart or kidneys all belong to the account.",
    ],
    cautions: [
      "No adjustment is offered before the cause is known: a larger socket gives the swelling room, and a tighter one may strangle the limb.",
      "A limb that changes from day to day is no ground for final dimensions.",
    ],
    stopWhen:
      "swelling that is sudden, on one side, hot or painful, or that has not gone by the next morning. Sudden shortness of breath or pain in the chest is for the emergency services at once.",
  },
  {
    id: "any-spreading-redness",
    kind: "spreading-redness",
    finding: "Redness that spreads, or skin that is hot and sore",
    adjustments: [],
    weigh: [
      "Redness that grows beyond where the socket pressed, heat, swelling and a wearer who feels ill point to infection and not to fit.",
      "The edge of the redness is drawn or photographed, so that the physician can see whether it moves.",
      "Single sore spots at hairs or glands are mentioned too, for they grow under a socket.",
    ],
    cautions: [
      "No adjustment is offered: the shape of the socket is not the matter to be settled first.",
      "On dark skin the spread shows more as warmth, firmness and pain than as red.",
    ],
    stopWhen: "redness that spreads, fever, shivering, red streaks along the limb, pus or a swollen gland; all on the same day.",
  },
  {
    id: "any-sharp-pain",
    kind: "sharp-pain",
    alsoFor: ["severe-pain"],
    finding: "Sharp or severe pain",
    adjustments: [],
    weigh: [
      "The spot is found with one finger, with the socket off, and compared with where the wall lies.",
      "A spot that shoots when tapped may be a neuroma; one that is sore on the bone may be a spur, a fracture or a bursa.",
      "What the limb was doing when it began, and how long it lasts without the socket, is written down.",
    ],
    cautions: [
      "No adjustment is offered until the cause is judged: a relief cut over the wrong spot moves the load to its neighbours.",
      "Medicine against pain may hide what a trial is meant to show: what was taken is written down, and changing it is for the physician.",
    ],
    stopWhen: "sharp pain, pain of 7 or more out of 10, or pain that stays when the socket is off.",
  },
  {
    id: "any-rising-pain",
    kind: "rising-pain",
    finding: "Pain that rises while the socket is worn",
    adjustments: [],
    weigh: [
      "The course over the minutes is read together with load, activity and place: pain that rises at rest is another matter than pain that rises on walking or lifting.",
      "Swelling inside a socket that leaves no room, or a limb that sinks as it loses volume, both make pain rise with time.",
      "The skin and the feeling at the place are looked at before the next donning.",
    ],
    cautions: [
      "No adjustment is offered from the rise alone; it says that something accumulates, and not what.",
      "Pain that had to be borne to finish a trial makes the trial worth less, and the limb worse.",
    ],
    stopWhen:
      "pain that goes on rising after doffing, wakes the wearer at night, or comes with swelling, cold or a change of colour.",
  },
  {
    id: "any-dizziness",
    kind: "dizziness",
    finding: "Dizziness or faintness",
    adjustments: [],
    weigh: [
      "The wearer sits or lies down, and the trial is over for the day.",
      "Heat, effort, low blood sugar, a change of medicine or standing for a first long while are asked about; none of them is taken for granted.",
      "How far the effort of this socket exceeds what the wearer is used to is thought about for the next trial.",
    ],
    cautions: [
      "No adjustment is offered: the socket may have nothing to do with it.",
      "A fall with a prosthesis on hurts the limb as well; the skin is looked at though the trial was short.",
    ],
    stopWhen:
      "any faintness or dizziness in a trial. Loss of consciousness, pain in the chest, trouble with speech or weakness of one side is for the emergency services at once.",
  },
  {
    id: "any-wearer-asks",
    kind: "wearer-asks",
    finding: "The wearer asks to stop",
    adjustments: [],
    weigh: [
      "The wish is reason enough. What lies behind it is asked afterwards and written down in the wearer's words.",
      "Pain that is hard to describe, fear of falling, fatigue and mistrust of the socket are all findings.",
      "A child, or a wearer who finds it hard to say what is wrong, may show it by going still, by anger or by not using the limb.",
    ],
    cautions: [
      "No adjustment is offered until it is known what the wish was about.",
      "Persuading somebody to go on spoils the evidence of every later trial.",
    ],
    stopWhen:
      "the wearer gives pain, loss of feeling, breathlessness or feeling unwell as the reason, or cannot say what is wrong.",
  },
];

/** Knee disarticulation. */
import { evenMarks } from "../skin";
import { type Story, wearer } from "../story";
import { steady } from "../trial-events";

const check = { material: "clear copolyester over a soft inner liner", wallMm: 8 };
const fromTheEnd = {
  level: "knee disarticulation",
  landmark: "distal end of the residual limb",
  stationsFrom: "distal end",
} as const;
const levels = 90;

/** Socket 2 came back 8 mm wider at two levels than its order says, and nobody knows why. */
export const carpenter: Story = (calendar) => {
  const person = wearer("carpenter", calendar, [110, "08:10"], {
    number: "TW-0132",
    name: "Ewa Zieliczka",
    ageYears: 48.4,
    heightMm: 1720,
    massKg: 70,
    handedness: "left",
    occupation: "ship's carpenter",
  });
  const episode = person.episode([110, "08:30"], {
    ...fromTheEnd,
    prosthetist: "junior",
    side: "left",
    cause: "trauma",
    lostDaysAgo: 1370,
    limbLengthMm: 408,
    suspension: "self-suspending",
    goals: "Kneel on deck; carry planks down a gangway.",
    targetInDays: 13,
  });
  episode.measured([108, "08:20"], levels, [412, 396, 432, 489, 541]);
  const before = episode.measured([72, "08:20"], levels, [412, 396, 431, 488.5, 541]);
  const one = episode.socket([70, "10:00"], {
    ...check,
    limb: before,
    tighterPercent: 1,
    trimLines: "To 30 mm below the groin; slit over the narrow part",
  });
  one.bench({ begun: [68, "08:30"], atHand: [58, "09:00"] });
  one.fitted([52, "08:30"], {
    checks: { seating: "concern", "comfort-standing": "concern" },
    drops: { 30: 2.4, 60: 4.2, 90: 6.0 },
    motion: { "hip-extension": [18, 15] },
    comfort: 6,
    pain: 2,
    words: "Tight over the knobs at the end.",
    looks: {
      at: [2],
      marks: [
        { name: "outer condyle", endMm: 30, angleDeg: 88, sizeMm: [22, 18], seen: ["clear"], firm: true },
        { name: "inner condyle", endMm: 30, angleDeg: 272, sizeMm: [22, 18], seen: ["clear"], firm: true },
      ],
    },
  });
  const limb = episode.measured([27, "08:20"], levels, [412, 396, 431, 488, 540.5]);
  const two = one.next([25, "10:00"], {
    ...check,
    limb,
    adjustments: [
      {
        kind: "relief",
        aspect: "lateral",
        third: "distal",
        amount: 2,
        unit: "mm",
        reason: "Firm mark over the outer condyle",
        answers: one.answersMark("outer condyle"),
      },
      {
        kind: "relief",
        aspect: "medial",
        third: "distal",
        amount: 2,
        unit: "mm",
        reason: "Firm mark over the inner condyle",
        answers: one.answersMark("inner condyle"),
      },
    ],
    made: (proposed) =>
      proposed.map((station, index) => (index >= 3 ? { ...station, circumferenceMm: station.circumferenceMm + 8 } : station)),
  });
  two.bench({ begun: [23, "08:30"], atHand: [14, "09:00"] });
  two.fitted([9, "08:30"], {
    drops: { 30: 2.0, 60: 3.6, 90: 5.1 },
    motion: { "hip-extension": [18, 16] },
    comfort: 8,
    pain: 0,
    words: "Good at the knobs. Roomier at the top, I like it.",
    looks: { at: [2], marks: evenMarks(200, { sizeMm: [50, 40] }) },
  });
  two.worn([2, "08:30"], {
    minutes: 30,
    doing: ["kneeling on a mat", "carrying a plank"],
    asked: steady(30, [8, 0, 4]),
    looks: { at: [1, 9], marks: evenMarks(200, { sizeMm: [50, 40], seen: ["clear", "none"] }) },
  });
  return person.timeline;
};

/** A good trial that nobody signed for six weeks: the evidence has gone stale. */
export const shippingClerk: Story = (calendar) => {
  const person = wearer("shipping clerk", calendar, [122, "14:00"], {
    number: "TW-0128",
    name: "Giulia Stamatelou",
    ageYears: 49.1,
    heightMm: 1650,
    massKg: 78,
    handedness: "right",
    occupation: "shipping clerk",
  });
  const episode = person.episode([122, "14:20"], {
    ...fromTheEnd,
    prosthetist: "junior",
    side: "right",
    cause: "vascular",
    lostDaysAgo: 890,
    limbLengthMm: 395,
    suspension: "strap",
    goals: "The stairs at the office; the bus.",
    targetInDays: -20,
  });
  episode.measured([120, "14:10"], levels, [418, 403, 441, 503, 559]);
  const limb = episode.measured([78, "14:10"], levels, [418, 402.5, 441, 502.5, 559]);
  const one = episode.socket([76, "10:00"], { ...check, limb, tighterPercent: 1, trimLines: "To 40 mm below the groin" });
  one.bench({ begun: [74, "08:30"], atHand: [64, "09:00"] });
  one.fitted([56, "14:00"], {
    drops: { 30: 1.8, 60: 3.2, 90: 4.6 },
    motion: { "hip-extension": [15, 13] },
    comfort: 8,
    pain: 0,
    looks: { at: [2], marks: evenMarks(195, { sizeMm: [50, 40] }) },
  });
  one.worn([52, "14:00"], {
    minutes: 20,
    doing: ["stairs", "sitting in a bus seat"],
    asked: steady(20, [8, 0, 3]),
    looks: { at: [1, 10], marks: evenMarks(195, { sizeMm: [50, 40] }) },
  });
  return person.timeline;
};

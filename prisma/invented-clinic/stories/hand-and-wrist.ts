/** Partial hand and wrist disarticulation. */
import { evenMarks } from "../skin";
import { type Story, wearer } from "../story";
import { steady } from "../trial-events";

const glove = { material: "silicone over a flexible frame", wallMm: 3 };
const forearm = { material: "clear copolyester, drape formed", wallMm: 5, lengthMm: 250 };

/** Delivered half a year ago: two sockets, one trial, one signature. */
export const baker: Story = (calendar) => {
  const person = wearer("baker", calendar, [258, "10:10"], {
    number: "TW-0087",
    name: "Giancarlo Pestrin",
    ageYears: 52.1,
    heightMm: 1710,
    massKg: 88,
    handedness: "right",
    occupation: "baker",
  });
  const episode = person.episode([258, "10:30"], {
    prosthetist: "junior",
    side: "right",
    level: "partial hand",
    cause: "trauma",
    lostDaysAgo: 1330,
    landmark: "distal end of the residual hand",
    stationsFrom: "distal end",
    limbLengthMm: 92,
    suspension: "self-suspending",
    device: { massKg: 0.14, centreMm: 115, note: "Opposition post with a wide pad" },
    goals: "Hold a tray on the flat of the hand; knead with both hands.",
    targetInDays: -170,
  });
  episode.measured([256, "09:10"], 25, [211, 219, 206, 184], { note: "After a morning's rest" });
  const limb = episode.measured([236, "09:10"], 25, [210.5, 218.5, 206, 184]);
  const one = episode.socket([235, "10:00"], { ...glove, limb, tighterPercent: 1 });
  one.bench({ begun: [233, "09:00"], atHand: [228, "09:10"] });
  one.fitted([226, "10:00"], {
    checks: { "trim-lines": "not met", "comfort-under-load": "concern" },
    drops: { 15: 1.8, 30: 3.0, 45: 4.2 },
    motion: { "wrist-flexion": [62, 40] },
    comfort: 6,
    pain: 1,
    words: "The edge at the wrist stops me when I knead.",
    looks: { at: [2], marks: [{ name: "wrist edge, palm side", endMm: 86, angleDeg: 0, sizeMm: [30, 8], seen: ["clear"] }] },
  });
  const two = one.next([224, "11:00"], {
    ...glove,
    limb,
    adjustments: [
      {
        kind: "trim",
        aspect: "anterior",
        third: "proximal",
        amount: 8,
        unit: "mm",
        reason: "The edge at the wrist stops bending at 40°",
        answers: "motion:wrist-flexion",
      },
    ],
  });
  two.bench({ begun: [222, "09:00"], atHand: [217, "09:10"] });
  two.fitted([215, "09:30"], {
    drops: { 15: 1.7, 30: 2.8, 45: 3.9 },
    motion: { "wrist-flexion": [62, 58] },
    comfort: 9,
    pain: 0,
    words: "I can knead.",
    looks: { at: [2], marks: evenMarks(45) },
  });
  two.worn([213, "10:00"], {
    minutes: 20,
    load: { kg: 0.14, atMm: 115 },
    doing: ["kneading", "carrying a tray"],
    asked: steady(20, [9, 0, 3]),
    looks: { at: [1, 8], marks: evenMarks(45) },
  });
  episode.signed([210, "14:00"], "release for definitive fabrication");
  episode.delivered([182, "10:30"], "Fits as the check socket did. Wear schedule gone through with him and his wife.");
  return person.timeline;
};

/** The socket holds and does not hurt, but the forearm cannot turn in it: motion is lost. */
export const cellist: Story = (calendar) => {
  const person = wearer("cellist", calendar, [118, "11:00"], {
    number: "TW-0143",
    name: "Maren Tolvanen",
    ageYears: 34.6,
    heightMm: 1690,
    massKg: 60,
    handedness: "right",
    occupation: "cellist in the harbour orchestra",
  });
  const episode = person.episode([118, "11:20"], {
    prosthetist: "lead",
    side: "right",
    level: "wrist disarticulation",
    cause: "tumour",
    lostDaysAgo: 720,
    landmark: "end of the ulna",
    stationsFrom: "distal end",
    limbLengthMm: 245,
    suspension: "self-suspending",
    device: { massKg: 0.31, centreMm: 300, note: "Bow holder that she brought; 310 g with its clamp" },
    goals: "Hold the bow and turn the forearm freely; play for two hours.",
    targetInDays: 25,
  });
  episode.measured([116, "10:00"], 50, [164, 158, 183, 216, 243]);
  const limb = episode.measured([60, "10:00"], 50, [164, 158, 183, 215.5, 243]);
  const one = episode.socket([58, "11:00"], {
    ...forearm,
    limb,
    tighterPercent: 2,
    trimLines: "Two thirds of the forearm, window over the bony end",
  });
  one.bench({ begun: [56, "09:00"], atHand: [50, "09:30"] });
  one.fitted([46, "10:00"], {
    checks: { donning: "not met", "bony-relief": "concern" },
    drops: { 15: 1.1, 30: 1.9, 45: 2.8 },
    motion: { "elbow-flexion": [146, 145], "forearm-rotation": [132, 84] },
    comfort: 6,
    pain: 2,
    words: "It takes five minutes and a silk sock to get in, and then it holds my arm like a vice.",
    looks: {
      at: [2],
      marks: [{ name: "end of the ulna", endMm: 8, angleDeg: 190, sizeMm: [14, 12], seen: ["clear"], firm: true }],
    },
  });
  const again = episode.measured([30, "10:00"], 50, [164, 158.5, 183, 215.5, 243]);
  const two = one.next([28, "11:30"], {
    ...forearm,
    limb: again,
    adjustments: [
      { kind: "closure", reason: "Bulbous end does not pass: a window with a strap on the outer side", answers: "check:donning" },
      {
        kind: "trim",
        aspect: "medial",
        third: "proximal",
        amount: 20,
        unit: "mm",
        reason: "The socket holds the ulna and radius together",
        answers: "motion:forearm-rotation",
      },
    ],
    trimLines: "Half of the forearm on the inner side",
  });
  two.bench({ begun: [26, "09:00"], atHand: [17, "09:30"] });
  two.fitted([8, "10:00"], {
    drops: { 15: 1.4, 30: 2.4, 45: 3.4 },
    motion: { "elbow-flexion": [146, 145], "forearm-rotation": [132, 104] },
    comfort: 8,
    pain: 0,
    words: "Comfortable. But I run out of turn on the low string.",
    looks: { at: [2], marks: evenMarks(150) },
  });
  two.worn([4, "11:00"], {
    minutes: 30,
    load: { kg: 0.31, atMm: 300 },
    doing: ["bowing without the cello", "carrying the case"],
    asked: steady(30, [8, 0, 3]),
    looks: { at: [1, 10], marks: evenMarks(150, { seen: ["clear", "none"] }) },
  });
  return person.timeline;
};

/** Everything is met, but nobody has read what was written down about her skin since. */
export const teacher: Story = (calendar) => {
  const person = wearer("teacher", calendar, [66, "15:00"], {
    number: "TW-0151",
    name: "Oluchi Bergqvist",
    ageYears: 50.2,
    heightMm: 1720,
    massKg: 74,
    handedness: "left",
    occupation: "primary-school teacher",
  });
  const episode = person.episode([66, "15:20"], {
    prosthetist: "junior",
    side: "left",
    level: "partial hand",
    cause: "infection",
    lostDaysAgo: 900,
    landmark: "distal end of the residual hand",
    stationsFrom: "distal end",
    limbLengthMm: 88,
    suspension: "strap",
    device: { massKg: 0.12, centreMm: 105, note: "Pen and chalk holder" },
    goals: "Write on the board; open a door with a bag in the other hand.",
    targetInDays: 4,
  });
  episode.measured([64, "15:10"], 25, [196, 203, 192, 171]);
  const limb = episode.measured([34, "15:10"], 25, [196, 203, 191.5, 171]);
  const one = episode.socket([32, "11:00"], { ...glove, limb, tighterPercent: 1.5, trimLines: "Palm free to the second crease" });
  one.bench({ begun: [30, "09:00"], atHand: [22, "09:30"] });
  one.fitted([18, "15:00"], {
    drops: { 15: 1.2, 30: 2.2, 45: 3.1 },
    motion: { "wrist-flexion": [66, 61] },
    comfort: 8,
    pain: 0,
    words: "I wrote three lines on the board.",
    looks: { at: [2], marks: evenMarks(44) },
  });
  one.worn([14, "15:10"], {
    minutes: 20,
    load: { kg: 0.12, atMm: 105 },
    doing: ["writing on a board", "opening doors"],
    asked: steady(20, [8, 0, 2]),
    looks: { at: [1, 9], marks: evenMarks(44) },
  });
  person.caution([11, "16:30"], { kind: "allergy", note: "Rash from a silicone plaster at her physician's, last week" });
  return person.timeline;
};

/** Ordered three weeks ago, needed last week, not begun. */
export const apprentice: Story = (calendar) => {
  const person = wearer("apprentice", calendar, [44, "09:00"], {
    number: "TW-0160",
    name: "Leocádia Sampaio Reuter",
    ageYears: 19.3,
    heightMm: 1650,
    massKg: 57,
    handedness: "left",
    occupation: "apprentice to a joiner",
  });
  const episode = person.episode([44, "09:20"], {
    prosthetist: "junior",
    side: "left",
    level: "wrist disarticulation",
    cause: "trauma",
    lostDaysAgo: 240,
    landmark: "end of the radius",
    stationsFrom: "distal end",
    limbLengthMm: 232,
    suspension: "strap",
    goals: "Finish her year. Hold the work steady against the bench.",
    targetInDays: 40,
  });
  episode.measured([42, "09:30"], 50, [152, 147, 170, 204, 231]);
  const limb = episode.measured([24, "09:30"], 50, [151, 146.5, 169, 203, 230]);
  episode.socket([21, "10:00"], {
    ...forearm,
    limb,
    tighterPercent: 2,
    trimLines: "Three quarters of the forearm, split with two straps",
    benchNote: "The end is wider than the waist above it: leave the split open to 90 mm.",
    neededDaysAgo: 8,
  });
  return person.timeline;
};

/** Transtibial: one thing wrong in each, everything else in order. */
import { evenMarks } from "../skin";
import { type Story, wearer } from "../story";
import { steady } from "../trial-events";

const check = {
  material: "clear copolyester, bubble formed",
  wallMm: 8,
  trimLines: "Front edge at the middle of the kneecap, back edge 10 mm lower",
};
const fromTheTendon = {
  level: "transtibial",
  landmark: "middle of the patellar tendon",
  stationsFrom: "proximal landmark",
} as const;
const levels = 30;

/** Ten weeks after his operation the limb loses three per cent a fortnight. */
export const fisherman: Story = (calendar) => {
  const person = wearer("fisherman", calendar, [52, "08:40"], {
    number: "TW-0157",
    name: "Stellan Morosk",
    ageYears: 61.2,
    heightMm: 1800,
    massKg: 90,
    handedness: "right",
    occupation: "fisherman",
    cautions: [{ kind: "swelling", note: "Worse in the evening" }],
  });
  const episode = person.episode([52, "09:00"], {
    ...fromTheTendon,
    prosthetist: "lead",
    side: "left",
    cause: "vascular",
    lostDaysAgo: 96,
    limbLengthMm: 145,
    suspension: "pin",
    goals: "Stand at the rail for an hour in a swell.",
    targetInDays: 45,
  });
  episode.cautionsRead([52, "09:20"]);
  episode.measured([50, "08:50"], levels, [372, 368, 355, 338, 318]);
  episode.measured([32, "08:50"], levels, [365, 360, 346, 329, 308]);
  const limb = episode.measured([17, "08:50"], levels, [359, 353, 339, 321, 300]);
  const one = episode.socket([16, "11:00"], { ...check, limb, tighterPercent: 1 });
  one.bench({ begun: [14, "08:30"], atHand: [9, "09:00"] });
  one.fitted([7, "08:40"], {
    pulls: [
      [30, 2.1],
      [60, 3.7],
      [90, 5.2],
    ],
    motion: [["knee-flexion", 122, 118]],
    comfort: 8,
    pain: 0,
    words: "First time I have stood on two legs since spring.",
    looks: { at: [3], marks: evenMarks(75) },
  });
  one.worn([4, "09:00"], {
    minutes: 20,
    doing: ["standing at the bars", "shifting weight"],
    asked: steady(20, [8, 1, 3]),
    looks: { at: [1, 10], marks: evenMarks(75, { seen: ["clear", "none"] }) },
  });
  return person.timeline;
};

/** Numbness under the kneecap that stayed: the trial was stopped. */
export const postwoman: Story = (calendar) => {
  const person = wearer("postwoman", calendar, [76, "17:00"], {
    number: "TW-0140",
    name: "Amina Belhadri",
    ageYears: 44.3,
    heightMm: 1670,
    massKg: 63,
    handedness: "right",
    occupation: "postwoman, on foot",
  });
  const episode = person.episode([76, "17:15"], {
    ...fromTheTendon,
    prosthetist: "junior",
    side: "right",
    cause: "trauma",
    lostDaysAgo: 980,
    limbLengthMm: 138,
    suspension: "vacuum",
    goals: "Her old round: 9 km with stairs.",
    targetInDays: 15,
  });
  episode.measured([74, "16:40"], levels, [338, 330, 315, 297, 276]);
  const limb = episode.measured([38, "16:40"], levels, [338, 329.5, 315, 297, 276]);
  const one = episode.socket([36, "10:00"], { ...check, limb, tighterPercent: 2.5 });
  one.bench({ begun: [34, "08:30"], atHand: [26, "09:00"] });
  one.fitted([19, "16:30"], {
    pulls: [
      [30, 0.9],
      [60, 1.7],
      [90, 2.4],
    ],
    motion: [["knee-flexion", 135, 131]],
    comfort: 7,
    pain: 1,
    words: "Firm. Like a good boot.",
    looks: { at: [3], marks: [{ name: "below the kneecap", endMm: 134, angleDeg: 0, sizeMm: [40, 10], seen: ["clear"] }] },
  });
  one.worn([11, "16:30"], {
    minutes: 30,
    doing: ["walking outside", "stairs"],
    asked: [
      [5, 7, 1, 2],
      [10, 7, 1, 3],
      [15, 6, 2, 4, { kind: "numbness", aspect: "anterior", third: "proximal" }],
    ],
    stop: { minute: 18, sign: "numbness", note: "Numb below the kneecap, still so after a minute's rest with the vacuum off" },
    looks: {
      at: [1, 10, 20],
      marks: [
        { name: "below the kneecap", endMm: 134, angleDeg: 0, sizeMm: [44, 12], seen: ["deep", "clear", "none"], firm: true },
      ],
    },
  });
  return person.timeline;
};

/** A calm trial; at doffing the skin over the tibia was open. */
export const stonemason: Story = (calendar) => {
  const person = wearer("stonemason", calendar, [90, "08:30"], {
    number: "TW-0136",
    name: "Ciarán Ó Maolruain",
    ageYears: 55.9,
    heightMm: 1750,
    massKg: 83,
    handedness: "left",
    occupation: "stonemason on the breakwater",
    cautions: [{ kind: "reduced-feeling", note: "Diabetic for twenty years" }],
  });
  const episode = person.episode([90, "08:50"], {
    ...fromTheTendon,
    prosthetist: "lead",
    side: "left",
    cause: "vascular",
    lostDaysAgo: 700,
    limbLengthMm: 142,
    suspension: "suction",
    goals: "Stand at the banker all morning.",
    targetInDays: 5,
  });
  episode.cautionsRead([90, "09:10"]);
  episode.measured([88, "08:40"], levels, [351, 343, 328, 309, 287]);
  const limb = episode.measured([35, "08:40"], levels, [351, 343, 327.5, 309, 287]);
  const one = episode.socket([33, "10:00"], { ...check, limb, tighterPercent: 2 });
  one.bench({ begun: [31, "08:30"], atHand: [21, "09:00"] });
  one.fitted([15, "08:40"], {
    checks: { "bony-relief": "concern" },
    pulls: [
      [30, 1.3],
      [60, 2.3],
      [90, 3.2],
    ],
    motion: [["knee-flexion", 126, 121]],
    comfort: 8,
    pain: 0,
    looks: {
      at: [3],
      marks: [{ name: "edge of the tibia", endMm: 48, angleDeg: 355, sizeMm: [10, 30], seen: ["clear"], firm: true }],
    },
  });
  one.worn([3, "09:00"], {
    minutes: 30,
    doing: ["standing at a bench", "carrying 5 kg"],
    asked: steady(30, [8, 0, 3]),
    looks: {
      at: [1, 20],
      note: "Skin open over 6 mm, no bleeding. Covered; physician the same day. He had felt nothing.",
      marks: [
        {
          name: "edge of the tibia",
          endMm: 48,
          angleDeg: 355,
          sizeMm: [12, 34],
          seen: ["deep", "deep"],
          firm: true,
          broken: true,
        },
      ],
    },
  });
  return person.timeline;
};

/** Nobody asked between the 10th and the 24th minute. */
export const nightNurse: Story = (calendar) => {
  const person = wearer("night nurse", calendar, [72, "18:00"], {
    number: "TW-0142",
    name: "Mwende Achterhof",
    ageYears: 40.7,
    heightMm: 1700,
    massKg: 72,
    handedness: "right",
    occupation: "night nurse",
  });
  const episode = person.episode([72, "18:15"], {
    ...fromTheTendon,
    prosthetist: "junior",
    side: "right",
    cause: "trauma",
    lostDaysAgo: 1250,
    limbLengthMm: 155,
    suspension: "pin",
    goals: "Twelve hours on her feet, with breaks.",
    targetInDays: 8,
  });
  episode.measured([70, "17:30"], levels, [346, 338, 322, 303, 281]);
  const limb = episode.measured([36, "17:30"], levels, [346, 338, 322, 302.5, 281]);
  const one = episode.socket([34, "10:00"], { ...check, limb, tighterPercent: 1.5 });
  one.bench({ begun: [32, "08:30"], sent: [25, "15:00"], atHand: [22, "12:00"] });
  one.fitted([16, "17:00"], {
    place: "home",
    who: "assistant",
    pulls: [
      [30, 1.8],
      [60, 3.1],
      [90, 4.3],
    ],
    motion: [["knee-flexion", 133, 129]],
    comfort: 8,
    pain: 0,
    looks: { at: [2], marks: evenMarks(78) },
  });
  one.worn([12, "17:00"], {
    minutes: 30,
    doing: ["walking in the corridor", "turning a mattress"],
    asked: [
      [5, 8, 0, 2],
      [10, 8, 0, 3],
      [24, 8, 1, 4],
      [29, 8, 0, 4],
    ],
    endedAt: 30,
    enteredAfterwards: true,
    looks: { at: [2, 12], marks: evenMarks(78, { seen: ["clear", "none"] }) },
  });
  return person.timeline;
};

/** It holds and fades; it hurts too much: 5 of 10 at the end of the limb. */
export const florist: Story = (calendar) => {
  const person = wearer("florist", calendar, [64, "13:00"], {
    number: "TW-0152",
    name: "Thùy Linh Carvalhal",
    ageYears: 35.3,
    heightMm: 1590,
    massKg: 54,
    handedness: "right",
    occupation: "florist",
    cautions: [{ kind: "pregnancy", note: "Fifth month; the limb is measured every fortnight" }],
  });
  const episode = person.episode([64, "13:20"], {
    ...fromTheTendon,
    prosthetist: "lead",
    side: "left",
    cause: "trauma",
    lostDaysAgo: 2300,
    limbLengthMm: 128,
    suspension: "pin",
    goals: "Stand in the shop; walk with a pram later on.",
    targetInDays: 20,
  });
  episode.cautionsRead([64, "13:40"]);
  episode.measured([62, "13:10"], levels, [312, 304, 289, 271, 250]);
  const limb = episode.measured([28, "13:10"], levels, [312.5, 304, 289.5, 271, 250]);
  const one = episode.socket([26, "10:00"], { ...check, limb, tighterPercent: 1.5 });
  one.bench({ begun: [24, "08:30"], atHand: [16, "09:00"] });
  one.fitted([11, "13:00"], {
    checks: { "end-contact": "concern" },
    pulls: [
      [30, 1.9],
      [60, 3.2],
      [90, 4.5],
    ],
    motion: [["knee-flexion", 130, 126]],
    comfort: 7,
    pain: 3,
    words: "The very end is sore when I step down.",
    looks: { at: [2], marks: [{ name: "end", endMm: 5, angleDeg: 20, sizeMm: [24, 10], seen: ["clear"] }] },
  });
  one.carries([11, "14:00"], {
    kind: "relief",
    aspect: "anterior",
    third: "distal",
    amount: 2,
    unit: "mm",
    reason: "Sore end of the tibia",
    answers: "check:end-contact",
  });
  one.worn([8, "13:00"], {
    minutes: 20,
    doing: ["standing at a table", "walking 100 m"],
    asked: [
      [5, 7, 4, 2],
      [10, 7, 5, 3, { kind: "pressure", aspect: "anterior", third: "distal" }],
      [15, 7, 5, 3, { kind: "pressure", aspect: "anterior", third: "distal" }],
      [20, 7, 4, 4],
    ],
    looks: { at: [1, 12], marks: evenMarks(64, { seen: ["clear", "none"] }) },
  });
  return person.timeline;
};

/** Transtibial: one thing wrong in each, everything else in order. */
import { evenMarks } from "../skin";
import { type Story, wearer } from "../story";
import { steady } from "../trial-events";
import { transtibial } from "./usual";

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
    ...transtibial.opened,
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
  episode.measured([50, "08:50"], transtibial.levels, [372, 368, 355, 338, 318]);
  episode.measured([32, "08:50"], transtibial.levels, [365, 360, 346, 329, 308]);
  const limb = episode.measured([17, "08:50"], transtibial.levels, [359, 353, 339, 321, 300]);
  const one = episode.socket([16, "11:00"], { ...transtibial.socket, limb, tighterPercent: 1 });
  one.bench({ begun: [14, "08:30"], atHand: [9, "09:00"] });
  one.fitted([7, "08:40"], {
    drops: { 30: 2.1, 60: 3.7, 90: 5.2 },
    motion: { "knee-flexion": [122, 118] },
    comfort: 8,
    pain: 0,
    words: "First time I have stood on two legs since spring.",
    looks: { at: [3], marks: evenMarks(75) },
  });
  one.worn([2, "09:00"], {
    minutes: 20,
    doing: ["standing at the bars", "shifting weight"],
    asked: steady(20, [8, 1, 3]),
    looks: { at: [1, 10], marks: evenMarks(75, { seen: ["clear", "none"] }) },
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
    ...transtibial.opened,
    prosthetist: "junior",
    side: "right",
    cause: "trauma",
    lostDaysAgo: 1250,
    limbLengthMm: 155,
    suspension: "pin",
    goals: "Twelve hours on her feet, with breaks.",
    targetInDays: 8,
  });
  episode.measured([70, "17:30"], transtibial.levels, [346, 338, 322, 303, 281]);
  const limb = episode.measured([27, "17:30"], transtibial.levels, [346, 338, 322, 302.5, 281]);
  const one = episode.socket([25, "10:00"], { ...transtibial.socket, limb, tighterPercent: 1.5 });
  one.bench({ begun: [23, "08:30"], sent: [19, "15:00"], atHand: [16, "12:00"] });
  one.fitted([8, "17:00"], {
    place: "home",
    who: "assistant",
    drops: { 30: 1.8, 60: 3.1, 90: 4.3 },
    motion: { "knee-flexion": [133, 129] },
    comfort: 8,
    pain: 0,
    looks: { at: [2], marks: evenMarks(78) },
  });
  one.worn([2, "17:00"], {
    minutes: 30,
    doing: ["walking in the corridor", "turning a mattress"],
    asked: { at: [5, 10, 24, 29], comfort: [8, 8, 8, 8], pain: [0, 0, 1, 0], exertion: [2, 3, 4, 4] },
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
    cautions: [{ kind: "pregnancy", note: "Fifth month; her limb may swell in the last weeks" }],
  });
  const episode = person.episode([64, "13:20"], {
    ...transtibial.opened,
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
  episode.measured([62, "13:10"], transtibial.levels, [312, 304, 289, 271, 250]);
  const limb = episode.measured([28, "13:10"], transtibial.levels, [312.5, 304, 289.5, 271, 250]);
  const one = episode.socket([26, "10:00"], { ...transtibial.socket, limb, tighterPercent: 1.5 });
  one.bench({ begun: [24, "08:30"], atHand: [16, "09:00"] });
  one.fitted([8, "13:00"], {
    checks: { "end-contact": "concern" },
    drops: { 30: 1.9, 60: 3.2, 90: 4.5 },
    motion: { "knee-flexion": [130, 126] },
    comfort: 7,
    pain: 3,
    words: "The very end is sore when I step down.",
    looks: { at: [2], marks: [{ name: "end", endMm: 5, angleDeg: 20, sizeMm: [24, 10], seen: ["clear"] }] },
  });
  one.carries([8, "14:00"], {
    kind: "relief",
    aspect: "anterior",
    third: "distal",
    amount: 2,
    unit: "mm",
    reason: "Sore end of the tibia",
    answers: "check:end-contact",
  });
  one.worn([5, "13:00"], {
    minutes: 20,
    doing: ["standing at a table", "walking 100 m"],
    asked: {
      comfort: [7, 7, 7, 7],
      pain: [4, 5, 5, 4],
      exertion: [2, 3, 3, 4],
      felt: { 10: ["pressure anterior distal"], 15: ["pressure anterior distal"] },
    },
    looks: { at: [1, 12], marks: evenMarks(64, { seen: ["clear", "none"] }) },
  });
  return person.timeline;
};

/** Marks on the inner side only, deep and firm, though all of them fade. */
export const dancer: Story = (calendar) => {
  const person = wearer("dancer", calendar, [56, "18:00"], {
    number: "TW-0156",
    name: "Solange Adomakor",
    ageYears: 27.2,
    heightMm: 1730,
    massKg: 61,
    handedness: "right",
    occupation: "dancer",
  });
  const episode = person.episode([56, "18:15"], {
    ...transtibial.opened,
    prosthetist: "junior",
    side: "left",
    cause: "tumour",
    lostDaysAgo: 1150,
    limbLengthMm: 150,
    suspension: "vacuum",
    goals: "Turn on the prosthesis; land a small jump.",
    targetInDays: 16,
  });
  episode.measured([54, "17:00"], transtibial.levels, [334, 326, 311, 293, 272]);
  const limb = episode.measured([26, "17:00"], transtibial.levels, [334, 326, 311, 292.5, 272]);
  const one = episode.socket([24, "10:00"], { ...transtibial.socket, limb, tighterPercent: 2.5 });
  one.bench({ begun: [22, "08:30"], atHand: [17, "09:00"] });
  one.fitted([7, "17:00"], {
    drops: { 30: 0.8, 60: 1.5, 90: 2.1 },
    motion: { "knee-flexion": [138, 135] },
    comfort: 9,
    pain: 0,
    words: "It moves when I move.",
    looks: {
      at: [2],
      marks: [{ name: "inner flare of the tibia", endMm: 118, angleDeg: 285, sizeMm: [24, 30], seen: ["clear"], firm: true }],
    },
  });
  one.worn([2, "17:00"], {
    minutes: 30,
    doing: ["slow turns", "stairs"],
    asked: steady(30, [9, 0, 4]),
    looks: {
      at: [1, 8, 18],
      marks: [
        {
          name: "inner flare of the tibia",
          endMm: 118,
          angleDeg: 285,
          sizeMm: [24, 30],
          seen: ["deep", "clear", "none"],
          firm: true,
          fadedAtMin: 16,
        },
        { name: "outer side", endMm: 90, angleDeg: 92, sizeMm: [30, 20], seen: ["faint", "none"] },
        { name: "calf", endMm: 90, angleDeg: 180, sizeMm: [40, 24], seen: ["faint", "none"] },
      ],
    },
  });
  return person.timeline;
};

/** Transfemoral. */
import { evenMarks } from "../skin";
import { type Story, wearer } from "../story";
import { steady } from "../trial-events";
import { transfemoral } from "./usual";

const thighMarks = (seen: ("faint" | "clear" | "none")[] = ["faint", "none"]) => evenMarks(130, { sizeMm: [60, 40], seen });

/** The suction does not hold: 17 mm of drop at 90 N. */
export const cook: Story = (calendar) => {
  const person = wearer("cook", calendar, [54, "09:30"], {
    number: "TW-0159",
    name: "Desta Woldekarim",
    ageYears: 31.4,
    heightMm: 1790,
    massKg: 76,
    handedness: "right",
    occupation: "ship's cook",
  });
  const episode = person.episode([54, "09:50"], {
    ...transfemoral.opened,
    prosthetist: "lead",
    side: "left",
    cause: "trauma",
    lostDaysAgo: 780,
    limbLengthMm: 262,
    suspension: "suction",
    goals: "A shift in the galley, on a wet floor.",
    targetInDays: 26,
  });
  episode.measured([52, "09:40"], transfemoral.levels, [556, 531, 498, 458, 412]);
  const limb = episode.measured([28, "09:40"], transfemoral.levels, [556, 531, 497.5, 458, 412]);
  const one = episode.socket([26, "10:00"], { ...transfemoral.socket, limb, tighterPercent: 1 });
  one.bench({ begun: [24, "08:30"], atHand: [11, "09:00"] });
  one.fitted([4, "09:30"], {
    checks: { suspension: "not met", rotation: "concern" },
    drops: { 30: 6.9, 60: 12.0, 90: 17.0 },
    motion: { "hip-extension": [16, 13] },
    comfort: 6,
    pain: 1,
    words: "It lets go with a sigh at every step.",
    looks: { at: [2], marks: thighMarks() },
  });
  return person.timeline;
};

/** Sent by courier for a fitting over video; not fitted, not returned, no answer. */
export const bookbinder: Story = (calendar) => {
  const person = wearer("bookbinder", calendar, [86, "15:30"], {
    number: "TW-0133",
    name: "Ingrid Paasimaa",
    ageYears: 57.3,
    heightMm: 1660,
    massKg: 64,
    handedness: "right",
    occupation: "bookbinder on the outer island",
  });
  const episode = person.episode([86, "15:50"], {
    ...transfemoral.opened,
    prosthetist: "junior",
    side: "right",
    cause: "tumour",
    lostDaysAgo: 1210,
    limbLengthMm: 240,
    suspension: "strap",
    goals: "Stand at the press.",
    targetInDays: -4,
  });
  episode.measured([84, "15:30"], transfemoral.levels, [521, 496, 463, 424, 381]);
  const limb = episode.measured([64, "15:30"], transfemoral.levels, [521, 496, 462.5, 424, 381]);
  const one = episode.socket([62, "10:00"], { ...transfemoral.socket, limb, tighterPercent: 1, neededDaysAgo: 50 });
  one.bench({ begun: [60, "08:30"], sent: [48, "15:20"] });
  return person.timeline;
};

/** It fades, it holds, and it is not comfortable: 4 of 10, once. */
export const mechanic: Story = (calendar) => {
  const person = wearer("bus mechanic", calendar, [80, "07:50"], {
    number: "TW-0145",
    name: "Olavi Hietakoski",
    ageYears: 52.7,
    heightMm: 1840,
    massKg: 99,
    handedness: "right",
    occupation: "bus mechanic",
  });
  const episode = person.episode([80, "08:10"], {
    ...transfemoral.opened,
    prosthetist: "lead",
    side: "right",
    cause: "trauma",
    lostDaysAgo: 2600,
    limbLengthMm: 275,
    suspension: "vacuum",
    goals: "Get down under a bus and up again.",
    targetInDays: 11,
  });
  episode.measured([78, "08:20"], transfemoral.levels, [602, 575, 540, 498, 450]);
  const limb = episode.measured([29, "08:20"], transfemoral.levels, [602, 575, 539.5, 498, 450]);
  const one = episode.socket([27, "10:00"], { ...transfemoral.socket, limb, tighterPercent: 2 });
  one.bench({ begun: [25, "08:30"], atHand: [19, "09:00"] });
  one.fitted([9, "08:00"], {
    checks: { sitting: "concern" },
    drops: { 30: 0.9, 60: 1.7, 90: 2.4 },
    motion: { "hip-extension": [14, 12] },
    comfort: 6,
    pain: 1,
    words: "Hard to sit in.",
    looks: { at: [2], marks: thighMarks() },
  });
  one.carries([9, "09:00"], {
    kind: "flare",
    aspect: "posterior",
    third: "proximal",
    amount: 3,
    unit: "mm",
    reason: "Hard edge under the seat bone",
    answers: "check:sitting",
  });
  one.worn([4, "08:00"], {
    minutes: 30,
    doing: ["walking in the yard", "sitting on a bench", "squatting"],
    asked: {
      comfort: [6, 6, 4, 5, 6, 6],
      pain: [0, 1, 1, 1, 0, 0],
      exertion: [2, 3, 4, 4, 5, 5],
      felt: { 15: ["pressure posterior proximal"] },
    },
    looks: { at: [1, 12], marks: thighMarks(["clear", "none"]) },
  });
  return person.timeline;
};

/** Four adjustments were written down to be carried, one of them 6 mm deep: that is another check socket. */
export const tugSkipper: Story = (calendar) => {
  const person = wearer("tug skipper", calendar, [94, "11:00"], {
    number: "TW-0131",
    name: "Fergus Nakamurra",
    ageYears: 70.2,
    heightMm: 1740,
    massKg: 80,
    handedness: "right",
    occupation: "tug skipper, retired",
    cautions: [{ kind: "fragile-skin", note: "Takes cortisone" }],
  });
  const episode = person.episode([94, "11:20"], {
    ...transfemoral.opened,
    prosthetist: "junior",
    side: "left",
    cause: "vascular",
    lostDaysAgo: 690,
    limbLengthMm: 250,
    suspension: "pin",
    goals: "The steps down to his boat.",
    targetInDays: 5,
  });
  episode.cautionsRead([94, "11:45"]);
  episode.measured([92, "11:10"], transfemoral.levels, [538, 512, 478, 438, 394]);
  const limb = episode.measured([31, "11:10"], transfemoral.levels, [538, 511.5, 478, 438, 394]);
  const one = episode.socket([29, "10:00"], { ...transfemoral.socket, limb, tighterPercent: 1 });
  one.bench({ begun: [27, "08:30"], atHand: [23, "09:00"] });
  one.fitted([12, "11:00"], {
    checks: { "trim-lines": "concern" },
    drops: { 30: 1.9, 60: 3.3, 90: 4.7 },
    motion: { "hip-extension": [12, 10] },
    comfort: 8,
    pain: 1,
    looks: { at: [2], marks: thighMarks() },
  });
  one.worn([6, "11:00"], {
    minutes: 20,
    doing: ["steps", "standing"],
    asked: steady(20, [8, 1, 4]),
    looks: { at: [1, 10], marks: thighMarks(["clear", "none"]) },
  });
  one.carries([4, "10:00"], {
    kind: "relief",
    aspect: "lateral",
    third: "distal",
    amount: 6,
    unit: "mm",
    reason: "Room for the end of the femur when he steps down",
  });
  one.carries([4, "10:05"], {
    kind: "trim",
    aspect: "medial",
    third: "proximal",
    amount: 6,
    unit: "mm",
    reason: "Edge touches in the groin",
    answers: "check:trim-lines",
  });
  one.carries([4, "10:10"], { kind: "volume", amount: -1, unit: "percent", reason: "One thin sock by the evening" });
  one.carries([4, "10:15"], { kind: "alignment", amount: 2, unit: "deg", reason: "He leans to the left" });
  return person.timeline;
};

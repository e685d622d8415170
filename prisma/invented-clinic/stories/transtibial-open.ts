/** Transtibial: what was not looked at, what stands out, what was withdrawn, struck out, or has just begun. */
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

/** One look at the skin, two minutes after doffing, and no second one. */
export const surveyor: Story = (calendar) => {
  const person = wearer("surveyor", calendar, [60, "09:00"], {
    number: "TW-0154",
    name: "Björn Quispe Aalund",
    ageYears: 46.2,
    heightMm: 1820,
    massKg: 88,
    handedness: "right",
    occupation: "surveyor of the coast",
  });
  const episode = person.episode([60, "09:20"], {
    ...fromTheTendon,
    prosthetist: "lead",
    side: "right",
    cause: "trauma",
    lostDaysAgo: 1700,
    limbLengthMm: 160,
    suspension: "suction",
    goals: "Walk on shingle with a tripod.",
    targetInDays: 7,
  });
  episode.measured([58, "09:10"], levels, [359, 351, 336, 317, 295]);
  const limb = episode.measured([26, "09:10"], levels, [359, 351, 336, 316.5, 295]);
  const one = episode.socket([24, "10:00"], { ...check, limb, tighterPercent: 2 });
  one.bench({ begun: [22, "08:30"], atHand: [13, "09:00"] });
  one.fitted([8, "09:00"], {
    pulls: [
      [30, 1.2],
      [60, 2.2],
      [90, 3.1],
    ],
    motion: [["knee-flexion", 131, 127]],
    comfort: 8,
    pain: 0,
    looks: { at: [2], marks: evenMarks(80) },
  });
  one.worn([2, "09:30"], {
    minutes: 30,
    doing: ["walking on the beach", "carrying a tripod"],
    asked: steady(30, [8, 0, 4]),
    looks: { at: [2], marks: evenMarks(80, { seen: ["clear"] }), note: "He had to catch the ferry." },
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
    ...fromTheTendon,
    prosthetist: "junior",
    side: "left",
    cause: "tumour",
    lostDaysAgo: 1150,
    limbLengthMm: 150,
    suspension: "vacuum",
    goals: "Turn on the prosthesis; land a small jump.",
    targetInDays: 16,
  });
  episode.measured([54, "17:00"], levels, [334, 326, 311, 293, 272]);
  const limb = episode.measured([30, "17:00"], levels, [334, 326, 311, 292.5, 272]);
  const one = episode.socket([28, "10:00"], { ...check, limb, tighterPercent: 2.5 });
  one.bench({ begun: [26, "08:30"], atHand: [17, "09:00"] });
  one.fitted([10, "17:00"], {
    pulls: [
      [30, 0.8],
      [60, 1.5],
      [90, 2.1],
    ],
    motion: [["knee-flexion", 138, 135]],
    comfort: 9,
    pain: 0,
    words: "It moves when I move.",
    looks: {
      at: [2],
      marks: [{ name: "inner flare of the tibia", endMm: 118, angleDeg: 285, sizeMm: [24, 30], seen: ["clear"], firm: true }],
    },
  });
  one.worn([6, "17:00"], {
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

/** Released, and the release withdrawn when the pin lock was found to be the wrong one. */
export const roofer: Story = (calendar) => {
  const person = wearer("roofer", calendar, [92, "08:00"], {
    number: "TW-0135",
    name: "Mateusz Ferreyra",
    ageYears: 38.5,
    heightMm: 1770,
    massKg: 79,
    handedness: "right",
    occupation: "roofer",
  });
  const episode = person.episode([92, "08:20"], {
    ...fromTheTendon,
    prosthetist: "lead",
    side: "right",
    cause: "trauma",
    lostDaysAgo: 1090,
    limbLengthMm: 148,
    suspension: "pin",
    goals: "Ladders, with both hands free.",
    targetInDays: 3,
  });
  episode.measured([90, "08:30"], levels, [344, 336, 321, 302, 280]);
  const limb = episode.measured([40, "08:30"], levels, [344, 336, 320.5, 302, 280]);
  const one = episode.socket([38, "10:00"], { ...check, limb, tighterPercent: 1.5, benchNote: "Pin lock for the 6 mm liner." });
  one.bench({ begun: [36, "08:30"], atHand: [26, "09:00"] });
  one.fitted([22, "08:30"], {
    pulls: [
      [30, 1.4],
      [60, 2.5],
      [90, 3.5],
    ],
    motion: [["knee-flexion", 134, 130]],
    comfort: 9,
    pain: 0,
    looks: { at: [2], marks: evenMarks(74) },
  });
  one.worn([20, "09:00"], {
    minutes: 30,
    doing: ["ladder, 3 m", "walking on a slope"],
    asked: steady(30, [9, 0, 3]),
    looks: { at: [1, 9], marks: evenMarks(74, { seen: ["clear", "none"] }) },
  });
  const release = episode.signed([14, "16:00"], "release for definitive fabrication");
  episode.withdrawn(
    [12, "09:30"],
    release,
    "The sheet names the lock of the thin liner; he wears the 6 mm one. Nothing has been laminated yet.",
  );
  return person.timeline;
};

/** Two limbs, two episodes: the right prosthesis is in use, the left one waits for its trial. */
export const student: Story = (calendar) => {
  const person = wearer("student", calendar, [306, "16:30"], {
    number: "TW-0061",
    name: "Rasa Vilutytė",
    ageYears: 23.4,
    heightMm: 1710,
    massKg: 58,
    handedness: "right",
    occupation: "student of marine biology",
  });
  const bothLost = { ...fromTheTendon, prosthetist: "lead", cause: "infection", lostDaysAgo: 940, limbLengthMm: 140 } as const;
  const right = person.episode([306, "16:50"], {
    ...bothLost,
    side: "right",
    suspension: "suction",
    goals: "Walk to the lecture hall without the chair.",
    targetInDays: -200,
  });
  right.measured([304, "15:00"], levels, [321, 313, 298, 280, 259]);
  const limb = right.measured([270, "15:00"], levels, [321, 312.5, 298, 280, 259]);
  const one = right.socket([268, "10:00"], { ...check, limb, tighterPercent: 2 });
  one.bench({ begun: [266, "08:30"], atHand: [258, "09:00"] });
  one.fitted([254, "15:00"], {
    pulls: [
      [30, 1.1],
      [60, 2.0],
      [90, 2.8],
    ],
    motion: [["knee-flexion", 136, 132]],
    comfort: 8,
    pain: 0,
    looks: { at: [2], marks: evenMarks(70) },
  });
  one.worn([252, "15:00"], {
    minutes: 20,
    doing: ["walking with two sticks"],
    asked: steady(20, [8, 0, 4]),
    looks: { at: [1, 10], marks: evenMarks(70, { seen: ["clear", "none"] }) },
  });
  right.signed([249, "11:00"], "release for definitive fabrication");
  right.delivered([221, "15:30"]);

  const left = person.episode([58, "16:30"], {
    ...bothLost,
    side: "left",
    suspension: "suction",
    goals: "The same on the left: two good legs for the field trip.",
    targetInDays: 22,
  });
  left.measured([56, "15:00"], levels, [324, 316, 300, 282, 261]);
  const other = left.measured([20, "15:00"], levels, [324, 315.5, 300, 282, 261]);
  const first = left.socket([18, "10:00"], { ...check, limb: other, tighterPercent: 2 });
  first.bench({ begun: [16, "08:30"], atHand: [8, "09:00"] });
  first.fitted([5, "15:00"], {
    pulls: [
      [30, 1.2],
      [60, 2.1],
      [90, 3.0],
    ],
    motion: [["knee-flexion", 135, 131]],
    comfort: 8,
    pain: 0,
    words: "As good as the right one on its first day.",
    looks: { at: [2], marks: evenMarks(70) },
  });
  return person.timeline;
};

/** Opened for the wrong side and struck out; the right episode has a check that is not met. */
export const bookseller: Story = (calendar) => {
  const person = wearer("bookseller", calendar, [48, "11:00"], {
    number: "TW-0158",
    name: "Hugo Lindfors Amado",
    ageYears: 66.8,
    heightMm: 1760,
    massKg: 81,
    handedness: "right",
    occupation: "second-hand bookseller",
  });
  const opened = {
    ...fromTheTendon,
    prosthetist: "junior",
    cause: "vascular",
    lostDaysAgo: 620,
    limbLengthMm: 132,
    suspension: "pin",
    goals: "Stairs to the upper shelves.",
    targetInDays: 24,
  } as const;
  person
    .episode([48, "11:10"], { ...opened, side: "left" })
    .struckOut([48, "11:25"], "Opened for the left side by mistake; his prosthesis is for the right.");
  const episode = person.episode([48, "11:30"], { ...opened, side: "right" });
  episode.measured([46, "11:00"], levels, [348, 340, 325, 306, 284]);
  const limb = episode.measured([25, "11:00"], levels, [348, 340, 324.5, 306, 284]);
  const one = episode.socket([23, "10:00"], { ...check, limb, tighterPercent: 1.5 });
  one.bench({ begun: [21, "08:30"], atHand: [13, "09:00"] });
  one.fitted([6, "11:00"], {
    checks: { length: "not met", sitting: "not done", "comfort-walking": "concern" },
    pulls: [
      [30, 1.7],
      [60, 2.9],
      [90, 4.1],
    ],
    motion: [["knee-flexion", 124, 119]],
    comfort: 7,
    pain: 1,
    words: "I feel as if I walked with one foot in the gutter.",
    note: "Right side 14 mm short.",
    looks: { at: [3], marks: evenMarks(66) },
  });
  return person.timeline;
};

/** Referred last week; nothing is measured yet. */
export const harbourPilot: Story = (calendar) => {
  const person = wearer("harbour pilot", calendar, [6, "10:00"], {
    number: "TW-0168",
    name: "Eirini Kastanaki Holm",
    ageYears: 49.6,
    heightMm: 1690,
    massKg: 67,
    handedness: "right",
    occupation: "harbour pilot",
    cautions: [{ kind: "bleeding-risk" }],
  });
  person.episode([6, "10:20"], {
    ...fromTheTendon,
    prosthetist: "junior",
    side: "left",
    cause: "trauma",
    lostDaysAgo: 130,
    limbLengthMm: 150,
    suspension: "pin",
    goals: "Climb a pilot ladder again.",
    targetInDays: 120,
  });
  return person.timeline;
};

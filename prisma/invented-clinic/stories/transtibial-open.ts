/** Transtibial: not looked at again, opened twice, or not measured yet. */
import { evenMarks } from "../skin";
import { type Story, wearer } from "../story";
import { steady } from "../trial-events";
import { transtibial } from "./usual";

/** His trial ended half an hour ago: one look at the skin, two minutes after doffing, and no second one yet. */
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
    ...transtibial.opened,
    prosthetist: "lead",
    side: "right",
    cause: "trauma",
    lostDaysAgo: 1700,
    limbLengthMm: 160,
    suspension: "suction",
    goals: "Walk on shingle with a tripod.",
    targetInDays: 7,
  });
  episode.measured([58, "09:10"], transtibial.levels, [359, 351, 336, 317, 295]);
  const limb = episode.measured([26, "09:10"], transtibial.levels, [359, 351, 336, 316.5, 295]);
  const one = episode.socket([24, "10:00"], { ...transtibial.socket, limb, tighterPercent: 2 });
  one.bench({ begun: [22, "08:30"], atHand: [13, "09:00"] });
  one.fitted([8, "09:00"], {
    drops: { 30: 1.2, 60: 2.2, 90: 3.1 },
    motion: { "knee-flexion": [131, 127] },
    comfort: 8,
    pain: 0,
    looks: { at: [2], marks: evenMarks(80) },
  });
  one.worn(
    { minutesAgo: 65 },
    {
      minutes: 30,
      doing: ["walking on the beach", "carrying a tripod"],
      asked: steady(30, [8, 0, 4]),
      looks: { at: [2], marks: evenMarks(80, { seen: ["clear"] }), note: "Four marks, all of them still there." },
    },
  );
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
    ...transtibial.opened,
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
  episode.measured([46, "11:00"], transtibial.levels, [348, 340, 325, 306, 284]);
  const limb = episode.measured([25, "11:00"], transtibial.levels, [348, 340, 324.5, 306, 284]);
  const one = episode.socket([23, "10:00"], { ...transtibial.socket, limb, tighterPercent: 1.5 });
  one.bench({ begun: [21, "08:30"], atHand: [13, "09:00"] });
  one.fitted([6, "11:00"], {
    checks: { length: "not met", sitting: "not done", "comfort-walking": "concern" },
    drops: { 30: 1.7, 60: 2.9, 90: 4.1 },
    motion: { "knee-flexion": [124, 119] },
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
  const person = wearer("harbour pilot", calendar, [2, "10:00"], {
    number: "TW-0168",
    name: "Eirini Kastanaki Holm",
    ageYears: 49.6,
    heightMm: 1690,
    massKg: 67,
    handedness: "right",
    occupation: "harbour pilot",
    cautions: [{ kind: "bleeding-risk" }],
  });
  person.episode([2, "10:20"], {
    ...transtibial.opened,
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

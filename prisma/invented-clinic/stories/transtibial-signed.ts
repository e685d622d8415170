/** Transtibial: a release that was withdrawn, and a wearer with two limbs to fit. */
import { evenMarks } from "../skin";
import { type Story, wearer } from "../story";
import { steady } from "../trial-events";
import { transtibial } from "./usual";

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
    ...transtibial.opened,
    prosthetist: "lead",
    side: "right",
    cause: "trauma",
    lostDaysAgo: 1090,
    limbLengthMm: 148,
    suspension: "pin",
    goals: "Ladders, with both hands free.",
    targetInDays: 3,
  });
  episode.measured([90, "08:30"], transtibial.levels, [344, 336, 321, 302, 280]);
  const limb = episode.measured([40, "08:30"], transtibial.levels, [344, 336, 320.5, 302, 280]);
  const one = episode.socket([38, "10:00"], {
    ...transtibial.socket,
    limb,
    tighterPercent: 1.5,
    benchNote: "Pin lock for the 6 mm liner.",
  });
  one.bench({ begun: [36, "08:30"], atHand: [26, "09:00"] });
  one.fitted([22, "08:30"], {
    drops: { 30: 1.4, 60: 2.5, 90: 3.5 },
    motion: { "knee-flexion": [134, 130] },
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
  const bothLost = {
    ...transtibial.opened,
    prosthetist: "lead",
    cause: "infection",
    lostDaysAgo: 940,
    limbLengthMm: 140,
  } as const;
  const right = person.episode([306, "16:50"], {
    ...bothLost,
    side: "right",
    suspension: "suction",
    goals: "Walk to the lecture hall without the chair.",
    targetInDays: -200,
  });
  right.measured([304, "15:00"], transtibial.levels, [321, 313, 298, 280, 259]);
  const limb = right.measured([270, "15:00"], transtibial.levels, [321, 312.5, 298, 280, 259]);
  const one = right.socket([268, "10:00"], { ...transtibial.socket, limb, tighterPercent: 2 });
  one.bench({ begun: [266, "08:30"], atHand: [258, "09:00"] });
  one.fitted([254, "15:00"], {
    drops: { 30: 1.1, 60: 2.0, 90: 2.8 },
    motion: { "knee-flexion": [136, 132] },
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
  left.measured([56, "15:00"], transtibial.levels, [324, 316, 300, 282, 261]);
  const other = left.measured([20, "15:00"], transtibial.levels, [324, 315.5, 300, 282, 261]);
  const first = left.socket([18, "10:00"], { ...transtibial.socket, limb: other, tighterPercent: 2 });
  first.bench({ begun: [16, "08:30"], atHand: [8, "09:00"] });
  first.fitted([5, "15:00"], {
    drops: { 30: 1.2, 60: 2.1, 90: 3.0 },
    motion: { "knee-flexion": [135, 131] },
    comfort: 8,
    pain: 0,
    words: "As good as the right one on its first day.",
    looks: { at: [2], marks: evenMarks(70) },
  });
  first.trialPlanned([4, "16:30"], { minutes: 30, doing: ["walking with two sticks", "stairs"], watchedBy: "Lior Menezes" });
  return person.timeline;
};

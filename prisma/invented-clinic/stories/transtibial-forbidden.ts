/** Transtibial: a trial that was stopped, and skin that was open at doffing. */
import { type Story, wearer } from "../story";
import { steady } from "../trial-events";
import { transtibial } from "./usual";

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
    ...transtibial.opened,
    prosthetist: "junior",
    side: "right",
    cause: "trauma",
    lostDaysAgo: 980,
    limbLengthMm: 138,
    suspension: "vacuum",
    goals: "Her old round: 9 km with stairs.",
    targetInDays: 15,
  });
  episode.measured([74, "16:40"], transtibial.levels, [338, 330, 315, 297, 276]);
  const limb = episode.measured([38, "16:40"], transtibial.levels, [338, 329.5, 315, 297, 276]);
  const one = episode.socket([36, "10:00"], { ...transtibial.socket, limb, tighterPercent: 2.5 });
  one.bench({ begun: [34, "08:30"], atHand: [26, "09:00"] });
  one.fitted([19, "16:30"], {
    drops: { 30: 0.9, 60: 1.7, 90: 2.4 },
    motion: { "knee-flexion": [135, 131] },
    comfort: 7,
    pain: 1,
    words: "Firm. Like a good boot.",
    looks: { at: [3], marks: [{ name: "below the kneecap", endMm: 134, angleDeg: 0, sizeMm: [40, 10], seen: ["clear"] }] },
  });
  one.worn([11, "16:30"], {
    minutes: 30,
    doing: ["walking outside", "stairs"],
    asked: { comfort: [7, 7, 6], pain: [1, 1, 2], exertion: [2, 3, 4], felt: { 15: ["numbness anterior proximal"] } },
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
    ...transtibial.opened,
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
  episode.measured([88, "08:40"], transtibial.levels, [351, 343, 328, 309, 287]);
  const limb = episode.measured([29, "08:40"], transtibial.levels, [351, 343, 327.5, 309, 287]);
  const one = episode.socket([27, "10:00"], { ...transtibial.socket, limb, tighterPercent: 2 });
  one.bench({ begun: [25, "08:30"], atHand: [21, "09:00"] });
  one.fitted([15, "08:40"], {
    checks: { "bony-relief": "concern" },
    drops: { 30: 1.3, 60: 2.3, 90: 3.2 },
    motion: { "knee-flexion": [126, 121] },
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

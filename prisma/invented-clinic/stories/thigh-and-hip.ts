/** Transfemoral: held, closed, delivered; and hip disarticulation. */
import { evenMarks } from "../skin";
import { type Story, wearer } from "../story";
import { steady } from "../trial-events";
import { transfemoral } from "./usual";

const thighMarks = (seen: ("faint" | "clear" | "none")[] = ["faint", "none"]) => evenMarks(130, { sizeMm: [60, 40], seen });

/** On hold: the skin comes first. */
export const potter: Story = (calendar) => {
  const person = wearer("potter", calendar, [88, "10:40"], {
    number: "TW-0144",
    name: "Shanthi Raghunadan",
    ageYears: 43.9,
    heightMm: 1600,
    massKg: 57,
    handedness: "right",
    occupation: "potter",
    cautions: [{ kind: "infection", note: "Inflamed hair roots near the groin, under treatment" }],
  });
  const episode = person.episode([88, "11:00"], {
    ...transfemoral.opened,
    prosthetist: "lead",
    side: "left",
    cause: "infection",
    lostDaysAgo: 510,
    limbLengthMm: 230,
    suspension: "suction",
    goals: "Work the foot-driven wheel.",
    targetInDays: 50,
  });
  episode.cautionsRead([88, "11:20"]);
  episode.measured([86, "10:50"], transfemoral.levels, [509, 484, 452, 415, 374]);
  const limb = episode.measured([50, "10:50"], transfemoral.levels, [508, 483.5, 451, 414.5, 374]);
  const one = episode.socket([48, "10:00"], { ...transfemoral.socket, limb, tighterPercent: 1 });
  one.bench({ begun: [46, "08:30"], atHand: [36, "09:00"] });
  one.fitted([30, "10:40"], {
    checks: { "trim-lines": "concern" },
    drops: { 30: 2.2, 60: 3.9, 90: 5.5 },
    motion: { "hip-extension": [17, 14] },
    comfort: 7,
    pain: 2,
    looks: { at: [2], marks: [{ name: "groin", endMm: 222, angleDeg: 275, sizeMm: [36, 20], seen: ["clear"], warm: true }] },
  });
  episode.course(
    [28, "09:00"],
    "on hold",
    "Inflamed hair roots at the inner edge. Her physician treats them; no socket is worn until the skin is quiet.",
  );
  return person.timeline;
};

/** Closed: he moved away and took his record with him. */
export const organTuner: Story = (calendar) => {
  const person = wearer("organ tuner", calendar, [200, "13:10"], {
    number: "TW-0116",
    name: "Pavel Drozdecki",
    ageYears: 59.8,
    heightMm: 1780,
    massKg: 85,
    handedness: "left",
    occupation: "organ tuner",
  });
  const episode = person.episode([200, "13:30"], {
    ...transfemoral.opened,
    prosthetist: "lead",
    side: "right",
    cause: "trauma",
    lostDaysAgo: 3300,
    limbLengthMm: 268,
    suspension: "suction",
    goals: "Climb into organ lofts.",
  });
  episode.measured([198, "13:20"], transfemoral.levels, [571, 545, 511, 470, 424]);
  const limb = episode.measured([170, "13:20"], transfemoral.levels, [571, 545, 510.5, 470, 424]);
  const one = episode.socket([168, "10:00"], { ...transfemoral.socket, limb, tighterPercent: 1 });
  one.bench({ begun: [166, "08:30"], atHand: [156, "09:00"] });
  one.fitted([150, "13:00"], {
    checks: { suspension: "concern" },
    drops: { 30: 3.1, 60: 5.5, 90: 7.8 },
    motion: { "hip-extension": [15, 12] },
    comfort: 7,
    pain: 1,
    looks: { at: [2], marks: thighMarks() },
  });
  episode.course(
    [141, "10:00"],
    "closed",
    "He has moved to the capital and goes on at a clinic there; his record went with him as a file.",
  );
  return person.timeline;
};

/** Delivered in the first months of the clinic. */
export const swimmingTeacher: Story = (calendar) => {
  const person = wearer("swimming teacher", calendar, [340, "09:00"], {
    number: "TW-0031",
    name: "Caoimhe Varga Sousa",
    ageYears: 33.6,
    heightMm: 1740,
    massKg: 68,
    handedness: "right",
    occupation: "swimming teacher",
  });
  const episode = person.episode([340, "09:20"], {
    ...transfemoral.opened,
    prosthetist: "lead",
    side: "right",
    cause: "trauma",
    lostDaysAgo: 1600,
    limbLengthMm: 255,
    suspension: "vacuum",
    goals: "Walk along the pool for a whole lesson.",
    targetInDays: -250,
  });
  episode.measured([338, "09:10"], transfemoral.levels, [534, 509, 476, 437, 393]);
  const limb = episode.measured([306, "09:10"], transfemoral.levels, [534, 509, 475.5, 437, 393]);
  const one = episode.socket([304, "10:00"], { ...transfemoral.socket, limb, tighterPercent: 1 });
  one.bench({ begun: [302, "08:30"], atHand: [299, "09:00"] });
  one.fitted([296, "09:00"], {
    checks: { "trim-lines": "not met" },
    drops: { 30: 1.5, 60: 2.7, 90: 3.9 },
    motion: { "hip-extension": [16, 12] },
    comfort: 6,
    pain: 2,
    words: "It digs in at the front when I bend.",
    looks: { at: [2], marks: [{ name: "front edge", endMm: 245, angleDeg: 0, sizeMm: [60, 10], seen: ["clear"] }] },
  });
  const two = one.next([292, "10:00"], {
    ...transfemoral.socket,
    limb,
    adjustments: [
      {
        kind: "trim",
        aspect: "anterior",
        third: "proximal",
        amount: 9,
        unit: "mm",
        reason: "The front edge digs in when she bends",
        answers: "check:trim-lines",
      },
    ],
  });
  two.bench({ begun: [290, "08:30"], atHand: [287, "09:00"] });
  two.fitted([285, "09:00"], {
    drops: { 30: 1.4, 60: 2.6, 90: 3.7 },
    motion: { "hip-extension": [16, 14] },
    comfort: 9,
    pain: 0,
    looks: { at: [2], marks: thighMarks() },
  });
  two.worn([283, "09:00"], {
    minutes: 30,
    doing: ["walking on wet tiles", "bending to the water"],
    asked: steady(30, [9, 0, 3]),
    looks: { at: [1, 8], marks: thighMarks() },
  });
  episode.signed([280, "10:00"], "release for definitive fabrication");
  episode.delivered([254, "10:00"]);
  return person.timeline;
};

/** Hip disarticulation: ordered, needed two weeks ago, not begun. */
export const sailmaker: Story = (calendar) => {
  const person = wearer("sailmaker", calendar, [75, "14:30"], {
    number: "TW-0147",
    name: "Raúl Ixtlán Moura",
    ageYears: 43.3,
    heightMm: 1700,
    massKg: 73,
    handedness: "right",
    occupation: "sailmaker",
  });
  const episode = person.episode([75, "14:50"], {
    prosthetist: "lead",
    side: "right",
    level: "hip disarticulation",
    cause: "tumour",
    lostDaysAgo: 660,
    landmark: "crest of the hip bone",
    stationsFrom: "proximal landmark",
    limbLengthMm: 150,
    suspension: "other",
    goals: "Sit level at the sewing bench; walk to the sail loft.",
    targetInDays: 35,
  });
  episode.measured([73, "14:30"], transfemoral.levels, [872, 918, 961, 934], { method: "scan" });
  const limb = episode.measured([41, "14:30"], transfemoral.levels, [871, 918, 960, 934], { method: "scan" });
  episode.socket([39, "10:00"], {
    limb,
    tighterPercent: 2,
    material: "flexible inner shell, rigid frame on the sound side",
    wallMm: 6,
    trimLines: "Above both crests, open over the sound side",
    benchNote: "Seat cushion 12 mm on the right.",
    neededDaysAgo: 16,
  });
  return person.timeline;
};

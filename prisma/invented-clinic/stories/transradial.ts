/** Transradial, the shorter series. */
import { evenMarks } from "../skin";
import { type Story, wearer } from "../story";
import { steady } from "../trial-events";
import { clearArmSocket, fromTheEnd } from "./usual";

const overTheElbow = { trimLines: "Over both epicondyles, olecranon covered" };

/** A purple mark at the end: suspected deep tissue damage, so nothing is released and a physician is called. */
export const netMender: Story = (calendar) => {
  const person = wearer("net mender", calendar, [74, "13:30"], {
    number: "TW-0139",
    name: "Kwabena Frimpong-Aas",
    ageYears: 63.8,
    heightMm: 1740,
    massKg: 79,
    handedness: "right",
    occupation: "net mender",
    cautions: [{ kind: "bleeding-risk", note: "Takes a blood thinner" }],
  });
  const episode = person.episode([74, "13:50"], {
    ...fromTheEnd,
    level: "transradial",
    prosthetist: "lead",
    side: "right",
    cause: "trauma",
    lostDaysAgo: 6900,
    limbLengthMm: 158,
    suspension: "pin",
    device: { massKg: 0.74, centreMm: 230 },
    goals: "Tie net knots again; pull a trawl net over the rail.",
    targetInDays: 15,
  });
  episode.cautionsRead([74, "14:10"]);
  episode.measured([72, "13:30"], 40, [171, 184, 199, 216]);
  const limb = episode.measured([31, "13:30"], 40, [171, 183.5, 199, 216]);
  const one = episode.socket([29, "10:00"], { ...clearArmSocket, limb, tighterPercent: 2 });
  one.bench({ begun: [27, "09:00"], atHand: [24, "09:10"] });
  one.fitted([18, "13:30"], {
    checks: { "bony-relief": "concern" },
    drops: { 15: 1.0, 30: 1.8, 45: 2.5 },
    motion: { "elbow-flexion": [134, 132] },
    comfort: 7,
    pain: 1,
    looks: { at: [3], marks: evenMarks(70) },
  });
  one.worn([4, "13:30"], {
    minutes: 30,
    load: { kg: 0.74, atMm: 230 },
    doing: ["pulling a net over a rail", "tying knots"],
    asked: steady(30, [7, 1, 4]),
    looks: {
      at: [1, 10, 25],
      note: "Physician called at once; seen the same afternoon. Nothing is worn.",
      marks: [
        {
          name: "distal end",
          endMm: 7,
          angleDeg: 150,
          sizeMm: [20, 14],
          seen: ["purple", "purple", "purple"],
          blanches: ["no"],
          firm: true,
          warm: true,
        },
        { name: "outer side", endMm: 80, angleDeg: 90, sizeMm: [26, 18], seen: ["faint", "none"] },
      ],
    },
  });
  return person.timeline;
};

/** Everything about the socket is good, but the limb was last measured eleven weeks before the trial. */
export const translator: Story = (calendar) => {
  const person = wearer("translator", calendar, [128, "10:00"], {
    number: "TW-0129",
    name: "Sunniva Okereke Dahl",
    ageYears: 38.9,
    heightMm: 1760,
    massKg: 68,
    handedness: "right",
    occupation: "translator",
  });
  const episode = person.episode([128, "10:20"], {
    ...fromTheEnd,
    level: "transradial",
    prosthetist: "junior",
    side: "left",
    cause: "infection",
    lostDaysAgo: 1500,
    limbLengthMm: 150,
    suspension: "self-suspending",
    device: { massKg: 0.62, centreMm: 210 },
    goals: "Type with both hands; hold a railing on the ferry.",
    targetInDays: 6,
  });
  episode.measured([126, "10:00"], 40, [168, 181, 196, 212]);
  const limb = episode.measured([90, "10:00"], 40, [168, 180.5, 196, 212], { minutesSinceDoffing: 10 });
  const one = episode.socket([86, "11:00"], { ...clearArmSocket, ...overTheElbow, limb, tighterPercent: 2 });
  one.bench({ begun: [84, "09:00"], sent: [78, "15:30"], atHand: [73, "11:00"] });
  one.fitted([20, "10:00"], {
    place: "video",
    whoWasThere: "Her mother held the tape and the spring scale",
    drops: { 15: 1.3, 30: 2.1, 45: 3.0 },
    motion: { "elbow-flexion": [141, 136] },
    comfort: 8,
    pain: 0,
    words: "I was away for two months. It still fits.",
  });
  one.worn([13, "10:00"], {
    minutes: 20,
    load: { kg: 0.62, atMm: 210 },
    doing: ["typing", "carrying a bag"],
    watchedBy: "Lior Menezes, over video",
    enteredAfterwards: true,
    asked: steady(20, [8, 0, 2]),
    looks: { at: [2, 10], marks: evenMarks(75) },
  });
  return person.timeline;
};

/** The trial was run with what was at hand: two thirds of the weight, and closer to the elbow. */
export const electrician: Story = (calendar) => {
  const person = wearer("electrician", calendar, [58, "08:30"], {
    number: "TW-0155",
    name: "Baptiste Kerhuel",
    ageYears: 33.2,
    heightMm: 1810,
    massKg: 84,
    handedness: "left",
    occupation: "ship's electrician",
  });
  const episode = person.episode([58, "08:50"], {
    ...fromTheEnd,
    level: "transradial",
    prosthetist: "junior",
    side: "right",
    cause: "trauma",
    lostDaysAgo: 640,
    limbLengthMm: 182,
    suspension: "pin",
    device: { massKg: 0.92, centreMm: 250, note: "Powered hand with its battery" },
    goals: "Strip and hold cable in a cupboard he cannot see into.",
    targetInDays: 9,
  });
  episode.measured([56, "08:40"], 40, [186, 199, 214, 231, 249]);
  const limb = episode.measured([30, "08:40"], 40, [186, 199, 213.5, 231, 249]);
  const one = episode.socket([28, "10:30"], { ...clearArmSocket, limb, tighterPercent: 2 });
  one.bench({ begun: [26, "09:00"], atHand: [18, "09:00"] });
  one.fitted([14, "08:30"], {
    drops: { 15: 0.9, 30: 1.6, 45: 2.2 },
    motion: { "elbow-flexion": [143, 141] },
    comfort: 8,
    pain: 0,
    looks: { at: [2], marks: evenMarks(90) },
  });
  one.worn([10, "08:30"], {
    minutes: 20,
    load: { kg: 0.6, atMm: 220 },
    doing: ["stripping cable", "reaching into a cupboard"],
    asked: steady(20, [8, 0, 3]),
    looks: { at: [1, 10], marks: evenMarks(90, { seen: ["clear", "none"] }) },
  });
  return person.timeline;
};

/** Pain stays low, but it climbs at every question; with a longer day it would not stay low. */
export const glassblower: Story = (calendar) => {
  const person = wearer("glassblower", calendar, [70, "09:00"], {
    number: "TW-0141",
    name: "Yusuf Demirkol",
    ageYears: 39.5,
    heightMm: 1770,
    massKg: 77,
    handedness: "right",
    occupation: "glassblower",
    cautions: [{ kind: "fragile-skin", note: "Grafted skin on the inner side, from a burn" }],
  });
  const episode = person.episode([70, "09:20"], {
    ...fromTheEnd,
    level: "transradial",
    prosthetist: "lead",
    side: "left",
    cause: "trauma",
    lostDaysAgo: 1120,
    limbLengthMm: 165,
    suspension: "suction",
    device: { massKg: 0.7, centreMm: 225 },
    goals: "Turn the pipe for an hour at a time.",
    targetInDays: 20,
  });
  episode.cautionsRead([70, "09:40"]);
  episode.measured([68, "09:10"], 40, [174, 187, 202, 218, 236]);
  const limb = episode.measured([32, "09:10"], 40, [174, 187, 201.5, 218, 236]);
  const one = episode.socket([30, "11:00"], { ...clearArmSocket, limb, tighterPercent: 2.5 });
  one.bench({ begun: [28, "09:00"], atHand: [20, "09:00"] });
  one.fitted([12, "09:00"], {
    drops: { 15: 0.8, 30: 1.5, 45: 2.2 },
    motion: { "elbow-flexion": [140, 138] },
    comfort: 8,
    pain: 0,
    looks: { at: [2], marks: evenMarks(82) },
  });
  one.worn([5, "09:30"], {
    minutes: 40,
    load: { kg: 0.7, atMm: 225 },
    doing: ["turning a pipe", "lifting the pipe to the rail"],
    asked: {
      comfort: [8, 8, 8, 8, 7, 7, 7, 7],
      pain: [0, 0, 1, 1, 2, 2, 3, 3],
      exertion: [1, 2, 3, 3, 4, 4, 5, 5],
      felt: {
        25: ["heat medial middle"],
        30: ["heat medial middle"],
        35: ["rubbing medial middle"],
        40: ["rubbing medial middle"],
      },
    },
    looks: { at: [1, 8, 18], marks: evenMarks(82, { seen: ["clear", "faint", "none"] }) },
  });
  return person.timeline;
};

/** Made and waiting on the bench to be sent to him. */
export const tramDriver: Story = (calendar) => {
  const person = wearer("tram driver", calendar, [37, "16:00"], {
    number: "TW-0163",
    name: "Mihály Keresztesi",
    ageYears: 58.4,
    heightMm: 1730,
    massKg: 91,
    handedness: "right",
    occupation: "tram driver",
  });
  const episode = person.episode([37, "16:20"], {
    ...fromTheEnd,
    level: "transradial",
    prosthetist: "lead",
    side: "right",
    cause: "vascular",
    lostDaysAgo: 400,
    limbLengthMm: 140,
    suspension: "harness",
    goals: "Drive again: hold the lever for a whole shift.",
    targetInDays: 60,
  });
  const limb = episode.measured([35, "16:00"], 40, [179, 193, 208, 226]);
  const one = episode.socket([33, "10:00"], {
    ...clearArmSocket,
    limb,
    tighterPercent: 1.5,
    benchNote: "Send with the spring scale and the return box.",
    neededDaysAgo: -6,
  });
  one.bench({ begun: [5, "09:00"] });
  return person.timeline;
};

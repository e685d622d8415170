/** Partial foot and ankle disarticulation. */
import { evenMarks } from "../skin";
import { type Story, wearer } from "../story";
import { steady } from "../trial-events";

/** One spot still does not blanch 20 minutes after doffing: a pressure injury of the first stage. */
export const choirSinger: Story = (calendar) => {
  const person = wearer("choir singer", calendar, [82, "11:00"], {
    number: "TW-0138",
    name: "Pilar Goikuria",
    ageYears: 72.6,
    heightMm: 1580,
    massKg: 69,
    handedness: "right",
    occupation: "sings in two choirs",
    cautions: [
      { kind: "reduced-feeling", note: "Does not feel the sole" },
      { kind: "fragile-skin" },
      { kind: "poor-circulation" },
    ],
  });
  const episode = person.episode([82, "11:20"], {
    prosthetist: "lead",
    side: "right",
    level: "partial foot",
    cause: "infection",
    lostDaysAgo: 760,
    landmark: "back of the heel",
    stationsFrom: "proximal landmark",
    limbLengthMm: 165,
    suspension: "strap",
    goals: "Stand through a concert; climb to the organ loft.",
    targetInDays: 12,
  });
  episode.cautionsRead([82, "11:50"]);
  episode.measured([80, "11:10"], 40, [318, 286, 252, 241]);
  const limb = episode.measured([31, "11:10"], 40, [318, 286, 251.5, 241]);
  const one = episode.socket([29, "10:00"], {
    limb,
    tighterPercent: 0.5,
    material: "soft foam in a laminated shell",
    wallMm: 9,
    trimLines: "Below both ankles",
  });
  one.bench({ begun: [27, "09:00"], atHand: [24, "09:00"] });
  one.fitted([17, "11:00"], {
    drops: { 30: 1.2, 60: 2.1, 90: 2.9 },
    motion: { "ankle-flexion": [24, 22] },
    comfort: 8,
    pain: 0,
    words: "Soft. I could sing in it.",
    looks: { at: [2], marks: evenMarks(60) },
  });
  one.worn([5, "11:00"], {
    minutes: 20,
    doing: ["standing at a music stand", "walking in the corridor"],
    asked: steady(20, [8, 0, 2]),
    looks: {
      at: [1, 5, 10, 20, 45],
      note: "She felt nothing of it. Physician called; the foot is unloaded until it is seen.",
      marks: [
        ...evenMarks(60, { seen: ["faint", "faint", "none"] }),
        {
          name: "end, inner side",
          endMm: 9,
          angleDeg: 265,
          sizeMm: [22, 16],
          seen: ["deep", "deep", "deep", "clear", "clear"],
          blanches: ["yes", "not tested", "no"],
          warm: true,
        },
      ],
    },
  });
  return person.timeline;
};

/** Nothing hurts, but the marks at the end take more than half an hour to go. */
export const lighthouseGuide: Story = (calendar) => {
  const person = wearer("lighthouse guide", calendar, [104, "12:00"], {
    number: "TW-0130",
    name: "Tevita Halafihi-Moe",
    ageYears: 36.1,
    heightMm: 1860,
    massKg: 104,
    handedness: "right",
    occupation: "guide at the lighthouse",
  });
  const episode = person.episode([104, "12:20"], {
    prosthetist: "junior",
    side: "left",
    level: "ankle disarticulation",
    cause: "trauma",
    lostDaysAgo: 1450,
    landmark: "distal end of the residual limb",
    stationsFrom: "distal end",
    limbLengthMm: 392,
    suspension: "self-suspending",
    goals: "214 steps up and 214 down, four times a day.",
    targetInDays: 10,
  });
  episode.measured([102, "12:10"], 75, [302, 251, 288, 371, 389]);
  const before = episode.measured([70, "12:10"], 75, [302, 250.5, 288, 371, 389]);
  const one = episode.socket([68, "10:00"], {
    limb: before,
    tighterPercent: 1,
    material: "clear copolyester",
    wallMm: 8,
    trimLines: "To the knee; window on the inner side",
  });
  one.bench({ begun: [66, "09:00"], atHand: [56, "09:00"] });
  one.fitted([50, "12:00"], {
    checks: { donning: "not met", "end-contact": "concern" },
    drops: { 30: 2.0, 60: 3.4, 90: 4.7 },
    motion: { "knee-flexion": [132, 128] },
    comfort: 6,
    pain: 2,
    words: "The heel end will not go through the narrow part.",
    looks: { at: [2], marks: [{ name: "end, bottom", endMm: 3, angleDeg: 180, sizeMm: [40, 10], seen: ["clear"] }] },
  });
  const limb = episode.measured([33, "12:10"], 75, [302, 250.5, 287.5, 371, 389]);
  const two = one.next([31, "10:00"], {
    limb,
    material: "clear copolyester",
    wallMm: 8,
    adjustments: [
      { kind: "closure", reason: "Window opened to 90 mm so that the heel end passes", answers: "check:donning" },
      { kind: "volume", amount: 1.5, unit: "percent", reason: "Looser over the waist of the limb", answers: "check:donning" },
    ],
  });
  two.bench({ begun: [29, "09:00"], atHand: [19, "09:00"] });
  two.fitted([12, "12:00"], {
    drops: { 30: 1.9, 60: 3.3, 90: 4.6 },
    motion: { "knee-flexion": [132, 129] },
    comfort: 8,
    pain: 1,
    words: "In and out in a minute.",
    looks: { at: [2], marks: [{ name: "end, bottom", endMm: 3, angleDeg: 180, sizeMm: [44, 12], seen: ["clear"] }] },
  });
  two.worn([6, "12:00"], {
    minutes: 40,
    doing: ["stairs, 60 up and 60 down", "standing"],
    asked: steady(40, [8, 1, 4]),
    looks: {
      at: [1, 10, 20, 35],
      marks: [
        {
          name: "end, bottom",
          endMm: 3,
          angleDeg: 180,
          sizeMm: [44, 12],
          seen: ["clear", "clear", "clear", "none"],
          fadedAtMin: 33,
        },
        ...evenMarks(200, { sizeMm: [40, 30] }),
      ],
    },
  });
  return person.timeline;
};

/** Transhumeral and shoulder disarticulation. */
import { evenMarks } from "../skin";
import { type Story, wearer } from "../story";
import { steady } from "../trial-events";
import { clearArmSocket, fromTheEnd } from "./usual";

/** A growing child: that her limb has stopped changing cannot be shown, and her prosthetist accepts it with a reason. */
export const schoolchild: Story = (calendar) => {
  const person = wearer("schoolchild", calendar, [97, "15:10"], {
    number: "TW-0134",
    name: "Nia Brandvold",
    ageYears: 9.4,
    heightMm: 1340,
    massKg: 30,
    handedness: "right",
    occupation: "goes to school, fourth year",
  });
  const episode = person.episode([97, "15:30"], {
    ...fromTheEnd,
    prosthetist: "lead",
    side: "left",
    level: "transhumeral",
    cause: "congenital",
    limbLengthMm: 130,
    suspension: "harness",
    device: { massKg: 0.34, centreMm: 190, note: "Light elbow with a swimming end and a bicycle end" },
    goals: "Ride her bicycle with both hands on the bar. Hold the skipping rope.",
    targetInDays: 14,
  });
  episode.measured([95, "15:10"], 30, [142, 150, 160, 169, 180]);
  const before = episode.measured([62, "15:10"], 30, [144, 152.5, 163, 172, 183]);
  const one = episode.socket([60, "10:30"], { ...clearArmSocket, limb: before, tighterPercent: 1 });
  one.bench({ begun: [58, "09:00"], atHand: [51, "09:00"] });
  one.fitted([48, "15:20"], {
    checks: { "trim-lines": "not met", rotation: "concern" },
    drops: { 33: 7.9, 66: 13.6, 98: 19.0 },
    motion: { "shoulder-flexion": [172, 150] },
    comfort: 6,
    pain: 1,
    words: "It pokes under my arm.",
    looks: { at: [2], marks: [{ name: "under the arm", endMm: 122, angleDeg: 268, sizeMm: [32, 8], seen: ["clear"] }] },
  });
  const lately = episode.measured([34, "15:10"], 30, [147.5, 156, 167, 176.5, 187.5]);
  const two = one.next([32, "10:30"], {
    ...clearArmSocket,
    limb: lately,
    adjustments: [
      { kind: "volume", amount: 4.5, unit: "percent", reason: "She has grown; the limb is 5 % larger" },
      {
        kind: "trim",
        aspect: "medial",
        third: "proximal",
        amount: 8,
        unit: "mm",
        reason: "The edge pokes under the arm",
        answers: "check:trim-lines",
      },
    ],
  });
  two.bench({ begun: [30, "09:00"], atHand: [23, "09:00"] });
  two.fitted([20, "15:20"], {
    drops: { 33: 3.6, 66: 6.3, 98: 8.9 },
    motion: { "shoulder-flexion": [172, 168] },
    comfort: 9,
    pain: 0,
    words: "I rode all the way round the yard!",
    looks: { at: [2], marks: evenMarks(65, { sizeMm: [18, 14] }) },
  });
  two.worn([16, "15:10"], {
    minutes: 20,
    load: { kg: 0.34, atMm: 190 },
    doing: ["holding the bar of a bicycle", "skipping rope"],
    watchedBy: "Her father, with Lior Menezes",
    asked: steady(20, [9, 0, 2]),
    looks: { at: [1, 9], marks: evenMarks(65, { sizeMm: [18, 14] }) },
  });
  two.carries([10, "09:30"], {
    kind: "relief",
    aspect: "medial",
    third: "proximal",
    amount: 1.5,
    unit: "mm",
    reason: "The edge under the arm is felt at the end of a long ride",
  });
  two.carries([10, "09:35"], {
    kind: "trim",
    aspect: "posterior",
    third: "proximal",
    amount: 4,
    unit: "mm",
    reason: "Room to reach back",
  });
  episode.signed([9, "11:00"], "release for definitive fabrication", [
    {
      gate: "limb-settled",
      why: "She is nine and grows; a settled limb cannot be waited for. The liner leaves room for 6 %, and she is measured again every six weeks.",
    },
  ]);
  return person.timeline;
};

/** The trial ended after twelve of twenty minutes: she was called away to a calving. */
export const vet: Story = (calendar) => {
  const person = wearer("vet", calendar, [62, "12:30"], {
    number: "TW-0153",
    name: "Ilse Marjanovik",
    ageYears: 45.1,
    heightMm: 1680,
    massKg: 66,
    handedness: "left",
    occupation: "veterinarian for cattle",
  });
  const episode = person.episode([62, "12:50"], {
    ...fromTheEnd,
    prosthetist: "junior",
    side: "left",
    level: "transhumeral",
    cause: "trauma",
    lostDaysAgo: 1900,
    limbLengthMm: 212,
    suspension: "harness",
    device: { massKg: 1.3, centreMm: 280 },
    goals: "Hold a halter; carry a bag of instruments.",
    targetInDays: 18,
  });
  episode.measured([60, "12:40"], 45, [238, 250, 265, 281, 297]);
  const limb = episode.measured([32, "12:40"], 45, [238, 250, 264.5, 281, 297]);
  const one = episode.socket([30, "10:00"], { ...clearArmSocket, limb, tighterPercent: 2 });
  one.bench({ begun: [28, "09:00"], atHand: [20, "09:00"] });
  one.fitted([13, "12:30"], {
    drops: { 70: 4.6, 140: 8.3, 210: 12.1 },
    motion: { "shoulder-flexion": [164, 160] },
    comfort: 8,
    pain: 0,
    looks: { at: [2], marks: evenMarks(105) },
  });
  one.worn([6, "12:30"], {
    minutes: 20,
    load: { kg: 1.3, atMm: 280 },
    doing: ["carrying a bag", "holding a rope"],
    asked: { comfort: [8, 8], pain: [0, 0], exertion: [2, 3] },
    endedAt: 12,
    looks: { at: [2, 10], marks: evenMarks(105), note: "Called away; she comes back for the full time." },
  });
  return person.timeline;
};

/** Measured twice and settled: what is missing is a first socket. */
export const deckhand: Story = (calendar) => {
  const person = wearer("deckhand", calendar, [33, "14:00"], {
    number: "TW-0164",
    name: "Aroha Lundqvist",
    ageYears: 29.8,
    heightMm: 1750,
    massKg: 70,
    handedness: "right",
    occupation: "deckhand on the river ferry",
    cautions: [{ kind: "swelling", note: "The side of the chest swells in the evening since radiotherapy" }],
  });
  const episode = person.episode([33, "14:20"], {
    prosthetist: "lead",
    side: "left",
    level: "shoulder disarticulation",
    cause: "tumour",
    lostDaysAgo: 610,
    landmark: "top of the shoulder",
    stationsFrom: "proximal landmark",
    limbLengthMm: 120,
    suspension: "harness",
    goals: "Carry a tray of cups on deck. Look even in a jacket.",
    targetInDays: 90,
  });
  episode.cautionsRead([33, "14:40"]);
  episode.measured([25, "14:10"], 40, [402, 431, 468, 492], { method: "scan" });
  episode.measured([4, "14:10"], 40, [401, 431, 467, 492], { method: "scan" });
  return person.timeline;
};

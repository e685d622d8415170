/** Elbow disarticulation. */
import { evenMarks } from "../skin";
import { type Story, wearer } from "../story";
import { clearArmSocket, fromTheEnd } from "./usual";

/** His trial is running at the moment of loading. */
export const welder: Story = (calendar) => {
  const person = wearer("welder", calendar, [84, "09:00"], {
    number: "TW-0137",
    name: "Dragan Velebitski",
    ageYears: 47.7,
    heightMm: 1830,
    massKg: 95,
    handedness: "right",
    occupation: "welder at the dry dock",
  });
  const episode = person.episode([84, "09:20"], {
    ...fromTheEnd,
    prosthetist: "lead",
    side: "right",
    level: "elbow disarticulation",
    cause: "trauma",
    lostDaysAgo: 830,
    limbLengthMm: 305,
    suspension: "self-suspending",
    device: { massKg: 1.15, centreMm: 330, note: "Outside-locking hinges, hook" },
    goals: "Hold the work piece while the left hand welds.",
    targetInDays: 30,
  });
  episode.measured([82, "09:10"], 60, [252, 236, 247, 272, 298]);
  const limb = episode.measured([24, "09:10"], 60, [252, 236, 246.5, 272, 298]);
  const one = episode.socket([22, "10:00"], {
    ...clearArmSocket,
    limb,
    tighterPercent: 2,
    trimLines: "To 30 mm below the armpit; window over the outer condyle with a lid",
  });
  one.bench({ begun: [20, "09:00"], atHand: [12, "09:00"] });
  one.fitted([7, "09:30"], {
    drops: { 15: 1.0, 30: 1.9, 45: 2.7 },
    motion: { "shoulder-flexion": [158, 152] },
    comfort: 8,
    pain: 0,
    words: "The lid is fiddly with one hand, the rest is fine.",
    looks: { at: [2], marks: evenMarks(150) },
  });
  one.worn(
    { minutesAgo: 12 },
    {
      minutes: 30,
      load: { kg: 1.15, atMm: 330 },
      doing: ["holding a plate in a vice", "reaching to a shelf"],
      watchedBy: "Lior Menezes",
      asked: { comfort: [8, 8], pain: [0, 1], exertion: [2, 3] },
      endedAt: null,
    },
  );
  return person.timeline;
};

/** Sharp pain of 8 in the ninth minute: the trial stops, and nothing else about it counts. */
export const craneDriver: Story = (calendar) => {
  const person = wearer("crane driver", calendar, [68, "10:00"], {
    number: "TW-0146",
    name: "Tadeu Urrutikoetxe",
    ageYears: 36.4,
    heightMm: 1790,
    massKg: 86,
    handedness: "left",
    occupation: "crane driver at the container quay",
  });
  const episode = person.episode([68, "10:20"], {
    ...fromTheEnd,
    prosthetist: "lead",
    side: "left",
    level: "elbow disarticulation",
    cause: "trauma",
    lostDaysAgo: 960,
    limbLengthMm: 298,
    suspension: "self-suspending",
    device: { massKg: 1.05, centreMm: 320 },
    goals: "Climb the ladder of the crane with both arms.",
    targetInDays: 21,
  });
  episode.measured([66, "10:10"], 60, [249, 233, 244, 268, 292]);
  const limb = episode.measured([30, "10:10"], 60, [249, 232.5, 244, 268, 292]);
  const one = episode.socket([28, "11:00"], { ...clearArmSocket, limb, tighterPercent: 3 });
  one.bench({ begun: [26, "09:00"], atHand: [22, "09:00"] });
  one.fitted([12, "10:00"], {
    checks: { "bony-relief": "concern" },
    drops: { 15: 0.9, 30: 1.6, 45: 2.3 },
    motion: { "shoulder-flexion": [160, 155] },
    comfort: 7,
    pain: 2,
    words: "Tight over the knob on the inside.",
    looks: {
      at: [2],
      marks: [{ name: "inner condyle", endMm: 24, angleDeg: 270, sizeMm: [18, 14], seen: ["clear"], firm: true }],
    },
  });
  one.worn([5, "10:30"], {
    minutes: 20,
    load: { kg: 1.05, atMm: 320 },
    doing: ["climbing a ladder", "pulling on a rope"],
    asked: { at: [5, 9], comfort: [6, 3], pain: [4, 8], exertion: [3, 3], felt: { 5: ["pressure medial distal"] } },
    stop: { minute: 9, sign: "sharp-pain", note: '"Like a nail into the elbow"; gone a minute after it came off' },
    looks: {
      at: [1, 12, 22],
      marks: [
        {
          name: "inner condyle",
          endMm: 24,
          angleDeg: 270,
          sizeMm: [18, 14],
          seen: ["deep", "clear", "none"],
          firm: true,
          painful: true,
          fadedAtMin: 19,
        },
      ],
    },
  });
  return person.timeline;
};

/** A long lower-limb series on a limb that shrinks: seven sockets in a year, and a trial that is accepted with one adjustment carried. */
import { evenMarks } from "../skin";
import { type Story, wearer } from "../story";
import { legSocket, whileTheLimbShrank } from "./gardener-first-sockets";
import { transtibial } from "./usual";

export const gardener: Story = (calendar) => {
  const person = wearer("gardener", calendar, [332, "09:10"], {
    number: "TW-0038",
    name: "Hedwig Castanheira",
    ageYears: 67.4,
    heightMm: 1640,
    massKg: 71,
    handedness: "right",
    occupation: "gardener at the harbour park, retired",
    cautions: [
      { kind: "reduced-feeling", note: "Does not feel the thin thread below the middle of the limb" },
      { kind: "poor-circulation", note: "Bypass on the same side three years ago" },
    ],
  });
  const episode = person.episode([332, "09:35"], {
    ...transtibial.opened,
    prosthetist: "lead",
    side: "right",
    cause: "vascular",
    lostDaysAgo: 405,
    limbLengthMm: 150,
    suspension: "pin",
    device: { massKg: 1.7, centreMm: 260, note: "Pin lock, dynamic foot of the softest category" },
    goals: "Kneel at the beds and get up again with a spade. Walk to the market and back, 900 m.",
    targetInDays: 10,
  });
  episode.cautionsRead([332, "10:00"]);
  const { four, third } = whileTheLimbShrank(episode);

  const five = four.next([196, "11:00"], {
    ...legSocket,
    lengthMm: 176,
    limb: third,
    adjustments: [
      {
        kind: "relief",
        aspect: "lateral",
        third: "proximal",
        amount: 3,
        unit: "mm",
        reason: "Deep, firm mark over the head of the fibula",
        answers: four.answersMark("head of the fibula"),
      },
      {
        kind: "build-up",
        aspect: "anterior",
        third: "middle",
        amount: 4,
        unit: "mm",
        reason: "To carry more on the front, against the ache at the end after walking",
        answers: "pain",
      },
    ],
  });
  five.bench({ begun: [194, "08:40"], atHand: [185, "09:00"] });
  five.fitted([182, "09:20"], {
    checks: { "bony-relief": "not met", "comfort-walking": "not met" },
    drops: { 30: 2.2, 60: 3.6, 90: 5.0 },
    motion: { "knee-flexion": [128, 114] },
    comfort: 4,
    pain: 5,
    words: "The knob is quiet, but the shin burns.",
    looks: {
      at: [3],
      marks: [
        { name: "head of the fibula", endMm: 132, angleDeg: 96, sizeMm: [12, 12], seen: ["faint"] },
        {
          name: "edge of the tibia",
          endMm: 84,
          angleDeg: 2,
          sizeMm: [16, 56],
          seen: ["deep"],
          firm: true,
          painful: true,
          warm: true,
        },
      ],
    },
  });
  five.worn([182, "10:30"], {
    minutes: 20,
    doing: ["standing at the bars", "walking 20 m"],
    asked: {
      comfort: [5, 4],
      pain: [4, 5],
      exertion: [3, 3],
      felt: { 5: ["pressure anterior middle"], 10: ["heat anterior middle"] },
    },
    stop: { minute: 12, sign: "wearer-asks", note: '"Take it off, please."' },
    looks: {
      at: [1, 10, 20, 40],
      note: "The physician was told: she feels little here.",
      marks: [
        {
          name: "edge of the tibia",
          endMm: 84,
          angleDeg: 2,
          sizeMm: [16, 56],
          seen: ["deep", "deep", "clear", "none"],
          firm: true,
          painful: true,
          warm: true,
          fadedAtMin: 34,
        },
      ],
    },
  });
  five.moved([180, "09:00"], "retired", { note: "Build-up on the tibia did harm; not to be copied" });
  const fourth = episode.measured([124, "09:10"], transtibial.levels, [341, 332, 318, 298, 276.5], { linerOn: true });

  const six = five.next([120, "10:15"], {
    ...legSocket,
    lengthMm: 176,
    limb: fourth,
    adjustments: [
      {
        kind: "relief",
        aspect: "anterior",
        third: "middle",
        amount: 4,
        unit: "mm",
        reason: "Takes the build-up on the tibia out again",
        answers: five.answersMark("edge of the tibia"),
      },
      { kind: "volume", amount: -3.5, unit: "percent", reason: "The limb has lost 4 % since socket 4 was drawn" },
    ],
  });
  six.bench({ begun: [118, "08:30"], atHand: [109, "09:00"] });
  six.fitted([106, "09:30"], {
    checks: { sitting: "concern" },
    drops: { 30: 1.8, 60: 3.1, 90: 4.4 },
    motion: { "knee-flexion": [128, 116] },
    comfort: 7,
    pain: 1,
    words: "Quiet everywhere. When I sit the back edge presses.",
    looks: { at: [3], marks: evenMarks(80) },
  });
  six.worn([104, "09:30"], {
    minutes: 20,
    doing: ["walking in the park", "kneeling once"],
    asked: { comfort: [7, 7, 7, 7], pain: [0, 1, 1, 1], exertion: [2, 3, 3, 4] },
    looks: { at: [1, 10], marks: evenMarks(80, { seen: ["clear", "none"] }) },
  });
  episode.course(
    [100, "15:00"],
    "on hold",
    "Two weeks in hospital with pneumonia, then at her daughter's; nothing is worn until she is back.",
  );
  episode.course([62, "10:00"], "in fitting");
  episode.measured([58, "09:20"], transtibial.levels, [339, 329.5, 315, 295.5, 274], { linerOn: true });
  const fifth = episode.measured([26, "09:20"], transtibial.levels, [338, 329, 315, 295, 273.5], { linerOn: true });

  const seven = six.next([24, "11:00"], {
    ...legSocket,
    lengthMm: 176,
    limb: fifth,
    adjustments: [
      {
        kind: "volume",
        amount: -1.5,
        unit: "percent",
        reason: "The limb is 2 % smaller than socket 6 was drawn for, and has stopped changing",
      },
      {
        kind: "trim",
        aspect: "posterior",
        third: "proximal",
        amount: 5,
        unit: "mm",
        reason: "The back edge presses when she sits",
        answers: "check:sitting",
      },
    ],
    benchNote: "Back edge 5 mm lower than on socket 6.",
  });
  seven.bench({ begun: [22, "08:30"], atHand: [16, "09:00"] });
  seven.fitted([10, "09:30"], {
    checks: { sitting: "concern" },
    drops: { 30: 1.5, 60: 2.6, 90: 3.7 },
    motion: { "knee-flexion": [128, 121] },
    comfort: 8,
    pain: 0,
    words: "I walked to the sea wall with it. Sitting is nearly right.",
    looks: { at: [3], marks: evenMarks(80) },
  });
  seven.worn([6, "10:00"], {
    minutes: 40,
    doing: ["walking 600 m in the park", "kneeling and getting up", "sitting on a bench"],
    watchedBy: "Lior Menezes",
    asked: {
      comfort: [8, 8, 8, 7, 8, 8, 8, 8],
      pain: [0, 0, 0, 1, 1, 0, 1, 0],
      exertion: [1, 2, 3, 4, 4, 4, 5, 5],
      felt: { 20: ["muscle-fatigue"] },
    },
    looks: { at: [1, 5, 12], marks: evenMarks(80, { sizeMm: [30, 24], seen: ["clear", "faint", "none"] }) },
  });
  seven.carries([4, "14:00"], {
    kind: "trim",
    aspect: "posterior",
    third: "proximal",
    amount: 3,
    unit: "mm",
    reason: "The back edge still touches when the knee is bent past 100°",
    answers: "check:sitting",
  });
  episode.signed([2, "11:30"], "wear trial accepted");
  return person.timeline;
};

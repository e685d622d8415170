/** A long lower-limb series on a limb that shrinks: seven sockets in a year, and a trial that is accepted with one adjustment carried. */
import { evenMarks } from "../skin";
import { type Story, wearer } from "../story";

const check = {
  material: "clear copolyester, bubble formed",
  wallMm: 8,
  lengthMm: 182,
  trimLines: "Front edge at the middle of the kneecap, back edge 10 mm lower",
};
const levels = 30;

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
    prosthetist: "lead",
    side: "right",
    level: "transtibial",
    cause: "vascular",
    lostDaysAgo: 405,
    landmark: "middle of the patellar tendon",
    stationsFrom: "proximal landmark",
    limbLengthMm: 150,
    suspension: "pin",
    device: { massKg: 1.7, centreMm: 260, note: "Pin lock, dynamic foot of the softest category" },
    goals: "Kneel at the beds and get up again with a spade. Walk to the market and back, 900 m.",
    targetInDays: 10,
  });
  episode.cautionsRead([332, "10:00"]);
  const first = episode.measured([328, "09:20"], levels, [358, 352, 340, 322, 298]);

  const one = episode.socket([322, "11:00"], {
    ...check,
    limb: first,
    tighterPercent: 1,
    benchNote: "Over a 6 mm gel liner with pin. Leave 20 mm below the end for the lock.",
  });
  one.bench({ begun: [320, "08:20"], atHand: [310, "08:50"] });
  one.fitted([306, "09:30"], {
    checks: { "end-contact": "not met", "total-contact": "not met", suspension: "not met", "comfort-walking": "concern" },
    pulls: [
      [30, 5.4],
      [60, 9.0],
      [90, 12.7],
    ],
    motion: [["knee-flexion", 128, 112]],
    comfort: 5,
    pain: 2,
    words: "My leg goes down into it at every step.",
    looks: { at: [3], marks: [{ name: "edge of the tibia", endMm: 84, angleDeg: 2, sizeMm: [12, 52], seen: ["clear"] }] },
  });
  const second = episode.measured([284, "09:10"], levels, [352, 345, 332, 313, 289]);

  const two = one.next([282, "10:30"], {
    ...check,
    limb: second,
    adjustments: [
      {
        kind: "volume",
        amount: -4.5,
        unit: "percent",
        reason: "The limb has lost 5 % and drops 12.7 mm in the socket",
        answers: "displacement",
      },
    ],
  });
  two.bench({ begun: [280, "08:30"], atHand: [270, "09:00"] });
  two.fitted([266, "09:40"], {
    checks: { "end-contact": "not met", "total-contact": "concern", "comfort-walking": "concern" },
    pulls: [
      [30, 3.2],
      [60, 5.4],
      [90, 7.6],
    ],
    motion: [["knee-flexion", 128, 114]],
    comfort: 6,
    pain: 2,
    words: "Better. The end hangs in the air and throbs when I have walked.",
    looks: {
      at: [3],
      marks: [
        { name: "edge of the tibia", endMm: 84, angleDeg: 2, sizeMm: [12, 50], seen: ["clear"] },
        { name: "distal end", endMm: 6, angleDeg: 180, sizeMm: [30, 12], seen: ["clear"], warm: true },
      ],
    },
  });

  const three = two.next([254, "10:00"], {
    ...check,
    limb: second,
    adjustments: [
      {
        kind: "build-up",
        aspect: "posterior",
        third: "distal",
        amount: 2,
        unit: "mm",
        reason: "No contact at the end; the calf is pushed forward to bring it down",
        answers: "check:end-contact",
      },
    ],
  });
  three.bench({ begun: [252, "08:40"], atHand: [243, "09:10"] });
  three.fitted([240, "09:30"], {
    checks: { "end-contact": "not met", "total-contact": "concern", "comfort-walking": "concern" },
    pulls: [
      [30, 3.3],
      [60, 5.6],
      [90, 7.9],
    ],
    motion: [["knee-flexion", 128, 114]],
    comfort: 6,
    pain: 2,
    words: "I feel no difference.",
    looks: {
      at: [3],
      marks: [
        { name: "edge of the tibia", endMm: 84, angleDeg: 2, sizeMm: [12, 50], seen: ["clear"] },
        { name: "distal end", endMm: 6, angleDeg: 180, sizeMm: [30, 12], seen: ["clear"], warm: true },
      ],
    },
  });
  const third = episode.measured([226, "09:15"], levels, [347, 339, 325, 305, 281]);

  const four = three.next([222, "10:40"], {
    ...check,
    lengthMm: 176,
    limb: third,
    adjustments: [
      { kind: "volume", amount: -4, unit: "percent", reason: "The limb has lost another 5 %", answers: "displacement" },
      {
        kind: "length",
        amount: -6,
        unit: "mm",
        reason: "The end hangs free by about the thickness of a finger",
        answers: "check:end-contact",
      },
    ],
  });
  four.bench({ begun: [220, "08:30"], atHand: [210, "08:50"] });
  four.fitted([206, "09:30"], {
    checks: { "bony-relief": "not met" },
    pulls: [
      [30, 2.1],
      [60, 3.6],
      [90, 5.1],
    ],
    motion: [["knee-flexion", 128, 115]],
    comfort: 7,
    pain: 1,
    words: "Now I stand on it. It pinches the knob on the outside below the knee.",
    looks: {
      at: [3],
      marks: [
        { name: "head of the fibula", endMm: 132, angleDeg: 96, sizeMm: [18, 16], seen: ["deep"], firm: true },
        { name: "edge of the tibia", endMm: 84, angleDeg: 2, sizeMm: [10, 40], seen: ["faint"] },
        { name: "distal end", endMm: 6, angleDeg: 180, sizeMm: [26, 12], seen: ["faint"] },
      ],
    },
  });

  const five = four.next([196, "11:00"], {
    ...check,
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
        reason: "To carry more on the front and slow the drop",
        answers: "displacement",
      },
    ],
  });
  five.bench({ begun: [194, "08:40"], atHand: [185, "09:00"] });
  five.fitted([182, "09:20"], {
    checks: { "bony-relief": "not met", "comfort-walking": "not met" },
    pulls: [
      [30, 2.2],
      [60, 3.6],
      [90, 5.0],
    ],
    motion: [["knee-flexion", 128, 114]],
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
    asked: [
      [5, 5, 4, 3, { kind: "pressure", aspect: "anterior", third: "middle" }],
      [10, 4, 5, 3, { kind: "heat", aspect: "anterior", third: "middle" }],
    ],
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
  five.moved([181, "09:00"], "retired", { note: "Build-up on the tibia did harm; not to be copied" });
  const fourth = episode.measured([124, "09:10"], levels, [341, 332, 318, 297, 273]);

  const six = five.next([120, "10:15"], {
    ...check,
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
    pulls: [
      [30, 1.8],
      [60, 3.1],
      [90, 4.4],
    ],
    motion: [["knee-flexion", 128, 116]],
    comfort: 7,
    pain: 1,
    words: "Quiet everywhere. When I sit the back edge presses.",
    looks: { at: [3], marks: evenMarks(80) },
  });
  six.worn([104, "09:30"], {
    minutes: 20,
    doing: ["walking in the park", "kneeling once"],
    asked: [
      [5, 7, 0, 2],
      [10, 7, 1, 3],
      [15, 7, 1, 3],
      [20, 7, 1, 4],
    ],
    looks: { at: [1, 10], marks: evenMarks(80, { seen: ["clear", "none"] }) },
  });
  episode.course(
    [100, "15:00"],
    "on hold",
    "Two weeks in hospital with pneumonia, then at her daughter's; nothing is worn until she is back.",
  );
  episode.course([62, "10:00"], "in fitting");
  episode.measured([58, "09:20"], levels, [339, 329.5, 315, 294.5, 270.5]);
  const fifth = episode.measured([26, "09:20"], levels, [338, 329, 315, 294, 270]);

  const seven = six.next([24, "11:00"], {
    ...check,
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
  seven.fitted([13, "09:30"], {
    checks: { sitting: "concern" },
    pulls: [
      [30, 1.5],
      [60, 2.6],
      [90, 3.7],
    ],
    motion: [["knee-flexion", 128, 121]],
    comfort: 8,
    pain: 0,
    words: "I walked to the sea wall with it. Sitting is nearly right.",
    looks: { at: [3], marks: evenMarks(80) },
  });
  seven.worn([9, "10:00"], {
    minutes: 40,
    doing: ["walking 600 m in the park", "kneeling and getting up", "sitting on a bench"],
    watchedBy: "Lior Menezes",
    asked: [
      [5, 8, 0, 1],
      [10, 8, 0, 2],
      [15, 8, 0, 3],
      [20, 7, 1, 4, { kind: "muscle-fatigue" }],
      [25, 8, 1, 4],
      [30, 8, 0, 4],
      [35, 8, 1, 5],
      [40, 8, 0, 5],
    ],
    looks: { at: [1, 5, 10, 20], marks: evenMarks(80, { sizeMm: [30, 24], seen: ["clear", "clear", "faint", "none"] }) },
  });
  seven.carries([8, "14:00"], {
    kind: "trim",
    aspect: "posterior",
    third: "proximal",
    amount: 3,
    unit: "mm",
    reason: "The back edge still touches when the knee is bent past 100°",
    answers: "check:sitting",
  });
  episode.signed([5, "11:30"], "wear trial accepted");
  return person.timeline;
};

/** A long upper-limb series: what helped, what did nothing, what did harm, and a sixth socket that is ready to be signed. */
import { evenMarks } from "../skin";
import { type Story, wearer } from "../story";

const forearm = { landmark: "distal end of the residual limb", stationsFrom: "distal end" } as const;
const clear = { material: "clear copolyester, drape formed", wallMm: 5, lengthMm: 176 };
const tool = { kg: 0.68, atMm: 220 };

export const boatBuilder: Story = (calendar) => {
  const person = wearer("boat builder", calendar, [214, "09:20"], {
    number: "TW-0112",
    name: "Tomé Vilarinho",
    ageYears: 41.3,
    heightMm: 1780,
    massKg: 82,
    handedness: "right",
    occupation: "boat builder",
    cautions: [{ kind: "reduced-feeling", note: "Outer side near the end, a strip two fingers wide" }],
  });
  const episode = person.episode([214, "09:40"], {
    ...forearm,
    prosthetist: "lead",
    side: "left",
    level: "transradial",
    cause: "trauma",
    lostDaysAgo: 1010,
    limbLengthMm: 170,
    suspension: "self-suspending",
    device: { massKg: 0.68, centreMm: 220, note: "Voluntary-opening hook, quick-disconnect wrist" },
    goals: "Hold a plank against his hip while the right hand planes it. Coil rope. Work a whole morning without taking it off.",
    targetInDays: 12,
  });
  episode.cautionsRead([214, "10:05"]);
  const inSpring = episode.measured([212, "09:15"], 40, [178, 190, 205, 222, 241], { capHeightMm: 18 });

  const one = episode.socket([210, "11:30"], {
    ...clear,
    limb: inSpring,
    tighterPercent: 1.5,
    trimLines: "Over both epicondyles, olecranon covered; front edge 20 mm below the fold of the elbow",
    benchNote: "Clear and polished inside: marks are read through the wall.",
    neededDaysAgo: 198,
  });
  one.bench({ begun: [208, "08:40"], sent: [203, "15:20"], atHand: [200, "10:00"] });
  one.fitted([198, "14:00"], {
    place: "video",
    whoWasThere: "His sister held the camera",
    checks: { suspension: "not met", rotation: "concern", "trim-lines": "not met", "total-contact": "concern" },
    pulls: [
      [22, 7.0],
      [34, 10.3],
      [45, 13.6],
    ],
    motion: [["elbow-flexion", 138, 114]],
    comfort: 5,
    pain: 2,
    words: "It slides when I let the arm hang, and it bites in the crook of my elbow.",
    looks: {
      at: [2],
      marks: [
        { name: "fold of the elbow", endMm: 158, angleDeg: 5, sizeMm: [34, 9], seen: ["clear"] },
        { name: "end of the radius", endMm: 22, angleDeg: 95, sizeMm: [14, 12], seen: ["clear"], firm: true },
      ],
    },
  });

  const two = one.next([190, "10:10"], {
    ...clear,
    adjustments: [
      {
        kind: "volume",
        amount: -2.5,
        unit: "percent",
        reason: "The limb slid 13.6 mm when the arm hung with 45 N",
        answers: "displacement",
      },
      {
        kind: "trim",
        aspect: "anterior",
        third: "proximal",
        amount: 7,
        unit: "mm",
        reason: "The front edge stopped the elbow at 114°",
        answers: "motion:elbow-flexion",
      },
    ],
    trimLines: "As socket 1, front edge 27 mm below the fold of the elbow",
  });
  two.bench({ begun: [187, "08:50"], sent: [181, "15:40"], atHand: [178, "09:30"] });
  two.fitted([176, "10:00"], {
    checks: { rotation: "concern", "bony-relief": "not met" },
    pulls: [
      [22, 3.9],
      [34, 5.7],
      [45, 7.5],
    ],
    motion: [["elbow-flexion", 138, 127]],
    comfort: 6,
    pain: 2,
    words: "It stays on now. There is a hard spot on the outside, near the end.",
    looks: {
      at: [2],
      marks: [
        { name: "fold of the elbow", endMm: 152, angleDeg: 5, sizeMm: [20, 6], seen: ["faint"] },
        { name: "end of the radius", endMm: 22, angleDeg: 95, sizeMm: [16, 14], seen: ["deep"], firm: true },
      ],
    },
  });

  const three = two.next([168, "11:00"], {
    ...clear,
    adjustments: [
      {
        kind: "relief",
        aspect: "lateral",
        third: "distal",
        amount: 1.5,
        unit: "mm",
        reason: "Deep, firm mark over the end of the radius, where he feels little",
        answers: two.answersMark("end of the radius"),
      },
    ],
  });
  three.bench({ begun: [166, "08:30"], sent: [161, "15:30"], atHand: [158, "09:40"] });
  three.fitted([156, "09:30"], {
    checks: { rotation: "not met", "bony-relief": "not met" },
    pulls: [
      [22, 4.0],
      [34, 5.6],
      [45, 7.4],
    ],
    motion: [["elbow-flexion", 138, 126]],
    comfort: 6,
    pain: 2,
    words: "I cannot tell this one from the last.",
    note: "The relief sits 10 mm too far to the front; the mark has not moved.",
    looks: {
      at: [2],
      marks: [{ name: "end of the radius", endMm: 23, angleDeg: 97, sizeMm: [16, 13], seen: ["deep"], firm: true }],
    },
  });

  const four = three.next([148, "10:20"], {
    ...clear,
    adjustments: [
      {
        kind: "build-up",
        aspect: "posterior",
        third: "middle",
        amount: 4,
        unit: "mm",
        reason: "The socket turns on the limb when he lifts a bucket",
        answers: "check:rotation",
      },
    ],
  });
  four.bench({ begun: [146, "08:40"], atHand: [140, "09:10"] });
  four.fitted([138, "10:30"], {
    checks: { "bony-relief": "not met", "comfort-under-load": "concern" },
    pulls: [
      [22, 3.8],
      [34, 5.5],
      [45, 7.2],
    ],
    motion: [["elbow-flexion", 138, 125]],
    comfort: 5,
    pain: 3,
    words: "It does not turn any more, but it pushes on the bone at the back.",
    looks: {
      at: [2],
      marks: [
        { name: "end of the radius", endMm: 23, angleDeg: 97, sizeMm: [16, 13], seen: ["deep"], firm: true },
        { name: "edge of the ulna", endMm: 84, angleDeg: 178, sizeMm: [12, 40], seen: ["deep"], firm: true, painful: true },
      ],
    },
  });
  four.worn([138, "11:30"], {
    minutes: 20,
    load: tool,
    doing: ["carrying a bucket", "holding a plank"],
    asked: [
      [5, 5, 3, 3, { kind: "pressure", aspect: "posterior", third: "middle" }],
      [10, 4, 4, 4, { kind: "tingling", aspect: "posterior", third: "middle" }],
    ],
    stop: {
      minute: 13,
      sign: "tingling",
      note: "Tingling along the back of the forearm that did not go when he put the bucket down",
    },
    looks: {
      at: [1, 10, 25],
      marks: [
        {
          name: "edge of the ulna",
          endMm: 84,
          angleDeg: 178,
          sizeMm: [12, 40],
          seen: ["deep", "clear", "none"],
          firm: true,
          painful: true,
          fadedAtMin: 22,
        },
        {
          name: "end of the radius",
          endMm: 23,
          angleDeg: 97,
          sizeMm: [16, 13],
          seen: ["deep", "clear", "none"],
          firm: true,
          fadedAtMin: 18,
        },
      ],
    },
  });
  four.moved([137, "09:00"], "retired", { note: "Presses on the ulna; socket 5 goes back to the shape of socket 3" });

  const five = three.next([126, "10:00"], {
    ...clear,
    adjustments: [
      {
        kind: "relief",
        aspect: "lateral",
        third: "distal",
        amount: 3,
        unit: "mm",
        reason: "Relief moved over the mark itself and made deeper",
        answers: three.answersMark("end of the radius"),
      },
      {
        kind: "volume",
        amount: -1.5,
        unit: "percent",
        reason: "Still 7.4 mm of drop, and it turns on the limb",
        answers: "displacement",
      },
    ],
  });
  five.bench({ begun: [124, "08:40"], atHand: [117, "09:20"] });
  five.fitted([114, "10:00"], {
    checks: { rotation: "concern" },
    pulls: [
      [22, 2.4],
      [34, 3.4],
      [45, 4.4],
    ],
    motion: [["elbow-flexion", 138, 126]],
    comfort: 7,
    pain: 1,
    words: "The sore place is gone. The rim on the outside rubs a little.",
    looks: {
      at: [2],
      marks: [
        { name: "end of the radius", endMm: 23, angleDeg: 97, sizeMm: [12, 10], seen: ["faint"] },
        { name: "rim, outer side", endMm: 160, angleDeg: 88, sizeMm: [30, 8], seen: ["deep"] },
      ],
    },
  });
  five.worn([114, "11:10"], {
    minutes: 20,
    load: tool,
    doing: ["coiling rope", "planing a plank"],
    asked: [
      [5, 7, 0, 2],
      [10, 7, 1, 3],
      [15, 7, 1, 3, { kind: "rubbing", aspect: "lateral", third: "proximal" }],
      [20, 7, 1, 4, { kind: "rubbing", aspect: "lateral", third: "proximal" }],
    ],
    looks: {
      at: [1, 10, 20],
      marks: [
        { name: "end of the radius", endMm: 23, angleDeg: 97, sizeMm: [12, 10], seen: ["faint", "none"], fadedAtMin: 6 },
        { name: "rim, outer side", endMm: 160, angleDeg: 88, sizeMm: [30, 8], seen: ["deep", "clear", "none"], fadedAtMin: 19 },
      ],
    },
  });
  episode.course(
    [112, "16:00"],
    "on hold",
    "He is at sea with the delivery crew until the season ends; he keeps socket 5 at home and does not wear it.",
  );
  episode.course([52, "09:00"], "in fitting");

  episode.measured([50, "09:10"], 40, [176, 188.5, 203, 219, 238], { capHeightMm: 18 });
  const inAutumn = episode.measured([26, "09:10"], 40, [176, 188, 203, 219.5, 238], { capHeightMm: 18 });
  const six = five.next([24, "10:30"], {
    ...clear,
    limb: inAutumn,
    adjustments: [
      {
        kind: "flare",
        aspect: "lateral",
        third: "proximal",
        amount: 3,
        unit: "mm",
        reason: "Deep mark under the rim on the outer side",
        answers: five.answersMark("rim, outer side"),
      },
      {
        kind: "volume",
        amount: -1,
        unit: "percent",
        reason: "It still turns a little when he lifts; the limb is 3 mm smaller than in spring",
        answers: "check:rotation",
      },
    ],
    trimLines: "As socket 5, outer rim turned out over 40 mm",
    neededDaysAgo: 14,
  });
  six.bench({ begun: [22, "08:30"], atHand: [15, "09:00"] });
  six.fitted([12, "09:30"], {
    pulls: [
      [22, 1.4],
      [34, 2.0],
      [45, 2.6],
    ],
    motion: [["elbow-flexion", 138, 131]],
    comfort: 8,
    pain: 0,
    words: "This is the first one I forget about.",
    looks: { at: [2], marks: evenMarks(85) },
  });
  six.worn([6, "10:00"], {
    minutes: 30,
    load: tool,
    doing: ["coiling rope", "planing a plank", "carrying a bucket up the slip"],
    watchedBy: "Lior Menezes",
    asked: [
      [5, 8, 0, 1],
      [10, 8, 0, 2],
      [15, 8, 1, 3],
      [20, 8, 0, 3],
      [25, 8, 0, 4, { kind: "muscle-fatigue" }],
      [30, 8, 0, 4],
    ],
    looks: { at: [1, 5, 10], marks: evenMarks(85, { sizeMm: [28, 20], seen: ["clear", "faint", "none"] }) },
  });
  return person.timeline;
};

/** A long upper-limb series: what helped, what did nothing, what did harm, and a sixth socket that is ready to be signed. */
import { evenMarks } from "../skin";
import { type Story, wearer } from "../story";
import { armSocket, firstSockets } from "./boat-builder-first-sockets";
import { fromTheEnd } from "./usual";

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
    ...fromTheEnd,
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
  const three = firstSockets(episode);

  const four = three.next([148, "10:20"], {
    ...armSocket,
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
    drops: { 22: 3.8, 34: 5.5, 45: 7.2 },
    motion: { "elbow-flexion": [138, 125] },
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
    asked: {
      comfort: [5, 4],
      pain: [3, 4],
      exertion: [3, 4],
      felt: { 5: ["pressure posterior middle"], 10: ["tingling posterior middle"] },
    },
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
  four.moved([136, "09:00"], "retired", { note: "Presses on the ulna; socket 5 goes back to the shape of socket 3" });

  const five = three.next([126, "10:00"], {
    ...armSocket,
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
    drops: { 22: 2.4, 34: 3.4, 45: 4.4 },
    motion: { "elbow-flexion": [138, 126] },
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
    asked: {
      comfort: [7, 7, 7, 7],
      pain: [0, 1, 1, 1],
      exertion: [2, 3, 3, 4],
      felt: { 15: ["rubbing lateral proximal"], 20: ["rubbing lateral proximal"] },
    },
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
    ...armSocket,
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
  six.bench({ begun: [22, "08:30"], atHand: [12, "09:00"] });
  six.fitted([8, "09:30"], {
    drops: { 22: 1.4, 34: 2.0, 45: 2.6 },
    motion: { "elbow-flexion": [138, 131] },
    comfort: 8,
    pain: 0,
    words: "This is the first one I forget about.",
    looks: { at: [2], marks: evenMarks(85) },
  });
  six.worn([2, "10:00"], {
    minutes: 30,
    load: tool,
    doing: ["coiling rope", "planing a plank", "carrying a bucket up the slip"],
    watchedBy: "Lior Menezes",
    asked: {
      comfort: [8, 8, 8, 8, 8, 8],
      pain: [0, 0, 1, 0, 0, 0],
      exertion: [1, 2, 3, 3, 4, 4],
      felt: { 25: ["muscle-fatigue"] },
    },
    looks: { at: [1, 5, 10], marks: evenMarks(85, { sizeMm: [28, 20], seen: ["clear", "faint", "none"] }) },
  });
  return person.timeline;
};

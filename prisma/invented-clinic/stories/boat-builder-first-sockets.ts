/** The boat builder's sockets 1 to 3: less volume and a lower edge help, a relief in the wrong place does nothing. */
import type { EpisodeStory } from "../episode-story";
import type { SocketStory } from "../socket-story";
import { clearArmSocket } from "./usual";

export const armSocket = { ...clearArmSocket, lengthMm: 176 };

export function firstSockets(episode: EpisodeStory): SocketStory {
  const inSpring = episode.measured([212, "09:15"], 40, [178, 190, 205, 222, 241], { capHeightMm: 18 });

  const one = episode.socket([210, "11:30"], {
    ...armSocket,
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
    drops: { 22: 7.0, 34: 10.3, 45: 13.6 },
    motion: { "elbow-flexion": [138, 114] },
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
    ...armSocket,
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
    drops: { 22: 3.9, 34: 5.7, 45: 7.5 },
    motion: { "elbow-flexion": [138, 127] },
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
    ...armSocket,
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
    drops: { 22: 4.0, 34: 5.6, 45: 7.4 },
    motion: { "elbow-flexion": [138, 126] },
    comfort: 6,
    pain: 2,
    words: "I cannot tell this one from the last.",
    note: "The relief sits 10 mm too far to the front; the mark has not moved.",
    looks: {
      at: [2],
      marks: [{ name: "end of the radius", endMm: 23, angleDeg: 97, sizeMm: [16, 13], seen: ["deep"], firm: true }],
    },
  });
  return three;
}

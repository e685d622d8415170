/** The gardener's sockets 1 to 4: the limb shrinks by a tenth, and each socket follows it. */
import type { EpisodeStory } from "../episode-story";
import type { SocketStory } from "../socket-story";
import type { LimbMeasured } from "../told";
import { transtibial } from "./usual";

export const legSocket = { ...transtibial.socket, lengthMm: 182 };

export function whileTheLimbShrank(episode: EpisodeStory): { four: SocketStory; third: LimbMeasured } {
  const first = episode.measured([328, "09:20"], transtibial.levels, [358, 352, 340, 322, 298], { linerOn: true });

  const one = episode.socket([322, "11:00"], {
    ...legSocket,
    limb: first,
    tighterPercent: 1,
    benchNote: "Over a 6 mm gel liner with pin. Leave 20 mm below the end for the lock.",
  });
  one.bench({ begun: [320, "08:20"], atHand: [310, "08:50"] });
  one.fitted([306, "09:30"], {
    checks: { "end-contact": "not met", "total-contact": "not met", suspension: "not met", "comfort-walking": "concern" },
    drops: { 30: 5.4, 60: 9.0, 90: 12.7 },
    motion: { "knee-flexion": [128, 112] },
    comfort: 5,
    pain: 2,
    words: "My leg goes down into it at every step.",
    looks: { at: [3], marks: [{ name: "edge of the tibia", endMm: 84, angleDeg: 2, sizeMm: [12, 52], seen: ["clear"] }] },
  });
  const second = episode.measured([284, "09:10"], transtibial.levels, [352, 345, 332, 313, 290], { linerOn: true });

  const two = one.next([282, "10:30"], {
    ...legSocket,
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
    drops: { 30: 3.2, 60: 5.4, 90: 7.6 },
    motion: { "knee-flexion": [128, 114] },
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
    ...legSocket,
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
    drops: { 30: 3.3, 60: 5.6, 90: 7.9 },
    motion: { "knee-flexion": [128, 114] },
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
  const third = episode.measured([226, "09:15"], transtibial.levels, [347, 339, 325, 305, 283], { linerOn: true });

  const four = three.next([222, "10:40"], {
    ...legSocket,
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
    drops: { 30: 2.1, 60: 3.6, 90: 5.1 },
    motion: { "knee-flexion": [128, 115] },
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
  return { four, third };
}

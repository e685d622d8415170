/** How each story of the invented clinic ends. The gates and what opens them: see the methods of lib/fit. */
import type { Decision, Gate, GateId, Step } from "@/lib/fit";
import type { Stage } from "@/lib/records/stage";

/** `open`: every gate that is neither met nor close. */
type Outcome = readonly [
  who: string,
  number: string,
  stage: Stage,
  next: Step,
  decision: Decision,
  open: Partial<Record<GateId, Gate["state"]>>,
];

/** One story for each way in which a fit can fall short, and those that do not. */
export const outcomes: readonly Outcome[] = [
  ["boat builder, sixth socket", "TW-0112", "awaiting sign-off", "sign", "ready", {}],
  ["gardener, trial accepted, one carried", "TW-0038", "awaiting sign-off", "release", "ready with conditions", {}],
  ["roofer, release withdrawn", "TW-0135", "awaiting sign-off", "sign", "ready", {}],
  [
    "schoolchild, growth accepted with a reason",
    "TW-0134",
    "released",
    "deliver",
    "ready with conditions",
    { "limb-settled": "not met" },
  ],
  [
    "translator, limb measured too long ago",
    "TW-0129",
    "wear trial",
    "begin trial",
    "not enough evidence",
    { "limb-measured": "unknown" },
  ],
  ["fisherman, limb still changing", "TW-0157", "check sockets", "measure", "not ready", { "limb-settled": "not met" }],
  [
    "carpenter, unexplained dimensions",
    "TW-0132",
    "check sockets",
    "alter or remake",
    "not ready",
    { "socket-described": "not met" },
  ],
  ["cellist, motion lost", "TW-0143", "check sockets", "alter or remake", "not ready", { motion: "not met" }],
  ["electrician, wrong trial load", "TW-0155", "wear trial", "begin trial", "not ready", { "trial-load": "not met" }],
  ["vet, trial too short", "TW-0153", "wear trial", "begin trial", "not ready", { "worn-long-enough": "not met" }],
  ["night nurse, late check-in", "TW-0142", "wear trial", "begin trial", "not ready", { "checked-often-enough": "not met" }],
  ["bus mechanic, low comfort", "TW-0145", "check sockets", "alter or remake", "not ready", { comfort: "not met" }],
  ["florist, high pain", "TW-0152", "check sockets", "alter or remake", "not ready", { pain: "not met" }],
  ["glassblower, rising pain", "TW-0141", "check sockets", "alter or remake", "not ready", { trend: "not met" }],
  [
    "surveyor, no second look",
    "TW-0154",
    "wear trial",
    "inspect",
    "not enough evidence",
    { "skin-inspected": "unknown", "marks-fade": "unknown" },
  ],
  ["lighthouse guide, marks fade late", "TW-0130", "check sockets", "alter or remake", "not ready", { "marks-fade": "not met" }],
  ["dancer, uneven marks", "TW-0156", "check sockets", "alter or remake", "not ready", { "marks-even": "not met" }],
  [
    "tug skipper, too much carried",
    "TW-0131",
    "check sockets",
    "alter or remake",
    "not ready",
    { "open-adjustments": "not met" },
  ],
  ["teacher, caution not read", "TW-0151", "awaiting sign-off", "sign", "not ready", { "cautions-reviewed": "not met" }],
  ["shipping clerk, stale evidence", "TW-0128", "wear trial", "begin trial", "not ready", { fresh: "not met" }],
];

interface Forbidden {
  who: string;
  number: string;
  /** Each gate that forbids, with words of its reason. */
  why: Partial<Record<GateId, RegExp>>;
}

export const forbidden: readonly Forbidden[] = [
  { who: "stonemason, broken skin", number: "TW-0136", why: { "skin-intact": /broken/i } },
  { who: "net mender, purple mark", number: "TW-0139", why: { "skin-intact": /purple/i } },
  { who: "choir singer, not blanching at 20 min", number: "TW-0138", why: { "skin-intact": /not blanch 20 min/ } },
  { who: "postwoman, numbness", number: "TW-0140", why: { "no-stop-sign": /numbness/ } },
  { who: "crane driver, sharp pain", number: "TW-0146", why: { "no-stop-sign": /sharp pain/, pain: /8 of 10/ } },
];

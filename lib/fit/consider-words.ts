/** What can be found with a socket, in the words of the records and of the bench. */
import {
  type CheckKey,
  type FeelingKind,
  feelingKinds,
  lowerLimbChecks,
  type StopSign,
  stopSigns,
  upperLimbChecks,
} from "./words";

/** What neither a feeling, a check nor a stop sign has a word for. */
const furtherKinds = [
  // Told apart from `numbness` and `tingling` only where somebody wrote down that it went.
  "passing-numbness",
  "passing-tingling",
  "faint-mark",
  "clear-mark",
  "deep-mark",
  "firm-mark",
  "painful-mark",
  "warm-mark",
  "late-fading",
  "uneven-marks",
  "non-blanching",
  "purple-mark",
  "spreading-redness",
  "swelling",
  "rash",
  "pain",
  "severe-pain",
  "low-comfort",
  "displacement",
  "loss-of-motion",
  "gapping",
  "brim-roll",
  "bell-clapper",
  "air-noise",
  "piston-noise",
  "not-seated",
  "too-deep",
  "too-loose",
  "too-tight",
  "too-long",
  "too-short",
] as const;

export type FindingKind = FeelingKind | CheckKey | StopSign | (typeof furtherKinds)[number];

/** Every kind once. */
export const findingKinds: readonly FindingKind[] = [
  ...new Set<FindingKind>([...feelingKinds, ...upperLimbChecks, ...lowerLimbChecks, ...stopSigns, ...furtherKinds]),
];

/** How a place that is pressed or rubbed shows itself, in whatever way it was found. */
export const pressedThere = [
  "pressure",
  "pain",
  "rubbing",
  "clear-mark",
  "deep-mark",
  "firm-mark",
  "painful-mark",
  "late-fading",
] as const satisfies readonly FindingKind[];

/**
 * After one of these no adjustment is offered: the socket is off and the physician is asked first. All stop signs, the
 * checks of circulation and feeling, and what may be injury, infection or lost blood supply. Numbness, tingling and cold
 * are among them wherever nobody wrote down that they went, for unknown is not pass.
 */
export const forbiddingFindings: readonly FindingKind[] = [
  ...stopSigns,
  "circulation",
  "feeling",
  "non-blanching",
  "purple-mark",
  "spreading-redness",
  "swelling",
  "severe-pain",
];

export const isForbidding = (kind: FindingKind): boolean => forbiddingFindings.includes(kind);

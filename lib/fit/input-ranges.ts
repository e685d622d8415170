/**
 * What a body, a socket or a device can be: a form refuses what is outside, and asks once about what is unusual.
 * They guard against slips of the pen, so they are wide, and they decide nothing about a fit.
 */
import { FitInputError } from "./errors";
import type { SourceId } from "./sources";
import { isUpperLimb, type Level, levels } from "./words";

export interface InputRange {
  name: string;
  unit: string;
  /** From the least to the most that is taken at all, both included. */
  taken: readonly [number, number];
  /** From the least to the most that nobody is asked about. */
  usual: readonly [number, number];
  source: SourceId;
}

type Range = readonly [number, number];

const range = (name: string, unit: string, taken: Range, usual: Range): InputRange => ({
  name,
  unit,
  taken,
  usual,
  source: "common-practice",
});

/** For every level the same. */
const anyLevel = {
  stationDistanceMm: range("Distance of a level", "mm", [-200, 1000], [-50, 450]),
  minutesSinceDoffing: range("Time since doffing", "min", [0, 10_000], [0, 720]),
  capHeightMm: range("Height of the rounded end", "mm", [1, 200], [5, 70]),
  socketLengthMm: range("Length of a socket", "mm", [20, 1200], [60, 500]),
  reliefMm: range("Depth of a relief or build-up", "mm", [0, 200], [0, 10]),
  volumePercent: range("Change of volume", "%", [-200, 200], [-15, 15]),
  wallMm: range("Wall of a socket", "mm", [0.5, 30], [2, 10]),
  bodyMassKg: range("Body mass", "kg", [2, 350], [10, 180]),
  pullLoadN: range("Load of a pull", "N", [1, 1000], [10, 300]),
  displacementMm: range("Displacement under load", "mm", [0, 200], [0, 40]),
  angleDeg: range("Angle of a joint", "°", [-180, 360], [-30, 190]),
  markSizeMm: range("Width or height of a mark", "mm", [1, 500], [2, 120]),
  fadedAtMin: range("Minutes until a mark faded", "min", [0, 10_000], [0, 120]),
  minutesAfterDoffing: range("Minutes after doffing", "min", [0, 10_000], [0, 120]),
  trialMinutes: range("Minutes of a wear trial", "min", [1, 1440], [20, 240]),
  trialIntervalMin: range("Minutes between check-ins", "min", [1, 240], [2, 15]),
} as const satisfies Record<string, InputRange>;

const length = (taken: Range, usual: Range) => range("Length of the residual limb", "mm", taken, usual);
const girth = (taken: Range, usual: Range) => range("Circumference", "mm", taken, usual);

/** From a small child to a large adult. */
const byLevel: Readonly<Record<Level, { limbLengthMm: InputRange; circumferenceMm: InputRange }>> = {
  "partial hand": { limbLengthMm: length([5, 250], [20, 200]), circumferenceMm: girth([40, 500], [90, 300]) },
  "wrist disarticulation": { limbLengthMm: length([40, 400], [100, 320]), circumferenceMm: girth([60, 600], [100, 380]) },
  transradial: { limbLengthMm: length([10, 400], [40, 300]), circumferenceMm: girth([60, 600], [110, 400]) },
  "elbow disarticulation": { limbLengthMm: length([60, 500], [120, 400]), circumferenceMm: girth([70, 700], [130, 450]) },
  transhumeral: { limbLengthMm: length([10, 450], [60, 360]), circumferenceMm: girth([70, 800], [140, 520]) },
  "shoulder disarticulation": { limbLengthMm: length([5, 400], [20, 300]), circumferenceMm: girth([100, 2000], [200, 1400]) },
  "partial foot": { limbLengthMm: length([5, 350], [30, 280]), circumferenceMm: girth([60, 600], [110, 380]) },
  "ankle disarticulation": { limbLengthMm: length([60, 600], [150, 480]), circumferenceMm: girth([80, 800], [140, 480]) },
  transtibial: { limbLengthMm: length([20, 550], [70, 350]), circumferenceMm: girth([80, 900], [170, 560]) },
  "knee disarticulation": { limbLengthMm: length([80, 700], [200, 520]), circumferenceMm: girth([120, 1100], [230, 750]) },
  transfemoral: { limbLengthMm: length([20, 650], [90, 450]), circumferenceMm: girth([120, 1300], [250, 900]) },
  "hip disarticulation": { limbLengthMm: length([5, 500], [20, 350]), circumferenceMm: girth([200, 2500], [400, 1700]) },
};

const upperDevice = {
  deviceMassKg: range("Mass of the device", "kg", [0.02, 10], [0.1, 3]),
  centreOfMassMm: range("Distance of its centre of mass", "mm", [5, 900], [40, 450]),
  trialLoadKg: range("Load of the trial", "kg", [0, 15], [0.1, 4]),
  loadDistanceMm: range("Distance of the load", "mm", [0, 900], [40, 450]),
} as const;
const lowerDevice: Readonly<Record<keyof typeof upperDevice, InputRange>> = {
  deviceMassKg: range("Mass of the device", "kg", [0.1, 25], [0.5, 8]),
  centreOfMassMm: range("Distance of its centre of mass", "mm", [5, 1200], [60, 600]),
  trialLoadKg: range("Load of the trial", "kg", [0, 100], [0, 10]),
  loadDistanceMm: range("Distance of the load", "mm", [0, 1200], [0, 600]),
};

export type Quantity = keyof typeof anyLevel | keyof (typeof byLevel)[Level] | keyof typeof upperDevice;

/**
 * The range of a quantity at a level.
 *
 * @throws FitInputError where the level is not one of the words
 * @source common-practice
 *
 * @example
 * inputRange("circumferenceMm", "transradial").usual
 * // => [110, 400]
 */
export function inputRange(quantity: Quantity, level: Level): InputRange {
  if (!levels.includes(level)) throw new FitInputError("level", `expected one of ${levels.join(", ")}`);
  const ranges = { ...anyLevel, ...byLevel[level], ...(isUpperLimb(level) ? upperDevice : lowerDevice) };
  return ranges[quantity];
}

export type InputStanding = "usual" | "unusual" | "refused";

/**
 * How a value stands. What is no number is refused.
 *
 * @example
 * judgeInput("circumferenceMm", 1850, "transradial")
 * // => "refused"
 */
export function judgeInput(quantity: Quantity, value: number, level: Level): InputStanding {
  const { taken, usual } = inputRange(quantity, level);
  const within = ([least, most]: Range) => value >= least && value <= most;
  if (!within(taken)) return "refused";
  return within(usual) ? "usual" : "unusual";
}

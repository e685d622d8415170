/** The values of the limits. What may be done with them is in `limits.ts`. */
import type { SourceId } from "./sources";
import { type Level, lowerLimbLevels, upperLimbLevels } from "./words";

export interface LimitRow {
  name: string;
  value: number;
  unit: string;
  source: SourceId;
  /** From…to, where a clinic may set it. */
  settable?: readonly [number, number];
  levels?: readonly Level[];
}

const upperLimb = { levels: upperLimbLevels } as const;
const lowerLimb = { levels: lowerLimbLevels } as const;
const clinic = (settable: readonly [number, number]) => ({ source: "clinic-setting", settable }) as const;

export const limitTable = {
  // The residual limb
  "limb-measured-days": { name: "Limb measured before the trial", value: 30, unit: "days", ...clinic([7, 60]) },
  "tape-error-mm": { name: "Standard error of one circumference", value: 1.5, unit: "mm", ...clinic([0.5, 5]) },
  "tape-pairs-least": {
    name: "Pairs of readings from which the clinic's own error stands",
    value: 10,
    unit: "pairs",
    ...clinic([10, 100]),
  },
  "settled-percent": { name: "Change of volume within which a limb has settled", value: 5, unit: "%", source: "jarl-2003" },
  "settled-apart-days": { name: "Days between the measurements that show it", value: 14, unit: "days", ...clinic([7, 60]) },
  "common-span-share": {
    name: "Share of the longer measurement that both must cover",
    value: 0.5,
    unit: "",
    ...clinic([0.3, 0.9]),
  },
  "settled-months": {
    name: "Months since limb loss after which most limbs have settled",
    value: 18,
    unit: "months",
    source: "sanders-fatone-2011",
  },
  "adult-years": {
    name: "Age from which a congenital limb difference counts as settled",
    value: 18,
    unit: "years",
    source: "common-practice",
  },
  "doffed-before-measuring-minutes": {
    name: "Minutes from doffing to measuring",
    value: 30,
    unit: "min",
    source: "paterno-2021",
  },

  "same-time-hours": { name: "Hours of the day that two measurements may lie apart", value: 3, unit: "h", ...clinic([1, 12]) },

  // The socket
  "unexplained-mm": { name: "Change of a circumference that no adjustment explains", value: 2, unit: "mm", ...clinic([1, 4]) },

  "mean-radial-error-mm": {
    name: "Mean radial error of a socket as made",
    value: 0.25,
    unit: "mm",
    source: "sanders-severance-2012",
  },
  "radial-error-iqr-mm": {
    name: "Interquartile range of its radial errors",
    value: 0.4,
    unit: "mm",
    source: "sanders-severance-2012",
  },

  // Load
  "load-ratio-low": {
    name: "Moment of the trial load against the device, at least",
    value: 0.9,
    unit: "",
    ...clinic([0.8, 1]),
    ...upperLimb,
  },
  "load-ratio-high": {
    name: "Moment of the trial load against the device, at most",
    value: 1.1,
    unit: "",
    ...clinic([1, 1.25]),
    ...upperLimb,
  },

  // Suspension
  "harness-displacement-mm": {
    name: "Displacement on a harness",
    value: 25,
    unit: "mm",
    source: "body-powered-standards",
    ...upperLimb,
  },
  "harness-load-n": { name: "Load at which it is judged", value: 222, unit: "N", source: "body-powered-standards", ...upperLimb },
  "harness-body-share": {
    name: "Or this share of body weight, whichever is less",
    value: 1 / 3,
    unit: "",
    source: "body-powered-standards",
    ...upperLimb,
  },
  "vacuum-displacement-mm": { name: "Displacement under vacuum", value: 6, unit: "mm", source: "vacuum-pistoning" },
  "vacuum-load-n": { name: "Load at which it is judged", value: 90, unit: "N", source: "vacuum-pistoning" },
  "upper-displacement-mm": {
    name: "Displacement, other upper limb",
    value: 10,
    unit: "mm",
    source: "suspension-setting",
    settable: [4, 15],
    ...upperLimb,
  },
  "upper-load-n": {
    name: "Load at which it is judged",
    value: 45,
    unit: "N",
    source: "suspension-setting",
    settable: [30, 90],
    ...upperLimb,
  },
  "lower-displacement-mm": {
    name: "Displacement, other lower limb",
    value: 10,
    unit: "mm",
    source: "suspension-setting",
    settable: [4, 15],
    ...lowerLimb,
  },
  "lower-load-n": {
    name: "Load at which it is judged",
    value: 90,
    unit: "N",
    source: "suspension-setting",
    settable: [60, 180],
    ...lowerLimb,
  },
  "pull-share": { name: "Share of that load that the hardest pull must reach", value: 0.2, unit: "", ...clinic([0.1, 1]) },
  "displacement-error-mm": {
    name: "Standard error of a displacement from fewer than three pulls",
    value: 2,
    unit: "mm",
    source: "suspension-error",
  },

  // Motion
  "elbow-loss-deg": { name: "Elbow flexion lost", value: 10, unit: "°", source: "body-powered-standards", ...upperLimb },
  "elbow-kept-deg": {
    name: "Elbow flexion kept in a self-suspended transradial socket",
    value: 105,
    unit: "°",
    source: "body-powered-standards",
    levels: ["transradial"],
  },
  "joint-loss-deg": { name: "Motion lost in any other joint", value: 15, unit: "°", ...clinic([5, 20]) },
  "goniometer-error-deg": { name: "Standard error of one angle", value: 3, unit: "°", source: "goniometer-error" },

  // The wear trial
  "worn-minutes-least": { name: "Minutes of a wear trial", value: 20, unit: "min", source: "trial-length" },
  "check-in-minutes": { name: "Minutes between check-ins, as planned", value: 5, unit: "min", source: "trial-check-ins" },
  "check-in-minutes-most": {
    name: "Minutes between check-ins beyond which a plan is too sparse",
    value: 30,
    unit: "min",
    ...clinic([5, 60]),
  },
  "gap-factor": { name: "Intervals that a gap may last", value: 1.5, unit: "", source: "trial-check-ins" },
  "comfort-last-least": { name: "Last comfort of a trial", value: 7, unit: "of 10", source: "comfort-limits", settable: [6, 10] },
  "comfort-never-below": {
    name: "Lowest comfort of a trial",
    value: 5,
    unit: "of 10",
    source: "comfort-limits",
    settable: [4, 9],
  },
  "pain-most": { name: "Highest pain of a trial", value: 3, unit: "of 10", source: "pain-cut-points" },
  "pain-forbids": { name: "Pain that forbids", value: 7, unit: "of 10", source: "pain-cut-points" },
  "trend-p": { name: "Chance below which a trend is taken as real", value: 0.05, unit: "p", source: "mann-kendall" },

  // Skin
  "first-look-minutes": { name: "First look at the skin after doffing", value: 5, unit: "min", ...clinic([1, 5]) },
  "fade-minutes": { name: "Minutes within which marks fade", value: 20, unit: "min", source: "fading-20-min" },
  "skin-tells-hours": {
    name: "Hours after a trial in which a look at the skin still tells",
    value: 2,
    unit: "h",
    ...clinic([1, 4]),
  },
  "even-grade-most": { name: "Highest grade of a mark where marks are even", value: 2, unit: "grade", ...clinic([1, 2]) },
  "stands-out-grades": {
    name: "Grades above the others from which a place stands out",
    value: 2,
    unit: "grades",
    source: "mark-grade",
  },

  // What is carried into the definitive socket
  "carry-mm": {
    name: "Relief, build-up or length that may be carried",
    value: 3,
    unit: "mm",
    source: "carry-limits",
    settable: [0, 5],
  },
  "carry-percent": { name: "Volume that may be carried", value: 1, unit: "%", source: "carry-limits", settable: [0, 2] },
  "carry-trim-mm": { name: "Trim that may be carried", value: 10, unit: "mm", source: "carry-limits", settable: [0, 15] },
  "carry-most": {
    name: "Adjustments that may be carried",
    value: 3,
    unit: "adjustments",
    source: "carry-limits",
    settable: [0, 5],
  },
  "carry-grade": {
    name: "Grade of a mark on which nothing may be carried",
    value: 3,
    unit: "grade",
    source: "carry-limits",
    settable: [2, 3],
  },

  // Side by side
  "comfort-change": {
    name: "Change of comfort that is more than error",
    value: 2,
    unit: "of 10",
    source: "comfort-limits",
    settable: [2, 4],
  },
  "pain-change": { name: "Change of pain that matters", value: 2, unit: "of 10", source: "farrar-2001" },
  "pain-change-percent": { name: "Or this share of the pain before", value: 30, unit: "%", source: "farrar-2001" },
  "grade-change": { name: "Change of a mark's grade that counts", value: 1, unit: "grades", ...clinic([1, 2]) },
  "new-mark-grades": { name: "Grades by which a mark elsewhere is a side effect", value: 2, unit: "grades", ...clinic([1, 3]) },
  "evenness-change": { name: "Change of evenness that counts", value: 0.05, unit: "", ...clinic([0.01, 0.2]) },

  // Time and error
  "fresh-days": { name: "Days since the trial ended", value: 28, unit: "days", ...clinic([7, 42]) },
  "close-errors": {
    name: "Standard errors from a limit within which a reading is close",
    value: 1.645,
    unit: "",
    source: "common-practice",
  },

  // The index
  "index-comfort-zero": { name: "Comfort of which the index makes nothing", value: 4, unit: "of 10", ...clinic([0, 6]) },
  "index-comfort-one": { name: "Comfort of which it makes all", value: 9, unit: "of 10", ...clinic([7, 10]) },
  "index-pain-zero": { name: "Pain of which it makes nothing", value: 4, unit: "of 10", ...clinic([1, 7]) },
  "index-fade-one": { name: "Fading of which it makes all", value: 5, unit: "min", ...clinic([0, 15]) },
  "index-fade-zero": { name: "Fading of which it makes nothing", value: 20, unit: "min", ...clinic([16, 40]) },
  "index-motion-zero": { name: "Motion lost of which it makes nothing", value: 20, unit: "°", ...clinic([5, 45]) },
  "index-evenness-zero": { name: "Evenness of which it makes nothing", value: 0.6, unit: "", ...clinic([0, 0.8]) },
  "index-evenness-one": { name: "Evenness of which it makes all", value: 0.95, unit: "", ...clinic([0.85, 1]) },
  "comfort-error": { name: "Standard error of one comfort score", value: 1, unit: "of 10", source: "comfort-error" },
  "pain-error": { name: "Standard error of one pain score", value: 1, unit: "of 10", ...clinic([0.5, 2]) },
  "fade-error-minutes": { name: "Standard error of a time of fading", value: 2, unit: "min", ...clinic([0.5, 5]) },

  // The wear schedule
  "wear-first-minutes": { name: "First session of wearing", value: 30, unit: "min", source: "wear-schedule" },
  "wear-sessions": { name: "Sessions of wearing a day", value: 3, unit: "sessions", source: "wear-schedule" },

  // The next step is due within so many days
  "measure-days": { name: "To measure the limb", value: 7, unit: "days", ...clinic([1, 60]) },
  "plan-days": { name: "To plan a socket", value: 5, unit: "days", ...clinic([1, 60]) },
  "make-days": { name: "To make a socket", value: 7, unit: "days", ...clinic([1, 60]) },
  "arrive-days": { name: "For a socket on its way", value: 7, unit: "days", ...clinic([1, 60]) },
  "fit-days": { name: "To fit a socket that is at hand", value: 7, unit: "days", ...clinic([1, 60]) },
  "alter-days": { name: "To alter or remake a socket", value: 7, unit: "days", ...clinic([1, 60]) },
  "begin-trial-days": { name: "To begin a wear trial", value: 7, unit: "days", ...clinic([1, 60]) },
  "finish-trial-days": { name: "To finish a wear trial", value: 1, unit: "days", ...clinic([1, 7]) },
  "sign-days": { name: "To sign", value: 3, unit: "days", ...clinic([1, 28]) },
  "release-days": { name: "To release", value: 3, unit: "days", ...clinic([1, 28]) },
  "deliver-days": { name: "To deliver the definitive socket", value: 28, unit: "days", ...clinic([1, 180]) },
} as const satisfies Record<string, LimitRow>;

/** Gates about the skin after the wear trial: looked at, intact, faded, even. */
import type { Inspection, SkinMark } from "./bundle";
import { type Evidence, type Finding, foundOnce, type GateJudge, withoutTrial } from "./evidence";
import { counted, figure, isAbove } from "./figures";
import { limbCircumference } from "./gates-limb";
import { instantMs } from "./instant";
import { limitValue } from "./limits";
import { evenness } from "./skin-marks-evenness";
import { isThere } from "./skin-marks-grade";
import { type MarkCell, mapMarks } from "./skin-marks-map";
import { type TrackedMark, trackMarks } from "./skin-marks-track";

const notLookedAt: Finding = { state: "unknown", why: "Nobody looked at the skin after the trial.", source: "plain" };

/** The marks of the trial, followed over its looks. */
export const marksOf = foundOnce(({ trial }) => trackMarks(trial?.looks ?? []));

/** Soon after doffing, and again until what was there had gone, or 20 minutes had passed. */
export const skinInspected: GateJudge = (evidence) => {
  const { trial, limits } = evidence;
  if (!trial) return withoutTrial(evidence);
  const [first, last] = [trial.looks[0], trial.looks.at(-1)];
  const limit = limitValue(limits, "first-look-minutes");
  const fadeMinutes = limitValue(limits, "fade-minutes");
  const asked = {
    unit: "min",
    limit,
    limitText: `at most ${figure(limit)} min after doffing, then until faded or ${figure(fadeMinutes)} min`,
    source: "clinic-setting",
  };
  if (!first || !last) return { ...notLookedAt, ...asked };
  const value = first.minutesAfterDoffing;
  if (isAbove(value, limit))
    return { value, state: "unknown", why: `The first look was ${figure(value)} min after doffing.`, ...asked };
  const open = last.minutesAfterDoffing >= fadeMinutes ? [] : marksOf(evidence).filter((mark) => !wasSeenGone(mark));
  if (open.length > 0)
    return {
      value,
      state: "unknown",
      why: `${counted(open.length, "mark")} not seen gone, and no look after ${figure(last.minutesAfterDoffing)} min.`,
      ...asked,
    };
  return {
    value,
    state: "met",
    why: `${counted(trial.looks.length, "look")}, the first ${figure(value)} and the last ${figure(last.minutesAfterDoffing)} min after doffing.`,
    ...asked,
  };
};

/** A time of fading that somebody wrote down is no look. */
const wasSeenGone = ({ looks, lastSeenMin }: TrackedMark): boolean =>
  lastSeenMin === null || looks.some(({ minutesAfterDoffing, mark }) => minutesAfterDoffing > lastSeenMin && !isThere(mark));

/** At no look after this socket was worn, at a fitting or a trial, anything broken, purple, or persistent and not blanching. */
export const skinIntact: GateJudge = (evidence) => {
  const { trial, looksOfSocket, limits } = evidence;
  const fadeMinutes = limitValue(limits, "fade-minutes");
  const hurt = looksOfSocket.flatMap(({ minutesAfterDoffing, marks }) =>
    marks.flatMap((mark) => {
      const what = injuryOf(mark, minutesAfterDoffing >= fadeMinutes);
      return what === null ? [] : [`${what} ${figure(minutesAfterDoffing)} min after doffing`];
    }),
  );
  const asked = {
    unit: "marks",
    limit: 0,
    limitText: `none broken, purple, or not blanching after ${figure(fadeMinutes)} min`,
    source: "npiap-2016",
  };
  if (hurt.length > 0) return { value: hurt.length, state: "forbids", why: `${hurt.join("; ")}. Call the physician.`, ...asked };
  if (!trial) return withoutTrial(evidence);
  if (trial.looks.length === 0) return { ...notLookedAt, ...asked };
  return {
    value: 0,
    state: "met",
    why: `Nothing broken or purple at ${counted(looksOfSocket.length, "look")}, and nothing that stayed without blanching.`,
    ...asked,
  };
};

function injuryOf({ broken, strength, blanches }: SkinMark, late: boolean): string | null {
  if (broken) return "Broken skin";
  if (strength === "purple") return "Purple skin";
  return late && blanches === "no" ? "A mark that does not blanch" : null;
}

export const marksFade: GateJudge = (evidence) => {
  const { trial, limits } = evidence;
  if (!trial) return withoutTrial(evidence);
  const limit = limitValue(limits, "fade-minutes");
  const asked = { unit: "min", limit, limitText: `at most ${figure(limit)} min after doffing`, source: "fading-20-min" };
  const first = trial.looks[0];
  if (!first) return { ...notLookedAt, ...asked };
  const marks = marksOf(evidence);
  const longest = longestFadeMin(marks);
  const value = longest === null ? {} : { value: longest };
  const late = marks.filter(({ state }) => state === "late").length;
  const unknown = marks.filter(({ state }) => state === "unknown").length;
  if (late > 0)
    return {
      state: "not met",
      why: `${counted(late, "mark")} still there at ${figure(limit)} min, or faded later.`,
      ...value,
      ...asked,
    };
  if (unknown > 0) return { state: "unknown", why: `${counted(unknown, "mark")} of which nobody saw when it faded.`, ...asked };
  if (isAbove(first.minutesAfterDoffing, limit))
    return {
      state: "unknown",
      why: `The first look was ${figure(first.minutesAfterDoffing)} min after doffing, when marks may have gone.`,
      ...asked,
    };
  const there = marks.filter(({ firstSeenMin }) => firstSeenMin !== null).length;
  return {
    state: "met",
    why: there === 0 ? "There was no mark." : `${counted(there, "mark")}, all faded by ${figure(longest ?? 0)} min.`,
    ...value,
    ...asked,
  };
};

/** The upper end of the interval of the mark that stayed longest, as far as it was seen; 0 without a mark; null where nobody saw one go. */
export function longestFadeMin(marks: readonly TrackedMark[]): number | null {
  const ends = marks.map(({ fade }) => fade.highMin);
  return ends.some((end) => end === null) ? null : Math.max(0, ...ends.map((end) => end ?? 0));
}

export const marksEven: GateJudge = (evidence) => {
  const { trial, limits } = evidence;
  if (!trial) return withoutTrial(evidence);
  const limit = limitValue(limits, "even-grade-most");
  const asked = { unit: "grade", limit, limitText: `no place stands out, no grade above ${figure(limit)}`, source: "even-marks" };
  const first = trial.looks[0];
  if (!first) return { ...notLookedAt, ...asked };
  const cells = firstCells(evidence);
  const value = Math.max(0, ...cells.map(({ grade }) => grade));
  const standsOut = firstEvenness(evidence).standsOut.map(({ name }) => name);
  const foundMs = instantMs(first.at, "inspections[0].at");
  const why =
    value === 0
      ? "There was no mark at the first look."
      : `At the first look the highest grade is ${value}; ${standsOut.length === 0 ? "no place stands out" : `these stand out: ${standsOut.join(", ")}`}.`;
  return { value, state: standsOut.length > 0 || value > limit ? "not met" : "met", why, foundMs, ...asked };
};

/** The cells at the first look of the trial; none without one. */
export const firstCells = foundOnce((evidence) => {
  const first = evidence.trial?.looks[0];
  return first ? cellsAt(first, evidence) : [];
});

/** How evenly the marks of that look are spread. */
export const firstEvenness = foundOnce((evidence) => evenness(firstCells(evidence)));

export function cellsAt({ marks, minutesAfterDoffing }: Inspection, evidence: Evidence): MarkCell[] {
  const circumferenceMm = limbCircumference(evidence);
  return mapMarks(marks, evidence.bundle.episode.limbLengthMm, {
    lookedAtMin: minutesAfterDoffing,
    ...(circumferenceMm === undefined ? {} : { circumferenceMm }),
  });
}

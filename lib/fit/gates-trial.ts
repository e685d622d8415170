/** Gates about the wear trial: load, time, check-ins, comfort, pain, trend, stop signs. */
import { type Evidence, type Finding, type GateJudge, type TrialEvidence, withoutTrial } from "./evidence";
import { counted, figure, inWords, isAbove, isBelow } from "./figures";
import { limitValue } from "./limits";
import { feelingsReason } from "./replay-wear-trial-reasons";
import { trialLoad as loadOf } from "./trial-load";

type TrialJudge = (trial: TrialEvidence, evidence: Evidence) => Finding;

const aboutTrial =
  (judge: TrialJudge): GateJudge =>
  (evidence) =>
    evidence.trial ? judge(evidence.trial, evidence) : withoutTrial(evidence);

const since = ({ endedMs }: TrialEvidence) => (endedMs === undefined ? {} : { foundMs: endedMs });

export const trialLoad: GateJudge = (evidence) => {
  const { bundle, trial, limits } = evidence;
  const { level, device } = bundle.episode;
  const load = loadOf(trial?.record.plan ?? {}, device, { level, limits });
  if (load.applies && !trial) return withoutTrial(evidence);
  return trial ? { foundMs: trial.beganMs, ...load } : load;
};

export const wornLongEnough = aboutTrial(({ record, replay }, { limits }) => {
  const least = limitValue(limits, "worn-minutes-least");
  const planned = record.plan.minutes;
  const limit = Math.max(planned, least);
  const value = replay.wornMinutes;
  const asked = { value, unit: "min", limit, limitText: `at least ${figure(limit)} min`, source: "trial-length" };
  const why = `Worn ${figure(value)} min of ${figure(planned)} planned; ${figure(least)} is the least.`;
  if (isBelow(planned, least) || isBelow(value, limit)) return { state: "not met", why, ...asked };
  return replay.contradicted
    ? { state: "unknown", why: `${why} But the record of the trial contradicts itself.`, ...asked }
    : { state: "met", why, ...asked };
});

export const checkedOftenEnough = aboutTrial((trial, { limits }) => {
  const { record, replay } = trial;
  const interval = record.plan.intervalMin;
  const limit = limitValue(limits, "gap-factor") * interval;
  const most = limitValue(limits, "check-in-minutes-most");
  const asked = { unit: "min", limit, limitText: `at most ${figure(limit)} min between check-ins`, ...since(trial) };
  const value = replay.largestGapMinutes;
  if (value === null)
    return { state: "unknown", why: "The record does not say when the trial began.", source: "trial-check-ins", ...asked };
  if (isAbove(interval, most))
    return {
      value,
      state: "not met",
      why: `The plan asks for a check-in only every ${figure(interval)} min; at most ${figure(most)} is let pass.`,
      source: "clinic-setting",
      ...asked,
    };
  const state = isAbove(value, limit) ? "not met" : "met";
  return {
    value,
    state,
    why: `Longest time without a check-in ${figure(value)} min, planned every ${figure(interval)} min.`,
    source: "trial-check-ins",
    ...asked,
  };
});

/** Of the trial; and nobody signs while a trial that was begun since goes badly. */
export const comfort = aboutTrial(({ replay }, { open, limits }) => {
  const [least, never] = [limitValue(limits, "comfort-last-least"), limitValue(limits, "comfort-never-below")];
  const { last, worst } = replay.series.comfort;
  const asked = {
    unit: "of 10",
    limit: least,
    limitText: `last at least ${figure(least)}, none below ${figure(never)}`,
    source: "comfort-limits",
  };
  if (last === null || worst === null || replay.series.comfort.count === 0)
    return { state: "unknown", why: "Nobody asked about comfort.", ...asked };
  const why = `Comfort last ${figure(last)} of 10, lowest ${figure(worst)}.`;
  if (last < least || worst < never) return { value: last, state: "not met", why, ...asked };
  const sinceThen = Math.min(10, ...open.map((other) => other.replay.series.comfort.worst ?? 10));
  if (sinceThen < never)
    return { value: last, state: "not met", why: `${why} But ${figure(sinceThen)} in a trial that has not ended.`, ...asked };
  const putRight = replay.checkIns.reduce((least, { worstSaid }) => Math.min(least, worstSaid?.comfort ?? 10), 10);
  return putRight < never
    ? { value: last, state: "close", why: `${why} A comfort of ${figure(putRight)} was put right afterwards.`, ...asked }
    : { value: last, state: "met", why, ...asked };
});

/** Of the trial, and of one begun since that is still worn: who hurts now must not be signed for. */
export const pain: GateJudge = (evidence) => {
  const { trial, open, limits } = evidence;
  const [most, forbids] = [limitValue(limits, "pain-most"), limitValue(limits, "pain-forbids")];
  const asked = { unit: "of 10", limit: most, limitText: `at most ${figure(most)}`, source: "pain-cut-points" };
  const inTrial = trial?.replay.series.pain.worst ?? null;
  const found = [
    { value: inTrial, where: "in the trial" },
    ...open.map(({ replay }) => ({ value: replay.series.pain.worst, where: "in a trial that has not ended" })),
  ].flatMap(({ value, where }) => (value === null ? [] : [{ value, where }]));
  const worst = found.toSorted((a, b) => b.value - a.value).at(0);
  const why = worst ? `Highest pain ${figure(worst.value)} of 10, ${worst.where}.` : "Nobody asked about pain.";
  const said = worst ? { value: worst.value, ...asked } : asked;
  if (worst && worst.value >= forbids)
    return { state: "forbids", why: `${why} From ${figure(forbids)} it forbids a release.`, ...said };
  if (worst && worst.value > most) return { state: "not met", why, ...said };
  if (!trial) return withoutTrial(evidence);
  if (inTrial === null || trial.replay.series.pain.count === 0)
    return { state: "unknown", why: "Nobody asked about pain in the trial.", ...asked };
  const putRight = trial.replay.checkIns.reduce((most, { worstSaid }) => Math.max(most, worstSaid?.pain ?? 0), 0);
  return putRight > most
    ? { state: "close", why: `${why} A pain of ${figure(putRight)} was put right afterwards.`, ...said }
    : { state: "met", why, ...said };
};

/**
 * A test of order alone: a bad value early on can hide a trend. Such a value still has to be within the limits of
 * comfort and pain.
 */
export const trend = aboutTrial(({ replay }, { limits }) => {
  const limit = limitValue(limits, "trend-p");
  const { pain: painSeries, comfort: comfortSeries } = replay.series;
  const asked = { unit: "p", limit, limitText: `p at least ${figure(limit)}`, source: "mann-kendall" };
  const count = Math.min(painSeries.count, comfortSeries.count);
  const pRise = painSeries.trend()?.pUp;
  const pFall = comfortSeries.trend()?.pDown;
  if (pRise === undefined || pFall === undefined)
    return { state: "unknown", why: `${counted(count, "check-in")}: no trend can be told.`, ...asked };
  const value = Math.min(pRise, pFall);
  const few = leastChance(count) >= limit ? ": too few for any order to show a trend" : "";
  const why = `Rise of pain ${chance(pRise)}, fall of comfort ${chance(pFall)}, from ${counted(count, "check-in")}${few}.`;
  return { value, state: isBelow(value, limit) ? "not met" : "met", why, ...asked };
});

/** Of so few values no order shows a trend: the chance of the one that rises throughout is 1/n!. */
function leastChance(count: number): number {
  let chance = 1;
  for (let value = 2; value <= count; value++) chance /= value;
  return chance;
}

/** So small a chance is no zero. */
const chance = (p: number): string => (p < 0.001 ? "p below 0.001" : `p = ${figure(p, 3)}`);

export const noStopSign = aboutTrial(({ replay }, { open, stoppedBefore }) => {
  const asked = { value: replay.stopSigns.length, unit: "stop signs", limit: 0, limitText: "none", source: "stop-signs" };
  if (replay.stopSigns.length > 0) {
    const named = replay.stopSigns
      .map(({ sign, wornMinutes }) => `${inWords(sign)} after ${figure(wornMinutes)} min worn`)
      .join(", ");
    return { state: "forbids", why: `Stop sign: ${named}.`, ...asked };
  }
  const stays = [replay, ...open.map((other) => other.replay)]
    .map((worn) => feelingsReason(worn))
    .find(({ state }) => state === "not met");
  return stays
    ? { state: "not met", why: `No stop sign was recorded, but ${stays.why}`, ...asked }
    : {
        state: "met",
        why:
          stoppedBefore.length === 0
            ? "No stop sign."
            : `No stop sign in this trial. An earlier trial of this socket was stopped: ${stoppedBefore.map(inWords).join(", ")}.`,
        ...asked,
      };
});

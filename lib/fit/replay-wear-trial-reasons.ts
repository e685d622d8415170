/** What a wear trial shows: one reading for each thing that counts. */

import { inWords, isBelow } from "./figures";
import { isSoftened, type TrialCheckIn } from "./replay-wear-trial-check-ins";
import type { TrialCourse } from "./replay-wear-trial-course";
import type { TrialLimits, TrialReason } from "./replay-wear-trial-verdict";
import type { FeelingKind } from "./words";

export function reasonsOf(course: TrialCourse, limits: TrialLimits): TrialReason[] {
  return [
    stopSigns(course),
    pain(course, limits),
    comfort(course, limits),
    trend("pain", course, limits),
    trend("comfort", course, limits),
    feelingsReason(course),
    worn(course, limits),
    gaps(course, limits),
    interval(course, limits),
    record(course),
  ];
}

/** Two decimals at most, and no zeros that say nothing. */
const plain = (value: number): string => String(Math.round(value * 100) / 100);
const counted = (count: number, thing: string): string => `${count} ${thing}${count === 1 ? "" : "s"}`;

function stopSigns({ stopSigns: signs }: TrialCourse): TrialReason {
  const common = {
    about: "stop-signs",
    value: signs.length,
    unit: "stop signs",
    limit: 0,
    limitText: "none",
    source: "stop-signs",
  } as const;
  if (signs.length === 0) return { ...common, state: "met", allows: "passed", why: "No stop sign." };
  const named = signs.map(({ sign, wornMinutes }) => `${inWords(sign)} after ${plain(wornMinutes)} min worn`).join(", ");
  return { ...common, state: "forbids", allows: "stopped", why: `Stop sign: ${named}.` };
}

function pain(
  {
    series: {
      pain: { worst, count },
    },
  }: TrialCourse,
  { painMost, painForbids }: TrialLimits,
): TrialReason {
  const common = {
    about: "pain",
    unit: "of 10",
    limit: painMost,
    limitText: `at most ${painMost}`,
    source: "pain-cut-points",
  } as const;
  const why = `Highest pain ${plain(worst ?? 0)} of 10.`;
  if (worst !== null && worst >= painForbids) return { ...common, value: worst, state: "forbids", allows: "not passed", why };
  if (worst !== null && worst > painMost) return { ...common, value: worst, state: "not met", allows: "not passed", why };
  // What was said outside the trial can only tell against it.
  if (worst === null || count === 0)
    return { ...common, state: "unknown", allows: "incomplete", why: "Nobody asked about pain during the trial." };
  return { ...common, value: worst, state: "met", allows: "passed", why };
}

function comfort(
  {
    series: {
      comfort: { last, worst, count },
    },
  }: TrialCourse,
  { comfortLast, comfortNever }: TrialLimits,
): TrialReason {
  const limitText = `last at least ${comfortLast}, none below ${comfortNever}`;
  const common = {
    about: "comfort",
    unit: "of 10",
    standardError: 1,
    limit: comfortLast,
    limitText,
    source: "comfort-limits",
  } as const;
  const why = `Comfort last ${plain(last ?? 0)}, lowest ${plain(worst ?? 0)} of 10.`;
  if (last !== null && worst !== null && (last < comfortLast || worst < comfortNever))
    return { ...common, value: last, state: "not met", allows: "not passed", why };
  if (last === null || count === 0)
    return { ...common, state: "unknown", allows: "incomplete", why: "Nobody asked about comfort during the trial." };
  return { ...common, value: last, state: "met", allows: "passed", why };
}

/** With three values no order is rare enough to tell a trend from chance: 1 in 6. */
const fewestForTrend = 4;

function trend(of: "pain" | "comfort", { series: { [of]: series } }: TrialCourse, { trendP }: TrialLimits): TrialReason {
  const about = `${of}-trend` as const;
  const turn = of === "pain" ? "rise" : "fall";
  const common = { about, unit: "p", limit: trendP, limitText: `p at least ${trendP}`, source: "mann-kendall" };
  const { count } = series;
  const chances = series.trend();
  const p = (of === "pain" ? chances?.pUp : chances?.pDown) ?? null;
  if (p === null || count < fewestForTrend)
    return {
      ...common,
      state: "unknown",
      // One value has no course at all.
      allows: count < 2 ? "incomplete" : "passed with findings",
      why: `${counted(count, "check-in")} during the trial: too few to tell a ${turn} of ${of}.`,
    };
  return isBelow(p, trendP)
    ? {
        ...common,
        value: p,
        state: "not met",
        allows: "not passed",
        why: `A ${turn} of ${of} that chance hardly makes: p = ${p.toFixed(3)}.`,
      }
    : { ...common, value: p, state: "met", allows: "passed", why: `No ${turn} of ${of} beyond chance: p = ${p.toFixed(3)}.` };
}

/** Numbness or tingling that stays is a stop sign, and cold is one; felt twice running, somebody should have stopped. */
const mustNotStay: readonly FeelingKind[] = ["numbness", "tingling", "cold"];
/** Tiredness is expected, as exertion is: neither is a finding. */
const expected: FeelingKind = "muscle-fatigue";

export function feelingsReason({ feelings: felt, checkIns }: TrialCourse): TrialReason {
  const findings = felt.filter(({ kind }) => kind !== expected);
  const [about, source] = ["feelings", "stop-signs"] as const;
  const staying = mustNotStay.find((kind) =>
    checkIns.some((checkIn, index) => has(checkIn, kind) && has(checkIns[index + 1], kind)),
  );
  if (staying !== undefined)
    return {
      about,
      source,
      state: "not met",
      allows: "not passed",
      why: `${inWords(staying)} at two check-ins running: where it stays, it is a stop sign.`,
    };
  if (!checkIns.some(({ during }) => during) && findings.length === 0)
    return { about, source, state: "unknown", allows: "incomplete", why: "Nobody asked what was felt." };
  if (findings.length === 0) return { about, source, state: "met", allows: "passed", why: "Nothing felt but what is expected." };
  const named = findings
    .map(({ kind, aspect, third, times }) => [inWords(kind), aspect, third, `(${times}×)`].filter(Boolean).join(" "))
    .join(", ");
  return { about, source, state: "close", allows: "passed with findings", why: `Felt: ${named}.` };
}

const has = (checkIn: TrialCheckIn | undefined, kind: FeelingKind): boolean =>
  checkIn?.feelings.some((felt) => felt.kind === kind) ?? false;

function worn({ plan, state, wornMinutes }: TrialCourse, { minutes }: TrialLimits): TrialReason {
  const needed = Math.max(plan.minutes, minutes);
  const common = {
    about: "worn",
    value: wornMinutes,
    unit: "min",
    limit: needed,
    limitText: `at least ${plain(needed)} min`,
    source: "trial-length",
  } as const;
  const why = `Worn ${plain(wornMinutes)} of ${plain(plan.minutes)} min planned; ${plain(minutes)} min is the least.`;
  if (state === "planned") return { ...common, state: "unknown", allows: "incomplete", why: "The trial has not begun." };
  if (state === "running" || state === "paused")
    return { ...common, state: "unknown", allows: "incomplete", why: `The trial is ${state}. ${why}` };
  return wornMinutes < needed
    ? { ...common, state: "not met", allows: "incomplete", why }
    : { ...common, state: "met", allows: "passed", why };
}

function gaps({ plan, largestGapMinutes }: TrialCourse, { gapFactor }: TrialLimits): TrialReason {
  const limit = gapFactor * plan.intervalMin;
  const common = {
    about: "gaps",
    unit: "min",
    limit,
    limitText: `at most ${plain(limit)} min`,
    source: "trial-check-ins",
  } as const;
  if (largestGapMinutes === null) return { ...common, state: "unknown", allows: "incomplete", why: "The trial has not begun." };
  const why = `Longest time without a check-in ${plain(largestGapMinutes)} min.`;
  return largestGapMinutes > limit
    ? { ...common, value: largestGapMinutes, state: "not met", allows: "passed with findings", why }
    : { ...common, value: largestGapMinutes, state: "met", allows: "passed", why };
}

function interval({ plan }: TrialCourse, { intervalMin }: TrialLimits): TrialReason {
  const common = {
    about: "interval",
    value: plan.intervalMin,
    unit: "min",
    limit: intervalMin,
    source: "trial-check-ins",
  } as const;
  const reading = {
    ...common,
    limitText: `at most ${plain(intervalMin)} min`,
    why: `The plan asks for a check-in every ${plain(plan.intervalMin)} min.`,
  };
  return plan.intervalMin > intervalMin
    ? { ...reading, state: "not met", allows: "passed with findings" }
    : { ...reading, state: "met", allows: "passed" };
}

function record({ problems, contradicted, checkIns }: TrialCourse): TrialReason {
  const common = { about: "record", value: problems.length, unit: "problems", source: "trial-record" } as const;
  const softened = checkIns.filter(isSoftened);
  const named = [
    ...problems.map(({ why }) => why),
    ...softened.map(({ id }) => `The check-in ${id} was put right and now sounds better.`),
  ].join(" ");
  if (contradicted) return { ...common, state: "unknown", allows: "incomplete", why: named };
  if (problems.length > 0) return { ...common, state: "unknown", allows: "passed with findings", why: named };
  if (softened.length > 0) return { ...common, state: "close", allows: "passed with findings", why: named };
  return { ...common, state: "met", allows: "passed", why: "The record is in order." };
}

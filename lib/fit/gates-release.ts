/** Gates about what is carried into the definitive socket, and about what the prosthetist must have read. */
import type { Adjustment } from "./bundle";
import type { Evidence, GateJudge } from "./evidence";
import { counted, figure, inWords, isAbove } from "./figures";
import { cellsAt } from "./gates-skin";
import { instantMs } from "./instant";
import { type Limits, limitValue } from "./limits";
import type { MarkCell } from "./skin-marks-map";

export const openAdjustments: GateJudge = (evidence) => {
  const { bundle, limits } = evidence;
  const limit = limitValue(limits, "carry-most");
  const value = bundle.carried.length;
  const asked = {
    value,
    unit: "adjustments",
    limit,
    limitText: `at most ${figure(limit)}, each within its limit`,
    source: "carry-limits",
  };
  if (value === 0) return { state: "met", why: "Nothing is carried into the definitive socket.", ...asked };
  const sore = soreCells(evidence);
  const faults = bundle.carried.flatMap((adjustment) => {
    const fault = tooMuch(adjustment, limits) ?? onSoreSkin(adjustment, sore);
    return fault === null ? [] : [`${placed(adjustment)}: ${fault}`];
  });
  const all = value > limit ? [`${counted(value, "adjustment")} are carried`, ...faults] : faults;
  return all.length > 0
    ? { state: "not met", why: `${all.join("; ")}. Make another check socket.`, ...asked }
    : { state: "met", why: `${counted(value, "adjustment")} carried, within the limits.`, ...asked };
};

const placed = ({ aspect, third, kind }: Adjustment): string => [kind, aspect, third].filter(Boolean).join(" ");

const unitSigns = { mm: " mm", percent: " %", deg: "°" } as const;

/** An adjustment that cannot be held against a limit is not within it. */
function tooMuch({ kind, amount, unit, reason }: Adjustment, limits: Limits): string | null {
  if (reason.trim() === "") return "no reason is given";
  if (amount === undefined || unit === undefined) return "no amount is given";
  const [limit, limitUnit] =
    kind === "volume"
      ? [limitValue(limits, "carry-percent"), "percent"]
      : [limitValue(limits, kind === "trim" ? "carry-trim-mm" : "carry-mm"), "mm"];
  if (unit !== limitUnit) return `${figure(Math.abs(amount))}${unitSigns[unit]} has no limit to be held against`;
  return isAbove(Math.abs(amount), limit) ? `${figure(Math.abs(amount))}${unitSigns[unit]} is more than ${figure(limit)}` : null;
}

/** Places with a mark of the grade on which nothing may be carried, at any look of the trial or of the latest fitting. */
function soreCells(evidence: Evidence): MarkCell[] {
  const { trial, fitting, limits } = evidence;
  const grade = limitValue(limits, "carry-grade");
  const looks = [...(trial?.record.inspections ?? []), ...(fitting?.inspections ?? [])];
  return looks.flatMap((look) => cellsAt(look, evidence)).filter((cell) => cell.grade >= grade);
}

/** An adjustment without a place may be anywhere, so it may be on a sore one. */
function onSoreSkin({ aspect, third, answers }: Adjustment, sore: readonly MarkCell[]): string | null {
  const hit = sore.find((cell) => {
    const touches =
      (aspect === undefined || cell.aspect === undefined || cell.aspect === aspect) &&
      (third === undefined || third === (cell.third ?? "distal"));
    return touches || cell.markIds.some((markId) => answers === `mark:${markId}`);
  });
  return hit ? `on a mark of grade ${hit.grade} (${hit.name})` : null;
}

export const cautionsReviewed: GateJudge = ({ bundle, asOfMs }) => {
  const { cautions } = bundle.episode;
  const unread = cautions.filter(({ acknowledgedBy, acknowledgedAt }, index) => {
    const later = acknowledgedAt !== undefined && instantMs(acknowledgedAt, `episode.cautions[${index}].acknowledgedAt`) > asOfMs;
    return acknowledgedBy === undefined || acknowledgedBy.trim() === "" || later;
  });
  const asked = { value: unread.length, unit: "cautions", limit: 0, limitText: "none unread", source: "plain" };
  if (unread.length > 0)
    return {
      state: "not met",
      why: `Not read by a prosthetist: ${unread.map(({ kind }) => inWords(kind)).join(", ")}.`,
      ...asked,
    };
  return {
    state: "met",
    why: cautions.length === 0 ? "No caution is recorded." : `${counted(cautions.length, "caution")} read by a prosthetist.`,
    ...asked,
  };
};

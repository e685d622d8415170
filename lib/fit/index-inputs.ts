/** The index of a socket, from the same evidence as its gates. */
import type { FitIndex } from "./assessment";
import type { Evidence } from "./evidence";
import { fitIndex, type IndexMeasures, indexComponents } from "./fit-index";
import { cellsAt } from "./gates-skin";
import { limitValue } from "./limits";
import { evenness } from "./skin-marks-evenness";
import { trackMarks } from "./skin-marks-track";
import { suspension, suspensionRule } from "./suspension";

export const indexOf = (evidence: Evidence): FitIndex => fitIndex(indexComponents(measuresOf(evidence), evidence.limits));

function measuresOf(evidence: Evidence): IndexMeasures {
  const { trial, fitting } = evidence;
  const lost = fitting?.motion.map(({ withoutDeg, withDeg }) => withoutDeg - withDeg) ?? [];
  const first = trial?.looks[0];
  return {
    comfort: trial?.replay.series.comfort.last ?? undefined,
    pain: trial?.replay.series.pain.worst ?? undefined,
    displacement: displacementOf(evidence),
    fadeMin: fadeOf(evidence),
    motionLostDeg: lost.length === 0 ? undefined : Math.max(...lost),
    evennessAround: first && evenness(cellsAt(first, evidence)).around,
  };
}

function displacementOf({ bundle, fitting, limits }: Evidence): IndexMeasures["displacement"] {
  if (!fitting) return undefined;
  const rule = suspensionRule(bundle.episode, limits);
  const { value, standardError } = suspension(fitting.pulls, rule);
  return value === undefined || standardError === undefined ? undefined : { value, standardError, limitMm: rule.limitMm };
}

/** A mark that nobody saw go makes the fade unknown, unless it stayed so long already that the index makes nothing of it. */
function fadeOf({ trial, limits }: Evidence): number | undefined {
  if (!trial || trial.looks.length === 0) return undefined;
  const fades = trackMarks(trial.looks).map(({ fade }) => fade);
  const longest = Math.max(0, ...fades.map(({ lowMin, highMin }) => highMin ?? lowMin));
  const known = fades.every(({ highMin }) => highMin !== null) || longest >= limitValue(limits, "index-fade-zero");
  return known ? longest : undefined;
}

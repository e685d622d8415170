/** The index of a socket, from the same evidence as its gates. */
import type { FitIndex } from "./assessment";
import type { Evidence } from "./evidence";
import { fitIndex, type IndexMeasures, indexComponents } from "./fit-index";
import { firstEvenness, marksOf } from "./gates-skin";
import { pulled } from "./gates-socket";
import { limitValue } from "./limits";

export const indexOf = (evidence: Evidence): FitIndex => fitIndex(indexComponents(measuresOf(evidence), evidence.limits));

function measuresOf(evidence: Evidence): IndexMeasures {
  const { trial, fitting } = evidence;
  const lost = fitting?.motion.map(({ withoutDeg, withDeg }) => withoutDeg - withDeg) ?? [];
  return {
    comfort: trial?.replay.series.comfort.last ?? undefined,
    pain: trial?.replay.series.pain.worst ?? undefined,
    displacement: displacementOf(evidence),
    fadeMin: fadeOf(evidence),
    motionLostDeg: lost.length === 0 ? undefined : Math.max(...lost),
    evennessAround: trial?.looks[0] && firstEvenness(evidence).around,
  };
}

function displacementOf(evidence: Evidence): IndexMeasures["displacement"] {
  const { value, standardError, limit } = pulled(evidence) ?? {};
  return value === undefined || standardError === undefined || limit === undefined
    ? undefined
    : { value, standardError, limitMm: limit };
}

/** A mark that nobody saw go makes the fade unknown, unless it stayed so long already that the index makes nothing of it. */
function fadeOf(evidence: Evidence): number | undefined {
  const { trial, limits } = evidence;
  if (!trial || trial.looks.length === 0) return undefined;
  const fades = marksOf(evidence).map(({ fade }) => fade);
  const longest = Math.max(0, ...fades.map(({ lowMin, highMin }) => highMin ?? lowMin));
  const known = fades.every(({ highMin }) => highMin !== null) || longest >= limitValue(limits, "index-fade-zero");
  return known ? longest : undefined;
}

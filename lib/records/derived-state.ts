/**
 * What follows from an episode's records is kept in its columns, so that the caseload is one cheap query.
 * It is refreshed in the transaction that changes the records, or marked there as due (derived-due.ts), and made anew
 * where only time has passed.
 */
import {
  type AdjustmentOutcome,
  limitsOfVersion,
  outcomesOfAdjustments,
  replayWearTrial,
  seriesOf,
  trialLimitsOf,
} from "@/lib/fit";
import { Prisma } from "@/lib/generated/prisma/client";
import { type EpisodeWhole, readEpisode } from "./bundle-of";
import type { Transaction } from "./database";
import { logFault } from "./faults";
import { type JudgedEpisode, judgeEpisode } from "./judge-episode";
import { limitsInForce } from "./limits-in-force";
import { type Stage, stageOf } from "./stage";

export interface DerivedState {
  stage: Stage;
  nextStep: string | null;
  nextWho: string | null;
  nextWhy: string | null;
  dueOn: string | null;
  decision: string;
  decisionSentence: string;
  subjectSocketId: string | null;
  socketCount: number;
  lastSeenAt: Date | null;
  adjustmentOutcomes: AdjustmentOutcome[] | typeof Prisma.DbNull;
  staleOn: Date | null;
}

export async function refreshDerived(
  db: Transaction,
  episodeId: string,
  { asOf, evidenceChanged }: { asOf: Date; evidenceChanged: boolean },
): Promise<DerivedState> {
  const [episode, clinic, limits] = await Promise.all([
    readEpisode(db, episodeId),
    db.clinic.findUniqueOrThrow({ where: { id: 1 } }),
    limitsInForce(db),
  ]);
  const judged = judgeEpisode(episode, { asOf, timeZone: clinic.timeZone, limits });
  const derived = derive(episode, judged, asOf);
  await db.episode.update({
    where: { id: episodeId },
    data: { ...derived, derivedAt: asOf, derivedDue: null, ...(evidenceChanged ? { evidenceVersion: { increment: 1 } } : {}) },
  });
  for (const [index, trial] of episode.wearTrials.entries()) {
    const record = judged.bundle.wearTrials[index];
    if (!record) continue;
    const { state, verdict } = replayWearTrial(record.plan, record.events, judged.bundle.asOf, trialLimitsOf(limits));
    if (state !== trial.state || verdict !== trial.verdict)
      await db.wearTrial.update({ where: { id: trial.id }, data: { state, verdict } });
  }
  return derived;
}

function derive(episode: EpisodeWhole, judged: JudgedEpisode, asOf: Date): DerivedState {
  const { bundle, assessment, next } = judged;
  const resting = episode.closedAt !== null || episode.onHoldAt !== null;
  return {
    stage: stageOf(episode, bundle, next),
    nextStep: resting ? null : next.step,
    nextWho: resting ? null : next.who,
    nextWhy: resting ? (episode.closedAt ? episode.closedWhy : episode.onHoldWhy) : next.why,
    dueOn: resting ? null : (next.dueOn?.slice(0, 10) ?? null),
    decision: assessment.decision,
    decisionSentence: assessment.sentence,
    subjectSocketId: assessment.subject?.socketId ?? null,
    socketCount: episode.sockets.length,
    lastSeenAt: lastSeen(episode, asOf),
    adjustmentOutcomes: outcomesOf(judged),
    staleOn: assessment.staleOn === null ? null : new Date(assessment.staleOn),
  };
}

/**
 * By the limits that the episode is assessed with: under a standing release those of its day. Only the clinic's count
 * reads them, and it stops no record from being kept: where earlier sockets cannot be judged, none is known.
 */
function outcomesOf({ bundle, assessment }: JudgedEpisode): DerivedState["adjustmentOutcomes"] {
  try {
    return outcomesOfAdjustments(seriesOf(bundle, { limits: limitsOfVersion(assessment.rulesVersion) }));
  } catch (error) {
    logFault(error, "what came of adjustments");
    return Prisma.DbNull;
  }
}

/** A device's clock may be ahead: nobody was seen later than now. */
function lastSeen(episode: EpisodeWhole, asOf: Date): Date | null {
  const times = [
    ...episode.measurements.map(({ at }) => at),
    ...episode.fittings.map(({ at }) => at),
    ...episode.wearTrials.flatMap(({ events }) => events.map(({ at }) => at)),
  ]
    .map((at) => at.getTime())
    .filter((atMs) => atMs <= asOf.getTime());
  return times.length === 0 ? null : new Date(Math.max(...times));
}

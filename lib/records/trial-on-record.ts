/** What a change of a wear trial has to know of it, in two short statements: a check-in waits for them. */
import type { QuickStore } from "./command";
import { refuseFinished, refuseUnderSignature } from "./episode-for-change";
import { Locked, NotFound } from "./refusals";

/** As the statements below give them: their columns are of the schema, and reading them a second time would cost. */
interface TrialRow {
  id: string;
  episodeId: string;
  socketId: string;
  wearerId: string;
  closedAt: string | null;
  struckOutAt: string | null;
  number: number;
  specifiedAt: string;
}

interface SignOffRow {
  socketId: string;
  byName: string;
  at: string;
  meaning: string;
}

export interface TrialOnRecord {
  id: string;
  episodeId: string;
  wearerId: string;
  socket: { number: number; specifiedAt: Date };
  /** Why nothing of it may change any more. */
  locked: Locked | NotFound | null;
}

export function trialOnRecord({ sql }: QuickStore, trialId: string): TrialOnRecord {
  const found = sql.get(
    `SELECT WearTrial.id, WearTrial.episodeId, WearTrial.socketId, Episode.wearerId, Episode.closedAt, Episode.struckOutAt,
       CheckSocket.number, CheckSocket.specifiedAt
     FROM WearTrial JOIN Episode ON Episode.id = WearTrial.episodeId JOIN CheckSocket ON CheckSocket.id = WearTrial.socketId
     WHERE WearTrial.id = ?`,
    trialId,
  );
  if (found === undefined) throw new NotFound("wear trial");
  const row = found as TrialRow; // the columns above
  const signOffs = sql
    .all(
      `SELECT SignOff.socketId, SignOff.byName, SignOff.at, SignOff.meaning
       FROM SignOff LEFT JOIN Withdrawal ON Withdrawal.signOffId = SignOff.id
       WHERE SignOff.episodeId = ? AND Withdrawal.id IS NULL ORDER BY SignOff.position DESC`,
      row.episodeId,
    )
    .map((signOff) => {
      const { at, ...said } = signOff as SignOffRow; // the columns above
      return { ...said, at: new Date(at) };
    });
  const locked = lockOf(() => {
    if (row.struckOutAt !== null) throw new NotFound("episode");
    refuseFinished({ closedAt: row.closedAt === null ? null : new Date(row.closedAt), signOffs });
    refuseUnderSignature({ signOffs }, row.socketId);
  });
  const { id, episodeId, wearerId, number, specifiedAt } = row;
  return { id, episodeId, wearerId, socket: { number, specifiedAt: new Date(specifiedAt) }, locked };
}

function lockOf(check: () => void): Locked | NotFound | null {
  try {
    check();
    return null;
  } catch (error) {
    if (error instanceof Locked || error instanceof NotFound) return error;
    throw error;
  }
}

/** The trial that an event belongs to, and what it is. */
export function eventOfId({ sql }: QuickStore, eventId: string): { trialId: string; kind: string } | null {
  const found = sql.get("SELECT trialId, kind FROM TrialEvent WHERE id = ?", eventId);
  return found === undefined ? null : (found as { trialId: string; kind: string }); // the columns above
}

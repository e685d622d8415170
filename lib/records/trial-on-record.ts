/** What a change of a wear trial has to know of it, in two short statements: a check-in waits for them. */
import { z } from "zod";
import type { QuickStore } from "./command";
import { refuseFinished, refuseUnderSignature } from "./episode-for-change";
import { Locked, NotFound } from "./refusals";

const instantOfRow = z.string().transform((text) => new Date(text));

const TrialRow = z.object({
  id: z.string(),
  episodeId: z.string(),
  socketId: z.string(),
  wearerId: z.string(),
  closedAt: z.string().nullable(),
  struckOutAt: z.string().nullable(),
  number: z.number(),
  specifiedAt: instantOfRow,
});

const SignOffRow = z.object({ socketId: z.string(), byName: z.string(), at: instantOfRow, meaning: z.string() });

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
  const { socketId, closedAt, struckOutAt, number, specifiedAt, ...trial } = TrialRow.parse(found);
  const signOffs = sql
    .all(
      `SELECT SignOff.socketId, SignOff.byName, SignOff.at, SignOff.meaning
       FROM SignOff LEFT JOIN Withdrawal ON Withdrawal.signOffId = SignOff.id
       WHERE SignOff.episodeId = ? AND Withdrawal.id IS NULL ORDER BY SignOff.position DESC`,
      trial.episodeId,
    )
    .map((row) => SignOffRow.parse(row));
  const locked = lockOf(() => {
    if (struckOutAt !== null) throw new NotFound("episode");
    refuseFinished({ closedAt: closedAt === null ? null : new Date(closedAt), signOffs });
    refuseUnderSignature({ signOffs }, socketId);
  });
  return { ...trial, socket: { number, specifiedAt }, locked };
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

const EventOfId = z.object({ trialId: z.string(), kind: z.string() });

/** The trial that an event belongs to, and what it is. */
export function eventOfId({ sql }: QuickStore, eventId: string): z.output<typeof EventOfId> | null {
  const found = sql.get("SELECT trialId, kind FROM TrialEvent WHERE id = ?", eventId);
  return found === undefined ? null : EventOfId.parse(found);
}

import { type Limits, limitsWith } from "@/lib/fit";
import type { Transaction } from "./database";
import { type OwnTapeError, ownTapeError } from "./own-tape-error";

/** This clinic's own settings by the id of the limit, the newest of each. */
export async function ownLimits(db: Transaction): Promise<Record<string, number>> {
  const rows = await db.limit.findMany({ orderBy: { version: "asc" }, select: { name: true, value: true } });
  return Object.fromEntries(rows.map(({ name, value }) => [name, value]));
}

/** The published and customary limits with this clinic's own settings laid over them, and its own tape error over its setting. */
export const limitsInForce = async (db: Transaction): Promise<Limits> => (await limitsAndTape(db)).limits;

/** The same, with where the tape error comes from. */
export async function limitsAndTape(db: Transaction): Promise<{ limits: Limits; tape: OwnTapeError }> {
  const settings = await ownLimits(db);
  const asSet = limitsWith(settings);
  const tape = await ownTapeError(db, asSet);
  const limits = tape.inForceMm === null ? asSet : limitsWith({ ...settings, "tape-error-mm": tape.inForceMm });
  return { limits, tape };
}

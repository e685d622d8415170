/** The time and the ids that records get. A script that builds or tests a store may set both. */
import { randomUUID } from "node:crypto";

interface Clock {
  now: () => Date;
  newId: () => string;
}

/**
 * By how much the program's time is ahead of the machine's. Only for the invented clinic, so that its browser tests run
 * on a fixed day: a store that is not invented refuses to open with it (database.ts, accounts.ts).
 */
export const clockOffsetMs = Number(process.env.FITTING_LEDGER_CLOCK_OFFSET_MS ?? 0);
if (!Number.isFinite(clockOffsetMs)) throw new Error("FITTING_LEDGER_CLOCK_OFFSET_MS is a number of milliseconds");

const real: Clock = { now: () => new Date(Date.now() + clockOffsetMs), newId: () => randomUUID() };
let current: Clock = real;

export const now = (): Date => current.now();
export const newId = (): string => current.newId();

/** Takes the place of the real clock until the returned function is called. */
export function setClock(clock: Partial<Clock>): () => void {
  current = { ...real, ...clock };
  return () => {
    current = real;
  };
}

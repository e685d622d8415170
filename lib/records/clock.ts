/** The time and the ids that records get. A script that builds or tests a store may set both. */
import { randomUUID } from "node:crypto";

interface Clock {
  now: () => Date;
  newId: () => string;
}

const real: Clock = { now: () => new Date(), newId: () => randomUUID() };
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

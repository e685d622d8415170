/** A check that runs, and those who wait for how far it has come. */
import type { Progress, RecordCheck } from "@/lib/records/check-record";

export interface Reached {
  done: number;
  total: number;
}

export interface Watched {
  result: Promise<RecordCheck>;
  /** How far it is once it is beyond so many entries; null once it has ended. */
  beyond: (entries: number) => Promise<Reached | null>;
}

export function watched(start: (progress: Progress) => Promise<RecordCheck>): Watched {
  let reached: Reached = { done: 0, total: 0 };
  let waiting: { entries: number; tell: (reached: Reached) => void }[] = [];
  const result = start((done, total) => {
    reached = { done, total };
    for (const { entries, tell } of waiting) if (done >= entries) tell(reached);
    waiting = waiting.filter(({ entries }) => done < entries);
  });
  const ended = result.then(() => null);
  // Who waits hears of a fault; nobody may be waiting just then.
  ended.catch(() => undefined);
  return {
    result,
    beyond: (entries) =>
      Promise.race([
        ended,
        new Promise<Reached>((tell) => {
          if (reached.done >= entries && reached.done > 0) tell(reached);
          else waiting.push({ entries, tell });
        }),
      ]),
  };
}

/** Who has an episode open hears that it changed, as soon as the change is on disk. */
import { EventEmitter } from "node:events";

// Next loads this module anew for each bundle; the process has one place to hear from all the same.
const kept = globalThis as typeof globalThis & { fittingLedgerChanges?: EventEmitter };

function changes(): EventEmitter {
  kept.fittingLedgerChanges ??= new EventEmitter().setMaxListeners(0);
  return kept.fittingLedgerChanges;
}

export const announceChange = (episodeId: string): void => void changes().emit(episodeId);

/** @returns what stops the hearing */
export function hearChanges(episodeId: string, changed: () => void): () => void {
  changes().on(episodeId, changed);
  return () => void changes().off(episodeId, changed);
}

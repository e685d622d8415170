/**
 * How often a link was tried from one network address. It is kept in memory: a restart forgets it, and each link has a
 * limit of its own in the store.
 */
const mostTries = 10;
const withinMs = 15 * 60_000;
/** Room for so many addresses; the one that was heard of first makes way. */
const mostAddresses = 5000;

// Next loads this module anew for each bundle; the process counts once all the same.
const kept = globalThis as typeof globalThis & { fittingLedgerTries?: Map<string, number[]> | undefined };

const triesByAddress = (): Map<string, number[]> => {
  kept.fittingLedgerTries ??= new Map();
  return kept.fittingLedgerTries;
};

/** Counts a try before it is known how it ends, so that many at once are counted too. False where there were too many. */
export function countTry(address: string, at: Date): boolean {
  const all = triesByAddress();
  const recent = (all.get(address) ?? []).filter((time) => at.getTime() - time < withinMs);
  all.delete(address);
  while (all.size >= mostAddresses) all.delete(all.keys().next().value ?? "");
  const within = recent.length < mostTries;
  all.set(address, within ? [...recent, at.getTime()] : recent);
  return within;
}

/** The try succeeded: it does not count. */
export function forgiveTry(address: string): void {
  const all = triesByAddress();
  const tries = all.get(address) ?? [];
  if (tries.length <= 1) all.delete(address);
  else all.set(address, tries.slice(0, -1));
}

/** For tests, which share one process. */
export const forgetTries = (): void => triesByAddress().clear();

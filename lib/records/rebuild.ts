/** Makes the derived columns of episodes anew from their records. */
import { now } from "./clock";
import { database } from "./database";
import { settleDue } from "./derived-due";
import { refreshDerived } from "./derived-state";

/** Every episode, each as of the instant given or, without one, of its own last refresh. Returns how many there were. */
export async function rebuildDerived(asOf?: Date): Promise<number> {
  await settleDue();
  const db = await database();
  const episodes = await db.episode.findMany({ select: { id: true, derivedAt: true } });
  for (const { id, derivedAt } of episodes)
    await db.$transaction((transaction) =>
      refreshDerived(transaction, id, { asOf: asOf ?? derivedAt ?? now(), evidenceChanged: false }),
    );
  return episodes.length;
}

/** Episodes whose decision may have changed because time went by. A page that shows decisions calls this first. */
export async function refreshStale(): Promise<void> {
  const db = await database();
  const asOf = now();
  const stale = await db.episode.findMany({
    where: { staleOn: { lte: asOf }, struckOutAt: null, derivedAt: { lt: asOf } },
    select: { id: true },
  });
  for (const { id } of stale)
    await db.$transaction((transaction) => refreshDerived(transaction, id, { asOf, evidenceChanged: false }));
}

import { type EpisodeWhole, fittingsThatCount, inspectionsOf } from "./bundle-of";
import { now } from "./clock";
import { query } from "./query";
import { NotFound } from "./refusals";
import { episodeAsOf } from "./see-episode";

/**
 * One fitting with every version of it, the newest first, in its episode; and the looks at the skin of the version that is
 * shown, as they were: its own first look, and those added later to it or to a version before it.
 */
export const seeFitting = query({
  permission: "see wearers",
  read: async (db, fittingId: string) => {
    const found = await db.fitting.findUnique({ where: { id: fittingId }, select: { episodeId: true } });
    if (!found) throw new NotFound("fitting");
    const seen = await episodeAsOf(db, found.episodeId, now());
    const all = seen.episode.fittings;
    const byId = new Map(all.map((fitting) => [fitting.id, fitting]));
    const newest = fittingsThatCount(all).find(({ id }) => chainOf(id, byId).includes(fittingId));
    const versions = (newest ? chainOf(newest.id, byId) : []).flatMap((id) => withFirstLook(byId.get(id)));
    const shown = byId.get(fittingId);
    if (!newest || !shown) throw new NotFound("fitting");
    const upToShown = chainOf(shown.id, byId);
    const looks = fittingsThatCount(all.filter(({ id }) => upToShown.includes(id))).flatMap(inspectionsOf);
    return { ...seen, fitting: newest, shown, versions, looks };
  },
  seen: ({ episode }) => ({ action: "saw a fitting", kind: "episode", id: episode.id, wearerId: episode.wearerId }),
});

/** The look that was written down with the fitting itself; a correction has its own. */
function withFirstLook(fitting: EpisodeWhole["fittings"][number] | undefined) {
  if (!fitting) return [];
  const looks = fitting.looks.filter(({ recordedAt }) => recordedAt.getTime() === fitting.recordedAt.getTime());
  return [{ ...fitting, firstLook: inspectionsOf({ looks })[0] }];
}

/** A fitting and those that it puts right, one after the other. */
function chainOf(id: string, byId: ReadonlyMap<string, { correctsId: string | null }>): string[] {
  const before = byId.get(id)?.correctsId;
  return before ? [id, ...chainOf(before, byId)] : [id];
}

/** What each kind of adjustment has done in this clinic: counts only, nobody's name. */
import {
  type AdjustmentKind,
  AdjustmentOutcome,
  adjustmentKinds,
  type KindRecord,
  recordOfKind,
  type WithheldRecord,
} from "@/lib/fit";
import { query } from "./query";

export type KindHistory = { kind: AdjustmentKind } & (WithheldRecord | (KindRecord & { episodes: number }));

/** Every kind, in the order of the words. Leaves out what was struck out, and the episode that is looked at. */
export const seeAdjustmentHistory = query({
  permission: "see wearers",
  read: async (db, { exceptEpisodeId }: { exceptEpisodeId?: string }): Promise<KindHistory[]> => {
    const rows = await db.episode.findMany({
      where: { struckOutAt: null, ...(exceptEpisodeId === undefined ? {} : { id: { not: exceptEpisodeId } }) },
      select: { adjustmentOutcomes: true },
    });
    // An episode that could not be judged yet has none: it adds nothing, to neither side.
    const episodes = rows.map((row) => AdjustmentOutcome.array().parse(row.adjustmentOutcomes ?? []));
    return adjustmentKinds.map((kind) => historyOf(kind, episodes));
  },
});

function historyOf(kind: AdjustmentKind, episodes: readonly (readonly AdjustmentOutcome[])[]): KindHistory {
  const ofKind = episodes.map((outcomes) => outcomes.filter((outcome) => outcome.kind === kind));
  const record = recordOfKind(ofKind.flat());
  if (record.withheld !== null) return { kind, ...record };
  // Outcomes of one episode are not independent, so it is said from how many the judged ones come.
  const from = ofKind.filter((outcomes) => outcomes.some(({ effect }) => effect !== "not measured"));
  return { kind, ...record, episodes: from.length };
}

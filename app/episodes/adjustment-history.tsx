import { show } from "@/app/_forms/show";
import { HereBefore } from "@/app/_parts/here-before";
import type { Actor } from "@/lib/access/actor";
import type { AdjustmentKind } from "@/lib/fit";
import { seeAdjustmentHistory } from "@/lib/records/see-adjustment-history";

interface AdjustmentHistoryProps {
  /** Who may see wearers. */
  actor: Actor;
  /** The episode that is looked at: it is left out of the counts. */
  episodeId: string;
  /** All kinds where left out. */
  kinds?: readonly AdjustmentKind[];
}

/** What these kinds of adjustment have done in the clinic's other episodes. */
export async function AdjustmentHistory({ actor, episodeId, kinds }: AdjustmentHistoryProps) {
  if (kinds?.length === 0) return null;
  const history = await show(seeAdjustmentHistory(actor, { exceptEpisodeId: episodeId }));
  return <HereBefore history={history} {...(kinds ? { kinds } : {})} />;
}

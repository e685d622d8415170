/** What devices sent for the trials of an episode and is kept as it came: the gravest must not be overlooked. */
import { z } from "zod";
import type { EpisodeWhole } from "./bundle-of";
import type { Database } from "./database";
import { readNumber } from "./input";

export interface SetAside {
  id: string;
  trialId: string;
  /** As it came. */
  event: unknown;
  why: string;
  receivedAt: Date;
  /** A stop sign that could not be read in full is an event of its trial as well. Everything else is judged nowhere. */
  judged: boolean;
  /** What of it forbids a release where it is judged. */
  grave: "stop sign" | "hurt skin" | "pain" | null;
  /** It came while a signature stood for the socket of its trial, or for the episode's release. */
  afterSignature: boolean;
}

/** The earliest first. */
export async function setAsideOf(db: Database, episode: EpisodeWhole, painForbids: number): Promise<SetAside[]> {
  const rows = await db.setAsideEvent.findMany({
    where: { trial: { episodeId: episode.id } },
    orderBy: [{ receivedAt: "asc" }, { id: "asc" }],
  });
  return rows.map(({ id, trialId, event, why, receivedAt }) => {
    const trial = episode.wearTrials.find((one) => one.id === trialId);
    return {
      ...{ id, trialId, event, why, receivedAt },
      judged: trial?.events.some((one) => one.id === id) ?? false,
      grave: graveOf(event, painForbids),
      afterSignature: episode.signOffs.some(
        ({ at, withdrawal }) => at <= receivedAt && (withdrawal === null || withdrawal.at > receivedAt),
      ),
    };
  });
}

const Sent = z.looseObject({
  kind: z.string().optional().catch(undefined),
  pain: z.unknown().optional(),
  marks: z.array(z.unknown()).catch([]),
});
const HurtSkin = z.union([z.looseObject({ broken: z.literal(true) }), z.looseObject({ strength: z.literal("purple") })]);

/** However it is written. */
export const isStopSign = (kind: unknown): boolean =>
  typeof kind === "string" && kind.toLowerCase().replace(/[^a-z]/g, "") === "stopsign";

/**
 * @param event as it came, readable or not
 * @example graveOf({ kind: "check-in", pain: "12" }, 7) // => "pain"
 */
export function graveOf(event: unknown, painForbids: number): SetAside["grave"] {
  const sent = Sent.safeParse(event);
  if (!sent.success) return null;
  if (isStopSign(sent.data.kind)) return "stop sign";
  if (sent.data.marks.some((mark) => HurtSkin.safeParse(mark).success)) return "hurt skin";
  const pain = readNumber(sent.data.pain);
  return typeof pain === "number" && pain >= painForbids ? "pain" : null;
}

/** At the head of a sentence. */
export const graveWords = {
  "stop sign": "A stop sign",
  "hurt skin": "Broken or purple skin",
  pain: "High pain",
} as const satisfies Record<NonNullable<SetAside["grave"]>, string>;

/** The device that a wearer's own link let in, by the pass that it got. */
import { now } from "@/lib/records/clock";
import { database } from "@/lib/records/database";
import { linkStateAt, maySendLate } from "@/lib/records/wearer-link-state";
import type { Actor } from "./actor";
import { digestOfSecret } from "./secrets";

interface Link {
  id: string;
  trialId: string;
  expiresAt: Date;
  withdrawnAt: Date | null;
}

/** Whoever opened a link is the wearer, as the record names them. */
export const linkName = "the wearer, by own link";

export const actorOfLink = (link: Link, at: Date): Actor => ({
  id: link.id,
  name: linkName,
  role: "wearer",
  onlyTrial: link.trialId,
  linkState: linkStateAt(link, at),
});

/** Null where nobody has this pass, or where the link has been over for so long that nothing is taken any more. */
export async function actorOfPass(pass: string): Promise<Actor | null> {
  const found = await (await database()).wearerPass.findUnique({
    where: { secretDigest: digestOfSecret(pass) },
    select: { link: true },
  });
  const at = now();
  return found && maySendLate(found.link, at) ? actorOfLink(found.link, at) : null;
}

import type { Database } from "./database";
import { Evidence } from "./evidence";
import { query } from "./query";
import { NotFound } from "./refusals";

export type { Evidence };

/** A signature with the evidence that it froze, and what came to it since. */
export const seeRelease = query({
  permission: "see release sheets",
  read: readRelease,
  seen: (found) => seen("saw a release sheet", found),
});

/** The same with all of its evidence, to be given out of hand as a file. */
export const exportRelease = query({
  permission: "see wearers",
  read: readRelease,
  seen: (found) => seen("exported a release", found),
});

const seen = (action: string, { signOff }: SeenRelease) => ({
  action,
  kind: "sign-off",
  id: signOff.id,
  wearerId: signOff.episode.wearerId,
});

export type SeenRelease = Awaited<ReturnType<typeof readRelease>>;

async function readRelease(db: Database, signOffId: string) {
  const signOff = await db.signOff.findUnique({
    where: { id: signOffId },
    include: {
      withdrawal: true,
      countersignature: true,
      addenda: { orderBy: [{ at: "asc" }, { id: "asc" }] },
      benchReadings: { orderBy: { at: "asc" } },
      benchQuestions: { orderBy: [{ at: "asc" }, { id: "asc" }], include: { answer: true } },
      socket: { select: { number: true } },
      episode: { select: { wearerId: true, deliveredAt: true } },
    },
  });
  if (!signOff) throw new NotFound("signature");
  return { signOff, evidence: Evidence.parse(JSON.parse(signOff.evidence)) };
}

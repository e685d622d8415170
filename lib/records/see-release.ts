import { Evidence } from "./evidence";
import { query } from "./query";
import { NotFound } from "./refusals";

export type { Evidence };

/** A signature with the evidence that it froze, and its withdrawal where there is one. */
export const seeRelease = query({
  permission: "see release sheets",
  read: async (db, signOffId: string) => {
    const signOff = await db.signOff.findUnique({
      where: { id: signOffId },
      include: {
        withdrawal: true,
        countersignature: true,
        addenda: { orderBy: [{ at: "asc" }, { id: "asc" }] },
        socket: { select: { number: true } },
        episode: { select: { wearerId: true, deliveredAt: true } },
      },
    });
    if (!signOff) throw new NotFound("signature");
    return { signOff, evidence: Evidence.parse(JSON.parse(signOff.evidence)) };
  },
  seen: ({ signOff }) => ({
    action: "saw a release sheet",
    kind: "sign-off",
    id: signOff.id,
    wearerId: signOff.episode.wearerId,
  }),
});

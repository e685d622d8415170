import { now } from "./clock";
import { query } from "./query";
import { linkStateAt, mostFailures } from "./wearer-link-state";

/** The latest link of a wear trial: who made it, what it is worth now, and when it was opened. Null where none was made. */
export const seeWearerLink = query({
  permission: "see wearers",
  read: async (db, trialId: string) => {
    const link = await db.wearerLink.findFirst({
      where: { trialId },
      // Two may be made in one moment; the later one is the one that was not withdrawn.
      orderBy: [{ madeAt: "desc" }, { withdrawnAt: { sort: "desc", nulls: "first" } }],
      select: {
        id: true,
        madeByName: true,
        madeAt: true,
        expiresAt: true,
        withdrawnAt: true,
        withdrawnByName: true,
        failures: true,
        passes: { select: { openedAt: true }, orderBy: { openedAt: "asc" } },
      },
    });
    if (!link) return null;
    const { passes, ...told } = link;
    return {
      ...told,
      state: linkStateAt(link, now()),
      isGuessedAt: link.failures >= mostFailures,
      openings: passes.map(({ openedAt }) => openedAt),
    };
  },
});

export type SeenWearerLink = NonNullable<Awaited<ReturnType<typeof seeWearerLink>>>;

import { database } from "./database";
import { query } from "./query";
import { refreshStale } from "./rebuild";

const caseload = {
  id: true,
  side: true,
  level: true,
  stage: true,
  nextStep: true,
  nextWho: true,
  nextWhy: true,
  dueOn: true,
  decision: true,
  decisionSentence: true,
  socketCount: true,
  lastSeenAt: true,
  prosthetistId: true,
  onHoldAt: true,
  closedAt: true,
  wearer: { select: { id: true, name: true, clinicNumber: true } },
} as const;

/** Everyone whose episode is not closed or struck out, the most pressing first. */
export const seeToday = query({
  permission: "see wearers",
  read: async (db, _asked: null) => {
    await refreshStale();
    const [episodes, prosthetists] = await Promise.all([
      db.episode.findMany({
        where: { struckOutAt: null, closedAt: null },
        select: caseload,
        orderBy: [{ dueOn: { sort: "asc", nulls: "last" } }, { wearer: { name: "asc" } }],
      }),
      prosthetistsOf(),
    ]);
    return { episodes, prosthetists };
  },
  seen: ({ episodes }) => ({ action: `saw the caseload: ${episodes.length} episodes`, kind: "caseload", id: "today" }),
});

export type CaseloadRow = Awaited<ReturnType<typeof seeToday>>["episodes"][number];

export const prosthetistsOf = async () =>
  (await database()).user.findMany({
    where: { role: "prosthetist", NOT: { banned: true } },
    select: { id: true, name: true },
    orderBy: { name: "asc" },
  });

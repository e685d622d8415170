import { limitsAndTape } from "./limits-in-force";
import { query } from "./query";

export const seeAccounts = query({
  permission: "see accounts",
  read: async (db, _asked: null) =>
    db.user.findMany({
      orderBy: { name: "asc" },
      select: {
        id: true,
        name: true,
        email: true,
        role: true,
        credentialsLine: true,
        banned: true,
        twoFactorEnabled: true,
        version: true,
        createdAt: true,
      },
    }),
});

/** The limits in force, where the tape error among them comes from, and what this clinic changed, when and why. */
export const seeRules = query({
  permission: "see rules",
  read: async (db, _asked: null) => {
    const [{ limits, tape }, changes] = await Promise.all([limitsAndTape(db), db.limit.findMany({ orderBy: { at: "desc" } })]);
    return { limits, tape, changes };
  },
});

import { query } from "./query";

/** Questions of the bench that nobody has answered, about releases that stand; the oldest first. They name no wearer. */
export const seeBenchQuestions = query({
  permission: "see release sheets",
  read: async (db, episodeId: string | null) =>
    db.benchQuestion.findMany({
      where: {
        answer: null,
        signOff: { withdrawal: null, episode: { struckOutAt: null, ...(episodeId === null ? {} : { id: episodeId }) } },
      },
      orderBy: [{ at: "asc" }, { id: "asc" }],
      select: {
        id: true,
        words: true,
        byName: true,
        at: true,
        signOffId: true,
        signOff: {
          select: { socket: { select: { number: true } }, episode: { select: { wearer: { select: { clinicNumber: true } } } } },
        },
      },
    }),
});
export type OpenBenchQuestion = Awaited<ReturnType<typeof seeBenchQuestions>>[number];

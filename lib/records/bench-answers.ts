/** Between the bench and whoever signed: a sheet is read, a question asked, and answered. No clinical words go either way. */
import { z } from "zod";
import { command, isSavedAlready, type Store } from "./command";
import { id, newRecordId, text } from "./input";
import { Locked, NotFound } from "./refusals";
import { standingRelease } from "./released";

/** A technician has read the sheet and can make the socket from it. Said once by each. */
export const acknowledgeSheet = command({
  permission: "acknowledge a release sheet",
  input: z.strictObject({ signOffId: id("The release") }),
  run: async (store, { signOffId }) => {
    const { episode } = await standingRelease(store, signOffId);
    const { actor } = store;
    const before = await store.db.benchReading.findUnique({ where: { signOffId_byId: { signOffId, byId: actor.id } } });
    if (before) return { signOffId };
    const readingId = store.newId();
    await store.db.benchReading.create({
      data: { id: readingId, signOffId, byId: actor.id, byName: actor.name, at: store.now },
    });
    await note(store, { action: "acknowledged a release sheet", signOffId, wearerId: episode.wearerId });
    return { signOffId };
  },
});

/** What is not clear at the bench, in its own words. It is asked about a sheet that stands. */
export const askAboutSheet = command({
  permission: "acknowledge a release sheet",
  input: z.strictObject({ id: newRecordId, signOffId: id("The release"), words: text("The question", 1000) }),
  run: async (store, { id, signOffId, words }) => {
    const { episode } = await standingRelease(store, signOffId);
    if (await isSavedAlready(store, { kind: "question of the bench", id, fields: { signOffId, words } })) return { signOffId };
    const questionId = id ?? store.newId();
    await store.db.benchQuestion.create({
      data: { id: questionId, signOffId, words, byId: store.actor.id, byName: store.actor.name, at: store.now },
    });
    await store.note({
      action: "asked about a release sheet",
      kind: "question of the bench",
      id: questionId,
      wearerId: episode.wearerId,
      after: { signOffId, words },
    });
    return { signOffId };
  },
});

export const answerBench = command({
  permission: "answer the bench",
  input: z.strictObject({ questionId: id("The question"), words: text("The answer", 1000) }),
  run: async (store, { questionId, words }) => {
    const question = await store.db.benchQuestion.findUnique({
      where: { id: questionId },
      include: { answer: true, signOff: { select: { id: true, episode: { select: { wearerId: true } } } } },
    });
    if (!question) throw new NotFound("question");
    const { signOff, answer } = question;
    if (answer) throw new Locked(`${answer.byName} answered this already: ${answer.words}`);
    const answerId = store.newId();
    await store.db.benchAnswer.create({
      data: { id: answerId, questionId, words, byId: store.actor.id, byName: store.actor.name, at: store.now },
    });
    await note(store, {
      action: "answered the bench",
      signOffId: signOff.id,
      wearerId: signOff.episode.wearerId,
      before: { question: question.words },
      after: { answer: words },
    });
    return { signOffId: signOff.id };
  },
});

interface Noted {
  action: string;
  signOffId: string;
  wearerId: string;
  before?: unknown;
  after?: unknown;
}

const note = (store: Store, { signOffId, ...said }: Noted) => store.note({ ...said, kind: "sign-off", id: signOffId });

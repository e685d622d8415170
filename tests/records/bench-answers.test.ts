import { expect, test } from "vitest";
import { acknowledgeSheet, answerBench, askAboutSheet } from "@/lib/records/bench-answers";
import { clientAndConnection, database } from "@/lib/records/database";
import { Locked, NotAllowed, NotFound } from "@/lib/records/refusals";
import { seeBenchQuestions } from "@/lib/records/see-bench-questions";
import { seeRelease } from "@/lib/records/see-release";
import { seeSocketOrder, seeWorkshop } from "@/lib/records/see-workshop";
import { withdrawSignature } from "@/lib/records/withdraw-signature";
import { password } from "./clinic";
import { withSignedRelease } from "./signed-release";

const questionId = "00000000-0000-4000-8000-000000000001";

test("the bench says once that it has read the sheet, and the workshop's list shows it", async () => {
  const { clinic, signOffId } = await withSignedRelease();
  for (const who of [clinic.prosthetist, clinic.assistant, clinic.administrator])
    await expect(acknowledgeSheet(who, { signOffId })).rejects.toThrow(NotAllowed);
  await acknowledgeSheet(clinic.technician, { signOffId });
  await acknowledgeSheet(clinic.technician, { signOffId });
  expect((await seeRelease(clinic.technician, signOffId)).signOff.benchReadings).toHaveLength(1);
  expect((await seeWorkshop(clinic.technician, null)).releases).toMatchObject([{ benchReadings: [{ byName: "A Technician" }] }]);
  const said = await (await database()).trailEntry.findMany({ where: { action: "acknowledged a release sheet" } });
  expect(said).toMatchObject([{ actorName: "A Technician", recordId: signOffId }]);
});

test("a question is asked once, waits where a prosthetist sees it, and is answered once", async () => {
  const { clinic, signOffId, episodeId } = await withSignedRelease();
  const question = { id: questionId, signOffId, words: "How thick is the wall at the brim?" };
  await expect(askAboutSheet(clinic.technician, { ...question, words: " " })).rejects.toMatchObject({
    fields: { words: "The question is missing." },
  });
  await askAboutSheet(clinic.technician, question);
  await askAboutSheet(clinic.technician, question);
  const open = await seeBenchQuestions(clinic.prosthetist, episodeId);
  expect(open).toMatchObject([{ words: question.words, byName: "A Technician", signOffId }]);
  expect(JSON.stringify(open)).not.toContain("Wearer One");

  await expect(answerBench(clinic.technician, { questionId, words: "4 mm" })).rejects.toThrow(NotAllowed);
  await answerBench(clinic.colleague, { questionId, words: "4 mm, rounded over." });
  await expect(answerBench(clinic.prosthetist, { questionId, words: "5 mm" })).rejects.toThrow(
    "Another Prosthetist answered this already: 4 mm, rounded over.",
  );
  await expect(answerBench(clinic.prosthetist, { questionId: "none", words: "5 mm" })).rejects.toThrow(NotFound);
  expect(await seeBenchQuestions(clinic.prosthetist, null)).toEqual([]);
  const { signOff } = await seeRelease(clinic.technician, signOffId);
  expect(signOff.benchQuestions).toMatchObject([{ words: question.words, answer: { words: "4 mm, rounded over." } }]);
});

test("a withdrawn sheet is neither read nor asked about, and its questions wait for nobody", async () => {
  const { clinic, signOffId } = await withSignedRelease();
  await askAboutSheet(clinic.technician, { id: questionId, signOffId, words: "How thick?" });
  await withdrawSignature(clinic.prosthetist, { signOffId, why: "wrong model", password });
  await expect(acknowledgeSheet(clinic.technician, { signOffId })).rejects.toThrow(Locked);
  await expect(askAboutSheet(clinic.technician, { signOffId, words: "Why?" })).rejects.toThrow(Locked);
  expect(await seeBenchQuestions(clinic.prosthetist, null)).toEqual([]);
});

test("what was read, asked and answered is only ever added", async () => {
  const { clinic, signOffId } = await withSignedRelease();
  await acknowledgeSheet(clinic.technician, { signOffId });
  await askAboutSheet(clinic.technician, { id: questionId, signOffId, words: "How thick?" });
  await answerBench(clinic.prosthetist, { questionId, words: "4 mm" });
  const { connection } = await clientAndConnection();
  for (const table of ["BenchReading", "BenchQuestion", "BenchAnswer"]) {
    expect(() => connection.exec(`UPDATE ${table} SET byName = 'x'`)).toThrow(/^locked: /);
    expect(() => connection.exec(`DELETE FROM ${table}`)).toThrow(/^locked: /);
  }
});

test("the order of a socket tells the bench what is adjusted, and not why", async () => {
  const { clinic, socketId } = await withSignedRelease();
  const reason = "The limb moved in the socket when lifted";
  const [forBench, forClinic] = await Promise.all([
    seeSocketOrder(clinic.technician, socketId),
    seeSocketOrder(clinic.assistant, socketId),
  ]);
  expect(JSON.stringify(forClinic)).toContain(reason);
  expect(JSON.stringify(forBench)).not.toContain(reason);
  expect(forBench.adjustments).toMatchObject([{ kind: "volume", amount: -2, unit: "percent" }]);
  expect(forBench.adjustments[0]?.answers).toBeUndefined();
});

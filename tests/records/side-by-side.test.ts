import { expect, test } from "vitest";
import { comparisonOf } from "@/app/episodes/[episode]/side-by-side/comparison";
import { csvLines } from "@/app/episodes/[episode]/side-by-side/csv/rows";
import { addWearer } from "@/lib/records/add-wearer";
import { database } from "@/lib/records/database";
import { openEpisode } from "@/lib/records/open-episode";
import { NotAllowed, NotFound } from "@/lib/records/refusals";
import { exportSideBySide, seeSideBySide } from "@/lib/records/see-side-by-side";
import { specifySocket } from "@/lib/records/specify-socket";
import { episodeOf, openTestClinic, readyEpisode, stations, type TestClinic } from "./clinic";

const inside = stations([170.3, 182.2, 197.0, 212.8, 231.6]);
const socketOf = (clinic: TestClinic, episodeId: string) =>
  specifySocket(clinic.prosthetist, { episodeId, at: "2026-09-29T09:00:00Z", stations: inside });

/** A second episode of the same wearer, on the other side. */
async function otherLimb(clinic: TestClinic, wearerId: string) {
  const { episodeId } = await openEpisode(clinic.prosthetist, { ...episodeOf(clinic, wearerId), side: "right" });
  return socketOf(clinic, episodeId);
}

async function anotherWearer(clinic: TestClinic) {
  const { wearerId } = await addWearer(clinic.assistant, { clinicNumber: "T-2", name: "Wearer Two" });
  const { episodeId } = await openEpisode(clinic.prosthetist, episodeOf(clinic, wearerId));
  return socketOf(clinic, episodeId);
}

const actions = async () =>
  (await (await database()).trailEntry.findMany({ orderBy: { position: "asc" } })).map(({ action }) => action);

test("two sockets of an episode, and the trail says who looked", async () => {
  const clinic = await openTestClinic();
  const { episodeId, socketId, firstSocketId } = await readyEpisode(clinic);
  const seen = await seeSideBySide(clinic.assistant, { episodeId, socketIds: [socketId, firstSocketId, socketId] });
  expect(seen.chosen.map((one) => one.socketId)).toEqual([socketId, firstSocketId]);
  expect((await actions()).at(-1)).toBe("saw sockets side by side");

  const comparison = comparisonOf(seen, "before");
  expect(comparison?.sockets.map(({ name }) => name)).toEqual(["Socket 1", "Socket 2"]);
  // The first was never fitted: nothing of it is compared, and that is said.
  expect(comparison?.notes).toEqual(["Socket 1 was never fitted: there is nothing of it to compare but its dimensions."]);
  expect(comparison?.rows.every(({ standing }) => standing === "not compared")).toBe(true);
  expect(comparison?.steps[0]?.between.steps[0]?.effects[0]?.effect).toBe("not measured");
});

test("a socket of the wearer's other limb is shown and not compared; another wearer's is left out", async () => {
  const clinic = await openTestClinic();
  const { episodeId, socketId, wearerId } = await readyEpisode(clinic);
  const [other, strange] = [await otherLimb(clinic, wearerId), await anotherWearer(clinic)];
  const asked = [other.socketId, socketId, strange.socketId, "no such socket"];
  const seen = await seeSideBySide(clinic.prosthetist, { episodeId, socketIds: asked });
  expect(seen.chosen.map((one) => one.socketId)).toEqual([socketId, other.socketId]);
  expect(seen.leftOut).toEqual([
    { socketId: strange.socketId, why: "It is another wearer’s." },
    { socketId: "no such socket", why: "There is none of that address." },
  ]);
  expect(seen.offered.map(({ number, side }) => `${number} ${side}`)).toEqual(["1 left", "2 left", "1 right"]);

  const comparison = comparisonOf(seen, "before");
  expect(comparison?.sockets.map(({ name }) => name)).toEqual(["Socket 2", "Socket 1, right transradial"]);
  expect(comparison?.notes).toContain(
    "Socket 1 is of another limb, the right transradial one: its values are shown, and nothing is compared with them.",
  );
  expect(comparison?.rows.flatMap(({ cells }) => cells.flatMap(({ against }) => against ?? []))).toEqual([]);
  expect(comparison?.dimensions.columns).toHaveLength(1);
});

test("nor one of an episode that was struck out", async () => {
  const clinic = await openTestClinic();
  const { episodeId, socketId, wearerId } = await readyEpisode(clinic);
  const other = await otherLimb(clinic, wearerId);
  const db = await database();
  const row = await db.checkSocket.findUniqueOrThrow({ where: { id: other.socketId } });
  await db.episode.update({ where: { id: row.episodeId }, data: { struckOutAt: new Date() } });
  const seen = await seeSideBySide(clinic.prosthetist, { episodeId, socketIds: [socketId, other.socketId] });
  expect(seen.leftOut).toEqual([{ socketId: other.socketId, why: "There is none of that address." }]);
  expect(seen.offered).toHaveLength(2);
});

test("one alone, or five, are not compared", async () => {
  const clinic = await openTestClinic();
  const { episodeId, socketId, firstSocketId } = await readyEpisode(clinic);
  const more = [await socketOf(clinic, episodeId), await socketOf(clinic, episodeId), await socketOf(clinic, episodeId)];
  const ids = [socketId, firstSocketId, ...more.map((one) => one.socketId)];
  const of = async (socketIds: string[]) =>
    comparisonOf(await seeSideBySide(clinic.prosthetist, { episodeId, socketIds }), "before");
  expect(await of([])).toBeUndefined();
  expect(await of([socketId])).toBeUndefined();
  expect(await of(ids)).toBeUndefined();
  expect((await of(ids.slice(0, 4)))?.columns).toHaveLength(4);
});

test("a technician sees no comparison, and a socket that is none makes no file", async () => {
  const clinic = await openTestClinic();
  const { episodeId, socketId, firstSocketId } = await readyEpisode(clinic);
  const asked = { episodeId, socketIds: [socketId, firstSocketId] };
  await expect(seeSideBySide(clinic.technician, asked)).rejects.toThrow(NotAllowed);
  await expect(exportSideBySide(clinic.technician, asked)).rejects.toThrow(NotAllowed);
  await expect(exportSideBySide(clinic.prosthetist, { episodeId, socketIds: [socketId, "none"] })).rejects.toThrow(NotFound);
  await expect(seeSideBySide(clinic.prosthetist, { ...asked, episodeId: "none" })).rejects.toThrow(NotFound);
});

test("the file has every finding of each socket, and an unknown one as unknown", async () => {
  const clinic = await openTestClinic();
  const { episodeId, socketId, firstSocketId } = await readyEpisode(clinic);
  const seen = await exportSideBySide(clinic.prosthetist, { episodeId, socketIds: [socketId, firstSocketId] });
  expect((await actions()).at(-1)).toBe("exported a comparison");
  const comparison = comparisonOf(seen, "before");
  if (!comparison) throw new Error("two sockets were asked for");
  const lines = csvLines(comparison);
  expect(lines).toContainEqual({
    about: "measure",
    what: "displacement under load",
    unit: "mm",
    socket: "Socket 1",
    value: "not measured",
  });
  const displacement = lines.find((line) => line.what === "displacement under load" && line.socket === "Socket 2");
  expect(displacement).toMatchObject({ "compared with": "Socket 1", outcome: "not measured" });
  expect(displacement?.value).toBeCloseTo(2.67, 1);
  expect(lines).toContainEqual({ about: "inside circumference", what: "at 40 mm", unit: "mm", socket: "Socket 2", value: 182.2 });
  expect(lines.filter(({ about }) => about === "adjustment")).toEqual([
    expect.objectContaining({
      what: expect.stringMatching(/^volume −2/),
      outcome: "not measured",
      why: expect.stringMatching(/^For: The limb moved/),
    }),
  ]);
});

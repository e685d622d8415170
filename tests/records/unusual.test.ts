import { expect, test } from "vitest";
import { carryAdjustment } from "@/lib/records/carry-adjustment";
import { lookAfterFitting } from "@/lib/records/look-after-fitting";
import { measureLimb } from "@/lib/records/measure-limb";
import { recordFitting } from "@/lib/records/record-fitting";
import { AskedAbout, InputRefused, SavedOtherwise } from "@/lib/records/refusals";
import { specifySocket } from "@/lib/records/specify-socket";
import { openTestClinic, readyEpisode, stations, upperChecks } from "./clinic";

const measured = { at: "2026-10-07T09:00:00Z", method: "tape" };

test("an unusual value is asked about once, at its field; sent again unchanged it is meant so", async () => {
  const clinic = await openTestClinic();
  const { episodeId } = await readyEpisode(clinic);
  const input = { ...measured, episodeId, stations: stations([176, 105]) };
  const first = measureLimb(clinic.assistant, input);
  await expect(first).rejects.toThrow(AskedAbout);
  const asked = await first.catch((error: unknown) => error);
  expect(asked).toMatchObject({
    asked: ["circumferenceMm=105"],
    fields: { "stations.1.circumferenceMm": expect.stringContaining("usual is 110 to 400. Is it so? Save once more if it is.") },
  });
  const other = { ...input, stations: stations([176, 104]), confirmed: "circumferenceMm=105" };
  await expect(measureLimb(clinic.assistant, other)).rejects.toThrow(AskedAbout);
  await expect(measureLimb(clinic.assistant, { ...input, confirmed: ["circumferenceMm=105"] })).resolves.toMatchObject({
    episodeId,
  });
});

test("an impossible value is refused, however often it is sent", async () => {
  const clinic = await openTestClinic();
  const { episodeId } = await readyEpisode(clinic);
  const input = { ...measured, episodeId, stations: stations([176, 1850]), confirmed: "circumferenceMm=1850" };
  await expect(measureLimb(clinic.assistant, input)).rejects.toThrow(InputRefused);
});

test("less displaced by a greater load, and more motion with the socket than without, are asked about", async () => {
  const clinic = await openTestClinic();
  const { socketId } = await readyEpisode(clinic);
  const input = {
    socketId,
    at: "2026-10-06T09:30:00Z",
    place: "clinic",
    checks: upperChecks,
    // Out of order on purpose: only the load says which pull is the harder.
    pulls: [
      { loadN: "45 N", displacementMm: "2,1 mm" },
      { loadN: 22, displacementMm: 3 },
    ],
    motion: [{ joint: "elbow-flexion", withoutDeg: "130°", withDeg: 138 }],
  };
  const asked = await recordFitting(clinic.assistant, input).catch((error: unknown) => error);
  expect(asked).toBeInstanceOf(AskedAbout);
  expect(asked).toMatchObject({
    fields: {
      "pulls.0.displacementMm": expect.stringContaining("Displaced less, 2.1 mm, by the greater load"),
      "motion.0.withDeg": expect.stringContaining("More motion with the socket, 138°, than without, 130°"),
    },
  });
  const { asked: confirmed } = asked as AskedAbout; // shown to be one above
  await expect(recordFitting(clinic.assistant, { ...input, confirmed })).resolves.toMatchObject({ socketId });
});

const fittingOf = (socketId: string) => ({
  socketId,
  at: "2026-10-06T09:30:00Z",
  place: "clinic",
  checks: upperChecks,
  pulls: [{ loadN: 45, displacementMm: 2 }],
});

const mark = { distanceFromEndMm: 85, angleDeg: 0, widthMm: 18, heightMm: 14, strength: "clear", blanches: "yes" };

test("marks that cannot lie on this limb are refused all at once, and before anything is asked about", async () => {
  const clinic = await openTestClinic();
  const { socketId } = await readyEpisode(clinic);
  const input = {
    ...fittingOf(socketId),
    pulls: [{ loadN: 45, displacementMm: 190 }],
    look: {
      minutesAfterDoffing: 2,
      marks: [
        { ...mark, widthMm: 400 },
        { ...mark, distanceFromEndMm: 400 },
      ],
    },
  };
  const refused = await recordFitting(clinic.assistant, input).catch((error: unknown) => error);
  expect(refused).toBeInstanceOf(InputRefused);
  expect(refused).toMatchObject({
    fields: {
      "look.marks.0.widthMm": expect.stringMatching(/^The limb is only \d+ mm around there\.$/),
      "look.marks.1.distanceFromEndMm": "This residual limb is 170 mm long: the mark would lie off it.",
    },
  });
  const mended = { ...input, look: { minutesAfterDoffing: 2, marks: [mark] } };
  const asked = await recordFitting(clinic.assistant, mended).catch((error: unknown) => error);
  expect(asked).toMatchObject({ asked: ["displacementMm=190"] });
  await expect(recordFitting(clinic.assistant, { ...mended, confirmed: "displacementMm=190" })).resolves.toMatchObject({
    socketId,
  });
});

test("two looks after one doffing that the clock puts elsewhere than their minutes are asked about", async () => {
  const clinic = await openTestClinic();
  const { socketId } = await readyEpisode(clinic);
  const { fittingId } = await recordFitting(clinic.assistant, {
    ...fittingOf(socketId),
    look: { minutesAfterDoffing: 2, marks: [mark] },
  });
  const look = { fittingId, minutesAfterDoffing: 20, marks: [mark] };
  // Five minutes later by the clock; the first look was two minutes after doffing.
  const tooSoon = { ...look, at: "2026-10-06T09:35:00Z" };
  const asked = await lookAfterFitting(clinic.assistant, tooSoon).catch((error: unknown) => error);
  expect(asked).toBeInstanceOf(AskedAbout);
  expect(asked).toMatchObject({
    fields: {
      minutesAfterDoffing: expect.stringContaining("by the clock this one is 5 minutes later: that makes 7."),
    },
  });
  await expect(lookAfterFitting(clinic.assistant, { ...look, at: "2026-10-06T09:47:00Z" })).resolves.toMatchObject({ fittingId });
});

test("a form that was saved already is saved once; with other content it is refused and nothing passes for saved", async () => {
  const clinic = await openTestClinic();
  const { socketId } = await readyEpisode(clinic);
  const input = { ...fittingOf(socketId), id: crypto.randomUUID(), words: "tab one" };
  const { fittingId } = await recordFitting(clinic.assistant, input);
  await expect(recordFitting(clinic.assistant, input)).resolves.toMatchObject({ fittingId });
  await expect(recordFitting(clinic.assistant, { ...input, words: "tab two" })).rejects.toThrow(SavedOtherwise);
  const look = { id: crypto.randomUUID(), fittingId, at: "2026-10-06T09:47:00Z", minutesAfterDoffing: 20, noMarks: true };
  await lookAfterFitting(clinic.assistant, look);
  await expect(lookAfterFitting(clinic.assistant, look)).resolves.toMatchObject({ fittingId });
  await expect(lookAfterFitting(clinic.assistant, { ...look, note: "Other" })).rejects.toThrow(SavedOtherwise);
});

test("a relief is on one aspect and has no minus; a deep one is asked about", async () => {
  const clinic = await openTestClinic();
  const { episodeId, socketId } = await readyEpisode(clinic);
  const specify = (adjustment: Record<string, unknown>) =>
    specifySocket(clinic.prosthetist, {
      episodeId,
      derivedFromId: socketId,
      workOut: "yes",
      adjustments: [{ kind: "relief", amount: 3, unit: "mm", aspect: "anterior", reason: "It presses there", ...adjustment }],
    });
  await expect(specify({ aspect: "" })).rejects.toMatchObject({
    fields: { "adjustments.0.aspect": "On which aspect? For more room all round give a change of volume, in percent." },
  });
  await expect(specify({ amount: "−3" })).rejects.toMatchObject({
    fields: { "adjustments.0.amount": "A relief has no minus. For the other direction choose build-up." },
  });
  await expect(specify({ amount: 30 })).rejects.toMatchObject({ asked: expect.arrayContaining(["reliefMm=30"]) });
  await expect(specify({ kind: "volume", unit: "percent", amount: 40, aspect: "" })).rejects.toMatchObject({
    asked: expect.arrayContaining(["volumePercent=40"]),
  });
  await expect(specify({})).resolves.toMatchObject({ episodeId });
});

test("what is carried into the definitive socket is held to the same", async () => {
  const clinic = await openTestClinic();
  const { episodeId, socketId } = await readyEpisode(clinic);
  const carried = { socketId, kind: "relief", amount: 2, unit: "mm", aspect: "anterior", reason: "It presses there" };
  await expect(carryAdjustment(clinic.prosthetist, { ...carried, aspect: "" })).rejects.toThrow(InputRefused);
  await expect(carryAdjustment(clinic.prosthetist, { ...carried, amount: 30 })).rejects.toMatchObject({ asked: ["reliefMm=30"] });
  await expect(carryAdjustment(clinic.prosthetist, carried)).resolves.toMatchObject({ episodeId });
});

import { expect, test } from "vitest";
import { database } from "@/lib/records/database";
import { measureLimb } from "@/lib/records/measure-limb";
import { InputRefused, NotAllowed } from "@/lib/records/refusals";
import { changeClinicUnits, changeOwnUnits, unitsFor } from "@/lib/records/units";
import { openTestClinic, readyEpisode, stations } from "./clinic";

test("a person reads in their own units, else in the clinic's; both are on the trail", async () => {
  const { assistant, administrator } = await openTestClinic();
  expect(await unitsFor(assistant)).toEqual({ length: "mm", mass: "kg", force: "N" });
  await changeClinicUnits(administrator, { lengthUnit: "in", massUnit: "lb", forceUnit: "lbf" });
  await changeOwnUnits(assistant, { lengthUnit: "mm", massUnit: "", forceUnit: "" });
  expect(await unitsFor(assistant)).toEqual({ length: "mm", mass: "lb", force: "lbf" });
  expect(await unitsFor(null)).toEqual({ length: "in", mass: "lb", force: "lbf" });
  await expect(changeClinicUnits(assistant, { lengthUnit: "in", massUnit: "lb", forceUnit: "lbf" })).rejects.toThrow(NotAllowed);
  await expect(changeOwnUnits(assistant, { lengthUnit: "ell" })).rejects.toThrow(InputRefused);
  const actions = (await (await database()).trailEntry.findMany()).map(({ action }) => action);
  expect(actions).toEqual(expect.arrayContaining(["changed their own units", "changed the clinic's units"]));
});

test("a limb measured in inches is kept in millimetres, exactly", async () => {
  const { assistant, ...clinic } = await openTestClinic();
  const { episodeId } = await readyEpisode({ assistant, ...clinic });
  const measured = { episodeId, at: "2026-10-07T09:00:00Z", method: "tape" };
  const { measurementId } = await measureLimb(assistant, {
    ...measured,
    stations: [
      { distanceMm: "0", circumferenceMm: "7 1/4 in" },
      { distanceMm: "1.5 in", circumferenceMm: "190,5 mm" },
    ],
  });
  const { stations: kept } = await (await database()).limbMeasurement.findUniqueOrThrow({ where: { id: measurementId } });
  expect(kept).toEqual([
    { distanceMm: 0, circumferenceMm: 184.15 },
    { distanceMm: 38.1, circumferenceMm: 190.5 },
  ]);
  await expect(
    measureLimb(assistant, { ...measured, stations: [...stations([180]), { distanceMm: "40", circumferenceMm: "7 kg" }] }),
  ).rejects.toMatchObject({ fields: { "stations.1.circumferenceMm": "Give a number in mm." } });
});

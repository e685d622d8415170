import { writeFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { assessCommand } from "@/lib/exchange/assess-command";
import { writeBundle } from "@/lib/exchange/bundle-file";
import { assessReadiness, limitsWith, parseBundle } from "@/lib/fit";
import { changeLimit } from "@/lib/records/change-limit";
import { exportBundle, seeEpisode } from "@/lib/records/see-episode";
import { sign } from "@/lib/records/sign";
import { openTestClinic, readyEpisode, signingOf } from "./clinic";

test("the file of an episode is judged by the command as the page judges the episode, with the clinic's own limits too", async () => {
  const clinic = await openTestClinic();
  const { episodeId } = await readyEpisode(clinic);
  const file = path.join(path.dirname(clinic.file), "episode.json");
  const judge = async () => {
    const { bundle } = await exportBundle(clinic.prosthetist, episodeId);
    writeFileSync(file, writeBundle(bundle));
    return {
      byCommand: JSON.parse(assessCommand([file]).said),
      byPage: (await seeEpisode(clinic.prosthetist, episodeId)).assessment,
    };
  };
  const before = await judge();
  expect(before.byCommand).toEqual(before.byPage);
  expect(before.byPage.decision).toBe("ready");

  await changeLimit(clinic.administrator, { name: "comfort-last-least", value: 9, why: "our wearers work all day" });
  const after = await judge();
  expect(after.byCommand).toEqual(after.byPage);
  expect(after.byPage.decision).toBe("not ready");
});

test("an exported episode read back and written again is the same file", async () => {
  const clinic = await openTestClinic();
  const { episodeId } = await readyEpisode(clinic);
  const text = writeBundle((await exportBundle(clinic.prosthetist, episodeId)).bundle);
  const back = parseBundle(JSON.parse(text));
  expect(writeBundle(back)).toBe(text);
  expect(assessReadiness(back, limitsWith(back.ownLimits ?? {})).decision).toBe("ready");
});

test("a released episode is explained by the limits of its day, whatever the clinic sets afterwards", async () => {
  const clinic = await openTestClinic();
  const { episodeId } = await readyEpisode(clinic);
  await changeLimit(clinic.administrator, { name: "fresh-days", value: 21, why: "our limbs change quickly" });
  await sign(clinic.prosthetist, await signingOf(episodeId, "release for definitive fabrication"));
  const released = await seeEpisode(clinic.prosthetist, episodeId);
  await changeLimit(clinic.administrator, { name: "comfort-last-least", value: 9, why: "our wearers work all day" });

  const later = await seeEpisode(clinic.prosthetist, episodeId);
  expect(later.assessment).toEqual(released.assessment);
  expect(later.assessment).toMatchObject({ decision: "ready", rulesVersion: "fit-rules/1; fresh-days 21" });
  expect((await exportBundle(clinic.prosthetist, episodeId)).bundle.ownLimits).toEqual({ "fresh-days": 21 });
});

/** A count for the clinic stops no record from being kept. */
import { expect, test, vi } from "vitest";
import { database } from "@/lib/records/database";
import { recordWearTrial } from "@/lib/records/record-wear-trial";
import { seeAdjustmentHistory } from "@/lib/records/see-adjustment-history";
import { minutesAfter, openTestClinic, readyEpisode, trialBegin } from "./clinic";

const series = vi.hoisted(() => ({ fails: false }));
vi.mock("@/lib/fit", async (importOriginal) => {
  const fit = await importOriginal<typeof import("@/lib/fit")>();
  const seriesOf: typeof fit.seriesOf = (...asked) => {
    if (series.fails) throw new Error("an earlier socket cannot be judged");
    return fit.seriesOf(...asked);
  };
  return { ...fit, seriesOf };
});

test("where the series cannot be judged, a stop sign is kept and forbids all the same", async () => {
  const clinic = await openTestClinic();
  const { episodeId, trialId } = await readyEpisode(clinic, { until: "planned" });
  const db = await database();
  const kept = () => db.episode.findUniqueOrThrow({ where: { id: episodeId } });
  expect((await kept()).adjustmentOutcomes).toMatchObject([{ kind: "volume" }]);
  series.fails = true;
  await recordWearTrial(clinic.assistant, {
    trialId,
    events: [
      { kind: "begun", at: trialBegin },
      { kind: "stop-sign", sign: "numbness", at: minutesAfter(trialBegin, 3) },
    ],
  });
  expect(await kept()).toMatchObject({ decision: "must not be released", derivedDue: null, adjustmentOutcomes: null });
  expect((await seeAdjustmentHistory(clinic.prosthetist, {})).every(({ withheld }) => withheld !== null)).toBe(true);
});

import { z } from "zod";
import { wearSchedule } from "@/lib/fit";
import type { CautionKind } from "@/lib/fit/words";
import { clinicDay } from "./clinic-time";
import { command, type Store } from "./command";
import { amount, day, id, maybeAmount, maybeText, rows, text, version } from "./input";
import { ChangedMeanwhile, InputRefused } from "./refusals";
import { standingRelease } from "./released";
import type { Question } from "./unusual";

/** One step of building up wearing time; without minutes it is all day. */
export const WearStepInput = z.strictObject({
  days: amount({ min: 1, max: 60, what: "The number of days" }),
  minutes: maybeAmount({ min: 5, max: 960, unit: "min", what: "The time of wearing" }),
  sessions: amount({ min: 1, max: 12, what: "The number of times a day" }),
});
export type WearStepInput = z.output<typeof WearStepInput>;

/** How a wearer builds up wearing time with the definitive socket. Each save is a new version; older ones are kept. */
export const planWearing = command({
  permission: "plan wearing",
  input: z.strictObject({
    signOffId: id("The release"),
    /** The position of the version that the form began with; 0 where there was none. */
    version,
    startOn: day("The first day"),
    steps: rows(WearStepInput, 30).refine((steps) => steps.length > 0, "Give one step or more."),
    words: maybeText("What you add", 600),
    call: text("Whom the wearer calls", 200),
  }),
  run: async (store, { signOffId, version: begunWith, ...plan }) => {
    const { release, episode } = await standingRelease(store, signOffId);
    const last = await store.db.wearPlan.findFirst({ where: { signOffId }, orderBy: { position: "desc" } });
    if ((last?.position ?? 0) !== begunWith)
      throw new ChangedMeanwhile("The wear schedule", { startOn: last?.startOn, call: last?.call }, last?.position ?? 0);
    const releasedOn = clinicDay(release.at, release.timeZone);
    if (plan.startOn < releasedOn)
      throw new InputRefused({ startOn: `The socket was released on ${releasedOn}: wearing begins that day or later.` });
    store.ask(questionsAbout(plan.steps, await usualStart(store, episode.wearerId, plan.startOn)));
    const wearPlanId = store.newId();
    const data = { ...plan, words: plan.words ?? null };
    await store.db.wearPlan.create({
      data: {
        ...data,
        steps: plan.steps.map(({ days, minutes = null, sessions }) => ({ days, minutes, sessions })),
        id: wearPlanId,
        position: begunWith + 1,
        signOffId,
        byId: store.actor.id,
        byName: store.actor.name,
        at: store.now,
      },
    });
    await store.note({
      action: "planned wearing",
      kind: "wear plan",
      id: wearPlanId,
      wearerId: episode.wearerId,
      episodeId: episode.id,
      ...(last ? { before: { startOn: last.startOn, steps: last.steps, words: last.words, call: last.call } } : {}),
      after: data,
    });
    return { signOffId, wearPlanId };
  },
});

/** Minutes of the first session that the cautions of this wearer allow for. */
async function usualStart(store: Store, wearerId: string, start: string): Promise<number> {
  const cautions = await store.db.caution.findMany({ where: { wearerId, endedAt: null }, select: { kind: true } });
  const kinds = cautions.map(({ kind }) => kind as CautionKind); // the column holds only kinds that the commands checked
  return wearSchedule({ start, cautions: kinds }).steps[0]?.minutes ?? 0;
}

/** Faster than usual is asked about once. */
function questionsAbout(steps: readonly WearStepInput[], usualStartMin: number): Question[] {
  return steps.flatMap(({ minutes }, index): Question[] => {
    const before = steps[index - 1];
    const path = `steps.${index}.minutes`;
    const worn = minutes ?? Number.POSITIVE_INFINITY;
    if (!before)
      return worn > usualStartMin
        ? [
            {
              path,
              why: `It begins with more than the ${usualStartMin} minutes that are usual with this wearer's cautions.`,
              key: `start=${minutes ?? "all day"}`,
            },
          ]
        : [];
    if (before.minutes === undefined) return [{ path, why: "All day comes before this step.", key: `after all day ${index}` }];
    if (minutes !== undefined && minutes > 2 * before.minutes)
      return [{ path, why: `It is more than twice the step before (${before.minutes} min).`, key: `${index}=${minutes}` }];
    return minutes !== undefined && minutes < before.minutes
      ? [{ path, why: `It is less than the step before (${before.minutes} min).`, key: `${index}=${minutes}` }]
      : [];
  });
}

import { z } from "zod";
import { causes, levels, sides, suspensions } from "@/lib/fit";
import { nulls } from "./add-wearer";
import { command, type Store } from "./command";
import { episodeForChange, findEpisode } from "./episode-for-change";
import { amount, choice, id, maybeAmount, maybeDay, maybeText, newRecordId, text, version } from "./input";
import { ChangedMeanwhile, InputRefused, NotFound } from "./refusals";
import { unusual } from "./unusual";

export const episodeFields = {
  side: choice("a side", sides),
  level: choice("a level", levels),
  cause: choice("a cause", causes),
  lossOn: maybeDay("The date of limb loss"),
  landmark: text("The landmark that distances are measured from", 120),
  stationsFrom: choice("where distances begin", ["distal end", "proximal landmark"]),
  limbLengthMm: amount({ min: 20, max: 1000, unit: "mm", what: "A residual-limb length" }),
  suspension: choice("a suspension", suspensions),
  deviceMassKg: maybeAmount({ min: 0.02, max: 15, unit: "kg", what: "A device mass" }),
  deviceCentreOfMassMm: maybeAmount({ min: 10, max: 1200, unit: "mm", what: "The distance of the centre of mass" }),
  deviceNote: maybeText("The device", 400),
  goals: maybeText("What the wearer wants to do", 1000),
  targetOn: maybeDay("The target date"),
  prosthetistId: id("The prosthetist"),
};

const EpisodeFields = z.strictObject(episodeFields);
type EpisodeFields = z.output<typeof EpisodeFields>;

const unusualPlan = ({ level, limbLengthMm, deviceMassKg, deviceCentreOfMassMm }: EpisodeFields) =>
  unusual(level, [
    { path: "limbLengthMm", quantity: "limbLengthMm", value: limbLengthMm },
    { path: "deviceMassKg", quantity: "deviceMassKg", value: deviceMassKg },
    { path: "deviceCentreOfMassMm", quantity: "centreOfMassMm", value: deviceCentreOfMassMm },
  ]);

/** Opens the fitting of one prosthesis to one limb. */
export const openEpisode = command({
  permission: "open an episode",
  input: z.strictObject({ id: newRecordId, wearerId: id("The wearer"), ...episodeFields }),
  run: async (store, { id, wearerId, ...fields }) => {
    if (id && (await store.db.episode.findUnique({ where: { id } }))) return { episodeId: id };
    if (!(await store.db.wearer.findUnique({ where: { id: wearerId }, select: { id: true } }))) throw new NotFound("wearer");
    await refuseImpossible(store, fields);
    store.ask(unusualPlan(fields));
    const episodeId = id ?? store.newId();
    await store.db.episode.create({
      data: { ...nulls(fields), id: episodeId, wearerId, openedById: store.actor.id, openedAt: store.now },
    });
    await store.note({ action: "opened an episode", kind: "episode", id: episodeId, wearerId, episodeId, after: fields });
    return { episodeId };
  },
});

/** Changes the plan of an episode: device, suspension, goals, who is responsible. */
export const changeEpisode = command({
  permission: "change an episode",
  input: z.strictObject({ episodeId: id("The episode"), version, ...episodeFields }),
  run: async (store, { episodeId, version, ...fields }) => {
    const episode = await episodeForChange(store, episodeId);
    const before = valuesOf(episode);
    if (episode.version !== version) throw new ChangedMeanwhile("This episode", before, episode.version);
    await refuseImpossible(store, fields);
    store.ask(unusualPlan(fields));
    await store.db.episode.update({ where: { id: episodeId }, data: { ...nulls(fields), version: { increment: 1 } } });
    await store.note({
      action: "changed an episode",
      kind: "episode",
      id: episodeId,
      wearerId: episode.wearerId,
      episodeId,
      before,
      after: fields,
    });
    return { episodeId };
  },
});

/** Holds, closes or takes up an episode again; every other stage follows from the records. */
export const setCourse = command({
  permission: "change an episode",
  input: z.strictObject({
    episodeId: id("The episode"),
    course: choice("what happens to the episode", ["on hold", "closed", "in fitting"]),
    why: maybeText("The reason", 1000),
  }),
  run: async (store, { episodeId, course, why }) => {
    const episode = await findEpisode(store, episodeId);
    if (course !== "in fitting" && !why) throw new InputRefused({ why: "Say why, so that whoever opens it next knows." });
    const rest = { onHoldAt: null, onHoldWhy: null, closedAt: null, closedWhy: null };
    const set =
      course === "on hold"
        ? { onHoldAt: store.now, onHoldWhy: why ?? null }
        : course === "closed"
          ? { closedAt: store.now, closedWhy: why ?? null }
          : {};
    await store.db.episode.update({ where: { id: episodeId }, data: { ...rest, ...set, version: { increment: 1 } } });
    await store.note({
      action:
        course === "in fitting"
          ? "took up an episode again"
          : course === "closed"
            ? "closed an episode"
            : "put an episode on hold",
      kind: "episode",
      id: episodeId,
      wearerId: episode.wearerId,
      episodeId,
      before: { stage: episode.stage },
      after: { course, why },
    });
    return { episodeId };
  },
});

/** An episode that was opened by mistake: kept and hidden, with the reason. */
export const strikeOutEpisode = command({
  permission: "strike out an episode",
  input: z.strictObject({ episodeId: id("The episode"), why: text("Why it is struck out", 1000) }),
  run: async (store, { episodeId, why }) => {
    const episode = await episodeForChange(store, episodeId);
    await store.db.episode.update({
      where: { id: episodeId },
      data: { struckOutAt: store.now, struckOutById: store.actor.id, struckOutWhy: why },
    });
    await store.note({
      action: "struck out an episode",
      kind: "episode",
      id: episodeId,
      wearerId: episode.wearerId,
      episodeId,
      after: { why },
    });
    return { wearerId: episode.wearerId };
  },
});

async function refuseImpossible(store: Store, fields: EpisodeFields): Promise<void> {
  const today = store.now.toISOString().slice(0, 10);
  if (fields.lossOn && fields.lossOn > today) throw new InputRefused({ lossOn: "This day has not come yet." });
  if (fields.lossOn && fields.cause === "congenital")
    throw new InputRefused({
      lossOn: "A congenital limb difference has no date of loss. Leave it empty, or choose another cause.",
    });
  if ((fields.deviceMassKg === undefined) !== (fields.deviceCentreOfMassMm === undefined)) {
    const missing = fields.deviceMassKg === undefined ? "deviceMassKg" : "deviceCentreOfMassMm";
    throw new InputRefused({ [missing]: "Give both the mass and the distance of its centre, or neither." });
  }
  const prosthetist = await store.db.user.findUnique({
    where: { id: fields.prosthetistId },
    select: { role: true, banned: true },
  });
  if (prosthetist?.role !== "prosthetist" || prosthetist.banned)
    throw new InputRefused({ prosthetistId: "Choose a prosthetist of this clinic." });
}

const valuesOf = (row: Record<keyof EpisodeFields, unknown>): Record<string, unknown> =>
  Object.fromEntries((Object.keys(episodeFields) as (keyof EpisodeFields)[]).map((field) => [field, row[field]]));

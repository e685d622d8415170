import { z } from "zod";
import { addCautionRow, CautionInput, nulls, refuseBirthInFuture, refuseTakenNumber, wearerFields } from "./add-wearer";
import { command, type Store } from "./command";
import { id, text, version } from "./input";
import { ChangedMeanwhile, NotFound } from "./refusals";

/** Changes what is known of a person. The second of two who save is told, and shown both versions. */
export const changeWearer = command({
  permission: "change a wearer",
  input: z.strictObject({ wearerId: id("The wearer"), version, ...wearerFields }),
  run: async (store, { wearerId, version, ...fields }) => {
    const { before, episodes } = await findWearer(store, wearerId);
    if (before.version !== version)
      throw new ChangedMeanwhile(`The record of ${before.name}`, wearerValues(before), before.version);
    await refuseTakenNumber(store, fields.clinicNumber, wearerId);
    refuseBirthInFuture(store, fields.birthOn);
    await store.db.wearer.update({ where: { id: wearerId }, data: { ...nulls(fields), version: { increment: 1 } } });
    await noteForEpisodes(store, { action: "changed a wearer", wearerId, episodes, before: wearerValues(before), after: fields });
    return { wearerId };
  },
});

/** Writes down something that whoever fits this person has to know. */
export const addCaution = command({
  permission: "change a wearer",
  input: z.strictObject({ wearerId: id("The wearer"), ...CautionInput.shape }),
  run: async (store, { wearerId, ...caution }) => {
    const { episodes } = await findWearer(store, wearerId);
    const cautionId = await addCautionRow(store, wearerId, caution);
    await noteForEpisodes(store, { action: "added a caution", wearerId, episodes, after: { cautionId, ...caution } });
    return { wearerId, cautionId };
  },
});

/** A caution that holds no longer: kept, with the reason. */
export const endCaution = command({
  permission: "acknowledge cautions",
  input: z.strictObject({ cautionId: id("The caution"), why: text("Why it no longer holds", 400) }),
  run: async (store, { cautionId, why }) => {
    const caution = await store.db.caution.findUnique({ where: { id: cautionId } });
    if (!caution || caution.endedAt) throw new NotFound("caution");
    const { episodes } = await findWearer(store, caution.wearerId);
    await store.db.caution.update({
      where: { id: cautionId },
      data: { endedAt: store.now, endedById: store.actor.id, endedWhy: why },
    });
    await noteForEpisodes(store, {
      action: "ended a caution",
      wearerId: caution.wearerId,
      episodes,
      before: { kind: caution.kind, note: caution.note },
      after: { why },
    });
    return { wearerId: caution.wearerId };
  },
});

export async function findWearer(store: Store, wearerId: string) {
  const before = await store.db.wearer.findUnique({
    where: { id: wearerId },
    include: { episodes: { where: { struckOutAt: null }, select: { id: true } } },
  });
  if (!before) throw new NotFound("wearer");
  return { before, episodes: before.episodes.map(({ id }) => id) };
}

const wearerValues = ({
  clinicNumber,
  name,
  birthOn,
  heightMm,
  bodyMassKg,
  handedness,
  occupation,
}: Awaited<ReturnType<typeof findWearer>>["before"]) => ({
  clinicNumber,
  name,
  birthOn,
  heightMm,
  bodyMassKg,
  handedness,
  occupation,
});

/** One entry; every episode of the person is judged anew, because age, mass and cautions count in its gates. */
async function noteForEpisodes(
  store: Store,
  {
    action,
    wearerId,
    episodes,
    before,
    after,
  }: { action: string; wearerId: string; episodes: string[]; before?: unknown; after: unknown },
): Promise<void> {
  await store.note({ action, kind: "wearer", id: wearerId, wearerId, before, after });
  for (const episodeId of episodes) store.touch(episodeId);
}

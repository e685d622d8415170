import { z } from "zod";
import type { Prisma } from "@/lib/generated/prisma/client";
import { command, parseInput, type Store } from "./command";
import { id, instant } from "./input";
import type { Received } from "./receive-trial-events";
import { mostClockErrorMs } from "./receive-trial-events";
import { addLook, type LookInput, socketOff } from "./record-wear-trial";
import { InputRefused, Locked, NotFound, SavedOtherwise } from "./refusals";
import { refuseWithdrawn } from "./said-by-link";
import { lookFields } from "./skin-look";

const SentLook = z.looseObject({ id: z.uuid({ error: "Every look has an id of its own." }) });
const Look = z.strictObject(lookFields);

/**
 * Takes a look at the skin that a device kept while it had no network, as `receiveTrialEvents` takes events: stored once, or
 * set aside with the reason. Nobody can be asked about what is unusual any more, and a look is taken before its events too.
 */
export const receiveTrialLook = command({
  permission: "look at the skin",
  input: z.strictObject({ trialId: id("The wear trial"), sentAt: instant("When this was sent"), look: SentLook }),
  ofTrial: ({ trialId }) => trialId,
  run: async (store, { trialId, sentAt, look: sent }) => {
    const trial = await store.db.wearTrial.findUnique({
      where: { id: trialId },
      include: { socket: true, episode: { select: { wearerId: true } } },
    });
    if (!trial) throw new NotFound("wear trial");
    const became = (one: Omit<Received, "id">) => ({ trialId, received: [{ id: sent.id, ...one }] });
    const aside = await store.db.setAsideEvent.findUnique({
      where: { trialId_id: { trialId, id: sent.id } },
      select: { why: true },
    });
    if (aside) return became({ became: "set aside", why: aside.why });
    const before = await store.db.skinInspection.findUnique({ where: { id: sent.id }, select: { trialId: true } });
    if (before?.trialId === trialId) return became({ became: "known" });

    const clockOffMs = store.now.getTime() - sentAt.getTime();
    const moveMs = Math.abs(clockOffMs) > mostClockErrorMs ? clockOffMs : 0;
    try {
      refuseWithdrawn(store.actor);
      if (before) throw new InputRefused({ id: "Another look has this id." });
      await addLook({ ...store, ask: () => undefined }, await asOnRecord(store, trial, { sent, moveMs }));
      return became({ became: "stored" });
    } catch (error) {
      const why = whyNot(error);
      if (why === null) throw error;
      await store.db.setAsideEvent.create({
        data: {
          ...{ id: sent.id, trialId, why, recordedById: store.actor.id, receivedAt: store.now },
          event: JSON.parse(JSON.stringify({ kind: "look at the skin", ...sent })) as Prisma.InputJsonObject, // it came as JSON
        },
      });
      await store.note({
        action: "set aside what a wear trial could not take",
        kind: "wear trial",
        id: trialId,
        wearerId: trial.episode.wearerId,
        episodeId: trial.episodeId,
        after: [{ event: sent, why }],
      });
      return became({ became: "set aside", why });
    }
  },
});

/** The times on record decide how long after doffing it was: a device that could not know them is put right, and said so. */
async function asOnRecord(
  store: Store,
  trial: { id: string; socket: { specifiedAt: Date } },
  { sent, moveMs }: { sent: z.output<typeof SentLook>; moveMs: number },
): Promise<LookInput> {
  const { id: lookId, ...fields } = sent;
  const said = parseInput(Look, fields);
  const at = new Date(said.at.getTime() + moveMs);
  const off = await socketOff(store, trial);
  const minutes = off && (at.getTime() - off.at.getTime()) / 60_000;
  if (!minutes || minutes < 0 || Math.abs(minutes - said.minutesAfterDoffing) < 1)
    return { ...said, at, id: lookId, trialId: trial.id };
  const note = [said.note, `The device said ${Math.round(said.minutesAfterDoffing)} minutes after doffing.`]
    .filter(Boolean)
    .join(" ");
  return { ...said, at, minutesAfterDoffing: Math.round(minutes * 10) / 10, note, id: lookId, trialId: trial.id };
}

function whyNot(error: unknown): string | null {
  if (error instanceof InputRefused) return Object.values(error.fields).join(" ");
  return error instanceof Locked || error instanceof NotFound || error instanceof SavedOtherwise ? error.tell : null;
}

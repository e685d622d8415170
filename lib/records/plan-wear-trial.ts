import { z } from "zod";
import { isUpperLimb, type Level } from "@/lib/fit";
import { command, type Store } from "./command";
import { type EpisodeForChange, episodeForChange, refuseUnderSignature } from "./episode-for-change";
import { amount, id, maybeAmount, maybeText, newRecordId, yes } from "./input";
import { findSocket } from "./move-socket";
import { InputRefused, Locked, NotAllowed } from "./refusals";
import { unusual } from "./unusual";

const Activities = z.preprocess(
  (value) =>
    (typeof value === "string" ? value.split(/[\n,;]/) : Array.isArray(value) ? value : [])
      .map((activity) => String(activity).trim())
      .filter((activity) => activity !== ""),
  z
    .array(z.string().max(200, "An activity: at most 200 characters."))
    .min(1, "Say at least one thing that the wearer will do.")
    .max(30),
);

/** Plans a wear trial: how long, with what load and where it sits, what the wearer does, how often somebody asks. */
export const planWearTrial = command({
  permission: "plan a wear trial",
  input: z.strictObject({
    id: newRecordId,
    socketId: id("The socket"),
    minutes: amount({ min: 1, max: 720, unit: "min", what: "The planned time" }),
    loadKg: maybeAmount({ min: 0, max: 30, unit: "kg", what: "A load" }),
    loadDistanceMm: maybeAmount({ min: 0, max: 1500, unit: "mm", what: "The distance of the load" }),
    intervalMin: amount({ min: 1, max: 120, unit: "min", what: "The time between check-ins" }),
    activities: Activities,
    watchedBy: maybeText("Who watches", 120),
    enteredAfterwards: yes,
    /** Where the socket was forbidden: why it is worn again all the same. It stands in the trail. */
    againWhy: maybeText("Why it is tried again", 600),
  }),
  run: async (store, { id, socketId, againWhy, ...plan }) => {
    const socket = await findSocket(store, socketId);
    if (id && (await store.db.wearTrial.findUnique({ where: { id } }))) return { trialId: id, episodeId: socket.episodeId };
    const episode = await episodeForChange(store, socket.episodeId);
    refuseUnderSignature(episode, socketId);
    if (socket.state === "planned" || socket.state === "being made" || socket.state === "retired")
      throw new InputRefused({ minutes: `Socket ${socket.number} is ${socket.state}: a wear trial needs a socket at hand.` });
    refuseThoughtless(store, { episode, socketId, againWhy });
    if (isUpperLimb(episode.level as Level) && plan.loadKg !== undefined && plan.loadDistanceMm === undefined)
      // ISO 8549 level, checked on its way in
      throw new InputRefused({ loadDistanceMm: "Where does the load sit? Its distance decides how it pulls on the limb." });
    store.ask(
      unusual(episode.level as Level, [
        { path: "minutes", quantity: "trialMinutes", value: plan.minutes },
        { path: "intervalMin", quantity: "trialIntervalMin", value: plan.intervalMin },
        { path: "loadKg", quantity: "trialLoadKg", value: plan.loadKg },
        { path: "loadDistanceMm", quantity: "loadDistanceMm", value: plan.loadDistanceMm },
      ]),
    );
    const trialId = id ?? store.newId();
    await store.db.wearTrial.create({
      data: {
        ...plan,
        id: trialId,
        episodeId: socket.episodeId,
        socketId,
        loadKg: plan.loadKg ?? null,
        loadDistanceMm: plan.loadDistanceMm ?? null,
        watchedBy: plan.watchedBy ?? null,
        plannedById: store.actor.id,
        plannedByName: store.actor.name,
        plannedAt: store.now,
      },
    });
    await store.note({
      action: `planned a wear trial of socket ${socket.number}`,
      kind: "wear trial",
      id: trialId,
      wearerId: episode.wearerId,
      episodeId: socket.episodeId,
      after: { ...plan, againWhy },
    });
    return { trialId, episodeId: socket.episodeId };
  },
});

/** After a stop sign or hurt skin the same socket goes on a limb again only if a prosthetist says why. */
function refuseThoughtless(
  { actor }: Store,
  { episode, socketId, againWhy }: { episode: EpisodeForChange; socketId: string; againWhy: string | undefined },
): void {
  if (episode.onHoldAt) throw new Locked(`This episode is on hold: ${episode.onHoldWhy ?? ""} Take it up again first.`);
  if (episode.decision !== "must not be released" || episode.subjectSocketId !== socketId) return;
  if (actor.role !== "prosthetist") throw new NotAllowed("try a socket again that was forbidden", actor.role);
  if (!againWhy)
    throw new InputRefused({
      againWhy: "Say why it is worn again: what was altered, that the skin has healed, what the physician said.",
    });
}

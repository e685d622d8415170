import { z } from "zod";
import { type CheckKey, checkAnswers, checksOf, type Level, places } from "@/lib/fit";
import { command } from "./command";
import { episodeForChange, refuseBeforeSocket, refuseFuture, refuseUnderSignature } from "./episode-for-change";
import { amount, choice, id, instant, maybeAmount, maybeInstant, maybeRating, maybeText, newRecordId, rows, text } from "./input";
import { findSocket, setSocketState } from "./move-socket";
import { InputRefused } from "./refusals";
import { lookFields, refuseOffLimb, refuseSilence, writeLook } from "./skin-look";

const PullInput = z.strictObject({
  loadN: amount({ min: 0, max: 1000, unit: "N", what: "A load" }),
  displacementMm: amount({ min: 0, max: 200, unit: "mm", what: "A displacement" }),
});

const MotionInput = z.strictObject({
  joint: text("The joint's movement", 60).pipe(
    z.string().regex(/^[a-z]+(?:-[a-z]+)*$/, "Name the movement in small letters, as elbow-flexion."),
  ),
  withoutDeg: amount({ min: -90, max: 220, unit: "°", what: "The motion without the socket" }),
  withDeg: amount({ min: -90, max: 220, unit: "°", what: "The motion with the socket" }),
});

const Answers = z.preprocess(
  (value) => Object.fromEntries(Object.entries(value ?? {}).filter(([, answer]) => answer !== "" && answer !== undefined)),
  z.record(z.string(), z.enum(checkAnswers, { error: "Choose met, concern, not met or not done." })),
);

const FittingInput = z.strictObject({
  id: newRecordId,
  socketId: id("The socket"),
  at: instant("When the fitting was"),
  place: choice("where it was", places),
  whoWasThere: maybeText("Who was there", 200),
  checks: Answers,
  pulls: rows(PullInput, 20),
  motion: rows(MotionInput, 12),
  comfort: maybeRating("Comfort"),
  pain: maybeRating("Pain"),
  words: maybeText("The wearer's words", 2000),
  note: maybeText("The note", 2000),
  /** Left out, or without minutes and marks, where the skin was not looked at. */
  look: z
    .strictObject({
      ...lookFields,
      at: maybeInstant("When the skin was looked at"),
      minutesAfterDoffing: maybeAmount({ min: 0, max: 10_000, unit: "min", what: "The time after doffing" }),
    })
    .optional(),
});

/** Records what was found when a socket was put on, loaded, moved in and taken off. */
export const recordFitting = command({
  permission: "record a fitting",
  input: FittingInput,
  run: async (store, { id, socketId, look, ...fields }) => {
    const socket = await findSocket(store, socketId);
    if (id && (await store.db.fitting.findUnique({ where: { id } })))
      return { fittingId: id, socketId, episodeId: socket.episodeId };
    const episode = await episodeForChange(store, socket.episodeId);
    refuseUnderSignature(episode, socketId);
    refuseFuture(store, "at", fields.at);
    refuseBeforeSocket(socket, "at", fields.at);
    if (socket.state === "planned" || socket.state === "being made" || socket.state === "retired")
      throw new InputRefused({
        at: `Socket ${socket.number} is ${socket.state}: it cannot be fitted before it is at hand. Change its state first.`,
      });
    refuseForeignChecks(fields.checks, episode.level as Level); // the column holds only ISO 8549 levels, as open-episode checks
    refuseTwice(fields.motion);

    const fittingId = id ?? store.newId();
    await store.db.fitting.create({
      data: {
        id: fittingId,
        episodeId: socket.episodeId,
        socketId,
        at: fields.at,
        place: fields.place,
        whoWasThere: fields.whoWasThere ?? null,
        checks: fields.checks,
        pulls: fields.pulls,
        motion: fields.motion,
        comfort: fields.comfort ?? null,
        pain: fields.pain ?? null,
        words: fields.words ?? null,
        note: fields.note ?? null,
        byId: store.actor.id,
        byName: store.actor.name,
        recordedAt: store.now,
      },
    });
    if (look && (look.minutesAfterDoffing !== undefined || look.marks.length > 0 || look.noMarks)) {
      if (look.minutesAfterDoffing === undefined)
        throw new InputRefused({ "look.minutesAfterDoffing": "How many minutes after doffing was the skin looked at?" });
      refuseSilence(look, "look.");
      refuseOffLimb(look.marks, episode.limbLengthMm, "look.");
      await writeLook(store, { fittingId }, { ...look, at: look.at ?? fields.at, minutesAfterDoffing: look.minutesAfterDoffing });
    }
    if (socket.state !== "fitted") await setSocketState(store, { socket, state: "fitted", at: fields.at });
    await store.note({
      action: `recorded a fitting of socket ${socket.number}`,
      kind: "fitting",
      id: fittingId,
      wearerId: episode.wearerId,
      episodeId: socket.episodeId,
      after: { ...fields, look },
    });
    return { fittingId, socketId, episodeId: socket.episodeId };
  },
});

function refuseForeignChecks(checks: Record<string, string>, level: Level): void {
  const known: readonly string[] = checksOf(level);
  const foreign = Object.keys(checks).find((key) => !known.includes(key));
  if (foreign !== undefined) throw new InputRefused({ [`checks.${foreign as CheckKey}`]: `Not a check of a ${level} fitting.` });
}

function refuseTwice(motion: readonly { joint: string }[]): void {
  motion.forEach(({ joint }, index) => {
    if (motion.findIndex((other) => other.joint === joint) !== index)
      throw new InputRefused({ [`motion.${index}.joint`]: "This movement is in the list twice. Keep the one that holds." });
  });
}

import { z } from "zod";
import { type CheckKey, checkAnswers, checksOf, type Level, places, reportedParts } from "@/lib/fit";
import { command, isSavedAlready, type Store } from "./command";
import { episodeForChange, refuseBeforeSocket, refuseFuture, refuseUnderSignature } from "./episode-for-change";
import { amount, choice, id, instant, maybeAmount, maybeInstant, maybeRating, maybeText, newRecordId, rows, text } from "./input";
import { findSocket, setSocketState } from "./move-socket";
import { InputRefused } from "./refusals";
import { type LookFields, lookFields, refuseOffLimb, refuseSilence, unusualLook, writeLook } from "./skin-look";
import { type Question, unusual } from "./unusual";

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

/** A single tick arrives as a word, several as a list. */
const Reported = z.preprocess(
  (value) => (value === undefined || value === "" ? [] : Array.isArray(value) ? value : [value]),
  z.array(z.enum(reportedParts, { error: `Choose of ${reportedParts.join(", ")}.` })).max(reportedParts.length),
);

export const fittingFields = {
  at: instant("When the fitting was"),
  place: choice("where it was", places),
  whoWasThere: maybeText("Who was there", 200),
  /** Where that was not whoever writes it down. */
  measuredBy: maybeText("Who measured", 200),
  /** What somebody else saw or measured and told. */
  reported: Reported,
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
};

const FittingFields = z.strictObject(fittingFields);
export type FittingFields = z.output<typeof FittingFields>;

/** Records what was found when a socket was put on, loaded, moved in and taken off. */
export const recordFitting = command({
  permission: "record a fitting",
  input: z.strictObject({ id: newRecordId, socketId: id("The socket"), ...fittingFields }),
  run: async (store, { id, socketId, ...fields }) => {
    const socket = await findSocket(store, socketId);
    if (id && (await isSavedAlready(store, { kind: "fitting", id, fields })))
      return { fittingId: id, socketId, episodeId: socket.episodeId };
    const episode = await episodeForChange(store, socket.episodeId);
    refuseUnderSignature(episode, socketId);
    if (socket.state === "planned" || socket.state === "being made" || socket.state === "retired")
      throw new InputRefused({
        at: `Socket ${socket.number} is ${socket.state}: it cannot be fitted before it is at hand. Change its state first.`,
      });
    const fittingId = id ?? store.newId();
    await writeFitting(store, { fittingId, socket, episode }, fields);
    if (socket.state !== "fitted") await setSocketState(store, { socket, state: "fitted", at: fields.at });
    await store.note({
      action: `recorded a fitting of socket ${socket.number}`,
      kind: "fitting",
      id: fittingId,
      wearerId: episode.wearerId,
      episodeId: socket.episodeId,
      after: fields,
    });
    return { fittingId, socketId, episodeId: socket.episodeId };
  },
});

interface Written {
  fittingId: string;
  socket: { id: string; number: number; episodeId: string; specifiedAt: Date };
  episode: { id: string; level: string; limbLengthMm: number; stationsFrom: string };
  /** The fitting that it puts right. */
  correction?: { correctsId: string; why: string };
}

/** Checks and writes a fitting whole, with its first look at the skin. */
export async function writeFitting(store: Store, written: Written, { look, ...fields }: FittingFields): Promise<void> {
  const { fittingId, socket, episode, correction } = written;
  refuseFuture(store, "at", fields.at);
  refuseBeforeSocket(socket, "at", fields.at);
  refuseForeignChecks(fields.checks, episode.level as Level); // the column holds only ISO 8549 levels, as open-episode checks
  refuseTwice(fields.motion);
  // What cannot be is refused before anything is asked about: nobody answers the same question twice.
  const seen = await lookSeen(store, written, look, fields.at);
  store.ask([
    ...unusual(episode.level as Level, [
      ...fields.pulls.flatMap(({ loadN, displacementMm }, index) => [
        { path: `pulls.${index}.loadN`, quantity: "pullLoadN" as const, value: loadN },
        { path: `pulls.${index}.displacementMm`, quantity: "displacementMm" as const, value: displacementMm },
      ]),
      ...fields.motion.flatMap(({ withoutDeg, withDeg }, index) => [
        { path: `motion.${index}.withoutDeg`, quantity: "angleDeg" as const, value: withoutDeg },
        { path: `motion.${index}.withDeg`, quantity: "angleDeg" as const, value: withDeg },
      ]),
    ]),
    ...contrary(fields),
    ...(seen ? unusualLook(episode.level, seen, "look.") : []),
  ]);
  await store.db.fitting.create({
    data: {
      id: fittingId,
      episodeId: socket.episodeId,
      socketId: socket.id,
      at: fields.at,
      place: fields.place,
      whoWasThere: fields.whoWasThere ?? null,
      measuredBy: fields.measuredBy ?? null,
      reported: fields.reported,
      correctsId: correction?.correctsId ?? null,
      why: correction?.why ?? null,
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
  if (seen) await writeLook(store, { fittingId }, seen);
}

type Look = FittingFields["look"];

/** The look as it was filled in; nothing where nobody filled it in. */
async function lookSeen(store: Store, { episode }: Written, look: Look, fittedAt: Date): Promise<LookFields | undefined> {
  if (!look || (look.minutesAfterDoffing === undefined && look.marks.length === 0 && !look.noMarks)) return undefined;
  const { minutesAfterDoffing } = look;
  if (minutesAfterDoffing === undefined)
    throw new InputRefused({ "look.minutesAfterDoffing": "How many minutes after doffing was the skin looked at?" });
  refuseSilence(look, "look.");
  await refuseOffLimb(store, episode, look.marks, "look.");
  return { ...look, at: look.at ?? fittedAt, minutesAfterDoffing };
}

/** What goes against what one expects, and may be so all the same. */
function contrary({ pulls, motion }: Pick<FittingFields, "pulls" | "motion">): Question[] {
  const byLoad = pulls.map((pull, index) => ({ ...pull, index })).sort((a, b) => a.loadN - b.loadN);
  const backwards = byLoad.flatMap(({ loadN, displacementMm, index }, place) => {
    const gentler = byLoad[place - 1];
    return gentler && gentler.loadN < loadN && gentler.displacementMm > displacementMm
      ? [
          {
            path: `pulls.${index}.displacementMm`,
            why: `Displaced less, ${displacementMm} mm, by the greater load: ${gentler.displacementMm} mm at ${gentler.loadN} N.`,
            key: `pull ${loadN} N ${displacementMm} mm after ${gentler.loadN} N ${gentler.displacementMm} mm`,
          },
        ]
      : [];
  });
  const gained = motion.flatMap(({ joint, withoutDeg, withDeg }, index) =>
    withDeg > withoutDeg
      ? [
          {
            path: `motion.${index}.withDeg`,
            why: `More motion with the socket, ${withDeg}°, than without, ${withoutDeg}°.`,
            key: `motion ${joint} ${withoutDeg} ${withDeg}`,
          },
        ]
      : [],
  );
  return [...backwards, ...gained];
}

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

/** A look at the skin with its marks, as it is filled in after a fitting or a trial. */
import { z } from "zod";
import { blanchings, type Level, Station, strengths } from "@/lib/fit";
import { circumferenceFromEnd } from "@/lib/fit/stations";
import type { Store } from "./command";
import { amount, choice, instant, maybeAmount, maybeId, maybeText, rows, yes } from "./input";
import { InputRefused } from "./refusals";
import { unusual } from "./unusual";

const MarkInput = z.strictObject({
  /** Given where the mark was seen in an earlier look; a new mark gets its own. */
  markId: maybeId,
  distanceFromEndMm: amount({ min: 0, max: 1000, unit: "mm", what: "The distance from the distal end" }),
  angleDeg: amount({ min: 0, max: 360, unit: "°", what: "The angle from the front" }),
  widthMm: amount({ min: 1, max: 500, unit: "mm", what: "The width of a mark" }),
  heightMm: amount({ min: 1, max: 500, unit: "mm", what: "The height of a mark" }),
  strength: choice("how strong it is", strengths),
  blanches: choice("if it blanches", blanchings),
  firm: yes,
  warm: yes,
  painful: yes,
  broken: yes,
  fadedAtMin: maybeAmount({ min: 0, max: 10_000, unit: "min", what: "When it had faded" }),
});

export const lookFields = {
  at: instant("When the skin was looked at"),
  minutesAfterDoffing: amount({ min: 0, max: 10_000, unit: "min", what: "The time after doffing" }),
  note: maybeText("The note", 1000),
  marks: rows(MarkInput, 100),
  /** Said, not left out: the skin was looked at, and there was no mark. */
  noMarks: yes,
};

const LookFields = z.strictObject(lookFields);
export type LookFields = z.output<typeof LookFields>;

/** An empty list may mean that nobody looked: that there was no mark has to be said. */
export function refuseSilence({ marks, noMarks }: Pick<LookFields, "marks" | "noMarks">, prefix = ""): void {
  if (marks.length === 0 && !noMarks)
    throw new InputRefused({ [`${prefix}noMarks`]: "List the marks, or tick that there was none." });
  if (marks.length > 0 && noMarks)
    throw new InputRefused({ [`${prefix}noMarks`]: "Marks are listed: untick this, or take them out of the list." });
}

/** Every mark that cannot lie on this limb, at once: off its end, or wider than it is round. */
export async function refuseOffLimb(
  store: Store,
  episode: { id: string; limbLengthMm: number; stationsFrom: string },
  marks: LookFields["marks"],
  prefix = "",
): Promise<void> {
  const { limbLengthMm } = episode;
  const stations = await latestStations(store, episode.id);
  const wrong: Record<string, string> = {};
  const seen = new Set<string>();
  marks.forEach(({ markId, distanceFromEndMm, widthMm, strength, fadedAtMin }, index) => {
    const path = `${prefix}marks.${index}`;
    if (distanceFromEndMm > limbLengthMm * 1.15)
      wrong[`${path}.distanceFromEndMm`] = `This residual limb is ${limbLengthMm} mm long: the mark would lie off it.`;
    const aroundMm = circumferenceFromEnd(stations, distanceFromEndMm, episode);
    if (aroundMm !== undefined && widthMm > aroundMm)
      wrong[`${path}.widthMm`] = `The limb is only ${Math.round(aroundMm)} mm around there.`;
    if (strength !== "none" && fadedAtMin === 0)
      wrong[`${path}.fadedAtMin`] = "A mark that is seen has not faded yet. Leave this free until it has.";
    if (markId === undefined) return;
    if (seen.has(markId)) wrong[`${path}.markId`] = "This mark is in the list twice.";
    seen.add(markId);
  });
  if (Object.keys(wrong).length > 0) throw new InputRefused(wrong);
}

async function latestStations(store: Store, episodeId: string): Promise<Station[]> {
  const latest = await store.db.limbMeasurement.findFirst({
    where: { episodeId },
    orderBy: { at: "desc" },
    select: { stations: true },
  });
  return Station.array().parse(latest?.stations ?? []);
}

/** Questions about a look whose numbers are possible and unusual. */
export const unusualLook = (
  level: string,
  { marks, minutesAfterDoffing }: Pick<LookFields, "marks"> & { minutesAfterDoffing?: number | undefined },
  prefix = "",
) =>
  unusual(level as Level, [
    // the column holds only ISO 8549 levels, as open-episode checks
    { path: `${prefix}minutesAfterDoffing`, quantity: "minutesAfterDoffing", value: minutesAfterDoffing },
    ...marks.flatMap(({ widthMm, heightMm, fadedAtMin }, index) => [
      { path: `${prefix}marks.${index}.widthMm`, quantity: "markSizeMm" as const, value: widthMm },
      { path: `${prefix}marks.${index}.heightMm`, quantity: "markSizeMm" as const, value: heightMm },
      { path: `${prefix}marks.${index}.fadedAtMin`, quantity: "fadedAtMin" as const, value: fadedAtMin },
    ]),
  ]);

export async function writeLook(
  store: Store,
  owner: { fittingId: string } | { trialId: string },
  look: LookFields,
  inspectionId = store.newId(),
): Promise<string> {
  await store.db.skinInspection.create({
    data: {
      ...owner,
      id: inspectionId,
      at: look.at,
      minutesAfterDoffing: look.minutesAfterDoffing,
      note: look.note ?? null,
      byId: store.actor.id,
      byName: store.actor.name,
      recordedAt: store.now,
      marks: {
        create: look.marks.map(({ markId, fadedAtMin, ...mark }, position) => ({
          ...mark,
          rowId: store.newId(),
          markId: markId ?? store.newId(),
          fadedAtMin: fadedAtMin ?? null,
          position,
        })),
      },
    },
  });
  return inspectionId;
}

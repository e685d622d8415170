import { z } from "zod";
import {
  Adjustment,
  adjustmentKinds,
  adjustmentUnits,
  aspects,
  EpisodeRecord,
  type Level,
  proposeDimensions,
  type Station,
  suspensions,
  thirds,
} from "@/lib/fit";
import { command, type Store } from "./command";
import { type EpisodeForChange, episodeForChange, refuseFuture } from "./episode-for-change";
import {
  blankToNothing,
  choice,
  id,
  maybeAmount,
  maybeChoice,
  maybeDay,
  maybeId,
  maybeInstant,
  maybeText,
  newRecordId,
  rows,
  text,
  yes,
} from "./input";
import { StationInput } from "./measure-limb";
import { InputRefused } from "./refusals";
import { refuseDisorder } from "./stations";
import { type Entered, unusual } from "./unusual";

export const AdjustmentInput = z.strictObject({
  kind: choice("the kind of adjustment", adjustmentKinds),
  aspect: maybeChoice(aspects),
  third: maybeChoice(thirds),
  amount: maybeAmount({ min: -200, max: 200, what: "An amount" }),
  unit: maybeChoice(adjustmentUnits),
  reason: text("The reason", 400),
  answers: z.preprocess(blankToNothing, Adjustment.shape.answers),
});
export type AdjustmentInput = z.output<typeof AdjustmentInput>;

export const socketFields = {
  derivedFromId: maybeId,
  limbMeasurementId: maybeId,
  stations: rows(StationInput),
  /** Takes the inside circumferences from the socket before and the adjustments instead of from `stations`. */
  workOut: yes,
  lengthMm: maybeAmount({ min: 20, max: 1200, unit: "mm", what: "A socket length" }),
  material: maybeText("The material", 200),
  wallMm: maybeAmount({ min: 0.5, max: 30, unit: "mm", what: "A wall thickness" }),
  suspension: maybeChoice(suspensions),
  trimLines: maybeText("The trim lines", 600),
  benchNote: maybeText("The note for the bench", 600),
  neededOn: maybeDay("The day it is needed"),
  adjustments: rows(AdjustmentInput, 30),
};

const SocketInput = z.strictObject({
  id: newRecordId,
  episodeId: id("The episode"),
  /** When it was specified; now, where nothing is said. */
  at: maybeInstant("When it was specified"),
  ...socketFields,
});
type SocketAsked = Omit<z.output<typeof SocketInput>, "id" | "episodeId" | "at">;
type SocketFields = Omit<SocketAsked, "workOut">;

/** Specifies the next check socket of a series, with every adjustment that separates it from the one it comes from. */
export const specifySocket = command({
  permission: "specify a socket",
  input: SocketInput,
  run: async (store, { id, episodeId, at = store.now, ...asked }) => {
    if (id && (await store.db.checkSocket.findUnique({ where: { id } }))) return { socketId: id, episodeId };
    const episode = await episodeForChange(store, episodeId);
    refuseFuture(store, "at", at);
    const fields = await withDimensions(store, episode, asked);
    await refuseUnfit(store, episodeId, fields);
    store.ask(unusualSocket(episode.level, fields));
    const last = await store.db.checkSocket.findFirst({
      where: { episodeId },
      orderBy: { number: "desc" },
      select: { number: true },
    });
    const number = (last?.number ?? 0) + 1;
    const socketId = id ?? store.newId();
    const { adjustments, ...own } = fields;
    await store.db.checkSocket.create({
      data: {
        ...ownColumns(own),
        id: socketId,
        episodeId,
        number,
        stateSince: at,
        specifiedById: store.actor.id,
        specifiedByName: store.actor.name,
        specifiedAt: at,
      },
    });
    await addStateChange(store, socketId, "planned", at);
    await writeAdjustments(store, { episodeId, socketId, adjustments });
    await store.note({
      action: `specified socket ${number}`,
      kind: "check socket",
      id: socketId,
      wearerId: episode.wearerId,
      episodeId,
      after: { number, ...fields },
    });
    return { socketId, episodeId };
  },
});

export const unusualSocket = (
  level: string,
  { stations, lengthMm, wallMm, adjustments }: Pick<SocketFields, "stations" | "lengthMm" | "wallMm" | "adjustments">,
) =>
  unusual(level as Level, [
    // the column holds only ISO 8549 levels, as open-episode checks
    ...adjustments.flatMap((adjustment, index) => amountEntered(adjustment, `adjustments.${index}.`)),
    ...stations.map(({ circumferenceMm }, index) => ({
      path: `stations.${index}.circumferenceMm`,
      quantity: "circumferenceMm" as const,
      value: circumferenceMm,
    })),
    { path: "lengthMm", quantity: "socketLengthMm", value: lengthMm },
    { path: "wallMm", quantity: "wallMm", value: wallMm },
  ]);

/** The amount of an adjustment as a quantity, where there is a usual range for it. */
export function amountEntered({ kind, unit, amount: value }: AdjustmentInput, prefix = ""): Entered[] {
  const path = `${prefix}amount`;
  if (kind === "volume" && unit === "percent") return [{ path, quantity: "volumePercent", value }];
  return isOnAspect(kind) && unit === "mm" ? [{ path, quantity: "reliefMm", value }] : [];
}

const isOnAspect = (kind: AdjustmentInput["kind"]): boolean => kind === "relief" || kind === "build-up";

export const ownColumns = (own: Omit<SocketFields, "adjustments">) => ({
  derivedFromId: own.derivedFromId ?? null,
  limbMeasurementId: own.limbMeasurementId ?? null,
  stations: own.stations,
  lengthMm: own.lengthMm ?? null,
  material: own.material ?? null,
  wallMm: own.wallMm ?? null,
  suspension: own.suspension ?? null,
  trimLines: own.trimLines ?? null,
  benchNote: own.benchNote ?? null,
  neededOn: own.neededOn ?? null,
});

export async function withDimensions(
  store: Store,
  episode: EpisodeForChange,
  { workOut, ...fields }: SocketAsked,
): Promise<SocketFields> {
  if (!workOut) return fields;
  const origin = fields.derivedFromId
    ? await store.db.checkSocket.findUnique({ where: { id: fields.derivedFromId }, select: { stations: true } })
    : null;
  if (!origin) throw new InputRefused({ workOut: "Choose the socket that this one is derived from." });
  const before = z.array(StationInput).parse(origin.stations);
  const after: Station[] = proposeDimensions(before, fields.adjustments, {
    stationsFrom: EpisodeRecord.shape.stationsFrom.parse(episode.stationsFrom),
    limbLengthMm: episode.limbLengthMm,
  });
  return {
    ...fields,
    stations: after.map(({ distanceMm, circumferenceMm }) => ({
      distanceMm,
      circumferenceMm: Math.round(circumferenceMm * 10) / 10,
    })),
  };
}

export async function refuseUnfit(store: Store, episodeId: string, fields: SocketFields, self?: string): Promise<void> {
  refuseDisorder(fields.stations);
  for (const [index, adjustment] of fields.adjustments.entries()) refuseUnclear(adjustment, `adjustments.${index}.`);
  if (fields.derivedFromId) {
    const origin = await store.db.checkSocket.findUnique({
      where: { id: fields.derivedFromId },
      select: { episodeId: true, id: true },
    });
    if (origin?.episodeId !== episodeId || origin.id === self)
      throw new InputRefused({ derivedFromId: "Choose a socket of this series." });
  }
  if (fields.limbMeasurementId) {
    const measurement = await store.db.limbMeasurement.findUnique({
      where: { id: fields.limbMeasurementId },
      select: { episodeId: true },
    });
    if (measurement?.episodeId !== episodeId) throw new InputRefused({ limbMeasurementId: "Choose a measurement of this limb." });
  }
}

/** An amount means something only with its unit; a relief or build-up, only with the aspect on which it is. */
export function refuseUnclear({ kind, amount, unit, aspect }: AdjustmentInput, prefix = ""): void {
  if (amount !== undefined && unit === undefined)
    throw new InputRefused({ [`${prefix}unit`]: "Choose the unit of this amount." });
  if (amount === undefined && unit !== undefined)
    throw new InputRefused({ [`${prefix}amount`]: "How much? Give the amount, or leave the unit free." });
  if (!isOnAspect(kind) || unit !== "mm" || amount === undefined) return;
  if (amount < 0)
    throw new InputRefused({
      [`${prefix}amount`]: `A ${kind} has no minus. For the other direction choose ${kind === "relief" ? "build-up" : "relief"}.`,
    });
  if (aspect === undefined)
    throw new InputRefused({
      [`${prefix}aspect`]: `On which aspect? For ${kind === "relief" ? "more" : "less"} room all round give a change of volume, in percent.`,
    });
}

export async function writeAdjustments(
  store: Store,
  { episodeId, socketId, adjustments }: { episodeId: string; socketId: string; adjustments: AdjustmentInput[] },
): Promise<void> {
  for (const [position, adjustment] of adjustments.entries())
    await store.db.adjustment.create({ data: { ...adjustmentColumns(store, adjustment), episodeId, socketId, position } });
}

export const adjustmentColumns = (store: Store, adjustment: AdjustmentInput) => ({
  id: store.newId(),
  kind: adjustment.kind,
  aspect: adjustment.aspect ?? null,
  third: adjustment.third ?? null,
  amount: adjustment.amount ?? null,
  unit: adjustment.unit ?? null,
  reason: adjustment.reason,
  answers: adjustment.answers ?? null,
  byId: store.actor.id,
  byName: store.actor.name,
  at: store.now,
});

export async function addStateChange(store: Store, socketId: string, state: string, at: Date, note?: string): Promise<void> {
  await store.db.socketStateChange.create({
    data: {
      id: store.newId(),
      socketId,
      state,
      at,
      byId: store.actor.id,
      byName: store.actor.name,
      note: note ?? null,
      recordedAt: store.now,
    },
  });
}

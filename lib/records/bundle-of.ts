/** One episode, read whole from the store, as the bundle that is assessed, signed and exported. */
import { Bundle, bundleFormat, type FittingRecord, type LimbMeasurement } from "@/lib/fit";
import { Inspection } from "@/lib/fit/bundle";
import type { Prisma } from "@/lib/generated/prisma/client";
import { isMisdated } from "./believable-times";
import type { Transaction } from "./database";
import { awaitsCountersignature } from "./meanings";
import { NotFound } from "./refusals";

const looks = {
  include: { marks: { orderBy: { position: "asc" } } },
  orderBy: [{ at: "asc" }, { id: "asc" }],
} satisfies Prisma.Fitting$looksArgs;

export const episodeWhole = {
  wearer: {
    include: {
      cautions: { where: { endedAt: null }, orderBy: [{ addedAt: "asc" }, { id: "asc" }], include: { readings: true } },
    },
  },
  measurements: { orderBy: [{ at: "asc" }, { id: "asc" }] },
  sockets: {
    orderBy: { number: "asc" },
    include: {
      adjustments: { where: { droppedAt: null }, orderBy: { position: "asc" } },
      carried: { where: { droppedAt: null }, orderBy: { position: "asc" } },
    },
  },
  fittings: { orderBy: [{ at: "asc" }, { id: "asc" }], include: { looks } },
  wearTrials: {
    orderBy: [{ plannedAt: "asc" }, { id: "asc" }],
    include: { events: { orderBy: [{ at: "asc" }, { id: "asc" }] }, looks },
  },
  signOffs: {
    orderBy: { position: "asc" },
    include: { withdrawal: true, countersignature: true, acceptances: { orderBy: { gate: "asc" } } },
  },
} satisfies Prisma.EpisodeInclude;

export type EpisodeWhole = Prisma.EpisodeGetPayload<{ include: typeof episodeWhole }>;

export async function readEpisode(db: Transaction, episodeId: string): Promise<EpisodeWhole> {
  const episode = await db.episode.findUnique({ where: { id: episodeId }, include: episodeWhole });
  if (!episode) throw new NotFound("episode");
  return episode;
}

/** Builds the bundle of an episode that was read whole. What is not known is left out, never filled in. */
export function toBundle(episode: EpisodeWhole, { asOf, timeZone }: { asOf: Date; timeZone: string }): Bundle {
  const subject = episode.sockets.at(-1);
  const standing = episode.signOffs.filter((signOff) => signOff.withdrawal === null);
  const found: unknown = {
    format: bundleFormat,
    asOf: asOf.toISOString(),
    clinic: { timeZone },
    episode: {
      id: episode.id,
      side: episode.side,
      level: episode.level,
      cause: episode.cause,
      lossOn: episode.lossOn ?? undefined,
      birthOn: episode.wearer.birthOn ?? undefined,
      landmark: episode.landmark,
      stationsFrom: episode.stationsFrom,
      limbLengthMm: episode.limbLengthMm,
      bodyMassKg: episode.wearer.bodyMassKg ?? undefined,
      suspension: episode.suspension,
      cautions: episode.wearer.cautions.map((caution) => {
        const reading = caution.readings.find(({ episodeId }) => episodeId === episode.id);
        return {
          kind: caution.kind,
          note: caution.note ?? undefined,
          acknowledgedBy: reading?.byName,
          acknowledgedAt: reading?.at.toISOString(),
        };
      }),
      device:
        episode.deviceMassKg !== null && episode.deviceCentreOfMassMm !== null
          ? { massKg: episode.deviceMassKg, centreOfMassMm: episode.deviceCentreOfMassMm }
          : undefined,
    },
    limbMeasurements: episode.measurements.map(measurementRecord),
    sockets: episode.sockets.map((socket) => ({
      id: socket.id,
      number: socket.number,
      derivedFrom: socket.derivedFromId ?? undefined,
      stations: socket.stations,
      limbMeasurementId: socket.limbMeasurementId ?? undefined,
      adjustments: socket.adjustments.map(adjustmentRecord),
      state: socket.state,
      stateSince: socket.stateSince.toISOString(),
      material: socket.material ?? undefined,
    })),
    fittings: fittingsThatCount(episode.fittings).map(fittingRecord),
    wearTrials: episode.wearTrials.map((trial) =>
      trialRecord(
        trial,
        episode.sockets.find(({ id }) => id === trial.socketId),
      ),
    ),
    carried: (subject?.carried ?? []).map(adjustmentRecord),
    acceptances: standing
      .filter(({ socketId }) => socketId === subject?.id)
      .flatMap(({ acceptances }) => acceptances)
      .map(({ gate, byName, at, why }) => ({ gate, by: byName, at: at.toISOString(), why })),
    signOffs: inForce(episode.signOffs).map((signOff) => ({
      id: signOff.id,
      socketId: signOff.socketId,
      meaning: signOff.meaning,
      by: signOff.byName,
      at: signOff.at.toISOString(),
      withdrawnAt: signOff.withdrawal?.at.toISOString(),
    })),
    deliveredAt: episode.deliveredAt?.toISOString(),
  };
  // Through JSON, so that what is not known is left out instead of being there as undefined.
  return Bundle.parse(JSON.parse(JSON.stringify(found)));
}

/** What waits for a second signature is no signature yet for whoever reads the bundle. */
const inForce = (signOffs: EpisodeWhole["signOffs"]) => signOffs.filter((signOff) => !awaitsCountersignature(signOff));

const measurementRecord = (row: EpisodeWhole["measurements"][number]): unknown => ({
  id: row.id,
  at: row.at.toISOString(),
  method: row.method,
  minutesSinceDoffing: row.minutesSinceDoffing ?? undefined,
  stations: row.stations as LimbMeasurement["stations"], // the JSON column; Bundle.parse checks it
  capHeightMm: row.capHeightMm ?? undefined,
});

type AdjustmentRow = Pick<
  EpisodeWhole["sockets"][number]["adjustments"][number],
  "id" | "aspect" | "third" | "kind" | "amount" | "unit" | "reason" | "answers"
>;

export const adjustmentRecord = (row: AdjustmentRow): unknown => ({
  id: row.id,
  aspect: row.aspect ?? undefined,
  third: row.third ?? undefined,
  kind: row.kind,
  amount: row.amount ?? undefined,
  unit: row.unit ?? undefined,
  reason: row.reason,
  answers: row.answers ?? undefined,
});

/**
 * The latest version of each fitting. A look at the skin that was added later, and not with the fitting itself, stays
 * with it when the fitting is put right.
 */
export function fittingsThatCount(fittings: EpisodeWhole["fittings"]): EpisodeWhole["fittings"] {
  const corrected = new Map(fittings.flatMap((fitting) => (fitting.correctsId === null ? [] : [[fitting.correctsId, fitting]])));
  const laterLooks = (fitting: EpisodeWhole["fittings"][number] | undefined): EpisodeWhole["fittings"][number]["looks"] => {
    if (!fitting) return [];
    const before = fittings.find(({ id }) => id === fitting.correctsId);
    const added = fitting.looks.filter(({ recordedAt }) => recordedAt.getTime() !== fitting.recordedAt.getTime());
    return [...laterLooks(before), ...added];
  };
  return fittings
    .filter(({ id }) => !corrected.has(id))
    .map((fitting) =>
      fitting.correctsId === null
        ? fitting
        : {
            ...fitting,
            looks: [...fitting.looks, ...laterLooks(fittings.find(({ id }) => id === fitting.correctsId))].sort(
              (a, b) => a.at.getTime() - b.at.getTime(),
            ),
          },
    );
}

const fittingRecord = (row: EpisodeWhole["fittings"][number]): unknown => ({
  id: row.id,
  socketId: row.socketId,
  at: row.at.toISOString(),
  place: row.place,
  checks: row.checks as FittingRecord["checks"], // the JSON column; Bundle.parse checks it
  pulls: row.pulls,
  motion: row.motion,
  comfort: row.comfort ?? undefined,
  pain: row.pain ?? undefined,
  inspections: row.looks.map(lookRecord),
  ...(isTold(row.reported) ? { reported: row.reported } : {}),
});

const isTold = (reported: unknown): boolean => Array.isArray(reported) && reported.length > 0;

type TrialRow = EpisodeWhole["wearTrials"][number];
type SpecifiedSocket = Pick<EpisodeWhole["sockets"][number], "specifiedAt">;

const trialRecord = (row: TrialRow, socket: SpecifiedSocket | undefined): unknown => ({
  id: row.id,
  socketId: row.socketId,
  plan: {
    minutes: row.minutes,
    loadKg: row.loadKg ?? undefined,
    loadDistanceMm: row.loadDistanceMm ?? undefined,
    intervalMin: row.intervalMin,
    activities: row.activities,
  },
  events: row.events.map((event) => eventRecord(event, socket)),
  inspections: row.looks.map(lookRecord),
  enteredAfterwards: row.enteredAfterwards || undefined,
});

const eventRecord = (row: TrialRow["events"][number], socket: SpecifiedSocket | undefined): unknown => ({
  id: row.id,
  at: row.at.toISOString(),
  kind: row.kind,
  comfort: row.comfort ?? undefined,
  pain: row.pain ?? undefined,
  exertion: row.exertion ?? undefined,
  feelings: row.feelings ?? undefined,
  sign: row.sign ?? undefined,
  corrects: row.corrects ?? undefined,
  note: row.note ?? undefined,
  reportedBy: row.reportedBy ?? undefined,
  misdated: isMisdated(row, socket) || undefined,
});

/** The looks of a fitting or a trial as the bundle has them. */
export const inspectionsOf = ({ looks }: Pick<EpisodeWhole["fittings"][number], "looks">): Inspection[] =>
  Inspection.array().parse(looks.map(lookRecord));

const lookRecord = (row: EpisodeWhole["fittings"][number]["looks"][number]): unknown => ({
  id: row.id,
  at: row.at.toISOString(),
  minutesAfterDoffing: row.minutesAfterDoffing,
  marks: row.marks.map((mark) => ({
    id: mark.markId,
    distanceFromEndMm: mark.distanceFromEndMm,
    angleDeg: mark.angleDeg,
    widthMm: mark.widthMm,
    heightMm: mark.heightMm,
    strength: mark.strength,
    blanches: mark.blanches,
    firm: mark.firm,
    warm: mark.warm,
    painful: mark.painful,
    broken: mark.broken,
    fadedAtMin: mark.fadedAtMin,
  })),
});

import { may } from "@/lib/access/roles";
import { Adjustment, EpisodeRecord, Station } from "@/lib/fit";
import { adjustmentRecord } from "./bundle-of";
import { releaseMeaning } from "./meanings";
import { query } from "./query";
import { NotFound } from "./refusals";

// The bench works by clinic numbers: no names, no clinical words.
const order = {
  limbMeasurement: { select: { at: true, stations: true } },
  id: true,
  episodeId: true,
  number: true,
  state: true,
  stateSince: true,
  neededOn: true,
  material: true,
  wallMm: true,
  suspension: true,
  trimLines: true,
  lengthMm: true,
  benchNote: true,
  stations: true,
  version: true,
  specifiedByName: true,
  specifiedAt: true,
  derivedFrom: { select: { number: true, stations: true } },
  adjustments: {
    where: { droppedAt: null },
    orderBy: { position: "asc" },
    select: { id: true, kind: true, aspect: true, third: true, amount: true, unit: true, reason: true, answers: true },
  },
  stateChanges: { orderBy: { recordedAt: "asc" }, select: { id: true, state: true, at: true, byName: true, note: true } },
  episode: {
    select: {
      limbLengthMm: true,
      side: true,
      level: true,
      suspension: true,
      landmark: true,
      stationsFrom: true,
      deviceMassKg: true,
      wearer: { select: { clinicNumber: true } },
    },
  },
} as const;

/** Sockets that are to be made, being made, sent or at hand, and releases that wait for their definitive socket. */
export const seeWorkshop = query({
  permission: "see socket orders",
  read: async (db, _asked: null) => {
    const [sockets, releases] = await Promise.all([
      db.checkSocket.findMany({
        where: { state: { in: ["planned", "being made", "sent", "at hand"] }, episode: { struckOutAt: null, closedAt: null } },
        orderBy: [{ stateSince: "asc" }],
        select: order,
      }),
      db.signOff.findMany({
        where: {
          meaning: releaseMeaning,
          withdrawal: null,
          // One that waits for the second signature is no work for the bench yet.
          OR: [{ countersignAsked: null }, { countersignAsked: false }, { countersignature: { isNot: null } }],
          episode: { struckOutAt: null, deliveredAt: null },
        },
        orderBy: { at: "asc" },
        select: {
          id: true,
          at: true,
          benchReadings: { select: { byName: true } },
          socket: { select: { number: true } },
          episode: { select: { side: true, level: true, wearer: { select: { clinicNumber: true } } } },
        },
      }),
    ]);
    return { sockets, releases };
  },
});

/** What the bench needs to make one socket. Why something is adjusted is told to whoever may see the wearer, not to the bench. */
export const seeSocketOrder = query({
  permission: "see socket orders",
  read: async (db, socketId: string, actor) => {
    const socket = await db.checkSocket.findUnique({ where: { id: socketId }, select: order });
    if (!socket) throw new NotFound("socket");
    return {
      ...socket,
      stations: Station.array().parse(socket.stations),
      adjustments: socket.adjustments.map((row) =>
        Adjustment.parse(adjustmentRecord(may(actor, "see wearers") ? row : { ...row, reason: "", answers: null })),
      ),
      where: {
        stationsFrom: EpisodeRecord.shape.stationsFrom.parse(socket.episode.stationsFrom),
        limbLengthMm: socket.episode.limbLengthMm,
      },
      limb: Station.array().parse(socket.limbMeasurement?.stations ?? []),
      before: Station.array().parse(socket.derivedFrom?.stations ?? []),
    };
  },
});

export type SocketOrder = Awaited<ReturnType<typeof seeSocketOrder>>;
export type WorkshopSocket = Awaited<ReturnType<typeof seeWorkshop>>["sockets"][number];

import { z } from "zod";
import { Bundle, Station, type WearSchedule, wearSchedule } from "@/lib/fit";
import { clinicDay } from "./clinic-time";
import { now } from "./clock";
import type { Database } from "./database";
import { releaseMeaning } from "./meanings";
import { query } from "./query";
import { NotFound } from "./refusals";
import { definitiveStations } from "./released";

/** A step of a kept plan; without minutes it is all day. */
const KeptStep = z.object({ days: z.number(), minutes: z.number().nullable(), sessions: z.number() });
export type KeptStep = z.output<typeof KeptStep>;

async function releaseWith(db: Database, signOffId: string) {
  const signOff = await db.signOff.findUnique({
    where: { id: signOffId },
    include: {
      withdrawal: true,
      socket: { select: { number: true } },
      madeChecks: { orderBy: [{ recordedAt: "desc" }, { id: "desc" }] },
      wearPlans: { orderBy: { position: "desc" } },
      episode: {
        select: {
          id: true,
          side: true,
          level: true,
          stationsFrom: true,
          deliveredAt: true,
          wearerId: true,
          wearer: { select: { name: true, clinicNumber: true, cautions: { where: { endedAt: null }, select: { kind: true } } } },
        },
      },
    },
  });
  if (!signOff || signOff.meaning !== releaseMeaning) throw new NotFound("release");
  return signOff;
}

/** The dimensions that a definitive socket is to have, and what was measured of it; no names and no clinical words. */
export const seeMadeChecks = query({
  permission: "see release sheets",
  read: async (db, signOffId: string) => {
    const { episode, ...signOff } = await releaseWith(db, signOffId);
    const { wearer, ...limb } = episode;
    return {
      signOff: { id: signOff.id, at: signOff.at, timeZone: signOff.timeZone, withdrawn: signOff.withdrawal !== null },
      socketNumber: signOff.socket.number,
      clinicNumber: wearer.clinicNumber,
      limb,
      specified: definitiveStations(signOff.evidence),
      checks: signOff.madeChecks.map((check) => ({ ...check, stations: Station.array().parse(check.stations) })),
    };
  },
  seen: ({ signOff, limb }) => ({ action: "saw a release sheet", kind: "sign-off", id: signOff.id, wearerId: limb.wearerId }),
});

/** The wear schedule of a release: the version in force, or else what is usual with this wearer's cautions. */
export const seeWearing = query({
  permission: "see wearers",
  read: async (db, signOffId: string) => {
    const [signOff, clinic] = await Promise.all([
      releaseWith(db, signOffId),
      db.clinic.findUniqueOrThrow({ where: { id: 1 }, select: { name: true, phone: true, timeZone: true, invented: true } }),
    ]);
    const [plan] = signOff.wearPlans;
    return {
      signOff,
      clinic,
      bundle: z.object({ bundle: Bundle }).parse(JSON.parse(signOff.evidence)).bundle,
      plan: plan && { ...plan, steps: KeptStep.array().parse(plan.steps) },
      usual: usualSchedule(signOff.episode.wearer.cautions, clinicDay(signOff.episode.deliveredAt ?? now(), clinic.timeZone)),
    };
  },
  seen: ({ signOff }) => ({
    action: "saw a wear schedule",
    kind: "sign-off",
    id: signOff.id,
    wearerId: signOff.episode.wearerId,
  }),
});

function usualSchedule(cautions: readonly { kind: string }[], start: string): WearSchedule {
  const kinds = cautions.map(({ kind }) => ({ kind }));
  return wearSchedule({ start, cautions: kinds as Parameters<typeof wearSchedule>[0]["cautions"] & object }); // the column holds only kinds that the commands checked
}

export type SeenWearing = Awaited<ReturnType<typeof seeWearing>>;

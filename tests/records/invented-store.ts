/** The invented clinic in a store of its own, and beside what its stories say on paper. */
import { expect, onTestFinished } from "vitest";
import { setHashing } from "@/lib/access/password";
import { readEpisode, toBundle } from "@/lib/records/bundle-of";
import { closeDatabase, database } from "@/lib/records/database";
import { episodesOnPaper, loadInventedClinic } from "@/prisma/invented-clinic";
import { clinicTimeZone } from "@/prisma/invented-clinic/accounts";
import { calendarOf } from "@/prisma/invented-clinic/calendar";
import type { Story } from "@/prisma/invented-clinic/story";
import { makeDatabase } from "./fresh-database";
import { quickHashing } from "./quick-hashing";

/** Whoever loads it closes and removes it. */
export async function loadInvented({ today, told }: { today: Date; told?: readonly Story[] }) {
  const made = makeDatabase();
  await closeDatabase();
  process.env.DATABASE_URL = made.databaseUrl;
  const stopHashing = setHashing(quickHashing);
  const { cast } = await loadInventedClinic({ today, ...(told === undefined ? {} : { told }) });
  const remove = async () => {
    stopHashing();
    await closeDatabase();
    made.remove();
  };
  return { cast, databaseUrl: made.databaseUrl, remove };
}

/** As above, removed when the running test ends. */
export async function loadInventedForTest(wanted: Parameters<typeof loadInvented>[0]) {
  const loaded = await loadInvented(wanted);
  onTestFinished(loaded.remove);
  return loaded;
}

/** Every episode's bundle is the one that its story gives without a store; ids that only a store gives are left aside. */
export async function expectAsOnPaper(today: Date): Promise<void> {
  const db = await database();
  const kept = await db.episode.findMany({
    orderBy: [{ wearer: { clinicNumber: "asc" } }, { openedAt: "asc" }],
    select: { id: true },
  });
  const onPaper = episodesOnPaper(calendarOf(today));
  expect(kept.length).toBe(onPaper.length);
  for (const [index, { id }] of kept.entries()) {
    const inStore = toBundle(await readEpisode(db, id), { asOf: today, timeZone: clinicTimeZone });
    expect(withoutStoreIds(inStore), onPaper[index]?.wearer.clinicNumber).toEqual(withoutStoreIds(onPaper[index]?.bundle(today)));
  }
}

type Told = ReturnType<typeof toBundle>;

function withoutStoreIds(bundle: Told | undefined) {
  if (!bundle) return undefined;
  const counted = <Row extends { id: string }>(rows: readonly Row[]) => rows.map((row, index) => ({ ...row, id: String(index) }));
  return {
    ...bundle,
    // Those of one moment have no order.
    episode: { ...bundle.episode, cautions: bundle.episode.cautions.toSorted((a, b) => (a.kind < b.kind ? -1 : 1)) },
    sockets: bundle.sockets.map((socket) => ({ ...socket, adjustments: counted(socket.adjustments) })),
    fittings: bundle.fittings.map((fitting) => ({ ...fitting, inspections: counted(fitting.inspections) })),
    carried: counted(bundle.carried),
    signOffs: counted(bundle.signOffs ?? []),
  };
}

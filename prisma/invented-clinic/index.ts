/**
 * Tidewater Limb Clinic: an invented clinic in an invented harbour town, with no real person in it.
 * It is built by the commands that the screens call, in the order in which its year went by.
 */
import { addAccount, openClinic } from "@/lib/records/accounts";
import { setClock } from "@/lib/records/clock";
import { database } from "@/lib/records/database";
import { refreshStale } from "@/lib/records/rebuild";
import { clinicName, clinicPhone, clinicTimeZone, demoPassword, staff, type Who } from "./accounts";
import { type Calendar, calendarOf } from "./calendar";
import type { EpisodeOnPaper } from "./episode-on-paper";
import { countedIds } from "./stable-id";
import { stories } from "./stories";
import type { Story } from "./story";
import type { Cast, Step } from "./timeline";

const openedDaysAgo = 366;

/** What happened to everyone, in the order of its time. */
export function happenings(calendar: Calendar, told: readonly Story[] = stories): Step[] {
  return told
    .map((story) => story(calendar))
    .flatMap(({ key, steps }) => steps.map((step) => ({ ...step, what: `${key}: ${step.what}` })))
    .sort((a, b) => a.at.getTime() - b.at.getTime());
}

/** The episodes of everyone as they come of the stories, in the order of clinic numbers and of opening, without a store. */
export const episodesOnPaper = (calendar: Calendar): EpisodeOnPaper[] =>
  stories
    .flatMap((story) => story(calendar).episodes)
    .sort(
      (a, b) => a.wearer.clinicNumber.localeCompare(b.wearer.clinicNumber, "en") || a.openedAt.getTime() - b.openedAt.getTime(),
    );

/**
 * Fills the empty database that DATABASE_URL names. Loaded twice on one day, it is the same to the last digest.
 *
 * @param told the stories to tell; all of them where left out
 * @throws where the clinic is open already, or a command refuses a step; the message names the step
 */
export async function loadInventedClinic({
  today,
  told,
}: {
  today: Date;
  told?: readonly Story[];
}): Promise<{ cast: Cast; commands: number }> {
  const calendar = calendarOf(today);
  const steps = happenings(calendar, told);
  const clock = { now: calendar.instant([openedDaysAgo, "08:30"]) };
  const stopClock = setClock({ now: () => clock.now, newId: countedIds() });
  try {
    const cast = await openWithStaff();
    for (const { at, what, run } of steps) {
      clock.now = at;
      await run(cast).catch((cause: unknown) => {
        throw new Error(`The step "${what}" of ${at.toISOString()} was refused`, { cause });
      });
    }
    clock.now = today;
    await refreshStale();
    return { cast, commands: steps.length };
  } finally {
    stopClock();
  }
}

async function openWithStaff(): Promise<Cast> {
  const { role, ...administrator } = staff.administrator;
  const { userId } = await openClinic({
    ...administrator,
    clinicName,
    timeZone: clinicTimeZone,
    phone: clinicPhone,
    invented: true,
    password: demoPassword,
  });
  const chief = { id: userId, name: administrator.name, role };
  const employ = async (who: Exclude<Who, "administrator">) => {
    const account = staff[who];
    const added = await addAccount(chief, { ...account, password: demoPassword });
    return { ...account, id: added.userId };
  };
  return {
    administrator: chief,
    lead: await employ("lead"),
    junior: await employ("junior"),
    assistant: await employ("assistant"),
    technician: await employ("technician"),
  };
}

/** What has come of an episode, as a list shows it. */
export interface Outcome {
  /** The wearer's clinic number. */
  number: string;
  level: string;
  stage: string;
  nextStep: string | null;
  decision: string | null;
}

/** Of every episode that was not struck out, by clinic number, two of one wearer in the order of opening. */
export async function outcomesInStore(): Promise<Outcome[]> {
  const episodes = await (await database()).episode.findMany({
    where: { struckOutAt: null },
    orderBy: [{ wearer: { clinicNumber: "asc" } }, { openedAt: "asc" }],
    select: { level: true, stage: true, nextStep: true, decision: true, wearer: { select: { clinicNumber: true } } },
  });
  return episodes.map(({ wearer, ...outcome }) => ({ number: wearer.clinicNumber, ...outcome }));
}

/** How many records of each kind there are now. */
export async function countRecords(): Promise<Record<string, number>> {
  const db = await database();
  return {
    accounts: await db.user.count(),
    wearers: await db.wearer.count(),
    episodes: await db.episode.count(),
    "limb measurements": await db.limbMeasurement.count(),
    "check sockets": await db.checkSocket.count(),
    fittings: await db.fitting.count(),
    "wear trials": await db.wearTrial.count(),
    "looks at the skin": await db.skinInspection.count(),
    signatures: await db.signOff.count(),
    "trail entries": await db.trailEntry.count(),
  };
}

/** Series of any length in the invented clinic, made by the commands that the screens call. */
import { setClock } from "@/lib/records/clock";
import { closeDatabase, database } from "@/lib/records/database";
import { refreshStale } from "@/lib/records/rebuild";
import { staff, type Who } from "../../prisma/invented-clinic/accounts";
import { calendarOf } from "../../prisma/invented-clinic/calendar";
import type { EpisodeStory } from "../../prisma/invented-clinic/episode-story";
import type { MarkStory } from "../../prisma/invented-clinic/skin";
import type { SocketStory } from "../../prisma/invented-clinic/socket-story";
import { transtibial } from "../../prisma/invented-clinic/stories/usual";
import { wearer } from "../../prisma/invented-clinic/story";
import type { Cast, Timeline } from "../../prisma/invented-clinic/timeline";

/** From one socket to the next. */
const daysApart = 25;
const marksAtLook = 5;
const looksOfTrial = [1, 6, 12, 20];
/** Of each socket: those at its fitting, and those at every look after its trial. */
export const marksOfSocket = marksAtLook * (1 + looksOfTrial.length);

/** Opens an episode with so many sockets, each made from the one before, fitted and worn in a trial; its id is told. */
export async function addSeries(file: string, sockets: number): Promise<string> {
  process.env.DATABASE_URL = `file:${file}`;
  const { timeline, episode } = series(sockets);
  const clock = { now: new Date() };
  const stopClock = setClock({ now: () => clock.now });
  try {
    const cast = await castOf();
    for (const { at, run } of timeline.steps) {
      clock.now = at;
      await run(cast);
    }
    clock.now = new Date();
    await refreshStale();
    return episode.id;
  } finally {
    stopClock();
    await closeDatabase();
  }
}

async function castOf(): Promise<Cast> {
  const users = await (await database()).user.findMany({ select: { id: true, name: true } });
  const actor = (who: Who) => {
    const { name, role } = staff[who];
    const id = users.find((user) => user.name === name)?.id;
    if (id === undefined) throw new Error(`the invented clinic has ${name}`);
    return { id, name, role };
  };
  return {
    administrator: actor("administrator"),
    lead: actor("lead"),
    junior: actor("junior"),
    assistant: actor("assistant"),
    technician: actor("technician"),
  };
}

function series(sockets: number): { timeline: Timeline; episode: EpisodeStory } {
  const calendar = calendarOf(new Date());
  const begun = daysApart * sockets + 20;
  const person = wearer(`series of ${sockets}`, calendar, [begun, "08:40"], {
    number: `TW-90${String(sockets).padStart(2, "0")}`,
    name: `Series of ${sockets}`,
    ageYears: 50,
    heightMm: 1700,
    massKg: 75,
    handedness: "right",
    occupation: "invented for the bench",
  });
  const episode = person.episode([begun, "09:00"], {
    ...transtibial.opened,
    prosthetist: "lead",
    side: "right",
    cause: "trauma",
    lostDaysAgo: begun + 200,
    limbLengthMm: 150,
    suspension: "pin",
    goals: "Walk to the market and back.",
  });
  Array.from({ length: sockets }, (_, index) => index).reduce<SocketStory | undefined>(
    (before, index) => wornSocket(episode, { before, index, daysAgo: begun - 10 - daysApart * index }),
    undefined,
  );
  return { timeline: person.timeline, episode };
}

/** The limb shrinks a little from each to the next. */
function wornSocket(
  episode: EpisodeStory,
  { before, index, daysAgo }: { before: SocketStory | undefined; index: number; daysAgo: number },
): SocketStory {
  const limb = episode.measured(
    [daysAgo, "09:10"],
    transtibial.levels,
    [358, 352, 340, 322, 298].map((circumferenceMm) => circumferenceMm - 3 * index),
    { linerOn: true },
  );
  const specified = { ...transtibial.socket, lengthMm: 180, limb };
  const socket = before
    ? before.next([daysAgo, "11:00"], {
        ...specified,
        adjustments: [
          { kind: "volume", amount: -1.5, unit: "percent", reason: "The limb has lost volume", answers: "displacement" },
          {
            kind: "relief",
            aspect: "anterior",
            third: "middle",
            amount: 2,
            unit: "mm",
            reason: "Clear mark over the edge of the tibia",
            answers: before.answersMark("mark 1"),
          },
        ],
      })
    : episode.socket([daysAgo, "11:00"], { ...specified, tighterPercent: 1 });
  socket.bench({ begun: [daysAgo - 3, "08:30"], atHand: [daysAgo - 6, "09:00"] });
  socket.fitted([daysAgo - 9, "09:30"], {
    drops: { 30: 2.2, 60: 3.9, 90: 5.3 },
    motion: { "knee-flexion": [128, 116] },
    comfort: 6 + (index % 3),
    pain: index % 2,
    looks: { at: [3], marks: marks(["clear"]) },
  });
  return socket.worn([daysAgo - 9, "11:30"], {
    minutes: 40,
    doing: ["walking 600 m"],
    asked: {
      comfort: [7, 7, 8, 7, 8, 7, 8, 8],
      pain: [0, 1, 0, 1, 0, 0, 1, 0],
      exertion: [1, 2, 3, 3, 4, 4, 4, 5],
    },
    looks: { at: looksOfTrial, marks: marks(["clear", "faint", "faint", "none"]) },
  });
}

const marks = (seen: MarkStory["seen"]): MarkStory[] =>
  Array.from({ length: marksAtLook }, (_, index) => ({
    name: `mark ${index + 1}`,
    endMm: 30 + 22 * index,
    angleDeg: (67 * index) % 360,
    sizeMm: [24, 18],
    seen,
  }));

/** The series of an episode as beads on a line. */
import { adjustmentWords } from "@/app/_parts/adjustment-words";
import { dayAt, dueWords, shortDay } from "@/app/_parts/dates";
import { formatQuantity } from "@/app/_parts/numbers";
import type { SocketBead } from "@/app/_parts/socket-line";
import { type Adjustment, type Bundle, gradeMark } from "@/lib/fit";
import type { EpisodeWhole } from "@/lib/records/bundle-of";

/** The grade of the hardest mark in a word or two: a bead has little room. */
const hardestWords = ["none", "faint", "clear", "deep or firm", "broken or purple"] as const;

const placeWords = { clinic: "in clinic", home: "at home", video: "on video" } as const;

export function beadsOf(bundle: Bundle, episode: EpisodeWhole, today: string): SocketBead[] {
  const { timeZone } = bundle.clinic;
  return bundle.sockets.map((socket, index) => {
    const row = episode.sockets[index];
    const fitting = bundle.fittings.filter(({ socketId }) => socketId === socket.id).at(-1);
    const trials = bundle.wearTrials.filter(({ socketId }) => socketId === socket.id);
    const checkIns = trials.flatMap(({ events }) => events).filter((event) => event.kind === "check-in");
    const looks = [...(fitting?.inspections ?? []), ...trials.flatMap(({ inspections }) => inspections)];
    const hardest = Math.max(...looks.flatMap(({ marks }) => marks.map((mark) => gradeMark(mark))), 0);
    const pull = [...(fitting?.pulls ?? [])].sort((a, b) => a.loadN - b.loadN).at(-1);
    const since = fitting?.at ?? socket.stateSince;
    const origin = bundle.sockets.find(({ id }) => id === socket.derivedFrom);
    return {
      id: socket.id,
      number: socket.number,
      href: `/sockets/${socket.id}`,
      state: socket.state ?? "planned",
      date: since && shortDay(dayAt(since, timeZone)),
      place: fitting && placeWords[fitting.place],
      late: trials.some(({ events }) => events.some(({ kind }) => kind === "stop-sign"))
        ? "trial stopped"
        : row?.neededOn && row.neededOn < today && (row.state === "planned" || row.state === "being made" || row.state === "sent")
          ? dueWords(row.neededOn, today)
          : undefined,
      comfort: checkIns.at(-1)?.comfort ?? fitting?.comfort,
      hardestMark: looks.length === 0 ? undefined : hardestWords[hardest],
      displacement:
        pull &&
        `${formatQuantity({ value: pull.displacementMm, unit: "mm" })} at ${formatQuantity({ value: pull.loadN, unit: "N" })}`,
      madeFrom: origin && origin.number !== socket.number - 1 ? origin.number : undefined,
      adjustments: socket.adjustments.map(lineAdjustment),
    };
  });
}

export const lineAdjustment = (adjustment: Adjustment) => ({
  id: adjustment.id,
  what: adjustmentWords(adjustment),
  reason: adjustment.reason,
});

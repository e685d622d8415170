/** The series of an episode as beads on a line. */
import { adjustmentWords } from "@/app/_parts/adjustment-words";
import { dayAt, dueWords, shortDay } from "@/app/_parts/dates";
import { formatQuantity } from "@/app/_parts/numbers";
import type { SocketBead } from "@/app/_parts/socket-line";
import type { Adjustment, AdjustmentEffect, Bundle, Series } from "@/lib/fit";
import type { EpisodeWhole } from "@/lib/records/bundle-of";

/** The grade of the hardest mark in a word or two: a bead has little room. */
const hardestWords = ["none", "faint", "clear", "deep or firm", "broken or purple"] as const;

const placeWords = { clinic: "in clinic", home: "at home", video: "on video" } as const;

interface SeenSeries {
  bundle: Bundle;
  /** In the order of the bundle's. */
  sockets: readonly Pick<EpisodeWhole["sockets"][number], "state" | "neededOn">[];
  series: Series;
  today: string;
}

export function beadsOf({ bundle, sockets, series, today }: SeenSeries): SocketBead[] {
  const { timeZone } = bundle.clinic;
  return bundle.sockets.map((socket, index) => {
    const row = sockets[index];
    const fitting = bundle.fittings.filter(({ socketId }) => socketId === socket.id).at(-1);
    const found = series.findings.find(({ socketId }) => socketId === socket.id);
    const wasStopped = (found?.trial?.stopSigns ?? 0) > 0 || found?.stoppedBefore !== undefined;
    const pull = [...(fitting?.pulls ?? [])].sort((a, b) => a.loadN - b.loadN).at(-1);
    const since = fitting?.at ?? socket.stateSince;
    const origin = bundle.sockets.find(({ id }) => id === socket.derivedFrom);
    const step = series.steps.find(({ toId }) => toId === socket.id);
    return {
      id: socket.id,
      number: socket.number,
      href: `/sockets/${socket.id}`,
      state: socket.state ?? "planned",
      date: since && shortDay(dayAt(since, timeZone)),
      place: fitting && placeWords[fitting.place],
      late: wasStopped
        ? "trial stopped"
        : row?.neededOn && row.neededOn < today && (row.state === "planned" || row.state === "being made" || row.state === "sent")
          ? dueWords(row.neededOn, today)
          : undefined,
      comfort: found?.trial?.comfort ?? found?.fitting?.comfort,
      hardestMark: found?.marksSeen && hardestWords[found.marksSeen[0]?.grade ?? 0],
      displacement:
        pull &&
        `${formatQuantity({ value: pull.displacementMm, unit: "mm" })} at ${formatQuantity({ value: pull.loadN, unit: "N" })}`,
      madeFrom: origin && origin.number !== socket.number - 1 ? origin.number : undefined,
      adjustments: socket.adjustments.map((adjustment) => lineAdjustment(adjustment, effectOf(series, adjustment.id))),
      sideEffects: step && isTried(series, socket.id) ? step.sideEffects : undefined,
      limbChanged: step?.limb.state === "changed" ? step.limb.why : undefined,
    };
  });
}

/** What came of an adjustment; nothing before the socket that it led to was tried. */
export function effectOf({ findings, steps }: Series, adjustmentId: string): AdjustmentEffect | undefined {
  const step = steps.find(({ adjustments }) => adjustments.some(({ id }) => id === adjustmentId));
  if (!step || !isTried({ findings }, step.toId)) return undefined;
  return step.effects.find((effect) => effect.adjustmentId === adjustmentId);
}

export const isTried = ({ findings }: Pick<Series, "findings">, id: string): boolean =>
  findings.some(({ socketId, fitting, trial }) => socketId === id && (fitting !== undefined || trial !== undefined));

export const lineAdjustment = (adjustment: Adjustment, effect?: AdjustmentEffect) => ({
  id: adjustment.id,
  what: adjustmentWords(adjustment),
  reason: adjustment.reason,
  effect,
});

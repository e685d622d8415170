/** How one check socket of a series came from another: along which others, or from which they both come. */
import { FitInputError } from "./errors";
import type { Series, SeriesStep } from "./series";

export interface BetweenSockets {
  /** *Made from it*: the later one comes from the earlier, maybe over others. *Branch*: both come from another. *Apart*: they do not hang together. */
  relation: "made from it" | "branch" | "apart";
  /** Of the socket that both come from, where it is a branch. */
  originNumber?: number;
  /** From the earlier, or from the origin, to the later, in the order of making. */
  steps: SeriesStep[];
  /** Where it is a branch: from the origin to the earlier. */
  otherSteps: SeriesStep[];
}

/**
 * The steps that lead from one socket of a series to another.
 *
 * @throws FitInputError where the series has no socket of an id
 * @source plain
 */
export function betweenSockets(series: Series, earlierId: string, laterId: string): BetweenSockets {
  const [ofEarlier, ofLater] = [earlierId, laterId].map((id) => stepsTo(series, id)) as [SeriesStep[], SeriesStep[]]; // two ids give two paths
  const [earlierLine, laterLine] = [line(ofEarlier, earlierId), line(ofLater, laterId)];
  const origin = laterLine.findLast((id) => earlierLine.includes(id));
  if (origin === undefined) return { relation: "apart", steps: [], otherSteps: [] };
  const after = (steps: SeriesStep[], socketId: string) => steps.slice(steps.findIndex(({ toId }) => toId === socketId) + 1);
  const steps = after(ofLater, origin);
  if (origin === earlierId) return { relation: "made from it", steps, otherSteps: [] };
  const originNumber = series.findings.find(({ socketId }) => socketId === origin)?.number ?? 0;
  return { relation: "branch", originNumber, steps, otherSteps: after(ofEarlier, origin) };
}

/** From the first socket that it comes from down to it. */
function stepsTo({ findings, steps }: Series, socketId: string): SeriesStep[] {
  if (!findings.some((found) => found.socketId === socketId))
    throw new FitInputError("socketId", `no socket of the series has the id ${socketId}`);
  const path: SeriesStep[] = [];
  for (let step = stepInto(steps, socketId); step && !path.includes(step); step = stepInto(steps, step.fromId))
    path.unshift(step);
  return path;
}

const stepInto = (steps: readonly SeriesStep[], socketId: string) => steps.find(({ toId }) => toId === socketId);

const line = (path: readonly SeriesStep[], socketId: string): string[] => [...path.map(({ fromId }) => fromId), socketId];

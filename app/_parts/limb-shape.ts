import type { Bundle } from "@/lib/fit/bundle";
import type { LimbPlace, LimbShape } from "./limb-map-geometry";
import { formatNumber } from "./numbers";

/** What the order of a socket says of its edge. */
export interface SocketEdge {
  lengthMm: number | null;
  trimLines: string | null;
}

export interface DrawnLimb extends LimbShape {
  trimLine?: readonly LimbPlace[];
  trimWords?: string;
}

/**
 * What the limb map draws: the limb's length, every level of its latest measurement, and the edge of the socket.
 *
 * An order says the trim lines in words; only the socket's length is a number. The line is drawn level there, and says so.
 */
export function limbShapeOf({ episode, limbMeasurements }: Bundle, socket?: SocketEdge | undefined): DrawnLimb {
  const { limbLengthMm, side, stationsFrom } = episode;
  const levels = (limbMeasurements.at(-1)?.stations ?? [])
    .map(({ distanceMm, circumferenceMm }) => ({
      distanceFromEndMm: stationsFrom === "distal end" ? distanceMm : limbLengthMm - distanceMm,
      circumferenceMm,
    }))
    .sort((a, b) => a.distanceFromEndMm - b.distanceFromEndMm);
  return { side, limbLengthMm, levels, ...edgeOf(limbLengthMm, socket) };
}

/** The map goes this much above a socket's edge, so that a mark at the edge is seen whole. */
const aboveEdgeMm = 6;

function edgeOf(limbLengthMm: number, socket: SocketEdge | undefined): Pick<DrawnLimb, "trimLine" | "trimWords" | "reachMm"> {
  const asOrdered = socket?.trimLines ? ` As ordered: ${socket.trimLines}.` : "";
  const lengthMm = socket?.lengthMm;
  if (!lengthMm) return asOrdered === "" ? {} : { trimWords: `The trim line is not drawn.${asOrdered}` };
  const length = `${formatNumber(lengthMm, 0)}\u00a0mm`;
  if (lengthMm > limbLengthMm * 1.12)
    return { trimWords: `The socket, ${length} long, goes beyond this map: its trim line is not drawn.${asOrdered}` };
  return {
    trimLine: [0, 90, 180, 270].map((angleDeg) => ({ angleDeg, distanceFromEndMm: lengthMm })),
    trimWords: `The trim line (dashed) is drawn level, at the socket’s length of ${length}.${asOrdered}`,
    reachMm: lengthMm + aboveEdgeMm,
  };
}

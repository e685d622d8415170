/** What the bench reads on a release sheet, taken from nothing but the evidence that was signed. */
import { type Adjustment, type Aspect, type CautionKind, proposeDimensions, type Station } from "@/lib/fit";
import type { Evidence } from "@/lib/records/see-release";

export interface ReleaseSheet {
  socketNumber: number;
  limbWords: string;
  dimensions: { distanceMm: number; limbMm?: number; checkSocketMm: number; definitiveMm: number }[];
  carried: Adjustment[];
  makeFrom: { what: string; how: string }[];
  cautions: CautionKind[];
  conditions: { gate: string; by: string; why: string }[];
}

export function releaseSheet({ bundle, assessment, bench }: Evidence): ReleaseSheet {
  const socket = bundle.sockets.find(({ id }) => id === assessment.subject?.socketId);
  if (!socket) throw new Error("the signed evidence names no socket");
  const definitive = proposeDimensions(socket.stations, bundle.carried, bundle.episode);
  const limb =
    bundle.limbMeasurements.find(({ id }) => id === socket.limbMeasurementId)?.stations ??
    bundle.limbMeasurements.at(-1)?.stations ??
    [];
  return {
    socketNumber: socket.number,
    limbWords: `${bundle.episode.side} ${bundle.episode.level}`,
    dimensions: socket.stations.map((station, index) => row(station, definitive[index], limb)),
    carried: bundle.carried,
    makeFrom: makeFrom(bundle.episode, bench),
    cautions: [...new Set(bundle.episode.cautions.map(({ kind }) => kind))],
    conditions: assessment.gates.flatMap(({ id, accepted }) =>
      accepted ? [{ gate: id, by: accepted.by, why: accepted.why }] : [],
    ),
  };
}

function row(station: Station, definitive: Station | undefined, limb: readonly Station[]): ReleaseSheet["dimensions"][number] {
  const measured = limb.find(({ distanceMm }) => distanceMm === station.distanceMm);
  return {
    distanceMm: station.distanceMm,
    checkSocketMm: station.circumferenceMm,
    definitiveMm: definitive?.circumferenceMm ?? station.circumferenceMm,
    ...(measured ? { limbMm: measured.circumferenceMm } : {}),
  };
}

/** What the bench cannot do without. */
const needed = new Set(["definitive material", "check socket material", "wall", "length", "trim lines"]);

function makeFrom(episode: Evidence["bundle"]["episode"], bench: Evidence["bench"]): ReleaseSheet["makeFrom"] {
  const device =
    episode.device && `${episode.device.massKg} kg, centre of mass ${episode.device.centreOfMassMm} mm from the joint`;
  const lines: [string, string | null | undefined][] = [
    ["definitive material", bench.definitiveMaterial],
    ["check socket material", bench.material],
    ["wall", bench.wallMm === null ? null : `${bench.wallMm} mm`],
    ["length", bench.lengthMm === null ? null : `${bench.lengthMm} mm`],
    ["suspension", bench.suspension ?? episode.suspension],
    ["trim lines", bench.trimLines],
    ["distances", `from ${episode.stationsFrom}; landmark: ${episode.landmark}`],
    ["device", [device, bench.deviceNote].filter(Boolean).join("; ") || null],
    ["for the bench", bench.benchNote],
  ];
  return lines.flatMap(([what, how]) =>
    how ? [{ what, how }] : needed.has(what) ? [{ what, how: "not recorded: ask before making" }] : [],
  );
}

/** For the bench, in the trade's words; it names no diagnosis beyond the kind of caution. */
export const cautionForBench: Record<CautionKind, string> = {
  "reduced-feeling": "Reduced feeling: the wearer may not notice an edge. No sharp edge, no rough seam.",
  "fragile-skin": "Fragile skin: smooth, rounded edges everywhere; no exposed fibre or seam.",
  "poor-circulation": "Poor circulation: no narrow ring of pressure; keep brims wide and rounded.",
  swelling: "Swelling: ask the prosthetist if room for a sock is wanted.",
  infection: "Infection risk: clean and disinfect before the socket is handed over.",
  "bleeding-risk": "Bleeding risk: no sharp edge anywhere the skin can touch.",
  pregnancy: "Pregnancy: keep solvents and uncured resin away from the wearer at delivery.",
  allergy: "Allergy: ask the prosthetist which materials must not touch the skin.",
  other: "A caution is on record: ask the prosthetist before making.",
};

/** Where a carried adjustment sits on the limb map: angle from the front and distance from the end. */
export function placeOf(
  adjustment: Adjustment,
  limbLengthMm: number,
): { angleDeg: number; distanceFromEndMm: number } | undefined {
  if (!adjustment.aspect) return undefined;
  const angles: Record<Aspect, number> = { anterior: 0, lateral: 90, posterior: 180, medial: 270 };
  const parts = { distal: 1 / 6, middle: 1 / 2, proximal: 5 / 6 };
  return { angleDeg: angles[adjustment.aspect], distanceFromEndMm: limbLengthMm * parts[adjustment.third ?? "middle"] };
}

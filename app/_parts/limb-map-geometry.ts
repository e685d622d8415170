/**
 * Where things lie on the limb map: the limb's surface unrolled, cut open along the posterior midline, both axes on one
 * scale, the distal end as a disc below. Lengths are in mm on the limb and in units of the drawing on the map.
 *
 * The map shows a limb as one sees it from the front: lateral is on the right of a left limb and on the left of a right one.
 */
import type { sides } from "@/lib/fit/words";

export interface LimbShape {
  side: (typeof sides)[number];
  limbLengthMm: number;
  /** At the proximal end of the map. Without it the map is not to scale across. */
  proximalCircumferenceMm?: number | undefined;
  distalCircumferenceMm?: number | undefined;
}

export interface Point {
  x: number;
  y: number;
}

export interface LimbPlace {
  /** 0 anterior, 90 lateral, 180 posterior, 270 medial, on either side. */
  angleDeg: number;
  distanceFromEndMm: number;
}

export interface MapGeometry {
  height: number;
  centreX: number;
  top: number;
  bottom: number;
  unitsPerMm: number;
  /** False where the circumference was not given and a usual one stands in for it. */
  toScaleAcross: boolean;
  limbLengthMm: number;
  /** +1 where lateral is on the right of the map, −1 where it is on the left. */
  lateralSign: 1 | -1;
  circumferenceAt: (distanceFromEndMm: number) => number;
  /** `turns` beyond the seam: the same place on the other edge is one turn away. */
  pointOf: (place: LimbPlace, turns?: number) => Point;
  /** The way back, for a press on the map; undefined off the limb. */
  placeOf: (point: Point) => LimbPlace | undefined;
  disc: { x: number; y: number; radius: number; endMm: number };
}

/** The drawing is this wide; aspects stand above the limb, distances to the left of it. */
export const mapBox = { left: -4, width: 380 } as const;
const room = { centreX: 186, across: 300, down: 340, top: 30, discGap: 18 } as const;
const usualCircumferenceOfLength = 1.4;
const usualTaper = 0.75;

/** The last tenth of the limb, at most 20 mm. */
export const distalEndMm = (limbLengthMm: number): number => Math.min(limbLengthMm / 10, 20);

export function mapGeometry({ side, limbLengthMm, proximalCircumferenceMm, distalCircumferenceMm }: LimbShape): MapGeometry {
  const proximalMm =
    proximalCircumferenceMm ?? (distalCircumferenceMm ?? limbLengthMm * usualCircumferenceOfLength * usualTaper) / usualTaper;
  const distalMm = distalCircumferenceMm ?? proximalMm * usualTaper;
  const unitsPerMm = Math.min(room.across / Math.max(proximalMm, distalMm), room.down / limbLengthMm);
  const bottom = room.top + limbLengthMm * unitsPerMm;
  const radius = Math.min(60, Math.max(34, (distalMm / (2 * Math.PI)) * unitsPerMm));
  const disc = { x: room.centreX, y: bottom + room.discGap + radius, radius, endMm: distalEndMm(limbLengthMm) };
  const lateralSign = side === "left" ? 1 : -1;
  const circumferenceAt = (distanceFromEndMm: number) => distalMm + ((proximalMm - distalMm) * distanceFromEndMm) / limbLengthMm;

  return {
    height: disc.y + radius + 10,
    centreX: room.centreX,
    top: room.top,
    bottom,
    unitsPerMm,
    toScaleAcross: proximalCircumferenceMm !== undefined && distalCircumferenceMm !== undefined,
    limbLengthMm,
    lateralSign,
    circumferenceAt,
    pointOf: ({ angleDeg, distanceFromEndMm }, turns = 0) => ({
      x: room.centreX + lateralSign * (fromAnterior(angleDeg) / 360 + turns) * circumferenceAt(distanceFromEndMm) * unitsPerMm,
      y: bottom - distanceFromEndMm * unitsPerMm,
    }),
    placeOf: ({ x, y }) => {
      const distanceFromEndMm = (bottom - y) / unitsPerMm;
      if (distanceFromEndMm < 0 || distanceFromEndMm > limbLengthMm) return undefined;
      const turn = (lateralSign * (x - room.centreX)) / (circumferenceAt(distanceFromEndMm) * unitsPerMm);
      return Math.abs(turn) > 0.5 ? undefined : { angleDeg: (turn * 360 + 360) % 360, distanceFromEndMm };
    },
    disc,
  };
}

/** From −180 to 180, lateral positive. */
export const fromAnterior = (angleDeg: number): number => ((((angleDeg + 180) % 360) + 360) % 360) - 180;

/** The outline of the unrolled wall. */
export function outlineOf({ circumferenceAt, centreX, top, bottom, unitsPerMm, limbLengthMm }: MapGeometry): Point[] {
  const halfDistal = (circumferenceAt(0) * unitsPerMm) / 2;
  const halfProximal = (circumferenceAt(limbLengthMm) * unitsPerMm) / 2;
  return [
    { x: centreX - halfDistal, y: bottom },
    { x: centreX - halfProximal, y: top },
    { x: centreX + halfProximal, y: top },
    { x: centreX + halfDistal, y: bottom },
  ];
}

/**
 * A trim line through known places, from seam to seam: level at each of them, smooth between.
 *
 * @param line two or more places, in any order
 */
export function trimPoints(line: readonly LimbPlace[], geometry: MapGeometry): Point[] {
  const known = line
    .map(({ angleDeg, distanceFromEndMm }) => ({ turn: fromAnterior(angleDeg), distanceFromEndMm }))
    .sort((a, b) => a.turn - b.turn);
  const [first, last] = [known[0], known.at(-1)];
  if (!first || !last) return [];
  const around = [{ ...last, turn: last.turn - 360 }, ...known, { ...first, turn: first.turn + 360 }];
  return Array.from({ length: 73 }, (_, step) => step * 5 - 180).map((turn) => {
    const after = around.findIndex((place, index) => index > 0 && place.turn >= turn);
    const [from, to] = [around[after - 1] ?? first, around[after] ?? last];
    const share = (1 - Math.cos(Math.PI * ((turn - from.turn) / (to.turn - from.turn)))) / 2;
    const distanceFromEndMm = from.distanceFromEndMm + (to.distanceFromEndMm - from.distanceFromEndMm) * share;
    // Both ends are the posterior midline: half a turn to either side, whichever side the limb is.
    const half = (geometry.lateralSign * turn * geometry.circumferenceAt(distanceFromEndMm) * geometry.unitsPerMm) / 360;
    return { x: geometry.centreX + half, y: geometry.bottom - distanceFromEndMm * geometry.unitsPerMm };
  });
}

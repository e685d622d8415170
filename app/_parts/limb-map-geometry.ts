/**
 * Where things lie on the limb map: the limb's surface unrolled, cut open along the posterior midline, both axes on one
 * scale, the distal end as a disc below. Lengths are in mm on the limb and in units of the drawing on the map.
 *
 * The map shows a limb as one sees it from the front: lateral is on the right of a left limb and on the left of a right one.
 */
import type { sides } from "@/lib/fit/words";

export interface LevelOfLimb {
  distanceFromEndMm: number;
  circumferenceMm: number;
}

export interface LimbShape {
  side: (typeof sides)[number];
  limbLengthMm: number;
  /** As measured, from the distal end upwards. Without two of them the map is not to scale across. */
  levels?: readonly LevelOfLimb[] | undefined;
  /** How far up the map goes where the socket's edge lies above the limb's length; see `mapReachMm`. */
  reachMm?: number | undefined;
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
  /** The top of the map: the limb's length, or a little more. */
  reachMm: number;
  /** Where the limb was measured, as far as the map goes. */
  levelsMm: readonly number[];
  /** +1 where lateral is on the right of the map, −1 where it is on the left. */
  lateralSign: 1 | -1;
  circumferenceAt: (distanceFromEndMm: number) => number;
  /** `turns` beyond the seam: the same place on the other edge is one turn away. */
  pointOf: (place: LimbPlace, turns?: number) => Point;
  /** The way back, for a press on the wall; undefined off it. */
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

/** Marks are taken up to this share of the limb's length: it was measured on another day, and skin moves. */
const longestShare = 1.15;
export const mapReachMm = (limbLengthMm: number, wantedMm = 0): number =>
  Math.min(Math.max(limbLengthMm, wantedMm), limbLengthMm * longestShare);

export function mapGeometry({ side, limbLengthMm, levels = [], reachMm: wantedMm }: LimbShape): MapGeometry {
  const reachMm = mapReachMm(limbLengthMm, wantedMm);
  const known = levels.length > 1 ? levels : usualLevels(limbLengthMm);
  const circumferenceAt = (distanceFromEndMm: number) => between(known, distanceFromEndMm);
  const levelsMm = levels.map((level) => level.distanceFromEndMm).filter((level) => level >= 0 && level <= reachMm);
  const widest = Math.max(...[0, ...levelsMm, reachMm].map(circumferenceAt));
  const unitsPerMm = Math.min(room.across / widest, room.down / reachMm);
  const bottom = room.top + reachMm * unitsPerMm;
  const radius = Math.min(60, Math.max(34, (circumferenceAt(0) / (2 * Math.PI)) * unitsPerMm));
  const disc = { x: room.centreX, y: bottom + room.discGap + radius, radius, endMm: distalEndMm(limbLengthMm) };
  const lateralSign = side === "left" ? 1 : -1;

  return {
    height: disc.y + radius + 10,
    centreX: room.centreX,
    top: room.top,
    bottom,
    unitsPerMm,
    toScaleAcross: levels.length > 1,
    limbLengthMm,
    reachMm,
    levelsMm,
    lateralSign,
    circumferenceAt,
    pointOf: ({ angleDeg, distanceFromEndMm }, turns = 0) => ({
      x: room.centreX + lateralSign * (fromAnterior(angleDeg) / 360 + turns) * circumferenceAt(distanceFromEndMm) * unitsPerMm,
      y: bottom - distanceFromEndMm * unitsPerMm,
    }),
    placeOf: ({ x, y }) => {
      const distanceFromEndMm = (bottom - y) / unitsPerMm;
      if (distanceFromEndMm < 0 || distanceFromEndMm > reachMm) return undefined;
      const turn = (lateralSign * (x - room.centreX)) / (circumferenceAt(distanceFromEndMm) * unitsPerMm);
      return Math.abs(turn) > 0.5 ? undefined : { angleDeg: (turn * 360 + 360) % 360, distanceFromEndMm };
    },
    disc,
  };
}

const usualLevels = (limbLengthMm: number): LevelOfLimb[] => [
  { distanceFromEndMm: 0, circumferenceMm: limbLengthMm * usualCircumferenceOfLength * usualTaper },
  { distanceFromEndMm: limbLengthMm, circumferenceMm: limbLengthMm * usualCircumferenceOfLength },
];

/** By straight lines between the levels; beyond the outermost ones as there, because nothing was measured. */
function between(levels: readonly LevelOfLimb[], distanceFromEndMm: number): number {
  const after = levels.findIndex((level) => level.distanceFromEndMm >= distanceFromEndMm);
  const [before, next] = [levels[after === -1 ? levels.length - 1 : after - 1], levels[after]];
  if (!before || !next) return (before ?? next)?.circumferenceMm ?? 0;
  const share = (distanceFromEndMm - before.distanceFromEndMm) / (next.distanceFromEndMm - before.distanceFromEndMm);
  return before.circumferenceMm + (next.circumferenceMm - before.circumferenceMm) * share;
}

/** From −180 to 180, lateral positive. */
export const fromAnterior = (angleDeg: number): number => ((((angleDeg + 180) % 360) + 360) % 360) - 180;

/** The outline of the unrolled wall, through every level that was measured: up one edge and down the other. */
export function outlineOf({ circumferenceAt, centreX, bottom, unitsPerMm, reachMm, levelsMm }: MapGeometry): Point[] {
  const heights = [0, ...levelsMm.filter((level) => level > 0 && level < reachMm), reachMm];
  const edge = (sign: 1 | -1) =>
    heights.map((distanceMm) => ({
      x: centreX + (sign * circumferenceAt(distanceMm) * unitsPerMm) / 2,
      y: bottom - distanceMm * unitsPerMm,
    }));
  return [...edge(-1), ...edge(1).reverse()];
}

/** A line along the limb at one angle: straight only where the limb is a cone. */
export const alongLimb = (angleDeg: number, { pointOf, reachMm, levelsMm }: MapGeometry): Point[] =>
  [0, ...levelsMm.filter((level) => level > 0 && level < reachMm), reachMm].map((distanceFromEndMm) =>
    pointOf({ angleDeg, distanceFromEndMm }),
  );

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

export const pointsText = (points: readonly Point[]): string =>
  points.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(" ");

/** Those that keep a distance from all before them. */
export function apart(distancesMm: readonly number[], leastMm: number): number[] {
  const kept: number[] = [];
  for (const distanceMm of distancesMm) if (kept.every((other) => Math.abs(other - distanceMm) >= leastMm)) kept.push(distanceMm);
  return kept;
}

/** From where a hand presses and moves on the map to a place and a size on the limb. Points are in units of the drawing. */
import type { LimbPlace, MapGeometry, Point } from "./limb-map-geometry";
import type { DrawnMark, Ellipse } from "./limb-map-marks";
import type { DrawnDraft } from "./mark-draft";
import type { MarkSize } from "./mark-editor-state";

type Drawn = DrawnMark<DrawnDraft>;

export type Gesture =
  | { what: "move"; row: number; from: Point; grip: Point; edgeTurn: number }
  | { what: "resize"; row: number; from: Point; centre: Point; rotation: number; sideX: 1 | -1; sideY: 1 | -1 }
  /** `near`: a mark within a finger's reach, which a press without a drag means. */
  | { what: "add"; from: Point; near: number | null };

/** The handle stands this far off the corner of the mark's box, in units of the drawing. */
export const handleGap = 9;
const smallestGrip = 9;

interface Looking {
  drawn: readonly Drawn[];
  chosen: number | null;
  geometry: MapGeometry;
  /** How far a finger or a pointer may miss, in units of the drawing. */
  reach: number;
}

/** What a press means: the handle of the chosen mark, then a mark, then bare skin; nothing beside the limb. */
export function gestureAt(point: Point, { drawn, chosen, geometry, reach }: Looking): Gesture | undefined {
  for (const ellipse of drawn.filter(({ mark }) => mark.row === chosen)) {
    const handle = handleOf(ellipse, geometry);
    const { centre, rotation } = ellipse;
    const away = Math.hypot(point.x - handle.x, point.y - handle.y);
    // A small mark is nearer to its handle than a finger is wide: whoever takes it by its middle means to move it.
    if (away <= Math.max(reach, 10) && away < Math.hypot(point.x - centre.x, point.y - centre.y)) {
      return { what: "resize", row: ellipse.mark.row, from: point, centre, rotation, sideX: handle.sideX, sideY: handle.sideY };
    }
  }
  const on = drawn.filter((ellipse) =>
    isOn(point, ellipse, ellipse.mark.row === chosen ? Math.max(smallestGrip, reach) : smallestGrip),
  );
  // Of several on each other the chosen one, else the smallest: it has no other place to be taken by.
  const taken =
    on.find(({ mark }) => mark.row === chosen) ?? on.toSorted((a, b) => a.radiusX * a.radiusY - b.radiusX * b.radiusY)[0];
  if (taken) {
    const { centre, mark } = taken;
    const visible = turnAt(centre, geometry);
    return {
      what: "move",
      row: mark.row,
      from: point,
      grip: { x: point.x - centre.x, y: point.y - centre.y },
      edgeTurn: taken.on === "wall" ? Math.max(0.5, Math.abs(visible)) : 0.5,
    };
  }
  const near = nearest(point, drawn, reach);
  if (near === null && !isOnLimb(point, geometry)) return undefined;
  return { what: "add", from: point, near };
}

function nearest(point: Point, drawn: readonly Drawn[], reach: number): number | null {
  const [closest] = drawn
    .flatMap(({ mark, centre, label }) =>
      [centre, label].map(({ x, y }) => ({ row: mark.row, away: Math.hypot(point.x - x, point.y - y) })),
    )
    .sort((a, b) => a.away - b.away);
  return closest && closest.away <= reach ? closest.row : null;
}

function isOn({ x, y }: Point, { centre, radiusX, radiusY, rotation }: Drawn, least: number): boolean {
  const local = turned({ x: x - centre.x, y: y - centre.y }, -rotation);
  return Math.hypot(local.x / Math.max(radiusX, least), local.y / Math.max(radiusY, least)) <= 1;
}

export interface Handle extends Point {
  sideX: 1 | -1;
  sideY: 1 | -1;
}

/** Below and to the right of the mark, or where there is room on the map. */
export function handleOf({ centre, radiusX, radiusY, rotation, on }: Ellipse<DrawnDraft>, geometry: MapGeometry): Handle {
  const half = geometry.circumferenceAt((geometry.bottom - centre.y) / geometry.unitsPerMm) * geometry.unitsPerMm * 0.5;
  const sideX = on === "wall" && centre.x + radiusX + handleGap > geometry.centreX + half ? -1 : 1;
  const sideY = on === "wall" && centre.y + radiusY + handleGap > geometry.bottom + geometry.disc.radius / 4 ? -1 : 1;
  // On the ellipse itself at 45°, and the gap beyond: so it never lies on a large mark's neighbour.
  const corner = { x: sideX * (radiusX * Math.SQRT1_2 + handleGap), y: sideY * (radiusY * Math.SQRT1_2 + handleGap) };
  const { x, y } = turned(corner, rotation);
  return { x: centre.x + x, y: centre.y + y, sideX, sideY };
}

/** Where the mark is once the hand is at `point`. Over the seam it comes in at the other edge. */
export function movedTo(point: Point, gesture: Gesture & { what: "move" }, geometry: MapGeometry): LimbPlace {
  return placeNear({ x: point.x - gesture.grip.x, y: point.y - gesture.grip.y }, geometry, gesture.edgeTurn);
}

export function resizedTo(
  point: Point,
  { centre, rotation, sideX, sideY }: Gesture & { what: "resize" },
  { unitsPerMm }: MapGeometry,
): MarkSize {
  const local = turned({ x: point.x - centre.x, y: point.y - centre.y }, -rotation);
  const side = (away: number) => Math.max(1, (2 * (away - handleGap) * Math.SQRT2) / unitsPerMm);
  return { widthMm: side(sideX * local.x), heightMm: side(sideY * local.y) };
}

/** A drag over bare skin is the box of the new mark, corner to corner. */
export function drawnFrom(from: Point, to: Point, geometry: MapGeometry): { place: LimbPlace; size: MarkSize } {
  const start = onLimbNear(from, geometry);
  const end = onLimbNear(to, geometry, isInDisc(start, geometry) ? "disc" : "wall");
  const place = placeNear({ x: (start.x + end.x) / 2, y: (start.y + end.y) / 2 }, geometry);
  const rotation = isInDisc(start, geometry) ? geometry.lateralSign * place.angleDeg : 0;
  const across = turned({ x: end.x - start.x, y: end.y - start.y }, -rotation);
  const { unitsPerMm } = geometry;
  return {
    place,
    size: { widthMm: Math.max(1, Math.abs(across.x) / unitsPerMm), heightMm: Math.max(1, Math.abs(across.y) / unitsPerMm) },
  };
}

/** The place of a point, or of the nearest point of the limb. */
export function placeNear(point: Point, geometry: MapGeometry, edgeTurn = 0.5): LimbPlace {
  const { disc, bottom, unitsPerMm, reachMm, lateralSign } = geometry;
  if (partNear(point, geometry) === "disc") {
    const [right, up] = [lateralSign * (point.x - disc.x), disc.y - point.y];
    const away = Math.min(1, Math.hypot(right, up) / disc.radius);
    return { angleDeg: ((Math.atan2(right, up) * 180) / Math.PI + 360) % 360, distanceFromEndMm: away * disc.endMm };
  }
  const distanceFromEndMm = Math.min(Math.max((bottom - point.y) / unitsPerMm, 0), reachMm);
  const turn = Math.min(Math.max(turnAt(point, geometry), -edgeTurn), edgeTurn);
  return { angleDeg: (((turn * 360) % 360) + 360) % 360, distanceFromEndMm };
}

/** Turns from the anterior midline, lateral positive, as the eye sees it: beyond a half turn is beyond the edge. */
function turnAt({ x, y }: Point, { centreX, bottom, unitsPerMm, lateralSign, circumferenceAt, reachMm }: MapGeometry): number {
  const distanceFromEndMm = Math.min(Math.max((bottom - y) / unitsPerMm, 0), reachMm);
  return (lateralSign * (x - centreX)) / (circumferenceAt(distanceFromEndMm) * unitsPerMm);
}

/** Between wall and disc the nearer of the two counts. */
function partNear(point: Point, { disc, bottom }: MapGeometry): "wall" | "disc" {
  if (point.y <= bottom) return "wall";
  const toDisc = Math.hypot(point.x - disc.x, point.y - disc.y) - disc.radius;
  return toDisc < point.y - bottom ? "disc" : "wall";
}

const isInDisc = ({ x, y }: Point, { disc }: MapGeometry): boolean => Math.hypot(x - disc.x, y - disc.y) <= disc.radius + 1e-6;

const isOnLimb = (point: Point, geometry: MapGeometry): boolean =>
  geometry.placeOf(point) !== undefined || isInDisc(point, geometry);

/** The point itself, or the nearest one of the wall or of the disc. */
function onLimbNear({ x, y }: Point, geometry: MapGeometry, part = partNear({ x, y }, geometry)): Point {
  const { disc, centreX, bottom, top, unitsPerMm, circumferenceAt } = geometry;
  if (part === "disc") {
    const away = Math.hypot(x - disc.x, y - disc.y);
    const share = Math.min(1, disc.radius / (away || 1));
    return { x: disc.x + (x - disc.x) * share, y: disc.y + (y - disc.y) * share };
  }
  const level = Math.min(Math.max(y, top), bottom);
  const half = (circumferenceAt((bottom - level) / unitsPerMm) * unitsPerMm) / 2;
  return { x: Math.min(Math.max(x, centreX - half), centreX + half), y: level };
}

function turned({ x, y }: Point, degrees: number): Point {
  const angle = (degrees * Math.PI) / 180;
  return { x: x * Math.cos(angle) - y * Math.sin(angle), y: x * Math.sin(angle) + y * Math.cos(angle) };
}

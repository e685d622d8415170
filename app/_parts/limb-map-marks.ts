/** Skin marks as ellipses on the limb map, each with a number beside it that covers no other mark and no other number. */
import type { SkinMark } from "@/lib/fit/bundle";
import { fromAnterior, type LimbPlace, type MapGeometry, mapBox, type Point } from "./limb-map-geometry";

/** What is needed to draw a mark. Its number is its place in the list where none is given. */
export interface PlacedMark {
  id: string;
  number?: number | string;
  distanceFromEndMm: number;
  angleDeg: number;
  widthMm: number;
  heightMm: number;
}

export type MapMark = SkinMark & { grade: number; number?: number | string };

export interface DrawnMark<Mark extends PlacedMark = MapMark> {
  key: string;
  number: number | string;
  mark: Mark;
  on: "wall" | "disc";
  /** How many turns from its own place this copy stands: not 0 at the other edge of the seam. */
  turns: number;
  centre: Point;
  radiusX: number;
  radiusY: number;
  /** Degrees clockwise; only on the disc. */
  rotation: number;
  /** Where the number's centre stands. */
  label: Point;
}

export type Ellipse<Mark extends PlacedMark = MapMark> = Omit<DrawnMark<Mark>, "label">;

interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** The largest that a number gets on a narrow screen, in units of the drawing. */
const digit = { width: 11, height: 18 } as const;
const smallestRadius = 3;

/** A mark that crosses the seam is drawn at both edges; one that reaches over the rim of the distal end, on wall and disc. */
export function drawMarks<Mark extends PlacedMark>(
  marks: readonly Mark[],
  geometry: MapGeometry,
  taken: readonly Box[],
): DrawnMark<Mark>[] {
  const ellipses = marks
    .flatMap((mark, index) => ellipsesOf(mark, mark.number ?? index + 1, geometry))
    // Small ones are drawn last, so that a filled mark hides none of them.
    .sort((a, b) => b.radiusX * b.radiusY - a.radiusX * a.radiusY);
  const boxes: Box[] = [...taken, ...ellipses.map((ellipse) => seenBox(ellipse, geometry))];
  return ellipses.map((ellipse) => {
    const label = placeLabel(ellipse, { seen: seenBox(ellipse, geometry), boxes, height: geometry.height });
    boxes.push(labelBox(label, ellipse.number));
    return { ...ellipse, label };
  });
}

/** The copies of a mark that are to be seen. */
export function ellipsesOf<Mark extends PlacedMark>(mark: Mark, number: number | string, geometry: MapGeometry): Ellipse<Mark>[] {
  const { disc, unitsPerMm } = geometry;
  const radiusX = Math.max(smallestRadius, (mark.widthMm / 2) * unitsPerMm);
  const radiusY = Math.max(smallestRadius, (mark.heightMm / 2) * unitsPerMm);
  const base = { number, mark, radiusX, radiusY };
  const atEnd = mark.distanceFromEndMm <= disc.endMm;
  const onWall = !atEnd || mark.distanceFromEndMm + mark.heightMm / 2 > disc.endMm;
  return [
    ...(onWall
      ? turnsOf(mark, geometry).map((turns) => ({
          ...base,
          key: `${mark.id} wall ${turns}`,
          on: "wall" as const,
          turns,
          centre: geometry.pointOf(mark, turns),
          rotation: 0,
        }))
      : []),
    ...(atEnd ? [{ ...base, key: `${mark.id} disc`, on: "disc" as const, turns: 0, ...onDisc(mark, geometry) }] : []),
  ];
}

/** Which copies of a mark are to be seen: one, or two where it crosses the posterior midline. */
function turnsOf({ angleDeg, distanceFromEndMm, widthMm }: PlacedMark, { circumferenceAt }: MapGeometry): number[] {
  const turn = fromAnterior(angleDeg) / 360;
  const half = widthMm / 2 / circumferenceAt(distanceFromEndMm);
  if (turn + half > 0.5) return [0, -1];
  if (turn - half < -0.5) return [0, 1];
  return [0];
}

/** Anterior is at the top of the disc, as if the end were folded down from the front. */
function onDisc(
  { angleDeg, distanceFromEndMm }: LimbPlace,
  { disc, lateralSign }: MapGeometry,
): Pick<Ellipse, "centre" | "rotation"> {
  const away = disc.radius * Math.min(1, distanceFromEndMm / disc.endMm);
  const angle = (angleDeg * Math.PI) / 180;
  return {
    centre: { x: disc.x + lateralSign * away * Math.sin(angle), y: disc.y - away * Math.cos(angle) },
    rotation: lateralSign * fromAnterior(angleDeg),
  };
}

function boxOf({ centre, radiusX, radiusY, rotation }: Ellipse<PlacedMark>): Box {
  const angle = (rotation * Math.PI) / 180;
  const halfX = Math.hypot(radiusX * Math.cos(angle), radiusY * Math.sin(angle));
  const halfY = Math.hypot(radiusX * Math.sin(angle), radiusY * Math.cos(angle));
  return { left: centre.x - halfX, right: centre.x + halfX, top: centre.y - halfY, bottom: centre.y + halfY };
}

/** What is seen of a mark: the wall ends at the seam, and at the top of the map. */
function seenBox(ellipse: Ellipse<PlacedMark>, { centreX, top, bottom, unitsPerMm, circumferenceAt }: MapGeometry): Box {
  const box = boxOf(ellipse);
  if (ellipse.on === "disc") return box;
  const half = (circumferenceAt(ellipse.mark.distanceFromEndMm) * unitsPerMm) / 2;
  return {
    left: Math.max(box.left, centreX - half),
    right: Math.min(box.right, centreX + half),
    top: Math.max(box.top, top),
    bottom: Math.min(box.bottom, bottom),
  };
}

function labelBox({ x, y }: Point, number: number | string): Box {
  const half = (digit.width * String(number).length) / 2;
  return { left: x - half, right: x + half, top: y - digit.height / 2, bottom: y + digit.height / 2 };
}

/** Right of the mark if nothing stands there, else left, below, above and the corners; the least covered place if all are taken. */
function placeLabel(
  ellipse: Ellipse<PlacedMark>,
  { seen, boxes, height }: { seen: Box; boxes: readonly Box[]; height: number },
): Point {
  const { left, right, top, bottom } = seen;
  const x = (left + right) / 2;
  const y = (top + bottom) / 2;
  const away = (digit.width * String(ellipse.number).length) / 2 + 4;
  const over = digit.height / 2;
  const places = [
    { x: right + away, y },
    { x: left - away, y },
    { x, y: bottom + over },
    { x, y: top - over },
    { x: right + away, y: top },
    { x: right + away, y: bottom },
    { x: left - away, y: top },
    { x: left - away, y: bottom },
    { x, y },
  ];
  const covered = places.map((place) => {
    const box = labelBox(place, ellipse.number);
    const outside =
      box.left < mapBox.left || box.right > mapBox.left + mapBox.width || box.top < digit.height || box.bottom > height;
    return outside ? Number.POSITIVE_INFINITY : boxes.reduce((sum, other) => sum + overlap(box, other), 0);
  });
  return places[covered.indexOf(Math.min(...covered))] ?? ellipse.centre;
}

const overlap = (a: Box, b: Box): number =>
  Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) *
  Math.max(0, Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top));

"use client";

import styles from "./limb-map.module.css";
import { type MapGeometry, mapBox, type Point } from "./limb-map-geometry";
import { ellipsesOf } from "./limb-map-marks";
import { type DrawnDraft, type LengthUnit, typedLength } from "./mark-draft";
import editor from "./mark-editor.module.css";
import { placeText, sizeText } from "./mark-editor-state";
import { MarkEllipse } from "./mark-ellipse";
import { drawnFrom, type Gesture, movedTo, resizedTo } from "./mark-gesture";
import { positionWords, sizeWords } from "./mark-words";

interface GestureDrawingProps {
  id: string;
  gesture: Gesture;
  /** Where the hand is. */
  point: Point;
  placed: readonly DrawnDraft[];
  /** Of a mark that is about to be added. */
  nextNumber: number;
  geometry: MapGeometry;
  unit: LengthUnit;
}

/** What the hand is about to make of a mark, and its figures as they would be kept. */
export function GestureDrawing({ id, ...hand }: GestureDrawingProps) {
  const { geometry } = hand;
  const mark = markNow(hand);
  if (!mark) return null;
  return (
    <g>
      {ellipsesOf(mark, mark.number, geometry).map((ellipse) => (
        <MarkEllipse key={ellipse.key} id={id} ellipse={ellipse} grade={mark.grade} className={editor.chosen} />
      ))}
      <text className={styles.number}>
        <tspan x={mapBox.left + 4} y={geometry.disc.y + 14}>
          {positionWords(mark).replace(" from the end", "")}
        </tspan>
        <tspan x={mapBox.left + 4} y={geometry.disc.y + 34}>
          {mark.sized ? sizeWords(mark) : "no size yet"}
        </tspan>
      </text>
    </g>
  );
}

function markNow({
  gesture,
  point,
  placed,
  nextNumber,
  geometry,
  unit,
}: Omit<GestureDrawingProps, "id">): DrawnDraft | undefined {
  if (gesture.what === "add") {
    const { place, size } = drawnFrom(gesture.from, point, geometry);
    return { id: "new", row: -1, number: nextNumber, grade: null, sized: true, ...kept({ ...place, ...size }, unit) };
  }
  const mark = placed.find(({ row }) => row === gesture.row);
  if (!mark) return undefined;
  if (gesture.what === "move") return { ...mark, ...kept({ ...mark, ...movedTo(point, gesture, geometry) }, unit) };
  return { ...mark, sized: true, ...kept({ ...mark, ...resizedTo(point, gesture, geometry) }, unit) };
}

type Kept = Pick<DrawnDraft, "distanceFromEndMm" | "angleDeg" | "widthMm" | "heightMm">;

/** Rounded as it goes into the fields. */
function kept(mark: Kept, unit: LengthUnit): Kept {
  const { distanceFromEndMm, angleDeg } = placeText(mark, unit);
  const { widthMm, heightMm } = sizeText(mark, unit);
  const lengthOf = (text: string) => typedLength(text, unit) ?? 0;
  return {
    distanceFromEndMm: lengthOf(distanceFromEndMm),
    angleDeg: Number(angleDeg),
    widthMm: lengthOf(widthMm),
    heightMm: lengthOf(heightMm),
  };
}

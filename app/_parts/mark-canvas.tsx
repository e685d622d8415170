"use client";

import { type KeyboardEvent, memo, type PointerEvent, type RefObject, useEffect, useMemo, useRef, useState } from "react";
import { discWordsBox, LimbDrawing } from "./limb-drawing";
import styles from "./limb-map.module.css";
import { type MapGeometry, mapBox, type Point } from "./limb-map-geometry";
import { drawMarks, ellipsesOf, type MapMark } from "./limb-map-marks";
import type { DrawnLimb } from "./limb-shape";
import { GestureDrawing } from "./mark-canvas-gesture";
import { MarkLayer } from "./mark-canvas-marks";
import { drawnDraft, numbersOfDrafts } from "./mark-draft";
import editor from "./mark-editor.module.css";
import { type MarksAction, type MarksState, nextNumber } from "./mark-editor-state";
import { MarkEllipse } from "./mark-ellipse";
import { drawnFrom, type Gesture, gestureAt, movedTo, resizedTo } from "./mark-gesture";
import { actionOfKey } from "./mark-keys";

interface MarkCanvasProps {
  id: string;
  name: string;
  limb: DrawnLimb;
  geometry: MapGeometry;
  marks: MarksState;
  lookedAtMin: number | undefined;
  before: readonly MapMark[];
  act: (action: MarksAction) => void;
}

/** So far a pointer may tremble before a press becomes a drag, and miss a mark and still mean it; in px of the screen. */
const trembling = { mouse: 4, touch: 9 } as const;
const reachOf = { mouse: 8, touch: 22 } as const;

/**
 * The limb map for the hand: press to add or choose, drag to draw, move and resize. While something is dragged only its
 * own outline is drawn again; the list hears of it when it is let go.
 */
export const MarkCanvas = memo(function MarkCanvas({
  id,
  name,
  limb,
  geometry,
  marks,
  lookedAtMin,
  before,
  act,
}: MarkCanvasProps) {
  const { trimLine = noLine } = limb;
  const svg = useRef<SVGSVGElement>(null);
  const focusAdded = useRef(false);
  const { drafts, chosen, unit, known } = marks;
  const numbers = useMemo(() => numbersOfDrafts(drafts, known), [drafts, known]);
  const placed = useMemo(
    () =>
      drafts.flatMap(
        (draft, index) => drawnDraft(draft, { number: numbers[index] ?? 0, unit, reachMm: geometry.reachMm, lookedAtMin }) ?? [],
      ),
    [drafts, numbers, unit, geometry, lookedAtMin],
  );
  const drawn = useMemo(() => drawMarks(placed, geometry, [discWordsBox(geometry)]), [placed, geometry]);
  const { live, ...hand } = useHand({ drawn, chosen, geometry, act, focusAdded, svg });

  useEffect(() => {
    if (!focusAdded.current || chosen === null) return;
    focusAdded.current = false;
    focusMark(svg.current, chosen);
  }, [chosen]);

  function press(event: KeyboardEvent<SVGGElement>) {
    const row = Number(event.currentTarget.dataset.row);
    const at = placed.findIndex((mark) => mark.row === row);
    const turnTo = { PageDown: placed[at + 1], PageUp: placed[at - 1], Enter: placed[at], " ": placed[at] }[event.key];
    const action = turnTo ? ({ does: "choose", row: turnTo.row } as const) : row === chosen && actionOfKey(event, row, geometry);
    if (!action) return;
    event.preventDefault();
    act(action);
    if (turnTo) focusMark(svg.current, turnTo.row);
  }

  return (
    <div className={styles.figure}>
      {/* biome-ignore lint/a11y/useSemanticElements: a drawing has no fieldset; each mark in it is a button, and the list does the same by typing. */}
      <svg
        ref={svg}
        viewBox={`${mapBox.left} 0 ${mapBox.width} ${geometry.height.toFixed(1)}`}
        role="group"
        aria-label="Map of the marks"
        aria-describedby={`${id}-view`}
        className={`${styles.map} ${editor.map}`}
        onMouseDown={(event) => event.preventDefault()}
        {...hand}
      >
        <g aria-hidden>
          <LimbDrawing id={id} geometry={geometry} trimLine={trimLine} />
          <Before id={id} marks={before} geometry={geometry} />
        </g>
        <MarkLayer
          id={id}
          name={name}
          marks={marks}
          numbers={numbers}
          drawn={drawn}
          moving={live && live.gesture.what !== "add" ? live.gesture.row : null}
          geometry={geometry}
          lookedAtMin={lookedAtMin}
          press={press}
          act={act}
        />
        {live && (
          <GestureDrawing id={id} {...live} placed={placed} nextNumber={nextNumber(marks)} geometry={geometry} unit={unit} />
        )}
      </svg>
    </div>
  );
});

const noLine: NonNullable<DrawnLimb["trimLine"]> = [];

const Before = memo(function Before({ id, marks, geometry }: { id: string; marks: readonly MapMark[]; geometry: MapGeometry }) {
  return marks
    .flatMap((mark) => ellipsesOf(mark, 0, geometry))
    .map((ellipse) => <MarkEllipse key={ellipse.key} id={id} ellipse={ellipse} grade={null} className={styles.gone} />);
});

interface Live {
  gesture: Gesture;
  point: Point;
}

interface HandProps extends Pick<MarkCanvasProps, "geometry" | "act"> {
  drawn: ReturnType<typeof drawMarks<NonNullable<ReturnType<typeof drawnDraft>>>>;
  chosen: number | null;
  /** Set where a mark is added, which takes the focus once it is drawn. */
  focusAdded: { current: boolean };
  svg: RefObject<SVGSVGElement | null>;
}

/** What a pointer does on the map, from press to release. */
function useHand({ drawn, chosen, geometry, act, focusAdded, svg }: HandProps) {
  const begun = useRef<{ gesture: Gesture; pointer: number; x: number; y: number; isDrag: boolean } | null>(null);
  const [live, setLive] = useState<Live | null>(null);
  useEffect(() => {
    // A finger on a mark moves the mark and not the page; shapes of a drawing have no touch-action of their own.
    const hold = (event: TouchEvent) => {
      if (begun.current && begun.current.gesture.what !== "add") event.preventDefault();
    };
    const drawing = svg.current;
    drawing?.addEventListener("touchstart", hold, { passive: false });
    return () => drawing?.removeEventListener("touchstart", hold);
  }, [svg]);
  const end = () => {
    begun.current = null;
    setLive(null);
  };
  return {
    live,
    onPointerDown(event: PointerEvent<SVGSVGElement>) {
      if (event.button !== 0 || begun.current) return;
      const { point, unitsPerPx } = pointOf(event);
      const reach = reachOf[handOf(event)] * unitsPerPx;
      const gesture = gestureAt(point, { drawn, chosen, geometry, reach });
      if (!gesture) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      begun.current = { gesture, pointer: event.pointerId, x: event.clientX, y: event.clientY, isDrag: false };
    },
    onPointerMove(event: PointerEvent<SVGSVGElement>) {
      const now = begun.current;
      if (now?.pointer !== event.pointerId) return;
      now.isDrag ||= Math.hypot(event.clientX - now.x, event.clientY - now.y) > trembling[handOf(event)];
      if (now.isDrag) setLive({ gesture: now.gesture, point: pointOf(event).point });
    },
    onPointerUp(event: PointerEvent<SVGSVGElement>) {
      const now = begun.current;
      if (now?.pointer !== event.pointerId) return;
      end();
      for (const action of actionsOf(now.gesture, now.isDrag ? pointOf(event).point : null, geometry)) {
        act(action);
        if (action.does === "add") focusAdded.current = true;
        if (action.does === "choose" && action.row !== null) focusMark(event.currentTarget, action.row);
      }
    },
    onPointerCancel: end,
  };
}

/** What is done with the list once the hand lets go; `to` is null where it only pressed. */
function actionsOf(gesture: Gesture, to: Point | null, geometry: MapGeometry): MarksAction[] {
  if (gesture.what === "add") {
    if (to) return [{ does: "add", ...drawnFrom(gesture.from, to, geometry) }];
    if (gesture.near !== null) return [{ does: "choose", row: gesture.near }];
    const { place } = drawnFrom(gesture.from, gesture.from, geometry);
    return [{ does: "add", place }];
  }
  const choose = { does: "choose", row: gesture.row } as const;
  if (!to) return [choose];
  return gesture.what === "move"
    ? [choose, { does: "move", row: gesture.row, place: movedTo(to, gesture, geometry) }]
    : [choose, { does: "resize", row: gesture.row, size: resizedTo(to, gesture, geometry) }];
}

const focusMark = (svg: SVGSVGElement | null, row: number): void =>
  svg?.querySelector<SVGGElement>(`[data-row="${row}"]`)?.focus({ preventScroll: true });

const handOf = ({ pointerType }: PointerEvent): "mouse" | "touch" => (pointerType === "touch" ? "touch" : "mouse");

function pointOf({ currentTarget, clientX, clientY }: PointerEvent<SVGSVGElement>): { point: Point; unitsPerPx: number } {
  const { left, top, width } = currentTarget.getBoundingClientRect();
  const unitsPerPx = mapBox.width / width;
  return { point: { x: (clientX - left) * unitsPerPx + mapBox.left, y: (clientY - top) * unitsPerPx }, unitsPerPx };
}

"use client";

import { type KeyboardEvent, memo, useContext } from "react";
import { FormContext } from "./form-context";
import styles from "./limb-map.module.css";
import type { MapGeometry } from "./limb-map-geometry";
import type { DrawnMark } from "./limb-map-marks";
import type { Draft, DrawnDraft } from "./mark-draft";
import { draftSentence } from "./mark-draft-words";
import editor from "./mark-editor.module.css";
import type { MarksAction, MarksState } from "./mark-editor-state";
import { MarkEllipse } from "./mark-ellipse";
import { handleOf } from "./mark-gesture";

interface MarkLayerProps {
  id: string;
  name: string;
  marks: MarksState;
  /** The number of each draft. */
  numbers: readonly number[];
  drawn: readonly DrawnMark<DrawnDraft>[];
  /** The row that the hand holds: its own drawing stands elsewhere meanwhile. */
  moving: number | null;
  geometry: MapGeometry;
  lookedAtMin: number | undefined;
  press: (event: KeyboardEvent<SVGGElement>) => void;
  act: (action: MarksAction) => void;
}

/** The marks as they are kept. Each is a button that says its mark; one of them is in the way of the Tab key. */
export const MarkLayer = memo(function MarkLayer({
  id,
  name,
  marks: { drafts, chosen, unit },
  numbers,
  drawn,
  moving,
  geometry,
  lookedAtMin,
  press,
  act,
}: MarkLayerProps) {
  const { errors } = useContext(FormContext).state;
  const wrong = new Set(
    Object.keys(errors).flatMap((key) => (key.startsWith(`${name}.`) ? [Number(key.slice(name.length + 1).split(".")[0])] : [])),
  );
  // In the order of the list; a mark on the seam has two drawings and is one button.
  const numbered = drafts.flatMap(({ row }) => {
    const own = drawn.filter(({ mark }) => mark.row === row);
    return own.length === 0 ? [] : [[row, own] as const];
  });
  const inTabOrder = numbered.some(([row]) => row === chosen) ? chosen : numbered[0]?.[0];
  return (
    <>
      {drawn.map((ellipse) => (
        <MarkEllipse
          key={ellipse.key}
          id={id}
          ellipse={ellipse}
          grade={ellipse.mark.grade}
          className={`${ellipse.mark.row === chosen ? editor.chosen : ""} ${ellipse.mark.row === moving ? editor.moving : ""} ${ellipse.mark.sized ? "" : styles.ungraded}`}
        />
      ))}
      {numbered.map(([row, ellipses]) => (
        // biome-ignore lint/a11y/useSemanticElements: a drawing has no buttons of its own.
        <g
          key={row}
          role="button"
          data-row={row}
          tabIndex={row === inTabOrder ? 0 : -1}
          aria-pressed={row === chosen}
          aria-label={sentenceOf(drafts, numbers, row, { unit, lookedAtMin, limbLengthMm: geometry.limbLengthMm })}
          onKeyDown={press}
          // A reader's press comes without a pointer; the hand's own are judged by their place.
          onClick={({ detail }) => detail === 0 && act({ does: "choose", row })}
          className={editor.mark}
        >
          {ellipses.map(({ key, centre, radiusX, radiusY }) => (
            <ellipse
              key={key}
              cx={centre.x}
              cy={centre.y}
              rx={Math.max(radiusX, 9)}
              ry={Math.max(radiusY, 9)}
              className={editor.catch}
            />
          ))}
        </g>
      ))}
      {drawn.map(({ key, number, label, mark: { row } }) => (
        // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a number of the drawing takes no focus; the button of its mark says it.
        <text
          key={key}
          aria-hidden="true"
          x={label.x}
          y={label.y}
          dy="0.34em"
          textAnchor="middle"
          className={`${styles.number} ${wrong.has(row) ? editor.wrong : ""} ${row === moving ? editor.moving : ""}`}
        >
          {number}
          {wrong.has(row) && "!"}
        </text>
      ))}
      {moving === null &&
        drawn
          .filter(({ mark }) => mark.row === chosen)
          .map((ellipse) => {
            const { x, y } = handleOf(ellipse, geometry);
            return (
              <g key={ellipse.key} className={editor.handle}>
                <circle cx={x} cy={y} r={20} className={editor.catch} />
                <circle cx={x} cy={y} r={6.5} />
              </g>
            );
          })}
    </>
  );
});

function sentenceOf(
  drafts: readonly Draft[],
  numbers: readonly number[],
  row: number,
  around: Omit<Parameters<typeof draftSentence>[1], "number">,
): string {
  const index = drafts.findIndex((draft) => draft.row === row);
  const draft = drafts[index];
  return draft ? draftSentence(draft.values, { number: numbers[index] ?? 0, ...around }) : "";
}

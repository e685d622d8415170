"use client";

import { type ReactNode, type RefObject, useContext, useEffect, useRef } from "react";
import { FormContext, fieldIdOf } from "./form-context";
import type { MapGeometry } from "./limb-map-geometry";
import { complaintsOf, saidOf } from "./mark-check";
import { type Draft, gradeSoFar, type LengthUnit, type MarkFieldName } from "./mark-draft";
import { whereWords } from "./mark-draft-words";
import type { MarksAction, PanelFocus } from "./mark-editor-state";
import { markFields } from "./mark-fields";
import styles from "./mark-panel.module.css";
import { MarkChoice, MarkNumber, MarkTick } from "./mark-panel-fields";
import { Unseen } from "./mark-rows";
import { gradeWords } from "./mark-words";

interface MarkPanelProps {
  id: string;
  mapId: string;
  name: string;
  draft: Draft;
  number: number;
  geometry: MapGeometry;
  lookedAtMin: number | undefined;
  unit: LengthUnit;
  focusIn: RefObject<PanelFocus>;
  act: (action: MarksAction) => void;
  /** Closes it; the focus goes back to the row in the list. */
  leave: () => void;
}

/** The chosen mark, open for typing. Its fields carry the names that are sent; nothing is answered beforehand. */
export function MarkPanel({ id, mapId, name, draft, number, geometry, lookedAtMin, unit, focusIn, act, leave }: MarkPanelProps) {
  const { formId, state } = useContext(FormContext);
  const heading = useRef<HTMLParagraphElement>(null);
  const { row, values } = draft;
  const said = saidOf(draft, { name, form: state, complaints: complaintsOf(values, geometry, unit) });
  const grade = gradeSoFar(values, lookedAtMin);
  const { place, position } = whereWords(values, { limbLengthMm: geometry.limbLengthMm, unit });

  useEffect(() => {
    const wanted = focusIn.current;
    focusIn.current = null;
    if (wanted === "heading") heading.current?.focus();
    else if (wanted) document.getElementById(fieldIdOf(formId, `${name}.${row}.${wanted}`))?.focus();
  }, [focusIn, formId, name, row]);

  const field = ({ name: key }: { name: MarkFieldName }) => ({
    key,
    id: fieldIdOf(formId, `${name}.${row}.${key}`),
    name: `${name}.${row}.${key}`,
    value: values[key] ?? "",
    said: said.get(key),
    type: (value: string) => act({ does: "type", row, field: key, value }),
  });
  const fields: ReactNode[] = markFields.map((one) => {
    const { key, ...shared } = field(one);
    if (one.kind === "number")
      return <MarkNumber key={key} {...shared} label={one.label} unit={one.unit} optional={"optional" in one} />;
    if (one.kind === "select") return <MarkChoice key={key} {...shared} label={one.label} options={one.options} />;
    return <MarkTick key={key} {...shared} label={one.label} />;
  });

  return (
    <fieldset
      id={id}
      className={styles.panel}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        leave();
      }}
    >
      <legend className="heard">Mark {number}</legend>
      <p ref={heading} tabIndex={-1} className={styles.heading}>
        <strong>Mark {number}</strong> {place === "where?" ? "" : `${place}, ${position}`}
        {grade !== null && (
          <small>
            {" "}
            grade {grade}
            {values.blanches ? "" : " so far"}: {gradeWords[grade]}
          </small>
        )}
      </p>
      {said.has("markId") && <p className={styles.error}>{said.get("markId")}</p>}
      <div className={styles.numbers}>{fields.slice(0, 4)}</div>
      {fields.slice(4, 6)}
      <div className={styles.ticks}>{fields.slice(6, 10)}</div>
      {fields.slice(10)}
      <Unseen
        name={`${name}.${row}`}
        draft={draft}
        only={["markId", ...(values.strength ? [] : ["strength"]), ...(values.blanches ? [] : ["blanches"])]}
      />
      <div className={styles.buttons}>
        <button type="button" className="quiet" onClick={leave}>
          Done
        </button>
        {place !== "where?" && (
          <button
            type="button"
            className={`quiet ${styles.byKeys}`}
            onClick={() => document.querySelector<SVGGElement>(`[aria-describedby="${mapId}-view"] [data-row="${row}"]`)?.focus()}
          >
            Move it by keys
          </button>
        )}
        <button type="button" className={`quiet ${styles.remove}`} onClick={() => act({ does: "remove", row })}>
          Remove<span className="heard"> mark {number}</span>
        </button>
      </div>
    </fieldset>
  );
}

"use client";

import { memo, useContext } from "react";
import { FormContext, fieldIdOf } from "./form-context";
import { fillOf } from "./hatches";
import map from "./limb-map.module.css";
import type { MapGeometry } from "./limb-map-geometry";
import type { MapMark } from "./limb-map-marks";
import { complaintsOf, missingOf, saidOf } from "./mark-check";
import { type Draft, gradeSoFar, isBlank, type LengthUnit } from "./mark-draft";
import { signsSoFar, sizeSoFar, strengthSoFar, whereWords } from "./mark-draft-words";
import { isSaidGone, type MarksAction, type PanelFocus } from "./mark-editor-state";
import { markFields } from "./mark-fields";
import styles from "./mark-rows.module.css";
import { findingWords } from "./mark-words";
import { useOwnUnits } from "./units";

interface Shared {
  /** Of the map: its hatches are used here too, and the panel's id begins with it. */
  id: string;
  name: string;
  geometry: MapGeometry;
  lookedAtMin: number | undefined;
  unit: LengthUnit;
  /** Whether the fields are sent from here: not before the page has come alive. */
  withInputs: boolean;
  act: (action: MarksAction) => void;
}

interface MarkRowsProps extends Shared {
  drafts: readonly Draft[];
  /** The number of each draft. */
  numbers: readonly number[];
  chosen: number | null;
  before: readonly MapMark[];
  /** Opens a mark for typing, or closes the open one; the focus goes to its heading or to a field. */
  open: (row: number | null, focus?: PanelFocus) => void;
}

/** One line a mark; pressing it opens the mark for typing. */
export function MarkRows({ drafts, numbers, chosen, before, open, ...shared }: MarkRowsProps) {
  if (drafts.length === 0) return <p className={styles.none}>No mark is in the list yet.</p>;
  const unfinished = drafts.flatMap(({ values }, index) =>
    missingOf(values).length > 0 && !isBlank(values) ? [numbers[index]] : [],
  );
  return (
    <>
      <div aria-hidden="true" className={`${styles.head} ${before.length > 0 ? styles.besideGone : ""}`}>
        <span>where</span>
        <span>size</span>
        <span>strength</span>
        <span>signs</span>
      </div>
      <ol className={styles.rows}>
        {drafts.map((draft, index) => (
          <MarkRow
            key={draft.row}
            {...shared}
            draft={draft}
            number={numbers[index] ?? 0}
            isOpen={draft.row === chosen}
            before={before.find(({ id }) => id === draft.values.markId)}
            open={open}
          />
        ))}
      </ol>
      {unfinished.length > 0 && (
        <p className={styles.unfinished}>
          {unfinished.length === 1 ? "Mark" : "Marks"} {unfinished.join(", ")}: something is still to be answered.
        </p>
      )}
    </>
  );
}

interface MarkRowProps extends Shared {
  draft: Draft;
  number: number;
  isOpen: boolean;
  before: MapMark | undefined;
  /** Opens a mark for typing, or closes the open one; the focus goes to its heading or to a field. */
  open: (row: number | null, focus?: PanelFocus) => void;
}

const MarkRow = memo(function MarkRow({
  id,
  name,
  geometry,
  lookedAtMin,
  unit,
  withInputs,
  draft,
  number,
  isOpen,
  before,
  act,
  open,
}: MarkRowProps) {
  const { formId, state } = useContext(FormContext);
  const told = useOwnUnits();
  const { row, values } = draft;
  const grade = gradeSoFar(values, lookedAtMin);
  const { place, position } = whereWords(values, { limbLengthMm: geometry.limbLengthMm, unit });
  const said = [...saidOf(draft, { name, form: state, complaints: complaintsOf(values, geometry, unit) })];
  const missing = missingOf(values);
  const isGone = isSaidGone(values);
  const asks = values.strength && missing.includes("blanching") ? "blanches?" : "";
  const wrong = said.length > 1 ? `${said.length} fields need another look` : said[0] && told(said[0][1]);
  const was = before && `last time ${findingWords(before)}`;
  const [size, strength, signs] = [sizeSoFar(values, unit), strengthSoFar(values), signsSoFar(values)];
  // What stands in the row, in its order: the drawing of the hatch is left out.
  const spoken = [place, position, size, strength, signs, asks, was, wrong];
  return (
    <li className={`${styles.row} ${isOpen ? styles.open : ""}`}>
      <button
        type="button"
        id={`${id}-row-${row}`}
        aria-expanded={isOpen}
        aria-label={`Mark ${number}, ${spoken.filter(Boolean).join(", ")}`}
        aria-controls={`${id}-open`}
        className={styles.press}
        onClick={() => open(isOpen ? null : row)}
      >
        <span className={styles.number}>{number}</span>
        <svg viewBox="0 0 30 18" aria-hidden="true" className={styles.hatch}>
          <ellipse
            cx="15"
            cy="9"
            rx="13"
            ry="7"
            fill={fillOf(id, grade ?? 0)}
            className={`${map.mark} ${map[grade === null ? "ungraded" : `grade${grade}`] ?? ""}`}
          />
        </svg>
        <span className={styles.place}>{place}</span>
        <small className={styles.position}>{position}</small>
        <span className={`${styles.size} ${missing.includes("width") || missing.includes("height") ? styles.asked : ""}`}>
          {size}
        </span>
        <span className={`${styles.strength} ${values.strength ? "" : styles.asked}`}>{strength}</span>
        <span className={styles.signs}>
          {signs} {asks && <span className={styles.asked}>{asks}</span>}
        </span>
        {was && <small className={styles.was}>{was}</small>}
        {wrong && <span className={styles.said}>{wrong}</span>}
      </button>
      {before && (
        <button
          type="button"
          aria-pressed={isGone}
          aria-label={`Gone: mark ${number}`}
          className={`quiet ${styles.gone}`}
          onClick={() => act({ does: "say gone", row })}
        >
          {isGone && "✓ "}Gone
        </button>
      )}
      {withInputs && !isOpen && <Unseen name={`${name}.${row}`} draft={draft} />}
      {/* A link from the errors at the head of the form leads here: the mark opens, and its field takes the focus. */}
      {!isOpen &&
        said.map(([field]) => (
          // biome-ignore lint/a11y/noStaticElementInteractions: it is reached by the link only; the button of the row opens the mark too.
          <span
            key={field}
            id={fieldIdOf(formId, `${name}.${row}.${field}`)}
            tabIndex={-1}
            onFocus={() => open(row, field === "markId" ? "heading" : field)}
          />
        ))}
    </li>
  );
});

/** What a closed mark sends with the form. */
export function Unseen({ name, draft: { values }, only }: { name: string; draft: Draft; only?: readonly string[] }) {
  return [...markFields.map((field) => field.name), "markId" as const]
    .filter((field) => only === undefined || only.includes(field))
    .filter((field) => field !== "markId" || values.markId)
    .map((field) => <input key={field} type="hidden" name={`${name}.${field}`} value={values[field] ?? ""} />);
}

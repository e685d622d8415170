"use client";

import { useContext } from "react";
import fieldStyles from "@/app/_parts/fields.module.css";
import { FormContext, fieldIdOf, useField } from "@/app/_parts/form-context";
import { formatNumber } from "@/app/_parts/numbers";
import { useHasScripts } from "@/app/_parts/rows";
import { useFieldUnit } from "@/app/_parts/units";
import { showQuantity, type Unit } from "@/lib/fit/units";
import type { DesignLevel } from "./design";
import styles from "./design.module.css";

interface DimensionTableProps {
  levels: readonly DesignLevel[];
  /** What stands in the fields: typed, else proposed. */
  shown: (row: number) => { distance: string; circumference: string; isOwn: boolean };
  type: (row: number, field: "distance" | "own", text: string) => void;
  takeProposed: (row: number) => void;
  remove: (row: number) => void;
  stationsFrom: string;
  previousNumber: number | undefined;
  number: number;
  isChanging: boolean;
}

/** Inside circumferences by level, beside the limb and the socket before; each is proposed until it is typed over. */
export function DimensionTable({
  levels,
  shown,
  type,
  takeProposed,
  remove,
  stationsFrom,
  previousNumber,
  number,
  isChanging,
}: DimensionTableProps) {
  const { formId, state } = useContext(FormContext);
  const hasScripts = useHasScripts();
  const unit: Unit = useFieldUnit("circumferenceMm")?.unit ?? "mm";
  const id = fieldIdOf(formId, "stations");
  const error = state.errors.stations;
  const canMove = isChanging || !hasScripts;
  const mm = (value: number | undefined) => (value === undefined ? "–" : showQuantity(value, unit));
  return (
    <fieldset id={id} tabIndex={-1} className={styles.dimensions} aria-describedby={error ? `${id}-error` : undefined}>
      <legend>Inside circumferences</legend>
      {error && (
        <p id={`${id}-error`} className={fieldStyles.error}>
          {error}
        </p>
      )}
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">from the {stationsFrom}</th>
            <th scope="col">limb</th>
            {previousNumber !== undefined && <th scope="col">socket {previousNumber}</th>}
            <th scope="col">socket {number}, inside</th>
            <th scope="col">compression</th>
            <th scope="col">follows</th>
          </tr>
        </thead>
        <tbody>
          {levels.map((level, position) => {
            const { row } = level;
            const { distance, circumference, isOwn } = shown(row);
            const place = level.distanceMm === undefined ? `level ${position + 1}` : `at ${showQuantity(level.distanceMm, unit)}`;
            const said = `${id}-${row}-said`;
            return (
              <tr key={row}>
                <th scope="row">
                  {canMove || state.errors[`stations.${row}.distanceMm`] ? (
                    <LevelInput
                      name={`stations.${row}.distanceMm`}
                      label={`distance, level ${position + 1}`}
                      value={distance}
                      unit={unit}
                      type={(text) => type(row, "distance", text)}
                    />
                  ) : (
                    <>
                      <span className={styles.where}>{mm(level.distanceMm)}</span>
                      <input type="hidden" name={`stations.${row}.distanceMm`} value={distance} />
                    </>
                  )}
                </th>
                <td data-label="limb">{mm(level.limbMm)}</td>
                {previousNumber !== undefined && <td data-label={`socket ${previousNumber}`}>{mm(level.previousMm)}</td>}
                <td className={styles.cell}>
                  <LevelInput
                    name={`stations.${row}.circumferenceMm`}
                    label={`inside circumference ${place}`}
                    value={circumference}
                    unit={unit}
                    describedBy={said}
                    type={(text) => type(row, "own", text)}
                  />
                </td>
                <td data-label="compression">
                  {level.compressionPercent === undefined ? "–" : `${formatNumber(level.compressionPercent, 1)} %`}
                </td>
                <td className={styles.follows}>
                  <span id={said}>
                    <Standing level={level} isOwn={isOwn} unit={unit} />
                  </span>
                  {hasScripts && isOwn && level.proposedMm !== undefined && (
                    <button type="button" className={styles.plain} onClick={() => takeProposed(row)}>
                      as proposed, {showQuantity(level.proposedMm, unit)}
                      <span className="heard"> {place}</span>
                    </button>
                  )}
                  {hasScripts && isChanging && (
                    <button type="button" className={styles.plain} onClick={() => remove(row)}>
                      remove<span className="heard"> {place}</span>
                    </button>
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </fieldset>
  );
}

/** Whether a level follows from the adjustments, in words and, where it does not, with the difference. */
function Standing({ level, isOwn, unit }: { level: DesignLevel; isOwn: boolean; unit: Unit }) {
  if (level.unexplainedMm !== undefined) {
    const more = level.unexplainedMm > 0;
    return (
      <span className={styles.unexplained}>
        <svg viewBox="0 0 17 17" aria-hidden="true">
          <path d="M8.5 1.6 15.4 8.5 8.5 15.4 1.6 8.5z" fill="none" stroke="currentColor" strokeWidth="2.2" />
        </svg>{" "}
        not explained: {showQuantity(Math.abs(level.unexplainedMm), unit)} {more ? "more" : "less"} than the adjustments make it
      </span>
    );
  }
  if (isOwn) return <span className="soft">typed</span>;
  return <span className="soft">{level.proposedMm === undefined ? "nothing to propose here" : "as proposed"}</span>;
}

interface LevelInputProps {
  name: string;
  label: string;
  value: string;
  unit: Unit;
  describedBy?: string;
  type: (text: string) => void;
}

function LevelInput({ name, label, value, unit, describedBy, type }: LevelInputProps) {
  const { id, error, errorId } = useField(name, undefined);
  return (
    <>
      {error && (
        <span id={errorId} className={fieldStyles.error}>
          {error}
        </span>
      )}
      <span className={fieldStyles.number}>
        <input
          id={id}
          name={name}
          aria-label={label}
          aria-describedby={[error && errorId, describedBy].filter(Boolean).join(" ") || undefined}
          aria-invalid={error ? true : undefined}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          size={7}
          value={value}
          onChange={(event) => type(event.target.value)}
        />
        <span className={fieldStyles.unit}>{unit}</span>
      </span>
    </>
  );
}

"use client";

import { useContext } from "react";
import { FormContext, fieldIdOf } from "@/app/_parts/form-context";
import { RowInput, useHasScripts } from "@/app/_parts/rows";
import styles from "@/app/_parts/rows.module.css";
import { adjustmentFields } from "./adjustment-fields";
import type { AdjustmentRow } from "./adjustment-first";
import type { FindingChoice } from "./findings";

interface AdjustmentRowsProps {
  label: string;
  hint: string;
  rows: readonly AdjustmentRow[];
  findings: readonly FindingChoice[];
  add: () => void;
  remove: (row: number) => void;
}

/** The adjustments that lead to the next socket. Without JavaScript there are those that are filled, and some to fill. */
export function AdjustmentRows({ label, hint, rows, findings, add, remove }: AdjustmentRowsProps) {
  const { formId, state } = useContext(FormContext);
  const canChange = useHasScripts();
  const id = fieldIdOf(formId, "adjustments");
  const error = state.errors.adjustments;
  const fields = [
    ...adjustmentFields,
    { name: "answers", label: "answers", kind: "select", options: findings, optional: true, empty: "no single finding" } as const,
  ];
  return (
    <fieldset id={id} tabIndex={-1} className={styles.rows} aria-describedby={error ? `${id}-error` : undefined}>
      <legend>{label}</legend>
      <p className={styles.hint}>{hint}</p>
      {error && (
        <p id={`${id}-error`} className={styles.error}>
          {error}
        </p>
      )}
      <ol>
        {rows.map(({ row, first, considered, isNew }, position) => (
          <li key={row}>
            <fieldset className={styles.row} ref={isNew ? focusFirstEmpty : undefined}>
              <legend className={styles.number}>
                <span className="heard">adjustment </span>
                {position + 1}
              </legend>
              <div className={styles.inputs}>
                {fields.map((field) => (
                  <RowInput key={field.name} field={field} name={`adjustments.${row}.${field.name}`} first={first[field.name]} />
                ))}
                {considered && <p className={styles.hint}>Considered: {considered}</p>}
              </div>
              {canChange && (
                <button type="button" className={styles.remove} onClick={() => remove(row)}>
                  remove<span className="heard"> adjustment {position + 1}</span>
                </button>
              )}
            </fieldset>
          </li>
        ))}
      </ol>
      {canChange ? (
        <button type="button" className="quiet" onClick={add}>
          Add an adjustment
        </button>
      ) : (
        <p className={styles.hint}>A row that is left free is left out.</p>
      )}
    </fieldset>
  );
}

/** The amount is what comes next. */
function focusFirstEmpty(row: HTMLFieldSetElement | null): void {
  const field = row?.querySelector<HTMLInputElement>('input[name$=".amount"]');
  field?.focus();
  field?.scrollIntoView({ block: "center" });
}

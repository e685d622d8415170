"use client";

import { useContext, useState, useSyncExternalStore } from "react";
import { CheckBox, DateField, NumberField, type Option, SelectField, TextField } from "./fields";
import { FormContext, fieldIdOf } from "./form-context";
import type { FormValues } from "./form-state";
import styles from "./rows.module.css";
import { useOwnUnits } from "./units";

/** One field of every row; it is named `LIST.ROW.name`. Selects begin empty, so that a row left free can be told. */
export type RowField = { name: string; label: string; hint?: string; optional?: boolean } & (
  | { kind: "number"; unit?: string }
  | { kind: "text"; size?: number }
  | { kind: "date" }
  | { kind: "select"; options: readonly Option[]; empty?: string }
  | { kind: "tick" }
);

interface RowsProps {
  /** The list's name in the input: `stations`, `look.marks`. */
  name: string;
  /** What all rows are about: "Circumferences". */
  label: string;
  hint?: string;
  /** What one row is: "station". */
  one: string;
  fields: readonly RowField[];
  /** What the rows begin with, by the name of the field. Ids and the like travel along unseen. */
  first?: readonly Readonly<Record<string, string>>[];
  /** Rows to fill in beyond those. Without JavaScript there are only these. */
  blank?: number;
}

/** Repeated rows. Without JavaScript: those that are filled, and some to fill. With it rows are added and taken away. */
export function Rows({ name, label, hint, one, fields, first = [], blank = 2 }: RowsProps) {
  const { formId, state } = useContext(FormContext);
  const [rows, setRows] = useState(() => rowsToBegin({ name, values: state.values, filled: first.length, blank }));
  const canChange = useHasScripts();
  const told = useOwnUnits();
  const error = state.errors[name];
  const id = fieldIdOf(formId, name);

  return (
    <fieldset id={id} tabIndex={-1} className={styles.rows} aria-describedby={error ? `${id}-error` : undefined}>
      <legend>{label}</legend>
      {hint && <p className={styles.hint}>{told(hint)}</p>}
      {error && (
        <p id={`${id}-error`} className={styles.error}>
          {told(error)}
        </p>
      )}
      <ol>
        {rows.map((row, position) => (
          <li key={row}>
            <fieldset className={styles.row}>
              <legend className={styles.number}>
                <span className="heard">{one} </span>
                {position + 1}
              </legend>
              <div className={styles.inputs}>
                {fields.map((field) => (
                  <RowInput
                    key={field.name}
                    field={field}
                    name={`${name}.${row}.${field.name}`}
                    first={first[row]?.[field.name]}
                  />
                ))}
                <Unseen name={`${name}.${row}`} fields={fields} values={first[row]} />
              </div>
              {canChange && (
                <button type="button" className={styles.remove} onClick={() => setRows(rows.filter((other) => other !== row))}>
                  remove
                  <span className="heard">
                    {" "}
                    {one} {position + 1}
                  </span>
                </button>
              )}
            </fieldset>
          </li>
        ))}
      </ol>
      {canChange ? (
        <button type="button" className="quiet" onClick={() => setRows([...rows, Math.max(-1, ...rows) + 1])}>
          Add {/^[aeiou]/.test(one) ? "an" : "a"} {one}
        </button>
      ) : (
        <p className={styles.hint}>A row that is left free is left out.</p>
      )}
    </fieldset>
  );
}

export function RowInput({ field, name, first }: { field: RowField; name: string; first: string | undefined }) {
  const shared = { name, first, label: field.label, hint: field.hint, optional: field.optional };
  switch (field.kind) {
    case "number":
      return <NumberField {...shared} unit={field.unit} />;
    case "text":
      return <TextField {...shared} size={field.size} />;
    case "date":
      return <DateField {...shared} />;
    case "select":
      return <SelectField {...shared} options={field.options} empty={field.empty} />;
    case "tick":
      return <CheckBox {...shared} />;
  }
}

/** What a row carries and nobody types: the id of the record that it stands for. */
function Unseen({
  name,
  fields,
  values = {},
}: {
  name: string;
  fields: readonly RowField[];
  values: Readonly<Record<string, string>> | undefined;
}) {
  return Object.entries(values)
    .filter(([key]) => !fields.some((field) => field.name === key))
    .map(([key, value]) => <input key={key} type="hidden" name={`${name}.${key}`} value={value} />);
}

/** The numbers of the rows: those that came back from the last try, or those that the page gives, and enough free ones. */
export function rowsToBegin({
  name,
  values,
  filled,
  blank,
}: {
  name: string;
  values: FormValues;
  filled: number;
  blank: number;
}): number[] {
  const typed = new Map<number, boolean>();
  for (const [key, value] of Object.entries(values)) {
    const row = key.startsWith(`${name}.`) ? Number(key.slice(name.length + 1).split(".")[0]) : Number.NaN;
    if (Number.isInteger(row)) typed.set(row, typed.get(row) === true || String(value).trim() !== "");
  }
  if (typed.size === 0) return countFrom(0, filled + blank);
  const free = [...typed.values()].filter((isFilled) => !isFilled).length;
  const next = Math.max(...typed.keys()) + 1;
  return [...[...typed.keys()].sort((a, b) => a - b), ...countFrom(next, Math.max(0, blank - free))];
}

const countFrom = (start: number, count: number): number[] => Array.from({ length: count }, (_, step) => start + step);

/** False on the server and where no script runs. */
export const useHasScripts = (): boolean =>
  useSyncExternalStore(
    () => () => undefined,
    () => true,
    () => false,
  );

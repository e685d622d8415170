"use client";

import { useContext } from "react";
import styles from "./form.module.css";
import { FormContext, fieldIdOf } from "./form-context";
import type { FormState, FormValues } from "./form-state";
import { draftsFrom, numbersOfDrafts } from "./mark-draft";
import { typedRows } from "./typed-rows";
import { useOwnUnits } from "./units";

/** Takes the focus where it appears, so that a reader begins with what went wrong. */
const takeFocus = (element: HTMLElement | null) => element?.focus();

/** What went wrong, at the head of the form, with a way to each field. */
export function FormErrors() {
  const { formId, state, markNumbers } = useContext(FormContext);
  const told = useOwnUnits();
  const errors = Object.entries(state.errors);
  if (!state.message && errors.length === 0) return null;
  return (
    <div role="alert" tabIndex={-1} ref={takeFocus} className={styles.summary}>
      <p>
        <strong>{state.message ?? "Some fields need another look."}</strong>
      </p>
      {state.signIn && (
        <p>
          <a href="/sign-in" target="_blank" rel="noreferrer">
            Sign in again in another tab
          </a>
        </p>
      )}
      {errors.length > 0 && (
        <ul>
          {errors.map(([name, error]) => (
            <li key={name}>
              {name === "" ? (
                told(error)
              ) : (
                <a href={`#${fieldIdOf(formId, name)}`}>{rowOf(name, state.values, markNumbers) + told(error)}</a>
              )}
            </li>
          ))}
        </ul>
      )}
      {state.changed && <BothVersions changed={state.changed} />}
    </div>
  );
}

function BothVersions({ changed }: { changed: NonNullable<FormState["changed"]> }) {
  return (
    <>
      {changed.fields.length > 0 && (
        <table>
          <thead>
            <tr>
              <th scope="col">field</th>
              <th scope="col">saved meanwhile</th>
              <th scope="col">yours</th>
            </tr>
          </thead>
          <tbody>
            {changed.fields.map(({ label, theirs, yours }) => (
              <tr key={label}>
                <th scope="row">{label}</th>
                <td>{theirs || "empty"}</td>
                <td>{yours || "empty"}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p>
        Save again to keep yours, or <a href="?">take what was saved meanwhile</a>.
      </p>
    </>
  );
}

/** What the rows of a list are called on the page. */
const rowWords: Readonly<Record<string, string>> = {
  pulls: "Pull",
  motion: "Movement",
  stations: "Level",
  levels: "Level",
};

/** "Pull 2: " for a field in a repeated row: its place among the rows as they stand on the page; a mark has its number. */
function rowOf(name: string, values: FormValues, markNumbers: ReadonlyMap<string, number>): string {
  const [, list, row] = /^(.+)\.(\d+)\.[^.]+$/.exec(name) ?? [];
  if (list === undefined || row === undefined) return "";
  const at = Number(row);
  if (list.endsWith("marks")) {
    const drafts = draftsFrom(list, values, []);
    return `Mark ${numbersOfDrafts(drafts, markNumbers)[drafts.findIndex((draft) => draft.row === at)] ?? at + 1}: `;
  }
  const word = rowWords[list.slice(list.lastIndexOf(".") + 1)] ?? "Row";
  return `${word} ${typedRows(values, list).filter((other) => other.row <= at).length}: `;
}

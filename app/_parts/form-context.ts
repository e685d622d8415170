"use client";

import { createContext, useContext } from "react";
import { type FormState, untouched } from "./form-state";

/** What a form tells its fields. Outside an `ActionForm` fields stand alone, with their own first values. */
export const FormContext = createContext<{ formId: string; state: FormState; pending: boolean }>({
  formId: "form",
  state: untouched,
  pending: false,
});

export const fieldIdOf = (formId: string, name: string): string => `${formId}-${name}`;

/** The id, value and error of one field: what was typed at the last try goes before what the page put there. */
export function useField(name: string, first: string | undefined) {
  const { formId, state } = useContext(FormContext);
  const sent = state.values[name];
  const tried = Object.keys(state.values).length > 0;
  const id = fieldIdOf(formId, name);
  const typed = Array.isArray(sent) ? sent[0] : sent;
  return {
    id,
    /** What the field begins with. */
    value: tried ? (typed ?? "") : (first ?? ""),
    error: state.errors[name],
    hintId: `${id}-hint`,
    errorId: `${id}-error`,
  };
}

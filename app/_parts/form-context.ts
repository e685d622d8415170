"use client";

import { createContext, useContext, useSyncExternalStore } from "react";
import { type FormState, type FormValues, untouched } from "./form-state";
import { TypedValues } from "./typed-values";

interface FormTold {
  formId: string;
  state: FormState;
  pending: boolean;
  /** What stands in the fields now. */
  typed: TypedValues;
  /** The number that each skin mark, by its id, has in the record; a new mark takes the next one. */
  markNumbers: ReadonlyMap<string, number>;
  /** After a draft was discarded the form stands for another record than the page was made for. */
  recordId?: string | undefined;
}

/** What a form tells its fields. Outside an `ActionForm` fields stand alone, with their own first values. */
export const FormContext = createContext<FormTold>({
  formId: "form",
  state: untouched,
  pending: false,
  typed: new TypedValues(),
  markNumbers: new Map(),
});

export const fieldIdOf = (formId: string, name: string): string => `${formId}-${name}`;

/** The id, value and error of one field: what was typed at the last try goes before what the page put there. */
export function useField(name: string, first: string | undefined) {
  const { formId, state, recordId } = useContext(FormContext);
  const sent = state.values[name];
  const tried = Object.keys(state.values).length > 0;
  const id = fieldIdOf(formId, name);
  const typed = Array.isArray(sent) ? sent[0] : sent;
  const begins = name === "id" && recordId !== undefined && first !== undefined ? recordId : (first ?? "");
  return {
    id,
    /** What the field begins with. */
    value: tried ? (typed ?? "") : begins,
    /** It was sent, though it may be empty: a choice such as "not asked". */
    wasSent: sent !== undefined,
    error: state.errors[name],
    hintId: `${id}-hint`,
    errorId: `${id}-error`,
  };
}

/** What stands in the fields of the form, followed as one types. Nothing yet on the server. */
export function useTyped(): FormValues {
  const { typed } = useContext(FormContext);
  return useSyncExternalStore(typed.subscribe, typed.now, () => nothing);
}

const nothing: FormValues = {};

"use client";

import { type ReactNode, useContext } from "react";
import { FormContext } from "./form-context";

interface SubmitButtonProps {
  children: ReactNode;
  /** What it says while it sends. */
  sending?: string;
  /** Tells the action which of several buttons was pressed. */
  name?: string;
  value?: string;
  kind?: "main" | "quiet" | "stop";
}

/** Sends the form. It stays in the tab order while it sends, so that the focus is not lost. */
export function SubmitButton({ children, sending = "Saving…", name, value, kind = "main" }: SubmitButtonProps) {
  const { pending, state } = useContext(FormContext);
  return (
    <>
      {state.asked?.map((question) => (
        <input key={question} type="hidden" name="confirmed" value={question} />
      ))}
      <button
        type="submit"
        name={name}
        value={value}
        aria-disabled={pending || undefined}
        className={kind === "main" ? undefined : kind}
      >
        {pending ? sending : children}
      </button>
    </>
  );
}

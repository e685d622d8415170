"use client";

import { unstable_rethrow } from "next/navigation";
import { type FormEvent, type ReactNode, startTransition, useActionState, useId, useState, useTransition } from "react";
import styles from "./form.module.css";
import { FormContext } from "./form-context";
import { FormErrors } from "./form-errors";
import { type FormAction, type FormState, untouched, valuesOf } from "./form-state";

/**
 * A form over a server action that answers with a `FormState`.
 *
 * Without JavaScript the browser sends it and the page comes back filled. With it, the form is sent from here: React
 * does not reset the fields, and a lost network leaves what was typed where it is.
 */
export function ActionForm({ action, className, children }: { action: FormAction; className?: string; children: ReactNode }) {
  const [answered, formAction] = useActionState(action, untouched);
  const [sent, setSent] = useState<{ state: FormState; times: number; saves: number } | null>(null);
  const [pending, startSending] = useTransition();
  const formId = useId();
  const { state, times, saves } = sent ?? { state: answered, times: 0, saves: 0 };

  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    if (pending) return;
    const { submitter } = event.nativeEvent as SubmitEvent; // React's submit event wraps the browser's
    const formData = new FormData(event.currentTarget, submitter);
    startSending(async () => {
      const next = await tell(action, state, formData);
      startTransition(() => setSent({ state: next, times: times + 1, saves: saves + (next.saved ? 1 : 0) }));
    });
  }

  return (
    <form action={formAction} onSubmit={send} noValidate className={`${styles.form} ${className ?? ""}`}>
      <FormContext value={{ formId, state, pending }}>
        {/* A new key moves the focus to the errors of this try. */}
        <FormErrors key={`errors ${times}`} />
        {state.saved && <p role="status">{state.saved}</p>}
        {/* A new key gives empty fields after a save. */}
        <div key={`fields ${saves}`} className={styles.fields}>
          {children}
        </div>
      </FormContext>
    </form>
  );
}

async function tell(action: FormAction, state: FormState, formData: FormData): Promise<FormState> {
  try {
    return await action(state, formData);
  } catch (error) {
    // A redirect after a save also arrives as an error; it is Next's to act on.
    unstable_rethrow(error);
    return { values: valuesOf(formData), errors: {}, message: whatHappened(error) };
  }
}

/** A fault of the server carries the id under which it was logged; without one the server was never reached. */
function whatHappened(error: unknown): string {
  const faultId = error instanceof Error && "digest" in error ? String(error.digest) : "";
  return faultId
    ? `Not saved: something went wrong on the server (fault ${faultId}). What you typed is still here. Try again; if it fails again, give this number to your administrator.`
    : "Not saved: the server could not be reached. What you typed is still here. Try again when the network is back.";
}

"use client";

import { unstable_rethrow } from "next/navigation";
import {
  type FormEvent,
  type ReactNode,
  startTransition,
  useActionState,
  useId,
  useMemo,
  useRef,
  useState,
  useTransition,
} from "react";
import { DraftLine } from "./draft-line";
import { useDraftOfForm } from "./draft-of-form";
import styles from "./form.module.css";
import { FormContext } from "./form-context";
import { FormErrors } from "./form-errors";
import { useFocusKept } from "./form-focus";
import { moveOnWithEnter } from "./form-keys";
import { begunAnew, type FormAction, type FormState, type FormValues, untouched, valuesOf } from "./form-state";
import { TypedValues } from "./typed-values";

interface ActionFormProps {
  action: FormAction;
  className?: string;
  /**
   * Keeps what is typed on the device until it is saved, under this name: `draftKey("fitting", socketId, actor.id)`.
   * In such a form Enter goes on to the next field, and Ctrl and Enter save.
   */
  draft?: string;
  /** What the fields hold to begin with, as if it had been typed: a record that is put right. */
  initial?: FormValues;
  /** The numbers that skin marks have in the record already, by their ids. */
  markNumbers?: ReadonlyMap<string, number>;
  children: ReactNode;
}

interface Shown {
  state: FormState;
  times: number;
  /** New fields, with new first values. */
  begun: number;
  recordId?: string | undefined;
}

/**
 * A form over a server action that answers with a `FormState`.
 *
 * Without JavaScript the browser sends it and the page comes back filled. With it, the form is sent from here: React
 * does not reset the fields, and a lost network leaves what was typed where it is.
 */
export function ActionForm({ action, className, draft: draftKey, initial, markNumbers = noNumbers, children }: ActionFormProps) {
  const [answered, formAction] = useActionState(action, initial ? { values: initial, errors: {} } : untouched);
  const [sent, setSent] = useState<Shown | null>(null);
  const [pending, startSending] = useTransition();
  const formId = useId();
  const form = useRef<HTMLFormElement>(null);
  const [typed] = useState(() => new TypedValues());
  const { state, times, begun, recordId } = sent ?? { state: answered, times: 0, begun: 0 };
  const draft = useDraftOfForm({
    draftKey,
    form,
    typed,
    begun,
    // What the page itself begins with is nobody's typing: a kept draft goes before it.
    isFilled: state.values !== initial && Object.keys(state.values).length > 0,
    begin: (values: FormValues, newRecordId?: string) =>
      setSent((now) => ({
        state: { values: begunAnew(values, initial, newRecordId), errors: {} },
        times: now?.times ?? 0,
        begun: (now?.begun ?? 0) + 1,
        recordId: newRecordId,
      })),
  });
  useFocusKept(form, begun);

  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    if (pending) return;
    const { submitter } = event.nativeEvent as SubmitEvent; // React's submit event wraps the browser's
    const formData = new FormData(event.currentTarget, submitter);
    startSending(async () => {
      const next = await tell(action, state, formData, draft.saved);
      startTransition(() =>
        setSent((now) => ({
          state: next,
          times: (now?.times ?? 0) + 1,
          begun: (now?.begun ?? 0) + (next.saved ? 1 : 0),
          recordId: now?.recordId,
        })),
      );
    });
  }

  const told = useMemo(
    () => ({ formId, state, pending, typed, recordId, markNumbers }),
    [formId, state, pending, typed, recordId, markNumbers],
  );
  return (
    <form
      ref={form}
      action={formAction}
      onSubmit={send}
      onKeyDown={draftKey === undefined ? undefined : moveOnWithEnter}
      noValidate
      className={`${styles.form} ${className ?? ""}`}
    >
      <FormContext value={told}>
        {/* A new key moves the focus to the errors of this try. */}
        <FormErrors key={`errors ${times}`} />
        {state.saved && <p role="status">{state.saved}</p>}
        {draftKey !== undefined && <DraftLine draft={draft} />}
        {/* A new key gives fields with new first values. */}
        <div key={`fields ${begun}`} className={styles.fields}>
          {children}
        </div>
      </FormContext>
    </form>
  );
}

const noNumbers: ReadonlyMap<string, number> = new Map();

async function tell(action: FormAction, state: FormState, formData: FormData, whenSaved: () => void): Promise<FormState> {
  try {
    const next = await action(state, formData);
    if (next.saved) whenSaved();
    return next;
  } catch (error) {
    // A redirect after a save also arrives as an error; it is Next's to act on.
    if (leadsOn(error)) whenSaved();
    unstable_rethrow(error);
    return { values: valuesOf(formData), errors: {}, message: whatHappened(error) };
  }
}

const leadsOn = (error: unknown): boolean =>
  error instanceof Error && "digest" in error && String(error.digest).startsWith("NEXT_REDIRECT");

/** A fault of the server carries the id under which it was logged; without one the server was never reached. */
function whatHappened(error: unknown): string {
  const faultId = error instanceof Error && "digest" in error ? String(error.digest) : "";
  return faultId
    ? `Not saved: something went wrong on the server (fault ${faultId}). What you typed is still here. Try again; if it fails again, give this number to your administrator.`
    : "Not saved: the server could not be reached. What you typed is still here. Try again when the network is back.";
}

"use client";

import type { ReactNode } from "react";
import styles from "./fields.module.css";
import { useOwnUnits } from "./units";

/** What every field takes. `first` is what it holds before anything was typed. */
export interface FieldProps {
  name: string;
  label: string;
  hint?: string | undefined;
  first?: string | undefined;
  /** Says in the label that it may be left free. */
  optional?: boolean | undefined;
}

interface FrameIds {
  id: string;
  hintId: string;
  errorId: string;
  error: string | undefined;
}

/** For `aria-describedby`: the error first, because it is what the person came back for. */
export const describedBy = ({ hintId, errorId, error }: FrameIds, hint: string | undefined): string | undefined =>
  [error && errorId, hint && hintId].filter(Boolean).join(" ") || undefined;

/** Label above, hint and error between label and field, where the eye passes them. */
export function FieldFrame({
  ids,
  label,
  hint,
  optional,
  children,
}: { ids: FrameIds; children: ReactNode } & Omit<FieldProps, "name" | "first">) {
  return (
    <div className={styles.field}>
      <label htmlFor={ids.id}>
        <LabelText label={label} optional={optional} />
      </label>
      <HintAndError ids={ids} hint={hint} />
      {children}
    </div>
  );
}

export function LabelText({ label, optional = false }: { label: string; optional: boolean | undefined }) {
  return (
    <>
      <span className={styles.label}>{label}</span>
      {optional && <span className={styles.optional}> optional</span>}
    </>
  );
}

export function HintAndError({ ids: { hintId, errorId, error }, hint }: { ids: FrameIds; hint: string | undefined }) {
  const told = useOwnUnits();
  return (
    <>
      {hint && (
        <span id={hintId} className={styles.hint}>
          {told(hint)}
        </span>
      )}
      {error && (
        <span id={errorId} className={styles.error}>
          {told(error)}
        </span>
      )}
    </>
  );
}

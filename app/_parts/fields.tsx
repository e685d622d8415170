"use client";

import { type HTMLInputAutoCompleteAttribute, useState } from "react";
import { describedBy, FieldFrame, type FieldProps, HintAndError, LabelText } from "./field-frame";
import styles from "./fields.module.css";
import { useField } from "./form-context";
import { useFieldUnit } from "./units";

interface TextFieldProps extends FieldProps {
  type?: "text" | "email" | "password" | "search" | "tel";
  autoComplete?: HTMLInputAutoCompleteAttribute;
  /** About how many characters it shows. */
  size?: number | undefined;
}

export function TextField({ name, first, type = "text", autoComplete = "off", size = 32, ...frame }: TextFieldProps) {
  const ids = useField(name, first);
  return (
    <FieldFrame ids={ids} {...frame}>
      <input
        id={ids.id}
        name={name}
        type={type}
        size={size}
        autoComplete={autoComplete}
        // A password never travels back to the page.
        defaultValue={type === "password" ? "" : ids.value}
        aria-describedby={describedBy(ids, frame.hint)}
        aria-invalid={ids.error ? true : undefined}
        className={styles.input}
      />
    </FieldFrame>
  );
}

interface NumberFieldProps extends FieldProps {
  /** What stands behind the number: "mm", "kg", "°". In mm, kg and N a person may have chosen the other unit. */
  unit?: string | undefined;
  /** Passed over by the Tab key: a value that is proposed and seldom changed. It is still pressed, read aloud and sent. */
  skipped?: boolean | undefined;
  /** Of what is said beside the field as one types. */
  alsoDescribedBy?: string | undefined;
}

/** A number with its unit, and beside it the same in the other unit as one types. The server reads it. */
export function NumberField({ name, first, unit, skipped = false, alsoDescribedBy, ...frame }: NumberFieldProps) {
  const inUnit = useFieldUnit(name);
  const ids = useField(name, first === undefined ? undefined : (inUnit?.first(first) ?? first));
  const [typed, setTyped] = useState(ids.value);
  const besideId = `${ids.id}-beside`;
  const unitId = `${ids.id}-unit`;
  return (
    <FieldFrame ids={ids} {...frame}>
      <span className={styles.measured}>
        <span className={styles.number}>
          <input
            id={ids.id}
            name={name}
            type="text"
            inputMode="decimal"
            autoComplete="off"
            size={7}
            tabIndex={skipped ? -1 : undefined}
            defaultValue={ids.value}
            onChange={inUnit && ((event) => setTyped(event.target.value))}
            aria-describedby={
              [describedBy(ids, frame.hint), unit && unitId, inUnit && besideId, alsoDescribedBy].filter(Boolean).join(" ") ||
              undefined
            }
            aria-invalid={ids.error ? true : undefined}
          />
          {unit && (
            <span id={unitId} className={styles.unit}>
              {inUnit?.unit ?? unit}
            </span>
          )}
        </span>
        {inUnit && (
          <span id={besideId} className={styles.also}>
            {inUnit.beside(typed)}
          </span>
        )}
      </span>
    </FieldFrame>
  );
}

/** A day, or a day and time on the clinic's clock (`2026-10-05`, `2026-10-05T14:12`). */
export function DateField({ name, first, withTime = false, ...frame }: FieldProps & { withTime?: boolean }) {
  const ids = useField(name, first);
  return (
    <FieldFrame ids={ids} {...frame}>
      <input
        id={ids.id}
        name={name}
        type={withTime ? "datetime-local" : "date"}
        defaultValue={ids.value}
        aria-describedby={describedBy(ids, frame.hint)}
        aria-invalid={ids.error ? true : undefined}
        className={styles.input}
      />
    </FieldFrame>
  );
}

export interface Option {
  value: string;
  label: string;
}

interface SelectFieldProps extends FieldProps {
  options: readonly Option[];
  /** What an empty choice says. Nothing is chosen beforehand. */
  empty?: string | undefined;
}

export function SelectField({ name, first, options, empty = "choose", ...frame }: SelectFieldProps) {
  const ids = useField(name, first);
  return (
    <FieldFrame ids={ids} {...frame}>
      <select
        // React does not follow a new default of a select: a new key does.
        key={ids.value}
        id={ids.id}
        name={name}
        defaultValue={ids.value}
        aria-describedby={describedBy(ids, frame.hint)}
        aria-invalid={ids.error ? true : undefined}
        className={styles.input}
      >
        <option value="">{empty}</option>
        {options.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}

export function TextArea({ name, first, rows = 3, ...frame }: FieldProps & { rows?: number }) {
  const ids = useField(name, first);
  return (
    <FieldFrame ids={ids} {...frame}>
      <textarea
        id={ids.id}
        name={name}
        rows={rows}
        defaultValue={ids.value}
        aria-describedby={describedBy(ids, frame.hint)}
        aria-invalid={ids.error ? true : undefined}
        className={styles.area}
      />
    </FieldFrame>
  );
}

/** A box to tick; it sends `yes`. `first` is "yes" where it begins ticked. */
export function CheckBox({ name, first, label, hint, optional }: FieldProps) {
  const ids = useField(name, first);
  return (
    <div className={styles.field}>
      <label className={styles.tick}>
        <input
          id={ids.id}
          name={name}
          type="checkbox"
          value="yes"
          defaultChecked={ids.value === "yes"}
          aria-describedby={describedBy(ids, hint)}
          aria-invalid={ids.error ? true : undefined}
        />
        <span>
          <LabelText label={label} optional={optional} />
        </span>
      </label>
      <HintAndError ids={ids} hint={hint} />
    </div>
  );
}

/** A value that travels with the form. After someone else's save, the version to send next takes its place. */
export function HiddenField({ name, value }: { name: string; value: string }) {
  const ids = useField(name, value);
  return <input type="hidden" name={name} value={ids.value} />;
}

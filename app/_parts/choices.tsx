"use client";

import styles from "./choices.module.css";
import { describedBy, type FieldProps, HintAndError, LabelText } from "./field-frame";
import type { Option } from "./fields";
import { useField } from "./form-context";
import { chooseByNumber, useRateByNumber } from "./form-keys";

interface ChooseProps extends FieldProps {
  /** A few short words; the answers of a check by default. */
  options?: readonly Option[];
}

const answers = ["met", "concern", "not met", "not done"].map((answer) => ({ value: answer, label: answer }));

/**
 * One of a few words in a row, question beside them. Nothing is chosen beforehand. By keyboard the arrows choose, and so
 * does the number of the answer, which then goes on to the next field.
 */
export function Choose({ name, first, label, hint, optional, options = answers }: ChooseProps) {
  const ids = useField(name, first);
  return (
    <fieldset className={styles.check} aria-describedby={describedBy(ids, hint)} onKeyDown={chooseByNumber}>
      <legend className="heard">{label}</legend>
      <div className={styles.question}>
        {/* The legend says it aloud; a legend itself cannot stand beside its choices. */}
        <span aria-hidden="true">
          <LabelText label={label} optional={optional} />
        </span>
        <HintAndError ids={ids} hint={hint} />
      </div>
      <div className={styles.segments}>
        <Radios name={name} id={ids.id} options={options} chosen={ids.value} invalid={ids.error !== undefined} />
      </div>
    </fieldset>
  );
}

interface ScaleProps extends FieldProps {
  /** The words of both ends: `["worst", "best imaginable"]`. */
  ends: readonly [string, string];
  /** Where it may be left free: a choice that says so, as "not asked". */
  none?: string;
}

const ratings = Array.from({ length: 11 }, (_, rating) => ({ value: String(rating), label: String(rating) }));

/** A rating from 0 to 10 in large buttons, with the scale's own ends in words. By keyboard the figures themselves rate. */
export function Scale({ name, first, label, hint, optional, ends: [low, high], none }: ScaleProps) {
  const ids = useField(name, first);
  const rateByNumber = useRateByNumber();
  const chosen = ids.value;
  const endsId = `${ids.id}-ends`;
  return (
    <fieldset
      className={styles.scale}
      aria-describedby={[describedBy(ids, hint), endsId].filter(Boolean).join(" ")}
      onKeyDown={rateByNumber}
    >
      <legend>
        <LabelText label={label} optional={optional} />
      </legend>
      <p id={endsId} className={styles.ends}>
        <span>0 {low}</span>
        <span className="heard">, </span>
        <span>10 {high}</span>
      </p>
      <HintAndError ids={ids} hint={hint} />
      <div className={styles.buttons}>
        <Radios name={name} id={ids.id} options={ratings} chosen={chosen} invalid={ids.error !== undefined} />
        {none && (
          <label className={styles.none}>
            <input type="radio" name={name} value="" defaultChecked={ids.wasSent && chosen === ""} />
            {none}
          </label>
        )}
      </div>
    </fieldset>
  );
}

interface RadiosProps {
  name: string;
  /** Of the first one: where a link from the errors leads. */
  id: string;
  options: readonly Option[];
  chosen: string;
  invalid: boolean;
}

function Radios({ name, id, options, chosen, invalid }: RadiosProps) {
  return options.map(({ value, label }, position) => (
    <label key={value}>
      <input
        id={position === 0 ? id : undefined}
        type="radio"
        name={name}
        value={value}
        defaultChecked={value === chosen}
        aria-invalid={invalid || undefined}
      />
      {label}
    </label>
  ));
}

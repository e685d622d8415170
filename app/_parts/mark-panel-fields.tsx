"use client";

import { useCallback, useEffect, useRef, useState } from "react";
import choices from "./choices.module.css";
import { FieldFrame, HintAndError } from "./field-frame";
import type { Option } from "./fields";
import inputs from "./fields.module.css";
import { chooseByNumber } from "./form-keys";
import styles from "./mark-panel.module.css";
import { useFieldUnit } from "./units";

interface MarkFieldProps {
  id: string;
  name: string;
  label: string;
  value: string;
  /** What is wrong with it, from the server or while it is typed. */
  said: string | undefined;
  type: (value: string) => void;
}

const idsOf = ({ id, said }: MarkFieldProps) => ({ id, error: said, hintId: `${id}-hint`, errorId: `${id}-error` });
const wrongness = (field: MarkFieldProps) =>
  field.said === undefined ? {} : ({ "aria-invalid": true, "aria-describedby": idsOf(field).errorId } as const);

/** A number with its unit; a length also in the other unit, as one types. */
export function MarkNumber({ unit, optional, ...field }: MarkFieldProps & { unit: string; optional: boolean }) {
  const inUnit = useFieldUnit(field.name);
  const { text, change, settle } = useTypedText(field);
  const besideId = `${field.id}-beside`;
  return (
    <FieldFrame ids={idsOf(field)} label={field.label} optional={optional}>
      <span className={styles.measured}>
        <span className={inputs.number}>
          <input
            id={field.id}
            name={field.name}
            type="text"
            inputMode="decimal"
            autoComplete="off"
            size={7}
            value={text}
            onChange={(event) => change(event.target.value)}
            onBlur={settle}
            aria-invalid={field.said === undefined ? undefined : true}
            aria-describedby={[field.said && idsOf(field).errorId, inUnit && besideId].filter(Boolean).join(" ") || undefined}
          />
          <span className={inputs.unit}>{inUnit?.unit ?? unit}</span>
        </span>
        {inUnit && (
          <span id={besideId} className={styles.beside}>
            {inUnit.beside(text)}
          </span>
        )}
      </span>
    </FieldFrame>
  );
}

const restMs = 400;

/**
 * What is typed stands in its field at once. The list, the map and what is said of it follow when the hand rests or goes
 * on: drawing thirty marks anew at every key would make the keys slow.
 */
function useTypedText({ value, type }: Pick<MarkFieldProps, "value" | "type">) {
  const [typed, setTyped] = useState<string | null>(null);
  const pending = useRef<{ text: string; timer: number } | null>(null);
  const tell = useRef(type);
  useEffect(() => {
    tell.current = type;
  });
  const settle = useCallback(() => {
    if (!pending.current) return;
    const { text, timer } = pending.current;
    clearTimeout(timer);
    pending.current = null;
    tell.current(text);
    setTyped(null);
  }, []);
  // The mark may be closed before the hand rests.
  useEffect(() => settle, [settle]);
  const change = (text: string) => {
    clearTimeout(pending.current?.timer);
    pending.current = { text, timer: window.setTimeout(settle, restMs) };
    setTyped(text);
  };
  return { text: typed ?? value, change, settle };
}

/** One of a few words in a row. */
export function MarkChoice({ options, ...field }: MarkFieldProps & { options: readonly Option[] }) {
  return (
    <fieldset
      className={styles.choice}
      aria-describedby={field.said === undefined ? undefined : idsOf(field).errorId}
      onKeyDown={chooseByNumber}
    >
      <legend>{field.label}</legend>
      <HintAndError ids={idsOf(field)} hint={undefined} />
      <div className={choices.segments}>
        {options.map(({ value, label }, position) => (
          <label key={value}>
            <input
              id={position === 0 ? field.id : undefined}
              type="radio"
              name={field.name}
              value={value}
              checked={value === field.value}
              onChange={() => field.type(value)}
              aria-invalid={field.said === undefined ? undefined : true}
            />
            {label}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

/** A box to tick; it sends `yes`. */
export function MarkTick(field: MarkFieldProps) {
  return (
    <label className={inputs.tick}>
      <input
        id={field.id}
        name={field.name}
        type="checkbox"
        value="yes"
        checked={field.value === "yes"}
        onChange={(event) => field.type(event.target.checked ? "yes" : "")}
        {...wrongness(field)}
      />
      <span>{field.label}</span>
    </label>
  );
}

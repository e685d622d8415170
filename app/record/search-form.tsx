import type { ReactNode } from "react";
import fields from "@/app/_parts/fields.module.css";
import type { Asked, SearchName } from "./address";
import styles from "./record.module.css";

interface SearchFormProps {
  asked: Asked;
  /** What to do about each field that is wrong. */
  wrong: Record<string, string>;
  people: readonly string[];
  kinds: readonly string[];
}

/** A form that only leads to an address: everything in it can be kept as a bookmark. */
export function SearchForm({ asked, wrong, people, kinds }: SearchFormProps) {
  const field = (name: SearchName) => ({ name, first: asked[name], error: wrong[name] });
  return (
    <search aria-label="The record">
      <form className={styles.search}>
        <Field {...field("who")} label="who did it" list="people" />
        <Field {...field("wearer")} label="wearer" hint="name, clinic number or id" />
        <Field {...field("record")} label="record" hint="kind or id" list="kinds" />
        <Field {...field("find")} label="words" hint="in what was done or written" type="search" />
        <Field {...field("from")} label="first day" type="date" />
        <Field {...field("to")} label="last day" type="date" />
        <Choices id="people" of={people} />
        <Choices id="kinds" of={kinds} />
        <label className={styles.tick}>
          <input type="checkbox" name="reads" value="yes" defaultChecked={asked.reads === "yes"} /> readings too
        </label>
        <div className={styles.send}>
          <button type="submit">Find</button>
          {Object.keys(asked).length > 0 && <a href="/record">Show everything</a>}
        </div>
      </form>
    </search>
  );
}

interface FieldProps {
  name: SearchName;
  label: string;
  first: string | undefined;
  error: string | undefined;
  hint?: string;
  type?: "text" | "date" | "search";
  /** Of what can be chosen, beside typing. */
  list?: string;
}

function Field({ name, label, first, error, hint, type = "text", list }: FieldProps) {
  const id = `record-${name}`;
  const described = [error && `${id}-error`, hint && `${id}-hint`].filter(Boolean).join(" ");
  return (
    <div className={fields.field}>
      <label htmlFor={id} className={fields.label}>
        {label}
      </label>
      {hint && <Said id={`${id}-hint`}>{hint}</Said>}
      {error && (
        <span id={`${id}-error`} className={fields.error}>
          {error}
        </span>
      )}
      <input
        id={id}
        name={name}
        type={type}
        list={list}
        defaultValue={first}
        autoComplete="off"
        className={fields.input}
        aria-describedby={described || undefined}
        aria-invalid={error ? true : undefined}
      />
    </div>
  );
}

const Said = ({ id, children }: { id: string; children: ReactNode }) => (
  <span id={id} className={fields.hint}>
    {children}
  </span>
);

const Choices = ({ id, of }: { id: string; of: readonly string[] }) => (
  <datalist id={id}>
    {of.map((value) => (
      <option key={value} value={value} />
    ))}
  </datalist>
);

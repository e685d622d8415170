import { type FormEvent, useMemo, useRef, useState } from "react";
import { FormContext } from "@/app/_parts/form-context";
import { type FormState, inputOf, untouched, valuesOf } from "@/app/_parts/form-state";
import { mapGeometry } from "@/app/_parts/limb-map-geometry";
import { complaintsOf, missingOf } from "@/app/_parts/mark-check";
import type { DraftValues } from "@/app/_parts/mark-draft";
import { MarkEditor } from "@/app/_parts/mark-editor";
import { markSeenBefore } from "@/app/_parts/mark-fields";
import { TypedValues } from "@/app/_parts/typed-values";
import type { Inspection } from "@/lib/fit/bundle";
import { gradeMark } from "@/lib/fit/skin-marks-grade";
import styles from "./live.module.css";
import type { LiveTrial } from "./live-trial";

interface LookProps {
  trial: LiveTrial;
  last: Inspection | undefined;
  minutes: number;
  save: (look: { marks: Record<string, unknown>[]; noMarks: boolean }) => void;
}

/** A look with the limb map, for who knows its terms. The marks of the last look are answered anew. */
export function LookOnMap({ trial, last, minutes, save }: LookProps) {
  const [state, setState] = useState<FormState>(untouched);
  const [typed] = useState(() => new TypedValues());
  const geometry = useMemo(() => mapGeometry(trial.limb), [trial.limb]);
  const markNumbers = useMemo(() => new Map(trial.markNumbers), [trial.markNumbers]);
  const [seen] = useState(() => (last?.marks ?? []).filter(({ strength }) => strength !== "none"));
  const [first] = useState(() => seen.map(markSeenBefore));
  const [before] = useState(() => seen.map((mark) => ({ ...mark, grade: gradeMark(mark, last?.minutesAfterDoffing) })));
  const now = useRef(minutes);
  now.current = minutes;

  function keep(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const values = valuesOf(new FormData(event.currentTarget));
    const { marks, noMarks } = inputOf(values).input;
    const rows = (Array.isArray(marks) ? marks : []) as DraftValues[]; // rows of text, as the editor sends them
    const message = whatIsWrong(rows, noMarks === "on", geometry);
    setState({ values, errors: {}, ...(message ? { message } : {}) });
    if (message) return;
    save({ marks: rows.map(asSent), noMarks: noMarks === "on" });
  }

  return (
    <form onSubmit={keep} noValidate className={styles.look} aria-label="Look at the skin">
      <FormContext value={{ formId: "look", state, pending: false, typed, markNumbers }}>
        <MarkEditor
          name="marks"
          limb={trial.limb}
          minutes={{ name: "minutesAfterDoffing", first: String(Math.round(minutes)) }}
          first={first}
          before={before}
        />
        <label className={styles.tick}>
          <input type="checkbox" name="noMarks" /> No mark anywhere, after looking all round and at the end
        </label>
      </FormContext>
      {state.message && (
        <p role="alert" className={styles.wrong}>
          {state.message}
        </p>
      )}
      <button type="submit" className={styles.large}>
        Save this look
      </button>
    </form>
  );
}

function whatIsWrong(rows: readonly DraftValues[], noMarks: boolean, geometry: ReturnType<typeof mapGeometry>): string {
  if (rows.length === 0 && !noMarks) return "List the marks, or tick that there was none.";
  if (rows.length > 0 && noMarks) return "Marks are listed: untick that there was none, or take them out of the list.";
  const missing = new Set(rows.flatMap(missingOf));
  if (missing.size > 0) return `Not saved yet. Still to be answered of a mark: ${[...missing].join(", ")}.`;
  return Object.values(
    rows.map((row) => complaintsOf(row, geometry, "mm")).find((said) => Object.keys(said).length > 0) ?? {},
  ).join(" ");
}

/** Ticks are told by their being there; what was left free is left out. */
const asSent = (row: DraftValues): Record<string, unknown> => ({
  ...Object.fromEntries(Object.entries(row).filter(([, value]) => value !== "")),
  ...Object.fromEntries(["firm", "warm", "painful", "broken"].map((sign) => [sign, Boolean(row[sign as keyof DraftValues])])), // fields of a mark
  ...Object.fromEntries(
    (["distanceFromEndMm", "angleDeg", "widthMm", "heightMm", "fadedAtMin"] as const)
      .filter((name) => (row[name] ?? "") !== "")
      .map((name) => [name, Number(String(row[name]).replace(",", "."))]),
  ),
});

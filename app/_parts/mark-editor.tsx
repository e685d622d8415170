"use client";

import {
  type Ref,
  type RefObject,
  useCallback,
  useContext,
  useDeferredValue,
  useEffect,
  useId,
  useMemo,
  useReducer,
  useRef,
  useState,
} from "react";
import { FormContext, fieldIdOf } from "./form-context";
import { useHasScripts } from "./has-scripts";
import { MapKey } from "./hatches";
import { viewWords } from "./limb-drawing";
import { mapGeometry } from "./limb-map-geometry";
import type { MapMark } from "./limb-map-marks";
import type { DrawnLimb } from "./limb-shape";
import { useLookedAt } from "./looked-at";
import { MarkCanvas } from "./mark-canvas";
import { type Draft, type DraftValues, draftsFrom, gradeSoFar, numbersOfDrafts } from "./mark-draft";
import styles from "./mark-editor.module.css";
import { type MarksAction, marksAfter, marksFrom, type PanelFocus } from "./mark-editor-state";
import { markFields, markHint } from "./mark-fields";
import { MarkPanel } from "./mark-panel";
import { MarkRows } from "./mark-rows";
import { Rows } from "./rows";
import { useFieldUnit, useOwnUnits } from "./units";

interface MarkEditorProps {
  /** The list's name in the input: `look.marks`. */
  name: string;
  limb: DrawnLimb;
  /** The field of the same form that says how long after doffing the skin was looked at, and what it begins with. */
  minutes: { name: string; first?: string };
  hint?: string;
  /** What the list begins with: the marks of the last look, to be answered anew. */
  first?: readonly DraftValues[];
  /** The marks of the last look, drawn faintly behind. */
  before?: readonly MapMark[];
}

// The same ones each time, so that what did not change is not drawn again.
const noDrafts: readonly DraftValues[] = [];
const noMarks: readonly MapMark[] = [];

/**
 * The marks of one look at the skin, on the limb map and in a list beside it: one control, and the list alone is enough.
 * The chosen mark is open for typing below the map; all others stay one line. Without JavaScript there are plain rows.
 */
export function MarkEditor({ name, limb, minutes, hint = markHint, first = noDrafts, before = noMarks }: MarkEditorProps) {
  const { formId, state: form } = useContext(FormContext);
  const id = useId();
  const canChange = useHasScripts();
  const told = useOwnUnits();
  const fieldset = useRef<HTMLFieldSetElement>(null);
  const [marks, act] = useMarks(name, first, fieldset);
  const lookedAtMin = useLookedAt(minutes, fieldset);
  const shown = useDeferredValue(marks);
  const geometry = useMemo(() => mapGeometry(limb), [limb]);
  const focusIn = useRef<PanelFocus>(null);
  const { drafts, chosen, removed, unit } = marks;
  const open = drafts.findIndex(({ row }) => row === chosen);
  const openDraft = drafts[open];
  const numbers = numbersOfDrafts(drafts, marks.known);
  const listError = form.errors[name];

  const focusThen = (focus: PanelFocus, action: MarksAction) => {
    focusIn.current = focus;
    act(action);
  };
  // The same function each time, so that a row that did not change is not drawn again.
  const openRow = useCallback(
    (row: number | null, focus: PanelFocus = "heading") => {
      focusIn.current = focus;
      act({ does: "choose", row });
    },
    [act],
  );

  return (
    <>
      <noscript>
        <Rows name={name} label="Marks" one="mark" hint={hint} fields={markFields} first={plain(first)} blank={4} />
      </noscript>
      <fieldset ref={fieldset} id={fieldIdOf(formId, name)} tabIndex={-1} className={styles.marks}>
        <legend>Marks</legend>
        {listError && <p className={styles.error}>{told(listError)}</p>}
        <div className={styles.both}>
          <div className={styles.drawn}>
            <MarkCanvas
              id={id}
              name={name}
              limb={limb}
              geometry={geometry}
              marks={shown}
              lookedAtMin={lookedAtMin}
              before={before}
              act={act}
            />
            {openDraft ? (
              <MarkPanel
                key={openDraft.row}
                id={`${id}-open`}
                mapId={id}
                name={name}
                draft={openDraft}
                number={numbers[open] ?? 0}
                geometry={geometry}
                lookedAtMin={lookedAtMin}
                unit={unit}
                focusIn={focusIn}
                act={act}
                leave={() => {
                  act({ does: "choose", row: null });
                  document.getElementById(`${id}-row-${openDraft.row}`)?.focus();
                }}
              />
            ) : (
              <HowTo />
            )}
          </div>
          <div className={styles.list}>
            <div className={styles.above}>
              <button
                type="button"
                className="quiet"
                data-enter-stops
                onClick={() => focusThen("distanceFromEndMm", { does: "add" })}
              >
                Add a mark
              </button>
              {removed && (
                <p className={styles.removed}>
                  Mark {removed.number} is taken away.{" "}
                  <button
                    key={removed.draft.row}
                    ref={takeFocus}
                    type="button"
                    className="quiet"
                    onClick={() => focusThen("heading", { does: "undo" })}
                  >
                    Undo
                  </button>
                </p>
              )}
            </div>
            <MarkRows
              id={id}
              name={name}
              drafts={drafts}
              numbers={numbers}
              chosen={chosen}
              geometry={geometry}
              lookedAtMin={lookedAtMin}
              unit={unit}
              before={before}
              withInputs={canChange}
              act={act}
              open={openRow}
            />
          </div>
          <div id={`${id}-view`} className={`${styles.words} ${styles.about}`}>
            <p>
              {told(viewWords(limb, geometry))} {limb.trimWords}
              {before.length > 0 && " Dotted: the marks of the last look."}
            </p>
            <MapKey id={id} grades={gradesOf(shown.drafts, lookedAtMin)} trimLine={(limb.trimLine ?? []).length > 1} />
            <p>{hint}</p>
          </div>
        </div>
        <p role="status" className="heard">
          {marks.said}
        </p>
      </fieldset>
    </>
  );
}

const takeFocus: Ref<HTMLButtonElement> = (button) => button?.focus();

const plain = (first: readonly DraftValues[]): Record<string, string>[] =>
  first.map((values) => Object.fromEntries(Object.entries(values)));

/** The marks, with what came back from the last try or from a kept draft. */
function useMarks(name: string, first: readonly DraftValues[], fieldset: RefObject<HTMLFieldSetElement | null>) {
  const { state: form, markNumbers } = useContext(FormContext);
  const lengths = useFieldUnit(`${name}.widthMm`);
  const draftsNow = () =>
    draftsFrom(name, form.values, lengths ? first.map((values) => inUnitOfPerson(values, lengths.first)) : first);
  const [marks, act] = useReducer(marksAfter, null, () =>
    marksFrom(draftsNow(), lengths?.unit === "in" ? "in" : "mm", markNumbers),
  );
  const [answered, setAnswered] = useState(form);
  if (answered !== form) {
    setAnswered(form);
    act({ does: "restore", drafts: draftsNow() });
    const wrong = Object.keys(form.errors).find((key) => key.startsWith(`${name}.`));
    const row = Number(wrong?.slice(name.length + 1).split(".")[0]);
    if (Number.isInteger(row)) act({ does: "choose", row });
  }
  // What hand or keys change is no event of a field: whoever keeps the form's draft hears of it here.
  const { drafts } = marks;
  const known = useRef(drafts);
  useEffect(() => {
    if (known.current === drafts) return;
    known.current = drafts;
    fieldset.current?.dispatchEvent(new Event("input", { bubbles: true }));
  }, [drafts, fieldset]);
  return [marks, act] as const;
}

/** The page gives mm. */
const inUnitOfPerson = (values: DraftValues, show: (value: string) => string): DraftValues =>
  Object.fromEntries(Object.entries(values).map(([field, value]) => [field, field.endsWith("Mm") ? show(value) : value]));

const gradesOf = (drafts: readonly Draft[], lookedAtMin: number | undefined): number[] =>
  drafts.flatMap(({ values }) => gradeSoFar(values, lookedAtMin) ?? []);

/** Stands where the open mark will be. */
const HowTo = () => (
  <div className={styles.words}>
    <p>
      <strong>Press on the map where a mark is, or drag over it for its size.</strong> Or add it to the list.
    </p>
    <p className={styles.keys}>
      Keys, on the mark that is chosen: arrows move it, + and − make it larger and smaller, Alt with arrows changes one side,
      Shift goes farther, Delete takes it away, Page Down goes to the next.
    </p>
  </div>
);

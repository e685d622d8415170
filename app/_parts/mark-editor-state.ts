/** What a person does to the marks of a look, one action at a time. Pure: the same for hand, keys and typing. */
import type { LimbPlace } from "./limb-map-geometry";
import {
  type Draft,
  type DraftValues,
  isNumber,
  type LengthUnit,
  lengthText,
  type MarkFieldName,
  numbersOfDrafts,
  placeOfDraft,
  provisionalMm,
  typedLength,
} from "./mark-draft";
import { aspectOf } from "./mark-words";

export interface MarkSize {
  widthMm: number;
  heightMm: number;
}

export interface MarksState {
  drafts: readonly Draft[];
  /** The row of the mark that is open for typing. */
  chosen: number | null;
  /** The last one taken away, until something else is done to the list. */
  removed: { draft: Draft; at: number; number: number } | null;
  /** The row of the next mark: a number is never used twice, so that an error finds only the mark that it is about. */
  next: number;
  /** In which lengths are typed. */
  unit: LengthUnit;
  /** The numbers that marks have in the record already, by their ids. */
  known: ReadonlyMap<string, number>;
  /** Whether the person did anything yet. */
  touched: boolean;
  /** Said aloud after what only the eye would see. */
  said: string;
}

export type MarksAction =
  | { does: "add"; place?: LimbPlace; size?: MarkSize }
  | { does: "choose"; row: number | null }
  | { does: "type"; row: number; field: MarkFieldName; value: string }
  | { does: "move"; row: number; place: LimbPlace }
  | { does: "resize"; row: number; size: MarkSize }
  | { does: "nudge"; row: number; aroundDeg: number; alongMm: number; reachMm: number }
  | { does: "grow"; row: number; widthMm: number; heightMm: number }
  | { does: "say gone"; row: number }
  | { does: "remove"; row: number }
  | { does: "undo" }
  | { does: "restore"; drafts: readonly Draft[] };

/** Where the focus goes in the panel that opens next; nowhere where the map keeps it. */
export type PanelFocus = "heading" | MarkFieldName | null;

export const marksFrom = (
  drafts: readonly Draft[],
  unit: LengthUnit,
  known: ReadonlyMap<string, number> = new Map(),
): MarksState => ({
  drafts,
  unit,
  known,
  chosen: null,
  removed: null,
  next: Math.max(-1, ...drafts.map(({ row }) => row)) + 1,
  touched: false,
  said: "",
});

export function marksAfter(state: MarksState, action: MarksAction): MarksState {
  switch (action.does) {
    case "add":
      return added(state, action);
    case "choose":
      return state.chosen === action.row ? state : { ...state, chosen: action.row, said: "" };
    case "type":
      return changed(state, action.row, () => ({ [action.field]: action.value }));
    case "move":
      return spoken(
        changed(state, action.row, () => placeText(action.place, state.unit)),
        action.row,
      );
    case "resize":
      return spoken(
        changed(state, action.row, () => sizeText(action.size, state.unit)),
        action.row,
      );
    case "nudge":
      return spoken(
        changed(state, action.row, (values) => nudged(values, action, state.unit)),
        action.row,
      );
    case "grow":
      return spoken(
        changed(state, action.row, (values) => grown(values, action, state.unit)),
        action.row,
      );
    case "say gone":
      return changed(state, action.row, () => goneNow);
    case "remove":
      return removed(state, action.row);
    case "undo":
      return restored(state);
    case "restore":
      return state.touched ? state : anew(state, action.drafts);
  }
}

function anew({ next, unit, known }: MarksState, drafts: readonly Draft[]): MarksState {
  const begun = marksFrom(drafts, unit, known);
  return { ...begun, next: Math.max(next, begun.next) };
}

/** Of a mark that would be added now. */
export const nextNumber = ({ drafts, next, known }: MarksState): number =>
  numbersOfDrafts([...drafts, { row: next, values: {} }], known).at(-1) ?? 1;

function added(state: MarksState, { place, size }: { place?: LimbPlace; size?: MarkSize }): MarksState {
  const values = { ...(place ? placeText(place, state.unit) : {}), ...(size ? sizeText(size, state.unit) : {}) };
  const row = state.next;
  return {
    ...state,
    drafts: [...state.drafts, { row, values }],
    chosen: row,
    next: row + 1,
    removed: null,
    touched: true,
    said: `Mark ${nextNumber(state)} added.`,
  };
}

function changed(state: MarksState, row: number, change: (values: DraftValues) => DraftValues): MarksState {
  return {
    ...state,
    touched: true,
    said: "",
    // A draft that stays the same stays the same object: its row is not drawn again.
    drafts: state.drafts.map((draft) =>
      draft.row === row ? { row, values: { ...draft.values, ...change(draft.values) } } : draft,
    ),
  };
}

/** What moved or grew without typing is said: where it is now, and how large. */
function spoken(state: MarksState, row: number): MarksState {
  const at = state.drafts.findIndex((draft) => draft.row === row);
  const values = state.drafts[at]?.values;
  const place = values && placeOfDraft(values, state.unit);
  if (!place) return state;
  const size = values.widthMm && values.heightMm ? `, ${values.widthMm} by ${values.heightMm} ${state.unit}` : "";
  return {
    ...state,
    said: `Mark ${numbersOfDrafts(state.drafts, state.known)[at]}: ${aspectOf(place.angleDeg)}, ${values.distanceFromEndMm} ${state.unit} from the end, ${values.angleDeg}°${size}`,
  };
}

export const placeText = ({ distanceFromEndMm, angleDeg }: LimbPlace, unit: LengthUnit) => ({
  distanceFromEndMm: lengthText(distanceFromEndMm, unit),
  angleDeg: String(Math.round(angleDeg) % 360),
});

export const sizeText = ({ widthMm, heightMm }: MarkSize, unit: LengthUnit) => ({
  widthMm: lengthText(Math.max(1, widthMm), unit),
  heightMm: lengthText(Math.max(1, heightMm), unit),
});

function nudged(
  values: DraftValues,
  { aroundDeg, alongMm, reachMm }: { aroundDeg: number; alongMm: number; reachMm: number },
  unit: LengthUnit,
): DraftValues {
  const place = placeOfDraft(values, unit);
  if (!place) return {};
  const highest = Math.max(reachMm, place.distanceFromEndMm);
  const distanceFromEndMm = Math.min(Math.max(place.distanceFromEndMm + alongMm, 0), highest);
  return placeText({ distanceFromEndMm, angleDeg: (((place.angleDeg + aroundDeg) % 360) + 360) % 360 }, unit);
}

function grown(values: DraftValues, { widthMm, heightMm }: MarkSize, unit: LengthUnit): DraftValues {
  const [wide, high] = [typedLength(values.widthMm, unit), typedLength(values.heightMm, unit)];
  const more = (size: number | undefined, byMm: number) => Math.min(500, (isNumber(size) ? size : provisionalMm) + byMm);
  return sizeText({ widthMm: more(wide, widthMm), heightMm: more(high, heightMm) }, unit);
}

/** Nothing is seen or felt any more; there is nothing left to press on. */
const goneNow = { strength: "none", blanches: "not tested", firm: "", warm: "", painful: "", broken: "" } as const;

export const isSaidGone = ({ strength, firm, warm, painful, broken, blanches }: DraftValues): boolean =>
  strength === "none" && !firm && !warm && !painful && !broken && blanches !== "no";

function removed(state: MarksState, row: number): MarksState {
  const at = state.drafts.findIndex((draft) => draft.row === row);
  const draft = state.drafts[at];
  const number = numbersOfDrafts(state.drafts, state.known)[at];
  if (!draft || number === undefined) return state;
  return {
    ...state,
    drafts: state.drafts.filter((other) => other !== draft),
    chosen: state.chosen === row ? null : state.chosen,
    removed: { draft, at, number },
    touched: true,
    said: `Mark ${number} removed.`,
  };
}

function restored(state: MarksState): MarksState {
  if (!state.removed) return state;
  const { draft, at, number } = state.removed;
  return {
    ...state,
    drafts: state.drafts.toSpliced(at, 0, draft),
    chosen: draft.row,
    removed: null,
    touched: true,
    said: `Mark ${number} is back.`,
  };
}

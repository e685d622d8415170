/** What stands in the fields of one form at this moment, for whoever draws or counts from it. */
import { sameValues } from "./draft-record";
import { type FormValues, valuesOf } from "./form-state";

export class TypedValues {
  #values: FormValues = {};
  readonly #listeners = new Set<() => void>();

  readonly now = (): FormValues => this.#values;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** Says whether anything is different from before. */
  set(values: FormValues): boolean {
    if (sameValues(values, this.#values)) return false;
    this.#values = values;
    for (const listener of this.#listeners) listener();
    return true;
  }
}

/** Every field by its name; a password is nobody's draft. */
export const valuesInForm = (form: HTMLFormElement): FormValues =>
  Object.fromEntries(Object.entries(valuesOf(new FormData(form))).filter(([name]) => !/password/i.test(name)));

/** The names of the fields that hold something else than the page put there: typed before its scripts ran. */
export function namesTypedInto(form: HTMLFormElement): string[] {
  const names = [...form.elements].filter(holdsOther).map(nameOf);
  return [...new Set(names)].filter((name) => name !== "" && !/password/i.test(name));
}

const nameOf = (control: Element): string => control.getAttribute("name") ?? "";

function holdsOther(control: Element): boolean {
  if (control instanceof HTMLInputElement) {
    if (control.type === "hidden") return false;
    return control.type === "radio" || control.type === "checkbox"
      ? control.checked !== control.defaultChecked
      : control.value !== control.defaultValue;
  }
  if (control instanceof HTMLTextAreaElement) return control.value !== control.defaultValue;
  return control instanceof HTMLSelectElement && isChosenOtherwise(control);
}

/** Where no option is marked as the first choice, the browser begins with the first one. */
function isChosenOtherwise(select: HTMLSelectElement): boolean {
  const begins = [...select.options].findIndex((option) => option.defaultSelected);
  return select.selectedIndex !== Math.max(0, begins);
}

/**
 * Calls back after whatever may have changed the form: typed, pressed, or a row come or gone. Once for all that happens
 * before a frame is painted, and after that frame, so that what is typed is seen first; at once where the page is left
 * or sent.
 */
export function watchForm(form: HTMLFormElement, changed: () => void): () => void {
  let due: number | undefined;
  const settle = () => {
    if (due === undefined) return;
    clearTimeout(due);
    due = undefined;
    changed();
  };
  const later = () => {
    if (due !== undefined) return;
    // The timer alone is enough where the browser paints nothing; a frame that comes sooner goes before it.
    due = window.setTimeout(settle, mostMs);
    requestAnimationFrame(() => window.setTimeout(settle));
  };
  const rows = new MutationObserver(later);
  rows.observe(form, { subtree: true, childList: true, attributes: true, attributeFilter: ["value"] });
  for (const kind of kinds) form.addEventListener(kind, later);
  form.addEventListener("submit", settle, { capture: true });
  window.addEventListener("pagehide", settle);
  document.addEventListener("visibilitychange", settle);
  return () => {
    settle();
    rows.disconnect();
    for (const kind of kinds) form.removeEventListener(kind, later);
    form.removeEventListener("submit", settle, { capture: true });
    window.removeEventListener("pagehide", settle);
    document.removeEventListener("visibilitychange", settle);
  };
}

const mostMs = 100;
const kinds = ["input", "change"] as const;

"use client";

import { type KeyboardEvent, useRef } from "react";

/** Answers of a check by their number: 1 is the first. It chooses, and goes on to the next field. */
export function chooseByNumber(event: KeyboardEvent<HTMLFieldSetElement>): void {
  const radio =
    /^[1-9]$/.test(event.key) && !isCombined(event) ? radiosOf(event.currentTarget)[Number(event.key) - 1] : undefined;
  if (!radio) return;
  event.preventDefault();
  choose(radio);
  goOn(radio);
}

/** How long a 0 may follow a 1 to make it 10. */
const tenWithinMs = 1200;

/** Ratings by their own figures; 1 and then 0 is 10. It stays where it is, because a second figure may follow. */
export function useRateByNumber(): (event: KeyboardEvent<HTMLFieldSetElement>) => void {
  const oneAt = useRef(Number.NEGATIVE_INFINITY);
  return (event) => {
    if (!/^\d$/.test(event.key) || isCombined(event)) return;
    const isTen = event.key === "0" && event.timeStamp - oneAt.current < tenWithinMs;
    oneAt.current = event.key === "1" ? event.timeStamp : Number.NEGATIVE_INFINITY;
    const rating = isTen ? "10" : event.key;
    const radio = radiosOf(event.currentTarget).find(({ value }) => value === rating);
    if (!radio) return;
    event.preventDefault();
    choose(radio);
  };
}

/**
 * In a long form Enter goes on to the next field, as people who type numbers expect, and does not save half of it.
 * Ctrl (or ⌘) and Enter save.
 */
export function moveOnWithEnter(event: KeyboardEvent<HTMLFormElement>): void {
  const from = event.target;
  if (event.key !== "Enter" || event.defaultPrevented || event.nativeEvent.isComposing || !(from instanceof HTMLElement)) return;
  if (event.ctrlKey || event.metaKey) {
    event.preventDefault();
    event.currentTarget.requestSubmit();
    return;
  }
  if (!(from instanceof HTMLInputElement) || event.altKey || event.shiftKey) return;
  event.preventDefault();
  goOn(from);
}

const isCombined = ({ ctrlKey, metaKey, altKey }: KeyboardEvent): boolean => ctrlKey || metaKey || altKey;

const radiosOf = (group: Element): HTMLInputElement[] => [...group.querySelectorAll<HTMLInputElement>('input[type="radio"]')];

function choose(radio: HTMLInputElement): void {
  radio.click();
  radio.focus();
}

/** The next field after this one that can be seen, or a button that saves or adds a row. A group of radios is one field. */
function goOn(from: HTMLInputElement): void {
  const controls = [...(from.form?.elements ?? [])];
  const next = controls.slice(controls.indexOf(from) + 1).find((control) => isField(control) && !isSameGroup(control, from));
  if (!(next instanceof HTMLElement)) return;
  const chosen = next instanceof HTMLInputElement && next.type === "radio" ? chosenBeside(next) : next;
  chosen.focus();
  if (chosen instanceof HTMLInputElement && chosen.type === "text") chosen.select();
}

function isField(control: Element): boolean {
  // What the Tab key passes over is passed over here as well.
  if (control.getClientRects().length === 0 || control.matches(":disabled, [tabindex='-1']")) return false;
  if (control instanceof HTMLInputElement) return control.type !== "hidden";
  if (control instanceof HTMLButtonElement) return control.type === "submit" || control.dataset.enterStops !== undefined;
  // A list that has its choice already, such as the movement of a row, is not stopped at.
  return control instanceof HTMLSelectElement ? control.value === "" : control instanceof HTMLTextAreaElement;
}

const isSameGroup = (control: Element, radio: HTMLInputElement): boolean =>
  radio.type === "radio" && control instanceof HTMLInputElement && control.type === "radio" && control.name === radio.name;

function chosenBeside(radio: HTMLInputElement): HTMLInputElement {
  const group = [...(radio.form?.elements ?? [])].filter(
    (control): control is HTMLInputElement =>
      control instanceof HTMLInputElement && control.type === "radio" && control.name === radio.name,
  );
  return group.find(({ checked }) => checked) ?? radio;
}

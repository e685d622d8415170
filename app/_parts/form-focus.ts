"use client";

import { type RefObject, useLayoutEffect, useRef } from "react";

interface Place {
  name: string;
  value: string;
  from: number | null;
  to: number | null;
}

/** Where fields are begun anew under somebody's hands, the new field of the same name takes the focus, with its caret. */
export function useFocusKept(form: RefObject<HTMLFormElement | null>, begun: number): void {
  const place = useRef<Place | null>(null);
  const last = useRef(begun);

  // Before the old fields go there is no effect to ask them: the last place is remembered as it changes.
  useLayoutEffect(() => {
    const element = form.current;
    if (!element) return undefined;
    const remember = () => {
      place.current = placeIn(element);
    };
    remember();
    document.addEventListener("selectionchange", remember);
    element.addEventListener("focusin", remember);
    return () => {
      document.removeEventListener("selectionchange", remember);
      element.removeEventListener("focusin", remember);
    };
  }, [form]);

  useLayoutEffect(() => {
    if (last.current === begun) return;
    last.current = begun;
    const isLost = document.activeElement === null || document.activeElement === document.body;
    if (form.current && place.current && isLost) takePlace(form.current, place.current);
  }, [begun, form]);
}

function placeIn(form: HTMLFormElement): Place | null {
  const at = document.activeElement;
  if (at === null || at === document.body) return null;
  if (!form.contains(at)) return null;
  const name = at.getAttribute("name");
  if (name === null) return null;
  const isText = at instanceof HTMLTextAreaElement || (at instanceof HTMLInputElement && at.type === "text");
  return {
    name,
    value: at.getAttribute("value") ?? "",
    from: isText ? at.selectionStart : null,
    to: isText ? at.selectionEnd : null,
  };
}

function takePlace(form: HTMLFormElement, { name, value, from, to }: Place): void {
  const same = [...form.elements].filter((control) => control.getAttribute("name") === name);
  const control = same.find((one) => same.length === 1 || one.getAttribute("value") === value) ?? same[0];
  if (!(control instanceof HTMLElement)) return;
  control.focus({ preventScroll: true });
  if (from !== null && (control instanceof HTMLInputElement || control instanceof HTMLTextAreaElement))
    control.setSelectionRange(from, to);
}

"use client";

import { useEffect, useSyncExternalStore } from "react";
import styles from "./frame.module.css";

/** Kept on the device: a key of one letter must be possible to turn off (WCAG 2.2, 2.1.4), since speech input can type it. */
const storageKey = "find-key";
const changed = "find-key-changed";

/** Makes `/` go to the find field, and shows that it does. */
export function FindKey({ fieldId, className }: { fieldId: string; className: string | undefined }) {
  const on = useFindKey();

  useEffect(() => {
    if (!on) return;
    const press = (event: KeyboardEvent) => {
      if (event.key !== "/" || event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
      event.preventDefault();
      document.getElementById(fieldId)?.focus();
    };
    window.addEventListener("keydown", press);
    return () => window.removeEventListener("keydown", press);
  }, [on, fieldId]);

  return on ? (
    <span className={className} aria-hidden="true">
      /
    </span>
  ) : null;
}

export function FindKeySwitch() {
  const on = useFindKey();
  const turn = () => {
    localStorage.setItem(storageKey, on ? "off" : "on");
    window.dispatchEvent(new Event(changed));
  };
  return (
    <button type="button" className={styles.out} onClick={turn}>
      {on ? "Turn off the / key for find" : "Turn on the / key for find"}
    </button>
  );
}

const useFindKey = (): boolean =>
  useSyncExternalStore(
    (tell) => {
      window.addEventListener(changed, tell);
      window.addEventListener("storage", tell);
      return () => {
        window.removeEventListener(changed, tell);
        window.removeEventListener("storage", tell);
      };
    },
    () => localStorage.getItem(storageKey) !== "off",
    () => true,
  );

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && (target.isContentEditable || target.matches("input, textarea, select"));

"use client";

import { useSyncExternalStore } from "react";
import styles from "./draft-line.module.css";
import type { DraftOfForm, DraftTold } from "./draft-of-form";

/**
 * Where what is typed is kept, and the way to be rid of it.
 *
 * The words are said aloud when they change; the time stands beside them for the eye, and does not interrupt.
 */
export function DraftLine({ draft: { told, discard, undo, takeUpElsewhere } }: { draft: DraftOfForm }) {
  const hasScripts = useSyncExternalStore(
    () => () => undefined,
    () => true,
    () => false,
  );
  const canUndo = told.discarded !== undefined;
  const isWarning = told.refused !== undefined || told.elsewhere !== undefined;
  return (
    <div className={styles.line} data-draft-line="">
      <p role="status" className={isWarning ? styles.warning : undefined}>
        {hasScripts && words(told)}
      </p>
      {(canUndo || told.keptAt) && (
        // One button that changes its word keeps the focus where it was.
        <button type="button" className={styles.act} onClick={canUndo ? undo : discard}>
          {canUndo ? "Undo" : "Discard it"}
          {!canUndo && <span className="heard">, kept at {told.keptAt}</span>}
        </button>
      )}
      {typeof told.elsewhere === "object" && (
        <button type="button" className={styles.act} onClick={takeUpElsewhere}>
          Take up what was typed there
        </button>
      )}
    </div>
  );
}

function words({ keptAt, refused, takenUp, isOwn, elsewhere, discarded }: DraftTold) {
  if (refused === "full")
    return "Not kept on this device: its store is full. Save before you leave this page, or what you typed is lost.";
  if (refused === "forbidden")
    return "Not kept on this device: this browser keeps nothing for this page. Save before you leave it, or what you typed is lost.";
  if (elsewhere === "gone")
    return "Saved or discarded in another tab. What stands here is kept no longer; look at the record before you save it from here.";
  if (elsewhere)
    return (
      <>
        This form was typed into in another tab{at(elsewhere.when)}. What stands here is as it was before; if you type on here, it
        takes the other’s place on this device.
      </>
    );
  if (discarded) return "Discarded.";
  if (keptAt && isOwn)
    return (
      <>
        Kept on this device{at(keptAt)}.{takenUp && " It began as a draft from another tab."}
      </>
    );
  if (takenUp?.from === "another tab") return <>Taken up from another tab: a draft kept on this device{at(takenUp.when)}.</>;
  if (takenUp) return <>Taken up again: what was kept on this device{at(takenUp.when)}.</>;
  if (keptAt) return <>Kept on this device{at(keptAt)}.</>;
  return "What you type is kept on this device as you go.";
}

/** Seen and not heard: it changes every minute. */
const at = (when: string) => <span aria-hidden="true"> at {when}</span>;

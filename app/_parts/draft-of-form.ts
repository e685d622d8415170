"use client";

import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from "react";
import { type Draft, keptWhen, laidOver, nameInStore, readDraft, readGone, sameValues, writeDraft } from "./draft-record";
import { deviceStore, dropDraft, keepDraft, loadDraft, newUuid, type Refused, thisTab } from "./draft-store";
import { dropFromVault, keepInVault, readVault } from "./draft-vault";
import type { FormValues } from "./form-state";
import { namesTypedInto, type TypedValues, valuesInForm, watchForm } from "./typed-values";

/** What the line above the form says. */
export interface DraftTold {
  /** "10:42"; nothing as long as nothing was typed. */
  keptAt?: string | undefined;
  refused?: Refused | undefined;
  /** The form began with what was typed before: in this tab, or in another one. */
  takenUp?: { when: string; from: "this tab" | "another tab" } | undefined;
  /** Something was typed here since. */
  isOwn?: boolean;
  /** Another tab has the same form open and was typed into, or has saved or discarded it. */
  elsewhere?: { when: string; draft: Draft } | "gone" | undefined;
  /** What was discarded, as long as it can be brought back. */
  discarded?: FormValues | undefined;
}

export interface DraftOfForm {
  told: DraftTold;
  discard(): void;
  undo(): void;
  takeUpElsewhere(): void;
  /** The save went through: the device forgets. */
  saved(): void;
}

interface DraftOptions {
  draftKey: string | undefined;
  form: RefObject<HTMLFormElement | null>;
  typed: TypedValues;
  /** How often the fields were begun anew. */
  begun: number;
  /** The page came back filled from the server, or has been sent: that goes before a draft. */
  isFilled: boolean;
  begin(values: FormValues, recordId?: string): void;
}

/**
 * Keeps what is typed into a form on the device, at every change and at once, and brings it back.
 *
 * It is brought back after hydration, before the first painting: the page itself is the same for a form with and
 * without a draft. What was typed while the page's scripts were on their way is laid over the draft.
 */
export function useDraftOfForm({ draftKey, form, typed, begun, isFilled, begin }: DraftOptions): DraftOfForm {
  const [told, setTold] = useState<DraftTold>({});
  /** Nobody typed yet, or it is saved: what the page itself does to its fields makes no draft. */
  const isKeeping = useRef(false);
  const lastKept = useRef<FormValues | null>(null);
  /** Something was typed that is not kept yet, though the fields are begun anew. */
  const isOwed = useRef(false);

  // Once, at the beginning: the fields are asked what they hold, and given what the device holds.
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is typed later is followed below, not begun with.
  useLayoutEffect(() => {
    if (!form.current) return;
    const early = namesTypedInto(form.current);
    const values = valuesInForm(form.current);
    typed.set(values);
    if (draftKey === undefined) return;
    const [store, now] = [deviceStore(), Date.now()];
    const kept = isFilled ? undefined : loadDraft(store, draftKey, now);
    const takeUp = (draft: Draft, since: FormValues, names: readonly string[]) => {
      const when = keptWhen(draft.keptAt, now);
      setTold({ keptAt: when, takenUp: { when, from: draft.tab === thisTab() ? "this tab" : "another tab" } });
      isOwed.current = names.length > 0;
      begin(laidOver(draft.values, since, names));
    };
    if (kept) takeUp(kept, values, early);
    else if (!store) setTold({ refused: "forbidden" });
    isOwed.current = early.length > 0;
    if (early.length > 0 || isFilled) isKeeping.current = true;
    if (isFilled) return;
    // After a crash of the whole browser the second store may know more than the first.
    void readVault(draftKey).then((text) => {
      const draft = readDraft(text ?? null, now);
      const goneAt = readGone(text, now);
      if (!form.current) return;
      if (draft && draft.keptAt > (kept?.keptAt ?? 0) && draft.keptAt < now)
        takeUp(draft, valuesInForm(form.current), namesTypedInto(form.current));
      if (kept && goneAt !== undefined && goneAt >= kept.keptAt && !isKeeping.current) {
        dropDraft(store, draftKey);
        setTold({});
        begin({});
      }
    });
  }, [draftKey]);

  useEffect(() => {
    const element = form.current;
    if (!element) return undefined;
    const keep = () => {
      const values = valuesInForm(element);
      typed.set(values);
      if (draftKey === undefined || !isKeeping.current) return;
      if (lastKept.current && sameValues(values, lastKept.current)) return;
      lastKept.current = values;
      isOwed.current = false;
      const keptAt = Date.now();
      const draft = { values, keptAt, tab: thisTab(), path: window.location.pathname, title: titleOfPage() };
      const refused = keepDraft(deviceStore(), draftKey, draft);
      keepInVault(draftKey, writeDraft(draft));
      setTold((before) => afterKeeping(before, refused, keptWhen(keptAt, keptAt)));
    };
    const begins = (event: Event) => {
      if (event.target instanceof Element && event.target.closest("[data-draft-line]")) return;
      isKeeping.current = true;
    };
    for (const kind of hands) element.addEventListener(kind, begins, { capture: true });
    const unwatch = watchForm(element, keep);
    // What was typed before, or between hydration and now.
    keep();
    return () => {
      for (const kind of hands) element.removeEventListener(kind, begins, { capture: true });
      unwatch();
    };
  }, [draftKey, form, typed]);

  // New fields hold what they were begun with: that is no change of anybody's.
  // biome-ignore lint/correctness/useExhaustiveDependencies: `begun` says that the fields are new ones.
  useLayoutEffect(() => {
    if (!form.current) return;
    const values = valuesInForm(form.current);
    typed.set(values);
    if (!isOwed.current) lastKept.current = values;
  }, [begun, form, typed]);

  useEffect(() => {
    if (draftKey === undefined) return undefined;
    const hear = ({ key, newValue }: StorageEvent) => {
      if (key !== null && key !== nameInStore(draftKey)) return;
      const now = Date.now();
      const draft = readDraft(newValue, now);
      if (draft && sameValues(draft.values, typed.now())) return;
      setTold((before) => {
        if (draft) return { ...before, elsewhere: { when: keptWhen(draft.keptAt, now), draft } };
        return before.keptAt === undefined ? before : { ...before, elsewhere: "gone" };
      });
    };
    window.addEventListener("storage", hear);
    return () => window.removeEventListener("storage", hear);
  }, [draftKey, typed]);

  const bringBack = (values: FormValues, takenUp?: DraftTold["takenUp"]) => {
    if (draftKey === undefined) return;
    const keptAt = Date.now();
    const draft = { values, keptAt, tab: thisTab(), path: window.location.pathname, title: titleOfPage() };
    const refused = keepDraft(deviceStore(), draftKey, draft);
    keepInVault(draftKey, writeDraft(draft));
    setTold({ keptAt: keptWhen(keptAt, keptAt), refused, takenUp });
    begin(values);
  };

  return {
    told,
    discard: () => {
      if (draftKey === undefined) return;
      isKeeping.current = false;
      dropDraft(deviceStore(), draftKey);
      void dropFromVault(draftKey, Date.now());
      setTold({ discarded: typed.now() });
      begin({}, newUuid());
    },
    undo: () => {
      if (told.discarded) bringBack(told.discarded);
    },
    takeUpElsewhere: () => {
      if (typeof told.elsewhere !== "object") return;
      bringBack(told.elsewhere.draft.values, { when: told.elsewhere.when, from: "another tab" });
    },
    saved: () => {
      if (draftKey === undefined) return;
      isKeeping.current = false;
      dropDraft(deviceStore(), draftKey);
      void dropFromVault(draftKey, Date.now());
      setTold({});
    },
  };
}

/** What a hand does first. */
const hands = ["keydown", "pointerdown", "input", "change"] as const;

const titleOfPage = (): string => document.querySelector("h1")?.textContent ?? document.title;

/** The line is drawn anew only where it says something else: not at every key. */
function afterKeeping(before: DraftTold, refused: Refused | undefined, keptAt: string): DraftTold {
  const takenUp = before.takenUp?.from === "another tab" ? before.takenUp : undefined;
  const isSame =
    before.keptAt === keptAt &&
    before.refused === refused &&
    before.isOwn === true &&
    before.takenUp === takenUp &&
    !before.elsewhere &&
    !before.discarded;
  return isSame ? before : { keptAt, refused, takenUp, isOwn: true };
}

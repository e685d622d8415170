"use client";

import { type FormEvent, useEffect, useRef, useState } from "react";
import { type Draft, keptWhen } from "./draft-record";
import styles from "./draft-sign-out.module.css";
import { deviceStore, draftsBy, dropDraftsBy, dropOldDrafts } from "./draft-store";
import { clearVault } from "./draft-vault";

interface SignOutProps {
  accountId: string;
  className: string | undefined;
  signOut: (formData: FormData) => Promise<void>;
}

/** Signs out. What this account has not saved on this device goes with it, and that is asked about first. */
export function SignOut({ accountId, className, signOut }: SignOutProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const form = useRef<HTMLFormElement>(null);
  const [drafts, setDrafts] = useState<readonly Draft[]>([]);
  const [unsent, setUnsent] = useState(0);
  const isAsked = useRef(false);

  // Every page of a signed-in person clears away what is too old, whoever left it.
  useEffect(() => {
    dropOldDrafts(deviceStore(), Date.now());
    void clearVault(Date.now());
  }, []);

  function askFirst(event: FormEvent) {
    if (isAsked.current) return;
    event.preventDefault();
    void ask();
  }

  async function ask() {
    const found = draftsBy(deviceStore(), accountId, Date.now());
    const left = await leaveLiveTrials();
    if (found.length === 0 && left === 0) return go();
    setDrafts(found);
    setUnsent(left);
    dialog.current?.showModal();
  }

  async function discardAndGo() {
    dropDraftsBy(deviceStore(), accountId);
    await clearVault(Date.now(), accountId);
    dialog.current?.close();
    go();
  }

  function go() {
    isAsked.current = true;
    form.current?.requestSubmit();
  }

  return (
    <>
      <form action={signOut} ref={form} onSubmit={askFirst}>
        <button type="submit" className={className}>
          Sign out
        </button>
      </form>
      <dialog ref={dialog} className={styles.dialog} aria-labelledby="sign-out-title">
        <h2 id="sign-out-title">
          {drafts.length === 0
            ? "Not all is sent"
            : `${drafts.length === 1 ? "One form is" : `${drafts.length} forms are`} not saved`}
        </h2>
        {unsent > 0 && (
          <p>
            {unsent === 1 ? "One entry" : `${unsent} entries`} of a wear trial {unsent === 1 ? "is" : "are"} not sent to the
            clinic yet. They stay on this device, and are sent when the trial is opened here again by somebody who may record it.
          </p>
        )}
        {drafts.length > 0 && (
          <p>What was typed is kept on this device only. Signing out discards it, so that nobody else finds it here.</p>
        )}
        <ul>
          {drafts.map(({ path, title, keptAt }) => (
            <li key={`${path} ${title}`}>
              <a href={path}>{title}</a>, typed at {keptWhen(keptAt, Date.now())}
            </li>
          ))}
        </ul>
        <div className={styles.ways}>
          <button type="button" onClick={() => dialog.current?.close()}>
            Stay signed in
          </button>
          <button type="button" className="stop" onClick={discardAndGo}>
            {drafts.length === 0 ? "Sign out" : "Discard and sign out"}
          </button>
        </div>
      </dialog>
    </>
  );
}

/** What the server has of live trials goes from the device. @returns how much is still to be sent */
async function leaveLiveTrials(): Promise<number> {
  try {
    const { forgetSentByAccounts, openStore, unsentByAccounts } = await import("@/app/live/_device/store");
    const db = await openStore();
    await forgetSentByAccounts(db);
    const unsent = await unsentByAccounts(db);
    db.close();
    return unsent;
  } catch {
    // No store, or no network for its code: nothing is known of any trial here.
    return 0;
  }
}

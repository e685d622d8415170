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

  // Every page of a signed-in person clears away what is too old, whoever left it.
  useEffect(() => {
    dropOldDrafts(deviceStore(), Date.now());
    void clearVault(Date.now());
  }, []);

  function askFirst(event: FormEvent) {
    const found = draftsBy(deviceStore(), accountId, Date.now());
    if (found.length === 0) return;
    event.preventDefault();
    setDrafts(found);
    dialog.current?.showModal();
  }

  async function discardAndGo() {
    dropDraftsBy(deviceStore(), accountId);
    await clearVault(Date.now(), accountId);
    dialog.current?.close();
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
        <h2 id="sign-out-title">{drafts.length === 1 ? "One form is" : `${drafts.length} forms are`} not saved</h2>
        <p>What was typed is kept on this device only. Signing out discards it, so that nobody else finds it here.</p>
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
            Discard and sign out
          </button>
        </div>
      </dialog>
    </>
  );
}

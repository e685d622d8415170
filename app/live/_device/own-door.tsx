import { type FormEvent, useEffect, useRef, useState } from "react";
import styles from "./live.module.css";
import { openLink } from "./server";
import type { DeviceStore } from "./store";

interface OwnDoorProps {
  db: DeviceStore | null;
  token: string;
  opened: (trial: { trialId: string; pass: string }) => void;
}

/** Before anything is told: the year of birth. A device on which the link was opened goes on without asking, also offline. */
export function OwnDoor({ db, token, opened }: OwnDoorProps) {
  const [isKnown, setKnown] = useState<boolean | null>(null);
  const [wrong, setWrong] = useState("");
  const [isAsking, setAsking] = useState(false);
  const field = useRef<HTMLInputElement>(null);

  useEffect(() => {
    const known = db?.get("links", token) ?? Promise.resolve(undefined);
    void known
      .catch(() => undefined)
      .then((link) => {
        setKnown(link !== undefined);
        if (link) opened(link);
      });
  }, [db, token, opened]);

  async function open(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const year = field.current?.value.trim() ?? "";
    if (!/^(19|20)\d\d$/.test(year)) {
      setWrong("Give the year with four figures, as 1985.");
      field.current?.focus();
      return;
    }
    setAsking(true);
    const told = await openLink(token, year);
    setAsking(false);
    if ("answer" in told) {
      await db?.put("links", told.answer, token).catch(() => undefined);
      opened(told.answer);
      return;
    }
    setWrong(told.failed === "offline" ? "No network. Try again when you are online." : told.why);
    field.current?.focus();
  }

  if (isKnown !== false) return <main className={styles.page} aria-busy="true" />;
  return (
    <main className={styles.page}>
      <h1>Your wear trial</h1>
      <p>Your clinic sent you this link to try your new socket. First, so that nobody else opens it:</p>
      <form onSubmit={open} noValidate className={styles.door}>
        <label htmlFor="year">In which year was the person born who wears the socket?</label>
        <input
          ref={field}
          id="year"
          type="text"
          inputMode="numeric"
          maxLength={4}
          autoComplete="off"
          aria-describedby="year-wrong"
          aria-invalid={wrong !== "" || undefined}
        />
        <p id="year-wrong" role="alert" className={styles.wrong}>
          {wrong}
        </p>
        <button type="submit" disabled={isAsking}>
          Open
        </button>
      </form>
    </main>
  );
}

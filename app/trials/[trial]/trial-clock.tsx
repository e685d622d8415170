"use client";

import { useEffect, useState } from "react";
import styles from "./trial.module.css";

interface TrialClockProps {
  wornMinutes: number;
  plannedMinutes: number;
  /** When the next check-in is due, ISO 8601. */
  dueAt: string | null;
  /** The instant for which the two above were worked out. */
  asOf: string;
}

/** Minutes worn and to go, going on from what the server worked out. The time that passes is taken from a clock that nobody can set. */
export function TrialClock({ wornMinutes, plannedMinutes, dueAt, asOf }: TrialClockProps) {
  const [passedMs, setPassedMs] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: figures for another instant count from their own.
  useEffect(() => {
    const start = performance.now();
    setPassedMs(0);
    const timer = setInterval(() => setPassedMs(performance.now() - start), 1000);
    return () => clearInterval(timer);
  }, [asOf]);
  const worn = wornMinutes + passedMs / 60_000;
  const minutes = Math.floor(worn);
  const seconds = Math.floor((worn - minutes) * 60);
  const dueInMs = dueAt === null ? null : Date.parse(dueAt) - Date.parse(asOf) - passedMs;
  return (
    <div className={styles.clock}>
      <p>
        <b role="timer" aria-label="worn">
          {minutes}:{String(seconds).padStart(2, "0")}
        </b>
        <br />
        <span className="soft">worn, of {plannedMinutes} minutes</span>
      </p>
      {dueInMs !== null && (
        <p className={styles.due} role="status">
          <strong>{dueInMs <= 0 ? "Check-in due now" : `Check-in due in ${Math.ceil(dueInMs / 60_000)} min`}</strong>
        </p>
      )}
      <progress max={plannedMinutes} value={Math.min(worn, plannedMinutes)} aria-label="Time worn" />
    </div>
  );
}

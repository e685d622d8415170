import { useEffect, useRef, useState } from "react";
import type { FeelingKind } from "@/lib/fit/words";
import { keepAwake, sayAloud, shake } from "./alerts";
import { CheckIn } from "./check-in";
import styles from "./live.module.css";
import type { StageProps } from "./stage-props";
import { StopTrial } from "./stop-trial";
import { WhoToCall } from "./who-to-call";

/** While the socket is worn: the clock, the check-in, and the way to stop, which is always in reach. */
export function Running({ device, trial, stand, nowMs, isOwn }: StageProps) {
  const isPaused = stand.state === "paused";
  const dueMs = stand.nextCheckInDueAt === null ? null : Date.parse(stand.nextCheckInDueAt) - nowMs;
  const isDue = dueMs !== null && dueMs <= 0;
  const isOver = !isPaused && stand.minutesToGo <= 0;
  useEffect(keepAwake, []);
  const [isLoud, setLoud] = useLoud();
  useCall(
    isOver ? "The time is up. Check in once more, then end the trial." : isDue ? "Check in now. How does it feel?" : null,
    isLoud,
  );
  const alarms = stand.reasons.filter(
    ({ about, state }) => (about === "pain" && state === "forbids") || (about === "feelings" && state === "not met"),
  );
  const lastFelt = stand.checkIns.at(-1)?.feelings.some(({ kind }) => warnings.includes(kind)) ?? false;
  const alarmed = useRef<HTMLParagraphElement>(null);
  const alarmWhy = alarms.length === 0 ? undefined : alarms.map(({ why }) => why).join(" ");
  // Who pressed further down must not overlook it.
  useEffect(() => {
    if (alarmWhy === undefined) return;
    alarmed.current?.scrollIntoView({ block: "center" });
    shake([600, 200, 600]);
    sayAloud("Stop the trial now.");
  }, [alarmWhy]);
  return (
    <>
      <section className={styles.clock} aria-label="Time">
        <p>
          <b role="timer" aria-label="worn" className={styles.figures}>
            {clockText(stand.wornMinutes)}
          </b>
          <span>worn</span>
        </p>
        <p>
          <b className={styles.figures}>{clockText(stand.minutesToGo)}</b>
          <span>to go, of {trial.plan.minutes} minutes</span>
        </p>
        <progress max={trial.plan.minutes} value={Math.min(stand.wornMinutes, trial.plan.minutes)} aria-label="Time worn" />
        <p role="status" className={`${styles.due} ${isDue || isOver ? styles.dueNow : ""}`}>
          {isPaused
            ? "Paused: this time does not count. Take the socket off if the break is long."
            : isOver
              ? "The time is up. Check in once more, then end the trial."
              : isDue
                ? "Check in now."
                : dueMs === null
                  ? ""
                  : `Next check-in in ${Math.ceil(dueMs / 60_000)} min.`}
        </p>
      </section>
      {alarmWhy === undefined && lastFelt && (
        <p role="alert" className={styles.next}>
          Numb, tingling or cold: move the limb and feel again. <strong>If it stays, press “Stop the trial”.</strong>
        </p>
      )}
      {alarmWhy !== undefined && (
        <p ref={alarmed} role="alert" className={styles.alarm}>
          <strong>Stop the trial now.</strong> {alarmWhy} Press “Stop the trial” below, take the socket off, look at the skin, and
          call <WhoToCall clinic={trial.clinic} />.
        </p>
      )}
      {isPaused ? (
        <button
          type="button"
          className={alarmWhy === undefined ? styles.large : "quiet"}
          onClick={() => void device.press({ kind: "resumed" })}
        >
          Go on
        </button>
      ) : (
        <CheckIn device={device} checkIns={stand.checkIns.length} isOwn={isOwn} />
      )}
      <div className={styles.ways}>
        {!isPaused && (
          <button type="button" className="quiet" onClick={() => void device.press({ kind: "paused" })}>
            Pause
          </button>
        )}
        <EndTrial isOver={isOver} end={() => void device.press({ kind: "ended" })} />
        <label className={styles.loud}>
          <input type="checkbox" checked={isLoud} onChange={(event) => setLoud(event.target.checked)} /> say it aloud when a
          check-in is due
        </label>
      </div>
      <StopTrial device={device} />
    </>
  );
}

/** Signs that may pass, or may be the first of a stop. */
const warnings: readonly FeelingKind[] = ["numbness", "tingling", "cold"];

/** An early end is asked about: it cannot be taken back. */
function EndTrial({ isOver, end }: { isOver: boolean; end: () => void }) {
  const [isAsked, setAsked] = useState(false);
  if (isOver)
    return (
      <button type="button" onClick={end}>
        End the trial
      </button>
    );
  if (!isAsked)
    return (
      <button type="button" className="quiet" onClick={() => setAsked(true)}>
        End the trial early
      </button>
    );
  return (
    <>
      <button type="button" onClick={() => setAsked(false)}>
        Go on with the trial
      </button>
      <button type="button" className="quiet" onClick={end}>
        Yes, end it now
      </button>
    </>
  );
}

/** "7:05" */
function clockText(minutes: number): string {
  const seconds = Math.max(0, Math.floor(minutes * 60));
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}

const repeatMs = 60_000;

/** Calls when something is due, and again each minute until it is done. */
function useCall(words: string | null, isLoud: boolean): void {
  const loud = useRef(isLoud);
  loud.current = isLoud;
  useEffect(() => {
    if (words === null) return undefined;
    const call = () => {
      shake();
      if (loud.current) sayAloud(words);
    };
    call();
    const again = setInterval(call, repeatMs);
    return () => clearInterval(again);
  }, [words]);
}

const loudName = "fitting-ledger-live-quiet";

/** On until somebody turns it off on this device. */
function useLoud() {
  const [isLoud, setLoud] = useState(() => {
    try {
      return window.localStorage.getItem(loudName) === null;
    } catch {
      return true;
    }
  });
  const set = (loud: boolean) => {
    setLoud(loud);
    try {
      if (loud) window.localStorage.removeItem(loudName);
      else window.localStorage.setItem(loudName, "yes");
    } catch {
      // It holds until the page is closed.
    }
  };
  return [isLoud, set] as const;
}

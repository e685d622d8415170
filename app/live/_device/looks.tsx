import { useEffect, useRef, useState } from "react";
import type { Inspection } from "@/lib/fit/bundle";
import { sayAloud, shake } from "./alerts";
import styles from "./live.module.css";
import { LookOnMap } from "./look-on-map";
import { LookPlain } from "./look-plain";
import { lookMinutes, looksStand } from "./looks-due";
import type { StageProps } from "./stage-props";
import { WhoToCall } from "./who-to-call";

type LooksProps = StageProps & { looks: readonly Inspection[]; offAtMs: number };

/** The looks at the skin, each due on a clock, until the marks are gone or somebody has to be called. */
export function Looks(props: LooksProps) {
  const { trial, looks, offAtMs, nowMs } = props;
  const stand = looksStand(looks);
  const sinceMs = Math.max(0, nowMs - offAtMs);
  const dueInMs = stand.now === "due" ? stand.atMinute * 60_000 - sinceMs : null;
  const isDue = dueInMs !== null && dueInMs <= 0;
  useEffect(() => {
    if (!isDue) return;
    shake();
    sayAloud("Look at the skin now.");
  }, [isDue]);
  const top = useRef<HTMLElement>(null);
  const count = looks.length;
  const [seen] = useState(count);
  // What a look came to stands above the form in which it was entered.
  useEffect(() => {
    if (count > seen) top.current?.scrollIntoView({ block: "start" });
  }, [count, seen]);
  return (
    <section ref={top} aria-label="Looks at the skin" className={styles.looks}>
      <h2>The skin, {Math.floor(sinceMs / 60_000)} minutes after the socket came off</h2>
      {count > seen && <p role="status">The look is saved.</p>}
      <ol className={styles.steps}>
        {lookMinutes.map((minute) => {
          const seen = looks.find(({ minutesAfterDoffing }) => answers(minutesAfterDoffing) === minute);
          return (
            <li key={minute}>
              {minute === 0 ? "at once" : `${minute} min`}: {seen ? foundWords(seen) : stand.now === "due" ? "to come" : "–"}
            </li>
          );
        })}
      </ol>
      {stand.now === "call" && (
        <p role="alert" className={styles.alarm}>
          <strong>
            Call <WhoToCall clinic={trial.clinic} /> now, and a doctor.
          </strong>{" "}
          {stand.why} Do not put the socket on again until the prosthetist says so.
        </p>
      )}
      {stand.now === "late" && (
        <p role="alert" className={styles.alarm}>
          <strong>
            Call <WhoToCall clinic={trial.clinic} />.
          </strong>{" "}
          Marks are still there after 20 minutes. Do not put the socket on again until the prosthetist says so.
        </p>
      )}
      {stand.now === "gone" && (
        <p className={styles.next}>
          <strong>Nothing is left to see. The trial is done.</strong> The prosthetist looks at all of it and decides. Do not wear
          the socket before that.
        </p>
      )}
      {stand.now === "due" && (
        <p role="status" className={`${styles.due} ${isDue ? styles.dueNow : ""}`}>
          {isDue ? "Look at the skin now." : `Next look in ${waitText(dueInMs ?? 0)}.`}
        </p>
      )}
      {stand.now === "due" ? <Form {...props} minutes={sinceMs / 60_000} /> : <OneMore {...props} minutes={sinceMs / 60_000} />}
    </section>
  );
}

/** A mark can be looked at again at any time. */
function OneMore(props: LooksProps & { minutes: number }) {
  return (
    <details>
      <summary>Look once more</summary>
      <Form {...props} />
    </details>
  );
}

function Form(props: LooksProps & { minutes: number }) {
  const { device, looks, isOwn, trial, minutes } = props;
  // A new form after each look; the minutes are those of the moment at which it is saved.
  const [times, setTimes] = useState(0);
  const since = useRef(minutes);
  since.current = minutes;
  const save = (look: { marks: Record<string, unknown>[]; noMarks: boolean; note?: string }) => {
    void device.look({ ...look, minutesAfterDoffing: Math.round(since.current * 10) / 10 });
    setTimes(times + 1);
  };
  const last = looks.at(-1);
  return isOwn ? (
    <LookPlain key={times} trial={trial} last={last} save={save} />
  ) : (
    <LookOnMap key={times} trial={trial} last={last} minutes={minutes} save={save} />
  );
}

/** The time on the clock that a look stands for: the latest that had come. */
const answers = (minutes: number): number => lookMinutes.findLast((minute) => minutes >= minute - 1) ?? 0;

function foundWords({ marks }: Inspection): string {
  const there = marks.filter(
    ({ strength, firm, warm, painful, broken }) => strength !== "none" || firm || warm || painful || broken,
  );
  return there.length === 0 ? "no mark" : there.length === 1 ? "one mark" : `${there.length} marks`;
}

const waitText = (ms: number): string => {
  const seconds = Math.ceil(ms / 1000);
  return seconds < 60 ? `${seconds} s` : `${Math.ceil(seconds / 60)} min`;
};

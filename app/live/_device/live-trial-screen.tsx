import { useEffect, useMemo, useState, useSyncExternalStore } from "react";
import { replayWearTrial } from "@/lib/fit/replay-wear-trial";
import { After } from "./after";
import { BeforeTrial } from "./before-trial";
import styles from "./live.module.css";
import { eventsOf, looksOf } from "./merged";
import { Running } from "./running";
import type { StageProps } from "./stage-props";
import { StatusLine } from "./status-line";
import type { Shown, TrialOnDevice } from "./trial-on-device";

/** The one screen of a trial that runs: nothing else is on it. */
export function LiveTrialScreen({ device, isOwn }: { device: TrialOnDevice; isOwn: boolean }) {
  const shown = useSyncExternalStore(device.subscribe, device.shown);
  const nowMs = useEverySecond(device);
  const { trial, items } = shown;
  const { correctedMs } = device.clock;
  const second = Math.floor(nowMs / 1000);
  const events = useMemo(() => eventsOf({ trial, items }, correctedMs), [trial, items, correctedMs]);
  const stand = useMemo(() => trial && replayWearTrial(trial.plan, events, asOf(second), trial.limits), [trial, events, second]);
  if (!trial || !stand) return <NoTrial failed={shown.failed} />;
  return (
    <main className={styles.page}>
      {trial.clinic.invented && <p className={styles.invented}>Invented data: no such people, no such clinic.</p>}
      <header className={styles.head}>
        <h1>{isOwn ? "Your wear trial" : `Wear trial: ${trial.wearer ?? ""}`}</h1>
        <p>
          {isOwn ? `${trial.limb.side} ${trial.isUpperLimb ? "arm" : "leg"}` : trial.limbWords}, socket {trial.socketNumber}
          {!isOwn && (
            <>
              {" · "}
              <a href={`/trials/${trial.trialId}`}>the trial’s record</a>
            </>
          )}
        </p>
      </header>
      <StatusLine shown={shown} isOwn={isOwn} />
      {trial.locked && <p>{trial.locked}</p>}
      {/* Who wears the socket still has to know when to stop, and what to do then. */}
      {(!trial.locked || stand.state === "running" || stand.state === "paused" || stand.state === "stopped") && (
        <Stage {...{ device, shown, trial, stand, nowMs, isOwn }} />
      )}
    </main>
  );
}

/** The end of the second that has begun: what was pressed in it has happened. */
const asOf = (second: number): string => new Date(second * 1000 + 999).toISOString();

function Stage(props: StageProps) {
  const { state } = props.stand;
  if (state === "planned") return <BeforeTrial {...props} />;
  if (state === "running" || state === "paused") return <Running {...props} />;
  return <After {...props} looks={looksOf(props.shown, props.device.clock.correctedMs)} />;
}

function NoTrial({ failed }: { failed: Shown["failed"] }) {
  return (
    <main className={styles.page}>
      <h1>Wear trial</h1>
      {!failed && <p>Opening…</p>}
      {failed?.failed === "offline" && (
        <p role="alert">
          The clinic cannot be reached, and this trial was not opened on this device before. It opens by itself once there is a
          network.
        </p>
      )}
      {failed?.failed === "signed out" && (
        <p role="alert">
          {failed.why}{" "}
          {window.location.pathname.endsWith("/trial") && (
            <a href={`/sign-in?back=${encodeURIComponent(`/live/trial${window.location.hash}`)}`}>Sign in</a>
          )}
        </p>
      )}
      {failed?.failed === "refused" && <p role="alert">{failed.why}</p>}
    </main>
  );
}

/** The trial's clock, read once a second and when the page comes back into sight. */
function useEverySecond(device: TrialOnDevice): number {
  const [nowMs, setNow] = useState(() => device.clock.now());
  useEffect(() => {
    const tick = () => {
      device.tick();
      setNow(device.clock.now());
    };
    const timer = setInterval(tick, 1000);
    document.addEventListener("visibilitychange", tick);
    // What was pressed is judged at once, not at the next second.
    const unsubscribe = device.subscribe(() => setNow(device.clock.now()));
    return () => {
      clearInterval(timer);
      document.removeEventListener("visibilitychange", tick);
      unsubscribe();
    };
  }, [device]);
  return nowMs;
}

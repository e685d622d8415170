import { useEffect, useState } from "react";
import type { Clocks } from "./clock";
import styles from "./live.module.css";
import { LiveTrialScreen } from "./live-trial-screen";
import { OwnDoor } from "./own-door";
import type { DeviceStore } from "./store";
import { TrialOnDevice } from "./trial-on-device";

const clocks: Clocks = { wall: () => Date.now(), steady: () => performance.now() };

/** `/live/trial#ID` for who has an account, `/live/own#TOKEN` for the wearer's own link. */
export function LiveApp({ db }: { db: DeviceStore | null }) {
  const isOwn = window.location.pathname.endsWith("/own");
  const key = decodeURIComponent(window.location.hash.slice(1));
  const [opened, setOpened] = useState<{ trialId: string; pass?: string } | null>(isOwn ? null : { trialId: key });
  const [device, setDevice] = useState<TrialOnDevice | null>(null);

  useEffect(() => {
    if (!opened?.trialId) return undefined;
    let isOver = false;
    let open: TrialOnDevice | undefined;
    void TrialOnDevice.open(db, { ...opened, clocks }).then((trial) => {
      open = trial;
      if (isOver) trial.close();
      else setDevice(trial);
    });
    return () => {
      isOver = true;
      open?.close();
    };
  }, [db, opened]);

  if (key === "")
    return (
      <main className={styles.page}>
        <h1>Wear trial</h1>
        <p>This address is not whole: the part behind # says which trial it is. Open the link again as it was given.</p>
      </main>
    );
  if (!opened) return <OwnDoor db={db} token={key} opened={setOpened} />;
  return device ? <LiveTrialScreen device={device} isOwn={isOwn} /> : <main className={styles.page} aria-busy="true" />;
}

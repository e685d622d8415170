import { useRef } from "react";
import { stopSigns } from "@/lib/fit/words";
import styles from "./live.module.css";
import type { TrialOnDevice } from "./trial-on-device";
import { stopWords } from "./words";

/** Always at the foot of the screen. One press shows the reasons, the next stops the trial: nothing is asked after that. */
export function StopTrial({ device }: { device: TrialOnDevice }) {
  const dialog = useRef<HTMLDialogElement>(null);
  return (
    <>
      <div className={styles.foot}>
        <button type="button" className={`stop ${styles.large}`} onClick={() => dialog.current?.showModal()}>
          Stop the trial
        </button>
      </div>
      <dialog ref={dialog} className={styles.reasons} aria-labelledby="why-stop">
        <h2 id="why-stop">Why does it stop?</h2>
        <p>Press one. The trial ends at once.</p>
        <div>
          {stopSigns.map((sign) => (
            <button key={sign} type="button" className="stop" onClick={() => void device.press({ kind: "stop-sign", sign })}>
              {stopWords[sign]}
            </button>
          ))}
        </div>
        <button type="button" className="quiet" onClick={() => dialog.current?.close()}>
          Do not stop
        </button>
      </dialog>
    </>
  );
}

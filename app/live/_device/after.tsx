import type { Inspection } from "@/lib/fit/bundle";
import styles from "./live.module.css";
import { Looks } from "./looks";
import type { StageProps } from "./stage-props";
import { stopWords, whoToCall } from "./words";

/** The trial is over: the socket comes off, then the skin is looked at until nothing is left to see. */
export function After(props: StageProps & { looks: readonly Inspection[] }) {
  const { device, trial, stand } = props;
  const [stopped] = stand.stopSigns;
  return (
    <>
      {stopped && (
        <section role="alert" className={styles.alarm}>
          <h2>Stopped: {stopWords[stopped.sign].toLowerCase()}</h2>
          <p>
            Take the socket off now. Look at the skin. Call {whoToCall(trial.clinic)}. If the skin is open, numb, cold or has
            changed colour, call a doctor. Do not put the socket on again until the prosthetist says so.
          </p>
        </section>
      )}
      {!stopped && (
        <section>
          <h2>The trial has ended</h2>
          <p>
            Worn {Math.floor(stand.wornMinutes)} minutes, with {stand.checkIns.length} check-ins.
          </p>
        </section>
      )}
      {stand.doffedAt === null ? (
        <section className={styles.next}>
          <h2>Take the socket off now</h2>
          <p>Press when it is off: the skin is looked at from then on the clock.</p>
          <button type="button" className={styles.large} onClick={() => void device.press({ kind: "doffed" })}>
            The socket is off
          </button>
        </section>
      ) : (
        <Looks {...props} offAtMs={Date.parse(stand.doffedAt)} />
      )}
      {!stopped && stand.doffedAt === null && (
        <details>
          <summary>Something was wrong all the same</summary>
          <p>Press what it was. The trial then counts as stopped.</p>
          <div className={styles.signs}>
            {Object.entries(stopWords).map(([sign, words]) => (
              <button
                key={sign}
                type="button"
                className="quiet"
                onClick={() => void device.press({ kind: "stop-sign", sign: sign as keyof typeof stopWords })} // its own keys
              >
                {words}
              </button>
            ))}
          </div>
        </details>
      )}
    </>
  );
}

import type { Inspection } from "@/lib/fit/bundle";
import styles from "./live.module.css";
import { Looks } from "./looks";
import type { StageProps } from "./stage-props";
import { WhoToCall } from "./who-to-call";
import { stopWords } from "./words";

/** The trial is over: the socket comes off, then the skin is looked at until nothing is left to see. */
export function After(props: StageProps & { looks: readonly Inspection[] }) {
  const { device, trial, stand, nowMs } = props;
  const [stopped] = stand.stopSigns;
  return (
    <>
      {stopped && (
        <section role="alert" className={styles.alarm}>
          <h2>Stopped: {stopWords[stopped.sign].toLowerCase()}</h2>
          <p>
            Take the socket off now. Look at the skin. Call <WhoToCall clinic={trial.clinic} />. If the skin is open, numb, cold
            or has changed colour, call a doctor. Do not put the socket on again until the prosthetist says so.
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
          <p>Press when it is off: the skin is looked at after that, by the clock.</p>
          {/* The second tap of a double one on the button before is no answer to this one. */}
          <button
            type="button"
            className={styles.large}
            disabled={nowMs - Date.parse(stand.endedAt ?? "") < 1_500}
            onClick={() => void device.press({ kind: "doffed" })}
          >
            The socket is off
          </button>
        </section>
      ) : (
        <Looks {...props} offAtMs={Date.parse(stand.doffedAt)} />
      )}
      <details>
        <summary>{stopped ? "Something else was or is wrong" : "Something was or is wrong all the same"}</summary>
        <p>
          Press what it is. The trial counts as stopped. Call <WhoToCall clinic={trial.clinic} />; if the limb is numb, cold or
          changes colour, call a doctor.
        </p>
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
    </>
  );
}

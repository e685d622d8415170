import styles from "./live.module.css";
import type { StageProps } from "./stage-props";
import { WhoToCall } from "./who-to-call";
import { stopWords, whatToPrepare } from "./words";

/** To be read out before the trial begins: what it is, what to prepare, when to stop. */
export function BeforeTrial({ device, trial }: StageProps) {
  const { plan } = trial;
  return (
    <>
      <section>
        <h2>The plan</h2>
        <p>
          Wear the socket for <b>{plan.minutes} minutes</b>
          {plan.loadKg !== undefined && (
            <>
              {" "}
              with <b>{plan.loadKg} kg</b>
              {plan.loadDistanceMm !== undefined && ` at ${plan.loadDistanceMm} mm from the joint`}
            </>
          )}
          : {plan.activities.join(", ")}. Every <b>{plan.intervalMin} minutes</b> you are asked how it feels.
          {trial.watchedBy && ` ${trial.watchedBy} watches.`}
        </p>
      </section>
      <section>
        <h2>Before you start</h2>
        <ul>
          {whatToPrepare(trial).map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      </section>
      <section>
        <h2>Stop at once if</h2>
        <ul>
          {Object.values(stopWords).map((words) => (
            <li key={words}>{words.toLowerCase()}</li>
          ))}
        </ul>
        <p>
          Then take the socket off, look at the skin, and call <WhoToCall clinic={trial.clinic} />. What your own doctor or
          prosthetist told you counts more than this page.
        </p>
      </section>
      <button type="button" className={styles.large} onClick={() => void device.press({ kind: "begun" })}>
        The socket is on: begin
      </button>
    </>
  );
}

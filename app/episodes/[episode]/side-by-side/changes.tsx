import { adjustmentWords } from "@/app/_parts/adjustment-words";
import { SideEffects } from "@/app/_parts/effect-words";
import { StateMark } from "@/app/_parts/state-mark";
import type { Adjustment, AdjustmentEffect, LimbBetween, SeriesStep } from "@/lib/fit";
import { effectOf } from "../series";
import type { ColumnStep, Comparison } from "./comparison";
import styles from "./side-by-side.module.css";

/** What separates each socket from the one before it, and what came of every adjustment. */
export function Changes({ comparison: { steps, series } }: { comparison: Comparison }) {
  if (steps.length === 0) return null;
  return (
    <section aria-labelledby="changes">
      <h2 id="changes">What was changed, and what came of it</h2>
      <div className={styles.steps}>
        {steps.map((step) => (
          <div key={step.to.socketId} className={styles.step}>
            <Path step={step} of={(id) => effectOf(series, id)} />
            <Limb limb={step.limb} />
          </div>
        ))}
      </div>
    </section>
  );
}

type EffectOf = (adjustmentId: string) => AdjustmentEffect | undefined;

function Path({ step: { from, to, between }, of }: { step: ColumnStep; of: EffectOf }) {
  const { relation, originNumber, steps, otherSteps } = between;
  if (relation === "apart")
    return (
      <>
        <h3>
          From socket {from.number} to socket {to.number}
        </h3>
        <p className="soft">
          It is not recorded that socket {to.number} was made from socket {from.number}, so nobody can say what was changed.
        </p>
      </>
    );
  return (
    <>
      {relation === "branch" && (
        <p>
          Socket {to.number} was not made from socket {from.number}: both come from socket {originNumber}.
        </p>
      )}
      {[...otherSteps, ...steps].map((one) => (
        <Step key={one.toId} step={one} of={of} />
      ))}
    </>
  );
}

function Step({ step: { fromNumber, toNumber, adjustments, sideEffects }, of }: { step: SeriesStep; of: EffectOf }) {
  return (
    <>
      <h3>
        From socket {fromNumber} to socket {toNumber}
      </h3>
      {adjustments.length === 0 ? (
        <p className="soft">No adjustment is recorded.</p>
      ) : (
        <ul className={styles.changes}>
          {adjustments.map((adjustment) => (
            <Change key={adjustment.id} adjustment={adjustment} effect={of(adjustment.id)} toNumber={toNumber} />
          ))}
        </ul>
      )}
      {adjustments.some(({ id }) => of(id)) && <SideEffects of={sideEffects} wordsOf={wordsIn(adjustments)} />}
    </>
  );
}

const wordsIn = (adjustments: readonly Adjustment[]) => (adjustmentId: string) =>
  adjustmentWords(adjustments.find(({ id }) => id === adjustmentId) ?? {});

interface ChangeProps {
  adjustment: Adjustment;
  effect: AdjustmentEffect | undefined;
  toNumber: number;
}

function Change({ adjustment, effect, toNumber }: ChangeProps) {
  return (
    <li>
      <span>
        <strong>{adjustmentWords(adjustment)}</strong>
        <small>for: {adjustment.reason}</small>
      </span>
      {effect ? (
        <>
          <StateMark state={effect.effect} />
          <span className={styles.why}>
            {effect.effect !== "not measured" && <small>{judgedOnWords(effect)}</small>}
            <span>{effect.why}</span>
          </span>
        </>
      ) : (
        <StateMark state="not measured" wrap>
          socket {toNumber} was not tried yet
        </StateMark>
      )}
    </li>
  );
}

/** The marks have names of their own with each socket, which say nothing here. */
const judgedOnWords = ({ judgedOn }: AdjustmentEffect): string =>
  `judged on ${judgedOn.startsWith("the mark ") ? "the mark that it answers" : judgedOn}`;

function Limb({ limb: { state, why } }: { limb: LimbBetween }) {
  if (state === "changed")
    return <p className={styles.limbChanged}>{why} What came of the adjustments may be the limb’s doing.</p>;
  return <p className="soft">{why}</p>;
}

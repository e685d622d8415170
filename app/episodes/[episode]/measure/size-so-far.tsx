import { formatNumber, formatQuantity } from "@/app/_parts/numbers";
import type { LimbChangeState } from "@/lib/fit/limb-change";
import { showQuantity, type Unit } from "@/lib/fit/units";
import styles from "./measure.module.css";
import type { Size } from "./tape-readings";

const changeWords: Record<LimbChangeState, (percent: string) => string> = {
  settled: (percent) => `surely within ±${percent} %`,
  changing: () => "surely changed",
  "cannot tell": (percent) => `cannot be told: 0 is in it, and more than ${percent} % too`,
};

interface SizeSoFarProps {
  size: Size | null;
  unit: Unit;
  settledPercent: number;
  tapeErrorMm: number;
  /** The day of the measurement before; missing where there is none. */
  lastDay?: string | undefined;
}

/** The volume with its error, and the change since last time with its interval, of the levels that are typed so far. */
export function SizeSoFar({ size, unit, settledPercent, tapeErrorMm, lastDay }: SizeSoFarProps) {
  return (
    <aside className={`card ${styles.size}`} aria-label="The volume so far">
      <h2>The volume so far</h2>
      {size === null ? (
        <p className="soft">From the second level on.</p>
      ) : (
        <>
          <p className={styles.volume}>
            {formatQuantity({ value: size.volume.volumeMl, standardError: size.volume.standardErrorMl, unit: "mL" })}
          </p>
          <p className="soft">
            from {showQuantity(size.fromMm, unit)} to {showQuantity(size.toMm, unit)}
            {size.hasEnd && ", with the rounded end"}; less than {formatNumber(size.volume.detectableChangeMl, 0)} mL cannot be
            told from error
          </p>
          <Change size={size} settledPercent={settledPercent} lastDay={lastDay} />
        </>
      )}
      <p className="soft">
        One circumference is taken to be exact to ± {showQuantity(tapeErrorMm, unit, unit === "in" ? 3 : 2)} (one standard error).
      </p>
    </aside>
  );
}

function Change({
  size: { change },
  settledPercent,
  lastDay,
}: {
  size: Size;
  settledPercent: number;
  lastDay: string | undefined;
}) {
  if (!lastDay || change === undefined) return null;
  if (change === null) return <p>Nothing of it was measured on {lastDay}: no change can be told.</p>;
  const { percent, low90, high90, state } = change;
  const sign = percent > 0 ? "+" : "";
  return (
    <p>
      Since {lastDay}:{" "}
      <strong>
        {sign}
        {formatNumber(percent, 1)} %
      </strong>
      , 90 % interval {formatNumber(low90, 1)} to {formatNumber(high90, 1)} %:{" "}
      {changeWords[state](formatNumber(settledPercent, 0))}.
    </p>
  );
}

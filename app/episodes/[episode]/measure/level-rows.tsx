"use client";

import { useContext } from "react";
import { NumberField } from "@/app/_parts/fields";
import { FormContext, fieldIdOf } from "@/app/_parts/form-context";
import { formatNumber } from "@/app/_parts/numbers";
import { useHasScripts } from "@/app/_parts/rows";
import type { Station } from "@/lib/fit/bundle";
import { showQuantity, type Unit } from "@/lib/fit/units";
import styles from "./measure.module.css";
import type { LevelReading } from "./tape-readings";

interface LevelRowsProps {
  readings: readonly LevelReading[];
  /** Of the levels that the form begins with. */
  firstDistances: readonly string[];
  last: readonly Station[];
  unit: Unit;
  hint: string;
  /** Distances can be typed and levels taken away; else the Tab key passes them over. */
  isChanging: boolean;
  remove: (row: number) => void;
}

/** The circumferences, one level under the other, so that the Tab key goes down the limb. */
export function LevelRows({ readings, firstDistances, last, unit, hint, isChanging, remove }: LevelRowsProps) {
  const { formId, state } = useContext(FormContext);
  const hasScripts = useHasScripts();
  const id = fieldIdOf(formId, "stations");
  const error = state.errors.stations;
  return (
    <fieldset id={id} tabIndex={-1} className={styles.levels} aria-describedby={error ? `${id}-error` : undefined}>
      <legend>Circumferences</legend>
      <p className={styles.hint}>{hint}</p>
      {error && (
        <p id={`${id}-error`} className={styles.error}>
          {error}
        </p>
      )}
      <ol>
        {readings.map((reading, position) => {
          const said = `${id}-${reading.row}-said`;
          return (
            <li key={reading.row}>
              <fieldset className={`${styles.level} ${isChanging ? "" : styles.proposed}`}>
                <legend className="heard">level {position + 1}</legend>
                <NumberField
                  name={`stations.${reading.row}.distanceMm`}
                  label="distance"
                  unit="mm"
                  first={firstDistances[reading.row]}
                  skipped={hasScripts && !isChanging}
                />
                <NumberField
                  name={`stations.${reading.row}.circumferenceMm`}
                  label={last.length > 0 ? "circumference now" : "circumference"}
                  unit="mm"
                  alsoDescribedBy={said}
                />
                <p id={said} className={styles.said}>
                  <LastTime reading={reading} last={last} unit={unit} />
                </p>
                {hasScripts && isChanging && (
                  <button type="button" className={styles.remove} onClick={() => remove(reading.row)}>
                    remove<span className="heard"> level {position + 1}</span>
                  </button>
                )}
                <Jump reading={reading} unit={unit} />
              </fieldset>
            </li>
          );
        })}
      </ol>
    </fieldset>
  );
}

/** Last time's figure at this level and, once there is a new one, the difference and whether a tape can tell it. */
function LastTime({ reading, last, unit }: { reading: LevelReading; last: readonly Station[]; unit: Unit }) {
  if (last.length === 0 || reading.distanceMm === undefined) return null;
  const there = last.find(({ distanceMm }) => distanceMm === reading.distanceMm)?.circumferenceMm;
  if (!reading.change)
    return (
      <span className={styles.soft}>
        {there !== undefined
          ? `last time ${showQuantity(there, unit)}`
          : reading.change === null
            ? "not measured here last time"
            : ""}
      </span>
    );
  const { lastMm, differenceMm, isBeyond } = reading.change;
  return (
    <>
      <span className={styles.soft}>
        last time {showQuantity(lastMm, unit)}
        {there === undefined && ", between its levels"}
      </span>{" "}
      <span className={isBeyond ? styles.beyond : styles.within}>
        <Sign isBeyond={isBeyond} /> {differenceWords(differenceMm, unit)},{" "}
        {isBeyond ? "changed" : "no more than the tape’s error"}
      </span>
    </>
  );
}

/** Two strokes, crossed out where the two differ: a shape beside the words. */
export const Sign = ({ isBeyond }: { isBeyond: boolean }) => (
  <svg viewBox="0 0 17 17" aria-hidden="true" className={styles.sign}>
    <path d={`M2.5 5.8h12M2.5 11.2h12${isBeyond ? "M12 1.5 5 15.5" : ""}`} stroke="currentColor" strokeWidth="2.2" />
  </svg>
);

/** @example differenceWords(2.1, "mm") // => "+2.1 mm" */
export const differenceWords = (mm: number, unit: Unit): string => {
  const shown = showQuantity(mm, unit);
  return mm > 0 && !/^0 /.test(shown) ? `+${shown}` : shown;
};

/** Asked at the field as one types; ticked, it is not asked again when it is saved. */
function Jump({ reading: { jump }, unit }: { reading: LevelReading; unit: Unit }) {
  if (!jump) return null;
  const share = `${formatNumber(Math.abs(jump.percent), 0)} % ${jump.percent > 0 ? "more" : "less"}`;
  return (
    <div className={styles.jump}>
      <p>
        {share} than at the level before ({showQuantity(jump.beforeMm, unit)}). Is it so?
      </p>
      <label key={jump.key}>
        <input type="checkbox" name="confirmed" value={jump.key} className={styles.tick} /> it is so
      </label>
    </div>
  );
}

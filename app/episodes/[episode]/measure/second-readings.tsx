"use client";

import { useContext, useState } from "react";
import { NumberField } from "@/app/_parts/fields";
import { FormContext, fieldIdOf } from "@/app/_parts/form-context";
import { showQuantity, type Unit } from "@/lib/fit/units";
import { differenceWords, Sign } from "./level-rows";
import styles from "./measure.module.css";
import type { LevelReading } from "./tape-readings";

/** The same levels once more, folded away until asked for: what tells how exact this clinic's tape is. */
export function SecondReadings({ readings, unit }: { readings: readonly LevelReading[]; unit: Unit }) {
  const { formId, state } = useContext(FormContext);
  const isUsed = Object.entries({ ...state.values, ...state.errors }).some(
    ([name, value]) => /^stations\.\d+\.againMm$/.test(name) && String(value).trim() !== "",
  );
  const [isOpen, setOpen] = useState(isUsed);
  return (
    <details className={styles.again} open={isOpen || isUsed} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Measure again</summary>
      <fieldset className={styles.levels}>
        <legend>Second readings</legend>
        <p className={styles.hint}>
          Take the tape off, find each level anew, and read without looking at the first figure. Any level may be left out. The
          first reading counts as the circumference; the two together tell how exact the tape is here.
        </p>
        <ol>
          {readings.map((reading, position) => {
            const said = `${fieldIdOf(formId, "stations")}-${reading.row}-again`;
            return (
              <li key={reading.row} className={styles.level}>
                <p className={styles.place}>
                  {reading.distanceMm === undefined ? `level ${position + 1}` : `at ${showQuantity(reading.distanceMm, unit)}`}
                </p>
                <NumberField
                  name={`stations.${reading.row}.againMm`}
                  label={`again, level ${position + 1}`}
                  unit="mm"
                  optional
                  alsoDescribedBy={said}
                />
                <p id={said} className={styles.said}>
                  {reading.again && (
                    <span className={reading.again.isBeyond ? styles.beyond : styles.within}>
                      <Sign isBeyond={reading.again.isBeyond} /> {differenceWords(reading.again.differenceMm, unit)} from the
                      first,{" "}
                      {reading.again.isBeyond
                        ? "further apart than the tape’s error: look again"
                        : "no more than the tape’s error"}
                    </span>
                  )}
                </p>
              </li>
            );
          })}
        </ol>
      </fieldset>
    </details>
  );
}

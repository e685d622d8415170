"use client";

import { type FocusEvent, useContext, useState } from "react";
import { CheckBox, DateField, NumberField, SelectField, TextField } from "@/app/_parts/fields";
import { FormContext } from "@/app/_parts/form-context";
import { type FormValues, valuesOf } from "@/app/_parts/form-state";
import { formatNumber } from "@/app/_parts/numbers";
import { rowsToBegin, useHasScripts } from "@/app/_parts/rows";
import { useFieldUnit } from "@/app/_parts/units";
import type { Station } from "@/lib/fit/bundle";
import { showQuantity, type Unit } from "@/lib/fit/units";
import { differenceWords, LevelRows } from "./level-rows";
import styles from "./measure.module.css";
import { SecondReadings } from "./second-readings";
import { SizeSoFar } from "./size-so-far";
import { hoursApart, isOutOfOrder, type LevelReading, readLevels, sizeOf, type TapeLimits } from "./tape-readings";

interface TapeFieldsProps {
  /** Now, on the clinic's clock. */
  at: string;
  last?: { day: string; at: string; stations: readonly Station[] } | undefined;
  landmark: string;
  stationsFrom: "distal end" | "proximal landmark";
  limits: TapeLimits;
}

const levelsAtFirst = 5;

/** Everything that a measurement by tape is made of; what it comes to is shown as one types. */
export function TapeFields({ at, last, landmark, stationsFrom, limits }: TapeFieldsProps) {
  const { state } = useContext(FormContext);
  const inUnit = useFieldUnit("circumferenceMm");
  const unit: Unit = inUnit?.unit ?? "mm";
  const read = (typed: string): number | undefined => inUnit?.read(typed);
  const firstDistances = (last?.stations ?? []).map(({ distanceMm }) => String(distanceMm));
  const [rows, setRows] = useState(() =>
    rowsToBegin({ name: "stations", values: state.values, filled: firstDistances.length, blank: last ? 0 : levelsAtFirst }),
  );
  const [isChanging, setChanging] = useState(!last);
  const [said, setSaid] = useState("");
  const hasScripts = useHasScripts();
  const [typed, setTyped] = useState<FormValues>(() =>
    Object.keys(state.values).length > 0 ? state.values : valuesAtFirst({ at, firstDistances }, (mm) => inUnit?.first(mm) ?? mm),
  );

  const readings = readLevels(typed, { rows, read, tapeErrorMm: limits.tapeErrorMm, last: last?.stations });
  const size = sizeOf(readings, {
    limits,
    stationsFrom,
    capHeightMm: read(String(typed.capHeightMm ?? "")),
    last: last?.stations,
  });

  /** Reads the whole form, so that nothing that was typed before the page was ready is missed. */
  function take(form: HTMLFormElement | null) {
    if (form) setTyped(valuesOf(new FormData(form)));
  }

  /** Said once, when the field is left: said at every key it would drown what is read. */
  function tell(event: FocusEvent<HTMLElement>) {
    const [, row] = /^stations\.(\d+)\.circumferenceMm$/.exec(event.target.getAttribute("name") ?? "") ?? [];
    if (row !== undefined)
      setSaid(
        sentenceOf(
          readings.find((reading) => reading.row === Number(row)),
          unit,
        ),
      );
  }

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: what bubbles up from the fields is read here; nothing is pressed.
    <div
      className={styles.cols}
      ref={(element) => takeEarly(element, take)}
      onInput={(event) => take(event.currentTarget.closest("form"))}
      onBlur={tell}
    >
      <div className={styles.fields}>
        <div className={styles.pair}>
          <DateField name="at" label="When" withTime first={at} hint={timeHint(String(typed.at ?? at), last, limits)} />
          <NumberField
            name="minutesSinceDoffing"
            label="Minutes since doffing"
            unit="min"
            hint={doffingHint(Number(String(typed.minutesSinceDoffing ?? "").replace(",", ".") || Number.NaN), limits)}
          />
        </div>
        <div className={styles.pair}>
          <SelectField
            name="method"
            label="How it was measured"
            options={[
              { value: "tape", label: "tape" },
              { value: "scan", label: "scan" },
            ]}
            first="tape"
          />
          <CheckBox name="linerOn" label="Liner on" />
        </div>
        <LevelRows
          readings={readings}
          firstDistances={firstDistances}
          last={last?.stations ?? []}
          unit={unit}
          isChanging={isChanging}
          remove={(row) => setRows(rows.filter((other) => other !== row))}
          hint={`Distances from the ${stationsFrom}. Landmark: ${landmark}. ${last ? `The levels of ${last.day} are filled in: the same levels can be compared.` : ""}`}
        />
        {isOutOfOrder(readings) && (
          <p className="soft">The levels are not in order along the limb. They are put in order when they are saved.</p>
        )}
        <p className="heard" role="status">
          {said}
        </p>
        {hasScripts && (
          <div className={styles.buttons}>
            <button type="button" className="quiet" onClick={() => setRows([...rows, Math.max(-1, ...rows) + 1])}>
              Add a level
            </button>
            {last && (
              <button type="button" className="quiet" aria-pressed={isChanging} onClick={() => setChanging(!isChanging)}>
                Change the levels
              </button>
            )}
          </div>
        )}
        <SecondReadings readings={readings} unit={unit} />
        <div className={styles.pair}>
          <NumberField
            name="capHeightMm"
            label={`Height of the rounded end beyond the ${stationsFrom === "distal end" ? "first" : "last"} level`}
            unit="mm"
            optional
          />
          <NumberField name="limbLengthMm" label="Residual-limb length, if measured again" unit="mm" optional />
        </div>
        <TextField name="note" label="Note" optional />
      </div>
      {hasScripts && (
        <SizeSoFar
          size={size}
          unit={unit}
          settledPercent={limits.settledPercent}
          tapeErrorMm={limits.tapeErrorMm}
          lastDay={last?.day}
        />
      )}
    </div>
  );
}

const valuesAtFirst = (
  { at, firstDistances }: { at: string; firstDistances: readonly string[] },
  shown: (mm: string) => string,
): FormValues => ({
  at,
  ...Object.fromEntries(firstDistances.map((mm, row) => [`stations.${row}.distanceMm`, shown(mm)])),
});

/** Where something stands in a circumference already when the page wakes up, it was typed before. */
function takeEarly(element: HTMLElement | null, take: (form: HTMLFormElement | null) => void): void {
  const fields = element?.querySelectorAll<HTMLInputElement>('input[name$=".circumferenceMm"]') ?? [];
  if ([...fields].some(({ value, defaultValue }) => value !== defaultValue) && element?.dataset.awake !== "yes")
    take(element?.closest("form") ?? null);
  if (element) element.dataset.awake = "yes";
}

function timeHint(at: string, last: TapeFieldsProps["last"], { sameTimeHours }: TapeLimits): string {
  const usual = "Limbs change through the day: the same time of day tells more.";
  if (!last) return usual;
  const clock = last.at.slice(11);
  const apart = hoursApart(at, last.at);
  return apart !== undefined && apart > sameTimeHours
    ? `Last time it was ${clock}: ${formatNumber(apart, 0)} hours earlier or later in the day, a change may be the time of day and not the limb.`
    : `${usual} Last time it was ${clock}.`;
}

function doffingHint(minutes: number, { doffedLeastMin }: TapeLimits): string {
  return minutes < doffedLeastMin
    ? `Less than ${doffedLeastMin} minutes: a limb just out of its socket is still changing. Wait where you can, or measure once more later.`
    : `Wait ${doffedLeastMin} minutes where you can: a limb just out of its socket is still changing.`;
}

function sentenceOf(reading: LevelReading | undefined, unit: Unit): string {
  if (!reading?.change || reading.distanceMm === undefined) return "";
  const { differenceMm, isBeyond } = reading.change;
  return `At ${showQuantity(reading.distanceMm, unit)}: ${differenceWords(differenceMm, unit)}, ${isBeyond ? "changed" : "no more than the tape’s error"}.`;
}

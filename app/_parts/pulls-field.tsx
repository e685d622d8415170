"use client";

import { useContext } from "react";
import type { Pull } from "@/lib/fit/bundle";
import { type SuspensionReading, type SuspensionRule, suspension } from "@/lib/fit/suspension";
import { FormContext, useTyped } from "./form-context";
import type { FormValues } from "./form-state";
import { formatNumber, formatQuantity } from "./numbers";
import styles from "./pulls-field.module.css";
import { hasFallingLine, PullsPicture } from "./pulls-picture";
import { Rows } from "./rows";
import { StateMark } from "./state-mark";
import { typedRows } from "./typed-rows";
import { useFieldUnit, useOwnUnits } from "./units";

interface PullsFieldProps {
  rule: SuspensionRule;
  /** What the rows begin with. */
  first?: readonly Readonly<Record<string, string>>[];
}

/** Loads and displacements in any order, with the line through them drawn as they are typed. */
export function PullsField({ rule, first = [] }: PullsFieldProps) {
  const pulls = usePulls();
  const { state } = useContext(FormContext);
  const told = useOwnUnits();
  const reading = suspension(pulls, rule);
  return (
    <div className={styles.pulls}>
      <Rows
        name="pulls"
        label="Pulls"
        one="pull"
        hint={`Pull along the limb with a spring balance and read how far the socket moved. Three loads or more, up to ${formatQuantity({ value: rule.loadN, unit: "N" })}, show slack and give.`}
        fields={[
          { name: "loadN", label: "load", kind: "number", unit: "N" },
          { name: "displacementMm", label: "displaced", kind: "number", unit: "mm" },
        ]}
        first={first}
        blank={freePulls(state.values, first.length)}
      />
      <div className={styles.seen}>
        <PullsPicture pulls={pulls} rule={rule} reading={reading} />
        <p>
          <StateMark state={reading.state} wrap>
            {reading.value === undefined
              ? "not known"
              : hasFallingLine(reading)
                ? `${reading.state}, but less displaced under more load`
                : told(`${quantityOf(reading)} at ${formatQuantity({ value: rule.loadN, unit: "N" })}`)}
          </StateMark>
        </p>
        <p className="soft">{told(pullsInWords(pulls, reading))}</p>
      </div>
    </div>
  );
}

/** Three loads are asked for: as many rows are free as are missing to three, none beside three that are filled. */
export function freePulls(values: FormValues, filledByPage: number): number {
  const filled = typedRows(values, "pulls").filter(({ fields }) => Object.values(fields).some((text) => text.trim() !== ""));
  return Math.max(0, 3 - (filled.length || filledByPage));
}

const quantityOf = ({ value = 0, standardError }: SuspensionReading): string =>
  formatQuantity({ value, unit: "mm", standardError });

/** The pulls whose two numbers can be read; the server says what is wrong with the others. */
function usePulls(): Pull[] {
  const [load, displacement] = [useFieldUnit("loadN"), useFieldUnit("displacementMm")];
  return typedRows(useTyped(), "pulls").flatMap(({ fields }) => {
    const [loadN, displacementMm] = [load?.read(fields.loadN ?? ""), displacement?.read(fields.displacementMm ?? "")];
    return isPossible(loadN, 1000) && isPossible(displacementMm, 200) ? [{ loadN, displacementMm }] : [];
  });
}

const isPossible = (value: number | undefined, most: number): value is number =>
  value !== undefined && value >= 0 && value <= most;

export function pullsInWords(pulls: readonly Pull[], reading: SuspensionReading): string {
  const { slackMm, complianceMmPerN, why } = reading;
  if (hasFallingLine(reading)) {
    const tooMuch = reading.state === "not met" ? `More than what is let pass: ${reading.limitText}. ` : "";
    return `${tooMuch}A line through these pulls would fall with the load: it tells neither slack nor give. Pull again.${backwards(pulls)}`;
  }
  const loads = new Set(pulls.map(({ loadN }) => loadN)).size;
  const shape =
    slackMm === undefined || complianceMmPerN === undefined
      ? ""
      : ` ${slackMm > 0 ? `Slack ${formatNumber(slackMm, 1)} mm, then` : "No slack by this line;"} ${formatNumber(complianceMmPerN * 10, 2)} mm for every 10 N.`;
  const missing = loads === 1 ? " Another load shows how much is slack and how much is give." : "";
  return [why, shape, missing, backwards(pulls)].join("");
}

/** What is contrary to what one expects is said here, and asked about once when it is saved. */
function backwards(pulls: readonly Pull[]): string {
  const byLoad = [...pulls].sort((a, b) => a.loadN - b.loadN);
  const place = byLoad.findIndex(({ loadN, displacementMm }, index) => {
    const gentler = byLoad[index - 1];
    return gentler !== undefined && gentler.loadN < loadN && gentler.displacementMm > displacementMm;
  });
  const [gentler, harder] = [byLoad[place - 1], byLoad[place]];
  if (!gentler || !harder) return "";
  return ` Less displaced under more load: ${formatNumber(harder.displacementMm, 1)} mm at ${formatNumber(harder.loadN, 0)} N, ${formatNumber(gentler.displacementMm, 1)} mm at ${formatNumber(gentler.loadN, 0)} N.`;
}

"use client";

import { type MotionReading, type MotionRule, motion } from "@/lib/fit/motion";
import { useTyped } from "./form-context";
import styles from "./motion-field.module.css";
import { formatQuantity } from "./numbers";
import { Rows } from "./rows";
import { StateMark } from "./state-mark";
import { typedAngle, typedRows } from "./typed-rows";
import { wordOptions } from "./word-options";

interface MotionFieldProps {
  /** The movements of the level with the rule of each, the most telling first. Each has its row. */
  rules: readonly { joint: string; rule: MotionRule }[];
  /** What the rows begin with, where there is something. */
  first?: readonly Readonly<Record<string, string>>[];
}

/**
 * Active motion without and with the socket, a row for each usual movement, and what the socket takes as one types.
 *
 * A row's movement travels as `jointId`, so that a row without angles counts as left free.
 */
export function MotionField({ rules, first }: MotionFieldProps) {
  const joints = rules.map(({ joint }) => joint);
  return (
    <div className={styles.motion}>
      <Rows
        name="motion"
        label="Motion"
        one="movement"
        hint="Active motion, without and with the socket, by goniometer. Leave a movement free that was not measured."
        fields={[
          { name: "jointId", label: "movement", kind: "select", options: wordOptions(joints) },
          { name: "withoutDeg", label: "without", kind: "number", unit: "°" },
          { name: "withDeg", label: "with", kind: "number", unit: "°" },
        ]}
        first={first ?? joints.map((joint) => ({ jointId: joint, withoutDeg: "", withDeg: "" }))}
        blank={0}
      />
      <Losses rules={rules} />
    </div>
  );
}

function Losses({ rules }: Pick<MotionFieldProps, "rules">) {
  const measured = typedRows(useTyped(), "motion").flatMap(({ row, fields }) => {
    const [withoutDeg, withDeg] = [typedAngle(fields.withoutDeg), typedAngle(fields.withDeg)];
    const rule = rules.find(({ joint }) => joint === fields.jointId)?.rule;
    if (!rule || !isPossible(withoutDeg) || !isPossible(withDeg)) return [];
    return [{ row, joint: (fields.jointId ?? "").replaceAll("-", " "), reading: motion(withoutDeg, withDeg, rule) }];
  });
  if (measured.length === 0) return <p className={`${styles.losses} soft`}>What the socket takes stands here as you type.</p>;
  return (
    <ul className={styles.losses}>
      {measured.map(({ row, joint, reading }) => (
        <li key={row}>
          <strong>{joint}</strong>{" "}
          <StateMark state={stateShown(reading)} wrap>
            {inShort(reading)}
          </StateMark>
          <p className="soft">
            Limit: {reading.limitText}.
            {isDoubtful(reading) &&
              " More motion with the socket than without it: one of the two angles may be wrong. Read both again; it is asked about when you save."}
          </p>
        </li>
      ))}
    </ul>
  );
}

const isPossible = (deg: number | undefined): deg is number => deg !== undefined && deg >= -90 && deg <= 220;

/** A socket gives no motion: the form asks about a gain when it is saved, so no dot says before that it is in order. */
const isDoubtful = ({ lostDeg }: MotionReading): boolean => lostDeg < 0;

/** What fails stays what fails; what would be met waits for the angles to be read again. */
export const stateShown = (reading: MotionReading): MotionReading["state"] =>
  isDoubtful(reading) && (reading.state === "met" || reading.state === "close") ? "unknown" : reading.state;

/** What is judged is the loss, or what is kept. */
export function inShort(reading: MotionReading): string {
  const { value = 0, standardError, limitText = "", lostDeg } = reading;
  const lost = (deg: number) =>
    deg < 0
      ? `${formatQuantity({ value: -deg, unit: "°" })} gained: doubtful`
      : `${formatQuantity({ value: deg, unit: "°" })} lost`;
  if (limitText.endsWith("kept")) return `${formatQuantity({ value, standardError, unit: "°" })} kept, ${lost(lostDeg)}`;
  return isDoubtful(reading) ? lost(lostDeg) : `${formatQuantity({ value, standardError, unit: "°" })} lost`;
}

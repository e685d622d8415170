import { useId } from "react";
import type { Pull } from "@/lib/fit/bundle";
import type { SuspensionReading, SuspensionRule } from "@/lib/fit/suspension";
import { counted, formatAmount, formatNumber, formatQuantity } from "./numbers";
import styles from "./pulls-field.module.css";

interface PullsPictureProps {
  pulls: readonly Pull[];
  rule: SuspensionRule;
  reading: SuspensionReading;
}

const box = { width: 360, height: 214, left: 46, right: 12, top: 22, bottom: 36 };

/**
 * Displacement against load: the pulls, the least-squares line through them, and the limit at the rule's load. A line
 * that falls is not drawn, nor what it gives at that load: nothing moves less by being pulled harder.
 */
export function PullsPicture({ pulls, rule, reading }: PullsPictureProps) {
  const id = useId();
  const { slackMm, complianceMmPerN, value, standardError = 0 } = reading;
  const mostN = Math.max(rule.loadN, ...pulls.map(({ loadN }) => loadN)) * 1.08;
  const mostMm = Math.max(rule.limitMm, (value ?? 0) + standardError, ...pulls.map(({ displacementMm }) => displacementMm)) * 1.2;
  const x = (loadN: number) => box.left + ((box.width - box.left - box.right) * loadN) / mostN;
  const y = (mm: number) =>
    box.height - box.bottom - ((box.height - box.bottom - box.top) * Math.max(0, Math.min(mm, mostMm))) / mostMm;
  const [ruleX, limitY, floor] = [x(rule.loadN), y(rule.limitMm), y(0)];
  const falls = hasFallingLine(reading);
  return (
    <svg
      viewBox={`0 0 ${box.width} ${box.height}`}
      role="img"
      aria-labelledby={`${id}-title`}
      aria-describedby={`${id}-words`}
      className={styles.picture}
    >
      <title id={`${id}-title`}>Displacement against load</title>
      <desc id={`${id}-words`}>{heard(pulls, rule, reading)}</desc>
      <path d={`M${box.left} ${box.top - 10}V${floor}H${box.width - box.right}`} className={styles.axis} />
      <text x={box.left - 8} y={box.top - 2} textAnchor="end" className={styles.label}>
        mm
      </text>
      {ticksTo(mostMm)
        .filter((mm) => y(mm) > box.top + 14)
        .map((mm) => (
          <g key={mm}>
            <path d={`M${box.left - 4} ${y(mm)}h4`} className={styles.axis} />
            <text x={box.left - 8} y={y(mm)} dy="0.34em" textAnchor="end" className={styles.label}>
              {mm}
            </text>
          </g>
        ))}
      <path d={`M${box.left} ${limitY}H${ruleX}`} className={styles.limit} />
      <path d={`M${ruleX} ${limitY}V${floor}`} className={styles.at} />
      <text x={box.left + 6} y={limitY - 7} className={styles.limitWord}>
        limit {formatAmount(rule.limitMm, "mm")}
      </text>
      <text x={Math.min(ruleX, box.width - 44)} y={floor + 24} textAnchor="middle" className={styles.label}>
        {formatQuantity({ value: rule.loadN, unit: "N" })}
      </text>
      {!falls && slackMm !== undefined && complianceMmPerN !== undefined && (
        <path d={lineFrom(slackMm, complianceMmPerN, mostN, mostMm, x, y)} className={styles.line} />
      )}
      {!falls && value !== undefined && (
        <path
          d={`M${ruleX} ${y(value - standardError)}V${y(value + standardError)}M${ruleX - 9} ${y(value - standardError)}h18M${ruleX - 9} ${y(value + standardError)}h18`}
          className={styles.error}
        />
      )}
      {pulls.map(({ loadN, displacementMm }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: pulls have no name; their order is theirs.
        <circle key={index} cx={x(loadN)} cy={y(displacementMm)} r="4.5" className={styles.pull} />
      ))}
    </svg>
  );
}

/** The line through the pulls goes down: less displaced under more load. It tells neither slack nor give. */
export const hasFallingLine = ({ complianceMmPerN }: SuspensionReading): boolean =>
  complianceMmPerN !== undefined && complianceMmPerN < 0;

/**
 * Figures for the upright axis, from 0 in even steps of 1, 2 or 5 times a power of ten: no more than six.
 *
 * @example ticksTo(30) // => [0, 10, 20, 30]
 */
export function ticksTo(most: number): number[] {
  const tenth = 10 ** Math.floor(Math.log10(most / 5));
  const step = [1, 2, 5, 10].map((times) => times * tenth).find((each) => most / each <= 5) ?? 10 * tenth;
  const digits = Math.max(0, -Math.floor(Math.log10(step)));
  return Array.from({ length: Math.floor(most / step) + 1 }, (_, index) => Number((index * step).toFixed(digits)));
}

/** As much of the line as lies in the picture. */
function lineFrom(
  slackMm: number,
  complianceMmPerN: number,
  mostN: number,
  mostMm: number,
  x: (loadN: number) => number,
  y: (mm: number) => number,
): string {
  const crossings = complianceMmPerN === 0 ? [] : [-slackMm / complianceMmPerN, (mostMm - slackMm) / complianceMmPerN];
  const loads = [0, mostN, ...crossings.filter((loadN) => loadN > 0 && loadN < mostN)].sort((a, b) => a - b);
  const inside = loads.filter((loadN) => {
    const mm = slackMm + complianceMmPerN * loadN;
    return mm >= -1e-9 * mostMm && mm <= mostMm * (1 + 1e-9);
  });
  const [from, to] = [inside[0], inside.at(-1)];
  if (from === undefined || to === undefined) return "";
  const point = (loadN: number) => `${x(loadN).toFixed(1)} ${y(slackMm + complianceMmPerN * loadN).toFixed(1)}`;
  return `M${point(from)}L${point(to)}`;
}

function heard(pulls: readonly Pull[], rule: SuspensionRule, reading: SuspensionReading): string {
  const { value, standardError, state } = reading;
  const list = pulls.map(({ loadN, displacementMm }) => `${formatNumber(displacementMm, 1)} mm at ${formatNumber(loadN, 0)} N`);
  const judged =
    value === undefined
      ? "Not known yet."
      : hasFallingLine(reading)
        ? `No line: it would fall. At ${formatQuantity({ value: rule.loadN, unit: "N" })}: ${state}.`
        : `${formatQuantity({ value, unit: "mm", standardError })} at ${formatQuantity({ value: rule.loadN, unit: "N" })}: ${state}.`;
  return `${counted(pulls.length, "pull")}${list.length > 0 ? `: ${list.join(", ")}` : ""}. ${judged} Limit ${formatAmount(rule.limitMm, "mm")}.`;
}

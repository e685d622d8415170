import type { Station } from "@/lib/fit/bundle";
import { showQuantity, type Unit } from "@/lib/fit/units";
import styles from "./design.module.css";

interface SocketProfileProps {
  limb: readonly Station[];
  previous: { number: number; stations: readonly Station[] } | undefined;
  next: { number: number; stations: readonly Station[] };
  /** Distances at which the next socket has what no adjustment explains. */
  unexplainedAt: readonly number[];
  stationsFrom: "distal end" | "proximal landmark";
  unit: Unit;
}

const [width, height] = [560, 360];
const plot = { left: 62, right: 548, top: 14, bottom: 316 };

/**
 * Limb, socket before and next socket over each other: distances down the limb, the distal end at the foot, circumference
 * across. The table beside it is the same in figures.
 */
export function SocketProfile({ limb, previous, next, unexplainedAt, stationsFrom, unit }: SocketProfileProps) {
  const lines = [limb, previous?.stations ?? [], next.stations];
  const all = lines.flat();
  if (next.stations.length < 2 || all.length === 0)
    return <p className="soft">The profile is drawn from two levels of the next socket on.</p>;
  const x = scale(
    all.map(({ circumferenceMm }) => circumferenceMm),
    { from: plot.left, to: plot.right, marginShare: 0.06 },
  );
  const isFromEnd = stationsFrom === "distal end";
  const y = scale(
    all.map(({ distanceMm }) => distanceMm),
    {
      from: isFromEnd ? plot.bottom : plot.top,
      to: isFromEnd ? plot.top : plot.bottom,
      marginShare: 0.03,
    },
  );
  const points = (stations: readonly Station[]) =>
    stations
      .map(({ distanceMm, circumferenceMm }) => `${x.at(circumferenceMm).toFixed(1)},${y.at(distanceMm).toFixed(1)}`)
      .join(" ");
  const mmTicks = ticks(x.low, x.high);
  return (
    <figure className={styles.profile}>
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={summaryOf({ previous, next, unit })}>
        {mmTicks.map((mm) => (
          <g key={mm}>
            <path d={`M${x.at(mm).toFixed(1)} ${plot.top}V${plot.bottom}`} className={styles.grid} />
            <text x={x.at(mm)} y={plot.bottom + 20} textAnchor="middle" className={styles.tick}>
              {showQuantity(mm, unit, unit === "in" ? 1 : 0).replace(/ .*/, "")}
            </text>
          </g>
        ))}
        <text x={plot.right} y={height - 6} textAnchor="end" className={styles.tick}>
          circumference, {unit}
        </text>
        {next.stations.map(({ distanceMm }) => (
          <g key={distanceMm}>
            <path d={`M${plot.left} ${y.at(distanceMm).toFixed(1)}H${plot.right}`} className={styles.grid} />
            <text x={plot.left - 8} y={y.at(distanceMm) + 5} textAnchor="end" className={styles.tick}>
              {showQuantity(distanceMm, unit, unit === "in" ? 1 : 0).replace(/ .*/, "")}
            </text>
          </g>
        ))}
        <polyline points={points(limb)} className={styles.limbLine} />
        {previous && <polyline points={points(previous.stations)} className={styles.previousLine} />}
        <polyline points={points(next.stations)} className={styles.nextLine} />
        {next.stations.map(({ distanceMm, circumferenceMm }) => {
          const [cx, cy] = [x.at(circumferenceMm), y.at(distanceMm)];
          return unexplainedAt.includes(distanceMm) ? (
            <path key={distanceMm} d={`M${cx} ${cy - 8}l8 8-8 8-8-8z`} className={styles.unexplainedDot} />
          ) : (
            <circle key={distanceMm} cx={cx} cy={cy} r="4" className={styles.nextDot} />
          );
        })}
      </svg>
      <figcaption>
        <ul className={styles.legend}>
          {limb.length > 0 && <Key line={styles.limbLine}>limb, long dashes</Key>}
          {previous && <Key line={styles.previousLine}>socket {previous.number}, thin line</Key>}
          <Key line={styles.nextLine}>socket {next.number}, thick line with dots</Key>
          {unexplainedAt.length > 0 && (
            <li>
              <svg viewBox="0 0 34 18" aria-hidden="true">
                <path d="M17 1l8 8-8 8-8-8z" className={styles.unexplainedDot} />
              </svg>
              not explained, diamond
            </li>
          )}
        </ul>
        <p className="soft">
          Inside of the sockets; upwards the distance from the {stationsFrom} in {unit}, with the proximal end at the top. The
          scale across does not begin at 0.
        </p>
      </figcaption>
    </figure>
  );
}

const Key = ({ line, children }: { line: string | undefined; children: React.ReactNode }) => (
  <li>
    <svg viewBox="0 0 34 18" aria-hidden="true">
      <path d="M1 9h32" className={line} />
    </svg>
    <span>{children}</span>
  </li>
);

function scale(values: readonly number[], { from, to, marginShare }: { from: number; to: number; marginShare: number }) {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const margin = (most - least || 20) * marginShare;
  const [low, high] = [least - margin, most + margin];
  return { low, high, at: (value: number): number => from + ((value - low) / (high - low)) * (to - from) };
}

/** Round figures, about five of them. */
function ticks(low: number, high: number): number[] {
  const step = [5, 10, 20, 50, 100, 200].find((each) => (high - low) / each <= 7) ?? 500;
  const first = Math.ceil(low / step) * step;
  return Array.from({ length: Math.max(0, Math.floor((high - first) / step) + 1) }, (_, index) => first + index * step);
}

function summaryOf({ previous, next, unit }: Pick<SocketProfileProps, "previous" | "next" | "unit">): string {
  const [first, last] = [next.stations[0], next.stations.at(-1)];
  const span =
    first && last
      ? ` from ${showQuantity(first.circumferenceMm, unit)} at ${showQuantity(first.distanceMm, unit)} to ${showQuantity(last.circumferenceMm, unit)} at ${showQuantity(last.distanceMm, unit)}`
      : "";
  return `Profile of socket ${next.number}${span}, over the limb${previous ? ` and socket ${previous.number}` : ""}, level by level as in the table.`;
}

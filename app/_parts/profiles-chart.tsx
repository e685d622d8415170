"use client";

import { Chart, type ChartData, type ChartOptions, LinearScale, LineElement, PointElement, ScatterController } from "chart.js";
import { Scatter } from "react-chartjs-2";
import { coloured, fontOf } from "./chart-colours";
import styles from "./profiles-chart.module.css";
import { useRedrawnChart } from "./use-redrawn-chart";

Chart.register(ScatterController, LineElement, PointElement, LinearScale);

export interface ProfileLine {
  /** "socket 2", "limb, 31 Aug" */
  label: string;
  of: "limb" | "socket";
  stations: readonly { distanceMm: number; circumferenceMm: number }[];
}

interface ProfilesChartProps {
  lines: readonly ProfileLine[];
  stationsFrom: "distal end" | "proximal landmark";
  /** The picture in one sentence, for those who hear it. */
  summary: string;
}

/** Each socket has a point and a dash of its own, so that no line hangs on its colour; the last one stands out. */
const socketLooks = [
  { point: "circle", dash: [], inWords: "circles" },
  { point: "rect", dash: [3, 3], inWords: "squares, dotted" },
  { point: "triangle", dash: [10, 4], inWords: "triangles, dashed" },
  { point: "rectRot", dash: [10, 4, 3, 4], inWords: "diamonds, dash and dot" },
] as const;
const limbDashes = [
  [14, 7],
  [14, 7, 4, 7],
  [4, 7],
  [24, 7],
] as const;

interface Look {
  colour: string;
  width: number;
  dash: number[];
  point: string | false;
  inWords: string;
}

function looksOf(lines: readonly ProfileLine[]): Look[] {
  const sockets = lines.filter(({ of }) => of === "socket");
  const limbs = lines.filter(({ of }) => of === "limb");
  return lines.map((line): Look => {
    if (line.of === "limb") {
      const dash = limbDashes[limbs.indexOf(line) % limbDashes.length] ?? [];
      return { colour: "--soft", width: 1.8, dash: [...dash], point: false, inWords: "no points" };
    }
    const { point, dash, inWords } = socketLooks[sockets.indexOf(line) % socketLooks.length] ?? socketLooks[0];
    const isLast = line === sockets.at(-1);
    return { colour: isLast ? "--accent" : "--ink", width: isLast ? 2.6 : 1.5, dash: [...dash], point, inWords };
  });
}

/** Profiles of sockets and limb over each other: distance up the limb, the proximal end at the top, circumference across. */
export function ProfilesChart({ lines, stationsFrom, summary }: ProfilesChartProps) {
  const chart = useRedrawnChart<"scatter", { x: number; y: number }[]>();
  const looks = looksOf(lines);
  return (
    <figure className={styles.figure}>
      <div className={styles.chart}>
        <Scatter ref={chart} data={dataOf(lines, looks)} options={optionsOf(stationsFrom)} aria-label={summary} />
      </div>
      <figcaption>
        <ul className={styles.legend}>
          {lines.map(({ label }, index) => (
            <li key={label}>
              <Key look={looks[index]} />
              {label}
              <span className="heard">, {looks[index]?.inWords}</span>
            </li>
          ))}
        </ul>
        <p className="soft not-on-paper">
          Across the circumference in mm, upwards the distance from the {stationsFrom} in mm with the proximal end at the top. The
          scale across does not begin at 0.
        </p>
      </figcaption>
    </figure>
  );
}

/** The points of Chart.js, as the legend draws them. */
const pointPaths: Record<string, string> = {
  circle: "M12.5 9a4.5 4.5 0 1 0 9 0a4.5 4.5 0 1 0-9 0",
  rect: "M13 5h8v8h-8z",
  triangle: "M17 4.4l4.8 8.3h-9.6z",
  rectRot: "M17 4l5 5-5 5-5-5z",
};

function Key({ look }: { look: Look | undefined }) {
  if (!look) return null;
  return (
    <svg viewBox="0 0 34 18" aria-hidden="true" style={{ color: `var(${look.colour})` }}>
      <path d="M0 9h34" stroke="currentColor" strokeWidth={look.width} strokeDasharray={look.dash.join(" ")} fill="none" />
      {look.point && <path d={pointPaths[look.point]} fill="var(--card)" stroke="currentColor" strokeWidth="2" />}
    </svg>
  );
}

const dataOf = (lines: readonly ProfileLine[], looks: readonly Look[]): ChartData<"scatter", { x: number; y: number }[]> => ({
  datasets: lines.map(({ stations }, index) => {
    const look = looks[index] ?? { colour: "--ink", width: 1.5, dash: [], point: false as const };
    return {
      data: stations.map(({ distanceMm, circumferenceMm }) => ({ x: circumferenceMm, y: distanceMm })),
      showLine: true,
      borderColor: coloured(look.colour),
      borderWidth: look.width,
      borderDash: look.dash,
      pointStyle: look.point,
      pointRadius: look.point === false ? 0 : 4.5,
      pointBorderWidth: 2,
      pointBackgroundColor: coloured("--card"),
      pointBorderColor: coloured(look.colour),
    };
  }),
});

function optionsOf(stationsFrom: ProfilesChartProps["stationsFrom"]): ChartOptions<"scatter"> {
  const ticks = { color: coloured("--soft"), font: ({ chart }: { chart: Chart }) => ({ size: 15, family: fontOf(chart) }) };
  return {
    animation: false,
    responsive: true,
    maintainAspectRatio: false,
    events: [],
    layout: { padding: { top: 8, right: 8 } },
    scales: {
      x: {
        type: "linear",
        grid: { color: coloured("--line") },
        border: { display: false },
        ticks: { ...ticks, maxTicksLimit: 7, maxRotation: 0 },
      },
      y: {
        type: "linear",
        reverse: stationsFrom === "proximal landmark",
        grid: { color: coloured("--line") },
        border: { display: false },
        ticks: { ...ticks, maxTicksLimit: 7 },
      },
    },
  };
}
